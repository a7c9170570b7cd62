"""The registry of calculators and the contract every calculator keeps."""

from __future__ import annotations

import inspect

import pytest

from generator.quantities import families
from generator.quantities.calculator import Example, Length, calculator, registered
from generator.quantities.worked import Worked
from tests.quantities.examples import said

NOTHING = Example(inputs={}, gives={})


@pytest.mark.parametrize("name", sorted(registered()))
def test_a_calculator_gives_what_its_example_says(name: str) -> None:
    made = registered()[name]
    assert said(made) == dict(made.example.gives)


@pytest.mark.parametrize("name", sorted(registered()))
def test_a_calculator_refuses_nothing_its_example_gives_it(name: str) -> None:
    made = registered()[name]
    required = {key for key, parameter in made.parameters.items() if parameter.required}
    assert required <= made.example.inputs.keys() <= made.parameters.keys()


@pytest.mark.parametrize("family", families.names())
def test_every_family_file_registers_a_calculator(family: str) -> None:
    assert any(made.module.endswith(f".{family}") for made in registered().values())


def test_a_title_is_the_first_line_of_the_docstring() -> None:
    made = registered()["packs"]
    assert made.title == "Whole packs, bottles or cartridges that hold an amount."
    assert all(made.title.endswith(".") for made in registered().values())


def test_a_doubled_name_is_refused() -> None:
    def packs(*, length: Length) -> Worked:
        """Another of the same name."""
        return length

    with pytest.raises(ValueError, match="calculator packs is registered twice"):
        calculator(example=NOTHING)(packs)


def test_a_missing_docstring_is_refused() -> None:
    def wordless(*, length: Length) -> Worked:
        return length

    with pytest.raises(ValueError, match="calculator wordless has no docstring"):
        calculator(example=NOTHING)(wordless)


def test_an_input_that_is_not_keyword_only_is_refused() -> None:
    def loose(length: Length) -> Worked:
        """Takes its input by position."""
        return length

    with pytest.raises(ValueError, match="input length of a calculator must be keyword-only"):
        calculator(example=NOTHING)(loose)


def test_every_optional_input_is_left_out_by_none() -> None:
    for made in registered().values():
        defaults = inspect.signature(made.function).parameters.values()
        assert all(each.default in (None, inspect.Parameter.empty) for each in defaults)
