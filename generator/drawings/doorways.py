"""The doorway seen from the room: head and legs with their long and short points, and the corner enlarged."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from generator.drawings.clipping import Box, Point, Points, rectangle
from generator.drawings.dimensions import Mark, angle_arc, dimension, running
from generator.drawings.figures import Angle, Shape, Size
from generator.drawings.hatches import FLOOR
from generator.drawings.keys import Entry, heading, list_width, margin, paragraph, plain_list, title
from generator.drawings.lettering import extent
from generator.drawings.measures import Measures, section_of
from generator.drawings.pens import (
    ARRIS,
    CUT_NEW,
    ELEVATION_NEW,
    NOTES,
    SQUARE_LINE,
    VISIBLE,
    VISIBLE_STANDING,
)
from generator.drawings.registry import Drawn, drawing
from generator.drawings.sheet import Sheet, Zone
from generator.drawings.views import View, detail_view, dimension_layer, ring_letter
from generator.drawings.words import say

_SCALES = ((0.1, "1:10"), (0.05, "1:20"), (0.04, "1:25"), (0.02, "1:50"), (0.01, "1:100"))
_DETAILS = ((1.0, "1:1"), (0.5, "1:2"), (0.2, "1:5"), (0.1, "1:10"))
# A page takes 256 mm, of which two lines of caption need 9.
_TALLEST = 247.0
_MERGE = 0.7


@dataclass(frozen=True, slots=True, kw_only=True)
class _Doorway:
    """The doorway's sizes; x runs from the left lining's face, y up from the floor (drawn as negative y)."""

    place: str
    opening_width: Size
    opening_height: Size
    first_quirk: Size
    second_quirk: Size
    total_quirk: Size
    architrave_width: Size
    architrave_thickness: Size
    architrave_profile: str
    head_long: Size
    head_short: Size
    leg_long: Size
    leg_short: Size
    saw_angle: Angle
    architrave_measures: Measures | None = None

    @property
    def quirk(self) -> float:
        return self.first_quirk.mm + self.second_quirk.mm

    @property
    def packer_seen(self) -> bool:
        """Whether both quirks are there, so that the packer's edge shows between them."""
        return self.first_quirk.mm > 0 and self.second_quirk.mm > 0

    @property
    def reach(self) -> float:
        """From the lining's face to the architrave's outer edge."""
        return self.quirk + self.architrave_width.mm

    @property
    def whole(self) -> float:
        return self.opening_width.mm + 2 * self.reach

    @property
    def top(self) -> float:
        return self.opening_height.mm + self.reach

    @property
    def foot(self) -> float:
        """How far the legs stop above the floor, from their own long points."""
        return self.top - self.leg_long.mm

    def leg(self, right: bool = False) -> Points:
        inner, outer, foot = -self.quirk, -self.reach, -self.foot
        ring = (
            (outer, foot),
            (outer, -self.top),
            (inner, -self.opening_height.mm - self.quirk),
            (inner, foot),
        )
        return tuple((self.opening_width.mm - x, y) for x, y in reversed(ring)) if right else ring

    def head(self) -> Points:
        wide, high = self.opening_width.mm, self.opening_height.mm
        return (
            (-self.reach, -self.top),
            (wide + self.reach, -self.top),
            (wide + self.quirk, -high - self.quirk),
            (-self.quirk, -high - self.quirk),
        )

    def ring(self, off: float) -> Points:
        """The open line up one side, across and down the other, `off` outside the lining's faces."""
        wide, high = self.opening_width.mm, self.opening_height.mm
        return ((-off, 0.0), (-off, -high - off), (wide + off, -high - off), (wide + off, 0.0))

    def arrises(self) -> tuple[float, ...]:
        """How far outside the lining's face each line of the moulding runs."""
        made = section_of(
            self.architrave_profile,
            self.architrave_width,
            self.architrave_thickness,
            self.architrave_measures,
        )
        return tuple(self.quirk + u for u in made.arrises())


_POINTS = {"a": "long point", "b": "short point"}


def _entries(door: _Doorway) -> tuple[tuple[Entry, ...], tuple[Entry, ...]]:
    """Return the list of pieces and the list of points."""
    pieces = (
        Entry(
            letter="H",
            text=say(
                "head, %(head_long)s long, %(head_short)s short",
                head_long=door.head_long.text,
                head_short=door.head_short.text,
            ),
        ),
        Entry(
            letter="L",
            text=say(
                "left leg, %(leg_long)s long, %(leg_short)s short",
                leg_long=door.leg_long.text,
                leg_short=door.leg_short.text,
            ),
        ),
        Entry(letter="R", text=say("right leg, same, other hand")),
    )
    points = [Entry(letter=letter, text=say(_POINTS[letter])) for letter in _POINTS]
    if door.second_quirk.mm > 0:
        points.append(
            Entry(
                letter="c",
                text=say("second quirk %(second_quirk)s, on the packer", second_quirk=door.second_quirk.text),
            )
        )
    if door.first_quirk.mm > 0:
        points.append(
            Entry(
                letter="d",
                text=say(
                    "first quirk %(first_quirk)s, on the lining edge", first_quirk=door.first_quirk.text
                ),
            )
        )
    return pieces, tuple(points)


def _running_texts(door: _Doorway, narrow: bool) -> tuple[tuple[float, str], ...]:
    """Return a leg's lengths from its foot and their figures, named where the sheet has room for the name."""
    lengths = ((door.leg_short, say("short point")), (door.leg_long, say("long point")))
    return tuple((size.mm, size.text if narrow else f"{size.text} {name}") for size, name in lengths)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Plan:
    """Scale, its name, and the room the running figures take to the right of the doorway."""

    scale: float
    named: str
    beside: float


def _plans(door: _Doorway, sheet: Sheet) -> tuple[_Plan, ...]:
    """Every scale at which the doorway alone fits, the largest first; the smallest where none does."""
    em = sheet.em("figure")
    beside = max(extent(text, em)[0] for _, text in _running_texts(door, sheet.narrow)) + (
        12.0 if sheet.narrow else 18.0
    )
    beside = 3.0 if sheet.thumbnail else beside
    room = sheet.width - margin(sheet) - beside - _left_room(sheet)
    fits = (
        (scale, named)
        for scale, named in _SCALES
        if door.whole * scale <= room and door.top * scale + 40.0 <= _TALLEST
    )
    return tuple(
        _Plan(scale=scale, named=named, beside=beside) for scale, named in (tuple(fits) or _SCALES[-1:])
    )


def _left_room(sheet: Sheet) -> float:
    """Return the room the clear height's dimension takes to the left of the doorway."""
    return 0.0 if sheet.thumbnail else 8.0 if sheet.narrow else 12.0


def _view(door: _Doorway, sheet: Sheet, plan: _Plan, below: float) -> View:
    """Place the doorway: over to the left where the words need the right, else in the middle of what is
    left.
    """
    free = sheet.width - margin(sheet) - plan.beside - door.whole * plan.scale
    crowded = sheet.width - plan.beside > door.whole * plan.scale * 2
    indent = max(_left_room(sheet), min(free, 12.0) if crowded else free * 0.6)
    left = margin(sheet) + indent + door.reach * plan.scale
    floor = below + (1.0 if sheet.thumbnail else 15.0) + door.top * plan.scale
    box = Box(0.5, below, sheet.width - 0.5, floor + 18.0)
    return View(sheet=sheet, scale=plan.scale, origin=(left, floor), zone=Zone(box=box))


def _paint(view: View, door: _Doorway) -> None:
    whole = "new work in elevation"
    view.part("head", door.head(), whole)
    view.part("left leg", door.leg(), whole)
    view.part("right leg", door.leg(right=True), whole)
    if view.sheet.thumbnail:
        return
    for off in _apart(door.arrises(), view.scale, (door.quirk, door.reach)):
        view.line(door.ring(off)[0:4], ARRIS)
    near = [q for q in (door.first_quirk.mm, door.second_quirk.mm) if q > 0]
    if near and min(near) * view.scale >= _MERGE:
        view.line(door.ring(door.first_quirk.mm), VISIBLE, "packer edge")
    view.line(door.ring(0.0), VISIBLE_STANDING, "lining")


def _apart(lines: Sequence[float], scale: float, kept: Sequence[float]) -> tuple[float, ...]:
    """Return the lines that lie far enough from those kept, and from one another, to be told apart on
    paper.
    """
    found: list[float] = []
    for line in lines:
        if all(abs(line - other) * scale >= _MERGE for other in (*kept, *found)):
            found.append(line)
    return tuple(found)


def _floor(view: View, door: _Doorway) -> None:
    sheet, y = view.sheet, view.origin[1]
    left = view.at(-door.reach, 0)[0] - (3.0 if sheet.narrow else 9.0)
    right = view.at(door.opening_width.mm + door.reach, 0)[0] + (3.0 if sheet.narrow else 9.0)
    left, right = max(left, 0.5), min(right, sheet.width - 0.5)
    sheet.line(((left, y), (right, y)), VISIBLE_STANDING.narrowed(0.35))
    sheet.hatch(rectangle(left, y - 0.1, right, y + 2.9), FLOOR)


def _dimensions(view: View, door: _Doorway) -> None:
    wide, high = door.opening_width.mm, door.opening_height.mm
    top, floor = view.at(0, -door.top)[1], view.origin[1]
    outer = view.at(-door.reach, -door.top), view.at(wide + door.reach, -door.top)
    dimension(
        view,
        *outer,
        top - 8.0,
        door.head_long.text,
        say("head to the long points %(head_long)s", head_long=door.head_long.text),
    )
    inner = view.at(-door.quirk, -high), view.at(wide + door.quirk, -high)
    at = view.at(0, -high)[1] + 9.0
    short = (inner[0][0], at), (inner[1][0], at)
    dimension(
        view,
        *short,
        at,
        door.head_short.text,
        say("head to the short points %(head_short)s", head_short=door.head_short.text),
    )
    feet = (view.at(0, 0)[0], floor + 3.0), (view.at(wide, 0)[0], floor + 3.0)
    dimension(
        view,
        *feet,
        floor + 9.0,
        door.opening_width.text,
        say("clear width %(opening_width)s", opening_width=door.opening_width.text),
    )
    edge = view.at(wide + door.reach, 0)[0]
    foot = view.at(0, -door.foot)[1]
    marks = [
        Mark(at=foot - long * view.scale, text=text) for long, text in _running_texts(door, view.sheet.narrow)
    ]
    off = 5.0 if view.sheet.narrow else 9.0
    running(view, edge + off, foot, marks, edge)
    _clear_height(view, door)


def _clear_height(view: View, door: _Doorway) -> None:
    left, text = view.at(-door.reach, 0)[0], door.opening_height.text
    ends = (left, view.at(0, -door.opening_height.mm)[1]), (left, view.origin[1])
    at = left - (5.0 if view.sheet.narrow else 9.0)
    dimension(view, *ends, at, text, say("clear height %(text)s", text=text), direction="upright")


def _letters(view: View, door: _Doorway) -> None:
    parts = [("H", "head", door.head()), ("L", say("left leg"), door.leg())]
    if view.disc is None:
        parts.append(("R", say("right leg"), door.leg(right=True)))
        for letter, name, points in parts:
            view.letter(letter, name, points)
        return
    high, middle = -door.opening_height.mm - door.quirk, door.quirk + door.architrave_width.mm * 0.6
    wants = (
        (-door.quirk, high - door.architrave_width.mm * 0.6),
        (-middle, high + 0.2 * door.architrave_width.mm),
    )
    for (letter, name, points), near in zip(parts, wants, strict=True):
        view.letter(letter, name, points, "small letter", near=near)


def _detail(view: View, door: _Doorway, centre: Point, radius: float) -> None:
    sheet = view.sheet
    fits = (d for d in _DETAILS if door.reach * d[0] <= 1.3 * radius)
    scale, named = next(fits, _DETAILS[-1])
    middle = door.quirk + door.architrave_width.mm * 0.38
    about = (-middle, -door.opening_height.mm - middle)
    sheet.text(
        say("Detail Y, %(named)s", named=named),
        centre[0],
        centre[1] - radius - 2.6,
        "title",
        anchor="middle",
        weight="bold",
    )
    ring = detail_view(view, about, scale, centre, radius)
    _paint_corner(ring, door)
    _corner_dimensions(ring, door)
    ring_letter(view, "Y", about, radius * view.scale / scale)
    _letters(ring, door)
    _corner_points(ring, door)


def _paint_corner(ring: View, door: _Doorway) -> None:
    made = "new work in elevation"
    for name, points in (("head", door.head()), ("left leg", door.leg())):
        ring.part(name, points, made)
    for line in (door.leg(), door.head()):
        ring.line((*line, line[0]), CUT_NEW)
    for off in _apart(door.arrises(), ring.scale, (door.quirk, door.reach)):
        ring.line(door.ring(off)[:3], ARRIS)
    if door.packer_seen:
        ring.line(door.ring(door.first_quirk.mm)[:3], ELEVATION_NEW.narrowed(0.25))
    ring.line(door.ring(0.0)[:3], VISIBLE_STANDING)


def _corner_dimensions(ring: View, door: _Doorway) -> None:
    disc = ring.disc
    assert disc is not None
    x, y = ring.at(-door.quirk, -door.opening_height.mm - door.quirk)
    outer = ring.at(0, -door.top)[1]
    at = disc.x + 0.62 * disc.radius
    text = door.architrave_width.text
    dimension(
        ring,
        (at, outer),
        (at, y),
        at,
        text,
        say("architrave width %(text)s", text=text),
        direction="upright",
        overrun=0,
    )
    turn = math.radians(door.saw_angle.degrees)
    long = 0.62 * disc.radius
    dimension_layer(ring, ((x, y), (x - long - 4, y)), SQUARE_LINE)
    degrees = f"{door.saw_angle.text}°"
    angle_arc(
        ring,
        (x, y),
        long,
        math.pi,
        math.pi + turn,
        degrees,
        say("saw set %(degrees)s off square", degrees=degrees),
    )


def _corner_points(ring: View, door: _Doorway) -> None:
    high = -door.opening_height.mm
    disc = ring.disc
    assert disc is not None
    aside = ring.at(-door.first_quirk.mm / 2, 0)[0] - disc.x
    room = disc.y + math.sqrt(max(disc.radius**2 - aside**2, 0.0)) - ring.at(0, high)[1]
    down = max(room * 0.55, 2.0) / ring.scale
    ring.pointer("a", (-door.reach, -door.top), say("long point"))
    ring.pointer("b", (-door.quirk, high - door.quirk), say("short point"), turns=(-62, -48, -75))
    if door.second_quirk.mm > 0:
        at = (-door.first_quirk.mm - door.second_quirk.mm / 2, high + 0.45 * down)
        ring.pointer(
            "c",
            at,
            say("second quirk %(second_quirk)s", second_quirk=door.second_quirk.text),
            turns=(12, 25, -12, 160),
            dotted=True,
        )
    if door.first_quirk.mm > 0:
        ring.pointer(
            "d",
            (-door.first_quirk.mm / 2, high + down),
            say("first quirk %(first_quirk)s", first_quirk=door.first_quirk.text),
            turns=(12, 25, -12, 160),
            dotted=True,
        )


def _closing(named: str, narrow: bool) -> tuple[str, ...]:
    heights = (say("At the right, up from the leg's foot: short point, long point."),) if narrow else ()
    return (
        *heights,
        say("Long is to the long points, short to the short points. Feet square."),
        say("At %(named)s the quirks are drawn close; detail Y shows both. All in mm.", named=named),
    )


def _words(sheet: Sheet, door: _Doorway, named: str, left: float, top: float, width: float) -> float:
    """Set the lists and the closing notes in one column; return the y below them."""
    pieces, points = _entries(door)
    top = heading(sheet, say("Pieces"), left, top)
    top = plain_list(sheet, pieces, left, top, width) + 2.0
    top = plain_list(sheet, points, left, top, width) + 2.5
    for line in _closing(named, sheet.narrow):
        top = paragraph(sheet, line, left, top, width, NOTES)
    return top


def _furnish(view: View, door: _Doorway, plan: _Plan) -> None:
    """Put detail and lists in the opening if it holds them, else beside the doorway, else under it."""
    sheet = view.sheet
    pieces, points = _entries(door)
    need = list_width(sheet, (*pieces, *points)) + 1.0
    opening = door.opening_width.mm * plan.scale
    top = view.at(0, -door.opening_height.mm)[1]
    right = view.at(door.opening_width.mm + door.reach, 0)[0] + plan.beside
    radius = min(35.0, opening / 2 - 5.0)
    centre = view.at(door.opening_width.mm / 2, 0)[0], top + 30.0 + radius
    left = centre[0] - max(need, 50.0) / 2
    words = left, centre[1] + radius + 8.0, opening - (left - view.origin[0]) - 3
    if opening >= need + 8 and _ends(sheet, door, plan, *words) <= view.origin[1] - 2.0:
        _detail(view, door, centre, radius)
        _words(sheet, door, plan.named, *words)
    elif sheet.width - right >= max(need, 66.0):
        centre = (sheet.width + right) / 2, top + 32.0
        _detail(view, door, centre, 32.0)
        _words(sheet, door, plan.named, right, centre[1] + 40.0, sheet.width - right - 2)
    else:
        _furnish_under(view, door, plan)


def _ends(sheet: Sheet, door: _Doorway, plan: _Plan, left: float, top: float, width: float) -> float:
    """Where the words would end, found on a sheet of their own."""
    return _words(Sheet(width=sheet.width), door, plan.named, left, top, width)


def _furnish_under(view: View, door: _Doorway, plan: _Plan) -> None:
    sheet, radius, left = view.sheet, 33.0, margin(view.sheet)
    floor = view.origin[1] + 26.0
    if sheet.narrow:
        _detail(view, door, (sheet.width / 2, floor + radius), radius)
        _words(sheet, door, plan.named, left, floor + 2 * radius + 6.0, sheet.width - 2 * left)
        return
    _detail(view, door, (left + radius, floor + radius), radius)
    beside = left + 2 * radius + 10.0
    _words(sheet, door, plan.named, beside, floor - 6.0, sheet.width - beside - 4.0)


def _alt(door: _Doorway, named: str) -> str:
    return " ".join(
        (
            say(
                "Elevation of the doorway%(place)s at %(named)s.",
                place=f" {door.place}," if door.place else "",
                named=named,
            ),
            say(
                "Clear width %(opening_width)s mm, clear height %(opening_height)s mm.",
                opening_width=door.opening_width.text,
                opening_height=door.opening_height.text,
            ),
            say("Head %(head_long)s mm to the long points,", head_long=door.head_long.text),
            say("%(head_short)s mm to the short points.", head_short=door.head_short.text),
            say("Each leg %(leg_long)s mm to the long point,", leg_long=door.leg_long.text),
            say(
                "%(leg_short)s mm to the short point; left and right are handed.",
                leg_short=door.leg_short.text,
            ),
            say("Mitres are sawn %(saw_angle)s degrees off square.", saw_angle=door.saw_angle.text),
            say("The enlarged corner shows the %(alt_quirks)s.", alt_quirks=_alt_quirks(door)),
        )
    )


def _alt_quirks(door: _Doorway) -> str:
    if door.packer_seen:
        return say(
            "first quirk of %(first_quirk)s mm and the second quirk of %(second_quirk)s mm",
            first_quirk=door.first_quirk.text,
            second_quirk=door.second_quirk.text,
        )
    return say("quirk of %(total_quirk)s mm", total_quirk=door.total_quirk.text)


@drawing
def doorway_elevation(
    width: float,
    *,
    opening_width: Size,
    opening_height: Size,
    first_quirk: Size,
    second_quirk: Size,
    total_quirk: Size,
    architrave_width: Size,
    architrave_thickness: Size,
    architrave_profile: Shape,
    head_long: Size,
    head_short: Size,
    leg_long: Size,
    leg_short: Size,
    saw_angle: Angle,
    architrave_measures: Measures | None = None,
    place: str = "",
) -> Drawn:
    """Doorway in elevation with long and short points.

    Sizes in mm; heights from the finished floor. The lengths are drawn from the opening, the quirks and
    the width, and printed as given; the moulding's lines lie as `architrave_measures` say, or in its usual
    proportions. The scale is the largest of 1:10 to 1:100 that fits the sheet. Raises UnknownProfile.
    """
    return _laid(_Doorway(**{name: value for name, value in locals().items() if name != "width"}), width)


def _laid(door: _Doorway, width: float) -> Drawn:
    """The doorway at the largest scale that keeps drawing and words on one page."""
    plans = _plans(door, Sheet(width=width))
    drawn = (_at_scale(door, width, plan) for plan in plans)
    return next((one for one in drawn if _on_one_page(one.sheet)), None) or _at_scale(door, width, plans[-1])


def _on_one_page(sheet: Sheet) -> bool:
    """Whether the sheet stays on a page; a phone has no pages."""
    return sheet.narrow or sheet.height <= _TALLEST


def _at_scale(door: _Doorway, width: float, plan: _Plan) -> Drawn:
    sheet = Sheet(width=width)
    words = say(
        "Doorway%(place)s, elevation %(named)s",
        place=f" {door.place}" if door.place else "",
        named=plan.named,
    )
    view = _view(door, sheet, plan, title(sheet, words))
    _paint(view, door)
    _floor(view, door)
    if not sheet.thumbnail:
        _dimensions(view, door)
        _letters(view, door)
        _furnish(view, door, plan)
    sheet.settle()
    _left_out(sheet)
    sheet.height = math.ceil(sheet.bottom() + 3.0)
    pieces, points = _entries(door)
    alt = _alt(door, plan.named)
    return Drawn(sheet=sheet, title=words, alt=alt, scale=plan.named, key=(*pieces, *points))


def _left_out(sheet: Sheet) -> None:
    if sheet.unplaced:
        words = say("Not figured on the view: %(unplaced)s.", unplaced="; ".join(sheet.unplaced))
        left = margin(sheet)
        paragraph(sheet, words, left, sheet.bottom() + 3.0, sheet.width - 2 * left, NOTES)
