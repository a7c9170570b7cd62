"""Packers: one even thickness, what it leaves, how it sits, and how long each piece is."""

from __future__ import annotations

from typing import Any

import pytest
from shapely.geometry import box
from shapely.ops import unary_union

from generator.quantities.results import finding_words
from generator.quantities.workings import print_worked
from generator.units import parse_value, print_value
from tests.quantities.examples import printed, readings, run_with

OPENING = {"opening_width": "768 mm", "opening_height": "1990 mm"}
ROUND = (
    "left:100 7.5 mm", "left:700 8 mm", "left:1300 8.5 mm", "head:0 8.5 mm", "head:384 8 mm",
    "right:0 8.5 mm", "right:700 9 mm", "right:1300 8 mm", "right:1890 7.5 mm",
)  # fmt: skip


def even(*texts: str, **more: object) -> Any:
    return run_with("even_packer", readings=readings(*texts), step="0.5 mm", **more)


def words(findings) -> list[str]:
    return [finding_words(each, space=" ") for each in findings]


def test_the_mean_is_taken_up_and_never_to_the_nearest() -> None:
    assert printed(even("8 mm", "8 mm", "8.1 mm"), "thickness") == "8.5 mm"
    assert printed(even("8 mm", "8 mm"), "thickness") == "8 mm"


def test_head_readings_are_pooled_with_the_legs() -> None:
    assert printed(even(*ROUND), "mean") == "8.2 mm"


def test_each_reading_keeps_what_is_left_and_on_which_side() -> None:
    packer = even(*ROUND)
    left = [
        (each.number, each.member, printed(each, "wall_gap"), printed(each, "frame_gap"))
        for each in packer.remainders
    ]
    assert left[0] == (1, "left", "1 mm", "0 mm")
    assert left[6] == (7, "right", "0 mm", "0.5 mm")
    assert [printed(each, "remainder") for each in packer.remainders] == [
        "1 mm", "0.5 mm", "0 mm", "0 mm", "0.5 mm", "0 mm", "−0.5 mm", "0.5 mm", "1 mm",
    ]  # fmt: skip


def test_signs_do_not_cancel_out_of_sight() -> None:
    packer = even("4 mm", "-4 mm", "3 mm", twist="1 mm")
    assert words(packer.refused) == [
        "readings lie on both sides of the frame's edge, 8 mm from least to greatest, with 1 mm allowed on "
        "each side; an even packer cannot follow a twist"
    ]


def test_a_little_either_way_is_no_twist() -> None:
    assert even("4 mm", "-0.5 mm", "3 mm", twist="1 mm").refused == ()
    assert [each.code for each in even("4 mm", "-0.5 mm").refused] == ["twisted"]


@pytest.mark.parametrize("value", ["0 mm", "-3 mm"])
def test_a_mean_of_nought_or_less_gives_no_packer(value: str) -> None:
    packer = even(value, value)
    assert printed(packer, "thickness") == "0 mm"
    assert words(packer.remarks) == [
        f"the mean set-back is {value.replace('-', '−')}, so no packer is needed"
    ]


def test_nought_keeps_no_sign_whatever_places_are_printed() -> None:
    thickness = even("0 mm", "0 mm").thickness
    assert [print_value(thickness.value, decimals=places).number for places in (None, 0, 1)] == [
        "0",
        "0",
        "0.0",
    ]
    assert print_value(parse_value("-0.04 mm"), decimals=1).number == "0.0"


def test_no_packer_is_not_refused_as_too_thin() -> None:
    assert even("0 mm", "0 mm", thinnest_rip="3 mm").refused == ()


def test_one_reading_alone_is_remarked_on() -> None:
    assert words(even("8 mm").remarks) == ["there is one reading alone; the packer rests on it"]


def test_a_member_nobody_read_is_remarked_on() -> None:
    packer = even("left:100 8 mm", "head:0 8 mm")
    assert words(packer.remarks) == ["nothing was read on the member called right"]


def test_too_thin_and_too_thick_are_refused_with_limit_and_size() -> None:
    thin = even("1 mm", "1.5 mm", thinnest_rip="3 mm")
    thick = even("22 mm", "23 mm", thickest="18 mm")
    assert words(thin.refused) == ["the strip would be 1.5 mm thick and nothing under 3 mm is ripped"]
    assert words(thick.refused) == ["the packer would be 22.5 mm thick and the most is 18 mm"]


def test_tapers_are_offered_only_where_the_spread_asks_for_them() -> None:
    assert even(*ROUND, filler_takes="2 mm").tapers == ()
    assert even(*ROUND).tapers == ()
    assert len(even(*ROUND, filler_takes="1 mm", **OPENING).tapers) == 3


def test_a_taper_runs_the_length_of_its_member_and_a_corner_read_once_serves_both() -> None:
    packer = even(
        "left:0 4 mm", "left:1000 6 mm", "head:0 8 mm", "right:0 8 mm", "right:2000 8 mm",
        filler_takes="1 mm", opening_width="800 mm", opening_height="2000 mm",
    )  # fmt: skip
    left, head, right = packer.tapers
    assert [print_worked(each).text() for each in (left.start, left.end, left.rms)] == [
        "4 mm",
        "8 mm",
        "0 mm",
    ]
    assert (left.member, head.member, right.member) == ("left", "head", "right")
    assert printed(head, "start") == printed(head, "end") == "8 mm"


def test_a_taper_without_sizes_runs_from_the_first_reading_to_the_last() -> None:
    packer = even("left:100 4 mm", "left:900 8 mm", "left:500 6.3 mm", filler_takes="1 mm")
    (left,) = packer.tapers
    assert [round(each.number, 3) for each in (left.start, left.end)] == [4.1, 8.1]
    assert left.rms.number == pytest.approx(0.1414, abs=1e-4)


def test_a_packer_for_each_member_has_its_own_mean() -> None:
    packer = even("left:0 4 mm", "head:0 6.1 mm", "right:0 8 mm", filler_takes="1 mm")
    assert [(each.member, printed(each, "thickness")) for each in packer.by_member] == [
        ("left", "4 mm"), ("head", "6.5 mm"), ("right", "8 mm"),
    ]  # fmt: skip


def test_a_gap_wider_than_the_filler_takes_is_remarked_on() -> None:
    packer = even("2 mm", "9 mm", filler_takes="2 mm")
    assert [each.code for each in packer.remarks] == ["gap-over-filler"]
    assert words(packer.remarks)[0].startswith(
        "the gap left at the wall is 3.5 mm at its widest and the filler takes 2 mm"
    )


FIT = {
    "frame_edge": "34 mm", "first_quirk": "5 mm", "second_quirk": "4 mm", "packer_width": "26 mm",
    "overlap": "0 mm", "clearance": "1 mm", "least_bearing": "10 mm",
}  # fmt: skip


def test_the_second_quirk_takes_no_part_in_the_fit() -> None:
    fit = run_with("packer_fit", **{**FIT, "second_quirk": "9 mm"})
    assert fit.refused == ()
    assert printed(fit, "bearing") == "17 mm"


def test_a_packer_of_the_largest_width_fits_and_a_tenth_more_does_not() -> None:
    assert run_with("packer_fit", **{**FIT, "packer_width": "28 mm"}).refused == ()
    wide = run_with("packer_fit", **{**FIT, "packer_width": "28.1 mm"})
    assert words(wide.refused) == ["the packer is 28.1 mm wide and the edge has room for 28 mm"]


def test_too_small_a_bearing_is_refused() -> None:
    narrow = run_with("packer_fit", **{**FIT, "packer_width": "13 mm"})
    assert words(narrow.refused) == ["the architrave would bear 9 mm on the packer and the least is 10 mm"]


def test_a_fit_agrees_with_the_section_drawn() -> None:
    fit = run_with("packer_fit", **FIT)
    packer, architrave, edge = box(5, 0, 31, 8), box(9, 8, 78, 26), box(0, -10, 33, 0)
    assert edge.boundary.intersection(packer.boundary).length == pytest.approx(26)
    assert packer.boundary.intersection(architrave.boundary).length == pytest.approx(fit.bearing.number)
    assert 33 - packer.bounds[2] == pytest.approx(fit.spare.number)


def test_head_over_legs_fills_the_ring_round_the_opening() -> None:
    sizes = {"first_quirk": "5 mm", "packer_width": "24 mm", "floor_gap": "2 mm"}
    made = run_with("packer_set", **OPENING, **sizes)
    head, leg = made.head.number, made.leg.number
    inner_left, inner_top = -5, 1990 + 5
    pieces = [
        box(inner_left - 24, 2, inner_left, 2 + leg),
        box(768 + 5, 2, 768 + 5 + 24, 2 + leg),
        box(inner_left - 24, inner_top, inner_left - 24 + head, inner_top + 24),
    ]
    ring = box(-29, 2, 797, 2019).difference(box(-5, 2, 773, 1995))
    assert unary_union(pieces).symmetric_difference(ring).area == pytest.approx(0, abs=1e-6)
    assert sum(piece.area for piece in pieces) == pytest.approx(ring.area)
    assert made.metres.number == pytest.approx(head + 2 * leg)


def test_the_pieces_are_square_carry_their_section_and_no_hand() -> None:
    sizes = {"first_quirk": "5 mm", "packer_width": "24 mm", "thickness": "8.5 mm"}
    made = run_with("packer_set", **OPENING, **sizes)
    assert [(p.mark, p.name, p.role, p.hand) for p in made.pieces] == [
        ("PL", "left leg", "packer", ""), ("PH", "head", "packer", ""), ("PR", "right leg", "packer", ""),
    ]  # fmt: skip
    assert (
        {printed(p, "left_end") for p in made.pieces}
        == {printed(p, "right_end") for p in made.pieces}
        == {"0°"}
    )
    assert {(printed(p, "width"), printed(p, "thickness")) for p in made.pieces} == {("24 mm", "8.5 mm")}


def test_no_packer_means_no_pieces_and_no_metres() -> None:
    made = run_with("packer_set", **OPENING, first_quirk="5 mm", packer_width="24 mm", thickness="0 mm")
    assert made.pieces == ()
    assert printed(made, "metres") == "0 mm"


def test_a_floor_that_drops_makes_that_leg_longer() -> None:
    sizes = {"first_quirk": "5 mm", "packer_width": "24 mm", "floor_gap": "2 mm", "right_floor_gap": "-6 mm"}
    made = run_with("packer_set", **OPENING, **sizes)
    assert (printed(made, "leg"), printed(made, "right_leg")) == ("1993 mm", "2001 mm")
    assert printed(made, "metres") == "4820 mm"
