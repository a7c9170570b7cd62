"""A straight flight in section: every tread, the rise, the going, the pitch and the whole height."""

from __future__ import annotations

import math
from dataclasses import dataclass

from generator.drawings.clipping import Box, Point, rectangle
from generator.drawings.dimensions import angle_arc, dimension
from generator.drawings.figures import Angle, Size
from generator.drawings.keys import Entry, key, margin, notes, paragraph, title
from generator.drawings.pens import HIDDEN, NOTES, SQUARE_LINE
from generator.drawings.registry import Drawn, drawing
from generator.drawings.sheet import Sheet, Zone
from generator.drawings.views import View, dimension_layer
from generator.drawings.words import say

_SCALES = (
    (0.05, "1:20"), (0.04, "1:25"), (0.02, "1:50"), (0.01, "1:100"), (0.005, "1:200"), (0.002, "1:500"),
    (0.001, "1:1000"),
)  # fmt: skip
_TALLEST = 150.0
_TREAD = 22.0
_FLOOR = 40.0
_LANDING = 500.0
_MOST_TREADS = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class _Flight:
    """The flight; x from the first riser, y up from the finished floor (drawn negative)."""

    place: str
    total_rise: Size
    total_going: Size
    rise: Size
    going: Size
    pitch: Angle
    risers: Size
    stride: Size

    @property
    def treads(self) -> int:
        return int(self.risers.mm) - 1

    def nosing(self, at: int) -> Point:
        """The front of a tread by its place from nought; the last is the landing's."""
        return at * self.going.mm, -(at + 1) * self.rise.mm


def _paint(view: View, flight: _Flight) -> None:
    thick, riser = _TREAD, 12.0
    for at in range(flight.treads):
        x, y = flight.nosing(at)
        view.part(
            f"tread {at + 1}", rectangle(x, y, x + flight.going.mm + riser, y + thick), "new work, small"
        )
        view.part(
            f"riser {at + 1}", rectangle(x, y + thick, x + riser, y + flight.rise.mm), "new work, small"
        )
    x, y = flight.nosing(flight.treads)
    view.part("last riser", rectangle(x, y + _FLOOR, x + riser, y + flight.rise.mm), "new work, small")
    view.part("landing", rectangle(x, y, x + _LANDING, y + _FLOOR), "floor")
    view.part("floor", rectangle(-_LANDING, 0.0, x + _LANDING, _FLOOR), "floor")
    if not view.sheet.thumbnail:
        view.line((flight.nosing(0), flight.nosing(flight.treads)), HIDDEN, "pitch line")


def _sizes(view: View, flight: _Flight) -> None:
    x, y = flight.nosing(flight.treads)
    foot = view.at(0, _FLOOR)[1]
    ends = (view.at(0, 0)[0], foot), (view.at(x, 0)[0], foot)
    dimension(
        view,
        *ends,
        foot + 8.0,
        flight.total_going.text,
        say("total going %(total_going)s", total_going=flight.total_going.text),
    )
    beside = view.at(x + _LANDING, 0)[0] + 7.0
    tall = view.at(x + _LANDING, y), view.at(x + _LANDING, 0)
    words = say("total rise %(total_rise)s", total_rise=flight.total_rise.text)
    dimension(view, *tall, beside, flight.total_rise.text, words, direction="upright")
    start = view.at(*flight.nosing(0))
    long = min(26.0, flight.total_going.mm * view.scale * 0.4)
    dimension_layer(view, (start, (start[0] + long + 3.0, start[1])), SQUARE_LINE)
    turn = math.radians(flight.pitch.degrees)
    angle_arc(
        view,
        start,
        long,
        -turn,
        0.0,
        f"{flight.pitch.text}°",
        say("pitch %(pitch)s°", pitch=flight.pitch.text),
    )


def _entries(flight: _Flight) -> tuple[Entry, ...]:
    return (
        Entry(letter=flight.risers.text, text=say("× rise of %(rise)s", rise=flight.rise.text)),
        Entry(letter=str(flight.treads), text=say("× going of %(going)s", going=flight.going.text)),
    )


def _closing(flight: _Flight) -> tuple[str, ...]:
    return (
        say(
            "Twice the rise and the going: %(stride)s. Finished floor to finished floor; dashed, the pitch "
            "line over the nosings. All in mm.",
            stride=flight.stride.text,
        ),
    )


def _alt(flight: _Flight, named: str) -> str:
    return " ".join(
        (
            say(
                "Section of the straight flight%(place)s at %(named)s.",
                place=f", {flight.place}," if flight.place else "",
                named=named,
            ),
            say(
                "%(risers)s risers of %(rise)s mm make %(total_rise)s mm;",
                risers=flight.risers.text,
                rise=flight.rise.text,
                total_rise=flight.total_rise.text,
            ),
            say(
                "%(treads)s goings of %(going)s mm make %(total_going)s mm.",
                treads=flight.treads,
                going=flight.going.text,
                total_going=flight.total_going.text,
            ),
            say(
                "Pitch %(pitch)s degrees; twice the rise and the going %(stride)s mm.",
                pitch=flight.pitch.text,
                stride=flight.stride.text,
            ),
        )
    )


@drawing
def stair_section(
    width: float,
    *,
    total_rise: Size,
    total_going: Size,
    rise: Size,
    going: Size,
    pitch: Angle,
    risers: Size,
    stride: Size,
    place: str = "",
) -> Drawn:
    """Straight flight of stairs in section.

    Sizes in mm between finished floors. The scale is the largest of 1:20 to 1:1000 that fits the sheet.
    Raises ValueError for fewer than two risers or more than sixty treads.
    """
    flight = _Flight(**{name: value for name, value in locals().items() if name != "width"})
    if not 1 <= flight.treads <= _MOST_TREADS:
        raise ValueError(f"a flight of {flight.treads} treads cannot be drawn")
    sheet = Sheet(width=width)
    wide = total_going.mm + 2 * _LANDING
    room = width - (4.0 if sheet.thumbnail else 2 * margin(sheet) + 10.0)
    fits = (s for s in _SCALES if wide * s[0] <= room and total_rise.mm * s[0] <= _TALLEST)
    scale, named = next(fits, _SCALES[-1])
    words = say("%(place)s, section of the flight, %(named)s", place=place or say("Stair"), named=named)
    below = title(sheet, words)
    left = (width - wide * scale) / 2 if sheet.thumbnail else margin(sheet)
    origin = (left + _LANDING * scale, below + 4.0 + total_rise.mm * scale)
    zone = Zone(box=Box(0.5, below, width - 0.5, origin[1] + 18.0))
    view = View(sheet=sheet, scale=scale, origin=origin, zone=zone)
    _paint(view, flight)
    low = view.at(0, _FLOOR)[1]
    if not sheet.thumbnail:
        _lettering(view, flight, low)
    sheet.height = math.ceil(max(sheet.bottom() + 3.0, low + 3.0))
    return Drawn(sheet=sheet, title=words, alt=_alt(flight, named), scale=named, key=_entries(flight))


def _lettering(view: View, flight: _Flight, low: float) -> None:
    sheet = view.sheet
    _sizes(view, flight)
    sheet.settle()
    top = key(sheet, _entries(flight), low + 14.0) + 1.5
    notes(sheet, _closing(flight), top)
    if sheet.unplaced:
        words = say("Not figured on the view: %(unplaced)s.", unplaced="; ".join(sheet.unplaced))
        paragraph(sheet, words, margin(sheet), sheet.bottom() + 3.0, sheet.width - 2 * margin(sheet), NOTES)
