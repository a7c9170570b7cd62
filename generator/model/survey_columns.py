"""The headings of a survey: which column is which size, and where on the frame a reading was taken."""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal
from typing import Final

from pydantic_core import PydanticCustomError

from generator.model.amounts import Amount, amount_in
from generator.model.sizes import Size
from generator.model.tables import Table
from generator.problems import ProblemLog, nearest
from generator.reading.nodes import Text
from generator.units import LENGTH, NUMBER, Unit, Value

MEMBERS: Final = ("left", "head", "right")
LABELS: Final = ("opening", "face", "name")
_READING = re.compile(r"(?P<name>[^@]*)@(?P<member>[^:]*)(?P<colon>:?)(?P<at>.*)")


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """A column of sizes; a column of readings also says on which member and how far from its start."""

    heading: Text
    size: Size
    member: str = ""
    at: Value | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Columns:
    """The columns that hold sizes, and the sizes that faulty headings were probably meant for."""

    known: tuple[Column, ...]
    meant: frozenset[str]

    @property
    def sizes(self) -> frozenset[str]:
        """Every size that has a column, or that a faulty heading was meant for."""
        return self.meant | {column.size.name.value for column in self.known}

    def of(self, name: str) -> tuple[Column, ...]:
        """The columns of one size."""
        return tuple(column for column in self.known if column.size.name.value == name)


def columns_of(header: tuple[Text, ...], sizes: Table[Size], unit: Unit, log: ProblemLog) -> Columns:
    """Every heading of a survey as a column; faulty ones are logged and left out."""
    read = _Headings(sizes, unit, log)
    wanted = [heading for heading in header if heading.value not in LABELS]
    known = [column for heading in wanted if (column := read.column(heading))]
    _check_once(known, log)
    return Columns(known=tuple(known), meant=frozenset(read.meant))


def with_unit(amount: Amount, unit: Unit, size: Size) -> Amount:
    """A plain number of the survey in the survey's unit, where the size is a length."""
    if amount.value.dimension != NUMBER or size.dimension != LENGTH:
        return amount
    length = in_unit(amount.value, unit)
    within = in_unit(amount.within, unit) if amount.within else None
    return Amount(value=length, text=f"{amount.text} {unit.symbol}", span=amount.span, within=within)


def in_unit(number: Value, unit: Unit) -> Value:
    """A plain number as a length of so many units; exact, since what is typed is exact."""
    return Value(Decimal(number.magnitude) * unit.size, LENGTH)


class _Headings:
    """Reads headings against the sizes of a method."""

    def __init__(self, sizes: Table[Size], unit: Unit, log: ProblemLog) -> None:
        self._sizes, self._unit, self._log = sizes, unit, log
        self.meant: set[str] = set()

    def column(self, heading: Text) -> Column | None:
        """The column under a heading, or None with the fault in the log."""
        found = _READING.fullmatch(heading.value)
        name = found["name"] if found else heading.value
        size = self._sizes.get(name)
        if size is None:
            self._unknown(name, heading)
            return None
        column = self._of_size(size, found, heading)
        if column is None:
            self.meant.add(name)
        return column

    def _of_size(self, size: Size, found: re.Match[str] | None, heading: Text) -> Column | None:
        if found:
            return self._reading(size, found, heading)
        if size.readings:
            self._log.add("column-place", heading.span, name=size.name)
            return None
        return Column(heading=heading, size=size)

    def _unknown(self, name: str, heading: Text) -> None:
        if name in self._sizes.lost:
            self.meant.add(name)
            return
        near = nearest(name, (*self._sizes, *LABELS))
        self.meant.add(near)
        self._log.add("column-unknown", heading.span, name=name, nearest=near)

    def _reading(self, size: Size, found: re.Match[str], heading: Text) -> Column | None:
        member, name = found["member"], size.name.value
        if not size.readings:
            self._log.add("column-not-readings", heading.span, name=name)
        elif member not in MEMBERS:
            near = nearest(member, MEMBERS)
            place = heading.place(found.start("member"), len(member))
            self._log.add("column-member", place, member=member, known=", ".join(MEMBERS), nearest=near)
        else:
            at = self._distance(found, heading)
            return Column(heading=heading, size=size, member=member, at=at) if at else None
        return None

    def _distance(self, found: re.Match[str], heading: Text) -> Value | None:
        start = found.start("at")
        typed = Text(value=found["at"], span=heading.place(start, len(found["at"])))
        try:
            value = _as_length(amount_in(typed, ProblemLog()).value, self._unit)
        except PydanticCustomError:
            value = None
        if value is None or value.magnitude < 0:
            self._log.add("column-distance", typed.span, heading=heading.value)
            return None
        return value


def _as_length(value: Value, unit: Unit) -> Value | None:
    if value.dimension == NUMBER:
        return in_unit(value, unit)
    return value if value.dimension == LENGTH else None


def _check_once(columns: list[Column], log: ProblemLog) -> None:
    seen: dict[object, Text] = {}
    for column in columns:
        place = (column.size.name.value, column.member, column.at)
        if place in seen:
            first = seen[place].value
            log.add("column-doubled", column.heading.span, heading=column.heading.value, first=first)
        seen.setdefault(place, column.heading)
