"""The ways out set side by side: what each leaves, and which are refused."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given as forall
from hypothesis import strategies as st

from generator.quantities.families.ways import Comparison, Way
from generator.quantities.results import finding_words
from generator.quantities.workings import print_worked
from generator.wording.results import ASKS, COSTS, FINDINGS, OPERATIONS, WAYS
from tests.quantities.examples import example_result, printed, readings, run_with

AROUND = {
    "architrave_thickness": "18 mm", "edge_thickness": "18 mm", "skirting_thickness": "15 mm",
    "shadow_margin": "2 mm", "pin_projection": "5 mm",
}  # fmt: skip


def around(**more: str) -> Any:
    return run_with("surroundings", **{**AROUND, **more})


def packer(*texts: str) -> Any:
    return run_with("even_packer", readings=readings(*texts), step="0.5 mm")


def all_ways(depths, **more: str) -> dict[str, Way]:
    item, near = packer(*depths), around(**more)
    lengths, fit, packers = (
        example_result("architrave_set"), example_result("packer_fit"), example_result("packer_set"),
    )  # fmt: skip
    face = {"architrave_width": "68 mm", "frame_edge": "34 mm", "quirk": "6 mm"}
    common = {"packer": item, "architraves": lengths, "around": near}
    return {
        "packer": run_with("packed_way", **common, fit=fit, packers=packers, quirk="12 mm"),
        "rebate": run_with(
            "rebated_way", **common, **face, clearance="0.6 mm", least_left="8 mm", most_uneven="2 mm"
        ),
        "extension": run_with(
            "extended_way", **common, strips=packers, quirk="6 mm", step="0.5 mm", thinnest_rip="3 mm",
            thickest_strip="12 mm",
        ),
        "lining": run_with("reset_way", **common, quirk="6 mm", filler_takes="2 mm"),
        "plaster": run_with("eased_way", **common, **face, most_eased="3 mm", plaster_thickness="13 mm"),
    }  # fmt: skip


DEPTHS = ("3.1 mm", "3.6 mm", "4.4 mm", "4 mm", "2.7 mm", "3.4 mm")


def codes(way: Way) -> list[str]:
    return [finding.code for finding in way.refused]


def test_each_way_leaves_what_the_section_shows() -> None:
    ways = all_ways(DEPTHS)
    assert {code: printed(way, "edge_left") for code, way in ways.items()} == {
        "packer": "18 mm", "rebate": "13 mm", "extension": "18 mm", "lining": "18 mm", "plaster": "18 mm",
    }  # fmt: skip
    assert {code: printed(way, "skirting_margin") for code, way in ways.items()} == {
        "packer": "2.6 mm", "rebate": "−1.4 mm", "extension": "3 mm", "lining": "2.1 mm",
        "plaster": "−1.4 mm",
    }  # fmt: skip


def test_the_rebate_has_the_depth_and_width_of_the_section() -> None:
    (sizes, needed, gap) = all_ways(DEPTHS)["rebate"].leaves
    assert finding_words(sizes, space=" ") == "a rebate 40.6 mm wide and 5 mm deep"
    assert finding_words(needed, space=" ") == (
        "the outer edge is 18 mm thick; to stand clear of the skirting it needs 21.4 mm"
    )
    assert (
        finding_words(gap, space=" ") == "a gap of up to 2.3 mm behind the rebate where the plaster is lowest"
    )


def test_a_way_is_refused_for_these_sizes_with_limit_and_actual() -> None:
    ways = all_ways(DEPTHS)
    assert {code: codes(way) for code, way in ways.items()} == {
        "packer": [], "rebate": ["skirting-too-near"], "extension": [], "lining": [],
        "plaster": ["eased-too-deep", "skirting-too-near"],
    }  # fmt: skip
    assert [finding_words(each, space=" ") for each in ways["plaster"].refused] == [
        "4.4 mm of plaster would come off and the most is 3 mm",
        "the architrave would stand −1.4 mm in front of the skirting and the least is 2 mm",
    ]


def test_the_second_quirk_gives_back_the_swing_the_packer_took() -> None:
    ways = all_ways(("6 mm", "6 mm"))
    swings = {code: print_worked(way.swing).text() for code, way in ways.items()}
    assert swings == {
        "packer": "135.1°", "rebate": "135.2°", "extension": "122.1°", "lining": "135.2°",
        "plaster": "135.2°",
    }  # fmt: skip


def test_too_small_a_swing_refuses_the_way_that_makes_it() -> None:
    ways = all_ways(("6 mm", "6 mm"), least_swing="130 deg")
    assert "swing-too-small" in codes(ways["extension"])
    assert "swing-too-small" not in codes(ways["packer"])


def test_the_packed_way_repeats_the_refusals_of_packer_and_fit() -> None:
    refused = run_with(
        "packed_way",
        packer=packer("4 mm", "-4 mm", "3 mm"),
        fit=run_with(
            "packer_fit", frame_edge="34 mm", first_quirk="5 mm", second_quirk="4 mm", packer_width="40 mm",
            overlap="0 mm", clearance="1 mm", least_bearing="10 mm",
        ),
        packers=example_result("packer_set"),
        architraves=example_result("architrave_set"),
        around=around(),
        quirk="9 mm",
    )  # fmt: skip
    assert codes(refused)[:2] == ["twisted", "packer-too-wide"]


@pytest.mark.parametrize("depths", [("0 mm", "0 mm"), ("-2 mm", "-1 mm")])
def test_with_no_set_back_there_is_nothing_to_rebate_or_ease(depths: tuple[str, ...]) -> None:
    ways = all_ways(depths)
    assert "no-set-back" in codes(ways["rebate"]) and "no-set-back" in codes(ways["plaster"])
    assert "no-packer" in codes(ways["packer"])
    assert "packer-too-thin" in codes(ways["extension"])


@pytest.mark.parametrize(("most", "refused"), [("12 mm", True), ("12.5 mm", False)])
def test_a_reading_beyond_the_most_a_packer_is_for_refuses_it(most: str, refused: bool) -> None:
    way = run_with(
        "packed_way",
        packer=packer("11 mm", "11.5 mm", "12.5 mm"),
        fit=example_result("packer_fit"),
        packers=example_result("packer_set"),
        architraves=example_result("architrave_set"),
        around=around(),
        quirk="9 mm",
        most_set_back=most,
    )
    assert ("set-back-too-great" in codes(way)) is refused


def test_a_lining_at_the_mean_of_the_plaster_is_not_set_again() -> None:
    assert "lining-stands" in codes(all_ways(("0 mm", "0 mm"))["lining"])
    assert "lining-stands" not in codes(all_ways(("-2 mm", "-1 mm"))["lining"])


def test_a_set_back_of_nought_makes_every_swing_that_of_a_flush_frame() -> None:
    ways = all_ways(("0 mm", "0 mm"))
    assert print_worked(ways["extension"].swing).text() == print_worked(ways["lining"].swing).text()


def test_a_rebate_that_would_take_the_whole_back_or_nothing_of_it_is_refused() -> None:
    common = {
        "packer": packer(*DEPTHS), "architraves": example_result("architrave_set"), "around": around(),
        "clearance": "0.6 mm", "least_left": "8 mm",
    }  # fmt: skip
    whole = run_with("rebated_way", **common, architrave_width="68 mm", frame_edge="6 mm", quirk="6 mm")
    nothing = run_with("rebated_way", **common, architrave_width="20 mm", frame_edge="34 mm", quirk="6 mm")
    assert "rebate-takes-back" in codes(whole)
    assert "rebate-not-needed" in codes(nothing)


def test_where_the_legs_have_stations_the_skirting_is_held_against_the_feet() -> None:
    item = packer("left:100 3 mm", "left:1900 9 mm", "head:0 8 mm", "right:100 9 mm", "right:1900 4 mm")
    meets = run_with(
        "skirting_meets",
        packer=item,
        edge_thickness="18 mm",
        skirting_thickness="15 mm",
        shadow_margin="2 mm",
    )
    assert printed(meets, "projection") == "21 mm"


def test_skirting_that_would_stand_past_the_architrave_is_refused() -> None:
    meets = run_with(
        "skirting_meets",
        packer=packer(*DEPTHS),
        edge_thickness="18 mm",
        skirting_thickness="18 mm",
        shadow_margin="2 mm",
    )
    assert [finding_words(each, space=" ") for each in meets.refused] == [
        "the architrave would stand −0.4 mm in front of the skirting and the least is 2 mm"
    ]


def test_the_comparison_keeps_the_order_and_marks_the_way_chosen() -> None:
    comparison = run_with("ways_out", **all_ways(DEPTHS))
    assert isinstance(comparison, Comparison)
    assert [way.code for way in comparison.ways] == ["packer", "rebate", "extension", "lining", "plaster"]
    chosen = comparison.choosing("rebate")
    assert [way.code for way in chosen.ways if way.chosen] == ["rebate"]
    assert [finding.code for finding in chosen.refused] == ["skirting-too-near"]
    assert comparison.refused == ()


@forall(st.lists(st.integers(-50, 200), min_size=1, max_size=9))
def test_everything_a_way_says_has_words(tenths: list[int]) -> None:
    for code, way in all_ways([f"{depth / 10} mm" for depth in tenths]).items():
        assert way.code == code and code in WAYS
        assert set(way.operations) <= OPERATIONS.keys()
        assert set(way.asks) <= ASKS.keys()
        assert {cost.code for cost in way.costs} <= COSTS.keys()
        assert all(finding_words(each) for each in (*way.leaves, *way.refused))


def test_every_finding_that_is_worded_is_found_somewhere() -> None:
    from pathlib import Path

    folder = Path(__file__).parents[2] / "generator" / "quantities"
    source = "".join(path.read_text() for path in folder.rglob("*.py"))
    for table in (FINDINGS, OPERATIONS, ASKS, COSTS, WAYS):
        assert [code for code in table if f'"{code}"' not in source] == []
