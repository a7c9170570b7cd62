"""A stud partition in elevation: every member where it stands, studs numbered, centres run from one end."""

from __future__ import annotations

import math
from dataclasses import dataclass

from generator.drawings.clipping import Box, rectangle
from generator.drawings.dimensions import dimension, origin_ring, spread
from generator.drawings.figures import Part, Size
from generator.drawings.keys import LETTERS, Entry, key, margin, notes, paragraph, title
from generator.drawings.lettering import cap, extent
from generator.drawings.pens import BLUE, DIMENSION, NOTES, VISIBLE_STANDING
from generator.drawings.registry import Drawn, drawing
from generator.drawings.sheet import Sheet, Zone, arrow
from generator.drawings.views import View
from generator.drawings.words import say

_SCALES = (
    (0.1, "1:10"), (0.05, "1:20"), (0.04, "1:25"), (0.02, "1:50"), (0.01, "1:100"), (0.005, "1:200"),
    (0.002, "1:500"), (0.001, "1:1000"),
)  # fmt: skip
_TALLEST = 130.0
_UPRIGHT = ("stud", "trimmer")
_WORDS = {
    "stud": "stud",
    "trimmer": "trimmer, full height",
    "cripple": "cripple over the opening",
    "head": "head of the opening",
    "noggin": "noggin",
    "sole plate": "sole plate, cut out at the opening once fixed",
    "head plate": "head plate",
}
_BROAD = 1.6
_LEAST_FIGURED = 13.0
# Every so many studs is numbered, that no number drifts further than this from its stud.
_STEPS = (1, 2, 5, 10, 20, 50, 500)
_DRIFT = 2.2


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedMember(Part):
    """A piece of the frame: kind, mark, left edge from the left wall, underside from the floor, its sizes."""

    kind: str
    mark: str
    left: Size
    bottom: Size
    width: Size
    height: Size
    centre: Size | None


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedOpening(Part):
    """A door's clear opening between its trimmers."""

    number: Size
    start: Size
    width: Size
    height: Size


@dataclass(frozen=True, slots=True, kw_only=True)
class _Wall:
    """The partition; x from the left wall, y up from the floor (drawn as negative y)."""

    place: str
    length: Size
    height: Size
    stud_length: Size
    members: tuple[PlannedMember, ...]
    openings: tuple[PlannedOpening, ...]

    @property
    def uprights(self) -> tuple[PlannedMember, ...]:
        return tuple(member for member in self.members if member.kind in _UPRIGHT)

    def lengths(self, kind: str) -> tuple[str, ...]:
        """The lengths of a kind of member, each once, in the order they stand."""
        along = [
            m.height if kind in (*_UPRIGHT, "cripple") else m.width for m in self.members if m.kind == kind
        ]
        return tuple(dict.fromkeys(size.text for size in along))


def _scale(wall: _Wall, room: float) -> tuple[float, str]:
    fits = (s for s in _SCALES if wall.length.mm * s[0] <= room and wall.height.mm * s[0] <= _TALLEST)
    return next(fits, _SCALES[-1])


def _view(wall: _Wall, sheet: Sheet, scale: float, below: float, aside: float) -> View:
    left = margin(sheet) + aside
    if sheet.thumbnail:
        left = (sheet.width - wall.length.mm * scale) / 2
    floor = below + (3.0 if sheet.thumbnail else 9.0) + wall.height.mm * scale
    zone = Zone(box=Box(0.5, below, sheet.width - 0.5, floor + 26.0))
    return View(sheet=sheet, scale=scale, origin=(left, floor), zone=zone)


def _outline(member: PlannedMember) -> tuple[tuple[float, float], ...]:
    left, bottom = member.left.mm, -member.bottom.mm
    return rectangle(left, bottom - member.height.mm, left + member.width.mm, bottom)


def _paint(view: View, wall: _Wall) -> None:
    thinnest = min(min(member.width.mm, member.height.mm) for member in wall.members) * view.scale
    material = "new work in elevation" if thinnest >= _BROAD else "new work, small"
    for at, member in enumerate(wall.members):
        view.part(f"{member.kind} {at + 1}", _outline(member), material)
    for opening in wall.openings:
        ends = opening.start.mm, opening.start.mm + opening.width.mm
        for line in (
            ((ends[0], 0.0), (ends[1], -opening.height.mm)),
            ((ends[1], 0.0), (ends[0], -opening.height.mm)),
        ):
            view.line(line, VISIBLE_STANDING.narrowed(0.13))


def _numbers(view: View, wall: _Wall) -> None:
    """Number the full-height studs above the head plate, fanned where they stand close."""
    sheet = view.sheet
    em = sheet.em("figure")
    y = view.at(0, -wall.height.mm)[1] - 2.0
    for step in _STEPS:
        shown = wall.uprights[::step]
        wanted = [view.at(m.left.mm + m.width.mm / 2, 0)[0] for m in shown]
        need = [extent(m.mark, em)[0] + 1.0 for m in shown]
        places = spread(wanted, need, 1.0 + need[0] / 2, sheet.width - 1.0 - need[-1] / 2)
        if all(abs(place - x) <= _DRIFT for place, x in zip(places, wanted, strict=True)):
            break
    for member, place in zip(shown, places, strict=True):
        sheet.text(member.mark, place, y, "figure", anchor="middle")


def _centres(view: View, wall: _Wall) -> None:
    """Run the stud centres from the left wall, as they are marked on both plates."""
    sheet = view.sheet
    line = view.origin[1] + 6.0
    left = view.at(0, 0)[0]
    marks = [(view.at(m.centre.mm, 0)[0], m.centre.text) for m in wall.uprights if m.centre]
    marks.append((view.at(wall.length.mm, 0)[0], wall.length.text))
    if not _room_for_centres(sheet, len(marks)):
        return
    sheet.line(((left, line), (marks[-1][0], line)), DIMENSION, "dimension")
    sheet.line(((left, view.origin[1] + 1.0), (left, line - 1.05)), DIMENSION, "dimension")
    before = left
    for x, _ in marks:
        sheet.line(((x, view.origin[1] + 1.0), (x, line)), DIMENSION, "dimension")
        if x - before >= 3.0:
            sheet.stroke(arrow((x, line), 0.0, BLUE))
        before = x
    origin_ring(view, (left, line))
    _centre_figures(view, marks, line)


def _room_for_centres(sheet: Sheet, count: int) -> bool:
    """Whether the figures of all centres can stand upright beside one another."""
    return count * (cap(sheet.em("figure")) + 1.1) <= sheet.width - margin(sheet) - 3.0


def _centre_figures(view: View, marks: list[tuple[float, str]], line: float) -> None:
    sheet = view.sheet
    em = sheet.em("figure")
    pitch = cap(em) + 1.1
    wanted = [x for x, _ in marks]
    places = spread(wanted, [pitch] * len(wanted), margin(sheet), sheet.width - 3.0)
    for (x, text), place in zip(marks, places, strict=True):
        bend = ((x, line), (x, line + 1.2), (place, line + 3.4), (place, line + 4.2))
        sheet.line(bend, DIMENSION, "dimension")
        sheet.text(text, place + cap(em) / 2, line + 5.0, "figure", anchor="end", colour=BLUE, upright=True)


def _sizes(view: View, wall: _Wall) -> None:
    x = view.at(0, 0)[0] - 7.0
    foot, head = view.at(0, 0), view.at(0, -wall.height.mm)
    dimension(
        view,
        head,
        foot,
        x,
        wall.height.text,
        say("floor to ceiling %(height)s", height=wall.height.text),
        direction="upright",
    )
    for opening in wall.openings:
        if opening.width.mm * view.scale < _LEAST_FIGURED:
            continue
        ends = (view.at(opening.start.mm, 0), view.at(opening.start.mm + opening.width.mm, 0))
        at = view.at(0, -opening.height.mm * 0.22)[1]
        flat = ((ends[0][0], at), (ends[1][0], at))
        dimension(
            view,
            *flat,
            at,
            opening.width.text,
            say("opening %(width)s wide", width=opening.width.text),
            overrun=0,
        )
        far = view.at(opening.start.mm + opening.width.mm * 0.75, 0)[0]
        tall = ((far, view.at(0, 0)[1]), (far, view.at(0, -opening.height.mm)[1]))
        words = say("opening %(height)s high", height=opening.height.text)
        dimension(view, *tall, far, opening.height.text, words, direction="upright", overrun=0)


def _kinds(wall: _Wall) -> tuple[tuple[str, str], ...]:
    """Each kind of member there is with its letter in the key."""
    found = [kind for kind in _WORDS if any(member.kind == kind for member in wall.members)]
    return tuple(zip(LETTERS, found, strict=False))


def _entries(wall: _Wall) -> tuple[Entry, ...]:
    return tuple(Entry(letter=letter, text=_said(wall, kind)) for letter, kind in _kinds(wall))


def _said(wall: _Wall, kind: str) -> str:
    count = sum(member.kind == kind for member in wall.members)
    return f"{count} × {say(_WORDS[kind])}: {', '.join(wall.lengths(kind))}"


def _letters(view: View, wall: _Wall) -> None:
    for letter, kind in _kinds(wall):
        alike = [member for member in wall.members if member.kind == kind]
        shown = alike[len(alike) // 3]
        view.letter(letter, kind, _outline(shown), "small letter")


def _openings(wall: _Wall) -> tuple[str, ...]:
    return tuple(
        say(
            "Opening %(number)s, from %(start)s: %(width)s wide, %(height)s high.",
            number=opening.number.text,
            start=opening.start.text,
            width=opening.width.text,
            height=opening.height.text,
        )
        for opening in wall.openings
    )


def _closing(sheet: Sheet, wall: _Wall) -> tuple[str, ...]:
    centres = [member.centre.text for member in wall.uprights if member.centre]
    listed = (
        ()
        if _room_for_centres(sheet, len(centres) + 1)
        else (say("Centres: %(centres)s.", centres=", ".join(centres)),)
    )
    return (
        *_openings(wall),
        *listed,
        say(
            "Studs are numbered from the left. Run the centres from nought, plates laid together. All in mm."
        ),
    )


def _alt(wall: _Wall, named: str) -> str:
    centres = ", ".join(member.centre.text for member in wall.uprights if member.centre)
    pieces = "; ".join(entry.text for entry in _entries(wall))
    return " ".join(
        (
            say(
                "Elevation of the partition%(place)s at %(named)s.",
                place=f", {wall.place}," if wall.place else "",
                named=named,
            ),
            say(
                "%(length)s mm long and %(height)s mm high.", length=wall.length.text, height=wall.height.text
            ),
            say("Full-height studs from the left at %(centres)s mm to their centres.", centres=centres),
            *_openings(wall),
            say("Members, lengths in mm: %(pieces)s.", pieces=pieces),
        )
    )


@drawing
def partition_elevation(
    width: float,
    *,
    length: Size,
    height: Size,
    stud_length: Size,
    members: tuple[PlannedMember, ...],
    openings: tuple[PlannedOpening, ...],
    place: str = "",
) -> Drawn:
    """Stud partition in elevation, every member in its place.

    Sizes in mm from the left wall and from the floor. The scale is the largest of 1:10 to 1:1000 that fits
    the sheet.
    """
    sheet = Sheet(width=width)
    wall = _Wall(
        place=place, length=length, height=height, stud_length=stud_length, members=members, openings=openings
    )
    aside = 0.0 if sheet.thumbnail else 11.0
    taken = 4.0 if sheet.thumbnail else 2 * margin(sheet) + aside
    scale, named = _scale(wall, width - taken)
    words = say("%(place)s, elevation of the frame, %(named)s", place=place or say("Partition"), named=named)
    view = _view(wall, sheet, scale, title(sheet, words), aside)
    _paint(view, wall)
    if not sheet.thumbnail:
        _lettering(view, wall)
    low = view.origin[1] + 3.0 if sheet.thumbnail else 0.0
    sheet.height = math.ceil(max(sheet.bottom() + 3.0, low))
    return Drawn(sheet=sheet, title=words, alt=_alt(wall, named), scale=named, key=_entries(wall))


def _lettering(view: View, wall: _Wall) -> None:
    sheet = view.sheet
    _numbers(view, wall)
    _centres(view, wall)
    _sizes(view, wall)
    _letters(view, wall)
    sheet.settle()
    top = key(sheet, _entries(wall), sheet.bottom() + 4.0) + 1.5
    notes(sheet, _closing(sheet, wall), top)
    if sheet.unplaced:
        words = say("Not figured on the view: %(unplaced)s.", unplaced="; ".join(sheet.unplaced))
        paragraph(sheet, words, margin(sheet), sheet.bottom() + 3.0, sheet.width - 2 * margin(sheet), NOTES)
