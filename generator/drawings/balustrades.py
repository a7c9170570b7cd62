"""Balusters between two newels, on the level or up a rake, with the gap that a sphere meets."""

from __future__ import annotations

import math
from dataclasses import dataclass

from generator.drawings.clipping import Box, Points, rectangle
from generator.drawings.dimensions import angle_arc, dimension
from generator.drawings.figures import Angle, Size
from generator.drawings.keys import Entry, key, margin, notes, paragraph, title
from generator.drawings.pens import HIDDEN, NOTES, SQUARE_LINE
from generator.drawings.registry import Drawn, drawing
from generator.drawings.sheet import Sheet, Zone
from generator.drawings.views import View, dimension_layer
from generator.drawings.words import say

_SCALES = (
    (0.1, "1:10"), (0.05, "1:20"), (0.04, "1:25"), (0.02, "1:50"), (0.01, "1:100"), (0.005, "1:200"),
    (0.002, "1:500"), (0.001, "1:1000"),
)  # fmt: skip
_TALLEST = 150.0
_NEWEL, _RAIL, _STANDS = 90.0, 60.0, 120.0
_STRING, _FLOOR = 220.0, 40.0
_BESIDE = 9.0
_BROAD = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Run:
    """The run; x from the first newel's face, y up from the pitch line or floor there (drawn negative)."""

    place: str
    run: Size
    rise: Size
    pitch: Angle
    height: Size
    baluster: Size
    gap: Size
    fillet: Size
    rake: Size
    count: Size
    centres: tuple[Size, ...]
    end_gap: Size | None
    length: Size | None
    base_up: Size | None
    handrail_depth: Size | None
    base_depth: Size | None

    @property
    def slope(self) -> float:
        return self.rise.mm / self.run.mm

    @property
    def sloping(self) -> bool:
        return self.pitch.degrees > 0

    @property
    def seat(self) -> float:
        """Where the base rail lies; half sunk where its seat is not given."""
        return self.base_up.mm if self.base_up else 0.0 if self.base_depth else -_RAIL / 2

    @property
    def foot(self) -> float:
        """The top of the base rail."""
        return self.seat + (self.base_depth.mm if self.base_depth else _RAIL / 2)

    @property
    def head(self) -> float:
        """The underside of the handrail."""
        return self.height.mm - (self.handrail_depth.mm if self.handrail_depth else _RAIL)

    @property
    def below(self) -> float:
        """How far anything reaches below the line the height is measured from."""
        return _STRING - self.seat if self.sloping and self.base_up else _STANDS

    def band(self, left: float, right: float, low: float, high: float) -> Points:
        """An upright-sided piece between two heights above the sloping foot line."""
        at, to = self.slope * left, self.slope * right
        return ((left, -at - high), (right, -to - high), (right, -to - low), (left, -at - low))


def _scale(run: _Run, room: float) -> tuple[float, str]:
    wide = run.run.mm + 2 * _NEWEL
    high = run.rise.mm + run.height.mm + _STANDS + run.below
    return next((s for s in _SCALES if wide * s[0] <= room and high * s[0] <= _TALLEST), _SCALES[-1])


def _paint(view: View, run: _Run) -> None:
    long, tall, half = run.run.mm, run.height.mm, run.baluster.mm / 2
    small = run.baluster.mm * view.scale < _BROAD
    material = "new work, small" if small else "new work in elevation"
    top = run.rise.mm + tall
    _under(view, run)
    view.part("first newel", rectangle(-_NEWEL, -tall - _STANDS, 0.0, run.below), "beyond")
    last = rectangle(long, -top - _STANDS, long + _NEWEL, -run.rise.mm + run.below)
    view.part("last newel", last, "beyond")
    for at, centre in enumerate(run.centres, 1):
        points = run.band(centre.mm - half, centre.mm + half, run.foot, run.head)
        view.part(f"baluster {at}", points, material)
    view.part("handrail", run.band(0.0, long, run.head, tall), "new work in elevation")
    view.part("base rail", run.band(0.0, long, run.seat, run.foot), "new work in elevation")


def _under(view: View, run: _Run) -> None:
    """String and pitch line on a rake, the floor on a landing, where the base rail's place is known."""
    long = run.run.mm
    if run.sloping and run.base_up:
        view.part("string", run.band(0.0, long, run.seat - _STRING, run.seat), "beyond")
        if not view.sheet.thumbnail:
            view.line(((0.0, 0.0), (long, -run.rise.mm)), HIDDEN, "pitch line")
    elif not run.sloping and run.base_depth:
        view.part("floor", rectangle(0.0, 0.0, long, _FLOOR), "floor")


def _sizes(view: View, run: _Run) -> None:
    foot = view.at(0, run.below)[1]
    ends = (view.at(0, 0)[0], foot), (view.at(run.run.mm, 0)[0], foot)
    dimension(view, *ends, foot + 9.0, run.run.text, say("level between newels %(run)s", run=run.run.text))
    if run.base_depth:
        tall = view.at(-_NEWEL, -run.height.mm), view.at(-_NEWEL, 0.0)
        words = say("height %(height)s", height=run.height.text)
        dimension(view, *tall, tall[0][0] - _BESIDE, run.height.text, words, direction="upright")
    if run.centres:
        _gap(view, run)
    if run.sloping:
        x, y = view.at(0, -run.seat + _STRING if run.base_up else -run.seat)
        long = min(24.0, run.run.mm * view.scale * 0.5)
        dimension_layer(view, ((x, y), (x + long + 3, y)), SQUARE_LINE)
        words = say("pitch %(pitch)s°", pitch=run.pitch.text)
        turn = math.radians(run.pitch.degrees)
        angle_arc(view, (x, y), long, -turn, 0.0, f"{run.pitch.text}°", words)


def _letters(view: View, run: _Run) -> None:
    tall, half = run.height.mm, run.baluster.mm / 2
    if run.centres:
        centre = run.centres[len(run.centres) // 3].mm
        points = run.band(centre - half, centre + half, run.foot, run.head)
        view.letter("A", say("baluster"), points, turns=(-150, 150, -120, 30))
    end = run.centres[0].mm - half if run.centres else run.run.mm
    low = run.band(0.0, end, run.seat, run.foot)
    middle = (low[0][0] + low[1][0]) / 2, (low[0][1] + low[2][1]) / 2
    view.pointer("B", middle, say("fillet"), turns=(150, 120, 165), dotted=True)
    view.letter("C", say("handrail"), run.band(0.0, run.run.mm, run.head, tall), turns=(-120, -60, -100))


def _gap(view: View, run: _Run) -> None:
    """Figure one gap, level, between two balusters near the middle."""
    middle = len(run.centres) // 2
    right = run.centres[middle].mm - run.baluster.mm / 2
    left = run.centres[middle - 1].mm + run.baluster.mm / 2 if middle else 0.0
    level = -run.slope * left - run.height.mm * 0.5
    ends = view.at(left, level), view.at(right, level)
    words = say("gap %(gap)s", gap=run.gap.text)
    dimension(view, *ends, ends[0][1], run.gap.text, words, ends=(False, False), overrun=0)


def _entries(run: _Run) -> tuple[Entry, ...]:
    cut = say(" along the rake, ends to %(pitch)s°", pitch=run.pitch.text) if run.sloping else ""
    along = say(" along the rake") if run.sloping else ""
    count = say("%(count)s balusters %(baluster)s wide", count=run.count.text, baluster=run.baluster.text)
    cut_to = f"{', ' if run.sloping else say(', cut ')}{run.length.text}" if run.length else ""
    edge = say("%(cut_to)s along the edge", cut_to=cut_to) if run.length and run.sloping else cut_to
    ends = say(", %(end_gap)s at newels", end_gap=run.end_gap.text) if run.end_gap else ""
    return (
        Entry(
            letter="A",
            text=say(
                "%(count)s%(edge)s; gaps %(gap)s level%(ends)s",
                count=count,
                edge=edge,
                gap=run.gap.text,
                ends=ends,
            ),
        ),
        Entry(
            letter="B",
            text=say("fillet between balusters, %(fillet)s%(cut)s", fillet=run.fillet.text, cut=cut),
        ),
        Entry(
            letter="C", text=say("rail between newels, %(rake)s%(along)s", rake=run.rake.text, along=along)
        ),
    )


def _closing(run: _Run) -> tuple[str, ...]:
    first = ", ".join(centre.text for centre in run.centres[:4])
    more = say(" and so on") if len(run.centres) > 4 else ""
    marks = (
        say("Centres, level from the first newel: %(first)s%(more)s. ", first=first, more=more)
        if run.centres
        else ""
    )
    line = (
        say("Dashed, the pitch line, from which the height is plumb. ") if run.sloping and run.base_up else ""
    )
    sketched = say("Newels and what lies below are") if run.base_depth else say("Newels and rails are")
    return (
        say(
            "%(marks)sThe gap is measured level whatever the pitch. %(line)s%(sketched)s sketched. All in "
            "mm.",
            marks=marks,
            line=line,
            sketched=sketched,
        ),
    )


def _alt(run: _Run, named: str) -> str:
    rake = (
        say(
            "at a pitch of %(pitch)s degrees, rail %(rake)s mm along the rake, fillets %(fillet)s mm",
            pitch=run.pitch.text,
            rake=run.rake.text,
            fillet=run.fillet.text,
        )
        if run.sloping
        else say("on the level")
    )
    high = say(" Top of the rail %(height)s mm high.", height=run.height.text) if run.base_depth else ""
    return " ".join(
        (
            say(
                "Elevation of the balustrade%(place)s at %(named)s, %(rake)s.",
                place=f", {run.place}," if run.place else "",
                named=named,
                rake=rake,
            ),
            say(
                "%(count)s balusters %(baluster)s mm wide in %(run)s mm between newels,",
                count=run.count.text,
                baluster=run.baluster.text,
                run=run.run.text,
            ),
            say(
                "gaps %(gap)s mm measured level%(at_newels)s.%(high)s",
                gap=run.gap.text,
                at_newels=_at_newels(run),
                high=high,
            ),
        )
    )


def _titled(run: _Run, named: str) -> str:
    place = run.place or say("Balustrade")
    if run.sloping:
        return say("%(place)s, rake, %(scale)s", place=place, scale=named)
    return say("%(place)s, landing, %(scale)s", place=place, scale=named)


def _at_newels(run: _Run) -> str:
    return say(", %(end_gap)s mm at either newel", end_gap=run.end_gap.text) if run.end_gap else ""


@drawing
def baluster_rake(
    width: float,
    *,
    run: Size,
    rise: Size,
    pitch: Angle,
    height: Size,
    baluster: Size,
    gap: Size,
    fillet: Size,
    rake: Size,
    count: Size,
    centres: tuple[Size, ...],
    end_gap: Size | None = None,
    length: Size | None = None,
    base_up: Size | None = None,
    handrail_depth: Size | None = None,
    base_depth: Size | None = None,
    place: str = "",
) -> Drawn:
    """Balusters between two newels, level or up a rake.

    Sizes in mm, the run and the gap measured level; `height` is from the pitch line to the handrail's top. A
    pitch of 0 draws a landing. `end_gap` is at either newel, `length` the baluster's along its edge; depths
    of the rails are plumb, as is `base_up` from the pitch line to the base rail. With the depths the rails
    are drawn to size and the height is figured. The scale is the largest of 1:10 to 1:1000 that fits the
    sheet.
    """
    line = _Run(**{name: value for name, value in locals().items() if name != "width"})
    sheet = Sheet(width=width)
    beside = 0.0 if sheet.thumbnail or base_depth is None else _BESIDE + 3.0
    taken = (4.0 if sheet.thumbnail else 2 * margin(sheet) + 2.0) + beside
    scale, named = _scale(line, width - taken)
    words = _titled(line, named)
    below = title(sheet, words)
    wide = (run.mm + 2 * _NEWEL) * scale
    origin = (
        (width - wide + beside) / 2 + _NEWEL * scale,
        below + 4.0 + (rise.mm + height.mm + _STANDS) * scale,
    )
    zone = Zone(box=Box(0.5, below, width - 0.5, origin[1] + line.below * scale + 18.0))
    view = View(sheet=sheet, scale=scale, origin=origin, zone=zone)
    _paint(view, line)
    low = origin[1] + line.below * scale
    if not sheet.thumbnail:
        _lettering(view, line, low)
    sheet.height = math.ceil(max(sheet.bottom() + 3.0, low + 3.0))
    return Drawn(sheet=sheet, title=words, alt=_alt(line, named), scale=named, key=_entries(line))


def _lettering(view: View, run: _Run, low: float) -> None:
    sheet = view.sheet
    _sizes(view, run)
    _letters(view, run)
    sheet.settle()
    top = key(sheet, _entries(run), low + 15.0) + 1.5
    notes(sheet, _closing(run), top)
    if sheet.unplaced:
        words = say("Not figured on the view: %(unplaced)s.", unplaced="; ".join(sheet.unplaced))
        paragraph(sheet, words, margin(sheet), sheet.bottom() + 3.0, sheet.width - 2 * margin(sheet), NOTES)
