"""The ledger value by value, under the names a formula would use."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, fields, is_dataclass

from generator.quantities.calculator import Result
from generator.quantities.ledger import Ledger
from generator.quantities.readings import Readings
from generator.quantities.worked import Worked
from generator.units import Unit


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One single value of the ledger under the name a formula would use for it."""

    opening: str
    name: str
    label: str
    value: Worked
    unit: Unit | None


def lines(ledger: Ledger) -> Iterator[Line]:
    """Every single value: sizes, quantities, the fields of records, each reading."""
    for opening, entry in ledger.everything():
        for name, value in _values(entry.name, entry.result):
            yield Line(
                opening=opening.label if opening else "",
                name=name,
                label=entry.label,
                value=value,
                unit=entry.unit,
            )


def _values(name: str, result: Result) -> Iterator[tuple[str, Worked]]:
    if isinstance(result, Worked):
        yield name, result
    elif isinstance(result, Readings):
        yield from ((f"{name}[{n}]", value) for n, value in enumerate(result.values, 1))
    elif is_dataclass(result) and not isinstance(result, type):
        for each in fields(result):
            value = getattr(result, each.name)
            if isinstance(value, Worked):
                yield f"{name}.{each.name}", value
