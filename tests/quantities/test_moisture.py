"""Wood and moisture against the handbook's tables, and what must hold whatever the air."""

from __future__ import annotations

import math

import pytest
from hypothesis import given as forall
from hypothesis import strategies as st

from generator.quantities.results import InputRefused
from tests.quantities.examples import run_with
from tests.quantities.published import MOISTURE_TABLE

CELSIUS = st.integers(0, 50)
HUMIDITY = st.integers(5, 95)


def moisture(celsius: object, humidity: object) -> float:
    return float(run_with("equilibrium_moisture", temperature=str(celsius), humidity=str(humidity)).number)


@pytest.mark.parametrize(("celsius", "humidity", "printed"), MOISTURE_TABLE)
def test_moisture_agrees_with_the_handbook_table(celsius: str, humidity: str, printed: float) -> None:
    assert abs(moisture(celsius, humidity) - printed) <= 0.06


def test_moisture_by_the_handbook_equation_in_fahrenheit() -> None:
    """Eq. 4-5 has a second set of constants, for °F; the two sets agree to a tenth of a per cent."""

    def in_fahrenheit(t: float, h: float) -> float:
        w = 330 + 0.452 * t + 0.00415 * t * t
        k = 0.791 + 0.000463 * t - 0.000000844 * t * t
        k1 = 6.34 + 0.000775 * t - 0.0000935 * t * t
        k2 = 1.09 + 0.0284 * t - 0.0000904 * t * t
        kh = k * h
        return 1800 / w * (kh / (1 - kh) + (k1 * kh + 2 * k1 * k2 * kh**2) / (1 + k1 * kh + k1 * k2 * kh**2))

    for celsius in (5, 10, 20, 30):
        for humidity in (20, 40, 60, 80):
            other = in_fahrenheit(celsius * 9 / 5 + 32, humidity / 100)
            assert abs(moisture(celsius, f"{humidity} %") - other) < 0.15, (celsius, humidity)


@forall(CELSIUS, HUMIDITY)
def test_damper_air_never_makes_drier_wood(celsius: int, humidity: int) -> None:
    here = moisture(celsius, f"{humidity} %")
    assert 0 < here < 27
    if humidity < 95:
        assert moisture(celsius, f"{humidity + 1} %") > here


@forall(st.integers(20, 400), st.integers(6, 14), st.integers(6, 14))
def test_wood_that_dries_back_has_moved_as_far_as_it_swelled(width: int, dry: int, damp: int) -> None:
    def change(now: int, then: int) -> float:
        moved = run_with(
            "movement", width=f"{width} mm", coefficient="0.00365", moisture_now=str(now),
            moisture_then=str(then),
        )  # fmt: skip
        assert moved.width.number == pytest.approx(width + moved.change.number)
        assert moved.notes == ()
        return float(moved.change.number)

    assert change(dry, damp) == pytest.approx(-change(damp, dry))
    assert change(dry, damp) == pytest.approx(width * 0.00365 * (damp - dry))


def test_movement_outside_the_known_range_is_noted() -> None:
    moved = run_with("movement", width="100 mm", coefficient="0.00365", moisture_now="5", moisture_then="16")
    assert [note.code for note in moved.notes] == ["beyond-6-to-14", "beyond-6-to-14"]


@pytest.mark.parametrize(
    ("inputs", "code"),
    [
        ({"moisture_now": "0.08", "moisture_then": "11"}, "moisture-as-share"),
        ({"moisture_now": "8", "moisture_then": "0.11"}, "moisture-as-share"),
    ],
)
def test_a_share_where_per_cent_are_meant_is_refused(inputs: dict[str, str], code: str) -> None:
    with pytest.raises(InputRefused) as refused:
        run_with("movement", width="100 mm", coefficient="0.00365", **inputs)
    assert refused.value.code == code


@pytest.mark.parametrize("humidity", ["4 %", "96 %"])
def test_air_outside_the_equation_is_refused(humidity: str) -> None:
    with pytest.raises(InputRefused, match="humidity-beyond-equation"):
        moisture(20, humidity)


def test_a_species_that_is_not_in_the_table_is_refused() -> None:
    with pytest.raises(InputRefused) as refused:
        run_with("movement_coefficient", species="scots pine", sawn="flat")
    assert (refused.value.code, refused.value.values["found"]) == ("word-not-offered", "scots pine")


def gap(build: str, **changed: str) -> object:
    inputs = {
        "across": "4 m", "coefficient": "0.00365", "moisture_laid": "8", "moisture_wettest": "11",
        "customary": "10 mm", "maker_per_metre": "2 mm", "step": "1 mm",
    }  # fmt: skip
    return run_with("expansion_gap", build=build, **{**inputs, **changed})


def test_the_gap_of_a_solid_floor_is_the_greatest_of_three_figures() -> None:
    solid = gap("solid")
    swelling = 4000 * 0.00365 * 3
    assert solid.swelling.number == pytest.approx(swelling)  # type: ignore[attr-defined]
    assert solid.by_maker.number == 8  # type: ignore[attr-defined]
    assert solid.gap.number == math.ceil(max(swelling / 2, 8, 10))  # type: ignore[attr-defined]
    assert solid.governed_by == "wood"  # type: ignore[attr-defined]


def test_the_wood_figure_is_only_shown_for_an_engineered_floor() -> None:
    built = gap("engineered")
    assert built.by_wood.number > built.gap.number == 10  # type: ignore[attr-defined]
    assert built.governed_by == "custom"  # type: ignore[attr-defined]
    assert gap("engineered", maker_per_metre="4 mm").governed_by == "maker"  # type: ignore[attr-defined]


def test_a_floor_laid_damp_only_shrinks() -> None:
    notes = gap("solid", moisture_laid="12", moisture_wettest="9").notes  # type: ignore[attr-defined]
    assert [note.code for note in notes] == ["no-swelling"]
