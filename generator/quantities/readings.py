"""Readings taken round an opening, in path order: up the left leg, along the head, down the right."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from itertools import pairwise

from generator.quantities.worked import Worked, literal, millimetres
from generator.units import Value

MEMBERS = ("left", "head", "right")


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One reading; `member` is empty and `at` None where the station was not written down.

    `at` runs along the member in path order: left from the foot up, head from the left, right from the top
    down.
    """

    member: str = ""
    at: Worked | None = None
    value: Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class Readings:
    """All readings of one size at one opening, with the size's name and label."""

    name: str
    label: str
    items: tuple[Reading, ...]

    @property
    def values(self) -> tuple[Worked, ...]:
        """The readings alone."""
        return tuple(reading.value for reading in self.items)

    def reading(self, numbers: Sequence[float]) -> Readings:
        """The same stations with other numbers read there, in base units."""
        items = (
            replace(item, value=literal(Value(number, item.value.dimension)))
            for item, number in zip(self.items, numbers, strict=True)
        )
        return replace(self, items=tuple(items))

    @property
    def placed(self) -> bool:
        """True when every reading says where it was taken."""
        return all(reading.member and reading.at for reading in self.items)


@dataclass(frozen=True, slots=True, kw_only=True)
class Station:
    """A place along a member and the value there."""

    at: Worked
    value: Worked


def member_lengths(opening_width: Worked, opening_height: Worked) -> Mapping[str, Worked]:
    """How long each member of the path is."""
    return {"left": opening_height, "head": opening_width, "right": opening_height}


def stations(readings: Readings, lengths: Mapping[str, Worked]) -> Mapping[str, tuple[Station, ...]]:
    """The stations of each member, a corner that was read once serving both members that meet there.

    Readings without a place are taken as spread evenly along the whole path from foot to foot.
    """
    placed = readings if readings.placed else spread_evenly(readings, lengths)
    own = {member: read_on(placed, member) for member in MEMBERS}
    return {member: _with_corners(member, own, lengths) for member in MEMBERS}


def read_on(readings: Readings, member: str) -> tuple[Station, ...]:
    """The stations of one member in path order."""
    items = (reading for reading in readings.items if reading.member == member and reading.at)
    found = [Station(at=item.at, value=item.value) for item in items if item.at]
    return tuple(sorted(found, key=lambda station: station.at.number))


def _with_corners(
    member: str, own: Mapping[str, tuple[Station, ...]], lengths: Mapping[str, Worked]
) -> tuple[Station, ...]:
    index, mine = MEMBERS.index(member), own[member]
    before = MEMBERS[index - 1] if index else ""
    after = MEMBERS[index + 1] if index < len(MEMBERS) - 1 else ""
    start = [] if _read_at(mine, 0.0) else _corner(own.get(before, ()), lengths.get(before), millimetres(0))
    end_at = lengths[member]
    end = [] if _read_at(mine, end_at.number) else _corner(own.get(after, ()), millimetres(0), end_at)
    return (*start, *mine, *end)


def _read_at(items: tuple[Station, ...], at: float) -> bool:
    return any(station.at.number == at for station in items)


def _corner(neighbour: tuple[Station, ...], there: Worked | None, here: Worked) -> list[Station]:
    at_corner = (item for item in neighbour if there and item.at.number == there.number)
    return [Station(at=here, value=item.value) for item in at_corner]


def spread_evenly(readings: Readings, lengths: Mapping[str, Worked]) -> Readings:
    """The readings set evenly along the path from the left foot to the right foot."""
    bays = max(len(readings.items) - 1, 1)
    path = lengths["left"] + lengths["head"] + lengths["right"]
    items = (
        _placed(reading.value, path * Decimal(index) / bays, lengths)
        for index, reading in enumerate(readings.items)
    )
    return Readings(name=readings.name, label=readings.label, items=tuple(items))


def _placed(value: Worked, along: Worked, lengths: Mapping[str, Worked]) -> Reading:
    for member in MEMBERS[:-1]:
        if along <= lengths[member]:
            return Reading(member=member, at=along, value=value)
        along = along - lengths[member]
    return Reading(member="right", at=along, value=value)


@dataclass(frozen=True, slots=True)
class Path:
    """Readings along the path from the left foot, straight from one to the next and level beyond them.

    Where two members were both read at the corner they share, each keeps its own reading up to the corner.
    """

    points: tuple[tuple[float, float], ...]

    def between(self, start: float, end: float) -> Iterator[tuple[float, float, float]]:
        """The straight stretches from `start` to `end` as (length, value at its start, value at its end)."""
        inner = [point for point in self.points if start < point[0] < end]
        cut = [(start, self._after(start)), *inner, (end, self._before(end))]
        for (here, first), (there, second) in pairwise(cut):
            yield there - here, first, second

    def _after(self, place: float) -> float:
        here = [value for at, value in self.points if at == place]
        return here[-1] if here else self._on_the_line(place)

    def _before(self, place: float) -> float:
        here = [value for at, value in self.points if at == place]
        return here[0] if here else self._on_the_line(place)

    def _on_the_line(self, place: float) -> float:
        if place < self.points[0][0]:
            return self.points[0][1]
        for (here, first), (there, second) in pairwise(self.points):
            if here < place < there:
                return first + (second - first) * (place - here) / (there - here)
        return self.points[-1][1]


def path(readings: Readings, lengths: Mapping[str, Worked]) -> Path:
    """The readings by their distance along the path; those without a place are spread evenly."""
    placed = readings if readings.placed else spread_evenly(readings, lengths)
    before = starts(lengths)
    points = [
        (before[member] + station.at.number, station.value.number)
        for member in MEMBERS
        for station in read_on(placed, member)
    ]
    return Path(tuple(sorted(points, key=lambda point: point[0])))


def starts(lengths: Mapping[str, Worked]) -> Mapping[str, float]:
    """Where each member begins along the path."""
    left, head = lengths["left"].number, lengths["head"].number
    return {"left": 0.0, "head": left, "right": left + head}
