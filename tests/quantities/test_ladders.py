"""A ladder one out for four up: against the triangle it stands in."""

from __future__ import annotations

import math

import pytest
from hypothesis import given as forall
from hypothesis import strategies as st

from tests.quantities.examples import run_with


@forall(st.integers(500, 9000))
def test_a_ladder_leans_as_its_sides_say(height: int) -> None:
    made = run_with("ladder_set_up", height=f"{height} mm")
    foot, rails = made.foot_out.number, made.rails.number
    assert foot * 4 == pytest.approx(height)
    assert math.hypot(foot, height) == pytest.approx(rails)
    assert math.degrees(math.acos(foot / rails)) == pytest.approx(made.angle.number)
