"""Intervals against polygons of an outside library: rooms moved in by a gap and cut into strips."""

from __future__ import annotations

import pytest
from hypothesis import given as forall
from hypothesis import settings
from hypothesis import strategies as st
from shapely import box, unary_union
from shapely.geometry import Point, Polygon

from generator.quantities.rectilinear import Ring, holds, moved_in, outlines, patches, pinched
from tests.quantities.square_rooms import NIB, ROOMS, rings

NEAR = 1e-3


def eroded(ring: Ring, by: float) -> Polygon:
    return Polygon(ring).buffer(-by, join_style="mitre", mitre_limit=10)


def same(one: Polygon, other: Polygon) -> bool:
    return one.symmetric_difference(other).area < NEAR


def turned(ring: Ring) -> Ring:
    """Level sides made upright, so that nooks lie to the left and right as well."""
    return tuple((y, x) for x, y in reversed(ring))


SHAPES = st.one_of(rings(), rings().map(turned))


@settings(max_examples=60, deadline=None)
@forall(SHAPES, st.integers(1, 290))
def test_moved_in_a_room_is_what_a_polygon_eroded_is(ring: Ring, gap: int) -> None:
    if pinched(ring, 2 * gap + 1) is None:
        assert same(Polygon(moved_in(ring, gap)), eroded(ring, gap))


@settings(max_examples=80, deadline=None)
@forall(SHAPES, st.integers(20, 1500))
def test_a_room_is_narrow_where_a_polygon_eroded_breaks_or_loses_a_side(ring: Ring, least: int) -> None:
    left = eroded(ring, least / 2 - 1e-6)
    whole = left.geom_type == "Polygon" and not left.is_empty
    kept = whole and len(left.simplify(1e-3).exterior.coords) - 1 == len(ring)
    assert (pinched(ring, least) is None) == kept


@settings(max_examples=60, deadline=None)
@forall(SHAPES, st.integers(0, 3000), st.integers(20, 400))
def test_the_pieces_of_a_strip_are_those_of_the_polygon(ring: Ring, top: int, wide: int) -> None:
    low, high = min(y for _, y in ring), max(y for _, y in ring)
    start = low + top % (high - low)
    end = min(start + wide, high)
    cut = Polygon(ring).intersection(box(-1, start, 1e6, end))
    found = patches(ring, start, end)
    shapes = [unary_union([box(c.left, c.top, c.right, c.bottom) for c in patch.cells]) for patch in found]
    assert all(shape.geom_type == "Polygon" for shape in shapes)
    assert sum(patch.area for patch in found) == pytest.approx(cut.area)
    assert same(unary_union(shapes), cut)
    polygons = [part for part in getattr(cut, "geoms", [cut]) if part.area > NEAR]
    assert len(found) == len(polygons)
    for patch, shape in zip(found, shapes, strict=True):
        assert patch.hull == type(patch.hull)(*shape.bounds)
        assert patch.whole == (len(shape.simplify(0).exterior.coords) == 5)
        assert same(unary_union([Polygon(each) for each in outlines(patch.cells)]), shape)


@settings(max_examples=40, deadline=None)
@forall(SHAPES, st.integers(0, 30), st.integers(20, 400))
def test_neither_the_way_round_nor_the_first_corner_makes_a_difference(
    ring: Ring, first: int, wide: int
) -> None:
    at = first % len(ring)
    other = (*ring[at:], *ring[:at])
    low = min(y for _, y in ring)
    usual = patches(ring, low, low + wide)
    for form in (other, other[::-1]):
        assert patches(form, low, low + wide) == usual
        assert sorted(moved_in(form, 12.5)) == sorted(moved_in(ring, 12.5))
        assert (pinched(form, 400) is None) == (pinched(ring, 400) is None)


@settings(max_examples=60, deadline=None)
@forall(SHAPES, st.integers(-100, 9000), st.integers(-100, 9000))
def test_a_place_is_in_the_room_as_it_is_in_the_polygon(ring: Ring, x: int, y: int) -> None:
    assert holds(ring, (x, y)) == Polygon(ring).intersects(Point(x, y))


def test_a_strip_beside_a_nib_is_parted_or_cut_round_it() -> None:
    before, across, behind = (patches(NIB, top, top + 100) for top in (1390, 1510, 1600))
    assert [patch.whole for patch in before] == [True]
    assert [patch.hull.right for patch in across] == [3800]
    assert [patch.whole for patch in behind] == [False]


@pytest.mark.parametrize("name", ROOMS)
def test_the_rooms_of_these_tests_are_polygons(name: str) -> None:
    polygon = Polygon(ROOMS[name])
    assert polygon.is_valid
