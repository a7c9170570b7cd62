"""The sizes of a method as results: from survey row, job, house rules, default or example."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from generator.model.amounts import Amount, SizeValue
from generator.model.catalogue import FieldValue, Material
from generator.model.house import HouseRules
from generator.model.jobs import Job
from generator.model.scalars import Word
from generator.model.sizes import Size
from generator.model.surveys import ReadingAt, Row
from generator.model.tables import Table
from generator.problems import Span
from generator.quantities.calculator import Result
from generator.quantities.ledger import Entry, Scope
from generator.quantities.profile_measures import ProfileMeasures
from generator.quantities.readings import Reading, Readings
from generator.quantities.worked import Origin, Worked, given, literal
from generator.units import Value, print_value


@dataclass(frozen=True, slots=True, kw_only=True)
class _Found:
    """A size's value and where it was found."""

    value: SizeValue | tuple[ReadingAt, ...]
    origin: Origin


def size_entry(size: Size, scope: Scope, row: Row | None, job: Job | None, house: HouseRules) -> Entry | None:
    """The size's entry by precedence: row, job, house policy, default. None where a job does not give it."""
    found = _found(size, row if scope is Scope.OPENING else None, job, house)
    if found is None:
        return None
    return Entry(
        name=size.name.value,
        label=size.label.value,
        note=size.take,
        result=_result(size, found),
        scope=scope,
        span=_place(found.value) or size.span,
        size=size,
        origin=found.origin,
    )


def _found(size: Size, row: Row | None, job: Job | None, house: HouseRules) -> _Found | None:
    name = size.name.value
    if row and name in row.readings:
        return _Found(value=row.readings[name], origin=Origin.ROW)
    if row and name in row.sizes:
        return _Found(value=row.sizes[name], origin=Origin.ROW)
    if job and name in job.sizes:
        return _Found(value=job.sizes[name], origin=Origin.JOB)
    if size.policy and name in house.policy:
        return _Found(value=house.policy[name], origin=Origin.HOUSE)
    return None if size.measured and job else _Found(value=size.start, origin=_start(size))


def _start(size: Size) -> Origin:
    if size.measured:
        return Origin.EXAMPLE
    return Origin.POLICY if size.policy else Origin.DEFAULT


def _place(value: SizeValue | tuple[ReadingAt, ...]) -> Span | None:
    """Where a value stands; nowhere for an empty list, such as the radiators of a room without any."""
    if isinstance(value, tuple):
        return value[0].span if value else None
    return value.span


def _result(size: Size, found: _Found) -> Result:
    if isinstance(found.value, Word):
        return found.value.value
    if size.readings:
        return _readings(size, found)
    assert isinstance(found.value, Amount), "reading lets no list stand for a single size"
    return given(
        size.name.value,
        found.value.value,
        label=size.label.value,
        origin=found.origin,
        span=found.value.span,
        within=found.value.within,
    )


def _readings(size: Size, found: _Found) -> Readings:
    values = found.value if isinstance(found.value, tuple) else (found.value,)
    items = tuple(_reading(size, each, found.origin) for each in values)
    return Readings(name=size.name.value, label=size.label.value, items=items)


def _reading(size: Size, each: Amount | ReadingAt | Word, origin: Origin) -> Reading:
    assert not isinstance(each, Word), "reading lets no word stand for a reading"
    if isinstance(each, ReadingAt):
        value = _read(_station_name(size, each), size, each, origin)
        return Reading(member=each.member, at=literal(each.at), value=value)
    return Reading(value=_read(size.name.value, size, each, origin))


def _read(name: str, size: Size, each: Amount | ReadingAt, origin: Origin) -> Worked:
    return given(name, each.value, label=size.label.value, origin=origin, span=each.span, within=each.within)


def _station_name(size: Size, reading: ReadingAt) -> str:
    return f"{size.name.value}@{reading.member}:{_number(reading.at)}"


def _number(at: Value) -> str:
    return print_value(at).number


def sizes_in_rows(rows: tuple[Row, ...]) -> frozenset[str]:
    """The sizes that a survey gives in any row."""
    return frozenset(name for row in rows for name in (*row.sizes, *row.readings))


def catalogued(name: str, material: Material, found: FieldValue) -> Result:
    """A field of a catalogue entry as a result under `name`."""
    if isinstance(found, Word):
        return found.value
    if isinstance(found, Table):
        return _measures(name.partition(".")[0], material, found)
    if isinstance(found, tuple):
        return tuple(_from_catalogue(name, material, each.value, each.span) for each in found)
    if isinstance(found, Amount):
        return _from_catalogue(name, material, found.value, found.span)
    return _from_catalogue(name, material, Value(Decimal(found)), found.span)


def _measures(role: str, material: Material, found: Table[Amount]) -> ProfileMeasures:
    return ProfileMeasures(
        **{
            name: _from_catalogue(f"{role}.{name}", material, each.value, each.span)
            for name, each in found.items()
        }
    )


def _from_catalogue(name: str, material: Material, value: Value, span: Span) -> Worked:
    return given(name, value, label=material.label.value, origin=Origin.CATALOGUE, span=span)
