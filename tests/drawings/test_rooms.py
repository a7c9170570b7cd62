"""Rooms, floors, partitions, windows and stairs: no collision over sweeps, drawn to size, said in words."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import unary_union
from shapely.affinity import translate
from shapely.geometry import Polygon

from generator.drawings import Size, draw
from generator.drawings.registry import lay
from generator.drawings.sheet import Sheet, collisions
from tests.drawings.room_samples import (
    USUAL,
    floor,
    partition,
    rake,
    skirting,
    sprung,
    sprung_saw,
    stair,
)
from tests.drawings.samples import PAPER, THUMBNAIL, WIDTHS
from tests.quantities.square_rooms import ROOMS, surveyed

ANY_WIDTH = st.sampled_from((*WIDTHS, THUMBNAIL))


def part(sheet: Sheet, name: str) -> Polygon:
    return Polygon(sheet.outlines[name].real)


@pytest.mark.parametrize("width", WIDTHS)
def test_skirting_round_corners_of_many_angles(width: float) -> None:
    walls = ("2400 mm", "1131.4 mm", "1600 mm", "3200 mm", "2400 mm")
    corners = ("135 deg", "135 deg", "90 deg", "90 deg", "90 deg")
    values = skirting(walls, corners, doors=(("4", "200 mm", "900 mm"),), radiators=(), mitre_from="120 deg")
    assert collisions(lay("skirting_plan", values, width).sheet) == ()


@settings(max_examples=25, deadline=None)
@given(st.integers(25, 65), st.integers(70, 180))
def test_a_sprung_moulding_bears_on_wall_and_ceiling_and_clears_its_ground(spring: int, wide: int) -> None:
    sheet = lay("sprung_section", sprung(spring, wide), PAPER).sheet
    moulding, ground = part(sheet, "moulding"), part(sheet, "ground")
    turn = math.radians(spring)
    assert moulding.bounds == pytest.approx((0, 0, wide * math.sin(turn), wide * math.cos(turn)), abs=1e-6)
    assert moulding.distance(ground) == pytest.approx(2.0, abs=1e-6)
    assert moulding.is_valid
    (x1, y1), (x2, y2) = sheet.outlines["pin"].real[:2]
    assert math.degrees(math.atan2(y1 + y2, x1 + x2)) == pytest.approx(spring, abs=1e-6)


def test_a_cut_on_the_saw_lies_at_its_angle() -> None:
    sheet = lay("sprung_cuts", sprung_saw(38, 90), PAPER).sheet
    for name in ("left internal", "right internal", "left external", "right external"):
        (x1, y1), (x2, y2) = sheet.outlines[f"cut, {name}"].paper
        assert math.degrees(math.atan(abs(x2 - x1) / (y2 - y1))) == pytest.approx(31.62, abs=0.02)
    (x1, y1), (x2, y2) = sheet.outlines["blade"].paper
    assert math.degrees(math.atan((x1 - x2) / (y1 - y2))) == pytest.approx(33.86, abs=0.05)


def test_skirting_pieces_lie_on_their_walls_and_never_on_one_another() -> None:
    sheet = lay("skirting_plan", skirting(), PAPER).sheet
    pieces = [Polygon(outline.real) for name, outline in sheet.outlines.items() if name.startswith("piece")]
    assert len(pieces) == 8
    for at, one in enumerate(pieces):
        assert one.is_valid
        for other in pieces[at + 1 :]:
            assert one.intersection(other).area < 1e-6


@pytest.mark.parametrize("name", ROOMS)
def test_floor_boards_fill_the_room_less_its_gap_without_a_hole_or_an_overlap(name: str) -> None:
    ring = ROOMS[name]
    sheet = lay("floor_plan", floor(room=surveyed(ring), pipes=0), PAPER).sheet
    boards = [Polygon(outline.real) for part, outline in sheet.outlines.items() if part.startswith("row")]
    inner = Polygon(ring).buffer(-10, join_style="mitre")
    inner = translate(inner, -inner.bounds[0], -inner.bounds[1])
    assert sum(board.area for board in boards) == pytest.approx(inner.area)
    assert unary_union(boards).symmetric_difference(inner).area < 1e-3


@pytest.mark.parametrize("name", ROOMS)
def test_walls_stand_round_the_room_and_nowhere_in_it(name: str) -> None:
    ring, doors = ROOMS[name], (("1", "20 mm", "800 mm"),)
    sheet = lay("floor_plan", floor(room=surveyed(ring), pipes=0, doors=doors), PAPER).sheet
    walls = [Polygon(outline.real) for part, outline in sheet.outlines.items() if part.startswith("wall")]
    edge = min(x for x, _ in ring) + 10, min(y for _, y in ring) + 10
    room = translate(Polygon(ring), -edge[0], -edge[1])
    assert unary_union(walls).intersection(room).area < 1e-3
    assert sum(wall.area for wall in walls) == pytest.approx(unary_union(walls).area)
    assert unary_union(walls).intersection(room.exterior).length == pytest.approx(room.length - 800)
    strip = Polygon(sheet.outlines["threshold 1"].real)
    assert max(strip.bounds[2] - strip.bounds[0], strip.bounds[3] - strip.bounds[1]) == pytest.approx(800)


def test_frame_members_never_stand_in_one_another() -> None:
    sheet = lay("partition_elevation", partition(longest="4.2 m"), PAPER).sheet
    members = [Polygon(outline.real) for outline in sheet.outlines.values()]
    for at, one in enumerate(members):
        for other in members[at + 1 :]:
            assert one.intersection(other).area < 1e-6


def test_balusters_stand_upright_at_equal_gaps_up_the_rake() -> None:
    sheet = lay("baluster_rake", rake(), PAPER).sheet
    boxes = [part(sheet, f"baluster {at}").bounds for at in range(1, 18)]
    gaps = [right[0] - left[2] for left, right in pairwise(boxes)]
    assert gaps == pytest.approx([gaps[0]] * len(gaps))
    assert gaps[0] < 99
    rail = sheet.outlines["handrail"].real
    turn = math.degrees(math.atan2(rail[0][1] - rail[1][1], rail[1][0] - rail[0][0]))
    assert turn == pytest.approx(41.6)


def test_a_baluster_fills_the_space_between_rails_drawn_to_size() -> None:
    """Cut 8 mm into either groove: 16 mm longer than the space seen, and its foot sits on the base rail."""
    values = rake(1762, 32.9, 32, whole=True)
    sheet = lay("baluster_rake", values, PAPER).sheet
    baluster, cut = sheet.outlines["baluster 1"].real, values["length"]
    assert isinstance(cut, Size)
    assert cut.mm - (baluster[3][1] - baluster[0][1]) == pytest.approx(16 / math.cos(math.radians(32.9)))
    for rail in ("base rail", "handrail"):
        assert part(sheet, rail).distance(part(sheet, "baluster 1")) == pytest.approx(0, abs=1e-9)
        assert part(sheet, rail).intersection(part(sheet, "baluster 1")).area == pytest.approx(0, abs=1e-6)
    assert part(sheet, "string").distance(part(sheet, "base rail")) == pytest.approx(0, abs=1e-9)


def test_every_outline_is_drawn_to_its_scale() -> None:
    for name, values in USUAL.items():
        for outline in lay(name, values, PAPER).sheet.outlines.values():
            xs, px = [x for x, _ in outline.real], [x for x, _ in outline.paper]
            assert max(px) - min(px) == pytest.approx((max(xs) - min(xs)) * outline.scale, abs=1e-6)


@pytest.mark.parametrize("width", WIDTHS)
def test_every_letter_of_the_usual_drawings_finds_its_place(width: float) -> None:
    for name, values in USUAL.items():
        assert lay(name, values, width).sheet.unplaced == [], name


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("skirting_plan", "A: 2297, wall 5: door left, square right"),
        ("floor_plan", "Row 1 is 190 mm wide and the last 130 mm."),
        ("partition_elevation", "826 wide, 2060 high"),
        ("window_board_section", "Notches 146 mm deep on the left, 150 mm on the right."),
        ("baluster_rake", "17 balusters 41 mm wide in 2400 mm between newels"),
        ("cornice_plan", "A: 1357.9, wall 3: wall edge 1300, ceiling edge 1300"),
        ("sprung_section", "drops 74.1 mm down the wall and stands 57.9 mm out along the ceiling"),
        ("sprung_cuts", "Right end at an inside corner: ceiling edge to the fence, saw turned to the right"),
        ("stair_section", "13 risers of 200 mm make 2600 mm"),
    ],
)
def test_the_alt_text_tells_the_sizes(name: str, said: str) -> None:
    assert said in draw(name, USUAL[name], PAPER).alt


def test_a_floor_without_rows_and_a_stair_without_treads_are_refused() -> None:
    with pytest.raises(ValueError, match="a floor without a row cannot be drawn"):
        draw("floor_plan", {**floor(), "rows": ()}, PAPER)
    with pytest.raises(ValueError, match="a flight of 0 treads cannot be drawn"):
        draw("stair_section", {**stair(), "risers": Size(mm=1.0, text="1")}, PAPER)
