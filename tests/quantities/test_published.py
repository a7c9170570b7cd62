"""Calculators against worked numbers, each with its source in the table."""

from __future__ import annotations

import pytest

from tests.quantities.examples import printed, run
from tests.quantities.published import OWN, PRACTICE, PUBLISHED, PUBLISHED_VALUES, REMEMBERED, Worked


def _name(value: Worked) -> str:
    return f"{value.calculator}-{value.source[:40]}"


@pytest.mark.parametrize("value", PUBLISHED_VALUES, ids=_name)
def test_a_worked_number_comes_out_as_it_is_known(value: Worked) -> None:
    result = run(value.calculator, value.inputs)
    assert {field: printed(result, field) for field in value.gives} == dict(value.gives)


@pytest.mark.parametrize("value", PUBLISHED_VALUES, ids=_name)
def test_a_worked_number_says_how_it_is_known(value: Worked) -> None:
    assert value.known in (OWN, PRACTICE, PUBLISHED, REMEMBERED)
    assert len(value.source) > 10
