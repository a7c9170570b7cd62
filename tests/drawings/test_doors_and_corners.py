"""Corners, leaves and mouldings: no collision over sweeps, drawn to size, and said in words."""

from __future__ import annotations

import itertools
import math

import pytest
from shapely.geometry import LineString, Polygon

from generator.drawings import draw
from generator.drawings.registry import lay
from generator.drawings.sheet import Sheet, collisions
from tests.drawings.door_samples import MEASURES, USUAL, edge, hinges, mitre, moulding, pair, size, swing
from tests.drawings.samples import PAPER, PHONE, THUMBNAIL, WIDTHS

SIDES = ("left", "right")


def part(sheet: Sheet, name: str) -> Polygon:
    return Polygon(sheet.outlines[name].real)


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("corner", [80.0, 87.0, 89.3, 89.9, 90.0, 90.2, 91.5, 97.0])
def test_corners_over_the_grid(corner: float, width: float) -> None:
    for head, leg, quirk, side in itertools.product((44, 69, 119, 145), (None, 69), (0, 5, 12), SIDES):
        values = mitre(corner=corner, head=head, leg=leg, quirk=quirk, side=side)
        assert collisions(lay("mitre_detail", values, width).sheet) == (), (head, leg, quirk, side)


@pytest.mark.parametrize("first", SIDES)
@pytest.mark.parametrize("rebate", [0.0, 12.0, 25.0])
def test_a_pair_fills_its_opening_and_its_stiles_keep_their_gap(first: str, rebate: float) -> None:
    sheet = lay("pair_elevation", pair(first=first, rebate=rebate), PAPER).sheet
    leading, standing = part(sheet, "leaf that opens first"), part(sheet, "leaf that stands")
    assert leading.distance(standing) == pytest.approx(3.0)
    assert {leading.bounds[0 if first == "left" else 2], standing.bounds[2 if first == "left" else 0]} == {
        3.0 if first == "left" else 1521.0, 1521.0 if first == "left" else 3.0
    }  # fmt: skip
    one, two = part(sheet, "first leaf on plan"), part(sheet, "second leaf on plan")
    assert not one.intersects(two)
    lapped = min(one.bounds[2], two.bounds[2]) - max(one.bounds[0], two.bounds[0])
    assert lapped == pytest.approx(rebate - 3.0)


@pytest.mark.parametrize("width", WIDTHS)
@pytest.mark.parametrize("shape", sorted(MEASURES))
def test_mouldings_over_the_grid(shape: str, width: float) -> None:
    for wide, thick, material in itertools.product((32, 44, 69, 145, 220), (12, 18, 25), ("mdf", "timber")):
        values = moulding(shape=shape, wide=wide, thick=thick, material=material)
        assert collisions(lay("moulding_profile", values, width).sheet) == (), (wide, thick)


@pytest.mark.parametrize("name", sorted(USUAL))
@pytest.mark.parametrize("width", [PAPER, PHONE])
def test_every_size_of_the_usual_drawings_stands_on_the_view(name: str, width: float) -> None:
    drawn = lay(name, USUAL[name], width)
    assert drawn.sheet.unplaced == []
    assert drawn.sheet.height <= 250
    assert min(text.em for text in drawn.sheet.texts) >= 3.3


@pytest.mark.parametrize("name", sorted(USUAL))
def test_a_thumbnail_has_outlines_and_no_words(name: str) -> None:
    sheet = lay(name, USUAL[name], THUMBNAIL).sheet
    assert sheet.texts == []
    assert sheet.outlines
    assert all(0 <= x <= THUMBNAIL for stroke in sheet.strokes for x, _ in stroke.points)


@pytest.mark.parametrize("corner", [84.0, 89.36, 90.0, 92.5])
@pytest.mark.parametrize(("head", "leg"), [(69.0, None), (90.0, 68.0)])
@pytest.mark.parametrize("side", SIDES)
def test_pieces_cut_to_the_corner_meet_and_leave_nothing_open(
    corner: float, head: float, leg: float | None, side: str
) -> None:
    sheet = lay("mitre_detail", mitre(corner=corner, head=head, leg=leg, side=side), PAPER).sheet
    one, two = part(sheet, "head, cut to the corner"), part(sheet, "leg, cut to the corner")
    assert one.intersection(two).area == pytest.approx(0, abs=1e-6)
    seam = one.intersection(two.buffer(1e-6)).length / 2
    wide = leg or head
    reach = math.hypot(head, (wide + head * math.cos(math.radians(corner))) / math.sin(math.radians(corner)))
    assert seam == pytest.approx(reach, abs=1e-2)


@pytest.mark.parametrize(("corner", "end"), [(86.0, "toe"), (93.0, "heel")])
def test_plain_cuts_are_drawn_open_by_what_is_printed(corner: float, end: str) -> None:
    sheet = lay("mitre_detail", mitre(corner=corner), PAPER).sheet
    one, two = part(sheet, "head, cut plain"), part(sheet, "leg, cut plain")
    gap = part(sheet, "opening left by plain cuts")
    assert one.intersection(two).area == pytest.approx(0, abs=1e-6)
    assert gap.intersection(one).area == pytest.approx(0, abs=1e-6)
    assert gap.intersection(two).area == pytest.approx(0, abs=1e-6)
    shortest = min(
        math.dist(p, q) for p, q in zip(gap.exterior.coords, list(gap.exterior.coords)[1:], strict=False)
    )
    assert shortest == pytest.approx(mitre(corner=corner)["plain_gap"].mm)  # type: ignore[attr-defined]
    assert f"at the {end}" in draw("mitre_detail", mitre(corner=corner), PAPER).alt


def test_a_usual_architrave_is_shown_at_full_size() -> None:
    assert lay("mitre_detail", mitre(), PAPER).scale == "1:1"


def test_hinges_stand_where_the_sizes_put_them() -> None:
    sheet = lay("hinge_elevation", hinges(), PAPER).sheet
    top = part(sheet, "leaf").bounds[1]
    middles = [part(sheet, f"hinge {n}").centroid.y - top for n in (1, 2, 3)]
    assert middles == pytest.approx([200.0, 952.0, 1704.0])
    assert sheet.outlines["latch"].real[0] == pytest.approx((763.0, 990.0))


def test_a_leaf_hung_on_the_right_is_the_mirror_of_one_on_the_left() -> None:
    left, right = (lay("hinge_elevation", hinges(side=side), PAPER).sheet for side in SIDES)
    for name in ("leaf", "hinge 1", "hinge 3"):
        a, _, b, _ = part(left, name).bounds
        c, _, d, _ = part(right, name).bounds
        assert (a, b) == pytest.approx((766 - d, 766 - c))


def test_the_way_of_a_square_corner_clears_the_frame_by_what_the_gap_leaves() -> None:
    sheet = lay("leading_edge_plan", edge(), PAPER).sheet
    way = LineString(sheet.outlines["way of a square corner"].real)
    frame = part(sheet, "frame")
    assert frame.distance(way) == pytest.approx(3.0 - 1.64, abs=0.03)
    leaf = part(sheet, "leaf")
    assert leaf.distance(frame) == pytest.approx(3.0)
    assert leaf.bounds[3] == pytest.approx(44.0)


def test_the_open_leaf_leaves_the_way_through() -> None:
    sheet = lay("leaf_swing_plan", swing(), PAPER).sheet
    face = LineString(sheet.outlines["leaf open"].real).bounds[2]
    assert 766.0 - 12.0 - face == pytest.approx(702.75)
    way = LineString(sheet.outlines["swing"].real)
    assert {round(math.dist(p, (1.25, -6.0)), 3) for p in way.coords} == {round(math.hypot(761.75, 50), 3)}


def test_a_moulding_is_drawn_at_full_size_as_well() -> None:
    sheet = lay("moulding_profile", moulding(shape="pencil round", wide=32, thick=12), PAPER).sheet
    paper = Polygon(sheet.outlines["moulding, full size"].paper)
    left, top, right, bottom = paper.bounds
    assert (right - left, bottom - top) == pytest.approx((32.0, 12.0), abs=0.01)
    whole = Polygon(sheet.outlines["moulding"].real)
    assert whole.area == pytest.approx(32 * 12 - (1 - math.pi / 4) * 16, abs=0.2)


@pytest.mark.parametrize(
    ("name", "values"),
    [
        ("mitre_detail", mitre(side="middle")),
        ("hinge_elevation", {**hinges(), "hinge_side": "top"}),
        ("hinge_elevation", {**hinges(), "on_frame": (size(200),)}),
        ("leaf_swing_plan", swing(side="top")),
        ("moulding_profile", {**moulding(), "shape": "lambs tongue"}),
        ("moulding_profile", {**moulding(), "material": "steel"}),
    ],
)
def test_values_of_no_drawing_are_refused(name: str, values: dict[str, object]) -> None:
    with pytest.raises(ValueError, match=r"no |hinge"):
        lay(name, values, PAPER)


def test_alt_text_of_the_mitre() -> None:
    assert draw("mitre_detail", mitre(), PAPER).alt == (
        "The left top corner of the opening at 1:1, 89.4 degrees, with architrave 69 mm wide on the head and"
        " 69 mm on the leg, 6 mm back from the lining. The head is sawn 45.3 degrees and the leg 45.3 degrees"
        " off square. Cut plain, as for a square corner, they stand open 1.1 mm at the toe, the long points."
    )


def test_alt_text_of_the_hinges() -> None:
    assert draw("hinge_elevation", hinges(), PAPER).alt == (
        "Elevation of the leaf in its lining at 1:10, seen from the side it opens towards, hinges on the"
        " left. Leaf 760 by 1979 mm in an opening 766 by 1990 mm; gaps 3 mm at the hinges, 3 at the latch,"
        " 3 at the head and 8 at the foot. 3 hinges 100 mm high: centres 200, 952, 1704 mm from the leaf's"
        " top, 203, 955, 1707 mm from the frame's head. Latch 987 mm from the leaf's top, 990 mm from the"
        " frame's head."
    )
