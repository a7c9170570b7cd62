"""Partitions and their boards, and window boards: counted apart, and held to limits."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given as forall
from hypothesis import settings
from hypothesis import strategies as st
from shapely import unary_union
from shapely.geometry import box

from generator.quantities.results import InputRefused, finding_words
from tests.quantities.examples import run_with, size


def several(*texts: str) -> tuple[Any, ...]:
    return tuple(size(text) for text in texts)


def frame(long: int = 4300, high: int = 2400, spacing: int = 600, rows: str = "2", **more: Any) -> Any:
    return run_with(
        "partition_frame", length=f"{long} mm", height=f"{high} mm", spacing=f"{spacing} mm",
        stud_thickness="47 mm", plate_thickness="47 mm", noggin_rows=rows, **more,
    )  # fmt: skip


def opening(start: int, wide: int = 826, high: int = 2060) -> dict[str, Any]:
    return {
        "opening_starts": several(f"{start} mm"),
        "opening_widths": several(f"{wide} mm"),
        "opening_heights": several(f"{high} mm"),
    }


@settings(max_examples=60, deadline=None)
@forall(st.integers(300, 9000), st.sampled_from((400, 450, 600)))
def test_studs_stand_no_further_apart_than_the_spacing_and_half_a_stud(long: int, spacing: int) -> None:
    made = frame(long, spacing=spacing)
    centres = [centre.number for centre in made.centres]
    assert made.studs.number == len(centres) == math.ceil((long - 47) / spacing - 1e-9) + 1
    assert (centres[0], centres[-1]) == (23.5, long - 23.5)
    for one, two in pairwise(centres):
        assert 47 - 1e-9 <= two - one <= spacing + 23.5 + 1e-9
    for at, centre in enumerate(centres[1:-2], 1):
        assert centre == at * spacing


@settings(max_examples=60, deadline=None)
@forall(st.integers(2000, 9000), st.integers(94, 1000), st.integers(500, 900))
def test_no_member_stands_in_another_and_the_opening_is_clear(long: int, start: int, wide: int) -> None:
    made = frame(long, **opening(start, wide))
    parts = [
        box(m.left.number, m.bottom.number, m.right.number, m.bottom.number + m.height.number)
        for m in made.members
    ]
    for at, one in enumerate(parts):
        for other in parts[at + 1 :]:
            assert one.intersection(other).area < 1e-6
    clear = box(start, 47, start + wide, 2060)
    assert all(clear.intersection(part).area < 1e-6 for part in parts)
    assert made.sole_left.number == long - wide
    assert made.trimmers.number == 2


@settings(max_examples=40, deadline=None)
@forall(st.integers(2000, 9000), st.integers(100, 900), st.sampled_from((400, 600)))
def test_a_mirrored_opening_leaves_as_many_studs_between_walls(long: int, start: int, spacing: int) -> None:
    """Timber is conserved: each upright and each noggin is in the pieces, and their lengths add up."""
    made = frame(long, spacing=spacing, **opening(start))
    assert len(made.pieces) == len(made.members)
    assert made.timber.number == pytest.approx(sum(piece.long_point.number for piece in made.pieces))
    plates = [m.width.number for m in made.members if m.kind.endswith("plate")]
    assert sum(plates) == made.plates.number == 2 * long


def test_a_plate_longer_than_the_stock_joins_over_a_stud() -> None:
    made = frame(9000, longest="4.8 m")
    joints = {m.left.number for m in made.members if m.kind == "sole plate"} - {0}
    assert joints == {4800}
    assert joints <= {centre.number for centre in made.centres}


def test_a_bay_too_narrow_for_a_noggin_is_noted() -> None:
    made = frame(**opening(1900))
    assert [finding_words(note, space=" ") for note in made.notes] == [
        "between studs 4 and 5 there is only 29.5 mm: no noggin",
        "between studs 9 and 10 there is only 29.5 mm: no noggin",
    ]


def test_a_stud_longer_than_the_stock_is_refused() -> None:
    assert [each.code for each in frame(1000, 3000, longest="2.4 m").refused] == ["stud-over-stock"]


@pytest.mark.parametrize(
    ("changed", "code"),
    [
        ({"spacing": 40}, "spacing-within-stud"),
        ({"long": 80}, "partition-too-small"),
        ({"rows": "1.5"}, "rows-not-whole"),
        (opening(60), "opening-off-partition"),
        (opening(1900, high=2350), "opening-too-high"),
        ({**opening(1900), "opening_widths": several("800 mm", "800 mm")}, "lists-differ"),
        ({"long": 9000, "longest": "500 mm"}, "plate-has-no-joint"),
    ],
)
def test_a_partition_that_cannot_be_is_refused(changed: dict[str, Any], code: str) -> None:
    with pytest.raises(InputRefused) as refused:
        frame(**changed)
    assert refused.value.code == code


def sheets(of: Any, **changed: Any) -> Any:
    inputs = {
        "stud_spacing": "600 mm", "sheet_width": "1200 mm", "sheet_length": "2400 mm",
        "screw_spacing": "300 mm", "screw_end": "10 mm", "layers": "1", "waste_habit": "10 %",
    }  # fmt: skip
    return run_with("sheet_layout", frame=of, **{**inputs, **changed})


@settings(max_examples=40, deadline=None)
@forall(st.integers(300, 9000), st.integers(2000, 3600))
def test_sheets_cover_both_faces_and_joints_never_share_a_stud(long: int, high: int) -> None:
    made = sheets(frame(long, high))
    assert made.sheets.number * 1200 * 2400 >= 2 * long * high - 1e-6
    near = {joint.number for joint in made.near_joints}
    far = {joint.number for joint in made.far_joints}
    assert near.isdisjoint(far)
    assert all(joint % 600 == 0 for joint in near | far)


def test_a_wall_higher_than_a_sheet_takes_strips_from_further_sheets() -> None:
    made = sheets(frame(4300, 2700))
    assert (made.sheets.number, made.strip_height.number, made.by_area.number) == (10, 300, 9)


def test_each_layer_takes_as_many_sheets_and_screws_again() -> None:
    one, two = sheets(frame()), sheets(frame(), layers="2")
    assert two.sheets.number == 2 * one.sheets.number
    assert two.screws.number == 2 * one.screws.number


def test_a_joint_at_the_edge_of_an_opening_is_noted() -> None:
    made = sheets(frame(**opening(1800)))
    assert [finding_words(note, space=" ") for note in made.notes] == [
        "a board joint at 1800 mm falls at the edge of opening 1: cut a board round"
    ]


@pytest.mark.parametrize(
    ("changed", "code"),
    [({"layers": "0"}, "layers-not-whole"), ({"sheet_width": "900 mm"}, "sheet-off-studs")],
)
def test_sheets_that_miss_the_studs_are_refused(changed: dict[str, str], code: str) -> None:
    with pytest.raises(InputRefused) as refused:
        sheets(frame(), **changed)
    assert refused.value.code == code


# Window boards


def window(**changed: str) -> Any:
    inputs = {
        "reveal_width": "1210 mm", "left_depth": "148 mm", "right_depth": "152 mm", "projection": "30 mm",
        "ear": "40 mm", "frame_gap": "2 mm", "packer_spacing": "450 mm", "packer_end": "60 mm",
    }  # fmt: skip
    return run_with("window_board", **{**inputs, **changed})


@forall(st.integers(300, 3000), st.integers(60, 400), st.integers(60, 400), st.integers(0, 60))
def test_a_mirrored_window_takes_the_same_board(reveal: int, left: int, right: int, nose: int) -> None:
    sizes = {"reveal_width": f"{reveal} mm", "projection": f"{nose} mm", "ear": "0 mm"}
    seen = window(left_depth=f"{left} mm", right_depth=f"{right} mm", **sizes)
    turned = window(left_depth=f"{right} mm", right_depth=f"{left} mm", **sizes)
    assert (seen.width.value, seen.length.value) == (turned.width.value, turned.length.value)
    assert (seen.left_notch.value, seen.right_notch.value) == (
        turned.right_notch.value,
        turned.left_notch.value,
    )
    assert seen.width.number - max(seen.left_notch.number, seen.right_notch.number) == nose


@forall(
    st.integers(600, 2400), st.integers(80, 300), st.integers(-6, 6), st.integers(10, 60), st.integers(1, 80)
)  # fmt: skip
def test_a_board_cut_to_its_notches_fills_reveal_nosing_and_ears(
    reveal: int, left: int, taper: int, nose: int, ear: int
) -> None:
    """On plan, the frame along y = 0 with its gap: what is left of the board after both notches."""
    right = left + taper
    made = window(
        reveal_width=f"{reveal} mm", left_depth=f"{left} mm", right_depth=f"{right} mm",
        projection=f"{nose} mm", ear=f"{ear} mm",
    )  # fmt: skip
    front = max(left, right) + nose
    back, end = front - made.width.number, made.length.number - ear
    board = box(-ear, back, end, front)
    board = board.difference(box(-ear, back, 0, back + made.left_notch.number))
    board = board.difference(box(reveal, back, end, back + made.right_notch.number))
    stands = unary_union([
        box(0, 2, reveal, front), box(-ear, left, 0, front), box(reveal, right, reveal + ear, front),
    ])  # fmt: skip
    assert board.symmetric_difference(stands).area < 1e-6


def test_a_tongue_adds_to_the_board_and_a_gap_takes_from_it() -> None:
    assert window(frame_gap="0 mm", tongue="8 mm").width.number == 152 + 30 + 8
    with pytest.raises(InputRefused, match="tongue-and-gap"):
        window(tongue="8 mm")


def test_the_end_packers_lie_between_the_faces_of_the_reveal() -> None:
    made = window(reveal_width="1238 mm", packer_end="75 mm")
    bays = made.packers.number - 1
    assert 75 + bays * made.packer_pitch.number == pytest.approx(1238 - 75)
    with pytest.raises(InputRefused, match="packers-past-reveal"):
        window(packer_end="605 mm")


def test_a_reveal_out_of_parallel_or_a_thin_board_is_told() -> None:
    assert [each.code for each in window(most_taper="3 mm").refused] == ["reveal-tapers"]
    long = window(reveal_width="1800 mm", board_thickness="18 mm", thickness_for_span="25 mm")
    assert [each.code for each in long.notes] == ["board-thin-for-span"]
