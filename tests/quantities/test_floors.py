"""A floor laid out row by row: every layout is laid again here, offcut by offcut, and its rules held."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any

import pytest
from hypothesis import given as forall
from hypothesis import settings
from hypothesis import strategies as st
from shapely import box, unary_union
from shapely.affinity import translate
from shapely.geometry import Polygon

from generator.quantities.board_rows import Rule, Run, fewest_boards, lay_mixed, lay_rows
from generator.quantities.floor_outline import floor_outline
from generator.quantities.floor_rows import row_widths, strips
from generator.quantities.rectilinear import Ring, sides
from generator.quantities.results import InputRefused, finding_words
from tests.quantities.examples import run_with, size
from tests.quantities.square_rooms import BAY, BREAST, ELL, ROOMS, mirrored, rings, surveyed

NEAR = 1e-6


def runs(lengths: Sequence[float], each: int = 1) -> list[Run]:
    """Rows of so many runs, their lengths in order, runs of one row a nib of 100 mm apart."""
    found, start = [], 0.0
    for at, length in enumerate(lengths):
        start = 0.0 if at % each == 0 else start + 100
        found.append(Run(row=at // each, start=start, length=length))
        start += length
    return found


def laid_again(laid: Any, board: float, rule: Rule) -> int:
    """Boards opened when these runs are laid by hand, ends and starts kept in two heaps."""
    heaps: dict[str, list[float]] = {"starts": [], "ends": []}
    opened = 0
    for row in laid:
        lay = _lay_one if len(row.pieces) == 1 else _lay_several
        opened += lay(row, board, rule, heaps)
    return opened


def _lay_one(row: Any, board: float, rule: Rule, heaps: dict[str, list[float]]) -> int:
    """A run of one piece: cut from an offcut, whose own end stays on the rest, or from a board."""
    (length,) = row.pieces
    offcut = row.starts_with_offcut or row.ends_with_offcut
    heap = heaps["ends" if row.ends_with_offcut else "starts"]
    stock = min(each for each in heap if each >= length - NEAR) if offcut else board
    if offcut:
        heap.remove(stock)
    if stock - length - rule.kerf >= rule.least_end - NEAR:
        heap.append(round(stock - length - rule.kerf, 3))
    return 0 if offcut else 1


def _lay_several(row: Any, board: float, rule: Rule, heaps: dict[str, list[float]]) -> int:
    starts, ends = heaps["starts"], heaps["ends"]
    first, last = row.pieces[0], row.pieces[-1]
    opened = sum(1 for piece in row.pieces[1:] if piece > board - NEAR)
    if row.starts_with_offcut:
        (taken,) = [length for length in starts if abs(length - first) < NEAR][:1]
        starts.remove(taken)
    else:
        opened += 1
        ends.append(board - first - rule.kerf)
    if last > board - NEAR:
        return opened
    if row.ends_with_offcut:
        ends.remove(min(length for length in ends if length >= last - NEAR))
        return opened
    starts.append(board - last - rule.kerf)
    return opened + 1


def keeps(laid: Any, asked: Sequence[Run], rule: Rule) -> bool:
    """Every run as long as it should be, ends long enough, joints staggered from the row before."""
    for row, run in zip(laid, asked, strict=True):
        if row.run != run or abs(sum(row.pieces) - run.length) > NEAR:
            return False
        if len(row.pieces) > 1 and min(row.pieces[0], row.pieces[-1]) < rule.least_end - NEAR:
            return False
        before = [joint for each in laid if each.run.row == run.row - 1 for joint in each.joints]
        if any(abs(a - b) < rule.least_stagger - NEAR for a in row.joints for b in before):
            return False
    return True


LENGTHS = st.lists(st.integers(150, 7000), min_size=1, max_size=14)


@settings(max_examples=40, deadline=None)
@forall(
    st.one_of(LENGTHS, st.tuples(st.integers(2300, 9000), st.integers(1, 22)).map(lambda x: [x[0]] * x[1])),
    st.integers(1, 3), st.sampled_from((1200, 1800, 2200)), st.integers(0, 4),
)  # fmt: skip
def test_a_layout_can_be_laid_with_the_boards_it_counts(
    lengths: list[int], each: int, board: int, kerf: int
) -> None:
    asked = runs(lengths, each)
    rule = Rule(kerf=kerf, least_end=200, least_stagger=200)
    made = lay_rows(asked, board, rule)
    if made is None:
        return
    opened, laid = made
    assert keeps(laid, asked, rule)
    assert laid_again(laid, board, rule) == opened
    assert opened >= fewest_boards(sum(lengths), board)


@pytest.mark.parametrize(
    ("row", "rows", "most"), [(4440, 16, 34), (3980, 20, 37), (5980, 22, 61), (2600, 12, 15)]
)
def test_a_layout_needs_no_more_boards_than_a_good_one_by_hand(row: int, rows: int, most: int) -> None:
    """Counts reached by a greedy layout with two heaps; the search is never worse. Own derivation."""
    made = lay_rows(runs([row] * rows), 2200, Rule(kerf=0, least_end=300, least_stagger=300))
    assert made is not None
    assert fewest_boards(row * rows, 2200) <= made[0] <= most


def test_short_runs_are_cut_from_what_long_ones_leave() -> None:
    """Alcoves of 880 and 1080 mm beside a chimney breast come two to a board, and from offcuts."""
    rule = Rule(kerf=0, least_end=200, least_stagger=200)
    made = lay_rows(runs([880, 1080] * 3, each=2), 2200, rule)
    assert made is not None
    assert made[0] == 3


@settings(max_examples=40, deadline=None)
@forall(
    LENGTHS, st.integers(1, 2),
    st.lists(st.sampled_from((900, 1200, 1500, 1800, 2100)), min_size=3, max_size=7),
)  # fmt: skip
def test_mixed_boards_keep_the_rule_and_are_all_counted(
    lengths: list[int], each: int, boards: list[int]
) -> None:
    asked, rule = runs(lengths, each), Rule(kerf=3, least_end=250, least_stagger=150)
    made = lay_mixed(asked, boards, rule)
    if made is None:
        return
    opened, laid = made
    assert keeps(laid, asked, rule)
    begun = sum(not row.starts_with_offcut for row in laid)
    assert opened == begun + sum(len(row.pieces) - 1 for row in laid)
    assert opened * max(boards) >= sum(lengths) - 1


RULES: dict[str, Any] = {
    "gap": "10 mm", "cover_width": "190 mm", "board_lengths": (size("2200 mm"),), "least_end": "300 mm",
    "least_stagger": "300 mm", "least_rip": "60 mm",
}  # fmt: skip


def floor_in(ring: Ring, **changed: Any) -> Any:
    return run_with("floor_layout", **{"room": surveyed(ring), **RULES, **changed})


def layout(long: int = 4460, wide: int = 3570, **changed: Any) -> Any:
    return floor_in(((0, 0), (long, 0), (long, wide), (0, wide)), **changed)


@settings(max_examples=30, deadline=None)
@forall(st.integers(600, 3000), st.integers(70, 250), st.integers(5, 20), st.integers(30, 80))
def test_widths_of_the_rows_fill_the_floor(wide: int, cover: int, gap: int, rip: int) -> None:
    floor = layout(
        long=2000, wide=wide, cover_width=f"{cover} mm", gap=f"{gap} mm", least_rip=f"{min(rip, cover)} mm"
    )
    widths = [row.width.number for row in floor.laid]
    assert sum(widths) == pytest.approx(wide - 2 * gap)
    assert len(widths) == floor.rows.number == math.ceil((wide - 2 * gap) / cover - 1e-9)
    assert max(widths) <= cover + NEAR
    if len(widths) > 1:
        assert min(widths) >= min(rip, cover / 2) - NEAR


def test_a_last_row_too_narrow_is_shared_with_the_first() -> None:
    floor = layout(wide=3480)
    assert (floor.first_width.number, floor.last_width.number) == (115, 115)
    assert [note.code for note in floor.notes] == ["rows-shared"]


def test_waste_is_what_is_bought_beyond_what_is_laid() -> None:
    floor = layout()
    bought = floor.boards.number * 2200 * 190
    assert floor.bought_area.number == bought
    assert floor.waste.number == pytest.approx(bought / (4440 * 3550) - 1)


@settings(max_examples=30, deadline=None)
@forall(rings())
def test_a_room_reaches_as_far_as_its_polygon(ring: Ring) -> None:
    found, (left, top, right, bottom) = run_with("room_reach", room=surveyed(ring)), Polygon(ring).bounds
    assert (found.along.number, found.across.number) == (right - left, bottom - top)


def test_a_pipe_is_placed_in_its_row_with_a_hole_a_gap_larger_all_round() -> None:
    floor = layout(
        pipe_alongs=(size("300 mm"), size("900 mm")), pipe_acrosses=(size("60 mm"), size("600 mm")),
        pipe_diameters=(size("15 mm"), size("22 mm")),
    )  # fmt: skip
    found = [
        (pipe.row.number, pipe.along.number, pipe.across.number, pipe.hole.number) for pipe in floor.pipes
    ]
    assert found == [(1, 290, 50, 35), (4, 890, 590, 42)]


def test_a_floor_that_no_start_can_serve_is_refused() -> None:
    """Rows of one board and a bit leave only one place for the joint, so no stagger can be kept."""
    floor = layout(long=2320, least_end="1000 mm", least_stagger="400 mm")
    assert [finding_words(each, space=" ") for each in floor.refused] == [
        "no way of starting the rows keeps least end and stagger with boards of 2200 mm in rows of 2300 mm"
    ]
    assert floor.boards is None


@pytest.mark.parametrize(
    ("changed", "code"),
    [
        ({"gap": "2 m"}, "gap-takes-room"),
        ({"least_end": "2300 mm"}, "end-over-board"),
        ({"least_stagger": "1200 mm"}, "stagger-over-half"),
        ({"cover_width": "20 mm"}, "too-many-marks"),
        ({"pipe_alongs": ("1 m",)}, "lists-differ"),
    ],
)
def test_a_floor_that_cannot_be_is_refused(changed: dict[str, Any], code: str) -> None:
    with pytest.raises(InputRefused) as refused:
        layout(**sizes(changed))
    assert refused.value.code == code


def sizes(changed: dict[str, Any]) -> dict[str, Any]:
    return {
        name: tuple(size(each) for each in value) if isinstance(value, tuple) else value
        for name, value in changed.items()
    }


# Rooms that are not rectangles.


def rows_of(room: Any, cover: int = 190, least: int = 60, start_wall: str = "1") -> Any:
    """Outline, widths and strips of a floor, without the search for its boards."""
    narrowest = size(f"{least} mm")
    outline = floor_outline(room, size("10 mm"), narrowest, size(start_wall))
    widths = row_widths(outline, size(f"{cover} mm"), narrowest)
    return outline, widths, strips(outline, widths)


def less_gap(ring: Ring) -> Polygon:
    """The room less its gap, where the floor's own places are told from."""
    inner = Polygon(ring).buffer(-10, join_style="mitre")
    return translate(inner, -inner.bounds[0], -inner.bounds[1])


def covered(strip: Any) -> Polygon:
    """The rectangle of a row by what is printed of it."""
    left, top = strip.start.number, strip.top.number
    return box(left, top, left + strip.length.number, top + strip.width.number)


@pytest.mark.parametrize("name", ROOMS)
def test_a_floor_has_the_area_and_the_edge_of_the_room_less_its_gap(name: str) -> None:
    floor, ring = floor_in(ROOMS[name]), ROOMS[name]
    inner = less_gap(ring)
    edge = Polygon([(corner.x.number, corner.y.number) for corner in floor.edge])
    assert edge.symmetric_difference(inner).area < 1e-6
    assert floor.laid_area.number == pytest.approx(inner.area)
    assert sum(corner.side.number for corner in floor.edge) == pytest.approx(inner.length)
    assert floor.beading.number == pytest.approx(Polygon(ring).length)
    rows = [covered(row).intersection(inner) for row in floor.laid]
    assert sum(row.area for row in rows) == pytest.approx(floor.laid_area.number)
    for row, shape in zip(floor.laid, rows, strict=True):
        assert sum(piece.number for piece in row.pieces) == pytest.approx(row.length.number)
        assert (row.fitted == "notched") == (shape.area < covered(row).area - 1e-3)


@settings(max_examples=40, deadline=None)
@forall(rings(most=4), st.sampled_from((90, 140, 190, 240)))
def test_rows_cut_to_the_room_cover_it_once(ring: Ring, cover: int) -> None:
    """Each row's rectangle, cut by an outside library to the room less its gap, adds up to all of it."""
    outline, _, found = rows_of(surveyed(ring), cover)
    inner = less_gap(ring)
    rows = [covered(strip).intersection(inner) for strip in found]
    assert unary_union(rows).symmetric_difference(inner).area < 1e-3
    assert sum(strip.patch.area for strip in found) == pytest.approx(inner.area)
    assert outline.area().number == pytest.approx(inner.area)
    assert max(strip.width.number for strip in found) <= cover + NEAR


@settings(max_examples=60, deadline=None)
@forall(rings(most=4), st.integers(70, 250), st.integers(30, 80))
def test_no_strip_along_a_wall_is_narrower_than_is_said(ring: Ring, cover: int, rip: int) -> None:
    """From every level wall to the nearest edge of a row on the floor's side of it."""
    outline, widths, _ = rows_of(surveyed(ring), cover, min(rip, cover))
    edges = [widths.top(row).number for row in range(widths.rows)] + [outline.across.number]
    found = []
    for (x1, y), (x2, other) in sides(outline.ring):
        if y == other:
            beyond = [edge - y if x2 > x1 else y - edge for edge in edges]
            found.append(min(each for each in beyond if each > NEAR))
    assert min(found) == pytest.approx(widths.narrowest.number, abs=1e-3)
    if not widths.shifted:
        assert min(found) >= min(rip, cover / 2) - 1e-3


@settings(max_examples=25, deadline=None)
@forall(rings(most=3), st.integers(70, 250))
def test_no_other_width_of_row_1_leaves_wider_strips(ring: Ring, cover: int) -> None:
    """A shifted row 1 against every width in steps of a millimetre, each strip measured anew."""
    outline, widths, _ = rows_of(surveyed(ring), cover, min(cover, 90))
    if not widths.shifted:
        return
    level = {(y, x2 > x1) for (x1, y), (x2, other) in sides(outline.ring) if y == other}

    def narrowest(first: float) -> float:
        edges = [0.0, *(first + at * cover for at in range(200))]
        strip = [min(e - y for e in edges if e - y > NEAR) for y, begins in level if begins]
        strip += [min(y - e for e in edges if y - e > NEAR) for y, begins in level if not begins]
        return min(strip)

    assert widths.narrowest.number >= max(narrowest(first) for first in range(1, cover + 1)) - 0.06


def test_rows_are_shifted_where_a_wall_would_meet_a_sliver() -> None:
    """Rows from the wall would leave 50 mm in front of a breast 520 mm deep, and 80 are asked for."""
    deep = tuple((x, 520 if y == 450 else y) for x, y in BREAST)
    floor = floor_in(deep, least_rip="80 mm")
    assert [note.code for note in floor.notes] == ["rows-shifted"]
    edges = [floor.first_width.number + at * 190 for at in range(4)]
    assert min(edge - 520 for edge in edges if edge > 520) >= 80


def test_a_floor_that_no_shift_saves_says_how_narrow_it_gets() -> None:
    """Walls step in by 47 mm at each of four places, a quarter of a board."""
    ring = (
        (0, 0), (5000, 0), (5000, 1007), (4500, 1007), (4500, 1054), (4000, 1054), (4000, 1101), (3500, 1101),
        (3500, 1148), (3000, 1148), (3000, 3000), (0, 3000),
    )  # fmt: skip
    floor = floor_in(ring)
    narrow = next(note for note in floor.notes if note.code == "strip-narrow")
    assert 0 < narrow.actual.number < 60


def test_beside_a_breast_a_row_is_two() -> None:
    floor = floor_in(BREAST)
    assert [row.mark for row in floor.laid][:5] == ["1a", "1b", "2a", "2b", "3"]
    assert [row.length.number for row in floor.laid][:2] == [880, 1080]
    assert [row.start.number for row in floor.laid][:2] == [0, 2300]


@pytest.mark.parametrize("name", ROOMS)
def test_a_room_may_be_measured_from_any_wall(name: str) -> None:
    ring = ROOMS[name]
    usual = seen(rows_of(surveyed(ring)))
    for first in range(1, len(ring)):
        room = surveyed((*ring[first:], *ring[:first]))
        assert seen(rows_of(room, start_wall=f"{len(ring) - first + 1}")) == usual


def seen(rows: Any) -> list[Any]:
    outline, widths, found = rows
    places = [
        (each.mark, each.start.number, each.top.number, each.length.number, each.width.number)
        for each in found
    ]
    return [outline.ring, widths.first.number, widths.last.number, places]


def test_a_floor_measured_from_another_wall_takes_the_same_boards() -> None:
    room = surveyed((*ELL[4:], *ELL[:4]))
    other = run_with("floor_layout", room=room, start_wall="3", **RULES)
    assert told(other) == told(floor_in(ELL))


def told(floor: Any) -> list[Any]:
    rows = [
        (row.mark, row.start.number, row.top.number, row.width.number, [p.number for p in row.pieces],
         row.begins, row.ends, row.fitted)
        for row in floor.laid
    ]  # fmt: skip
    edge = [(corner.x.number, corner.y.number) for corner in floor.edge]
    return [rows, edge, floor.boards.number, floor.laid_area.number, floor.waste.number]


@pytest.mark.parametrize("name", ROOMS)
def test_a_room_in_a_mirror_has_the_same_rows_turned_round(name: str) -> None:
    """Rows, widths, lengths and areas; boards are counted from the left again, since their ends differ."""
    ring = ROOMS[name]
    one, other = rows_of(surveyed(ring)), rows_of(surveyed(mirrored(ring)))
    wide = one[0].along.number

    def rows(found: Any) -> set[tuple[float, ...]]:
        return {(r.top.number, r.width.number, r.start.number, r.length.number) for r in found[2]}

    assert {(t, w, wide - s - long, long) for t, w, s, long in rows(one)} == rows(other)
    assert one[0].area().number == pytest.approx(other[0].area().number)
    assert one[1].first.number == other[1].first.number


@pytest.mark.parametrize("name", ROOMS)
def test_metres_give_the_floor_that_millimetres_give(name: str) -> None:
    ring = ROOMS[name]
    assert seen(rows_of(surveyed(ring, "m", 1000))) == seen(rows_of(surveyed(ring)))


def test_a_pipe_left_of_the_starting_wall_is_measured_below_nought() -> None:
    """Row 1 lies along the short wall of a room that is wider to its left."""
    ring = ((0, 0), (2000, 0), (2000, 3000), (-1500, 3000), (-1500, 1000), (0, 1000))
    floor = floor_in(
        ring, pipe_alongs=(size("-1000 mm"),), pipe_acrosses=(size("2000 mm"),),
        pipe_diameters=(size("15 mm"),),
    )  # fmt: skip
    (pipe,) = floor.pipes
    assert (pipe.along.number, pipe.across.number, pipe.mark) == (490, 1990, "11")


def test_doors_take_their_strips_from_the_edge() -> None:
    doors = {
        "door_walls": ("1", "4"),
        "door_starts": ("100 mm", "20 mm"),
        "door_widths": ("700 mm", "860 mm"),
    }
    floor = floor_in(BAY, **{name: tuple(map(size, items)) for name, items in doors.items()})
    assert [(strip.wall.number, strip.strip.number) for strip in floor.thresholds] == [(1, 700), (4, 860)]
    assert floor.strip_length.number == 1560
    assert floor.beading.number == Polygon(BAY).length - 1560


def test_a_room_that_closes_within_the_gap_is_taken_as_measured() -> None:
    walls = ("4460 mm", "3570 mm", "4455 mm", "3576 mm")
    room = run_with("room", walls=tuple(map(size, walls)), corners=(size("90 deg"),) * 4)
    floor = run_with("floor_layout", room=room, **RULES)
    assert (floor.along.number, floor.across.number) == (4440, 3550)


@pytest.mark.parametrize(
    ("walls", "corners", "code", "words"),
    [
        (
            ("4000 mm", "3000 mm", "4000 mm", "3000 mm"), ("90 deg", "89.5 deg", "90 deg", "90.5 deg"),
            "corner-not-square", {"number": "2", "found": "89.5°"},
        ),
        (
            ("4000 mm", "3000 mm", "3970 mm", "3000 mm"), ("90 deg",) * 4,
            "floor-open", {"apart": "30 mm", "gap": "10 mm"},
        ),
        (
            ("4000 mm", "3000 mm", "4000 mm", "3000 mm"), ("90 deg", "90 deg", "90 deg", "270 deg"),
            "corners-do-not-add-up", {"over": "180°"},
        ),
        (
            ("4000 mm", "1500 mm", "1000 mm", "78 mm", "1000 mm", "1500 mm", "4000 mm", "3078 mm"),
            ("90 deg", "270 deg", "90 deg", "90 deg", "270 deg", "90 deg", "90 deg", "90 deg"),
            "floor-too-narrow", {"one": "3", "two": "5", "least": "60 mm"},
        ),
    ],
    ids=["leaning", "open", "too many corners", "a neck"],
)  # fmt: skip
def test_a_room_that_no_floor_can_be_laid_in_is_refused(
    walls: tuple[str, ...], corners: tuple[str, ...], code: str, words: dict[str, str]
) -> None:
    room = run_with("room", walls=tuple(map(size, walls)), corners=tuple(map(size, corners)))
    with pytest.raises(InputRefused) as refused:
        run_with("floor_layout", room=room, **RULES)
    assert refused.value.code == code
    assert words.items() <= refused.value.values.items()


def test_a_room_whose_walls_cross_is_no_room() -> None:
    walls = tuple(map(size, ("4000 mm", "3000 mm", "2000 mm", "4000 mm", "2000 mm", "1000 mm")))
    corners = tuple(map(size, ("90 deg", "90 deg", "90 deg", "270 deg", "90 deg", "90 deg")))
    with pytest.raises(InputRefused) as refused:
        run_with("room", walls=walls, corners=corners)
    assert refused.value.code == "walls-cross"


@pytest.mark.parametrize(
    ("ring", "changed", "code"),
    [
        (BREAST, {"start_wall": "3"}, "floor-behind-start"),
        (BREAST, {"start_wall": "9"}, "no-such-wall"),
        (ELL, {"pipe_alongs": ("4500 mm",), "pipe_acrosses": ("3000 mm",), "pipe_diameters": ("15 mm",)},
         "pipe-outside"),
        (ELL, {"door_walls": ("2",), "door_starts": ("2 m",), "door_widths": ("838 mm",)}, "off-the-wall"),
    ],
)  # fmt: skip
def test_what_does_not_lie_in_the_room_is_refused(ring: Ring, changed: dict[str, Any], code: str) -> None:
    with pytest.raises(InputRefused) as refused:
        floor_in(ring, **sizes(changed))
    assert refused.value.code == code
