"""The outline of a room from its walls and corners, walked with the walls on the left hand: clockwise.

Coordinates are mm with x to the right and y down, the first wall along x from (0, 0); the room lies to the
right of each wall as it is walked, so a person facing a wall has its start on the left.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

Point = tuple[float, float]
STRAIGHT, WHOLE_TURN = 180.0, 360.0


@dataclass(frozen=True, slots=True)
class Outline:
    """The points at which walls begin, and where the last wall ends; that ought to be the first point."""

    starts: tuple[Point, ...]
    end: Point

    @property
    def apart(self) -> float:
        """How far the end of the last wall lies from the start of the first."""
        return math.dist(self.starts[0], self.end)

    @property
    def area(self) -> float:
        """The area in mm², the last corner joined to the first point."""
        ring = (*self.starts, self.starts[0])
        return sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in pairwise(ring)) / 2

    @property
    def walls(self) -> tuple[tuple[Point, Point], ...]:
        """Each wall as the points it runs between."""
        return tuple(zip(self.starts, (*self.starts[1:], self.end), strict=True))

    def along(self, wall: int, at: float) -> Point:
        """The point `at` mm along a wall (counted from nought) from its left end."""
        (x, y), (dx, dy) = self.walls[wall][0], self.direction(wall)
        return x + at * dx, y + at * dy

    def direction(self, wall: int) -> Point:
        """The unit vector along a wall."""
        (x1, y1), (x2, y2) = self.walls[wall]
        length = math.dist((x1, y1), (x2, y2))
        return (x2 - x1) / length, (y2 - y1) / length

    def into(self, wall: int) -> Point:
        """The unit vector square from a wall into the room."""
        dx, dy = self.direction(wall)
        return -dy, dx

    def faced(self, wall: int, at: float) -> tuple[int, float] | None:
        """The wall met first by a look square into the room from a place on a wall, and where along it."""
        eye, look = self.along(wall, at), self.into(wall)
        others = (other for other in range(len(self.starts)) if other != wall)
        met = [hit for other in others for hit in self._hits(other, eye, look)]
        _, seen, place = min(met, default=(0.0, -1, 0.0))
        return (seen, place) if seen >= 0 else None

    def _hits(self, wall: int, eye: Point, look: Point) -> Iterator[tuple[float, int, float]]:
        (x, y), (dx, dy) = self.walls[wall][0], self.direction(wall)
        across = look[0] * dy - look[1] * dx
        if abs(across) < 1e-9:
            return
        far = ((x - eye[0]) * dy - (y - eye[1]) * dx) / across
        place = ((x - eye[0]) * look[1] - (y - eye[1]) * look[0]) / across
        if far > 1e-6 and -1e-6 <= place <= math.dist(*self.walls[wall]) + 1e-6:
            yield far, wall, place

    def crosses_itself(self) -> bool:
        """Whether two walls that are not neighbours cross or touch."""
        return self.crossing() is not None

    def crossing(self) -> tuple[int, int] | None:
        """Two walls, counted from nought, that are not neighbours and cross or touch."""
        walls = self.walls
        count = len(walls)
        pairs = ((i, j) for i in range(count) for j in range(i + 2, count) if (i, j) != (0, count - 1))
        return next(((i, j) for i, j in pairs if _meet(*walls[i], *walls[j])), None)


def outline(lengths: Sequence[float], corners: Sequence[float]) -> Outline:
    """Walk walls of these lengths (mm), turning at each by the inside corner angle (degrees) at its end.

    A quarter turn is taken exactly, so that a room of right angles closes without a rounding.
    """
    x = y = turned = 0.0
    starts: list[Point] = []
    for length, corner in zip(lengths, corners, strict=True):
        starts.append((x, y))
        dx, dy = _heading(turned)
        x, y = x + length * dx, y + length * dy
        turned += STRAIGHT - corner
    return Outline(starts=tuple(starts), end=(x, y))


_QUARTERS = ((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0))


def _heading(degrees: float) -> Point:
    quarters = degrees / 90
    if quarters == round(quarters):
        return _QUARTERS[round(quarters) % 4]
    return math.cos(math.radians(degrees)), math.sin(math.radians(degrees))


def _meet(a: Point, b: Point, c: Point, d: Point) -> bool:
    sides = (_side(a, b, c), _side(a, b, d), _side(c, d, a), _side(c, d, b))
    return sides[0] * sides[1] <= 0 and sides[2] * sides[3] <= 0 and any(sides)


def _side(a: Point, b: Point, c: Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
