"""A view: real millimetres put on the sheet at a scale, whole or cut to a detail ring."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import chain, islice

from generator.drawings.clipping import (
    Box,
    Disc,
    Point,
    Points,
    bounds,
    circle,
    clip_line,
    clip_to_disc,
    inside,
)
from generator.drawings.hatches import (
    BLOCKWORK,
    END_GRAIN_NEW,
    END_GRAIN_STANDING,
    FLOOR,
    FRAME_SIDE,
    LONG_GRAIN,
    MDF,
    PLASTER,
    Hatch,
)
from generator.drawings.lettering import cap, extent
from generator.drawings.pens import (
    ARRIS,
    CUT_NEW,
    CUT_STANDING,
    ELEVATION_NEW,
    FILLER,
    GAP,
    LEADER,
    PAPER,
    RING,
    STEEL,
    THUMBNAIL,
    TINT,
    VISIBLE,
    VISIBLE_STANDING,
    Pen,
)
from generator.drawings.sheet import Label, Layer, Outline, Sheet, Spot, Stroke, TextKind, Zone, dot


@dataclass(frozen=True, slots=True, kw_only=True)
class Material:
    """How a part of one material is drawn: outline, flat fill and hatch."""

    pen: Pen
    fill: str | None = None
    hatch: Hatch | None = None


MATERIALS: dict[str, Material] = {
    "block": Material(pen=CUT_STANDING, hatch=BLOCKWORK),
    "stud": Material(pen=CUT_STANDING, hatch=END_GRAIN_STANDING.from_the("right")),
    "plaster": Material(pen=CUT_STANDING, hatch=PLASTER),
    "standing timber": Material(pen=CUT_STANDING, hatch=END_GRAIN_STANDING),
    "standing timber, other hand": Material(pen=CUT_STANDING, hatch=END_GRAIN_STANDING.from_the("right")),
    "long grain": Material(pen=CUT_STANDING, hatch=LONG_GRAIN),
    "new timber": Material(pen=CUT_NEW, fill=TINT, hatch=END_GRAIN_NEW),
    "new mdf": Material(pen=CUT_NEW, fill=TINT, hatch=MDF),
    "new work in elevation": Material(pen=ELEVATION_NEW, fill=TINT),
    "steel": Material(pen=VISIBLE_STANDING, fill=STEEL),
    "hinge": Material(pen=VISIBLE_STANDING, fill=PAPER),
    "filler": Material(pen=Pen(width=0.13, colour=FILLER), fill=FILLER),
    "beyond": Material(pen=VISIBLE_STANDING),
    "empty": Material(pen=VISIBLE_STANDING),
    "wall side": Material(pen=Pen(width=0.13, colour=GAP), fill=GAP),
    "frame side": Material(pen=Pen(width=0.13), hatch=FRAME_SIDE),
    "new work, small": Material(pen=ARRIS, fill=TINT),
    "floor board": Material(pen=VISIBLE),
    "floor offcut": Material(pen=VISIBLE, fill=TINT),
    "floor": Material(pen=VISIBLE_STANDING, hatch=FLOOR),
}
_DETAIL_SPREAD = 1.55
# Never along the lines of the work itself, so that a leader is not taken for an edge.
_TURNS = (-60, -120, 60, 120, -35, -145, 35, 145, -75, -105, 75, 105, 15, 165, -15, -165)


@dataclass(frozen=True, slots=True, kw_only=True)
class View:
    """A window on the real thing: paper mm a real mm, where real (0, 0) falls, and where its labels may
    stand.
    """

    sheet: Sheet
    scale: float
    origin: Point
    zone: Zone

    @property
    def disc(self) -> Disc | None:
        """The ring that cuts this view, if it is a detail."""
        return self.zone.disc

    def at(self, x: float, y: float) -> Point:
        """Return where a real point falls on the sheet."""
        return self.origin[0] + x * self.scale, self.origin[1] + y * self.scale

    def all_at(self, points: Points) -> Points:
        """Return where real points fall on the sheet."""
        return tuple(self.at(x, y) for x, y in points)

    def shows(self, paper: Points) -> bool:
        """Whether any of a part can fall inside the view."""
        return self.disc is None or bounds(paper).near(self.zone.box, 0)

    def part(self, name: str, points: Points, material: str) -> None:
        """Draw a part: fill, hatch and outline, and keep its outline under its name."""
        made = MATERIALS[material]
        paper = self.all_at(points)
        if not self.shows(paper):
            return
        if self.disc is None:
            self.sheet.outlines[name] = Outline(name=name, real=points, paper=paper, scale=self.scale)
        self._face(paper, made)
        self._edge((*paper, paper[0]), made.pen, whole=paper)

    def _face(self, paper: Points, made: Material) -> None:
        if self.sheet.thumbnail:
            return
        seen = paper
        if self.disc is not None:
            seen = clip_to_disc(paper, self.disc)
        if not seen:
            return
        if made.fill:
            self.sheet.fill(seen, made.fill)
        if made.hatch:
            self.sheet.hatch(seen, self._hatch(made.hatch))

    def _hatch(self, hatch: Hatch) -> Hatch:
        return hatch.spread(_DETAIL_SPREAD) if self.disc is not None and hatch.kind == "arcs" else hatch

    def _edge(self, run: Points, pen: Pen, whole: Points = ()) -> None:
        pen = THUMBNAIL if self.sheet.thumbnail else pen
        if self.disc is not None:
            for piece in clip_line(run, self.disc):
                self.sheet.line(piece, pen)
        elif whole:
            self.sheet.line(whole, pen, closed=True)
        else:
            self.sheet.line(run, pen)

    def line(self, points: Points, pen: Pen, name: str | None = None) -> None:
        """Draw an open line through real points."""
        paper = self.all_at(points)
        if name and self.disc is None:
            self.sheet.outlines[name] = Outline(name=name, real=points, paper=paper, scale=self.scale)
        self._edge(paper, pen)

    def open_part(self, name: str, points: Points, material: str, broken: tuple[int, ...] = ()) -> None:
        """Draw a part that runs on beyond the view: the numbered sides are break lines, not edges."""
        made = MATERIALS[material]
        paper = self.all_at(points)
        if not self.shows(paper):
            return
        if self.disc is None:
            self.sheet.outlines[name] = Outline(name=name, real=points, paper=paper, scale=self.scale)
        self._face(paper, made)
        ends = (*paper, paper[0])
        for side in range(len(paper)):
            if side in broken and not self.sheet.thumbnail:
                self._edge(break_line(ends[side], ends[side + 1]), made.pen.narrowed(0.13))
            else:
                self._edge((ends[side], ends[side + 1]), made.pen)

    def letter(
        self,
        letter: str,
        name: str,
        points: Points,
        kind: TextKind = "letter",
        nearest: float = 8.0,
        near: Point | None = None,
        turns: tuple[int, ...] = (),
    ) -> None:
        """Letter a part: inside it where there is room, otherwise outside with one leader.

        `near` is the real point the letter would best stand at; without one, the part's middle. `turns` are
        the directions (degrees, clockwise from the right) in which a leader is tried first, `nearest` mm long
        or more.
        """
        paper = self.all_at(points)
        if self.disc is not None:
            paper = clip_to_disc(paper, Disc(self.disc.x, self.disc.y, self.disc.radius - 1.0))
        if len(paper) < 3:
            return
        within = _inside_spots(paper, cap(self.sheet.em(kind), "bold"), self.at(*near) if near else None)
        spots = chain(within, self._led_spots(paper, letter, kind, nearest, turns))
        self.sheet.label(
            Label(
                text=letter,
                kind=kind,
                weight="bold",
                spots=spots,
                zone=self.zone,
                words=f"{letter} (no room on the view): {name}",
            )
        )

    def pointer(
        self, letter: str, at: Point, words: str, turns: tuple[int, ...] = (), dotted: bool = False
    ) -> None:
        """Letter a point by a leader, `turns` the directions to try first: bare for a corner, a dot on a
        face.
        """
        x, y = self.at(*at)
        kind: TextKind = "small letter"
        spots = self._spots_round(x, y, letter, kind, dotted=dotted, turns=(*turns, *_TURNS))
        self.sheet.label(
            Label(
                text=letter, kind=kind, weight="bold", spots=spots, zone=self.zone, words=f"{letter}: {words}"
            )
        )

    def _led_spots(
        self, paper: Points, letter: str, kind: TextKind, nearest: float, turns: tuple[int, ...]
    ) -> Iterator[Spot]:
        for x, y in islice(_inner_points(paper), 3) if turns else ():
            yield from self._spots_round(x, y, letter, kind, dotted=True, nearest=nearest, turns=turns)
        for x, y in islice(_inner_points(paper), 6):
            yield from self._spots_round(x, y, letter, kind, dotted=True)

    def _spots_round(
        self,
        x: float,
        y: float,
        letter: str,
        kind: TextKind,
        dotted: bool,
        nearest: float = 8.0,
        turns: tuple[int, ...] = _TURNS,
    ) -> Iterator[Spot]:
        em = self.sheet.em(kind)
        width, high = extent(letter, em, "bold")[0], cap(em, "bold")
        for far in (6.5, 8.0, 11.0, 15.0, 20.0, 26.0, 34.0, 44.0, 58.0):
            for turn in turns if far >= nearest else ():
                yield _led_spot(x, y, far, math.radians(turn), width, high, dotted)


def _led_spot(x: float, y: float, far: float, turn: float, width: float, high: float, dotted: bool) -> Spot:
    cx, cy = x + far * math.cos(turn), y + far * math.sin(turn)
    clear = 1.0 + min(width / 2 / max(abs(math.cos(turn)), 1e-9), high / 2 / max(abs(math.sin(turn)), 1e-9))
    end = (cx - clear * math.cos(turn), cy - clear * math.sin(turn))
    leader = Stroke(points=((x, y), end), pen=LEADER, layer="dimension")
    strokes = (leader, dot(x, y, 0.45)) if dotted else (leader,)
    return Spot(x=cx, y=cy + high / 2, strokes=strokes, margin=0.4)


def _inside_spots(paper: Points, high: float, near: Point | None) -> Iterator[Spot]:
    box = bounds(paper)
    if min(box.right - box.left, box.bottom - box.top) < high:
        return
    for x, y in islice(_inner_points(paper, near), 30):
        yield Spot(x=x, y=y + high / 2, margin=0.35, within=paper)


_SHARES = (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9)


def _inner_points(paper: Points, near: Point | None = None) -> Iterator[Point]:
    """Yield points of a grid over the part that lie in it, the nearest to its middle (or to `near`) first."""
    box = bounds(paper)
    return (point for point in _grid(box, near or box.centre) if inside(point, paper))


# One part is asked for its points again for every letter and leader that may stand in it.
@lru_cache(maxsize=64)
def _grid(box: Box, near: Point) -> Points:
    cx, cy = near
    wide, high = box.right - box.left, box.bottom - box.top
    grid = [(box.left + u * wide, box.top + v * high) for u in _SHARES for v in _SHARES]
    grid.sort(key=lambda p: abs(p[0] - cx) + abs(p[1] - cy))
    return tuple(grid)


def break_line(start: Point, end: Point) -> Points:
    """Return a break: a line with one zigzag at mid length, 2.2 wide and 3.2 long; a short one is plain."""
    length = math.dist(start, end)
    if length < 9.0:
        return start, end
    ux, uy = (end[0] - start[0]) / length, (end[1] - start[1]) / length
    shape = ((-1.6, 0.0), (-0.5, 1.1), (0.5, -1.1), (1.6, 0.0))
    middle = length / 2
    turned = tuple(
        (start[0] + ux * (middle + a) - uy * b, start[1] + uy * (middle + a) + ux * b) for a, b in shape
    )
    return (start, *turned, end)


def detail_view(view: View, about: Point, scale: float, centre: Point, radius: float) -> View:
    """Ring a place on the view and return the enlarged view of it, its ring drawn at `centre`.

    `about` is the real point at the ring's middle, `scale` paper mm a real mm in the detail, `radius`
    paper mm.
    """
    sheet = view.sheet
    x, y = view.at(*about)
    sheet.line(circle((x, y), radius * view.scale / scale), RING, closed=True)
    sheet.line(circle(centre, radius), RING, closed=True)
    disc = Disc(centre[0], centre[1], radius)
    sheet.rings.append(disc)
    origin = (centre[0] - about[0] * scale, centre[1] - about[1] * scale)
    box = Box(centre[0] - radius, centre[1] - radius, centre[0] + radius, centre[1] + radius)
    return View(sheet=sheet, scale=scale, origin=origin, zone=Zone(box=box, disc=disc))


def ring_letter(view: View, letter: str, about: Point, radius: float) -> None:
    """Letter the small ring on the view, just outside it."""
    x, y = view.at(*about)
    em = view.sheet.em("letter")
    high, half = cap(em, "bold"), extent(letter, em, "bold")[0] / 2
    spots = (
        Spot(
            x=x + (radius + off + half) * math.cos(math.radians(turn)),
            y=y + (radius + off + high / 2) * math.sin(math.radians(turn)) + high / 2,
        )
        for off in (0.8, 1.4, 2.2, 3.4, 5.0, 8.0)
        for turn in (-90, -60, -120, -40, -140, 0, 180, 40, 140, 90, -75, -105, -20, 20)
    )
    view.sheet.label(
        Label(text=letter, kind="letter", weight="bold", spots=spots, zone=view.zone, words=f"ring {letter}")
    )


def dimension_layer(view: View, points: Points, pen: Pen, layer: Layer = "dimension") -> None:
    """Lay a line of the dimension layer through paper points, cut to the ring of a detail."""
    if view.disc is None:
        view.sheet.line(points, pen, layer)
        return
    for piece in clip_line(points, view.disc):
        view.sheet.line(piece, pen, layer)
