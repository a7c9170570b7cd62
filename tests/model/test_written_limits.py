"""Limits either way as files write them: on sizes and readings, and nowhere else."""

from __future__ import annotations

from decimal import Decimal

import pytest
from pydantic_core import PydanticCustomError

from generator.model.amounts import Amount, amount_in, limited_in, size_in
from generator.problems import ProblemLog, Span
from generator.reading.nodes import Text
from generator.units import LENGTH, Value
from generator.wording.faults import words


def text(value: str) -> Text:
    return Text(value=value, span=Span(file="f", line=1, column=1, text=value, length=len(value)))


def read(value: str) -> Amount:
    log = ProblemLog()
    amount = limited_in(text(value), log)
    assert not len(log)
    return amount


def fault(value: str) -> str:
    log = ProblemLog()
    with pytest.raises(PydanticCustomError):
        limited_in(text(value), log)
    (problem,) = log
    says, expected = words(problem)
    return f"{says} | {expected}"


@pytest.mark.parametrize("written", ["762 mm +- 1 mm", "762 mm ± 1 mm", "762mm±1mm", "76.2 cm +- 0.1 cm"])
def test_a_limit_is_read_however_it_is_written(written: str) -> None:
    amount = read(written)
    assert (amount.value, amount.within) == (Value(Decimal(762), LENGTH), Value(Decimal(1), LENGTH))
    assert amount.text == written


def test_a_size_without_a_limit_has_none_and_so_has_a_limit_of_nought() -> None:
    assert read("762 mm").within is None
    assert read("762 mm +- 0 mm").within is None


def test_a_size_takes_a_limit() -> None:
    size = size_in(text("-3 mm +- 0.5 mm"), ProblemLog())
    assert isinstance(size, Amount)
    assert (size.value.magnitude, size.within) == (Decimal(-3), Value(Decimal("0.5"), LENGTH))


@pytest.mark.parametrize(
    ("written", "said"),
    [
        (
            "762 mm +- 1 kg",
            "The limit “1 kg” is not of the kind of “762 mm”. | Write both with their units, such as 762 mm "
            "+- 1 mm, or both without.",
        ),
        ("762 mm +- -1 mm", "“-1 mm” is less than nought. | Write a value that is not negative."),
        ("762 mm +-", "“” is not a value. | Write a number and its unit, such as 768 mm."),
        (
            "762 mm +- 1 mm +- 2 mm",
            "“1 mm +- 2 mm” has a limit either way, which stands with a size only. | Write the value alone, "
            "such as 2 mm.",
        ),
    ],
)
def test_a_limit_that_makes_no_sense_is_told(written: str, said: str) -> None:
    assert fault(written) == said


def test_a_limit_on_what_is_no_size_is_refused_and_not_dropped() -> None:
    log = ProblemLog()
    with pytest.raises(PydanticCustomError):
        amount_in(text("3 mm ± 1 mm"), log)
    assert [problem.code for problem in log] == ["limit-misplaced"]
