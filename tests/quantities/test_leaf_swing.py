"""The opening angle against a leaf turned on its pin until it meets the architrave."""

from __future__ import annotations

import pytest
from hypothesis import given as forall
from hypothesis import settings
from hypothesis import strategies as st
from shapely import affinity
from shapely.geometry import box

from generator.quantities.results import finding_words
from tests.quantities.examples import printed, run_with


def turned(pin: float, depth: float, quirk: float, *, thickness: float = 40, width: float = 700) -> float:
    """The greatest angle by trial: the architrave is square-edged, the leaf's face at the frame's edge."""
    architrave = box(quirk, 0, quirk + 400, depth)
    leaf = box(-width, -thickness, 0, 0)
    low, high = 90.0, 180.0
    if _clear(leaf, architrave, pin, high):
        return high
    for _ in range(40):
        middle = (low + high) / 2
        low, high = (middle, high) if _clear(leaf, architrave, pin, middle) else (low, middle)
    return low


def _clear(leaf, architrave, pin: float, angle: float) -> bool:
    # Opening turns the leaf away from the lining, through the room, towards the wall.
    moved = affinity.rotate(leaf, -angle, origin=(0, pin))
    return moved.intersection(architrave).area < 1e-9


def angle(pin: float, depth: float, quirk: float) -> float:
    swing = run_with("door_swing", pin_projection=f"{pin} mm", depth=f"{depth} mm", quirk=f"{quirk} mm")
    return swing.angle.number


@pytest.mark.parametrize(
    ("pin", "depth", "quirk"),
    [(5, 18, 6), (5, 24, 6), (5, 24, 12), (6, 26.5, 9), (9, 18, 6), (0, 18, 6), (3, 58, 5)],
)
def test_the_angle_is_the_one_found_by_turning_the_leaf(pin: float, depth: float, quirk: float) -> None:
    assert angle(pin, depth, quirk) == pytest.approx(turned(pin, depth, quirk), abs=0.01)


TENTHS = st.integers(min_value=0, max_value=300).map(lambda value: value / 10)


@settings(max_examples=40)
@forall(TENTHS, TENTHS.filter(lambda value: value > 2), TENTHS)
def test_the_angle_agrees_over_many_sizes(pin: float, depth: float, quirk: float) -> None:
    assert angle(pin, depth, quirk) == pytest.approx(turned(pin, depth, quirk), abs=0.01)


@forall(TENTHS, TENTHS.filter(lambda value: value > 0), TENTHS)
def test_more_quirk_or_pin_never_takes_swing_and_more_depth_never_gives_it(
    pin: float, depth: float, quirk: float
) -> None:
    here = angle(pin, depth, quirk)
    assert 90 <= here <= 180
    assert angle(pin, depth, quirk + 1) >= here - 1e-9
    assert angle(pin + 1, depth, quirk) >= here - 1e-9
    assert angle(pin, depth + 1, quirk) <= here + 1e-9


def test_a_pin_half_the_depth_out_lets_the_leaf_lie_flat() -> None:
    assert angle(9, 18, 0) == 180


def test_the_angle_says_that_it_takes_the_edge_as_square() -> None:
    swing = run_with("door_swing", pin_projection="5 mm", depth="18 mm", quirk="6 mm")
    assert [finding_words(each) for each in swing.notes] == [
        "the opening angle is for a square-edged architrave; a moulded edge opens further"
    ]


def test_too_small_an_angle_is_refused() -> None:
    swing = run_with("door_swing", pin_projection="5 mm", depth="24 mm", quirk="6 mm", least_swing="125 deg")
    assert [finding_words(each, space=" ") for each in swing.refused] == [
        "the leaf would open to 122.1° and the least is 125°"
    ]
    assert printed(swing, "depth") == "24 mm"
