"""Rings of corners whose sides run along and across: moved in, cut into strips, told of narrow places.

Plain arithmetic of intervals on the sides; coordinates in mm, x to the right and y down. A ring may be given
either way round and from any corner, its last corner not repeated. It must not cross itself.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from generator.quantities.rooms import Outline, Point

Ring = tuple[Point, ...]
_NEAR = 1e-6


@dataclass(frozen=True, slots=True, order=True)
class Cell:
    """An upright rectangle."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def area(self) -> float:
        """Its area in mm²."""
        return (self.right - self.left) * (self.bottom - self.top)

    def cut(self, other: Cell) -> Cell | None:
        """What it has in common with another; None for nothing or an edge alone."""
        left, right = max(self.left, other.left), min(self.right, other.right)
        top, bottom = max(self.top, other.top), min(self.bottom, other.bottom)
        return Cell(left, top, right, bottom) if right - left > _NEAR and bottom - top > _NEAR else None


@dataclass(frozen=True, slots=True, kw_only=True)
class Patch:
    """One connected piece of a ring's inside, as cells one below another."""

    cells: tuple[Cell, ...]

    @property
    def hull(self) -> Cell:
        """The least rectangle round it."""
        return Cell(
            min(cell.left for cell in self.cells),
            min(cell.top for cell in self.cells),
            max(cell.right for cell in self.cells),
            max(cell.bottom for cell in self.cells),
        )

    @property
    def area(self) -> float:
        """Its area in mm²."""
        return sum(cell.area for cell in self.cells)

    @property
    def whole(self) -> bool:
        """Whether it fills its hull, so that a board in it is only ripped and never notched."""
        return abs(self.area - self.hull.area) < _NEAR * max(self.hull.area, 1.0)

    def within(self, box: Cell) -> tuple[Cell, ...]:
        """The cells of it that lie in a box."""
        return tuple(cut for cell in self.cells if (cut := cell.cut(box)))


def sides(ring: Ring) -> tuple[tuple[Point, Point], ...]:
    """Each side as the corners it runs between."""
    return tuple(pairwise((*ring, ring[0])))


def moved_in(ring: Ring, by: float) -> Ring:
    """The ring with every side moved square to itself into the inside by `by` (out of it where below 0)."""
    walls = Outline(starts=ring, end=ring[0])
    turn = by if walls.area > 0 else -by
    lines = [_line(side, turn) for side in sides(ring)]
    return tuple(_corner(lines[at - 1], lines[at]) for at in range(len(lines)))


def _line(side: tuple[Point, Point], by: float) -> tuple[bool, float]:
    """Whether a side is level, and its y where it is or its x where it is not, moved to its right hand."""
    (x1, y1), (x2, y2) = side
    if abs(y2 - y1) < abs(x2 - x1):
        return True, y1 + (by if x2 > x1 else -by)
    return False, x1 - (by if y2 > y1 else -by)


def _corner(one: tuple[bool, float], two: tuple[bool, float]) -> Point:
    return (two[1], one[1]) if one[0] else (one[1], two[1])


def pinched(ring: Ring, least: float) -> tuple[int, int] | None:
    """Two sides, counted from nought, with less than `least` of the inside between them; None for none."""
    by = least / 2 - _NEAR
    inner = moved_in(ring, by)
    count = len(ring)
    for at, (before, after) in enumerate(zip(sides(ring), sides(inner), strict=True)):
        if _run(before) * _run(after) <= 0:
            return (at - 1) % count, (at + 1) % count
    return Outline(starts=inner, end=inner[0]).crossing()


def _run(side: tuple[Point, Point]) -> float:
    """How long a side is, below nought where it runs to the left or up."""
    (x1, y1), (x2, y2) = side
    return (x2 - x1) + (y2 - y1)


def levels(ring: Ring) -> tuple[float, ...]:
    """The heights at which level sides lie, each once, from the top."""
    return tuple(sorted({y for _, y in ring}))


def spans(ring: Ring, y: float) -> tuple[tuple[float, float], ...]:
    """The stretches of a level line at `y` that lie inside; `y` on no level side."""
    crossed = sorted(x1 for (x1, y1), (x2, y2) in sides(ring) if x1 == x2 and min(y1, y2) < y < max(y1, y2))
    return tuple(zip(crossed[::2], crossed[1::2], strict=True))


def patches(ring: Ring, top: float, bottom: float) -> tuple[Patch, ...]:
    """The pieces of the inside between two heights, from left to right."""
    cuts = [top, *(level for level in levels(ring) if top + _NEAR < level < bottom - _NEAR), bottom]
    layers = [
        [Cell(left, high, right, low) for left, right in spans(ring, (high + low) / 2)]
        for high, low in pairwise(cuts)
    ]
    return tuple(sorted(_joined(layers), key=lambda patch: patch.hull))


def _joined(layers: Sequence[Sequence[Cell]]) -> Iterator[Patch]:
    """Cells of neighbouring layers that share a stretch of their edge, put together."""
    groups: list[list[Cell]] = []
    for layer in layers:
        for cell in layer:
            touching = [group for group in groups if any(_touch(other, cell) for other in group)]
            groups = [group for group in groups if not any(group is each for each in touching)]
            groups.append([*(other for group in touching for other in group), cell])
    yield from (Patch(cells=tuple(sorted(group, key=lambda cell: (cell.top, cell.left)))) for group in groups)


def _touch(upper: Cell, lower: Cell) -> bool:
    shared = min(upper.right, lower.right) - max(upper.left, lower.left)
    return abs(upper.bottom - lower.top) < _NEAR and shared > _NEAR


def outlines(cells: Sequence[Cell]) -> tuple[Ring, ...]:
    """The rings round cells that do not overlap, clockwise, corners where they turn alone."""
    edges = _outer_edges(cells)
    found: list[Ring] = []
    while edges:
        start = min(edges)
        ring, at = [start], edges[start].pop()
        while at != start:
            ring.append(at)
            at = edges[at].pop()
        edges = {corner: ends for corner, ends in edges.items() if ends}
        found.append(_turning(ring))
    return tuple(found)


def _outer_edges(cells: Sequence[Cell]) -> dict[Point, list[Point]]:
    """Edges of the cells, cut where corners lie on them, without those that two cells share."""
    xs = sorted({x for cell in cells for x in (cell.left, cell.right)})
    ys = sorted({y for cell in cells for y in (cell.top, cell.bottom)})
    pieces = {piece for cell in cells for piece in _round(cell, xs, ys)}
    outer = [(a, b) for a, b in pieces if (b, a) not in pieces]
    edges: dict[Point, list[Point]] = {}
    for a, b in sorted(outer):
        edges.setdefault(a, []).append(b)
    return edges


def _round(cell: Cell, xs: Sequence[float], ys: Sequence[float]) -> Iterator[tuple[Point, Point]]:
    across = [x for x in xs if cell.left <= x <= cell.right]
    down = [y for y in ys if cell.top <= y <= cell.bottom]
    yield from (((a, cell.top), (b, cell.top)) for a, b in pairwise(across))
    yield from (((cell.right, a), (cell.right, b)) for a, b in pairwise(down))
    yield from (((b, cell.bottom), (a, cell.bottom)) for a, b in pairwise(across))
    yield from (((cell.left, b), (cell.left, a)) for a, b in pairwise(down))


def _turning(ring: Sequence[Point]) -> Ring:
    """The corners at which a ring turns."""
    count = len(ring)
    around = ((ring[at - 1], ring[at], ring[(at + 1) % count]) for at in range(count))
    return tuple(b for a, b, c in around if not (a[0] == b[0] == c[0] or a[1] == b[1] == c[1]))


def holds(ring: Ring, point: Point) -> bool:
    """Whether a point lies inside, or on a side."""
    x, y = point
    odd = False
    for (x1, y1), (x2, y2) in sides(ring):
        if _off(x, x1, x2) < _NEAR and _off(y, y1, y2) < _NEAR:
            return True
        odd ^= x1 == x2 and x1 < x and (y1 > y) != (y2 > y)
    return odd


def _off(at: float, one: float, two: float) -> float:
    """How far a number lies outside two others."""
    return max(min(one, two) - at, at - max(one, two), 0.0)
