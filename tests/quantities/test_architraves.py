"""Architrave lengths against the ring they must fill, with hands and saw angles."""

from __future__ import annotations

import math

import pytest
from hypothesis import given as forall
from hypothesis import strategies as st
from shapely.geometry import Polygon, box
from shapely.ops import unary_union

from generator.quantities.families.architraves import ArchitraveSet
from generator.quantities.results import InputRefused
from tests.quantities.examples import printed, run_with

BASE = {"opening_width": "768 mm", "opening_height": "1990 mm", "quirk": "9 mm", "head_width": "69 mm"}


def made(**more: str) -> ArchitraveSet:
    result = run_with("architrave_set", **{**BASE, **more})
    assert isinstance(result, ArchitraveSet)
    return result


def polygons(item: ArchitraveSet, width: float, quirk: float, head: float, leg: float) -> list[Polygon]:
    """The three pieces laid where they go, from their lengths alone."""
    short, long = item.leg_short_point.number, item.leg_long_point.number
    right_short, right_long = item.right_leg_short_point.number, item.right_leg_long_point.number
    top = 10_000.0
    inner, outer = top, top + head
    x0, x1 = -quirk, width + quirk
    middle = (x0 + x1) / 2
    half_short, half_long = item.head_short_point.number / 2, item.head_long_point.number / 2
    return [
        Polygon([(x0, inner), (x0, inner - short), (x0 - leg, outer - long), (x0 - leg, outer)]),
        Polygon([(x1, inner), (x1, inner - right_short), (x1 + leg, outer - right_long), (x1 + leg, outer)]),
        Polygon([
            (middle - half_short, inner), (middle + half_short, inner),
            (middle + half_long, outer), (middle - half_long, outer),
        ]),
    ]  # fmt: skip


SIZES = st.floats(min_value=1, max_value=145).map(lambda value: round(value, 1))


@forall(SIZES, SIZES, st.floats(min_value=0, max_value=30).map(lambda value: round(value, 1)))
def test_the_pieces_fill_the_ring_exactly(head: float, leg: float, quirk: float) -> None:
    item = made(head_width=f"{head} mm", leg_width=f"{leg} mm", quirk=f"{quirk} mm", floor_gap="3 mm")
    pieces = polygons(item, 768, quirk, head, leg)
    foot = 10_000 - (1990 + quirk - 3)
    outer = box(-quirk - leg, foot, 768 + quirk + leg, 10_000 + head)
    ring = outer.difference(box(-quirk, foot, 768 + quirk, 10_000))
    assert unary_union(pieces).symmetric_difference(ring).area == pytest.approx(0, abs=1e-3)
    assert sum(piece.area for piece in pieces) == pytest.approx(ring.area, rel=1e-9)


def test_unequal_widths_take_the_other_piece_s_width_and_their_own_saw_angles() -> None:
    item = made(head_width="90 mm", leg_width="68 mm", opening_width="775 mm", quirk="6 mm")
    assert printed(item, "head_long_point") == "923 mm"
    assert item.head_saw_angle.number == pytest.approx(37.07, abs=0.005)
    assert item.leg_saw_angle.number == pytest.approx(52.93, abs=0.005)
    assert item.head_saw_angle.number + item.leg_saw_angle.number == pytest.approx(90)


def test_equal_widths_are_cut_at_exactly_45() -> None:
    assert made().head_saw_angle.value.exact
    assert printed(made(), "leg_saw_angle") == "45°"


def test_the_difference_of_long_and_short_point_is_what_the_saw_makes() -> None:
    item = made(head_width="90 mm", leg_width="68 mm")
    run = 68 * math.tan(math.radians(item.leg_saw_angle.number))
    assert item.leg_long_point.number - item.leg_short_point.number == pytest.approx(run)


def test_a_left_and_a_right_leg_are_mirrored() -> None:
    left, head, right = made(leg_over="5 mm").pieces
    assert (left.hand, head.hand, right.hand) == ("left", "", "right")
    assert (printed(left, "left_end"), printed(left, "right_end")) == ("0°", "45°")
    assert (printed(right, "left_end"), printed(right, "right_end")) == ("45°", "0°")
    assert (printed(head, "left_end"), printed(head, "right_end")) == ("45°", "45°")
    assert (left.mark, head.mark, right.mark) == ("AL", "AH", "AR")


def test_a_leg_is_left_over_long_and_both_sizes_are_kept() -> None:
    left, head, _ = made(leg_over="5 mm").pieces
    assert (printed(left, "long_point"), printed(left, "over"), printed(left, "cut_length")) == (
        "2068 mm", "5 mm", "2073 mm",
    )  # fmt: skip
    assert printed(head, "cut_length") == printed(head, "long_point") == "924 mm"


def test_a_quirk_of_nought_sets_the_short_points_to_the_lining() -> None:
    item = made(quirk="0 mm")
    assert (printed(item, "head_short_point"), printed(item, "leg_short_point")) == ("768 mm", "1990 mm")


def test_a_head_quirk_of_its_own_moves_the_legs_and_not_the_head() -> None:
    item = made(head_quirk="6 mm")
    assert (printed(item, "head_short_point"), printed(item, "leg_short_point")) == ("786 mm", "1996 mm")


def test_a_gap_that_eats_the_leg_is_refused() -> None:
    with pytest.raises(InputRefused, match="leg-without-length"):
        made(floor_gap="2 m")
