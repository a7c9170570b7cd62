"""An inside corner of skirting: the second board cut to the face of the first, in elevation and on plan."""

from __future__ import annotations

import math
from dataclasses import dataclass

from generator.drawings.clipping import Box, Points, rectangle
from generator.drawings.dimensions import dimension
from generator.drawings.figures import SIDES, Angle, Shape, Side, Size, Substance
from generator.drawings.keys import Entry, key_round, margin, notes, rule_bar, title
from generator.drawings.measures import Measures, section_of
from generator.drawings.pens import VISIBLE, VISIBLE_STANDING
from generator.drawings.registry import Drawn, drawing
from generator.drawings.sheet import Sheet, Zone
from generator.drawings.views import View
from generator.drawings.words import MADE_OF, say
from generator.quantities.profiles import Profile

_SCALES = ((1.0, "1:1"), (0.5, "1:2"), (1 / 3, "1:3"), (0.25, "1:4"), (0.2, "1:5"), (0.1, "1:10"))
_MATERIALS = {"mdf": "new mdf", "timber": "new timber"}
_STUB, _BEYOND = 40.0, 6.0
_BETWEEN, _HEADING = 13.0, 8.5
_TALLEST = 215.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Scribe:
    """A right-hand corner: x to the corner (0) from the left, y down from the top edge or into the room."""

    section: Profile
    height: Size
    thickness: Size
    back_cut: Angle
    material: str
    shape: str
    side: str

    @property
    def lean(self) -> float:
        """How far the back of the cut stands away from the first board, mm."""
        return self.thickness.mm * math.tan(math.radians(self.back_cut.degrees))

    @property
    def stub(self) -> float:
        """How much of each board is shown, mm."""
        return _STUB + self.thickness.mm

    def first(self) -> Points:
        """The first board cut through, its back on the wall at the corner."""
        return tuple((-v, u) for u, v in self.section.points())

    def second(self) -> Points:
        """The second board seen from the room, its end cut to the face of the first."""
        return ((-self.stub, 0.0), *((-v, u) for u, v in self._face()), (-self.stub, self.height.mm))

    def _face(self) -> Points:
        """The section's outline from top to bottom edge: what a board that meets it can touch."""
        points = self.section.points()
        us = [u for u, _ in points]
        start = len(us) - 1 - us[::-1].index(min(us))
        return points[start : us.index(max(us), start) + 1]

    def first_on_plan(self) -> Points:
        return rectangle(-self.thickness.mm, 0.0, 0.0, self.stub)

    def second_on_plan(self) -> Points:
        thick = self.thickness.mm
        return ((-self.stub, 0.0), (-thick - self.lean, 0.0), (-thick, thick), (-self.stub, thick))

    def left_open(self) -> Points:
        """What the leaning cut leaves open behind the face, on plan."""
        thick = self.thickness.mm
        return ((-thick - self.lean, 0.0), (-thick, 0.0), (-thick, thick))

    def turned(self, points: Points) -> Points:
        """The points of a corner on the other hand."""
        return points if self.side == "right" else tuple((-x, y) for x, y in points)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Place:
    scale: float
    named: str


def _place(scribe: _Scribe, width: float) -> _Place:
    room = width - (4.0 if width < 60 else 34.0)
    high = scribe.height.mm + scribe.stub
    rest = 2 * _HEADING + _BETWEEN
    fits = (
        pair
        for pair in _SCALES
        if (scribe.stub + _BEYOND) * pair[0] <= room and high * pair[0] + rest <= _TALLEST
    )
    scale, named = next(fits, _SCALES[-1])
    return _Place(scale=scale, named=named)


def _view(sheet: Sheet, scribe: _Scribe, place: _Place, top: float, high: float) -> View:
    left = 2.0 if sheet.thumbnail else margin(sheet) + 15.0
    wide = (scribe.stub + _BEYOND) * place.scale
    corner = left + (scribe.stub if scribe.side == "right" else _BEYOND) * place.scale
    low = top + high * place.scale
    zone = Zone(box=Box(0.5, top - 2.0, min(left + wide + 14.0, sheet.width - 0.5), low + _BETWEEN - 2.5))
    return View(sheet=sheet, scale=place.scale, origin=(corner, top), zone=zone)


def _elevation(view: View, scribe: _Scribe) -> None:
    high, thick = scribe.height.mm, scribe.thickness.mm
    second = scribe.second()
    view.open_part("second board", scribe.turned(second), "new work in elevation", (len(second) - 1,))
    for u in scribe.section.arrises():
        view.line(scribe.turned(((-scribe.stub, u), (-scribe.section.face_at(u), u))), VISIBLE)
    view.part("first board", scribe.turned(scribe.first()), _MATERIALS[scribe.material])
    view.line(scribe.turned(((0.0, -3.0), (0.0, high + 3.0))), VISIBLE_STANDING, "wall at the corner")
    view.line(scribe.turned(((-scribe.stub, high), (_BEYOND, high))), VISIBLE_STANDING, "floor")
    if view.sheet.thumbnail:
        return
    away = view.at(*scribe.turned(((-scribe.stub, 0.0),))[0])[0]
    at = away - 6.5 if scribe.side == "right" else away + 6.5
    tall, through = scribe.height.text, scribe.thickness.text
    dimension(
        view, (away, view.at(0, 0)[1]), (away, view.at(0, high)[1]), at, tall,
        say("height %(tall)s", tall=tall), direction="upright",
    )  # fmt: skip
    one, two = scribe.turned(((-thick, high), (0.0, high)))
    dimension(
        view, view.at(*one), view.at(*two), view.at(0, high)[1] + 7.0, through,
        say("thickness %(through)s", through=through),
    )  # fmt: skip
    view.letter("A", say("first board"), scribe.turned(scribe.first()))
    view.letter("B", say("second board"), scribe.turned(second))


def _plan(view: View, scribe: _Scribe) -> None:
    second = scribe.second_on_plan()
    view.open_part("second board, on plan", scribe.turned(second), "new work in elevation", (3,))
    view.open_part(
        "first board, on plan", scribe.turned(scribe.first_on_plan()), "new work in elevation", (2,)
    )
    view.line(scribe.turned(((-scribe.stub, 0.0), (0.0, 0.0), (0.0, scribe.stub))), VISIBLE_STANDING, "walls")
    if scribe.lean > 0:
        view.part("left open behind", scribe.turned(scribe.left_open()), "wall side")
    if view.sheet.thumbnail:
        return
    view.letter("A", say("first board"), scribe.turned(scribe.first_on_plan()))
    view.letter("B", say("second board"), scribe.turned(second))
    thick = scribe.thickness.mm
    at = scribe.turned(((-thick - scribe.lean * 0.4, thick * 0.2),))[0]
    view.pointer("c", at, say("cut leaned back %(angle)s°", angle=scribe.back_cut.text))


def _entries(scribe: _Scribe) -> tuple[Entry, ...]:
    made_of = say(MADE_OF[scribe.material])
    return (
        Entry(
            letter="A",
            text=say(
                "First board, %(shape)s, %(made_of)s, %(height)s × %(thickness)s: square into the corner",
                shape=scribe.shape,
                made_of=made_of,
                height=scribe.height.text,
                thickness=scribe.thickness.text,
            ),
            material=_MATERIALS[scribe.material],
        ),
        Entry(
            letter="B",
            text=say("Second board, its end cut to the face of A"),
            material="new work in elevation",
        ),
        Entry(
            letter="c",
            text=say(
                "Cut leaned back %(angle)s°, so that the face touches first", angle=scribe.back_cut.text
            ),
            material="wall side",
        ),
    )


def _heading(sheet: Sheet, words: str, left: float, top: float) -> float:
    if sheet.thumbnail:
        return top + 1.0
    sheet.text(words, left, top + 3.2, "note", weight="bold")
    return top + _HEADING


def _lay(sheet: Sheet, scribe: _Scribe, place: _Place, top: float) -> None:
    left = margin(sheet)
    start = _heading(sheet, say("From the room, A cut through"), left, top)
    elevation = _view(sheet, scribe, place, start, scribe.height.mm)
    _elevation(elevation, scribe)
    low = start + scribe.height.mm * place.scale
    under = _heading(sheet, say("From above"), left, low + (2.0 if sheet.thumbnail else _BETWEEN))
    plan = _view(sheet, scribe, place, under, scribe.stub)
    _plan(plan, scribe)
    sheet.settle()
    low = under + scribe.stub * place.scale
    if sheet.thumbnail:
        sheet.height = float(math.ceil(low + 2.0))
        return
    _round(sheet, scribe, place, start, max(low, sheet.bottom()), elevation.zone.box.right)


def _round(sheet: Sheet, scribe: _Scribe, place: _Place, top: float, low: float, right: float) -> None:
    """Key, notes and rule: the key beside the views where there is room for it."""
    below = key_round(sheet, _entries(scribe), right + 4.0, top, low)
    bottom = notes(sheet, (*sheet.unplaced, say("All in mm.")), below + 2.0)
    if place.scale == 1.0:
        bottom = rule_bar(sheet, say("full size"), bottom + 1.0)
    sheet.height = float(math.ceil(max(bottom, sheet.bottom()) + 3.0))


@drawing
def scribe_detail(
    width: float,
    *,
    shape: Shape,
    height: Size,
    thickness: Size,
    material: Substance,
    back_cut: Angle,
    measures: Measures | None = None,
    side: Side = "right",
    place: str = "",
) -> Drawn:
    """Skirting scribed into a square inside corner.

    Sizes in mm; `shape` is a name in `profiles.PROFILES`, drawn to `measures` or in its usual proportions,
    its moulded edge up; `back_cut` is how far the cut leans back from square; `side` is the corner's, seen
    from the room, with the second board on the wall in front. At full size where the sheet has room. Raises
    ValueError for another side or material, or a cut that leans 30 degrees or more; UnknownProfile for
    another shape.
    """
    if side not in SIDES or material not in _MATERIALS or not 0 <= back_cut.degrees < 30:
        raise ValueError(f"no scribe of {material!r} at the {side}, leaned {back_cut.text} degrees")
    made = _Scribe(
        section=section_of(shape, height, thickness, measures), height=height, thickness=thickness,
        back_cut=back_cut, material=material, shape=shape, side=side,
    )  # fmt: skip
    sheet, where = Sheet(width=width), _place(made, width)
    words = say(
        "Scribe in an inside corner%(place)s, %(named)s",
        place=f", {place}" if place else "",
        named=where.named,
    )
    _lay(sheet, made, where, title(sheet, words))
    alt = say(
        "An inside corner of skirting at %(named)s. The first board, %(height)s by %(thickness)s mm, runs "
        "square into the corner. The end of the second is cut to the outline of its %(shape)s face and "
        "leaned back %(angle)s degrees, so that the face touches first.",
        named=where.named,
        height=height.text,
        thickness=thickness.text,
        shape=shape,
        angle=back_cut.text,
    )
    return Drawn(sheet=sheet, title=words, alt=alt, scale=where.named, key=_entries(made))
