"""Stairs and their balustrades: read, set out, cut, and held against a document that approves nothing."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given as forall
from hypothesis import strategies as st
from shapely.geometry import Point, Polygon, box

from generator.quantities.doubts import findings_within
from generator.quantities.families.stairs import StraightStair
from generator.quantities.held import Held, held_words
from generator.quantities.results import InputRefused, finding_words
from generator.quantities.worked import Origin, given
from generator.units import parse_value
from tests.quantities.examples import run_with, size


def several(*texts: str) -> tuple[Any, ...]:
    return tuple(size(text) for text in texts)


def outside(held: tuple[Held, ...]) -> list[str]:
    return [each.code for each in held if each.outside]


# Balusters


def balusters(run: int, width: int, most: int, **more: str) -> Any:
    return run_with("balusters", run=f"{run} mm", baluster=f"{width} mm", most_gap=f"{most} mm", **more)


@forall(st.integers(100, 9000), st.integers(20, 120), st.integers(50, 99))
def test_the_fewest_balusters_keep_the_gap_and_one_fewer_would_not(run: int, width: int, most: int) -> None:
    made = balusters(run, width, most)
    count = int(made.count.number)
    # A run just past one gap can be closed by a baluster that leaves no room at all.
    if made.gap.number > 0:
        assert count * width + (count + 1) * made.gap.number == pytest.approx(run)
    assert made.gap.number <= most + 1e-9
    if count:
        assert (run - (count - 1) * width) / count > most - 1e-9


def test_a_sphere_meets_the_level_gap_whatever_the_pitch() -> None:
    """Between two upright balusters a sphere is held by their faces, a level gap apart, at any pitch."""
    made = balusters(2400, 41, 99, pitch="42 deg", sphere="100 mm")
    assert made.refused == ()
    turn = math.radians(42)
    first, second = made.centres[0].number, made.centres[1].number
    faces = [
        box(centre - 20.5, first * math.tan(turn) - 2000, centre + 20.5, first * math.tan(turn) + 2000)
        for centre in (first, second)
    ]
    middle = Point((first + second) / 2, first * math.tan(turn))
    assert middle.buffer(50, quad_segs=64).intersects(faces[0])
    assert not middle.buffer(made.gap.number / 2 - 0.01, quad_segs=64).intersects(faces[0])
    assert made.fillet.number == pytest.approx(made.gap.number / math.cos(turn))
    assert made.rake.number == pytest.approx(math.hypot(2400, made.rise.number))


def test_a_gap_that_lets_the_sphere_pass_is_refused() -> None:
    made = balusters(2400, 41, 110, sphere="100 mm")
    assert [finding_words(each, space=" ") for each in made.refused] == [
        "the gap is 102.6 mm, and a sphere of 100 mm would pass"
    ]


def test_a_rake_steeper_than_a_stair_is_refused() -> None:
    with pytest.raises(InputRefused, match="rake-too-steep"):
        balusters(2400, 41, 99, pitch="70 deg")


# Stairs


def stair(rise: int, going: int, risers: str | None = None, **more: str) -> Any:
    told = {"risers": risers} if risers else {}
    return run_with("straight_stair", total_rise=f"{rise} mm", going=f"{going} mm", **told, **more)


@forall(st.integers(400, 4000), st.integers(220, 300))
def test_the_fewest_risers_keep_the_greatest_rise(rise: int, going: int) -> None:
    made = stair(rise, going)
    count = int(made.risers.number)
    assert made.rise.number <= 220 + 1e-9
    assert rise / (count - 1) > 220 - 1e-9
    assert made.string.number == pytest.approx(math.hypot(rise, (count - 1) * going))
    assert made.pitch.number == pytest.approx(math.degrees(math.atan2(rise / count, going)))


@pytest.mark.parametrize(
    ("inputs", "codes"),
    [
        ((2600, 225, "13"), []),
        ((2600, 215, "13"), ["going", "pitch"]),
        ((2600, 225, "11"), ["rise", "pitch"]),
        ((2600, 310, "13"), ["going", "stride"]),
        ((1400, 220, "10"), ["rise", "stride"]),
    ],
)
def test_a_private_stair_is_held_to_approved_document_k(
    inputs: tuple[int, int, str], codes: list[str]
) -> None:
    """Approved Document K 2013 Table 1.1."""
    made = stair(*inputs)
    assert [each.code for each in made.held if each.outside] == codes
    assert len(made.refused) == len(codes)


def test_finishes_still_to_be_laid_make_the_first_and_last_rise_differ_as_built() -> None:
    made = stair(2600, 225, "13", floor_finish="20 mm", landing_finish="12 mm", tread_finish="5 mm")
    assert (made.first_rise.number, made.last_rise.number) == (215, 193)


def test_headroom_is_asked_for_and_held() -> None:
    assert [each.code for each in stair(2600, 225, "13").notes] == ["headroom-not-given"]
    low = stair(2600, 225, "13", headroom="1950 mm").refused
    assert [finding_words(each, space=" ") for each in low] == [
        "headroom is 1950 mm, the least is 2000 mm and nobody is named who decided on it"
    ]


def test_half_a_riser_is_refused() -> None:
    with pytest.raises(InputRefused, match="risers-not-whole"):
        stair(2600, 225, "12.5")


@pytest.mark.parametrize(
    ("use", "rise", "going", "codes"),
    [
        ("private", 1352, 262, []),
        ("utility", 1352, 262, []),
        ("utility", 1352, 240, ["going"]),
        ("utility", 1600, 262, ["rise"]),
        ("general access", 1352, 262, []),
        ("general access", 1400, 262, ["rise"]),
        ("general access", 1352, 240, ["going"]),
    ],
)
def test_what_the_stair_is_used_for_decides_which_row_of_the_table(
    use: str, rise: int, going: int, codes: list[str]
) -> None:
    """Approved Document K 2013 Table 1.1; private read in a copy, the other rows from memory."""
    made = stair(rise, going, "8", use=use, headroom="2100 mm")
    assert outside(made.held) == codes
    assert {each.known for each in made.held[:2]} == {"copy" if use == "private" else "memory"}
    assert ("pitch" in {each.code for each in made.held}) == (use == "private")


def test_without_risers_the_row_of_the_table_gives_the_greatest_rise() -> None:
    assert stair(1352, 262, use="general access").risers.number == 8
    assert stair(1352, 262).risers.number == 7


def test_what_stands_outside_is_refused_until_somebody_has_decided() -> None:
    steep = ("13", "private")
    undecided = stair(2600, 215, steep[0], use=steep[1], decided_by="nobody yet")
    decided = stair(2600, 215, steep[0], use=steep[1], decided_by="building control")
    assert [finding_words(each, space=" ") for each in undecided.refused] == [
        "going is 215 mm, the least is 220 mm and nobody is named who decided on it",
        "pitch is 42.9°, the most is 42° and nobody is named who decided on it",
    ]
    assert decided.refused == ()
    assert outside(decided.held) == outside(undecided.held) == ["going", "pitch"]
    assert held_words(decided.held[1], "read in a copy", space=" ") == (
        "going 215 mm; from 220 mm to 300 mm by Approved Document K (England, 2013) Table 1.1, private "
        "stair, read in a copy: outside; building control has decided on it in writing"
    )


@pytest.mark.parametrize(("name", "word"), [("use", "public"), ("decided_by", "me")])
def test_a_word_that_is_not_offered_is_refused(name: str, word: str) -> None:
    with pytest.raises(InputRefused, match="word-not-offered"):
        stair(2600, 225, "13", **{name: word})


def limited(text: str, within: str) -> Any:
    return given(
        "headroom", parse_value(text), label="Headroom", origin=Origin.JOB, within=parse_value(within)
    )


@pytest.mark.parametrize(
    ("headroom", "told"),
    [
        ("2003 mm", ["headroom stands inside as worked and may come to 1998 mm, where 2000 mm is the limit"]),
        ("2005 mm", []),
    ],
)
def test_a_figure_that_limits_could_take_outside_is_left_in_doubt(headroom: str, told: list[str]) -> None:
    made = run_with(
        "straight_stair", total_rise="2600 mm", going="225 mm", risers="13",
        headroom=limited(headroom, "5 mm"),
    )  # fmt: skip
    assert [finding_words(each, space=" ") for each in findings_within(made)] == told


def test_a_figure_already_outside_is_refused_and_not_doubted_as_well() -> None:
    made = run_with(
        "straight_stair", total_rise="2600 mm", going="225 mm", risers="13",
        headroom=limited("1990 mm", "5 mm"),
    )  # fmt: skip
    assert isinstance(made, StraightStair)
    assert len(made.refused) == 1
    assert list(findings_within(made)) == []


# A flight that stands


def flight(rises: tuple[int, ...], goings: tuple[int, ...], whole: int, **more: str) -> Any:
    return run_with(
        "flight_survey",
        rises=several(*(f"{each} mm" for each in rises)),
        goings=several(*(f"{each} mm" for each in goings)),
        total_rise=f"{whole} mm",
        read_to="1 mm",
        even_within="5 mm",
        **more,
    )


def test_a_flight_is_read_step_by_step_and_in_one() -> None:
    made = flight((168, 170, 169, 170), (262, 261, 263), 676)
    assert made.refused == ()
    assert (made.rise.number, made.going.number, made.left_over.number) == (169, 262, 1)
    assert made.pitch.number == pytest.approx(math.degrees(math.atan2(169, 262)))


@pytest.mark.parametrize(("whole", "refused"), [(680, True), (679, False), (675, False), (674, True)])
def test_rises_that_do_not_come_to_the_whole_height_are_read_again(whole: int, refused: bool) -> None:
    """Four rises and the whole, each read to the nearest mm, may together be off by two and a half."""
    codes = [each.code for each in flight((168, 170, 169, 170), (262, 261, 263), whole).refused]
    assert codes == (["rises-disagree"] if refused else [])


def test_an_odd_step_is_refused_until_somebody_has_decided_on_it() -> None:
    odd = (158, 170, 169, 170), (262, 261, 263), 667
    assert [finding_words(each, space=" ") for each in flight(*odd).refused] == [
        "greatest rise less least is 12 mm, the most is 5 mm and nobody is named who decided on it"
    ]
    assert flight(*odd, decided_by="designer").refused == ()


@pytest.mark.parametrize(
    ("use", "codes"),
    [("private", []), ("utility", ["shortest"]), ("general access", ["highest", "shortest"])],
)
def test_the_odd_step_is_held_against_the_row_for_the_stairs_use(use: str, codes: list[str]) -> None:
    """Approved Document K 2013 Table 1.1: from memory: going 250 at least but for a private stair."""
    made = flight((170, 171, 170, 169), (250, 249, 251), 680, use=use)
    assert outside(made.held) == codes
    assert len(made.refused) == len(codes)


def test_as_many_goings_as_rises_are_refused() -> None:
    with pytest.raises(InputRefused, match="goings-not-one-fewer"):
        flight((168, 170, 169, 170), (262, 261, 263, 262), 676)


# Guarding


def guard(flight: int, landing: int, gap: float, building: str, **more: str) -> Any:
    return run_with(
        "guarding",
        flight=f"{flight} mm",
        landing=f"{landing} mm",
        gap=f"{gap} mm",
        sphere="100 mm",
        building=building,
        **more,
    )


@pytest.mark.parametrize(
    ("heights", "gap", "building", "codes"),
    [
        ((900, 900), 99, "dwelling", []),
        ((900, 1100), 99, "other", []),
        ((900, 1099), 99, "other", ["guard-landing"]),
        ((899, 1100), 99, "other", ["guard-flight", "handrail"]),
        ((1001, 1100), 99, "other", ["handrail"]),
        ((950, 899), 99, "dwelling", ["guard-landing"]),
        ((950, 1100), 100, "other", ["gap"]),
    ],
)
def test_guarding_is_held_to_approved_document_k(
    heights: tuple[int, int], gap: float, building: str, codes: list[str]
) -> None:
    """Approved Document K 2013 Diagram 3.1, section 3 and handrails; a sphere of 100 must not pass."""
    made = guard(*heights, gap, building)
    assert outside(made.held) == codes
    assert len(made.refused) == len(codes)


def test_a_building_of_another_kind_is_refused() -> None:
    with pytest.raises(InputRefused, match="word-not-offered"):
        guard(950, 1100, 96, "barn")


# Fillets cut to a step, and what is left at the newels


@forall(st.integers(600, 4000), st.integers(25, 60), st.sampled_from(("0.5 mm", "1 mm")), st.integers(0, 42))
def test_the_gaps_at_the_newels_take_what_cutting_to_a_step_leaves(
    run: int, width: int, step: str, pitch: int
) -> None:
    sloping = {"pitch": f"{pitch} deg"} if pitch else {}
    made = balusters(run, width, 99, fillet_step=step, **sloping)
    count, along = made.count.number, math.cos(math.radians(pitch))
    assert count * width + (count - 1) * made.gap.number + 2 * made.end_gap.number == pytest.approx(run)
    assert made.gap.number <= 99 + 1e-9
    whole = made.fillet.number / float(step.removesuffix(" mm"))
    assert count < 2 or whole == pytest.approx(round(whole), abs=1e-6)
    assert made.end_fillet.number == pytest.approx(made.end_gap.number / along)
    assert made.centres[-1].number + width / 2 + made.end_gap.number == pytest.approx(run)
    assert bool(made.refused) == (made.end_gap.number > 99 + 1e-9)


def test_a_step_too_coarse_for_the_run_is_refused() -> None:
    coarse = balusters(2400, 41, 99, fillet_step="10 mm")
    assert [finding_words(each, space=" ") for each in coarse.refused] == [
        "with fillets cut to the step given the gap at the newels is 131.5 mm and the most is 99 mm: cut "
        "them to a finer step"
    ]
    long = balusters(6000, 41, 110, fillet_step="20 mm")
    assert [each.code for each in long.refused] == ["end-gap-wide"]


def test_the_sphere_is_held_against_the_gap_at_the_newel_too() -> None:
    made = balusters(2400, 41, 101, sphere="100 mm", fillet_step="2 mm")
    assert (made.gap.number, made.end_gap.number) == (94, 99.5)
    assert made.refused == ()
    wider = balusters(2402, 41, 101, sphere="100 mm", fillet_step="2 mm")
    assert (wider.gap.number, wider.end_gap.number) == (94, 100.5)
    assert [finding_words(each, space=" ") for each in wider.refused] == [
        "the gap is 100.5 mm, and a sphere of 100 mm would pass"
    ]


# Cutting balusters and fillets


def cut(pitch: int = 33, height: int = 950, **more: str) -> Any:
    sloping = {"pitch": f"{pitch} deg"} if pitch else {}
    return run_with(
        "baluster_cut",
        balusters=balusters(1760, 32, 99, fillet_step="0.5 mm", **sloping),
        height=f"{height} mm",
        base_up="45 mm",
        handrail_depth="59 mm",
        base_depth="32 mm",
        groove="8 mm",
        baluster="32 mm",
        fillet_thickness="8 mm",
        **more,
    )


def test_a_baluster_on_a_rake_fills_the_space_between_two_sloping_grooves() -> None:
    """The space is drawn: rails as bands square to the slope, the baluster upright through them."""
    made, turn = cut(), math.radians(33)
    normal = (-math.sin(turn), math.cos(turn))

    def line(plumb: float, square: float) -> float:
        """Where an edge `square` from one through (0, plumb), along its normal, crosses the plumb line."""
        return plumb + square * (normal[1] + normal[0] ** 2 / normal[1])

    groove_of_base = line(45, 32 - 8)
    groove_of_handrail = line(950, -(59 - 8))
    assert made.length.number == pytest.approx(groove_of_handrail - groove_of_base)
    rise = 32 * math.tan(turn)
    shape = Polygon(
        [(0, 0), (32, rise), (32, rise + made.length.number), (0, made.length.number)]
    )  # fmt: skip
    low, high = shape.bounds[1], shape.bounds[3]
    assert made.tip_to_tip.number == pytest.approx(high - low)
    assert made.lean.number == pytest.approx(rise)


def test_on_the_level_a_baluster_is_cut_square() -> None:
    made = cut(0, 1100)
    assert made.length.number == 1100 - 45 - 59 - 32 + 16
    assert made.tip_to_tip.number == made.length.number
    assert {piece.left_end.number for piece in made.pieces} == {0}


def test_the_ends_of_a_raked_piece_lean_the_same_way() -> None:
    made = cut(mark="R")
    assert [(piece.left_end.number, piece.right_end.number) for piece in made.pieces[:2]] == [(33, -33)] * 2
    assert [piece.mark for piece in made.pieces[:2]] == ["R1", "R2"]


def test_every_gap_of_both_rails_has_its_fillet() -> None:
    made = cut(mark="R")
    names = [piece.name for piece in made.fillet_pieces]
    assert len(names) == 2 * (len(made.pieces) + 1)
    assert names.count("end fillet") == 4
    assert len({piece.mark for piece in (*made.pieces, *made.fillet_pieces)}) == 3 * len(made.pieces) + 2


def test_rails_run_from_newel_to_newel_with_plumb_ends() -> None:
    made = cut(mark="R")
    (handrail,), (base,) = made.handrail_pieces, made.base_pieces
    assert (handrail.mark, base.mark) == ("RH", "RB")
    assert handrail.long_point.number == pytest.approx(1760 / math.cos(math.radians(33)))
    assert (base.left_end.number, base.right_end.number, base.width.number) == (33, -33, 32)


def test_rails_that_meet_leave_no_baluster() -> None:
    assert [each.code for each in cut(height=130).refused] == ["rail-too-low"]
