"""A surface in millimetres that remembers everything laid on it, and lets no label touch anything.

A sheet is laid out for its width: a narrow one gets another scale and another placement, never a smaller
copy.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import Literal

from generator.drawings.clipping import (
    Box,
    Disc,
    Point,
    Points,
    Segment,
    circle,
    crosses_box,
    inside,
    segments_cross,
)
from generator.drawings.hatches import Hatch
from generator.drawings.lettering import Weight, extent
from generator.drawings.pens import FILLER, GAP, INK, LEADER, Pen

Anchor = Literal["start", "middle", "end"]
Layer = Literal["outline", "dimension"]
TextKind = Literal["title", "figure", "note", "letter", "key letter", "small letter"]

PAPER = 175.0
PHONE = 80.0
_NARROW = 120.0
_THUMBNAIL = 60.0
_DARK = frozenset({FILLER, GAP})
_BENCH_FROM = 100.0
# A bench card is read at arm's length in poor light: nothing on it is smaller than 12 points, 4.24 mm.
_EMS: dict[str, dict[TextKind, float]] = {
    "bench": {
        "title": 4.8,
        "figure": 4.6,
        "note": 4.24,
        "letter": 5.2,
        "key letter": 4.8,
        "small letter": 4.4,
    },
    "paper": {
        "title": 4.2,
        "figure": 3.5,
        "note": 3.3,
        "letter": 4.8,
        "key letter": 4.5,
        "small letter": 4.2,
    },
    "phone": {
        "title": 4.4,
        "figure": 3.8,
        "note": 3.7,
        "letter": 4.8,
        "key letter": 4.6,
        "small letter": 4.4,
    },
}
# Obstacles are kept by the square they fall in, so that a label asks only its neighbours.
_CELL = 8.0
_Piece = tuple[float, float, float, float, float, Segment]
BOX_GAP = 0.3
STROKE_GAP = 0.12


@dataclass(frozen=True, slots=True, kw_only=True)
class Stroke:
    """One line as drawn: its points in paper mm, pen and layer; `exempt` strokes may touch a text's box."""

    points: Points
    pen: Pen
    layer: Layer = "outline"
    closed: bool = False
    exempt: bool = False
    filled: str | None = None

    @property
    def segments(self) -> Iterator[Segment]:
        """The straight pieces of the stroke."""
        ends = (*self.points, self.points[0]) if self.closed else self.points
        for (x1, y1), (x2, y2) in itertools.pairwise(ends):
            yield x1, y1, x2, y2


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """One place a label could stand: baseline point, anchor, turn, and the strokes that would lead to it."""

    x: float
    y: float
    anchor: Anchor = "middle"
    upright: bool = False
    strokes: tuple[Stroke, ...] = ()
    margin: float = 0.0
    within: Points = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Text:
    """A line of text as placed: baseline point in paper mm, and the box it fills."""

    text: str
    x: float
    y: float
    em: float
    box: Box
    anchor: Anchor = "start"
    weight: Weight = "regular"
    colour: str = INK
    upright: bool = False
    hatch_gap: float = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class Zone:
    """Where a view's labels may stand: a box, or the inside of a detail ring."""

    box: Box
    disc: Disc | None = None

    def admits(self, box: Box, rings: Sequence[Disc]) -> bool:
        """Whether a label's box may stand here, clear of every other ring."""
        if self.disc is not None:
            return self.disc.holds(box.grown(0.5))
        return self.box.holds(box) and all(ring.clear_of(box.grown(0.5)) for ring in rings)


@dataclass(frozen=True, slots=True, kw_only=True)
class Label:
    """A text waiting for its place, with its possible spots in order of choice.

    `words` is what the notes say if no spot is free, so that a printed figure never vanishes.
    """

    text: str
    kind: TextKind
    spots: Iterable[Spot]
    zone: Zone
    words: str
    weight: Weight = "regular"
    colour: str = INK


@dataclass(frozen=True, slots=True, kw_only=True)
class HatchedArea:
    """A polygon in paper mm and the pattern it is to carry."""

    polygon: Points
    hatch: Hatch


@dataclass(frozen=True, slots=True, kw_only=True)
class Outline:
    """A named part's outline: in real mm as given, and in paper mm as laid on the sheet."""

    name: str
    real: Points
    paper: Points
    scale: float


@dataclass(slots=True, kw_only=True)
class Sheet:
    """Everything laid on one sheet; coordinates are paper mm, x to the right and y down."""

    width: float
    height: float = 0.0
    fills: list[tuple[Points, str]] = field(default_factory=list)
    hatches: list[HatchedArea] = field(default_factory=list)
    strokes: list[Stroke] = field(default_factory=list)
    texts: list[Text] = field(default_factory=list)
    outlines: dict[str, Outline] = field(default_factory=dict)
    waiting: list[Label] = field(default_factory=list)
    rings: list[Disc] = field(default_factory=list)
    unplaced: list[str] = field(default_factory=list)
    dark: list[Points] = field(default_factory=list)
    _cells: dict[tuple[int, int], list[_Piece]] = field(default_factory=dict)
    _leaders: list[Segment] = field(default_factory=list)

    @property
    def narrow(self) -> bool:
        """Whether the sheet is laid out for a phone."""
        return self.width < _NARROW

    @property
    def thumbnail(self) -> bool:
        """Whether the sheet is a thumbnail: outlines of one weight, no text, no hatch."""
        return self.width < _THUMBNAIL

    def em(self, kind: TextKind) -> float:
        """Return the em in mm for a kind of text on this sheet."""
        return _EMS[self._reader][kind]

    @property
    def bench(self) -> bool:
        """Whether the sheet is laid out for a bench card."""
        return self.narrow and self.width >= _BENCH_FROM

    @property
    def _reader(self) -> str:
        if not self.narrow:
            return "paper"
        return "bench" if self.bench else "phone"

    def fill(self, points: Points, colour: str) -> None:
        """Lay a flat fill; text keeps off a dark one."""
        self.fills.append((points, colour))
        if colour in _DARK:
            self.dark.append(points)

    def hatch(self, polygon: Points, hatch: Hatch) -> None:
        """Ask for a pattern; it is cut when every text box is known."""
        if not self.thumbnail:
            self.hatches.append(HatchedArea(polygon=polygon, hatch=hatch))

    def stroke(self, stroke: Stroke) -> None:
        """Lay a line and remember it as an obstacle to text."""
        self.strokes.append(stroke)
        if stroke.exempt:
            return
        reach = STROKE_GAP + stroke.pen.width / 2
        for segment in stroke.segments:
            self._remember(segment, reach)

    def _remember(self, segment: Segment, reach: float) -> None:
        x1, y1, x2, y2 = segment
        left, right = (x1, x2) if x1 < x2 else (x2, x1)
        top, bottom = (y1, y2) if y1 < y2 else (y2, y1)
        piece = (left, top, right, bottom, reach, segment)
        for column in range(int((left - reach) // _CELL), int((right + reach) // _CELL) + 1):
            for row in range(int((top - reach) // _CELL), int((bottom + reach) // _CELL) + 1):
                self._cells.setdefault((column, row), []).append(piece)

    def _pieces_near(self, box: Box) -> Iterator[_Piece]:
        for column in range(int(box.left // _CELL), int(box.right // _CELL) + 1):
            for row in range(int(box.top // _CELL), int(box.bottom // _CELL) + 1):
                yield from self._cells.get((column, row), ())

    def line(self, points: Points, pen: Pen, layer: Layer = "outline", closed: bool = False) -> None:
        """Lay a line through points."""
        self.stroke(Stroke(points=points, pen=pen, layer=layer, closed=closed))

    def text(
        self,
        text: str,
        x: float,
        y: float,
        kind: TextKind,
        *,
        anchor: Anchor = "start",
        weight: Weight = "regular",
        colour: str = INK,
        upright: bool = False,
    ) -> Text:
        """Place a line of text where the layout has kept room for it; thumbnails carry none."""
        placed = self._set(text, Spot(x=x, y=y, anchor=anchor, upright=upright), kind, weight, colour)
        if not self.thumbnail:
            self.texts.append(placed)
        return placed

    def label(self, label: Label) -> None:
        """Hand in a label to be placed by `settle`."""
        if not self.thumbnail:
            self.waiting.append(label)

    def settle(self) -> None:
        """Place every waiting label in the first of its spots that touches nothing."""
        for label in self.waiting:
            if not any(self._try(label, spot) for spot in label.spots):
                self.unplaced.append(label.words)
        self.waiting.clear()

    def bottom(self) -> float:
        """Return the lowest point of anything laid so far."""
        lines = (y for stroke in self.strokes for _, y in stroke.points)
        return max((*lines, *(text.box.bottom for text in self.texts)), default=0.0)

    def _set(self, text: str, spot: Spot, kind: TextKind, weight: Weight, colour: str) -> Text:
        em = self.em(kind)
        return Text(
            text=text,
            x=spot.x,
            y=spot.y,
            em=em,
            box=text_box(text, spot, em, weight),
            anchor=spot.anchor,
            weight=weight,
            colour=colour,
            upright=spot.upright,
            hatch_gap=0.9 if "letter" in kind else 0.5,
        )

    def _try(self, label: Label, spot: Spot) -> bool:
        box = text_box(label.text, spot, self.em(label.kind), label.weight)
        if not (label.zone.admits(box, self.rings) and self._fits(box, spot)):
            return False
        if not all(self._clear_stroke(stroke, box) for stroke in spot.strokes):
            return False
        for stroke in spot.strokes:
            self.stroke(stroke)
            if stroke.pen is LEADER:
                self._leaders.extend(stroke.segments)
        self.texts.append(self._set(label.text, spot, label.kind, label.weight, label.colour))
        return True

    def _fits(self, box: Box, spot: Spot) -> bool:
        if not self.free(box.grown(spot.margin)):
            return False
        return not spot.within or all(inside(corner, spot.within) for corner in box.grown(0.3).corners)

    def free(self, box: Box) -> bool:
        """Whether a text's box touches no stroke, no other text and no dark fill, and lies on the sheet."""
        if box.left < 0.2 or box.right > self.width - 0.2 or box.top < 0.2:
            return False
        left, top, right, bottom = box.left, box.top, box.right, box.bottom
        for x1, y1, x2, y2, reach, segment in self._pieces_near(box):
            if (
                x1 < right + reach
                and x2 > left - reach
                and y1 < bottom + reach
                and y2 > top - reach
                and crosses_box(segment, box.grown(reach))
            ):
                return False
        return not self._covered(box)

    def _covered(self, box: Box) -> bool:
        """Whether a box comes near another text or lies on a dark fill."""
        if any(box.near(text.box, BOX_GAP) for text in self.texts):
            return True
        return any(inside(corner, dark) for dark in self.dark for corner in (*box.corners, box.centre))

    def _clear_stroke(self, stroke: Stroke, own: Box) -> bool:
        """Whether a label's own stroke misses every text, the label's too, and every other leader."""
        if stroke.exempt:
            return True
        reach = STROKE_GAP + stroke.pen.width / 2
        boxes = [own, *(text.box for text in self.texts)]
        return not any(
            _touches(segment, box, reach) for segment in stroke.segments for box in boxes
        ) and not any(
            segments_cross(segment, leader) for segment in stroke.segments for leader in self._leaders
        )


def _touches(segment: Segment, box: Box, reach: float) -> bool:
    """Whether a segment comes within reach of a box; most lie so far off that their ends say it."""
    x1, y1, x2, y2 = segment
    if max(x1, x2) < box.left - reach or min(x1, x2) > box.right + reach:
        return False
    if max(y1, y2) < box.top - reach or min(y1, y2) > box.bottom + reach:
        return False
    return crosses_box(segment, box.grown(reach))


def text_box(text: str, spot: Spot, em: float, weight: Weight) -> Box:
    """Return the box a line of text fills at a spot: advances wide, from its lowest to its highest point."""
    width, rise, drop = extent(text, em, weight)
    before = {"start": 0.0, "middle": width / 2, "end": width}[spot.anchor]
    if spot.upright:
        return Box(spot.x - rise, spot.y - width + before, spot.x + drop, spot.y + before)
    return Box(spot.x - before, spot.y - rise, spot.x - before + width, spot.y + drop)


_DOT = circle((0.0, 0.0), 1.0, 0.06)


def dot(x: float, y: float, radius: float, colour: str = INK) -> Stroke:
    """Return a filled dot; it is the end of a leader, so text may come near it."""
    pen = Pen(width=0.01, colour=colour)
    return Stroke(
        points=tuple((x + radius * u, y + radius * v) for u, v in _DOT),
        pen=pen,
        layer="dimension",
        closed=True,
        exempt=True,
        filled=colour,
    )


def arrow(tip: Point, towards: float, colour: str, length: float = 2.6, half: float = 10.0) -> Stroke:
    """Return a filled arrow head with its tip at `tip`, flying in direction `towards` (radians)."""
    spread = math.radians(half)
    reach = length / math.cos(spread)
    back = tuple(
        (tip[0] - reach * math.cos(towards + turn), tip[1] - reach * math.sin(towards + turn))
        for turn in (-spread, spread)
    )
    pen = Pen(width=0.05, colour=colour)
    return Stroke(points=(tip, *back), pen=pen, layer="dimension", closed=True, filled=colour)


def collisions(sheet: Sheet) -> tuple[str, ...]:
    """Return every fault of a finished sheet's lettering: off the sheet, text on text, a line through
    text.
    """
    texts = sheet.texts
    faults = [
        f"{text.text!r} leaves the sheet"
        for text in texts
        if not Box(0, 0, sheet.width, sheet.height).holds(text.box)
    ]
    faults += [
        f"{one.text!r} within {BOX_GAP} of {two.text!r}"
        for i, one in enumerate(texts)
        for two in texts[i + 1 :]
        if one.box.near(two.box, BOX_GAP)
    ]
    return (*faults, *_struck(sheet))


def _struck(sheet: Sheet) -> Iterator[str]:
    for stroke in sheet.strokes:
        reach = STROKE_GAP + stroke.pen.width / 2
        for text in sheet.texts if not stroke.exempt else ():
            box = text.box.grown(reach - 1e-6)
            if any(crosses_box(segment, box) for segment in stroke.segments):
                yield f"{text.text!r} struck by a line at {stroke.points[0]}"
