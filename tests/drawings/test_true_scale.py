"""Parts are drawn at the sizes given, where the sizes put them; areas and clearances by shapely."""

from __future__ import annotations

import pytest
from shapely.geometry import LineString, Polygon

from generator.drawings import Angle
from generator.drawings.registry import lay
from generator.drawings.sheet import Outline, Sheet
from tests.drawings.samples import NINE, PAPER, PHONE, doorway, jamb, marks, readings, size


def part(sheet: Sheet, name: str) -> Polygon:
    return Polygon(sheet.outlines[name].real)


def extent(outline: Outline) -> tuple[float, float]:
    """Width and height of an outline on paper, in mm."""
    left, top, right, bottom = Polygon(outline.paper).bounds
    return right - left, bottom - top


@pytest.fixture(scope="module")
def usual() -> Sheet:
    return lay("jamb_section", jamb(packer=8.5), PAPER).sheet


def test_the_usual_jamb_is_drawn_full_size_on_paper() -> None:
    drawn = lay("jamb_section", jamb(packer=8.5), PAPER)
    assert (drawn.scale, drawn.title) == ("1:1", "Jamb, plan section 1:1")


@pytest.mark.parametrize(
    ("name", "width", "height"),
    [
        ("packer", 27.0, 8.5),
        ("architrave", 69.0, 18.0),
        ("frame", 34.0, 118.0),
        ("stop", 12.0, 25.0),
        ("packing gap", 8.0, 100.0),
        ("pin", 1.4, 50.0),
        ("hinge", 10.0, 10.0),
    ],
)
def test_parts_measure_on_paper_what_they_measure_on_site(
    usual: Sheet, name: str, width: float, height: float
) -> None:
    assert extent(usual.outlines[name]) == pytest.approx((width, height), abs=0.03)


def test_plaster_stands_proud_of_the_lining_by_the_set_back(usual: Sheet) -> None:
    top = part(usual, "plaster").bounds[1]
    assert part(usual, "frame").bounds[1] - top == pytest.approx(7.5)


def test_both_quirks_are_kept(usual: Sheet) -> None:
    lining, packer, architrave = (part(usual, n).bounds[2] for n in ("frame", "packer", "architrave"))
    assert (lining - packer, packer - architrave) == pytest.approx((5.0, 4.0))


def test_filler_closes_the_gap_left_at_the_wall(usual: Sheet) -> None:
    filler = part(usual, "filler").bounds
    assert filler[3] - filler[1] == pytest.approx(1.0)
    assert filler[0] == pytest.approx(part(usual, "architrave").bounds[0])


@pytest.mark.parametrize("set_back", [0.0, 0.5, 3.0, 7.3, 19.0, 40.0])
@pytest.mark.parametrize(
    "moulding", ["torus", "ogee", "square", "ovolo", "bullnose", "chamfer", "pencil round"]
)
def test_no_two_parts_run_into_one_another(set_back: float, moulding: str) -> None:
    sheet = lay("jamb_section", jamb(set_back=set_back, architrave_profile=moulding), PAPER).sheet
    solid = ("wall", "plaster", "frame", "packer", "architrave", "filler", "skirting", "leaf", "stop")
    parts = [(name, part(sheet, name)) for name in solid if name in sheet.outlines]
    for i, (one, first) in enumerate(parts):
        for two, second in parts[i + 1 :]:
            assert first.intersection(second).area == pytest.approx(0.0, abs=1e-6), (one, two)


def test_plaster_proud_of_the_packer_is_eased_behind_the_architrave() -> None:
    sheet = lay("jamb_section", jamb(set_back=9.0, packer=8.5), PAPER).sheet
    plaster, architrave = part(sheet, "plaster"), part(sheet, "architrave")
    assert plaster.intersection(architrave).area == pytest.approx(0.0, abs=1e-9)
    assert plaster.bounds[1] == pytest.approx(-9.0)


def test_architrave_bears_on_the_packer_by_its_width_less_the_second_quirk(usual: Sheet) -> None:
    shared = part(usual, "architrave").intersection(part(usual, "packer"))
    assert shared.length == pytest.approx(27.0 - 4.0, abs=1e-6)


def test_without_a_packer_the_architrave_lies_on_the_lining() -> None:
    sheet = lay("jamb_section", jamb(set_back=0.0), PAPER).sheet
    assert "packer" not in sheet.outlines
    shared = part(sheet, "architrave").intersection(part(sheet, "frame"))
    assert shared.length == pytest.approx(34.0 - 5.0, abs=1e-6)


def test_the_pin_goes_through_architrave_and_packer_into_the_lining(usual: Sheet) -> None:
    pin = part(usual, "pin")
    top, bottom = pin.bounds[1], pin.bounds[3]
    assert bottom > 0 > -8.5 > top
    core = LineString([(pin.centroid.x, top), (pin.centroid.x, bottom)])
    held = sum(core.intersection(part(usual, n)).length for n in ("architrave", "packer", "frame"))
    assert held == pytest.approx(50.0, abs=0.01)


def test_the_leaf_swings_as_far_as_it_is_said_to() -> None:
    values = jamb(opening_angle=Angle(degrees=110.0, text="110"))
    path = lay("jamb_section", values, PAPER).sheet.outlines["swing"].real
    pin = (1.5, -6.0)
    first, last = (LineString([pin, end]) for end in (path[0], path[-1]))
    assert first.length == pytest.approx(last.length)
    assert _turned(pin, path[0], path[-1]) == pytest.approx(110.0, abs=0.01)


def _turned(pin: tuple[float, float], start: tuple[float, float], end: tuple[float, float]) -> float:
    import math

    angles = [math.degrees(math.atan2(-(y - pin[1]), x - pin[0])) for x, y in (start, end)]
    return (angles[1] - angles[0]) % 360


def test_a_leaf_open_square_keeps_its_thickness(usual: Sheet) -> None:
    left, _, right, _ = LineString(usual.outlines["leaf open"].real).bounds
    assert right - left == pytest.approx(35.0)


@pytest.mark.parametrize(("width", "architrave", "scale"), [(PAPER, 145.0, "1:2"), (PHONE, 69.0, "1:2")])
def test_a_jamb_too_wide_is_laid_at_a_smaller_scale_and_says_so(
    width: float, architrave: float, scale: str
) -> None:
    drawn = lay("jamb_section", jamb(width=architrave), width)
    assert drawn.scale == scale
    assert drawn.title.endswith(scale)
    assert extent(drawn.sheet.outlines["architrave"])[0] == pytest.approx(architrave / 2, abs=0.01)


def test_no_paper_sheet_of_usual_sizes_is_taller_than_a_page() -> None:
    assert lay("jamb_section", jamb(packer=8.5), PAPER).sheet.height <= 252
    assert lay("doorway_elevation", doorway(), PAPER).sheet.height <= 252
    assert lay("set_back_readings", readings(), PAPER).sheet.height <= 252


@pytest.mark.parametrize("architrave", [44.0, 69.0, 95.0])
@pytest.mark.parametrize(
    ("wide", "high"), [(610, 1890), (610, 2400), (726, 2040), (838, 2100), (1830, 2400), (300, 3000)]
)
def test_a_doorway_of_any_size_leaves_room_for_its_caption_on_the_page(
    wide: float, high: float, architrave: float
) -> None:
    place = "1, Landing to the long back bedroom over the coach-house arch"
    drawn = lay("doorway_elevation", doorway(wide=wide, high=high, width=architrave, place=place), PAPER)
    assert drawn.sheet.height <= 247
    assert drawn.sheet.unplaced == []


def test_the_usual_doorway_is_drawn_at_the_largest_scale() -> None:
    assert lay("doorway_elevation", doorway(), PAPER).scale == "1:10"


# The doorway: the pieces fill the ring between quirk and outer edge exactly.


def test_head_and_legs_make_the_whole_ring_and_no_more() -> None:
    sheet = lay("doorway_elevation", doorway(), PAPER).sheet
    pieces = [part(sheet, name) for name in ("head", "left leg", "right leg")]
    outer = Polygon([(-78, 0), (-78, -2068), (846, -2068), (846, 0)])
    inner = Polygon([(-9, 0), (-9, -1999), (777, -1999), (777, 0)])
    ring = outer.difference(inner)
    assert sum(piece.area for piece in pieces) == pytest.approx(ring.area)
    whole = pieces[0].union(pieces[1]).union(pieces[2])
    assert whole.symmetric_difference(ring).area == pytest.approx(0.0, abs=1e-6)


def test_the_doorway_is_drawn_to_its_scale() -> None:
    drawn = lay("doorway_elevation", doorway(), PAPER)
    assert drawn.scale == "1:10"
    assert extent(drawn.sheet.outlines["head"]) == pytest.approx((92.4, 6.9), abs=0.01)
    assert extent(drawn.sheet.outlines["left leg"]) == pytest.approx((6.9, 206.8), abs=0.01)


# Readings and marks.


def test_readings_are_plotted_in_path_order_at_one_scale_each_way() -> None:
    sheet = lay("set_back_readings", readings(), PAPER).sheet
    plotted = sheet.outlines["right readings"]
    assert plotted.real == ((100, 9.0), (995, 8.5), (1890, 8.0))
    xs, ys = zip(*plotted.paper, strict=True)
    assert xs[1] - xs[0] == pytest.approx((995 - 100) / 50)
    assert ys[1] - ys[0] == pytest.approx(0.5 * 7.0)


def test_the_order_readings_come_in_does_not_matter() -> None:
    one = lay("set_back_readings", readings(NINE), PAPER)
    two = lay("set_back_readings", readings(NINE[::-1]), PAPER)
    assert one.alt == two.alt
    assert one.sheet.texts == two.sheet.texts


def test_marks_stand_at_their_running_sizes() -> None:
    sheet = lay("quirk_marks", marks(), PAPER).sheet
    left = min(x for x, _ in sheet.outlines["leg"].paper)
    found = [
        sheet.outlines[f"leg mark {i + 1}"].paper[0][0] - left
        for i in range(len(marks()["leg_marks"]))  # type: ignore[arg-type]
    ]
    wanted = [place / 20 for place in (0, 300, 600, 900, 1200, 1500, 1800, 1990)]
    assert found == pytest.approx(wanted)


def test_the_square_is_set_to_each_quirk() -> None:
    sheet = lay("quirk_marks", marks(first=5.0, second=4.0), PAPER).sheet
    for letter, quirk in (("P", 5.0), ("Q", 4.0)):
        outline = sheet.outlines[f"setting {letter}"]
        (x1, _), (x2, _) = outline.paper
        assert (x2 - x1) / outline.scale == pytest.approx(quirk)


def test_a_leg_cut_clear_of_the_floor_is_dimensioned_from_its_own_foot() -> None:
    values = doorway(leg_long=size(2066.0), leg_short=size(1997.0))
    sheet = lay("doorway_elevation", values, PAPER).sheet
    assert part(sheet, "left leg").bounds[3] == pytest.approx(-2.0)
    assert extent(sheet.outlines["left leg"])[1] == pytest.approx(206.6, abs=0.01)
    nought = next(text for text in sheet.texts if text.text == "0")
    foot = max(y for _, y in sheet.outlines["right leg"].paper)
    assert nought.box.centre[1] == pytest.approx(foot, abs=0.1)
