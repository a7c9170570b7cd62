"""Sealant, glue and screws: sections against drawn shapes, places against the piece, and what is refused."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import given as forall
from hypothesis import strategies as st
from shapely.geometry import LineString, Point, box

from generator.quantities.results import InputRefused, finding_words
from tests.quantities.examples import printed, run_with, size


def words(result) -> list[str]:
    return [finding_words(each, space=" ") for each in result.refused]


@pytest.mark.parametrize("radius", [3, 8, 12.5])
def test_a_tooled_bead_is_what_a_round_tool_leaves_in_the_corner(radius: float) -> None:
    left = box(0, 0, radius, radius).difference(Point(radius, radius).buffer(radius, quad_segs=4000))
    made = run_with("tooled_bead", length="1 m", radius=f"{radius} mm")
    assert made.section.number == pytest.approx(left.area, rel=1e-6)


@forall(st.integers(1, 40), st.integers(2, 120), st.integers(10, 300))
def test_a_wavy_bead_is_as_long_as_the_line_that_is_laid(strokes: int, swing: int, period: int) -> None:
    line = LineString([(n * period / 2, swing if n % 2 else 0) for n in range(2 * strokes + 1)])
    made = run_with(
        "wavy_bead", length=f"{strokes * period} mm", swing=f"{swing} mm", period=f"{period} mm",
        diameter="6 mm",
    )  # fmt: skip
    assert made.length.number == pytest.approx(line.length)


@forall(st.integers(1, 60), st.integers(1, 60), st.integers(1, 30))
def test_a_cartridge_reaches_as_far_as_its_bead_takes_of_it(wide: int, deep: int, metres: int) -> None:
    bead = run_with("joint_bead", length=f"{metres} m", width=f"{wide} mm", depth=f"{deep} mm")
    assert run_with("bead_reach", pack=bead.volume, section=bead.section).number == pytest.approx(
        metres * 1000
    )


def test_a_joint_bead_is_twice_the_three_cornered_one() -> None:
    square = run_with("joint_bead", length="3 m", width="6 mm", depth="8 mm", waste="10 %")
    corner = run_with("fillet_bead", length="3 m", width="6 mm", depth="8 mm", waste="10 %")
    assert square.volume.number == pytest.approx(2 * corner.volume.number)


def test_a_joint_wider_than_its_sealant_allows_is_refused() -> None:
    made = run_with("joint_bead", length="3 m", width="12 mm", depth="8 mm", widest="10 mm")
    assert words(made) == ["the joint is 12 mm wide and the sealant's maker allows 10 mm"]


def test_a_spread_is_an_area_times_its_film_however_it_is_written() -> None:
    made = {
        run_with("spread", area=area, film="0.2 mm", waste="10 %").value
        for area in ("2.4 m2", "2400000 mm2")
    }  # fmt: skip
    assert {f"{value.magnitude / 1000:.0f} ml" for value in made} == {"528 ml"}


def test_no_part_of_a_pack_used_is_refused() -> None:
    with pytest.raises(InputRefused, match="nothing-used-of-pack"):
        run_with("bead_reach", pack="310 ml", section="36 mm2", used="0 %")


@forall(
    st.integers(20, 3000), st.integers(20, 1300), st.integers(50, 600), st.integers(50, 600),
    st.integers(0, 80), st.integers(0, 80),
)  # fmt: skip
def test_screws_stand_evenly_inside_the_piece_and_no_further_apart_than_asked(
    length: int, width: int, spacing: int, rows: int, end: int, edge: int
) -> None:
    made = run_with(
        "screw_rows", length=f"{length} mm", width=f"{width} mm", spacing=f"{spacing} mm",
        row_spacing=f"{rows} mm", end=f"{end} mm", edge=f"{edge} mm",
    )  # fmt: skip
    assert made.count.number == len(made.along) * len(made.across)
    for places, whole, most, margin in (
        (made.along, length, spacing, end), (made.across, width, rows, edge),
    ):  # fmt: skip
        at = [place.number for place in places]
        assert at == pytest.approx([whole - place for place in reversed(at)])
        assert all(second - first <= most + 1e-6 for first, second in pairwise(at))
        assert len(at) == 1 or at[0] == margin
        fewer = (whole - 2 * margin) / (len(at) - 2) if len(at) > 2 else math.inf
        assert fewer > most or whole <= 2 * margin


def test_screws_too_near_an_end_or_an_edge_are_refused() -> None:
    made = run_with(
        "screw_rows", length="2400 mm", width="200 mm", spacing="400 mm", row_spacing="150 mm", end="30 mm",
        edge="15 mm", diameter="5 mm", end_times="7", edge_times="4",
    )  # fmt: skip
    assert words(made) == [
        "screws would stand 30 mm from the end and need 35 mm",
        "screws would stand 15 mm from the edge and need 20 mm",
    ]


def test_screws_without_end_are_refused() -> None:
    with pytest.raises(InputRefused, match="too-many-marks"):
        run_with(
            "screw_rows", length="100 m", width="60 mm", spacing="1 mm", row_spacing="50 mm", end="10 mm",
            edge="10 mm",
        )  # fmt: skip


STOCK = tuple(f"{length} mm" for length in (30, 40, 50, 60, 70, 80))


@forall(st.integers(6, 30), st.integers(10, 40), st.integers(20, 60), st.integers(0, 10))
def test_a_screw_bites_stays_hidden_and_is_the_shortest_that_does(
    held: int, hold: int, ground: int, cover: int
) -> None:
    made = run_with(
        "screw_length", stock=tuple(size(text) for text in STOCK), held=f"{held} mm", hold=f"{hold} mm",
        ground=f"{ground} mm", cover=f"{cover} mm",
    )  # fmt: skip
    serving = [
        length for length in range(30, 90, 10) if held + hold <= length <= held + ground - cover
    ]  # fmt: skip
    assert (made.length.number if made.length else None) == min(serving, default=None)
    assert bool(made.refused) is not bool(serving)


def test_no_screw_that_serves_is_told() -> None:
    made = run_with(
        "screw_length", stock=(size("70 mm"),), held="18 mm", hold="30 mm", ground="47 mm", cover="5 mm"
    )
    assert words(made) == [
        "no stock screw is at least 48 mm long, to bite, and at most 60 mm, not to come through"
    ]
    assert printed(made, "least") == "48 mm"
