"""Worked values: exact arithmetic, dimensions, and the tree they leave."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given as forall
from hypothesis import strategies as st

from generator.quantities import functions as f
from generator.quantities.worked import (
    DimensionMismatch,
    Given,
    Undefined,
    Worked,
    compare,
    givens,
    join,
    judge,
    literal,
    named,
    plain,
)
from generator.units import ANGLE, AREA, LENGTH, NUMBER, Value
from tests.quantities.examples import size

LENGTHS = st.decimals(min_value=-5000, max_value=5000, places=2).map(lambda d: literal(Value(d, LENGTH)))


def test_lengths_add_exactly() -> None:
    total = size("0.1 mm") + size("0.2 mm")
    assert total.value == Value(Decimal("0.3"), LENGTH)


def test_a_product_of_lengths_is_an_area_and_a_quotient_a_number() -> None:
    assert (size("2 mm") * size("3 mm")).dimension == AREA
    assert (size("6 mm") / size("3 mm")).value == Value(Decimal(2), NUMBER)


@pytest.mark.parametrize("symbol", ["+", "-"])
def test_a_length_and_a_mass_do_not_join(symbol: str) -> None:
    with pytest.raises(DimensionMismatch) as caught:
        join(symbol, size("2 mm"), size("3 kg"))
    assert (caught.value.symbol, caught.value.left, caught.value.right) == (
        symbol,
        size("2 mm").value,
        size("3 kg").value,
    )


def test_a_plain_number_joins_from_either_side() -> None:
    half, three = size("0.5"), size("3")
    assert [item.magnitude for item in (1 + half, 1 - half, 4 * half, 6 / three)] == [
        Decimal("1.5"), Decimal("0.5"), Decimal("2.0"), Decimal(2),
    ]  # fmt: skip


def test_a_length_and_a_mass_do_not_compare() -> None:
    with pytest.raises(DimensionMismatch):
        compare("<", size("2 mm"), size("3 kg"))


def test_a_division_by_nought_has_no_answer() -> None:
    with pytest.raises(Undefined, match="division-by-nought"):
        _ = size("2 mm") / size("0 mm")


def test_a_comparison_keeps_both_sides() -> None:
    verdict = judge(">=", size("12 mm", "bearing"), size("10 mm", "least"))
    assert verdict.holds
    assert (verdict.left.tree, verdict.right.tree) == (
        size("12 mm", "bearing").tree,
        size("10 mm", "least").tree,
    )


@pytest.mark.parametrize(
    ("symbol", "holds"), [("<", False), ("<=", True), (">", False), (">=", True), ("==", True), ("!=", False)]
)
def test_every_comparison_of_equals(symbol: str, holds: bool) -> None:
    assert compare(symbol, size("2 mm"), size("2.0 mm")) is holds


@forall(LENGTHS, LENGTHS, LENGTHS)
def test_sums_do_not_depend_on_their_grouping(a: Worked, b: Worked, c: Worked) -> None:
    assert ((a + b) + c).value == (a + (b + c)).value


@forall(LENGTHS, LENGTHS)
def test_what_is_added_and_taken_away_leaves_the_same(a: Worked, b: Worked) -> None:
    assert (a + b - b).value == a.value


def test_a_name_hides_the_arithmetic_behind_it_and_keeps_its_sources() -> None:
    width = named(size("5 mm", "quirk") + size("24 mm", "packer"), "needed", "Needed")
    assert [each.name for each in givens((width + 1 * size("2 mm", "gap")).tree)] == [
        "quirk",
        "packer",
        "gap",
    ]


def test_a_source_used_twice_is_listed_once() -> None:
    quirk = size("5 mm", "quirk")
    assert [each.name for each in givens((quirk + quirk).tree)] == ["quirk"]


def test_a_written_value_is_not_named_again() -> None:
    assert isinstance(named(size("5 mm", "quirk"), "other", "Other").tree, Given)


@pytest.mark.parametrize(
    ("value", "step", "up", "down"),
    [
        ("8.1 mm", "0.5 mm", "8.5", "8.0"),
        ("8.5 mm", "0.5 mm", "8.5", "8.5"),
        ("0.3 mm", "0.1 mm", "0.3", "0.3"),
        ("0.6 mm", "0.2 mm", "0.6", "0.6"),
        ("-1.2 mm", "0.5 mm", "-1.0", "-1.5"),
    ],
)
def test_rounding_goes_to_the_next_step(value: str, step: str, up: str, down: str) -> None:
    assert f.round_up(size(value), size(step)).magnitude == Decimal(up)
    assert f.round_down(size(value), size(step)).magnitude == Decimal(down)


def test_a_cut_off_quotient_does_not_push_a_length_over_the_step() -> None:
    third = size("1 mm") / plain(3)
    assert f.round_down(third + third + third, size("1 mm")).magnitude == 1
    assert f.round_up(third * plain(3), size("1 mm")).magnitude == 1


def test_rounding_to_a_step_of_nought_has_no_answer() -> None:
    with pytest.raises(Undefined, match="step-not-positive"):
        f.round_up(size("5 mm"), size("0 mm"))


def test_gathering_nothing_has_no_answer() -> None:
    with pytest.raises(Undefined, match="nothing-to-gather"):
        f.mean([])


def test_gathering_different_kinds_is_refused() -> None:
    with pytest.raises(DimensionMismatch):
        f.least([size("5 mm"), size("5 kg")])


def test_mean_total_count_least_greatest() -> None:
    items = [size("7.5 mm"), size("8 mm"), size("8.5 mm")]
    assert f.mean(items).value == Value(Decimal(8), LENGTH)
    assert f.total(items).value == Value(Decimal(24), LENGTH)
    assert f.count(items).value == Value(Decimal(3), NUMBER)
    assert f.least(items).value == items[0].value
    assert f.greatest(items).value == items[2].value


def test_a_root_halves_the_dimension_and_is_no_longer_exact() -> None:
    root = f.sqrt(size("9 mm") * size("4 mm"))
    assert root.dimension == LENGTH
    assert root.number == 6
    assert not root.value.exact


@pytest.mark.parametrize("item", [size("2 mm"), size("-4")])
def test_what_has_no_root_is_refused(item: Worked) -> None:
    with pytest.raises(Undefined, match="no-square-root"):
        f.sqrt(item)


def test_angles_are_in_degrees() -> None:
    assert f.atan(plain(1)).value.dimension == ANGLE
    assert f.atan(plain(1)).number == pytest.approx(45)
    assert f.tan(size("45 deg")).number == pytest.approx(1)
    assert f.sin(size("30 deg")).number == pytest.approx(0.5)
    assert f.cos(size("60 deg")).number == pytest.approx(0.5)
    with pytest.raises(DimensionMismatch):
        f.atan(size("3 mm"))
    with pytest.raises(DimensionMismatch):
        f.tan(size("3 mm"))
