"""Doors: leading edge and way through against a leaf turned on its pin; sums that must come back whole."""

from __future__ import annotations

import itertools
import math

import pytest
from hypothesis import given as forall
from hypothesis import settings
from hypothesis import strategies as st
from shapely import affinity
from shapely.geometry import Polygon, box

from generator.quantities.results import InputRefused, finding_words
from tests.quantities.examples import printed, registered, run, run_with

SIZE = {
    "opening_width": "766 mm", "opening_height": "1990 mm", "hinge_gap": "2.5 mm", "latch_gap": "3 mm",
    "head_gap": "3 mm", "foot_gap": "8 mm", "leaf_width": "762 mm", "leaf_height": "1981 mm",
    "most_edge_trim": "3 mm", "most_end_trim": "6 mm", "rating": "plain",
}  # fmt: skip
EDGE = {
    "leaf_width": "762 mm", "leaf_thickness": "44 mm", "pin_inset": "1.25 mm", "pin_projection": "6 mm",
    "latch_gap": "3 mm", "most_bevel": "3 mm", "rating": "plain",
}  # fmt: skip
HINGES = {
    "leaf_height": "1979 mm", "hinges": "3", "hinge_height": "100 mm", "from_top": "150 mm",
    "from_foot": "225 mm", "head_gap": "3 mm", "rating": "plain",
}  # fmt: skip


def refusals(name: str, inputs: dict[str, str]) -> list[str]:
    return [finding_words(each, space=" ") for each in run(name, inputs).refused]  # type: ignore[union-attr]


@forall(st.integers(600, 1000), st.integers(0, 60), st.integers(0, 60), st.integers(0, 400))
def test_leaf_gaps_and_trim_make_up_the_opening_and_the_blank(
    opening: int, hinge: int, latch: int, over: int
) -> None:
    leaf = opening + over / 10
    made = run(
        "leaf_size",
        {**SIZE, "opening_width": f"{opening} mm", "hinge_gap": f"{hinge / 10} mm",
         "latch_gap": f"{latch / 10} mm", "leaf_width": f"{leaf} mm"},
    )  # fmt: skip
    width = made.width.number  # type: ignore[union-attr]
    assert width + hinge / 10 + latch / 10 == pytest.approx(opening)
    assert width + 2 * made.edge_trim.number == pytest.approx(leaf)  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("changed", "words"),
    [
        ({"leaf_width": "757 mm"}, "the leaf is 757 mm wide and the opening with its gaps needs 760.5 mm"),
        ({"leaf_height": "1960 mm"}, "the leaf is 1960 mm high and the opening with its gaps needs 1979 mm"),
        ({"leaf_width": "768.5 mm"}, "4 mm would come off each long edge and the leaf allows 3 mm"),
        ({"leaf_height": "2000 mm"}, "21 mm would come off the height and the leaf allows 6 mm"),
    ],
)
def test_a_leaf_that_will_not_do_is_refused(changed: dict[str, str], words: str) -> None:
    assert refusals("leaf_size", {**SIZE, **changed}) == [words]


@pytest.mark.parametrize(
    "name", ["leaf_size", "pair_of_leaves", "leading_edge", "hinge_set_out", "latch_set_out"]
)
def test_of_a_fire_door_nothing_is_worked_out_that_its_certificate_decides(name: str) -> None:
    made = registered()[name]
    result = run(name, {**made.example.inputs, "rating": "fire"})
    assert {getattr(result, field) for field in made.example.gives} == {None}
    assert [each.code for each in result.refused] == ["certificate-decides"]  # type: ignore[union-attr]


def test_a_rating_that_is_neither_is_refused() -> None:
    with pytest.raises(InputRefused, match="word-not-offered"):
        run("leaf_size", {**SIZE, "rating": "smoke"})


def swung(leaf: Polygon, degrees: float) -> Polygon:
    return affinity.rotate(leaf, degrees, origin=(0, 0))


def widest_reach(width: float, thick: float, inset: float, out: float, bevel: float = 0.0) -> float:
    """How far past the shut leaf's near arris anything passes along the frame line, turning it by hundredths.

    The pin is the origin, the leaf lies along +x behind it and opens towards +y.
    """
    far = inset + width
    corners = [(inset, -out), (far, -out), (far - bevel, -out - thick), (inset, -out - thick)]
    frame_depth = (-out - thick, -out)
    reach = 0.0
    for step in range(1200):
        turned = [_turn(point, step / 100) for point in corners[1:3]]
        (x1, y1), (x2, y2) = turned
        for share in (n / 40 for n in range(41)):
            x, y = x1 + (x2 - x1) * share, y1 + (y2 - y1) * share
            if frame_depth[0] <= y <= 0:
                reach = max(reach, x - far)
    return reach


def _turn(point: tuple[float, float], degrees: float) -> tuple[float, float]:
    c, s = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    return point[0] * c - point[1] * s, point[0] * s + point[1] * c


@pytest.mark.parametrize(("width", "thick"), [(762, 44), (610, 35), (926, 54)])
def test_a_square_edge_needs_what_turning_the_leaf_shows(width: int, thick: int) -> None:
    made = run("leading_edge", {**EDGE, "leaf_width": f"{width} mm", "leaf_thickness": f"{thick} mm"})
    assert made.gap_needed.number == pytest.approx(widest_reach(width, thick, 1.25, 6), abs=0.01)  # type: ignore[union-attr]


@pytest.mark.parametrize(("width", "thick"), [(762, 44), (610, 35)])
def test_a_bevelled_edge_swings_no_wider_than_its_near_arris(width: int, thick: int) -> None:
    made = run("leading_edge", {**EDGE, "leaf_width": f"{width} mm", "leaf_thickness": f"{thick} mm"})
    near = math.hypot(width + 1.25, 6) - (width + 1.25)
    bevel = made.bevel.number  # type: ignore[union-attr]
    assert widest_reach(width, thick, 1.25, 6, bevel) == pytest.approx(near, abs=0.01)
    assert widest_reach(width, thick, 1.25, 6, bevel - 0.3) > near + 0.2


@settings(max_examples=40)
@forall(st.integers(500, 1100), st.integers(30, 60), st.integers(0, 15))
def test_a_thicker_or_narrower_leaf_never_needs_less(width: int, thick: int, out: int) -> None:
    def needs(w: int, t: int, p: int) -> float:
        inputs = {"leaf_width": f"{w} mm", "leaf_thickness": f"{t} mm", "pin_projection": f"{p} mm"}
        return run("leading_edge", {**EDGE, **inputs}).gap_needed.number  # type: ignore[union-attr, no-any-return]

    here = needs(width, thick, out)
    assert needs(width, thick + 1, out) > here
    assert needs(width, thick, out + 1) > here
    assert needs(width + 10, thick, out) < here


def test_an_edge_that_binds_says_so() -> None:
    made = run("leading_edge", {**EDGE, "latch_gap": "1 mm"})
    assert [finding_words(each, space=" ") for each in made.notes] == [  # type: ignore[union-attr]
        "a square leading edge needs 1.6 mm and the gap is 1 mm: bevel it"
    ]


@settings(max_examples=40)
@forall(st.integers(1800, 2400), st.integers(2, 5), st.integers(60, 120))
def test_hinges_are_even_and_keep_both_ends(height: int, count: int, hinge: int) -> None:
    made = run(
        "hinge_set_out",
        {**HINGES, "leaf_height": f"{height} mm", "hinges": str(count), "hinge_height": f"{hinge} mm"},
    )
    at = [each.number for each in made.centres]  # type: ignore[union-attr]
    assert len(at) == count
    assert at[0] - hinge / 2 == pytest.approx(150)
    assert height - at[-1] - hinge / 2 == pytest.approx(225)
    bays = [b - a for a, b in itertools.pairwise(at)]
    assert max(bays) - min(bays) < 1e-6
    assert [each.number - 3 for each in made.on_frame] == pytest.approx(at)  # type: ignore[union-attr]


def test_hinge_places_of_the_worked_leaf() -> None:
    made = run("hinge_set_out", HINGES)
    places = [each.number for each in made.centres], [each.number for each in made.on_frame]  # type: ignore[union-attr]
    assert places == ([200, 952, 1704], [203, 955, 1707])


def test_hinges_that_run_into_one_another_are_refused() -> None:
    inputs = {**HINGES, "leaf_height": "600 mm", "hinges": "4"}
    assert refusals("hinge_set_out", inputs) == [
        "the hinges would stand 41.7 mm apart and each is 100 mm high"
    ]


@pytest.mark.parametrize("count", ["1", "2.5", "7"])
def test_a_count_that_is_no_number_of_hinges_is_refused(count: str) -> None:
    with pytest.raises(InputRefused, match="hinge-count"):
        run("hinge_set_out", {**HINGES, "hinges": count})


def test_a_latch_above_the_leaf_is_refused() -> None:
    made = {"handle_height": "2100 mm", "leaf_height": "1979 mm", "foot_gap": "8 mm", "head_gap": "3 mm"}
    assert refusals("latch_set_out", {**made, "rating": "plain"}) == [
        "the latch would stand 2092 mm from the foot of a leaf 1979 mm high"
    ]


SWEEP = {
    "opening_width": "766 mm", "leaf_width": "760.5 mm", "leaf_thickness": "44 mm", "hinge_gap": "2.5 mm",
    "pin_inset": "1.25 mm", "pin_projection": "6 mm", "stop_thickness": "12 mm", "foot_gap": "8 mm",
    "floor_rise": "3 mm", "floor_clearance": "2 mm",
}  # fmt: skip


def test_the_way_through_is_what_a_leaf_turned_square_leaves() -> None:
    leaf = swung(box(1.25, -50, 761.75, -6), 90)
    stop = 766 - (2.5 - 1.25) - 12
    assert run("leaf_sweep", SWEEP).way_through.number == pytest.approx(stop - leaf.bounds[2])  # type: ignore[union-attr]


def test_the_radius_is_the_furthest_corner() -> None:
    corners = box(1.25, -50, 761.75, -6).exterior.coords
    furthest = max(math.hypot(*corner) for corner in corners)
    assert run("leaf_sweep", SWEEP).radius.number == pytest.approx(furthest)  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("changed", "words"),
    [
        (
            {"floor_rise": "9 mm"},
            "the floor rises under the swing, so the gap at the foot must be 11 mm and is 8 mm",
        ),
        (
            {"least_way": "750 mm"},
            "the way through, leaf open square, is 702.8 mm and the least is 750 mm",
        ),
    ],
)
def test_a_swing_that_will_not_do_is_refused(changed: dict[str, str], words: str) -> None:
    assert refusals("leaf_sweep", {**SWEEP, **changed}) == [words]


def test_a_heavy_leaf_is_for_two_and_for_hinges_that_bear_it() -> None:
    sizes = {"width": "762 mm", "height": "1981 mm", "thickness": "44 mm", "density": "600 kg/m3"}
    made = run_with("leaf_mass", **sizes, one_person="25 kg", hinges_carry="30 kg")
    assert printed(made, "mass") == "39.9 kg"
    assert [finding_words(each, space=" ") for each in (*made.notes, *made.refused)] == [
        "the leaf weighs 39.9 kg, more than the 25 kg one person lifts: two people",
        "the leaf weighs 39.9 kg and its hinges are rated for 30 kg",
    ]


PAIR = {
    "opening_width": "1524 mm", "hinge_gap": "3 mm", "meeting_gap": "3 mm", "rebate": "12 mm",
    "rating": "plain", "opening_height": "1990 mm", "head_gap": "3 mm", "foot_gap": "8 mm",
}  # fmt: skip


def test_a_pair_of_leaves_with_its_gaps_and_its_lap_fills_the_opening() -> None:
    for rebate in (0, 12, 18):
        made = run("pair_of_leaves", {**PAIR, "rebate": f"{rebate} mm"})
        assert 2 * made.each.number - rebate + 3 + 2 * 3 == 1524  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("changed", "code"),
    [
        ({"leaf_width": "763 mm"}, "leaf-too-narrow"),
        ({"leaf_width": "768 mm", "most_edge_trim": "3 mm"}, "edge-trim-over"),
        ({"leaf_height": "1978 mm"}, "leaf-too-short"),
        ({"leaf_height": "1995 mm", "most_end_trim": "10 mm"}, "end-trim-over"),
        ({"leaf_width": "765 mm", "leaf_height": "1981 mm"}, None),
    ],
)
def test_leaves_of_a_pair_that_cannot_be_brought_to_size_are_refused(
    changed: dict[str, str], code: str | None
) -> None:
    refused = run("pair_of_leaves", {**PAIR, **changed}).refused  # type: ignore[union-attr]
    assert [each.code for each in refused] == ([code] if code else [])
