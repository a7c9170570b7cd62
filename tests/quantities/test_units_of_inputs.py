"""Every calculator in metres, centimetres and millimetres: the same sizes give the same results."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import fields, is_dataclass
from decimal import Decimal
from typing import Any

import pytest

from generator.quantities.calculator import InputText, registered
from generator.quantities.worked import Worked
from tests.quantities import examples
from tests.quantities.examples import example_result

LENGTH = re.compile(r"(?<![\d.])(-?\d+(?:\.\d+)?) (mm|m)$")
IN_MM = {"mm": Decimal(1), "m": Decimal(1000)}


def in_unit(unit: str, size: Decimal) -> Callable[[str], str]:
    def written(text: str) -> str:
        return LENGTH.sub(lambda found: f"{Decimal(found[1]) * IN_MM[found[2]] / size:f} {unit}", text)

    return written


UNITS = {"m": in_unit("m", Decimal(1000)), "cm": in_unit("cm", Decimal(10)), "mm": in_unit("mm", Decimal(1))}


def told(result: Any) -> Any:
    """A result as plain data, each size by its number."""
    if isinstance(result, Worked):
        return round(result.number, 6)
    if isinstance(result, tuple):
        return [told(item) for item in result]
    if is_dataclass(result):
        return {field.name: told(getattr(result, field.name)) for field in fields(result)}
    return result if isinstance(result, str | int | float | None) else str(type(result))


@pytest.fixture
def written_in(monkeypatch: pytest.MonkeyPatch) -> Callable[[str], None]:
    """Have every example's input, and every example it rests on, written in a unit."""
    usual = examples._input

    def use(unit: str) -> None:
        def changed(parameter: Any, text: InputText) -> Any:
            again = UNITS[unit]
            several = tuple(map(again, text)) if isinstance(text, tuple) else again(text)
            return usual(parameter, several)

        monkeypatch.setattr(examples, "_input", changed)

    return use


@pytest.mark.parametrize("name", sorted(registered()))
def test_the_unit_an_input_is_written_in_makes_no_difference(
    name: str, written_in: Callable[[str], None]
) -> None:
    usual = told(example_result(name))
    for unit in UNITS:
        written_in(unit)
        assert told(example_result(name)) == usual
