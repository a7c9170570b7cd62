"""The set-back readings on the way round the frame: what was read, the packer chosen, what is left over
where.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from generator.drawings.clipping import Box, Point, Points, circle
from generator.drawings.dimensions import spread
from generator.drawings.figures import MEMBERS, Member, Reading, Size
from generator.drawings.hatches import FRAME_SIDE, LONG_GRAIN, PLASTER_FIELD
from generator.drawings.keys import Entry, margin, notes, title
from generator.drawings.lettering import cap, extent, wrapped
from generator.drawings.pens import (
    BLUE,
    CHOSEN,
    CUT_STANDING,
    DIMENSION,
    GAP,
    HIDDEN,
    INK,
    NOTES,
    PAPER,
    RULE,
    RULE_FINE,
    VISIBLE,
)
from generator.drawings.registry import Drawn, drawing
from generator.drawings.sheet import Anchor, Label, Outline, Sheet, Spot, Stroke, Zone, arrow, text_box
from generator.drawings.words import say
from generator.wording import among

_ALONG = (
    (1 / 10, "1:10"),
    (1 / 20, "1:20"),
    (1 / 30, "1:30"),
    (1 / 50, "1:50"),
    (1 / 75, "1:75"),
    (0.01, "1:100"),
    (0.005, "1:200"),
    (0.002, "1:500"),
)
_DEEP = (
    (10.0, "10:1"),
    (7.0, "7:1"),
    (5.0, "5:1"),
    (4.0, "4:1"),
    (3.0, "3:1"),
    (2.0, "2:1"),
    (1.0, "1:1"),
    (0.5, "1:2"),
)
_STEPS = (0.5, 1.0, 2.0, 5.0, 10.0, 20.0)
_BETWEEN = 12.0
_BETWEEN_SMALL = 2.0
_RING = 0.95
_ROUTES: dict[Member, str] = {"left": "left leg, going up", "head": "head", "right": "right leg, going down"}
_SHORT: dict[Member, str] = {"left": "left leg", "head": "head", "right": "right leg"}
_STATIONS = ("foot", "top", "left", "right", "middle")
_NONE = "–"


@dataclass(frozen=True, slots=True, kw_only=True)
class Station:
    """A reading with its number in path order and how far along its member the path meets it (mm)."""

    number: int
    along: float
    reading: Reading

    @property
    def cells(self) -> tuple[str, str, str]:
        """What was read, what is left at the wall side, what is left at the frame side."""
        left = self.reading.left_over
        bare = left.text.lstrip("-−+")
        wall = bare if left.mm >= 0 else _NONE
        frame = bare if left.mm <= 0 else _NONE
        return self.reading.value.text, wall, frame


def in_path_order(readings: Sequence[Reading]) -> tuple[Station, ...]:
    """Number the readings up the left leg, along the head and down the right leg."""
    ordered = sorted(readings, key=lambda r: (MEMBERS.index(r.member), r.at))
    return tuple(Station(number=i + 1, along=r.at, reading=r) for i, r in enumerate(ordered))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Survey:
    """What the drawing is given, with its stations numbered."""

    stations: tuple[Station, ...]
    packer: Size
    wide: float
    high: float

    @property
    def packed(self) -> bool:
        """Whether a packer was chosen, so that anything can be left over."""
        return self.packer.mm > 0

    def of(self, member: Member) -> tuple[Station, ...]:
        return tuple(s for s in self.stations if s.reading.member == member)

    def plaster(self, member: Member) -> tuple[Point, ...]:
        """How far proud the plaster is, and where along; a corner read once serves both members."""
        own = tuple((s.along, s.reading.value.mm) for s in self.of(member))
        place, end = MEMBERS.index(member), self.length(member)
        before = self.of(MEMBERS[place - 1])[-1:] if place else ()
        after = self.of(MEMBERS[place + 1])[:1] if place + 1 < len(MEMBERS) else ()
        first = tuple((0.0, s.reading.value.mm) for s in before if s.along == self.length(s.reading.member))
        last = tuple((end, s.reading.value.mm) for s in after if s.along == 0)
        return (
            *(first if own and own[0][0] > 0 else ()),
            *own,
            *(last if own and own[-1][0] < end else ()),
        )

    def length(self, member: Member) -> float:
        return self.wide if member == "head" else self.high

    @property
    def members(self) -> tuple[Member, ...]:
        return tuple(m for m in MEMBERS if self.of(m))

    @property
    def deepest(self) -> float:
        return max(self.packer.mm, 1.0, *(s.reading.value.mm for s in self.stations))

    @property
    def lowest(self) -> float:
        return min(0.0, *(s.reading.value.mm for s in self.stations))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Chart:
    """One member's chart: where it starts on the sheet, both scales, and the y of the frame edge."""

    sheet: Sheet
    left: float
    zero: float
    along: float
    deep: float

    def at(self, along: float, depth: float) -> Point:
        return self.left + along * self.along, self.zero - depth * self.deep

    def where(self, station: Station) -> Point:
        return self.at(station.along, station.reading.value.mm)


def _draw_member(chart: _Chart, survey: _Survey, member: Member) -> None:
    stations, sheet = survey.of(member), chart.sheet
    plaster = survey.plaster(member)
    line = tuple(chart.at(along, depth) for along, depth in plaster)
    base = chart.zero - survey.lowest * chart.deep
    if len(line) > 1:
        area = (*line, (line[-1][0], base), (line[0][0], base))
        _left_over(chart, survey, line)
        if not sheet.thumbnail:
            _plaster(chart, area, survey.packer.mm)
        sheet.line(area, CUT_STANDING.narrowed(0.25), closed=True)
        sheet.outlines[f"{member} readings"] = Outline(
            name=f"{member} readings", real=plaster, paper=line, scale=chart.along
        )
    else:
        sheet.line((line[0], (line[0][0], base)), CUT_STANDING.narrowed(0.25))
    _band(chart, survey, member, base)
    _packer_line(chart, survey, member)
    for station in stations:
        sheet.stroke(
            Stroke(
                points=circle(chart.where(station), _RING),
                pen=VISIBLE,
                layer="dimension",
                closed=True,
                filled=PAPER,
            )
        )


def _plaster(chart: _Chart, area: Points, packer: float) -> None:
    """Hatch the plaster up to the packer or to the readings, whichever is nearer the frame."""
    level = chart.zero - packer * chart.deep if packer > 0 else -1e6
    chart.sheet.hatch(tuple((x, max(y, level)) for x, y in _with_crossings(area, level)), PLASTER_FIELD)


def _with_crossings(area: Points, level: float) -> Points:
    found: list[Point] = []
    for (x1, y1), (x2, y2) in zip(area, (*area[1:], area[0]), strict=True):
        found.append((x1, y1))
        if (y1 - level) * (y2 - level) < 0:
            share = (level - y1) / (y2 - y1)
            found.append((x1 + share * (x2 - x1), level))
    return tuple(found)


def _left_over(chart: _Chart, survey: _Survey, line: Points) -> None:
    if not survey.packed or chart.sheet.thumbnail:
        return
    level = chart.zero - survey.packer.mm * chart.deep
    for (x1, y1), (x2, y2) in itertools.pairwise(line):
        shape = _with_crossings(((x1, y1), (x2, y2), (x2, level), (x1, level)), level)
        wall = _trimmed(tuple((x, max(y, level)) for x, y in shape))
        frame = _trimmed(tuple((x, min(y, level)) for x, y in shape))
        if wall:
            chart.sheet.fill(wall, GAP)
        if frame:
            chart.sheet.hatch(frame, FRAME_SIDE)


def _trimmed(shape: Points) -> Points:
    flat = max(y for _, y in shape) - min(y for _, y in shape) < 0.05
    return () if flat else tuple(p for i, p in enumerate(shape) if math.dist(p, shape[i - 1]) > 1e-9)


def _band(chart: _Chart, survey: _Survey, member: Member, base: float) -> None:
    """Draw the frame's edge below nought, the whole length of the member."""
    right = chart.left + survey.length(member) * chart.along
    box = ((chart.left, base), (right, base), (right, base + 4.4), (chart.left, base + 4.4))
    chart.sheet.hatch(box, LONG_GRAIN)
    chart.sheet.line(box, CUT_STANDING, closed=True)
    if base > chart.zero + 0.5:
        chart.sheet.line(((chart.left, chart.zero), (right, chart.zero)), HIDDEN)


def _packer_line(chart: _Chart, survey: _Survey, member: Member) -> None:
    if not survey.packed:
        return
    y = chart.zero - survey.packer.mm * chart.deep
    right = chart.left + survey.length(member) * chart.along
    chart.sheet.line(((chart.left - 2, y), (right + 2, y)), CHOSEN, "dimension")


def _bracket(chart: _Chart, survey: _Survey, member: Member, top: float, words: str) -> None:
    right = chart.left + survey.length(member) * chart.along
    chart.sheet.line(((chart.left, top), (right, top)), RULE)
    for x in (chart.left, right):
        chart.sheet.line(((x, top - 1), (x, top + 1)), RULE)
    room = extent(words, chart.sheet.em("note"))[0]
    words = words if room <= right - chart.left + 10 else say(_SHORT[member])
    chart.sheet.text(words, (chart.left + right) / 2, top - 2.0, "note", anchor="middle")


def _axis(chart: _Chart, survey: _Survey, x: float) -> None:
    """Rule the depth axis at paper x, with figures no nearer than 5 mm."""
    step = next((s for s in _STEPS if s * chart.deep >= 5.0), _STEPS[-1])
    first, last = math.floor(survey.lowest / step), math.ceil(survey.deepest / step)
    sheet, em = chart.sheet, chart.sheet.em("figure")
    ends = chart.at(0, first * step)[1], chart.at(0, last * step)[1]
    sheet.line(((x, ends[0]), (x, ends[1])), DIMENSION, "dimension")
    for i in range(first, last + 1):
        y = chart.at(0, i * step)[1]
        sheet.line(((x - 2.0, y), (x, y)), DIMENSION, "dimension")
        text = f"{i * step:g}".replace("-", "−")
        sheet.text(text, x - 2.9, y + cap(em) / 2, "figure", anchor="end", colour=BLUE)
    _axis_words(chart, x, ends)


def _axis_words(chart: _Chart, x: float, ends: tuple[float, float]) -> None:
    words = say("mm in front of the lining")
    em = chart.sheet.em("note")
    if abs(ends[0] - ends[1]) < extent(words, em)[0] + 2:
        words = "mm"
    side = x - 2.9 - extent("00", em)[0] - 2.4
    chart.sheet.text(words, side, sum(ends) / 2, "note", anchor="middle", colour=BLUE, upright=True)


def _numbers(charts: Sequence[tuple[_Chart, tuple[Station, ...]]], top: float) -> None:
    """Number the stations under the frame's band, fanned out where they stand close."""
    sheet = charts[0][0].sheet
    em = sheet.em("figure")
    marks = [(chart.where(s)[0], str(s.number)) for chart, stations in charts for s in stations]
    need = [extent(text, em)[0] + 1.1 for _, text in marks]
    places = spread([x for x, _ in marks], need, margin(sheet), sheet.width - 3.0)
    for (x, text), place in zip(marks, places, strict=True):
        if abs(place - x) > 0.3:
            sheet.line(((x, top + 0.4), (place, top + 2.2)), RULE_FINE, "dimension")
        sheet.text(text, place, top + 3.0 + cap(em), "figure", anchor="middle")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Columns:
    """Stations as the columns of a table: the x of each, and where the row heads start."""

    left: float
    right: float
    places: tuple[float, ...]


def _columns(survey: _Survey, charts: dict[Member, _Chart], left: float, right: float) -> _Columns | None:
    """Stand the table's columns under their stations, or say that they are too crowded for it."""
    sheet = next(iter(charts.values())).sheet
    xs = [charts[s.reading.member].where(s)[0] for s in survey.stations]
    need = [_column_width(sheet, s) for s in survey.stations]
    places = spread(xs, need)
    heads = left + max(
        extent(say("plaster proud, read"), sheet.em("note"))[0],
        15.0 + extent(say("left at frame side"), sheet.em("note"))[0] - 7,
    )
    roomy = places[0] - need[0] / 2 >= heads + 1 and places[-1] + need[-1] / 2 <= right
    shifted = max(abs(p - x) for p, x in zip(places, xs, strict=True))
    return _Columns(left=left, right=right, places=places) if roomy and shifted <= 3.0 else None


def _column_width(sheet: Sheet, station: Station) -> float:
    bold = extent(station.cells[0], sheet.em("figure"), "bold")[0]
    plain = max(extent(cell, sheet.em("figure"))[0] for cell in (*station.cells, str(station.number)))
    return max(bold, plain, extent(_at(station.reading.label), sheet.em("note"))[0]) + 1.6


def _table_under(sheet: Sheet, survey: _Survey, columns: _Columns, top: float) -> float:
    """Set the ruled table under the stations; return the y below it."""
    em, y = sheet.em("note"), top
    rows = ("number", "label", "read", "wall", "frame") if survey.packed else ("number", "label", "read")
    pitch = {"number": 4.9, "label": 5.0}
    for row in rows:
        y += pitch.get(row, 6.6)
        base = y - (6.6 - cap(em)) / 2 if row not in pitch else y - 1.2
        _row(sheet, survey, columns, row, base)
        if row != "number":
            pen = RULE if row in {"label", rows[-1]} else RULE_FINE
            sheet.line(((columns.left, y), (columns.right, y)), pen)
    return y


_HEADS = {
    "number": "station, see sketch",
    "label": "",
    "read": "plaster proud, read",
    "wall": "left at wall side",
    "frame": "left at frame side",
}


def _row(sheet: Sheet, survey: _Survey, columns: _Columns, row: str, base: float) -> None:
    indent = 8.0 if row in {"wall", "frame"} else 0.0
    if indent:
        _pattern(sheet, row, columns.left, base - 3.2)
    if _HEADS[row]:
        sheet.text(say(_HEADS[row]), columns.left + indent, base, "note")
    for station, x in zip(survey.stations, columns.places, strict=True):
        read, wall, frame = station.cells
        text = {
            "number": str(station.number),
            "label": _at(station.reading.label),
            "read": read,
            "wall": wall,
            "frame": frame,
        }[row]
        kind = "note" if row == "label" else "figure"
        weight = "bold" if row == "read" else "regular"
        if text:
            sheet.text(text, x, base, kind, anchor="middle", weight=weight)  # type: ignore[arg-type]


def _pattern(sheet: Sheet, row: str, left: float, top: float) -> None:
    """Draw the swatch that says how a remainder is shown on the chart."""
    box = ((left, top), (left + 6, top), (left + 6, top + 4.2), (left, top + 4.2))
    if row == "wall":
        sheet.fill(box, GAP)
    else:
        sheet.hatch(box, FRAME_SIDE)
    sheet.line(box, RULE, closed=True)


def _table_down(
    sheet: Sheet,
    stations: Sequence[Station],
    words: str,
    left: float,
    top: float,
    width: float,
    packed: bool,
) -> float:
    """Set one member's stations as rows: number, place, read and, with a packer, what is left; return the
    y below.
    """
    em = sheet.em("note")
    right = left + width
    pitch = 11.0 if sheet.narrow else 9.4
    xs = (right - 2 * pitch - 1.0, right - pitch - 1.0, right - 1.0) if packed else (right - 1.0,)
    y = top + cap(em)
    sheet.text(words, left, y, "note", weight="bold")
    sheet.text(say("read"), xs[0], y, "note", anchor="end")
    for x, row in zip(xs[1:], ("wall", "frame"), strict=False):
        _pattern(sheet, row, x - 6.0, y - 3.2)
    y += 2.2
    sheet.line(((left, y), (right, y)), RULE)
    for station in stations:
        y = _station_row(sheet, station, left, y, xs)
    sheet.line(((left, y), (right, y)), RULE)
    return y


def _station_row(sheet: Sheet, station: Station, left: float, top: float, xs: Sequence[float]) -> float:
    em = sheet.em("figure")
    base = top + 1.7 + cap(em)
    sheet.text(str(station.number), left + 4.6, base, "figure", anchor="end")
    room = xs[0] - 8.4 - (left + 6.6)
    lines = wrapped(_at(station.reading.label), sheet.em("note"), room)
    for i, line in enumerate(lines):
        sheet.text(line, left + 6.6, base + i * 4.6, "note")
    for x, cell, weight in zip(xs, station.cells, ("bold", "regular", "regular"), strict=False):
        sheet.text(cell, x, base, "figure", anchor="end", weight=weight)  # type: ignore[arg-type]
    return base + max(0, len(lines) - 1) * 4.6 + 1.6


def _sketch(sheet: Sheet, survey: _Survey, left: float, floor: float, scale: float) -> None:
    """Draw the doorway small, with its stations numbered and the way round them."""
    wide, high = survey.wide * scale, survey.high * scale
    right = left + wide
    frame = ((left, floor), (left, floor - high), (right, floor - high), (right, floor))
    sheet.line(frame, CUT_STANDING)
    sheet.line(((left - 3, floor), (right + 3, floor)), CUT_STANDING.narrowed(0.25))
    _route(sheet, survey, left, right, floor, high)
    for member in survey.members:
        spots = [_sketch_spot(survey, s, left, floor, scale) for s in survey.of(member)]
        for spot in spots:
            sheet.stroke(
                Stroke(points=circle(spot, 0.8), pen=VISIBLE, layer="dimension", closed=True, filled=PAPER)
            )
        _sketch_numbers(sheet, member, survey.of(member), spots, floor)


def _route(sheet: Sheet, survey: _Survey, left: float, right: float, floor: float, high: float) -> None:
    inset = min(3.2, (right - left) * 0.25)
    if survey.members != MEMBERS:
        return
    path = (
        (left + inset, floor - 1),
        (left + inset, floor - high + 3.2),
        (right - inset, floor - high + 3.2),
        (right - inset, floor - 3.5),
    )
    sheet.line(path, HIDDEN.narrowed(0.18))
    sheet.stroke(arrow((right - inset, floor - 0.9), math.pi / 2, INK))


def _sketch_spot(survey: _Survey, station: Station, left: float, floor: float, scale: float) -> Point:
    wide, high, along = survey.wide * scale, survey.high * scale, station.along * scale
    return {
        "left": (left, floor - along),
        "head": (left + along, floor - high),
        "right": (left + wide, floor - high + along),
    }[station.reading.member]


def _sketch_numbers(
    sheet: Sheet, member: Member, stations: Sequence[Station], spots: Sequence[Point], floor: float
) -> None:
    """Number the sketch's stations, leaving out those that would crowd a neighbour's number."""
    em = sheet.em("figure")
    for station, (x, y) in zip(stations, spots, strict=True):
        place = {
            "left": (x - 1.9, y + cap(em) / 2),
            "head": (x, y - 1.9),
            "right": (x + 1.9, y + cap(em) / 2),
        }[member]
        spot = Spot(x=place[0], y=place[1] + _off_the_floor(member, y, floor), anchor=_SIDES[member])
        number = str(station.number)
        if sheet.free(text_box(number, spot, em, "regular")):
            sheet.text(number, spot.x, spot.y, "figure", anchor=spot.anchor)


_SIDES: dict[Member, Anchor] = {"left": "end", "head": "middle", "right": "start"}


def _off_the_floor(member: Member, y: float, floor: float) -> float:
    """Lift a leg's number off the floor line when its station is at the foot."""
    return min(0.0, floor - 1.9 - y) if member != "head" else 0.0


def _along_scale(survey: _Survey, room: float, between: float, *, one: bool) -> tuple[float, str]:
    """Return the largest scale along the members that fits the room, `between` apart where side by side."""
    lengths = [survey.length(m) for m in survey.members]
    whole = max(lengths) if one else sum(lengths)
    gaps = 0.0 if one else between * (len(lengths) - 1)
    return next((s for s in _ALONG if whole * s[0] + gaps <= room), _ALONG[-1])


def _deep_scale(survey: _Survey, height: float) -> tuple[float, str]:
    span = survey.deepest - survey.lowest
    return next((s for s in _DEEP if span * s[0] <= height), _DEEP[-1])


def _side_by_side(sheet: Sheet, survey: _Survey, below: float) -> tuple[str, str, float]:
    """Lay the members in a row, sketch at their left and the table under them; return both scales and the
    bottom.
    """
    left = margin(sheet)
    start = 50.0 if not sheet.thumbnail else 3.0
    between = _BETWEEN if not sheet.thumbnail else _BETWEEN_SMALL
    along, named = _along_scale(survey, sheet.width - start - 4.0, between, one=False)
    deep, deep_named = _deep_scale(survey, 64.0 if not sheet.thumbnail else 25.0)
    top = below + (18.0 if not sheet.thumbnail else 3.0)
    zero = top + survey.deepest * deep
    first = _Chart(sheet=sheet, left=start, zero=zero, along=along, deep=deep)
    charts = _row_of_charts(first, survey, between)
    for member, chart in charts.items():
        _draw_member(chart, survey, member)
        if not sheet.thumbnail:
            _bracket(chart, survey, member, top - 8.0, say(_ROUTES[member]))
    base = zero - survey.lowest * deep + 4.4
    if sheet.thumbnail:
        return named, deep_named, base
    _axis(first, survey, start - 6.0)
    _packer_words(first, survey)
    sketch = min(along, (start - 39.0) / survey.wide, 0.62 * (base - top) / survey.high)
    _sketch(sheet, survey, left + 4.5, base - 8.0, sketch)
    columns = _columns(survey, charts, left, sheet.width - 2.0)
    if columns is not None:
        return named, deep_named, _table_under(sheet, survey, columns, base + 2.0)
    _numbers([(chart, survey.of(m)) for m, chart in charts.items()], base)
    return named, deep_named, _tables_beside(sheet, survey, base + 11.0)


def _row_of_charts(first: _Chart, survey: _Survey, between: float) -> dict[Member, _Chart]:
    charts: dict[Member, _Chart] = {}
    start = first.left
    for member in survey.members:
        charts[member] = replace(first, left=start)
        start += survey.length(member) * first.along + between
    return charts


def _packer_words(chart: _Chart, survey: _Survey) -> None:
    """Name the packer on its line: over the line where no reading stands above it, else over the readings."""
    if not survey.packed:
        return
    words, sheet = say("packer %(packer)s", packer=survey.packer.text), chart.sheet
    y = chart.zero - survey.packer.mm * chart.deep
    right = chart.left + survey.length(survey.members[0]) * chart.along
    room = right - chart.left - extent(words, sheet.em("note"), "bold")[0]
    spots = tuple(
        Spot(x=chart.left + 0.4 + share * max(room, 0.0), y=y - lift, anchor="start")
        for lift in (1.8, 2.6, 3.6, 5.0, 7.0)
        for share in (0.0, 0.25, 0.5, 0.75, 1.0)
    )
    zone = Zone(box=Box(0, 0, sheet.width, chart.zero))
    sheet.label(Label(text=words, kind="note", weight="bold", spots=spots, zone=zone, words=words))
    sheet.settle()


def _tables_beside(sheet: Sheet, survey: _Survey, top: float) -> float:
    left, members = margin(sheet), survey.members
    wide = (sheet.width - left - 4.0 - 6.0 * (len(members) - 1)) / len(members)
    wide = min(wide, 80.0)
    ends = [
        _table_down(sheet, survey.of(m), say(_SHORT[m]), left + i * (wide + 6.0), top, wide, survey.packed)
        for i, m in enumerate(members)
    ]
    return _remainder_key(sheet, max(ends)) if survey.packed else max(ends)


def _remainder_key(sheet: Sheet, top: float) -> float:
    left = margin(sheet)
    top += 3.5
    for row in ("wall", "frame"):
        _pattern(sheet, row, left, top)
        sheet.text(say(_HEADS[row]), left + 8.0, top + 3.3, "note")
        top += 5.8
    return top


def _one_by_one(sheet: Sheet, survey: _Survey, below: float) -> tuple[str, str, float]:
    """Lay the members under one another, each with its own table; return both scales and the bottom."""
    left = margin(sheet)
    start = left + 15.0
    along, named = _along_scale(survey, sheet.width - start - 4.0, _BETWEEN, one=True)
    deep, deep_named = _deep_scale(survey, 32.0)
    scale = min(along, 34.0 / survey.high)
    _sketch(sheet, survey, (sheet.width - survey.wide * scale) / 2, below + 9.0 + survey.high * scale, scale)
    y = below + 11.0 + survey.high * scale
    for member in survey.members:
        chart = _Chart(sheet=sheet, left=start, zero=y + 15.0 + survey.deepest * deep, along=along, deep=deep)
        _draw_member(chart, survey, member)
        _bracket(chart, survey, member, y + 8.0, say(_ROUTES[member]))
        _axis(chart, survey, start - 3.5)
        if member == survey.members[0]:
            _packer_words(chart, survey)
        base = chart.zero - survey.lowest * deep + 4.4
        _numbers([(chart, survey.of(member))], base)
        y = _table_down(
            sheet,
            survey.of(member),
            say(_SHORT[member]),
            left,
            base + 11.0,
            sheet.width - 2 * left,
            survey.packed,
        )
        y += 4.0
    return named, deep_named, _remainder_key(sheet, y - 4.0) if survey.packed else y - 4.0


_WORDS = ("nought", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")


def _at(label: str) -> str:
    """A station as it is called; one that has no name by its distance."""
    return say(among(_STATIONS, label)) if label in _STATIONS else label


def _count(number: int) -> str:
    return say(_WORDS[number]) if number < len(_WORDS) else str(number)


def _closing(
    survey: _Survey, mean: Size, least: Size, most: Size, step: Size, scales: tuple[str, str]
) -> tuple[str, ...]:
    packed = (
        say(
            "; packer %(packer)s, the mean taken up to the next %(step)s",
            packer=survey.packer.text,
            step=step.text,
        )
        if survey.packed
        else ""
    )
    found = say(
        "Mean of %(count)s read %(mean)s, least %(least)s, most %(most)s",
        count=_count(len(survey.stations)),
        mean=mean.text,
        least=least.text,
        most=most.text,
    )
    return (
        f"{found}{packed}.",
        say("Plaster is drawn straight from reading to reading."),
        say(
            "Along %(scales)s, depth %(scales_2)s and measured from nought. All in mm.",
            scales=scales[0],
            scales_2=scales[1],
        ),
    )


_MEANING = {
    "wall": "Wall side: packer stands proud of plaster; fill behind the outer edge.",
    "frame": "Frame side: plaster stands proud of packer; ease the plaster there.",
}


def _meaning(survey: _Survey) -> tuple[str, ...]:
    return (say(_MEANING["wall"]), say(_MEANING["frame"])) if survey.packed else ()


def _alt(survey: _Survey, mean: Size, least: Size, most: Size) -> str:
    per = " ".join(_alt_member(survey, member) for member in survey.members)
    packer = say("One even packer of %(packer)s mm is drawn across them.", packer=survey.packer.text)
    packer = packer if survey.packed else say("No packer is chosen.")
    return say(
        "Chart of %(count)s set-back readings round the frame, in mm of plaster proud of the lining. Mean "
        "%(mean)s, least %(least)s, most %(most)s. %(packer)s %(per)s",
        count=_count(len(survey.stations)),
        mean=mean.text,
        least=least.text,
        most=most.text,
        packer=packer,
        per=per,
    )


def _alt_member(survey: _Survey, member: Member) -> str:
    cells = ", ".join(
        f"{_at(s.reading.label)} {s.reading.value.text}{_alt_left(survey, s)}" for s in survey.of(member)
    )
    return f"{say(_ROUTES[member]).capitalize()}: {cells}."


def _alt_left(survey: _Survey, station: Station) -> str:
    left = station.reading.left_over
    bare = left.text.lstrip("-−+")
    if not survey.packed or left.mm == 0:
        return ""
    return say(
        " (%(bare)s left at the %(left)s side)", bare=bare, left=say("wall") if left.mm > 0 else say("frame")
    )


@drawing
def set_back_readings(
    width: float,
    *,
    readings: tuple[Reading, ...],
    packer_thickness: Size,
    opening_width: Size,
    opening_height: Size,
    mean: Size,
    least: Size,
    most: Size,
    step: Size,
    place: str = "",
) -> Drawn:
    """Plaster proud of the lining, read on the way round.

    1 to 24 readings in any order, `at` in mm on the way round (right leg from the top down); a packer
    thickness of 0 draws no packer. Raises ValueError for no readings, more than 24, or one beyond its
    member's end.
    """
    _check(readings, opening_width.mm, opening_height.mm)
    survey = _Survey(
        stations=in_path_order(readings),
        packer=packer_thickness,
        wide=opening_width.mm,
        high=opening_height.mm,
    )
    sheet = Sheet(width=width)
    words = say(
        "Plaster proud of the lining, read on the way round%(place)s",
        place=say(", doorway %(place)s", place=place) if place else "",
    )
    below = title(sheet, words)
    lay = _one_by_one if sheet.narrow and not sheet.thumbnail else _side_by_side
    along, deep, bottom = lay(sheet, survey, below)
    if not sheet.thumbnail:
        bottom = notes(sheet, _meaning(survey), bottom + 6.0, INK)
        notes(sheet, _closing(survey, mean, least, most, step, (along, deep)), bottom + 0.3, NOTES)
    sheet.height = math.ceil(sheet.bottom() + 3.0)
    return Drawn(sheet=sheet, title=words, alt=_alt(survey, mean, least, most), key=_key(survey))


def _key(survey: _Survey) -> tuple[Entry, ...]:
    return tuple(
        Entry(letter=str(s.number), text=f"{say(_SHORT[s.reading.member])}, {_at(s.reading.label)}")
        for s in survey.stations
    )


_MOST_READINGS = 24


def _check(readings: Sequence[Reading], wide: float, high: float) -> None:
    if not 1 <= len(readings) <= _MOST_READINGS:
        raise ValueError(f"1 to {_MOST_READINGS} readings can be drawn, not {len(readings)}")
    for reading in readings:
        long = wide if reading.member == "head" else high
        if not 0 <= reading.at <= long:
            raise ValueError(f"a reading at {reading.at} on the {reading.member} lies beyond its {long} mm")
