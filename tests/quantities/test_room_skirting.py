"""A room walked round and its skirting: against an inset polygon, and what must hold for any room."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given as forall
from hypothesis import settings
from hypothesis import strategies as st
from shapely.geometry import Polygon

from generator.quantities.headings import Run, heading_places
from generator.quantities.results import InputRefused, finding_words
from generator.quantities.rooms import outline
from tests.quantities.examples import example_result, printed, run_with, size

SQUARE = ("90 deg",) * 4
# Corners that an L-shaped room has after four of them were pulled out of place; interior angles below.
SKEWED = ((0.0, 0.0), (5200.0, -300.0), (5150.0, 2700.0), (3800.0, 2500.0), (3900.0, 4150.0), (-60.0, 4050.0))


def several(*texts: str) -> tuple[Any, ...]:
    return tuple(size(text) for text in texts)


def room(walls: tuple[str, ...], corners: tuple[str, ...], **more: str) -> Any:
    return run_with("room", walls=several(*walls), corners=several(*corners), **more)


def surveyed(points: tuple[tuple[float, float], ...]) -> Any:
    """The room that measuring these corners, clockwise on paper, would give."""
    count = len(points)
    walls, corners = [], []
    for at in range(count):
        (x0, y0), (x1, y1) = points[at], points[(at + 1) % count]
        x2, y2 = points[(at + 2) % count]
        turn = math.atan2(y2 - y1, x2 - x1) - math.atan2(y1 - y0, x1 - x0)
        turn = (turn + math.pi) % (2 * math.pi) - math.pi
        walls.append(f"{math.dist((x0, y0), (x1, y1)):.6f} mm")
        corners.append(f"{180 - math.degrees(turn):.6f} deg")
    return room(tuple(walls), tuple(corners))


def run(of: Any, doors: tuple[tuple[str, str, str], ...] = (), **more: Any) -> Any:
    lists = {
        f"door_{name}": several(*(door[at] for door in doors))
        for at, name in enumerate(("walls", "starts", "widths"))
    }
    fixed = {"thickness": "15 mm", "longest": "20 m", "joint_clear": "300 mm", **more}
    return run_with("skirting_run", room=of, **lists, **fixed)


def test_a_measured_room_has_the_area_of_its_polygon_and_closes() -> None:
    found = surveyed(SKEWED)
    assert found.area.number == pytest.approx(Polygon(SKEWED).area, rel=1e-6)
    assert found.apart.number < 0.01
    assert found.angles_over.number == pytest.approx(0, abs=1e-4)


def test_faces_of_the_skirting_add_up_to_the_inset_polygon() -> None:
    """Without doors the faces run round the polygon moved in by the thickness."""
    found = surveyed(SKEWED)
    inset = Polygon(SKEWED).buffer(-15, join_style="mitre", mitre_limit=50)
    pieces = run(found).pieces
    faces = 0.0
    for piece in pieces:
        length = piece.end.number - piece.start.number
        wall = found.walls[int(piece.wall.number) - 1]
        for corner in (wall.left_corner.number, wall.right_corner.number):
            length -= 15 / math.tan(math.radians(corner / 2))
        faces += length
    assert faces == pytest.approx(inset.exterior.length, abs=1e-3)


def test_an_outside_corner_adds_the_thickness_by_the_tangent() -> None:
    found = surveyed(SKEWED)
    (corner,) = [each.number for each in found.corners if each.number > 180]
    extra = 15 * math.tan(math.radians((corner - 180) / 2))
    mitred = [piece for piece in run(found).pieces if "mitre" in (piece.left_joint, piece.right_joint)]
    assert len(mitred) == 2
    for piece in mitred:
        over = piece.length_to_cut.number - (piece.end.number - piece.start.number)
        assert over == pytest.approx(extra)


def test_each_inside_corner_has_one_square_end_and_one_scribe() -> None:
    found = example_result("skirting_run")
    ends = [joint for piece in found.pieces for joint in (piece.left_joint, piece.right_joint)]
    assert ends.count("scribe") == ends.count("square") == 5
    assert (ends.count("mitre"), ends.count("door")) == (2, 4)


def test_the_first_piece_faces_the_first_door_with_square_ends() -> None:
    found = run(room(("4 m", "3 m", "4 m", "3 m"), SQUARE), (("2", "1 m", "900 mm"),))
    first = found.pieces[0]
    assert (printed(first.wall), first.left_joint, first.right_joint) == ("4", "square", "square")
    assert [piece.mark for piece in found.pieces] == list("ABCDE")
    assert found.pieces[-1].wall.number == 2


def test_a_wall_told_is_fitted_first() -> None:
    found = run(room(("4 m", "3 m", "4 m", "3 m"), SQUARE), (("2", "1 m", "900 mm"),), first_wall="3")
    assert printed(found.first_wall) == "3"


def test_a_room_without_a_door_ends_with_a_piece_scribed_twice() -> None:
    found = run(room(("4 m", "3 m", "4 m", "3 m"), SQUARE))
    assert [note.code for note in found.notes] == ["scribed-both-ends"]
    assert found.metres.number == found.net.number == 14000


@settings(max_examples=60, deadline=None)
@forall(
    st.integers(1500, 9000), st.integers(1500, 9000), st.integers(100, 500), st.integers(600, 900),
    st.integers(9, 25),
)  # fmt: skip
def test_what_is_cut_is_the_wall_with_a_lap_for_each_heading(
    long: int, deep: int, start: int, door: int, thick: int
) -> None:
    walls = (f"{long} mm", f"{deep} mm", f"{long} mm", f"{deep} mm")
    found = run(
        room(walls, SQUARE), (("1", f"{start} mm", f"{door} mm"),), longest="2.4 m", thickness=f"{thick} mm"
    )
    laps = found.headings.number * thick
    assert found.metres.number == pytest.approx(found.net.number + laps)
    assert found.net.number == 2 * (long + deep) - door
    assert all(piece.length_to_cut.number <= 2400 + 1e-6 for piece in found.pieces)
    assert found.refused == ()


@settings(max_examples=30, deadline=None)
@forall(st.integers(1500, 9000), st.integers(1500, 9000), st.integers(100, 500))
def test_the_unit_a_room_is_measured_in_makes_no_difference(long: int, deep: int, start: int) -> None:
    def lengths(unit: str) -> list[float]:
        def text(mm: int) -> str:
            return f"{mm} mm" if unit == "mm" else f"{mm / 1000:.3f} m"

        walls = (text(long), text(deep), text(long), text(deep))
        found = run(room(walls, SQUARE), (("1", text(start), text(800)),), longest="4.2 m")
        return [length.number for length in found.lengths]

    assert lengths("mm") == lengths("m")


@settings(max_examples=30, deadline=None)
@forall(st.integers(2500, 6000), st.integers(2500, 6000), st.integers(300, 1200), st.integers(0, 3))
def test_the_wall_counted_first_makes_no_difference(long: int, deep: int, start: int, turn: int) -> None:
    """Starting the count at another wall gives the same pieces in the same order."""
    walls = (long, deep, long, deep)
    turned = (*walls[turn:], *walls[:turn])
    door = str((0 - turn) % 4 + 1)
    plain = run(room(tuple(f"{w} mm" for w in walls), SQUARE), (("1", f"{start} mm", "800 mm"),))
    again = run(room(tuple(f"{w} mm" for w in turned), SQUARE), ((door, f"{start} mm", "800 mm"),))
    assert [p.number for p in plain.lengths] == [p.number for p in again.lengths]


def test_headings_stand_on_a_fixing_off_the_line_of_sight_and_off_radiators() -> None:
    of = room(("6 m", "4 m", "6 m", "4 m"), SQUARE)
    found = run(
        of, (("1", "2.5 m", "900 mm"),), longest="4.2 m", fixing_centres="600 mm",
        radiator_walls=several("3"), radiator_starts=several("1.2 m"), radiator_widths=several("1.1 m"),
    )  # fmt: skip
    (place,) = [piece.end.number for piece in found.pieces[:2] if piece.right_joint == "heading"]
    assert place % 600 == 0
    assert not 1200 < place < 2300
    # The door's middle lies at 2950 from wall 1's left end, so the look falls on wall 3 at 3050.
    offered = [p for p in range(600, 6000, 600) if 1807.5 <= p <= 4192.5 and not 1200 < p < 2300]
    assert abs(place - 3050) == max(abs(p - 3050) for p in offered)


def brute(run: Run, places: list[float]) -> float | None:
    """The best distance from the sight line with one joint, by trying each."""
    fits = [p for p in places if run.allows(p) and max(run.pieces((p,))) <= run.longest + 1e-9]
    return max((abs(p - (run.sight or 0)) for p in fits), default=None)


@forall(st.integers(4300, 8000), st.integers(0, 8000), st.integers(0, 400))
def test_one_heading_is_as_far_from_the_sight_line_as_any(length: int, sight: int, clear: int) -> None:
    of = Run(start=0, end=length, extra=(0, 0), lap=15, longest=4200, clear=clear, sight=float(sight))
    places = [float(p) for p in range(0, length, 100)]
    chosen = heading_places(of, places)
    best = brute(of, places)
    if chosen is not None and len(chosen) == 1:
        assert abs(chosen[0] - sight) == best
    else:
        assert best is None


@pytest.mark.parametrize(("length", "fewest"), [(4200, 0), (4201, 1), (8385, 1), (8386, 2)])
def test_the_fewest_headings_count_the_lap(length: int, fewest: int) -> None:
    of = Run(start=0, end=length, extra=(0, 0), lap=15, longest=4200, clear=0)
    assert of.fewest() == fewest


def test_an_architrave_that_stands_back_is_refused_by_its_door() -> None:
    found = run(
        room(("4 m", "3 m", "4 m", "3 m"), SQUARE),
        (("1", "1 m", "900 mm"), ("3", "1 m", "900 mm")),
        architraves=several("18 mm", "16 mm"),
        shadow_margin="2 mm",
    )
    assert [finding_words(each, space=" ") for each in found.refused] == [
        "at door 2 the architrave stands 1 mm in front of the skirting and the least is 2 mm"
    ]


def test_a_long_run_with_nowhere_to_joint_it_is_refused() -> None:
    of = room(("5 m", "3 m", "5 m", "3 m"), SQUARE)
    found = run(of, (("3", "0 mm", "900 mm"),), longest="2.6 m", joint_clear="2.5 m")
    assert {each.code for each in found.refused} == {"no-heading-place"}


@pytest.mark.parametrize(
    ("walls", "corners", "code"),
    [
        (("4 m", "3 m"), ("90 deg", "90 deg"), "walls-too-few"),
        (("4 m", "3 m", "4 m", "3 m"), ("90 deg",) * 3, "lists-differ"),
        (("4 m", "3 m", "4 m", "3 m"), ("180 deg", "90 deg", "90 deg", "90 deg"), "corner-straight"),
        (("4 m", "3 m", "4 m", "3 m"), ("3 deg", "90 deg", "90 deg", "90 deg"), "corner-too-sharp"),
        (
            ("4 m", "3 m", "2 m", "5 m", "2 m"),
            ("90 deg", "90 deg", "90 deg", "90 deg", "90 deg"),
            "walls-cross",
        ),
    ],
)
def test_a_room_that_cannot_be_is_refused(
    walls: tuple[str, ...], corners: tuple[str, ...], code: str
) -> None:
    with pytest.raises(InputRefused) as refused:
        room(walls, corners)
    assert refused.value.code == code


def test_a_room_that_does_not_close_says_by_how_much() -> None:
    found = room(("4 m", "3 m", "4.1 m", "3 m"), SQUARE, closes_within="40 mm", angles_within="3 deg")
    assert [finding_words(each, space=" ") for each in found.refused] == [
        "going round, the last wall ends 100 mm from where the first began, and 40 mm is allowed: "
        "take walls and angles again"
    ]


@pytest.mark.parametrize(
    ("doors", "code"),
    [
        ((("5", "1 m", "900 mm"),), "no-such-wall"),
        ((("1", "3.5 m", "900 mm"),), "off-the-wall"),
        ((("1", "1 m", "900 mm"), ("1", "1.5 m", "900 mm")), "overlap-on-wall"),
    ],
)
def test_a_door_off_its_wall_is_refused(doors: tuple[tuple[str, str, str], ...], code: str) -> None:
    with pytest.raises(InputRefused) as refused:
        run(room(("4 m", "3 m", "4 m", "3 m"), SQUARE), doors)
    assert refused.value.code == code


def test_a_room_of_quarter_turns_is_walked_without_a_rounding() -> None:
    shape = outline((5200, 2600, 1300, 1500, 3900, 4100), (90, 90, 270, 90, 90, 90))
    assert shape.apart == 0
    assert shape.area == 5200 * 4100 - 1300 * 1500
    assert shape.faced(0, 1461.5) == (4, 3900 - 1461.5)
