"""Noise and hand-arm vibration against published worked examples, and the laws a dose obeys."""

from __future__ import annotations

import math
from dataclasses import dataclass

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.quantities.exposure import (
    daily_noise,
    daily_vibration,
    minutes_to_noise,
    minutes_to_vibration,
    noise_points,
    vibration_points,
    weekly_noise,
)

REPORTED = "read in a report of the document"
READ = "read in the source"


@dataclass(frozen=True, slots=True, kw_only=True)
class Example:
    """Levels with their minutes, the daily value they come to and the points, as published."""

    spells: tuple[tuple[float, float], ...]
    daily: float | None
    points: float | None
    source: str
    known: str


NOISE = (
    Example(
        spells=((80, 300), (86, 120), (95, 45)),
        daily=86.61,
        points=145,
        source="HSE L108 figure 26",
        known=REPORTED,
    ),
    Example(spells=((85, 480),), daily=85.0, points=100, source="HSE noise ready reckoner", known=READ),
    Example(spells=((90, 480),), daily=90.0, points=315, source="HSE noise ready reckoner", known=READ),
)
VIBRATION = (
    Example(spells=((5, 180),), daily=None, points=150, source="HSE vibration ready reckoner", known=READ),
    Example(
        spells=((4.6, 120), (6.0, 60), (3.6, 120)),
        daily=3.6,
        points=None,
        source="ISO 5349-2 E.3",
        known=REPORTED,
    ),
    Example(spells=((2.5, 480),), daily=2.5, points=100, source="SI 2005/1093; HSE", known=READ),
    Example(spells=((5.0, 480),), daily=5.0, points=400, source="SI 2005/1093; HSE", known=READ),
)

levels = st.floats(min_value=60, max_value=120)
shaking = st.floats(min_value=0.1, max_value=30)
spans = st.floats(min_value=0.1, max_value=480)


@pytest.mark.parametrize("example", NOISE, ids=lambda example: str(example.source))
def test_noise_agrees_with_the_published_examples(example: Example) -> None:
    """The printed tables of points are rounded, by up to 4 in 100."""
    points = sum(noise_points(level, minutes) for level, minutes in example.spells)
    assert points == pytest.approx(example.points, rel=0.04)
    assert daily_noise(points) == pytest.approx(example.daily, abs=0.006)


@pytest.mark.parametrize("example", VIBRATION, ids=lambda example: str(example.source))
def test_vibration_agrees_with_the_published_examples(example: Example) -> None:
    points = sum(vibration_points(level, minutes) for level, minutes in example.spells)
    if example.points is not None:
        assert points == pytest.approx(example.points)
    if example.daily is not None:
        assert daily_vibration(points) == pytest.approx(example.daily, abs=0.05)


def test_a_week_is_divided_by_five_days_however_many_are_worked() -> None:
    """SI 2005/1643 Sch. 1 Pt 2: one day of five loses 10 log10 5 = 6.99 dB."""
    assert weekly_noise([85.0] * 5) == pytest.approx(85.0)
    assert weekly_noise([85.0]) == pytest.approx(85 - 6.99, abs=0.001)


@given(levels, spans, spans)
def test_a_spell_cut_in_two_adds_the_same_noise(level: float, first: float, second: float) -> None:
    parts = noise_points(level, first) + noise_points(level, second)
    assert parts == pytest.approx(noise_points(level, first + second))


@given(shaking, spans, spans)
def test_a_spell_cut_in_two_adds_the_same_vibration(level: float, first: float, second: float) -> None:
    parts = vibration_points(level, first) + vibration_points(level, second)
    assert parts == pytest.approx(vibration_points(level, first + second))


@given(levels, spans, st.floats(min_value=0.1, max_value=10))
def test_louder_or_longer_is_a_greater_dose(level: float, minutes: float, more: float) -> None:
    least = noise_points(level, minutes)
    assert noise_points(level + more, minutes) > least
    assert noise_points(level, minutes + more) > least


@given(levels)
def test_the_minutes_to_a_noise_value_make_up_that_value(level: float) -> None:
    points = noise_points(level, minutes_to_noise(level, 85))
    assert daily_noise(points) == pytest.approx(85)


@given(shaking)
def test_the_minutes_to_a_vibration_value_make_up_that_value(level: float) -> None:
    points = vibration_points(level, minutes_to_vibration(level, 2.5))
    assert math.isclose(daily_vibration(points), 2.5)
