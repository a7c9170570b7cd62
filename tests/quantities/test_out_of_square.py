"""Openings out of square against corners laid out by coordinates and lines drawn parallel to their sides."""

from __future__ import annotations

import math

import pytest
from hypothesis import given as forall
from hypothesis import settings
from hypothesis import strategies as st
from shapely import affinity
from shapely.geometry import LineString, Polygon

from generator.quantities.results import InputRefused, finding_words
from tests.quantities.examples import run_with

NAMES = (
    "width_top", "width_floor", "height_left", "height_right", "diagonal_left_foot", "diagonal_right_foot",
)  # fmt: skip


def sizes(corners: tuple[tuple[float, float], ...]) -> dict[str, float]:
    """The six measurements of left foot, right foot, right top and left top."""
    lf, rf, rt, lt = corners
    pairs = ((lt, rt), (lf, rf), (lf, lt), (rf, rt), (lf, rt), (rf, lt))
    return {name: math.dist(*pair) for name, pair in zip(NAMES, pairs, strict=True)}


def shape(read: dict[str, float], **more: str):  # type: ignore[no-untyped-def]
    texts = {name: f"{size:.6f} mm" for name, size in read.items()}
    return run_with("opening_shape", **{"read_to": "1 mm", **texts, **more})


def mitred(read: dict[str, float], quirk: float, head: float, leg: float | None = None, **more: str):  # type: ignore[no-untyped-def]
    wide = {} if leg is None else {"leg_width": f"{leg} mm"}
    return run_with(
        "mitred_set", shape=shape(read), quirk=f"{quirk} mm", head_width=f"{head} mm", **wide, **more
    )


PLACES = st.integers(-150, 150).map(lambda tenths: tenths / 10)
OPENINGS = st.tuples(
    st.integers(600, 1800), st.integers(1800, 2400), PLACES, PLACES, PLACES, PLACES, PLACES
).map(lambda v: ((0.0, 0.0), (v[0], v[2]), (v[0] + v[3], v[1] + v[4]), (v[5], v[1] + v[6])))
EXAMPLE = ((0.0, 0.0), (840.0, 0.0), (846.0, 2010.0), (-9.0, 2003.0))


def turn(at: tuple[float, float], one: tuple[float, float], two: tuple[float, float]) -> float:
    first, second = (math.atan2(p[1] - at[1], p[0] - at[0]) for p in (one, two))
    return abs((math.degrees(first - second) + 180) % 360 - 180)


@settings(max_examples=60, deadline=None)
@forall(OPENINGS)
def test_the_angles_are_those_of_the_corners_laid_out(corners: tuple[tuple[float, float], ...]) -> None:
    lf, rf, rt, lt = corners
    made = shape(sizes(corners))
    assert made.left_top.number == pytest.approx(turn(lt, lf, rt), abs=1e-5)
    assert made.right_top.number == pytest.approx(turn(rt, rf, lt), abs=1e-5)
    assert made.left_foot.number == pytest.approx(turn(lf, lt, rf), abs=1e-5)
    assert made.right_foot.number == pytest.approx(turn(rf, rt, lf), abs=1e-5)
    assert made.parted.number == pytest.approx(0, abs=1e-4)
    assert made.refused == ()


def moved(start: tuple[float, float], end: tuple[float, float], by: float) -> LineString:
    """A side of the opening moved outwards and run on far past both ends."""
    side = LineString([start, end])
    return affinity.scale(side.parallel_offset(by, "left"), 5, 5)


def points_of_ring(
    corners: tuple[tuple[float, float], ...], quirk: float, head: float, leg: float
) -> dict[str, float]:
    """Short and long points by drawing both edges of every piece and the floor, and meeting them."""
    lf, rf, rt, lt = corners
    floor = affinity.scale(LineString([lf, rf]), 9, 9)
    found = {}
    for word, over_head, over_leg in (("short", quirk, quirk), ("long", quirk + head, quirk + leg)):
        up, top, down = moved(lf, lt, over_leg), moved(lt, rt, over_head), moved(rt, rf, over_leg)
        left, right = up.intersection(top), top.intersection(down)
        found[f"head_{word}_point"] = left.distance(right)
        found[f"left_leg_{word}_point"] = left.distance(up.intersection(floor))
        found[f"right_leg_{word}_point"] = right.distance(down.intersection(floor))
    return found


@settings(max_examples=60, deadline=None)
@forall(OPENINGS, st.integers(0, 12), st.integers(30, 150), st.integers(30, 150))
def test_short_and_long_points_are_where_parallel_lines_meet(
    corners: tuple[tuple[float, float], ...], quirk: int, head: int, leg: int
) -> None:
    made = mitred(sizes(corners), quirk, head, leg)
    for name, length in points_of_ring(corners, quirk, head, leg).items():
        assert getattr(made, name).number == pytest.approx(length, abs=1e-3), name


@settings(max_examples=60, deadline=None)
@forall(OPENINGS, st.integers(30, 150), st.integers(30, 150))
def test_the_two_saw_angles_share_the_corner(
    corners: tuple[tuple[float, float], ...], head: int, leg: int
) -> None:
    made = mitred(sizes(corners), 6, head, leg)
    for mitre in (made.left, made.right):
        assert mitre.head_saw.number + mitre.leg_saw.number == pytest.approx(180 - mitre.angle.number)
        on_head, on_leg = (
            wide / math.cos(math.radians(saw.number))
            for wide, saw in ((head, mitre.head_saw), (leg, mitre.leg_saw))
        )
        assert on_head == pytest.approx(on_leg), "both cut faces must be of one length"


def wedge(corner: float, head: float, leg: float) -> float:
    """How far two square-corner mitres stand apart at their open end, the pieces as polygons."""
    plain_head = Polygon([(0, 0), (400, 0), (400, -head), (-leg, -head)])
    upright = Polygon([(0, 0), (0, 400), (-leg, 400), (-leg, -head)])
    hinge = (0, 0) if corner < 90 else (-leg, -head)
    far = (-leg, -head) if corner < 90 else (0, 0)
    turned = affinity.rotate(upright, corner - 90, origin=hinge)
    assert plain_head.intersection(turned).area == pytest.approx(0, abs=1e-6)
    return math.dist(far, min(turned.exterior.coords, key=lambda p: math.dist(p, far)))


@pytest.mark.parametrize("corner", [84.0, 88.5, 89.36, 90.0, 90.212, 92.5, 96.0])
@pytest.mark.parametrize(("head", "leg"), [(68.0, 68.0), (90.0, 68.0), (145.0, 145.0)])
def test_what_plain_cuts_leave_open_is_measured_between_the_pieces(
    corner: float, head: float, leg: float
) -> None:
    from generator.quantities.families.out_of_square import _mitre
    from tests.quantities.examples import size

    made = _mitre("left", size(f"{corner} deg"), size(f"{head} mm"), size(f"{leg} mm"))
    assert made.plain_gap.number == pytest.approx(wedge(corner, head, leg), abs=1e-6)
    assert made.opens_at == ("toe" if corner < 90 else "heel" if corner > 90 else "")


def test_a_square_opening_gives_what_the_plain_set_gives() -> None:
    read = sizes(((0, 0), (775, 0), (775, 1994), (0, 1994)))
    made = mitred(read, 6, 68, floor_gap="3 mm")
    plain = run_with(
        "architrave_set", opening_width="775 mm", opening_height="1994 mm", quirk="6 mm", head_width="68 mm",
        floor_gap="3 mm",
    )  # fmt: skip
    assert made.head_long_point.number == pytest.approx(plain.head_long_point.number)
    assert made.left_leg_short_point.number == pytest.approx(plain.leg_short_point.number)
    assert made.right_leg_long_point.number == pytest.approx(plain.leg_long_point.number)
    assert made.widest_plain_gap.number == pytest.approx(0, abs=1e-5)


@settings(max_examples=30, deadline=None)
@forall(OPENINGS)
def test_a_mirrored_opening_has_its_pieces_mirrored(corners: tuple[tuple[float, float], ...]) -> None:
    mirror = tuple((-x, y) for x, y in corners)
    other = (mirror[1], mirror[0], mirror[3], mirror[2])
    one, two = mitred(sizes(corners), 5, 69), mitred(sizes(other), 5, 69)
    assert one.left_leg_long_point.number == pytest.approx(two.right_leg_long_point.number)
    assert one.head_short_point.number == pytest.approx(two.head_short_point.number)
    assert one.left.head_saw.number == pytest.approx(two.right.head_saw.number)
    ends = [(piece.left_end.number, piece.right_end.number) for piece in one.pieces]
    back = [(piece.right_end.number, piece.left_end.number) for piece in reversed(two.pieces)]
    assert ends == [pytest.approx(pair) for pair in back]


def test_metres_and_millimetres_are_the_same() -> None:
    read = sizes(EXAMPLE)
    metres = {name: f"{size / 1000:.6f} m" for name, size in read.items()}
    in_m = run_with("opening_shape", read_to="0.001 m", **metres)
    assert in_m.left_top.number == pytest.approx(shape(read).left_top.number, abs=1e-4)


@settings(max_examples=80, deadline=None)
@forall(OPENINGS)
def test_reading_to_whole_millimetres_is_never_refused(corners: tuple[tuple[float, float], ...]) -> None:
    rounded = {name: float(round(size)) for name, size in sizes(corners).items()}
    made = shape(rounded)
    assert made.refused == ()
    assert abs(made.parted.number) <= made.parted_by_rounding.number + 1e-6


SQUARE_ISH = ((0.0, 0.0), (840.0, 1.0), (842.0, 2006.0), (-3.0, 2003.0))


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("slip", [-100.0, -50.0, 50.0, 100.0])
def test_one_wrong_measurement_is_named_with_what_it_should_read(name: str, slip: float) -> None:
    read = sizes(SQUARE_ISH)
    made = shape({**read, name: read[name] + slip})
    assert made.measured[0].name == name
    assert made.measured[0].called_for.number == pytest.approx(read[name], abs=1e-3)
    assert made.measured[0].difference.number == pytest.approx(slip, abs=1e-3)
    assert [finding.code for finding in made.refused] == ["six-disagree", "measure-again", "measure-again"]


def test_a_set_that_does_not_meet_is_refused_in_words() -> None:
    read = {name: round(size) for name, size in sizes(EXAMPLE).items()}
    made = shape({**read, "diagonal_left_foot": 2231})
    assert [finding_words(each, space=" ") for each in made.refused] == [
        "the six measurements do not meet: 133.2 mm is left over at the top, and reading them to the step "
        "given explains 6 mm",
        "take the diagonal from the left foot again: it reads 2231 mm and the other five call for 2180.2 mm",
        "take the width at the floor again: it reads 840 mm and the other five call for 971 mm",
    ]


@pytest.mark.parametrize(
    ("name", "wrong"), [("diagonal_left_foot", 3500.0), ("height_left", 203.0), ("width_floor", 8400.0)]
)
def test_a_triangle_that_cannot_close_names_the_measurement(name: str, wrong: float) -> None:
    read = sizes(EXAMPLE)
    with pytest.raises(InputRefused) as caught:
        shape({**read, name: wrong})
    assert (caught.value.code, caught.value.argument) == ("measurement-disagrees", name)
    assert float(caught.value.values["called"].split()[0]) == pytest.approx(read[name], abs=0.06)


def test_six_sizes_of_no_opening_at_all_are_refused() -> None:
    with pytest.raises(InputRefused) as caught:
        shape({**dict.fromkeys(NAMES, 100.0), "diagonal_left_foot": 900.0, "diagonal_right_foot": 900.0})
    assert caught.value.code == "opening-cannot-close"


def test_a_corner_no_doorway_has_is_refused() -> None:
    made = shape(sizes(((0, 0), (800, 0), (2200, 2000), (1400, 2000))))
    assert "the corner at the left top comes to 125°" in finding_words(made.refused[0], space=" ")


def test_square_enough_is_said_with_the_widest_corner() -> None:
    made = shape(sizes(((0, 0), (800, 0), (802, 2000), (0, 2000))), square_within="0.25 deg")
    assert [finding_words(each, space=" ") for each in made.notes] == [
        "no corner is more than 0.1° off square, within the 0.25° allowed: plain cuts will do"
    ]


@pytest.mark.parametrize("gap", [0.0, 3.0, -5.0])
def test_a_gap_is_taken_square_off_the_floor(gap: float) -> None:
    with_gap, without = mitred(sizes(EXAMPLE), 6, 68, floor_gap=f"{gap} mm"), mitred(sizes(EXAMPLE), 6, 68)
    lean = math.radians(shape(sizes(EXAMPLE)).left_foot.number)
    off = without.left_leg_long_point.number - with_gap.left_leg_long_point.number
    assert off == pytest.approx(gap / math.sin(lean), abs=1e-6)
