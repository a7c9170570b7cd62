"""Rooms of square corners for the tests: their rings of corners, and the walls a person would measure."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

from hypothesis import strategies as st

from generator.quantities.rectilinear import Ring
from tests.quantities.examples import run_with, size

RECTANGLE: Ring = ((0, 0), (4460, 0), (4460, 3570), (0, 3570))
ELL: Ring = ((0, 0), (5200, 0), (5200, 2600), (3900, 2600), (3900, 4100), (0, 4100))
TEE: Ring = (
    (0, 0), (5000, 0), (5000, 1800), (3500, 1800), (3500, 4000), (1500, 4000), (1500, 1800), (0, 1800),
)  # fmt: skip
BREAST: Ring = (
    (0, 0), (900, 0), (900, 450), (2300, 450), (2300, 0), (3400, 0), (3400, 3600), (0, 3600),
)  # fmt: skip
BAY: Ring = (
    (0, 0), (4000, 0), (4000, 1000), (4130, 1000), (4130, 1900), (4000, 1900), (4000, 3500), (0, 3500),
)  # fmt: skip
NIB: Ring = (
    (0, 0), (5000, 0), (5000, 1500), (3800, 1500), (3800, 1620), (5000, 1620), (5000, 3620), (0, 3620),
)  # fmt: skip
HEARTH: Ring = (
    (0, 0), (4400, 0), (4400, 3700), (2900, 3700), (2900, 3300), (2700, 3300), (2700, 2900), (1700, 2900),
    (1700, 3300), (1500, 3300), (1500, 3700), (0, 3700),
)  # fmt: skip
ROOMS = {
    "rectangle": RECTANGLE, "L": ELL, "T": TEE, "chimney breast": BREAST, "door bay": BAY, "nib": NIB,
    "hearth": HEARTH,
}  # fmt: skip


def surveyed(ring: Ring, unit: str = "mm", share: int = 1) -> Any:
    """The room that measuring a clockwise ring gives, in a unit of `share` mm."""
    ends = (*ring, ring[0])
    lengths = [abs(x2 - x1) + abs(y2 - y1) for (x1, y1), (x2, y2) in pairwise(ends)]
    ways = [(x2 - x1, y2 - y1) for (x1, y1), (x2, y2) in pairwise(ends)]
    turns = [a * d - b * c for (a, b), (c, d) in pairwise((*ways, ways[0]))]
    walls = tuple(size(f"{length / share:.12g} {unit}", "walls") for length in lengths)
    return run_with(
        "room", walls=walls, corners=tuple(size("90 deg" if turn > 0 else "270 deg") for turn in turns)
    )


def mirrored(ring: Ring) -> Ring:
    """The same room in a mirror, its first wall still the starting wall and run from left to right."""
    wide = max(x for x, _ in ring)
    turned = tuple((wide - x, y) for x, y in reversed(ring))
    return (*turned[-2:], *turned[:-2])


@st.composite
def rings(draw: st.DrawFn, steps: int = 100, most: int = 5) -> Ring:
    """A clockwise ring with level sides that step in and out above and below, on a grid of `steps` mm.

    It begins with the level side that lies furthest up.
    """
    count = draw(st.integers(1, most))
    widths = [draw(st.integers(6, 20)) for _ in range(count)]
    xs = [0]
    for width in widths:
        xs.append(xs[-1] + width)
    tops = [draw(st.integers(0, 12)) for _ in range(count)]
    bottoms = [draw(st.integers(18, 40)) for _ in range(count)]
    upper = [corner for at in range(count) for corner in ((xs[at], tops[at]), (xs[at + 1], tops[at]))]
    lower = [corner for at in range(count) for corner in ((xs[at], bottoms[at]), (xs[at + 1], bottoms[at]))]
    ring = tuple((x * steps, y * steps) for x, y in (*upper, *reversed(lower)))
    whole = without_straights(ring)
    first = min(range(len(whole)), key=lambda at: (whole[at][1], whole[at][0]))
    return (*whole[first:], *whole[:first])


def without_straights(ring: Ring) -> Ring:
    """The corners at which a ring turns."""
    single = [corner for at, corner in enumerate(ring) if corner != ring[at - 1]]
    count = len(single)
    return tuple(
        (float(x), float(y))
        for at, (x, y) in enumerate(single)
        if not (
            single[at - 1][0] == x == single[(at + 1) % count][0]
            or single[at - 1][1] == y == single[(at + 1) % count][1]
        )
    )
