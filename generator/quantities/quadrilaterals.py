"""Four corners from six distances: what each distance must be for the other five to meet.

Plain geometry in millimetres. The corners are both feet and both tops of an opening; the six distances are
its two widths, two heights and two diagonals, one more than fixes the shape.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from itertools import combinations

LEFT_FOOT, RIGHT_FOOT, LEFT_TOP, RIGHT_TOP = "left foot", "right foot", "left top", "right top"
CORNERS = (LEFT_TOP, RIGHT_TOP, LEFT_FOOT, RIGHT_FOOT)

Side = frozenset[str]
SIDES: Mapping[str, Side] = {
    "width_top": frozenset((LEFT_TOP, RIGHT_TOP)),
    "width_floor": frozenset((LEFT_FOOT, RIGHT_FOOT)),
    "height_left": frozenset((LEFT_FOOT, LEFT_TOP)),
    "height_right": frozenset((RIGHT_FOOT, RIGHT_TOP)),
    "diagonal_left_foot": frozenset((LEFT_FOOT, RIGHT_TOP)),
    "diagonal_right_foot": frozenset((RIGHT_FOOT, LEFT_TOP)),
}
DIAGONALS = frozenset(("diagonal_left_foot", "diagonal_right_foot"))


def triangle(corner: str) -> frozenset[str]:
    """The three measurements that give the angle at a corner."""
    other = _neighbours(corner)
    wanted = {frozenset((corner, other[0])), frozenset((corner, other[1])), frozenset(other)}
    return frozenset(name for name, side in SIDES.items() if side in wanted)


@dataclass(frozen=True, slots=True, kw_only=True)
class Quadrilateral:
    """The six distances by name, in mm."""

    sizes: Mapping[str, float]

    def between(self, one: str, two: str) -> float:
        """The distance between two corners."""
        wanted = frozenset((one, two))
        return next(self.sizes[name] for name, side in SIDES.items() if side == wanted)

    def with_size(self, name: str, size: float) -> Quadrilateral:
        """The same with one distance changed."""
        return replace(self, sizes={**self.sizes, name: size})

    def angle(self, corner: str) -> float | None:
        """The angle at a corner in degrees, from the triangle of the sides that meet there; None if open."""
        up, across = _neighbours(corner)
        b, c, a = self.between(corner, up), self.between(corner, across), self.between(up, across)
        cosine = (b * b + c * c - a * a) / (2 * b * c)
        return math.degrees(math.acos(cosine)) if -1 < cosine < 1 else None

    def off_square(self) -> float:
        """How far the four corners are from square together: the sum of squares, in square degrees."""
        angles = [self.angle(corner) for corner in CORNERS]
        return sum((angle - 90) ** 2 if angle is not None else math.inf for angle in angles)

    def called_for(self, name: str) -> float | None:
        """What one distance must be for the other five to meet; None where they cannot."""
        one, two = sorted(SIDES[name])
        base = sorted(set(CORNERS) - SIDES[name])
        first, second = self._stood_on(base, one), self._stood_on(base, two)
        if first is None or second is None:
            return None
        # The corners of a diagonal lie on either side of the other diagonal, those of a side on one.
        rise = first[1] + second[1] if name in DIAGONALS else first[1] - second[1]
        return math.hypot(first[0] - second[0], rise)

    def _stood_on(self, base: list[str], corner: str) -> tuple[float, float] | None:
        start, end = base
        long, near, far = (self.between(*pair) for pair in ((start, end), (start, corner), (end, corner)))
        along = (long * long + near * near - far * far) / (2 * long)
        square = near * near - along * along
        return (along, math.sqrt(square)) if square > 0 else None

    def leverage(self, name: str) -> float:
        """By how much the top width called for moves for each mm that one distance is out.

        The six distances of four points are held together by one self-stress, whose share in each is its
        length times the areas of the two triangles that leave out one of its ends.
        """
        return self._stress(name) / self._stress("width_top")

    def _stress(self, name: str) -> float:
        one, two = SIDES[name]
        return self._area_without(one) * self._area_without(two) * self.sizes[name]

    def _area_without(self, corner: str) -> float:
        a, b, c = (self.between(*pair) for pair in combinations(sorted(set(CORNERS) - {corner}), 2))
        half = (a + b + c) / 2
        return math.sqrt(max(half * (half - a) * (half - b) * (half - c), 0.0))


def _neighbours(corner: str) -> tuple[str, str]:
    hand, end = corner.split()
    return f"{hand} {'foot' if end == 'top' else 'top'}", f"{'right' if hand == 'left' else 'left'} {end}"
