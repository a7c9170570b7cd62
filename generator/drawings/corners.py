"""The corner of an opening out of square: the mitre cut to it, and what plain cuts leave open."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Annotated

from generator.drawings.clipping import Box, Point, Points
from generator.drawings.dimensions import angle_arc
from generator.drawings.figures import SIDES, Angle, OneOf, Side, Size
from generator.drawings.keys import Entry, key, margin, notes, plain_list, rule_bar, title
from generator.drawings.lettering import cap
from generator.drawings.pens import SQUARE_LINE, VISIBLE_STANDING
from generator.drawings.registry import Drawn, drawing
from generator.drawings.sheet import Sheet, Zone
from generator.drawings.views import View, detail_view, dimension_layer, ring_letter
from generator.drawings.words import say

_SCALES = ((1.0, "1:1"), (0.5, "1:2"), (1 / 3, "1:3"), (0.2, "1:5"), (0.1, "1:10"))
_MAGNIFIED = ((2.0, "2:1"), (4.0, "4:1"), (8.0, "8:1"))
_TALLEST = 250.0
_UNDER = 30.0
_KEY = 44.0
_HEADING = 8.0
_OPENS = {"toe": "at the toe, the long points", "heel": "at the heel, the short points"}
_Opens = Annotated[str, OneOf(("", *_OPENS))]
_STUB = 0.22
_SEEN = 1.5
_RING = 19.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Corner:
    """The corner's sizes; x runs from the short point along the head, y down the leg, a left corner."""

    corner: Angle
    head_saw: Angle
    leg_saw: Angle
    head_width: Size
    leg_width: Size
    quirk: Size
    plain_gap: Size
    opens_at: str
    side: str

    @property
    def turn(self) -> float:
        """The corner in radians."""
        return math.radians(self.corner.degrees)

    @property
    def down(self) -> Point:
        """The leg's direction, one mm long."""
        return math.cos(self.turn), math.sin(self.turn)

    @property
    def out(self) -> Point:
        """Square off the leg, away from the opening."""
        return -math.sin(self.turn), math.cos(self.turn)

    @property
    def stub(self) -> float:
        """How far head and leg are shown past their short point."""
        return self.quirk.mm + _STUB * max(self.head_width.mm, self.leg_width.mm) + 5.0

    @property
    def head_run(self) -> float:
        """How far the long point stands past the short point, along the head."""
        return (self.leg_width.mm + self.head_width.mm * math.cos(self.turn)) / math.sin(self.turn)

    @property
    def leg_run(self) -> float:
        """The same along the leg."""
        return (self.head_width.mm + self.leg_width.mm * math.cos(self.turn)) / math.sin(self.turn)

    @property
    def long_point(self) -> Point:
        return -self.head_run, -self.head_width.mm

    def on_leg(self, along: float, outwards: float = 0.0) -> Point:
        """A point of the leg by its distance down from the short point and out from the inner edge."""
        (u, v), (p, q) = self.down, self.out
        return along * u + outwards * p, along * v + outwards * q

    def head(self, short: float, run: float) -> Points:
        """The head with its short point at `short`, its long point `run` further out."""
        high = -self.head_width.mm
        return ((self.stub, high), (self.stub, 0.0), (short, 0.0), (short - run, high))

    def leg(self, short: float, run: float) -> Points:
        """The leg likewise."""
        wide, foot = self.leg_width.mm, self.stub
        return (
            self.on_leg(foot, wide),
            self.on_leg(foot),
            self.on_leg(short),
            self.on_leg(short - run, wide),
        )

    @property
    def plain_starts(self) -> tuple[float, float]:
        """Where the short points of plain cut pieces lie, each on its own line and touching at one end."""
        if self.opens_at != "heel":
            return 0.0, 0.0
        return self.leg_width.mm - self.head_run, self.head_width.mm - self.leg_run

    @property
    def open_between(self) -> Points:
        """The opening that plain cuts leave; empty where they leave none."""
        head, leg = self.plain_starts
        on_head, on_leg = (head, 0.0), self.on_leg(leg)
        if self.opens_at == "heel":
            return (self.long_point, on_head, on_leg)
        if self.opens_at == "toe":
            far = (head - self.leg_width.mm, -self.head_width.mm)
            return (on_head, far, self.on_leg(leg - self.head_width.mm, self.leg_width.mm))
        return ()

    @property
    def widest(self) -> Point:
        """The middle of the open end."""
        _, one, two = self.open_between
        return (one[0] + two[0]) / 2, (one[1] + two[1]) / 2

    @property
    def lining(self) -> Points:
        """The faces of the lining, inside both pieces by the quirk."""
        run = self.quirk.mm / math.tan(self.turn / 2)
        foot = self.on_leg(self.stub, -self.quirk.mm)
        return ((self.stub, self.quirk.mm), (run, self.quirk.mm), foot)

    @property
    def box(self) -> Box:
        """What a view takes up, in real mm."""
        points = (*self.head(*self._furthest[0]), *self.leg(*self._furthest[1]), *self.lining)
        xs, ys = [x for x, _ in points], [y for _, y in points]
        return Box(min(xs), min(ys), max(xs), max(ys))

    @property
    def _furthest(self) -> tuple[tuple[float, float], tuple[float, float]]:
        return (
            (0.0, max(self.head_run, self.leg_width.mm)),
            (0.0, max(self.leg_run, self.head_width.mm)),
        )


def _mirrored(corner: _Corner, points: Points) -> Points:
    return points if corner.side == "left" else tuple((-x, y) for x, y in points)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Plan:
    """The scale and whether the two views stand beside one another."""

    scale: float
    named: str
    beside: bool


def _plan(corner: _Corner, width: float) -> _Plan:
    box, edge = corner.box, 3.0 if width < 60 else 8.0 if width < 120 else 14.0
    wide, high = box.right - box.left, box.bottom - box.top
    room = width - 2 * edge
    for scale, named in _SCALES:
        if 2 * wide * scale + 22.0 <= room and width >= 120 and scale >= 1.0:
            return _Plan(scale=scale, named=named, beside=True)
        if wide * scale <= room and 2 * (high * scale + _HEADING + 3.0) + _UNDER <= _TALLEST:
            return _Plan(scale=scale, named=named, beside=False)
    return _Plan(scale=_SCALES[-1][0], named=_SCALES[-1][1], beside=False)


def _view(sheet: Sheet, corner: _Corner, plan: _Plan, left: float, top: float) -> View:
    box = corner.box
    start = box.left if corner.side == "left" else -box.right
    origin = (left - start * plan.scale, top - box.top * plan.scale)
    low = top + (box.bottom - box.top) * plan.scale
    wide = (box.right - box.left) * plan.scale
    right = left + wide + 12.0 if plan.beside else sheet.width - 0.5
    zone = Zone(box=Box(max(left - 13.0, 0.5), top - 1.0, min(right, sheet.width - 0.5), low + 1.5))
    return View(sheet=sheet, scale=plan.scale, origin=origin, zone=zone)


def _pieces(view: View, corner: _Corner, word: str, head: Points, leg: Points) -> None:
    for name, points in (("head", head), ("leg", leg)):
        turned = _mirrored(corner, points)
        view.open_part(f"{name}, {word}", turned, "new work in elevation", (0,))
    view.line(_mirrored(corner, corner.lining), VISIBLE_STANDING, f"lining, {word}")


def _cut_to_corner(view: View, corner: _Corner) -> None:
    head, leg = corner.head(0.0, corner.head_run), corner.leg(0.0, corner.leg_run)
    _pieces(view, corner, say("cut to the corner"), head, leg)
    if view.sheet.thumbnail:
        return
    _corner_angle(view, corner)
    for square, far, saw, words in (
        ((0.0, -1.0), corner.head_width.mm, corner.head_saw, "head"),
        (corner.out, corner.leg_width.mm, corner.leg_saw, "leg"),
    ):
        _saw_angle(view, corner, square, far, saw, words)
    view.letter("H", say("head"), _mirrored(corner, head), near=_near(corner, (corner.stub * 0.6, -0.7)))
    foot = corner.on_leg(corner.stub * 0.6)
    view.letter(
        "L", say("leg"), _mirrored(corner, leg), near=_near(corner, (-0.7 * corner.leg_width.mm, foot[1]))
    )


def _near(corner: _Corner, at: Point) -> Point:
    (x, y), high = at, corner.head_width.mm
    return _mirrored(corner, ((x, y * high if -1 < y < 0 else y),))[0]


def _paper_angle(corner: _Corner, way: Point) -> float:
    ((x, y),) = _mirrored(corner, (way,))
    return math.atan2(y, x)


def _corner_angle(view: View, corner: _Corner) -> None:
    at = view.at(*_mirrored(corner, (corner.lining[1],))[0])
    start, end = sorted((_paper_angle(corner, (1.0, 0.0)), _paper_angle(corner, corner.down)))
    radius = 0.5 * (corner.stub - corner.quirk.mm) * view.scale
    text = f"{corner.corner.text}°"
    angle_arc(view, at, radius, start, end, text, say("corner %(text)s", text=text))


def _saw_angle(view: View, corner: _Corner, square: Point, far: float, saw: Angle, name: str) -> None:
    at = view.at(0.0, 0.0)
    way, mitre = _paper_angle(corner, square), _paper_angle(corner, corner.long_point)
    reach = far * view.scale
    tip = (at[0] + reach * math.cos(way), at[1] + reach * math.sin(way))
    dimension_layer(view, (at, tip), SQUARE_LINE)
    turn = (mitre - way + math.pi) % (2 * math.pi) - math.pi
    text = f"{saw.text}°"
    start, end = sorted((way, way + turn))
    angle_arc(
        view,
        at,
        0.62 * reach,
        start,
        end,
        text,
        say("saw for the %(name)s set %(text)s off square", name=name, text=text),
    )


def _cut_plain(view: View, corner: _Corner) -> None:
    starts = corner.plain_starts
    head = corner.head(starts[0], corner.leg_width.mm)
    leg = corner.leg(starts[1], corner.head_width.mm)
    _pieces(view, corner, say("cut plain"), head, leg)
    if corner.opens_at:
        view.part("opening left by plain cuts", _mirrored(corner, corner.open_between), "wall side")


def _small(corner: _Corner, plan: _Plan) -> bool:
    """Whether the opening is too narrow on paper to be seen without a detail."""
    return bool(corner.opens_at) and corner.plain_gap.mm * plan.scale < _SEEN


def _ring(view: View, corner: _Corner, plan: _Plan, below: float) -> float:
    """Enlarge the open end where it would be too small to see; return the y below the view and its ring."""
    if not _small(corner, plan) or view.sheet.thumbnail:
        return below
    enough = max(_SEEN / corner.plain_gap.mm, 4 * plan.scale)
    scale, named = next((each for each in _MAGNIFIED if each[0] >= enough), _MAGNIFIED[-1])
    about = _mirrored(corner, (corner.widest,))[0]
    box, sheet = corner.box, view.sheet
    right = view.zone.box.left + 13.0 + (box.right - box.left) * plan.scale + 8.0
    beside = not plan.beside and right + 2 * _RING < sheet.width - 3.0
    x = right + _RING if beside else sheet.width / 2
    y = view.origin[1] + box.bottom * plan.scale - _RING - 3.0 if beside else below + 9.0 + _RING
    ring = detail_view(view, about, scale, (x, y), _RING)
    _cut_plain(ring, corner)
    ring_letter(view, "X", about, _RING * plan.scale / scale)
    sheet.text(
        say("Detail X, %(named)s", named=named), x, y - _RING - 1.6, "title", anchor="middle", weight="bold"
    )
    return max(below, y + _RING + 2.0)


def _entries(corner: _Corner) -> tuple[Entry, ...]:
    found = [
        Entry(
            letter="H",
            text=say(
                "head, %(head_width)s; saw %(head_saw)s° off square",
                head_width=corner.head_width.text,
                head_saw=corner.head_saw.text,
            ),
        ),
        Entry(
            letter="L",
            text=say(
                "leg, %(leg_width)s; saw %(leg_saw)s° off square",
                leg_width=corner.leg_width.text,
                leg_saw=corner.leg_saw.text,
            ),
        ),
    ]
    if corner.opens_at:
        words = say(
            "open %(plain_gap)s %(opens_at)s",
            plain_gap=corner.plain_gap.text,
            opens_at=say(_OPENS[corner.opens_at]),
        )
        found.append(Entry(letter="a", text=words, material="wall side"))
    return tuple(found)


def _alt(corner: _Corner, named: str) -> str:
    lost = (
        say(
            "Cut plain, as for a square corner, they stand open %(plain_gap)s mm %(opens_at)s.",
            plain_gap=corner.plain_gap.text,
            opens_at=say(_OPENS[corner.opens_at]),
        )
        if corner.opens_at
        else say("Plain cuts leave nothing open.")
    )
    return say(
        "The %(side)s top corner of the opening at %(named)s, %(corner)s degrees, with architrave "
        "%(head_width)s mm wide on the head and %(leg_width)s mm on the leg, %(quirk)s mm back from the "
        "lining. The head is sawn %(head_saw)s degrees and the leg %(leg_saw)s degrees off square. %(lost)s",
        side=corner.side,
        named=named,
        corner=corner.corner.text,
        head_width=corner.head_width.text,
        leg_width=corner.leg_width.text,
        quirk=corner.quirk.text,
        head_saw=corner.head_saw.text,
        leg_saw=corner.leg_saw.text,
        lost=lost,
    )


@drawing
def mitre_detail(
    width: float,
    *,
    corner: Angle,
    head_saw: Angle,
    leg_saw: Angle,
    head_width: Size,
    leg_width: Size,
    quirk: Size,
    plain_gap: Size,
    opens_at: _Opens,
    side: Side,
    place: str = "",
) -> Drawn:
    """Mitre of a corner out of square, and what plain cuts leave open.

    Sizes in mm; `corner` between the lining's faces, saw angles from a square cut; `opens_at` is toe, heel or
    empty, `side` left or right. At full size where the sheet has room. Raises ValueError for another word or
    a corner that is none.
    """
    if side not in SIDES or opens_at not in ("", *_OPENS) or not 10 < corner.degrees < 170:
        raise ValueError(f"no corner of {corner.text} degrees on the {side} opening at the {opens_at}")
    made = _Corner(
        corner=corner, head_saw=head_saw, leg_saw=leg_saw, head_width=head_width, leg_width=leg_width,
        quirk=quirk, plain_gap=plain_gap, opens_at=opens_at, side=side,
    )  # fmt: skip
    plan, sheet = _plan(made, width), Sheet(width=width)
    where = f", {place}" if place else ""
    words = say(
        "Mitre at the %(side)s top corner%(where)s, %(named)s", side=side, where=where, named=plan.named
    )
    bottom = _views(sheet, made, plan, title(sheet, words))
    _below(sheet, made, plan, bottom)
    return Drawn(sheet=sheet, title=words, alt=_alt(made, plan.named), scale=plan.named, key=_entries(made))


def _views(sheet: Sheet, corner: _Corner, plan: _Plan, top: float) -> float:
    box = corner.box
    wide, high = (box.right - box.left) * plan.scale, (box.bottom - box.top) * plan.scale
    left = 1.5 if sheet.thumbnail else margin(sheet) + (4.0 if sheet.narrow else 5.0)
    over = 5.0 if _small(corner, plan) and corner.opens_at == "toe" and not sheet.thumbnail else 0.0
    step = (wide + 22.0, 0.0) if plan.beside else (0.0, high + _HEADING + 3.0 + over)
    gap = 0.0 if sheet.thumbnail else _HEADING
    first = _view(sheet, corner, plan, left, top + gap)
    _heading(sheet, say("Cut to the corner"), left, top)
    _cut_to_corner(first, corner)
    second = _view(sheet, corner, plan, left + step[0], top + gap + step[1])
    _heading(sheet, say("Cut plain"), left + step[0], top + step[1] - over)
    _cut_plain(second, corner)
    bottom = _ring(second, corner, plan, top + gap + step[1] + high + 2.0)
    if corner.opens_at:
        at = _mirrored(corner, (corner.widest,))[0]
        second.pointer("a", at, say("open %(plain_gap)s", plain_gap=corner.plain_gap.text))
    sheet.settle()
    column = left + wide + 14.0
    if not (sheet.narrow or plan.beside) and sheet.width - column >= _KEY:
        plain_list(sheet, _entries(corner), column, top + gap, sheet.width - column - margin(sheet) / 2)
        return bottom
    return key(sheet, _entries(corner), bottom + 3.0)


def _heading(sheet: Sheet, words: str, left: float, top: float) -> None:
    sheet.text(words, left, top + 2.0 + cap(sheet.em("note")), "note", weight="bold")


def _below(sheet: Sheet, corner: _Corner, plan: _Plan, top: float) -> None:
    if sheet.thumbnail:
        sheet.height = math.ceil(top + 1.0)
        return
    lines = [*sheet.unplaced, say("Quirk %(quirk)s all round. All in mm.", quirk=corner.quirk.text)]
    bottom = notes(sheet, lines, top + 2.0)
    if plan.scale == 1.0:
        bottom = rule_bar(sheet, say("full size"), bottom + 1.0)
    sheet.height = math.ceil(max(bottom, sheet.bottom()) + 3.0)
