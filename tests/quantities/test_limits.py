"""Limits of sizes carried to results: against the uncertainties library, against reworking, and in words."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

import pytest
from hypothesis import given as forall
from hypothesis import settings
from hypothesis import strategies as st
from uncertainties import ufloat, umath

from generator.problems import Span
from generator.quantities import functions as f
from generator.quantities.limits import Limits, limit_lines, limits_of
from generator.quantities.worked import Origin, Worked, applied, given, plain
from generator.units import LENGTH, Value, parse_value
from tests.quantities.published import APART_PRODUCT, SHARED_PRODUCT


def size(name: str, at: str, within: str = "") -> Worked:
    limit = parse_value(within) if within else None
    return given(name, parse_value(at), label=name, origin=Origin.JOB, within=limit)


def lines(item: Worked) -> list[str]:
    return list(limit_lines(item, space=" "))


def limits(item: Worked) -> Limits:
    found = limits_of(item)
    assert found is not None
    return found


WIDTH, HEIGHT = size("width", "768 mm", "1 mm"), size("height", "1990 mm", "2 mm")
QUIRK, STEP = size("quirk", "9 mm", "0.5 mm"), size("step", "0.5 mm")


def test_a_sum_is_off_by_all_its_limits_together() -> None:
    assert lines(WIDTH + 2 * QUIRK) == [
        "= 786 mm ± 2 mm",
        "limits from width ± 1 mm: 1 mm, quirk ± 0.5 mm: 1 mm",
    ]


def test_a_size_used_twice_counts_as_one() -> None:
    assert lines((WIDTH + QUIRK) - WIDTH) == [
        "= 9 mm ± 0.5 mm",
        "limits from width ± 1 mm: 0 mm, quirk ± 0.5 mm: 0.5 mm",
    ]
    assert lines(WIDTH - WIDTH) == ["the same anywhere within width ± 1 mm"]
    assert lines(WIDTH / WIDTH) == ["the same anywhere within width ± 1 mm"]


def test_two_sizes_of_one_name_at_two_openings_are_two() -> None:
    places = [Span(file="doors.csv", line=line, column=5, text="", length=3) for line in (2, 3)]
    one, two = (
        given("width", WIDTH.value, label="w", origin=Origin.ROW, span=at, within=parse_value("1 mm"))
        for at in places
    )
    assert lines(one - two)[0] == "= 0 mm ± 2 mm"


def test_a_result_without_limited_sizes_has_none() -> None:
    assert limits_of(STEP + STEP) is None
    assert limit_lines(STEP + STEP) == ()


def test_a_rounding_reports_the_outcomes_it_can_have() -> None:
    found = limits(f.round_up(WIDTH / 3, STEP))
    assert (found.low, found.high, found.smooth) == (
        Value(256.0, LENGTH), Value(256.5, LENGTH), False,
    )  # fmt: skip
    assert lines(f.round_up(WIDTH / 3, STEP)) == ["= 256 mm (256 mm to 256.5 mm)", "limits from width ± 1 mm"]


def test_a_rounding_that_cannot_change_says_so() -> None:
    assert lines(f.round_up(size("reading", "8.2 mm", "0.1 mm"), STEP)) == [
        "the same anywhere within reading ± 0.1 mm"
    ]


def test_what_rounding_leaves_is_never_said_to_be_more_than_a_step() -> None:
    """At the ends of the range it is 0.33 and 0.17, and between them anything from 0 to 0.5."""
    left = f.round_up(WIDTH / 3, STEP) - WIDTH / 3
    assert lines(left)[0] == "= 0 mm (0 mm to 0.5 mm)"


def test_the_least_is_followed_through_the_choice() -> None:
    one, two = size("one", "9 mm", "0.5 mm"), size("two", "9.2 mm", "0.5 mm")
    assert lines(f.least((one, two)))[0] == "= 9 mm (8.5 mm to 9.5 mm)"
    assert lines(f.greatest((one, two)))[0] == "= 9.2 mm (8.7 mm to 9.7 mm)"
    assert lines(f.least((one, one + 1 * QUIRK)))[0] == "= 9 mm ± 0.5 mm"


def test_a_function_without_a_way_through_is_named() -> None:
    item = applied("section_area", (WIDTH,), WIDTH.value)
    assert lines(item) == [
        "= 768 mm, limits not followed",
        "limits are not followed through “section_area”: take it with the sizes again, or leave them out",
        "limits from width ± 1 mm",
    ]


SMOOTH: Sequence[tuple[str, Callable[[list[Worked]], Worked], Callable[[list], object]]] = (
    ("sum", lambda s: s[0] + 2 * s[1] - s[2] / 4, lambda u: u[0] + 2 * u[1] - u[2] / 4),
    ("product", lambda s: s[0] * s[1] - s[1] * s[1], lambda u: u[0] * u[1] - u[1] * u[1]),
    ("quotient", lambda s: s[0] * s[1] / (s[1] + s[2]), lambda u: u[0] * u[1] / (u[1] + u[2])),
    ("root", lambda s: f.sqrt(s[0] * s[0] + s[1] * s[1]), lambda u: umath.sqrt(u[0] * u[0] + u[1] * u[1])),
    (
        "angle",
        lambda s: 2 * f.atan(s[0] / (s[1] + s[2])),
        lambda u: umath.degrees(2 * umath.atan(u[0] / (u[1] + u[2]))),
    ),
    (
        "mitre",
        lambda s: s[2] * f.tan(f.atan(s[0] / s[1]) / 2),
        lambda u: u[2] * umath.tan(umath.atan(u[0] / u[1]) / 2),
    ),
    (
        "tilt",
        lambda s: s[1] * f.sin(f.asin(s[0] / (s[0] + s[1]))) + s[2] * f.cos(f.atan(s[0] / s[2])),
        lambda u: (
            u[1] * umath.sin(umath.asin(u[0] / (u[0] + u[1]))) + u[2] * umath.cos(umath.atan(u[0] / u[2]))
        ),
    ),
    ("mean", lambda s: f.mean(s) + f.total(s), lambda u: sum(u) / 3 + sum(u)),
)  # fmt: skip
SIZES = st.lists(st.integers(40, 3000), min_size=3, max_size=3)
REACHES = st.lists(st.sampled_from(["0.5", "1", "2"]), min_size=3, max_size=3)


def sizes(numbers: Sequence[int], reaches: Sequence[str]) -> list[Worked]:
    return [
        size(f"size_{at}", f"{number} mm", f"{reach} mm")
        for at, (number, reach) in enumerate(zip(numbers, reaches, strict=True))
    ]


@pytest.mark.parametrize(("mine", "theirs"), [way[1:] for way in SMOOTH], ids=[way[0] for way in SMOOTH])
@settings(max_examples=40, deadline=None)
@forall(numbers=SIZES, reaches=REACHES)
def test_slopes_agree_with_the_uncertainties_library(mine, theirs, numbers, reaches) -> None:
    found = limits(mine(sizes(numbers, reaches)))
    other = [ufloat(number, float(reach)) for number, reach in zip(numbers, reaches, strict=True)]
    expected = theirs(other).derivatives
    assert found.smooth
    for share in found.shares:
        variable = other[int(share.name[-1])]
        assert math.isclose(share.slope, expected.get(variable, 0.0), rel_tol=1e-9, abs_tol=1e-9)


ROUGH: Sequence[tuple[str, Callable[[list[Worked]], Worked]]] = (
    *((name, mine) for name, mine, _ in SMOOTH),
    ("up", lambda s: f.round_up(f.mean(s), STEP)),
    ("up and back", lambda s: f.round_up(f.mean(s), STEP) - f.least(s)),
    ("down", lambda s: s[0] - f.round_down(s[0] / 3, STEP) * 3),
    ("floor", lambda s: f.floor_at_nought(s[0] - s[1])),
    ("choice", lambda s: f.greatest([s[0], s[1] + s[2]]) - f.least([s[0], s[2]])),
    ("bays", lambda s: s[0] / f.round_up(s[0] / (s[1] + s[2]), plain(1))),
)


@pytest.mark.parametrize("way", [way[1] for way in ROUGH], ids=[way[0] for way in ROUGH])
@settings(max_examples=60, deadline=None)
@forall(numbers=SIZES, reaches=REACHES, off=st.lists(st.floats(-1, 1), min_size=3, max_size=3))
def test_no_outcome_lies_outside_its_range(way, numbers, reaches, off) -> None:
    found = limits(way(sizes(numbers, reaches)))
    actual = [
        given(f"size_{at}", Value(number + float(reach) * move, LENGTH), label="", origin=Origin.JOB)
        for at, (number, reach, move) in enumerate(zip(numbers, reaches, off, strict=True))
    ]
    outcome = way(actual).number
    assert found.low is not None and found.high is not None
    slack = 1e-6 * max(abs(outcome), 1)
    assert float(found.low.magnitude) - slack <= outcome <= float(found.high.magnitude) + slack


def test_the_published_product_keeps_what_its_factors_share() -> None:
    ten, x, y = size("ten", "10 mm"), size("x", "0 mm", "2 mm"), size("y", "0 mm", "2 mm")
    r, s = size("r", "0 mm", "1 mm"), size("s", "0 mm", "1 mm")
    shared, apart = limits((ten + x + r) * (ten - x + s)), limits((ten + x + r) * (ten - y + s))
    assert [float(end.magnitude) for end in (shared.low, shared.high)] == pytest.approx(SHARED_PRODUCT)
    assert [float(end.magnitude) for end in (apart.low, apart.high)] == pytest.approx(APART_PRODUCT)


def test_wider_limits_never_give_a_narrower_range() -> None:
    for way in (way[1] for way in ROUGH):
        near, far = (limits(way(sizes([800, 300, 120], [reach] * 3))) for reach in ("0.5", "1"))
        assert far.low.magnitude <= near.low.magnitude <= near.high.magnitude <= far.high.magnitude
