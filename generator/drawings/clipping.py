"""Plane geometry on plain tuples: flattening, clipping, insetting, distances. All in mm unless said."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

Point = tuple[float, float]
Points = tuple[Point, ...]
Segment = tuple[float, float, float, float]


@dataclass(frozen=True, slots=True)
class Box:
    """An upright rectangle: left, top, right, bottom (y runs down the sheet)."""

    left: float
    top: float
    right: float
    bottom: float

    def grown(self, by: float) -> Box:
        """Return the box moved out by `by` on every side."""
        return Box(self.left - by, self.top - by, self.right + by, self.bottom + by)

    def near(self, other: Box, gap: float) -> bool:
        """Whether two boxes come within `gap` of one another, along an axis."""
        return (
            self.left < other.right + gap
            and other.left < self.right + gap
            and self.top < other.bottom + gap
            and other.top < self.bottom + gap
        )

    def holds(self, other: Box) -> bool:
        """Whether the other box lies wholly in this one."""
        return (
            other.left >= self.left
            and other.right <= self.right
            and other.top >= self.top
            and other.bottom <= self.bottom
        )

    @property
    def corners(self) -> Points:
        """The four corners, clockwise from top left."""
        return (
            (self.left, self.top),
            (self.right, self.top),
            (self.right, self.bottom),
            (self.left, self.bottom),
        )

    @property
    def centre(self) -> Point:
        """The middle of the box."""
        return (self.left + self.right) / 2, (self.top + self.bottom) / 2


@dataclass(frozen=True, slots=True)
class Disc:
    """A circle's centre and radius."""

    x: float
    y: float
    radius: float

    def holds(self, box: Box) -> bool:
        """Whether a box lies wholly in the disc."""
        return all(math.hypot(px - self.x, py - self.y) <= self.radius for px, py in box.corners)

    def clear_of(self, box: Box) -> bool:
        """Whether a box lies wholly outside the disc."""
        dx = max(box.left - self.x, 0, self.x - box.right)
        dy = max(box.top - self.y, 0, self.y - box.bottom)
        return math.hypot(dx, dy) >= self.radius


def bounds(points: Iterable[Point]) -> Box:
    """Return the smallest upright box round the points."""
    found = tuple(points)
    xs = [x for x, _ in found]
    ys = [y for _, y in found]
    return Box(min(xs), min(ys), max(xs), max(ys))


def area(points: Sequence[Point]) -> float:
    """Return a polygon's area, positive when it runs clockwise on a sheet whose y runs down."""
    ring = zip(points, (*points[1:], points[0]), strict=True)
    return sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in ring) / 2


def arc(centre: Point, radius: float, start: float, end: float, sagitta: float = 0.01) -> Points:
    """Flatten an arc (angles in radians) so that no chord leaves it by more than `sagitta` mm."""
    step = 2 * math.acos(max(-1.0, 1 - min(sagitta / radius, 1.0))) if radius > 0 else math.pi
    count = max(2, math.ceil(abs(end - start) / max(step, 0.05)))
    angles = (start + (end - start) * i / count for i in range(count + 1))
    return tuple((centre[0] + radius * math.cos(a), centre[1] + radius * math.sin(a)) for a in angles)


def circle(centre: Point, radius: float, sagitta: float = 0.01) -> Points:
    """Flatten a whole circle; the first point is not repeated."""
    return arc(centre, radius, 0.0, 2 * math.pi, sagitta)[:-1]


def rectangle(left: float, top: float, right: float, bottom: float) -> Points:
    """Return the rectangle's corners, clockwise from top left."""
    return Box(left, top, right, bottom).corners


def crosses_box(segment: Segment, box: Box) -> bool:
    """Whether a straight segment enters a box (Liang and Barsky's test)."""
    x1, y1, x2, y2 = segment
    dx, dy = x2 - x1, y2 - y1
    enter, leave = 0.0, 1.0
    for slope, room in (
        (-dx, x1 - box.left),
        (dx, box.right - x1),
        (-dy, y1 - box.top),
        (dy, box.bottom - y1),
    ):
        if slope == 0:
            if room < 0:
                return False
        elif slope < 0:
            enter = max(enter, room / slope)
        else:
            leave = min(leave, room / slope)
    return enter <= leave


def segments_cross(first: Segment, second: Segment) -> bool:
    """Whether two straight segments properly cross."""
    ax, ay, bx, by = first
    cx, cy, dx, dy = second
    one = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)
    two = (bx - ax) * (dy - ay) - (by - ay) * (dx - ax)
    three = (dx - cx) * (ay - cy) - (dy - cy) * (ax - cx)
    four = (dx - cx) * (by - cy) - (dy - cy) * (bx - cx)
    return one * two < 0 and three * four < 0


def inside(point: Point, polygon: Sequence[Point]) -> bool:
    """Whether a point lies in a polygon, by the even-odd rule."""
    x, y = point
    odd = False
    x1, y1 = polygon[-1]
    for x2, y2 in polygon:
        if (y1 > y) != (y2 > y) and x < (x2 - x1) * (y - y1) / (y2 - y1) + x1:
            odd = not odd
        x1, y1 = x2, y2
    return odd


def clip_to_convex(polygon: Sequence[Point], clip: Sequence[Point]) -> Points:
    """Return the part of a polygon inside a convex clockwise ring (Sutherland and Hodgman)."""
    kept = tuple(polygon)
    x1, y1 = clip[-1]
    for x2, y2 in clip:
        kept = _clip_to_edge(kept, (x1, y1, x2, y2))
        if not kept:
            return ()
        x1, y1 = x2, y2
    return kept


def _clip_to_edge(polygon: Points, edge: Segment) -> Points:
    ex, ey, fx, fy = edge
    sides = [(fx - ex) * (y - ey) - (fy - ey) * (x - ex) for x, y in polygon]
    if min(sides) >= 0:
        return polygon
    kept: list[Point] = []
    for i, (here, side) in enumerate(zip(polygon, sides, strict=True)):
        before, was = polygon[i - 1], sides[i - 1]
        if (side >= 0) != (was >= 0):
            share = was / (was - side)
            kept.append(
                (before[0] + share * (here[0] - before[0]), before[1] + share * (here[1] - before[1]))
            )
        if side >= 0:
            kept.append(here)
    return tuple(kept)


def clip_to_disc(polygon: Sequence[Point], disc: Disc) -> Points:
    """Return the part of a polygon inside a disc, the rim flattened to 0.05 mm."""
    x, y, r = disc.x, disc.y, disc.radius
    if all((px - x) ** 2 + (py - y) ** 2 <= r * r for px, py in polygon):
        return tuple(polygon)
    squared = clip_to_convex(polygon, rectangle(x - r, y - r, x + r, y + r))
    return clip_to_convex(squared, circle((x, y), r, 0.05)) if squared else ()


def clip_line(points: Sequence[Point], disc: Disc) -> tuple[Points, ...]:
    """Return the runs of a polyline that lie inside a disc."""
    runs: list[list[Point]] = []
    for (x1, y1), (x2, y2) in itertools.pairwise(points):
        span = _in_disc(x1 - disc.x, y1 - disc.y, x2 - x1, y2 - y1, disc.radius)
        if span is None:
            continue
        start, end = (
            (x1 + span[0] * (x2 - x1), y1 + span[0] * (y2 - y1)),
            (x1 + span[1] * (x2 - x1), y1 + span[1] * (y2 - y1)),
        )
        if runs and runs[-1][-1] == start:
            runs[-1].append(end)
        else:
            runs.append([start, end])
    return tuple(tuple(run) for run in runs)


def _in_disc(x: float, y: float, dx: float, dy: float, radius: float) -> tuple[float, float] | None:
    a, b, c = dx * dx + dy * dy, x * dx + y * dy, x * x + y * y - radius * radius
    root = b * b - a * c
    if a == 0 or root <= 0:
        return None
    start, end = max(0.0, (-b - math.sqrt(root)) / a), min(1.0, (-b + math.sqrt(root)) / a)
    return (start, end) if start < end else None


def inset(polygon: Sequence[Point], by: float) -> Points:
    """Return a polygon moved inward by `by` mm; empty where nothing would be left.

    Each corner moves along its bisector, so a feature narrower than twice the inset may fold; hatches, which
    are all that is drawn from it, are then also held by the outline itself.
    """
    ring = without_doubles(polygon)
    if len(ring) < 3:
        return ()
    turn = 1.0 if area(ring) > 0 else -1.0
    moved = tuple(_moved_corner(ring, i, by * turn) for i in range(len(ring)))
    whole = bounds(ring)
    if min(whole.right - whole.left, whole.bottom - whole.top) <= 2 * by or area(moved) * turn <= 0:
        return ()
    return moved


def without_doubles(polygon: Sequence[Point]) -> Points:
    return tuple(p for i, p in enumerate(polygon) if math.dist(p, polygon[i - 1]) > 1e-6)


def _moved_corner(ring: Points, i: int, by: float) -> Point:
    (x0, y0), (x1, y1), (x2, y2) = ring[i - 1], ring[i], ring[(i + 1) % len(ring)]
    one, two = math.hypot(x1 - x0, y1 - y0), math.hypot(x2 - x1, y2 - y1)
    n1 = (-(y1 - y0) / one, (x1 - x0) / one)
    n2 = (-(y2 - y1) / two, (x2 - x1) / two)
    scale = by / max(1 + n1[0] * n2[0] + n1[1] * n2[1], 0.2)
    return x1 + (n1[0] + n2[0]) * scale, y1 + (n1[1] + n2[1]) * scale
