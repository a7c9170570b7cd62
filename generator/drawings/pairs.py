"""A pair of leaves in one lining: seen from the side they open towards, and their meeting stiles on plan."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from generator.drawings.clipping import Box, Points, rectangle
from generator.drawings.dimensions import Mark, dimension, running
from generator.drawings.figures import Side, Size
from generator.drawings.keys import Entry, key, margin, notes, rule_bar, title
from generator.drawings.lettering import cap
from generator.drawings.pens import HIDDEN, VISIBLE_STANDING
from generator.drawings.registry import Drawn, drawing
from generator.drawings.sheet import Sheet, Zone
from generator.drawings.views import View
from generator.drawings.words import say

_ELEVATIONS = ((0.1, "1:10"), (0.05, "1:20"), (0.04, "1:25"), (0.02, "1:50"), (0.01, "1:100"))
_DETAILS = ((1.0, "1:1"), (0.5, "1:2"))
_TALLEST = 98.0
_LINING, _BARREL, _LATCH, _BOLT_IN = 40.0, 10.0, 60.0, 22.0
_TOUCH = 1.0
_SHOWN = 46.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Pair:
    """Two leaves; x from the left face of the lining, y down from its head."""

    opening_width: Size
    opening_height: Size
    leaf_width: Size
    leaf_height: Size
    leaf_thickness: Size
    hinge_gap: Size
    meeting_gap: Size
    head_gap: Size
    foot_gap: Size
    rebate: Size
    hinge_height: Size
    on_leaf: tuple[Size, ...]
    latch_on_leaf: Size
    bolt_length: Size
    first: str

    def mirrored(self, points: Points) -> Points:
        """Points that were told with the leaf that opens first on the left."""
        if self.first == "left":
            return points
        return tuple((self.opening_width.mm - x, y) for x, y in points)

    @property
    def meets(self) -> float:
        """Where the edge of the leaf that opens first stands, from its own side of the lining."""
        return self.hinge_gap.mm + self.leaf_width.mm

    @property
    def foot(self) -> float:
        return self.head_gap.mm + self.leaf_height.mm

    def leaf_first(self) -> Points:
        return self.mirrored(rectangle(self.hinge_gap.mm, self.head_gap.mm, self.meets, self.foot))

    def leaf_second(self) -> Points:
        """As far as it is seen: its lap lies behind the other leaf."""
        far = self.opening_width.mm - self.hinge_gap.mm
        return self.mirrored(rectangle(self.meets + self.meeting_gap.mm, self.head_gap.mm, far, self.foot))

    def lap(self) -> Points:
        """The hidden edge of the second leaf."""
        x = self.meets + self.meeting_gap.mm - self.rebate.mm
        return self.mirrored(((x, self.head_gap.mm), (x, self.foot)))

    def barrels(self) -> tuple[Points, ...]:
        """The hinges' knuckles in both gaps, from above."""
        half, middle = self.hinge_height.mm / 2, self.hinge_gap.mm / 2
        return tuple(
            rectangle(x - _BARREL / 2, y - half, x + _BARREL / 2, y + half)
            for centre in self.on_leaf
            for y in (self.head_gap.mm + centre.mm,)
            for x in (middle, self.opening_width.mm - middle)
        )

    def bolts(self) -> tuple[Points, ...]:
        """The flush bolts at head and foot of the second leaf."""
        x = self.meets + self.meeting_gap.mm + _BOLT_IN
        ends = ((self.head_gap.mm, 1), (self.foot, -1))
        return tuple(self.mirrored(((x, y), (x, y + way * self.bolt_length.mm))) for y, way in ends)

    def latch(self) -> Points:
        y = self.head_gap.mm + self.latch_on_leaf.mm
        return self.mirrored(((self.meets, y), (self.meets - _LATCH, y)))

    # On plan: x from the edge of the leaf that opens first, y down from the face they open towards.

    def plan_first(self, shown: float) -> Points:
        lap, deep, half = self.rebate.mm, self.leaf_thickness.mm, self.leaf_thickness.mm / 2
        if lap <= 0:
            return self._turned(((-shown, 0.0), (0.0, 0.0), (0.0, deep), (-shown, deep)))
        return self._turned(
            ((-shown, 0.0), (0.0, 0.0), (0.0, half), (-lap, half), (-lap, deep), (-shown, deep))
        )

    def plan_second(self, shown: float) -> Points:
        gap, lap, deep = self.meeting_gap.mm, self.rebate.mm, self.leaf_thickness.mm
        near = deep / 2 + _TOUCH
        if lap <= 0:
            return self._turned(((shown, 0.0), (gap, 0.0), (gap, deep), (shown, deep)))
        return self._turned(
            ((shown, 0.0), (gap, 0.0), (gap, near), (gap - lap, near), (gap - lap, deep), (shown, deep))
        )

    def _turned(self, points: Points) -> Points:
        return points if self.first == "left" else tuple((-x, y) for x, y in points)


def _elevation_scale(pair: _Pair, width: float) -> tuple[float, str]:
    beside = 4.0 if width < 60 else 38.0 if width < 120 else 54.0
    wide, high = pair.opening_width.mm + 2 * _LINING, pair.opening_height.mm + _LINING
    tallest = 46.0 if width < 60 else _TALLEST
    fits = (s for s in _ELEVATIONS if wide * s[0] <= width - beside and high * s[0] <= tallest)
    return next(fits, _ELEVATIONS[-1])


def _lining(pair: _Pair) -> Points:
    wide, high, edge = pair.opening_width.mm, pair.opening_height.mm, _LINING
    return (
        (-edge, high), (-edge, -edge), (wide + edge, -edge), (wide + edge, high), (wide, high), (wide, 0.0),
        (0.0, 0.0), (0.0, high),
    )  # fmt: skip


def _draw_elevation(view: View, pair: _Pair) -> None:
    view.part("lining", _lining(pair), "beyond")
    view.part("leaf that opens first", pair.leaf_first(), "new work in elevation")
    view.part("leaf that stands", pair.leaf_second(), "new work in elevation")
    for number, barrel in enumerate(pair.barrels(), 1):
        view.part(f"hinge {number}", barrel, "steel")
    if not view.sheet.thumbnail:
        _hidden(view, pair)
    middle, floor = pair.opening_width.mm / 2, pair.opening_height.mm
    half = middle + _LINING + 30.0
    view.line(((middle - half, floor), (middle + half, floor)), VISIBLE_STANDING, "floor")


def _hidden(view: View, pair: _Pair) -> None:
    if pair.rebate.mm > 0:
        view.line(pair.lap(), HIDDEN, "lap")
    view.line(pair.latch(), HIDDEN, "latch")
    for at, bolt in enumerate(pair.bolts(), 1):
        view.line(bolt, HIDDEN, f"bolt {at}")


def _elevation_sizes(view: View, pair: _Pair) -> None:
    floor = view.at(0, pair.opening_height.mm)[1]
    first = [view.at(x, 0)[0] for x, _ in pair.leaf_first()]
    ends = (min(first), floor), (max(first), floor)
    dimension(
        view,
        *ends,
        floor + 7.0,
        pair.leaf_width.text,
        say("each leaf %(leaf_width)s wide", leaf_width=pair.leaf_width.text),
    )
    left, right = view.at(0, 0)[0], view.at(pair.opening_width.mm, 0)[0]
    words = say("opening %(opening_width)s", opening_width=pair.opening_width.text)
    dimension(view, (left, floor), (right, floor), floor + 14.0, pair.opening_width.text, words)
    edge = view.at(pair.opening_width.mm + _LINING, 0)[0]
    sizes = [*pair.on_leaf, pair.latch_on_leaf, pair.leaf_height]
    marks = [Mark(at=view.at(0, pair.head_gap.mm + size.mm)[1], text=size.text) for size in sizes]
    running(view, edge + 5.0, view.at(0, pair.head_gap.mm)[1], marks, edge)


def _elevation_letters(view: View, pair: _Pair) -> None:
    view.letter("A", say("leaf that opens first"), pair.leaf_first())
    view.letter("B", say("leaf that stands"), pair.leaf_second())
    side = (-_LINING / 2, pair.opening_height.mm * 0.8)
    view.pointer("F", side, say("lining"), (180, 165, 195, 150), dotted=True)
    x, y = pair.barrels()[0][0]
    view.pointer("H", (x + _BARREL, y + pair.hinge_height.mm / 2), say("hinge"), (20, 35, -20))
    toward = (150, 30) if pair.first == "left" else (30, 150)
    view.pointer("K", pair.latch()[1], say("latch"), (toward[0], 180 - toward[0], 120, 60))
    bolt = pair.bolts()[0][1]
    view.pointer("L", bolt, say("flush bolt"), (60, 120, 45, 135))


def _detail(sheet: Sheet, pair: _Pair, top: float) -> tuple[float, str]:
    """The meeting stiles on plan; return the y below them and the scale's name."""
    head = say("Meeting stiles, plan")
    deep, lap = pair.leaf_thickness.mm, pair.rebate.mm
    room = sheet.width - 2 * margin(sheet) - 26.0
    fits = ((s, n) for s, n in _DETAILS if (2 * lap + 40.0) * s <= room)
    scale, named = next(fits, _DETAILS[-1])
    shown = min(_SHOWN + lap, room / scale / 2)
    sheet.text(f"{head} {named}", margin(sheet), top + cap(sheet.em("note")), "note", weight="bold")
    origin = (margin(sheet) + 6.0 + shown * scale, top + 18.0)
    low = origin[1] + deep * scale
    zone = Zone(box=Box(0.5, top + 5.0, sheet.width - 0.5, low + 16.0))
    view = View(sheet=sheet, scale=scale, origin=origin, zone=zone)
    broken = 3 if lap <= 0 else 5
    view.open_part("first leaf on plan", pair.plan_first(shown), "new timber", (broken,))
    view.open_part("second leaf on plan", pair.plan_second(shown), "standing timber", (broken,))
    _detail_sizes(view, pair, shown)
    view.letter("A", say("leaf that opens first"), pair.plan_first(shown))
    view.letter("B", say("leaf that stands"), pair.plan_second(shown))
    sheet.settle()
    return low + 15.0, named


def _detail_sizes(view: View, pair: _Pair, shown: float) -> None:
    deep, way = pair.leaf_thickness.mm, 1 if pair.first == "left" else -1
    near, gap = view.at(0.0, 0.0), view.at(way * pair.meeting_gap.mm, 0.0)
    words = say("gap at the meeting stiles %(meeting_gap)s", meeting_gap=pair.meeting_gap.text)
    dimension(view, near, gap, near[1] - 7.0, pair.meeting_gap.text, words)
    if pair.rebate.mm > 0:
        back = view.at(-way * pair.rebate.mm, deep)
        ends = back, (near[0], back[1])
        dimension(
            view, *ends, back[1] + 9.0, pair.rebate.text, say("lap %(rebate)s", rebate=pair.rebate.text)
        )
    right = view.at(shown, 0.0)
    ends = right, (right[0], view.at(0, deep)[1])
    words = say("leaf %(leaf_thickness)s thick", leaf_thickness=pair.leaf_thickness.text)
    dimension(view, *ends, right[0] + 9.0, pair.leaf_thickness.text, words, direction="upright")


def _entries(pair: _Pair) -> tuple[Entry, ...]:
    size = f"{pair.leaf_width.text} × {pair.leaf_height.text}"
    return (
        Entry(letter="A", text=say("leaf that opens first, %(size)s", size=size), material="new timber"),
        Entry(
            letter="B", text=say("leaf that stands bolted, %(size)s", size=size), material="standing timber"
        ),
        Entry(
            letter="F",
            text=say(
                "lining, %(opening_width)s × %(opening_height)s clear",
                opening_width=pair.opening_width.text,
                opening_height=pair.opening_height.text,
            ),
        ),
        Entry(
            letter="H",
            text=say(
                "hinges, %(hinge_height)s high, alike on both leaves", hinge_height=pair.hinge_height.text
            ),
        ),
        Entry(
            letter="K",
            text=say("latch, %(latch_on_leaf)s from the leaf's top", latch_on_leaf=pair.latch_on_leaf.text),
        ),
        Entry(
            letter="L",
            text=say("flush bolts, %(bolt_length)s, head and foot", bolt_length=pair.bolt_length.text),
        ),
    )


def _closing(pair: _Pair) -> str:
    lap = (
        say("the lap of B, dashed, lies behind A")
        if pair.rebate.mm > 0
        else say("the meeting edges are plain")
    )
    return say(
        "Seen from the side they open towards, which is above on the plan; %(lap)s. Gaps: hinges "
        "%(hinge_gap)s, meeting stiles %(meeting_gap)s, head %(head_gap)s, foot %(foot_gap)s. All in mm.",
        lap=lap,
        hinge_gap=pair.hinge_gap.text,
        meeting_gap=pair.meeting_gap.text,
        head_gap=pair.head_gap.text,
        foot_gap=pair.foot_gap.text,
    )


def _alt(pair: _Pair, named: str, detail: str) -> str:
    def listed(sizes: Sequence[Size]) -> str:
        return ", ".join(size.text for size in sizes)

    lap = (
        say("lapping by %(rebate)s mm", rebate=pair.rebate.text)
        if pair.rebate.mm > 0
        else say("with plain meeting edges")
    )
    return say(
        "Elevation at %(named)s of a pair of leaves in their lining, seen from the side they open towards, "
        "and their meeting stiles on plan at %(detail)s. Each leaf is %(leaf_width)s by %(leaf_height)s mm "
        "in an opening %(opening_width)s by %(opening_height)s mm, %(lap)s. The %(first)s leaf opens first "
        "and carries the latch, %(latch_on_leaf)s mm from its top; the other stands held by flush bolts "
        "%(bolt_length)s mm long at head and foot. Hinges %(hinge_height)s mm high on both, centres "
        "%(listed)s mm from the leaf's top. Gaps %(hinge_gap)s mm at the hinges, %(meeting_gap)s between the"
        " leaves, %(head_gap)s at the head and %(foot_gap)s at the foot.",
        named=named,
        detail=detail,
        leaf_width=pair.leaf_width.text,
        leaf_height=pair.leaf_height.text,
        opening_width=pair.opening_width.text,
        opening_height=pair.opening_height.text,
        lap=lap,
        first=pair.first,
        latch_on_leaf=pair.latch_on_leaf.text,
        bolt_length=pair.bolt_length.text,
        hinge_height=pair.hinge_height.text,
        listed=listed(pair.on_leaf),
        hinge_gap=pair.hinge_gap.text,
        meeting_gap=pair.meeting_gap.text,
        head_gap=pair.head_gap.text,
        foot_gap=pair.foot_gap.text,
    )


@drawing
def pair_elevation(
    width: float,
    *,
    opening_width: Size,
    opening_height: Size,
    leaf_width: Size,
    leaf_height: Size,
    leaf_thickness: Size,
    hinge_gap: Size,
    meeting_gap: Size,
    head_gap: Size,
    foot_gap: Size,
    rebate: Size,
    hinge_height: Size,
    on_leaf: tuple[Size, ...],
    latch_on_leaf: Size,
    bolt_length: Size,
    first: Side,
    place: str = "",
) -> Drawn:
    """A pair of leaves in their lining, and their meeting stiles on plan.

    Sizes in mm; hinge centres and latch from the leaf's top. `first` is the side of the leaf that opens
    first, seen from the side they open towards; its stile laps over the other by `rebate`, nought for plain
    edges. The elevation is at 1:10 to 1:100, the plan at 1:1 where it fits. Raises ValueError for a pair
    without hinges.
    """
    if not on_leaf:
        raise ValueError("a pair without hinges cannot be drawn")
    pair = _Pair(**{name: value for name, value in locals().items() if name not in ("width", "place")})
    sheet, (scale, named) = Sheet(width=width), _elevation_scale(pair, width)
    words = say("Pair of leaves%(place)s, %(named)s", place=f", {place}" if place else "", named=named)
    detail = _lay(sheet, pair, scale, title(sheet, words))
    return Drawn(sheet=sheet, title=words, alt=_alt(pair, named, detail), scale=named, key=_entries(pair))


def _lay(sheet: Sheet, pair: _Pair, scale: float, top: float) -> str:
    """Lay both views; return the scale of the plan."""
    left = 2.0 if sheet.thumbnail else margin(sheet) + 9.0
    origin = (left + _LINING * scale, top + (1.0 if sheet.thumbnail else 6.0) + _LINING * scale)
    low = origin[1] + pair.opening_height.mm * scale
    zone = Zone(box=Box(0.5, top, sheet.width - 0.5, low + 20.0))
    view = View(sheet=sheet, scale=scale, origin=origin, zone=zone)
    _draw_elevation(view, pair)
    if sheet.thumbnail:
        sheet.height = math.ceil(low + 2.0)
        return "1:1"
    _elevation_sizes(view, pair)
    _elevation_letters(view, pair)
    sheet.settle()
    below, detail = _detail(sheet, pair, max(sheet.bottom(), low + 18.0) + 4.0)
    bottom = key(sheet, _entries(pair), below + 2.0)
    bottom = notes(sheet, (*sheet.unplaced, _closing(pair)), bottom + 1.0)
    if detail == "1:1":
        bottom = rule_bar(sheet, "1:1", bottom + 1.0)
    sheet.height = math.ceil(max(bottom, sheet.bottom()) + 3.0)
    return detail
