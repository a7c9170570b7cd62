"""Moulding profiles as sections of lines and arcs: one path gives the drawing, the area and the girth."""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass

Point = tuple[float, float]
Points = tuple[Point, ...]
_SAGITTA = 0.01
_COARSEST = 0.01


@dataclass(frozen=True, slots=True, kw_only=True)
class Turn:
    """One stretch of a profile's face: to `end`, straight, or by an arc about `centre` of signed `sweep`
    radians.
    """

    end: Point
    centre: Point | None = None
    sweep: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Profile:
    """A moulding's section in mm: u from the inner edge (0) to the outer (width), v from the back (0) to
    the face.

    The path starts at the inner back corner, runs up and over the face, and closes along the back.
    """

    width: float
    thickness: float
    turns: tuple[Turn, ...]

    def points(self) -> Points:
        """Return the closed outline, flattened to 0.01 mm, without repeating its first point."""
        found: list[Point] = [(0.0, 0.0)]
        for turn in self.turns:
            found.extend(_flattened(found[-1], turn))
        along_the_back = self.turns[0].end[1] == 0.0
        return tuple(found[1:] if along_the_back else found)

    def area(self) -> float:
        """Return the section's area in mm2, exactly (shoelace, and a segment for each arc)."""
        ends = [(0.0, 0.0), *(turn.end for turn in self.turns)]
        ring = zip(ends, [*ends[1:], ends[0]], strict=True)
        chords = sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in ring) / 2
        bows = sum(_segment(start, turn) for start, turn in zip(ends, self.turns, strict=False))
        return abs(chords + bows)

    def girth(self) -> float:
        """Return the length in mm round everything but the back, for paint."""
        ends = [(0.0, 0.0), *(turn.end for turn in self.turns)]
        return sum(_length(start, turn) for start, turn in zip(ends, self.turns, strict=False))

    def arrises(self) -> tuple[float, ...]:
        """Return the u of each line a face view shows, from the inner edge, both edges left out."""
        found = {round(turn.end[0], 3) for turn in self.turns}
        return tuple(sorted(u for u in found if 0.4 < u < self.width - 0.4))

    def face_at(self, u: float) -> float:
        """Return the height of the face at u, in mm from the back."""
        points = self.points()
        found = [
            y1 + (y2 - y1) * (u - x1) / (x2 - x1)
            for (x1, y1), (x2, y2) in itertools.pairwise(points)
            if min(x1, x2) <= u <= max(x1, x2) and x1 != x2
        ]
        return max(found)

    def outer_thickness(self) -> float:
        """Return the thickness just inside the outer edge, in mm."""
        return self.face_at(self.width - 1.5) if self.width > 3 else self.thickness


def _flattened(start: Point, turn: Turn) -> Points:
    if turn.centre is None:
        return (turn.end,)
    radius = math.dist(start, turn.centre)
    begin = math.atan2(start[1] - turn.centre[1], start[0] - turn.centre[0])
    step = 2 * math.acos(max(-1.0, 1 - min(_SAGITTA / radius, 1.0))) if radius > 0 else math.pi
    count = max(2, math.ceil(abs(turn.sweep) / max(step, _COARSEST)))
    angles = (begin + turn.sweep * i / count for i in range(1, count))
    x, y = turn.centre
    return (*((x + radius * math.cos(a), y + radius * math.sin(a)) for a in angles), turn.end)


def _segment(start: Point, turn: Turn) -> float:
    if turn.centre is None:
        return 0.0
    radius = math.dist(start, turn.centre)
    return radius**2 * (turn.sweep - math.sin(turn.sweep)) / 2


def _length(start: Point, turn: Turn) -> float:
    if turn.centre is None:
        return math.dist(start, turn.end)
    return math.dist(start, turn.centre) * abs(turn.sweep)


_QUARTER = math.pi / 2
Sizes = Mapping[str, float]


def _close(width: float, thickness: float, arris: float = 0.0) -> tuple[Turn, ...]:
    """Return the way over the outer arris, rounded to `arris`, and down the outer edge."""
    if arris <= 0:
        return (Turn(end=(width, thickness)), Turn(end=(width, 0.0)))
    centre = (width - arris, thickness - arris)
    return (
        Turn(end=(width - arris, thickness)),
        Turn(end=(width, thickness - arris), centre=centre, sweep=-_QUARTER),
        Turn(end=(width, 0.0)),
    )


def _square(width: float, thickness: float, sizes: Sizes) -> tuple[Turn, ...]:
    return (Turn(end=(0.0, thickness)), *_close(width, thickness))


def _pencil_round(width: float, thickness: float, sizes: Sizes) -> tuple[Turn, ...]:
    r = sizes.get("radius", min(6.0, thickness / 3))
    rounded = Turn(end=(r, thickness), centre=(r, thickness - r), sweep=-_QUARTER)
    return (Turn(end=(0.0, thickness - r)), rounded, *_close(width, thickness, sizes.get("arris", 0.0)))


def _chamfer(width: float, thickness: float, sizes: Sizes) -> tuple[Turn, ...]:
    deep = sizes.get("depth", min(5.0, thickness / 3))
    broad = sizes.get("breadth", min(8.0, width / 6))
    return (
        Turn(end=(0.0, thickness - deep)),
        Turn(end=(broad, thickness)),
        *_close(width, thickness, sizes.get("arris", 0.0)),
    )


def _ovolo(width: float, thickness: float, sizes: Sizes) -> tuple[Turn, ...]:
    r = sizes.get("radius", min(8.0, thickness * 0.45))
    deep, broad = sizes.get("fillet_depth", 2.0), sizes.get("fillet_breadth", 3.0)
    top = thickness - deep
    return (
        Turn(end=(0.0, top - r)),
        Turn(end=(r, top), centre=(r, top - r), sweep=-_QUARTER),
        Turn(end=(r + broad, top)),
        Turn(end=(r + broad, thickness)),
        *_close(width, thickness, sizes.get("arris", 0.0)),
    )


def _ogee(width: float, thickness: float, sizes: Sizes) -> tuple[Turn, ...]:
    deep = sizes.get("depth", min(10.0, thickness * 0.55))
    broad = sizes.get("breadth", min(24.0, width * 0.35))
    half = math.hypot(deep, broad) / 2
    lean = math.atan2(deep, broad)
    radius = half / 2 / math.sin(lean)
    low, middle, high = (0.0, thickness - deep), (broad / 2, thickness - deep / 2), (broad, thickness)
    return (
        Turn(end=low),
        Turn(end=middle, centre=(low[0], low[1] + radius), sweep=2 * lean),
        Turn(end=high, centre=(high[0], high[1] - radius), sweep=-2 * lean),
        *_close(width, thickness, sizes.get("arris", 0.0)),
    )


def _torus(width: float, thickness: float, sizes: Sizes) -> tuple[Turn, ...]:
    r = sizes.get("radius", min(7.0, thickness * 0.39, width * 0.12))
    inner, outer = sizes.get("inner_fillet", 3.0), sizes.get("outer_fillet", 2.0)
    neck = thickness - r
    start = (Turn(end=(0.0, neck)), Turn(end=(inner, neck))) if inner > 0 else (Turn(end=(0.0, neck)),)
    return (
        *start,
        Turn(end=(inner + 2 * r, neck), centre=(inner + r, neck), sweep=-math.pi),
        Turn(end=(inner + 2 * r + outer, neck)),
        Turn(end=(inner + 2 * r + outer, thickness)),
        *_close(width, thickness, sizes.get("arris", 1.0)),
    )


def _bullnose(width: float, thickness: float, sizes: Sizes) -> tuple[Turn, ...]:
    r = thickness / 2
    return (
        Turn(end=(r, 0.0)),
        Turn(end=(r, thickness), centre=(r, r), sweep=-math.pi),
        *_close(width, thickness, sizes.get("arris", 0.0)),
    )


def _cove(width: float, thickness: float, sizes: Sizes) -> tuple[Turn, ...]:
    """A hollow between two fillets of the full thickness, so that both edges bear alike."""
    deep = sizes.get("depth", min(10.0, thickness * 0.45))
    flat = sizes.get("fillet_breadth", width * 0.08)
    half = width / 2 - flat
    radius = (half**2 + deep**2) / 2 / deep
    centre, sweep = (width / 2, thickness - deep + radius), 2 * math.atan2(half, radius - deep)
    return (
        Turn(end=(0.0, thickness)),
        Turn(end=(flat, thickness)),
        Turn(end=(width - flat, thickness), centre=centre, sweep=sweep),
        Turn(end=(width, thickness)),
        Turn(end=(width, 0.0)),
    )


PROFILES: Mapping[str, Callable[[float, float, Sizes], tuple[Turn, ...]]] = {
    "square": _square,
    "pencil round": _pencil_round,
    "chamfer": _chamfer,
    "ovolo": _ovolo,
    "ogee": _ogee,
    "torus": _torus,
    "bullnose": _bullnose,
    "cove": _cove,
}


class UnknownProfile(ValueError):
    """No moulding profile has that name."""


def profile(name: str, width: float, thickness: float, sizes: Sizes | None = None) -> Profile:
    """Return a named moulding's section for a width and thickness in mm.

    `sizes` are the moulding's own in mm (radius, fillets, depth, breadth, arris); one left out takes a usual
    proportion (common practice, no source). Raises UnknownProfile.
    """
    if name not in PROFILES:
        raise UnknownProfile(f"no moulding profile {name!r}; there are {', '.join(PROFILES)}")
    return Profile(width=width, thickness=thickness, turns=PROFILES[name](width, thickness, sizes or {}))
