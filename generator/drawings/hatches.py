"""Hatches: each material's pattern as one path, cut exactly to its outline and round every figure.

The patterns are this project's own geometry (the library's hatches change from run to run); the seed is
fixed, so the same drawing gives the same bytes.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING, Any, Literal

from generator.drawings.clipping import Box, Points, bounds, inset
from generator.drawings.pens import HATCH_NEW, HATCH_STANDING, INK, Pen

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Floats = NDArray[np.float64]

Kind = Literal["lines", "dots", "arcs", "streaks"]
Pith = Literal["left", "right"]
_INSET = 0.28
_RINGS = (1.0, 0.8, 1.2, 0.95, 1.1)
_LEAST_HATCH = 0.15
_SEED = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Hatch:
    """A material's pattern: its kind, spacing and slopes in paper mm and degrees, its pen, dot shift and
    tint.
    """

    kind: Kind
    spacing: float
    pen: Pen
    slopes: tuple[float, ...] = ()
    shift: float = 0.0
    pith: Pith = "left"

    def __post_init__(self) -> None:
        if self.pen.width < _LEAST_HATCH:
            raise ValueError(f"a hatch of {self.pen.width} mm does not survive a photocopy")

    def spread(self, factor: float) -> Hatch:
        """Return the same pattern with its spacing enlarged, for a detail."""
        return replace(self, spacing=self.spacing * factor)

    def from_the(self, pith: Pith) -> Hatch:
        """Return the same end grain with its pith on the given side."""
        return replace(self, pith=pith)


def _line(colour: str) -> Pen:
    return Pen(width=_LEAST_HATCH, colour=colour)


def _dot(diameter: float, colour: str) -> Pen:
    return Pen(width=diameter, colour=colour, cap="round")


BLOCKWORK = Hatch(kind="lines", spacing=3.0, slopes=(-45.0,), pen=_line(HATCH_STANDING))
PLASTER = Hatch(kind="dots", spacing=2.1, shift=0.8, pen=_dot(0.32, HATCH_STANDING))
PLASTER_FIELD = Hatch(kind="dots", spacing=2.8, shift=0.9, pen=_dot(0.32, HATCH_STANDING))
MDF = Hatch(kind="dots", spacing=0.95, shift=0.13, pen=_dot(0.22, HATCH_NEW))
END_GRAIN_NEW = Hatch(kind="arcs", spacing=1.35, pen=_line(HATCH_NEW))
END_GRAIN_STANDING = Hatch(kind="arcs", spacing=1.9, pen=_line(HATCH_STANDING))
LONG_GRAIN = Hatch(kind="streaks", spacing=0.95, pen=_line(HATCH_STANDING))
FRAME_SIDE = Hatch(kind="lines", spacing=1.1, slopes=(-45.0, 45.0), pen=_line(INK))
FLOOR = Hatch(kind="lines", spacing=1.6, slopes=(-45.0,), pen=_line(HATCH_STANDING))


def hatch_path(hatch: Hatch, polygon: Points, holes: Sequence[Box]) -> Any:
    """Return a library path of the pattern inside `polygon` and outside every hole, or None if there is none.

    `polygon` and `holes` are in paper mm. Dots are shifted by a fixed seed.
    """
    import numpy as np
    from matplotlib.path import Path

    whole = bounds(polygon)
    x, y = whole.left, whole.top
    near = tuple(_moved(hole, -x, -y) for hole in holes if whole.near(hole, 0))
    home = tuple((round(px - x, 4), round(py - y, 4)) for px, py in polygon)
    path = _hatched(hatch, home, near) if near else _remembered(hatch, home)
    return None if path is None else Path(np.round(path.vertices + np.array((x, y)), 2), path.codes)


def _moved(box: Box, x: float, y: float) -> Box:
    return Box(box.left + x, box.top + y, box.right + x, box.bottom + y)


def _hatched(hatch: Hatch, polygon: Points, holes: tuple[Box, ...]) -> Any:
    import numpy as np

    ring = inset(polygon, _INSET)
    return _KINDS[hatch.kind](hatch, _Field(ring, holes, np)) if ring else None


@lru_cache(maxsize=256)
def _remembered(hatch: Hatch, polygon: Points) -> Any:
    """Hatch an area without holes once: swatches come back on every sheet."""
    return _hatched(hatch, polygon, ())


class _Field:
    """The area to be hatched: its edges and its inside, as arrays."""

    __slots__ = ("bounds", "edges", "holes", "np", "outline", "ring")

    def __init__(self, ring: Points, holes: Sequence[Box], np: Any) -> None:
        from matplotlib.path import Path

        self.np = np
        self.ring = ring
        self.holes = holes
        self.bounds = bounds(ring)
        closed = np.array((*ring, ring[0]))
        self.outline = Path(closed)
        self.edges = np.vstack([np.hstack([closed[:-1], closed[1:]]), *map(self._box_edges, holes)])

    def _box_edges(self, hole: Box) -> Any:
        corners = self.np.array((*hole.corners, hole.corners[0]))
        return self.np.hstack([corners[:-1], corners[1:]])

    def keeps(self, xy: Any) -> Any:
        """Return which of the points (n, 2) lie inside the outline and outside the holes."""
        kept = self.outline.contains_points(xy)
        for hole in self.holes:
            kept &= ~(
                (xy[:, 0] > hole.left)
                & (xy[:, 0] < hole.right)
                & (xy[:, 1] > hole.top)
                & (xy[:, 1] < hole.bottom)
            )
        return kept


def _pieces(np: Any, starts: Any, ends: Any) -> Any:
    """Make one path of separate straight pieces from two arrays (n, 2)."""
    from matplotlib.path import Path

    if not len(starts):
        return None
    vertices = np.empty((2 * len(starts), 2))
    vertices[0::2], vertices[1::2] = starts, ends
    codes = np.tile(np.array([Path.MOVETO, Path.LINETO], dtype=Path.code_type), len(starts))
    return Path(vertices, codes)


def _line_pieces(field: _Field, spacing: float, slope: float) -> tuple[Any, Any]:
    np = field.np
    angle = math.radians(slope)
    along, across = (
        np.array([math.cos(angle), math.sin(angle)]),
        np.array([-math.sin(angle), math.cos(angle)]),
    )
    t1, t2 = field.edges[:, :2] @ along, field.edges[:, 2:] @ along
    o1, o2 = field.edges[:, :2] @ across, field.edges[:, 2:] @ across
    low, high = min(o1.min(), o2.min()), max(o1.max(), o2.max())
    offsets = np.arange(math.ceil(low / spacing), math.floor(high / spacing) + 1)[:, None] * spacing
    hit = (np.minimum(o1, o2) <= offsets) & (offsets < np.maximum(o1, o2))
    with np.errstate(divide="ignore", invalid="ignore"):
        t = np.where(hit, t1 + (offsets - o1) / (o2 - o1) * (t2 - t1), np.inf)
    t.sort(axis=1)
    rows, columns = np.nonzero(np.isfinite(t[:, 1:]))
    begin, end, off = t[rows, columns], t[rows, columns + 1], offsets[rows, 0]
    middles = ((begin + end) / 2)[:, None] * along + off[:, None] * across
    kept = field.keeps(middles) & (end - begin > 0.25)
    origin = off[kept][:, None] * across
    return begin[kept][:, None] * along + origin, end[kept][:, None] * along + origin


def _lines(hatch: Hatch, field: _Field) -> Any:
    np = field.np
    found = [_line_pieces(field, hatch.spacing, slope) for slope in hatch.slopes]
    return _pieces(np, np.vstack([s for s, _ in found]), np.vstack([e for _, e in found]))


def _dots(hatch: Hatch, field: _Field) -> Any:
    np = field.np
    box, step = field.bounds, hatch.spacing
    rise = step * math.sqrt(3) / 2
    columns = math.ceil((box.right - box.left) / step) + 1
    rows = math.ceil((box.bottom - box.top) / rise) + 1
    lattice = np.empty((rows, columns, 2))
    lattice[..., 0] = box.left + np.arange(columns) * step + (np.arange(rows) % 2)[:, None] * step / 2
    lattice[..., 1] = box.top + (np.arange(rows) * rise)[:, None]
    moved = lattice.reshape(-1, 2) + np.random.default_rng(_SEED).uniform(
        -hatch.shift, hatch.shift, (rows * columns, 2)
    )
    kept = moved[field.keeps(moved)]
    # A hair's length and not nothing: some readers of PDF leave out a line without length.
    return _pieces(np, kept, kept + np.array([0.01, 0.0]))


def _pith(hatch: Hatch, field: _Field) -> tuple[float, float]:
    box = field.bounds
    wide, high = box.right - box.left, box.bottom - box.top
    reach = max(wide, high)
    side = box.left - 0.12 * wide if hatch.pith == "left" else box.right + 0.12 * wide
    return side, box.bottom + 0.28 * reach


def _arcs(hatch: Hatch, field: _Field) -> Any:
    np = field.np
    cx, cy = _pith(hatch, field)
    middle = math.atan2(field.bounds.centre[1] - cy, field.bounds.centre[0] - cx)
    radii = _ring_radii(hatch.spacing, field, cx, cy)
    angles = _ring_crossings(field, radii, cx, cy, middle)
    rows, columns = np.nonzero(np.isfinite(angles[:, 1:]))
    begin, end, radius = angles[rows, columns], angles[rows, columns + 1], radii[rows]
    half = (begin + end) / 2 + middle
    kept = field.keeps(np.stack([cx + radius * np.cos(half), cy + radius * np.sin(half)], axis=1))
    kept &= (end - begin) * radius > 0.3
    return _arc_path(np, (cx, cy), radius[kept], begin[kept] + middle, end[kept] + middle)


def _ring_radii(spacing: float, field: _Field, cx: float, cy: float) -> Any:
    np = field.np
    reach = max(math.hypot(x - cx, y - cy) for x, y in field.bounds.corners)
    steps = np.tile(np.array(_RINGS) * spacing, math.ceil(reach / spacing / len(_RINGS)) + 1)
    radii = np.cumsum(steps)
    nearest = math.hypot(
        max(field.bounds.left - cx, 0, cx - field.bounds.right), max(cy - field.bounds.bottom, 0)
    )
    return radii[(radii > nearest) & (radii < reach)]


def _ring_crossings(field: _Field, radii: Any, cx: float, cy: float, middle: float) -> Any:
    """Return, a row a ring, the sorted angles from `middle` at which it crosses an edge; infinite if none."""
    np = field.np
    px, py = field.edges[:, 0] - cx, field.edges[:, 1] - cy
    dx, dy = field.edges[:, 2] - cx - px, field.edges[:, 3] - cy - py
    a, b = dx * dx + dy * dy, px * dx + py * dy
    root = b * b - a * (px * px + py * py - radii[:, None] ** 2)
    with np.errstate(invalid="ignore", divide="ignore"):
        spread = np.sqrt(root)
        share = np.concatenate([(-b - spread) / a, (-b + spread) / a], axis=1)
    hit = (share >= 0) & (share < 1)
    x = np.tile(px, 2) + share * np.tile(dx, 2)
    y = np.tile(py, 2) + share * np.tile(dy, 2)
    with np.errstate(invalid="ignore"):
        angles = np.where(hit, np.arctan2(y, x) - middle, np.inf)
        angles = np.where(hit, (angles + math.pi) % (2 * math.pi) - math.pi, np.inf)
    angles.sort(axis=1)
    return angles


def _arc_path(np: Any, centre: tuple[float, float], radius: Any, begin: Any, end: Any) -> Any:
    """Make one path of arcs, each of equal curves whose control point lies where the end tangents meet."""
    from matplotlib.path import Path

    if not len(radius):
        return None
    count = max(1, math.ceil(float((end - begin).max()) / 0.5))
    at = np.linspace(begin, end, count + 1, axis=1)
    mid, half = (at[:, :-1] + at[:, 1:]) / 2, (at[:, 1:] - at[:, :-1]) / 2
    vertices = np.empty((len(radius), 2 * count + 1, 2))
    far = radius[:, None] / np.cos(half)
    for axis, turn in enumerate((np.cos, np.sin)):
        vertices[:, 0::2, axis] = centre[axis] + radius[:, None] * turn(at)
        vertices[:, 1::2, axis] = centre[axis] + far * turn(mid)
    codes = np.full((len(radius), 2 * count + 1), Path.CURVE3, dtype=Path.code_type)
    codes[:, 0] = Path.MOVETO
    return Path(vertices.reshape(-1, 2), codes.reshape(-1))


def _streaks(hatch: Hatch, field: _Field) -> Any:
    """Long grain: along the longer side, broken lines of uneven length, each cut by the outline and holes."""
    np = field.np
    box = field.bounds
    upright = box.bottom - box.top > box.right - box.left
    begin, end = _line_pieces(field, hatch.spacing, 90.0 if upright else 0.0)
    random = np.random.default_rng(_SEED)
    starts: list[Any] = []
    ends: list[Any] = []
    for a, b in zip(begin, end, strict=True):
        length = float(np.hypot(*(b - a)))
        at = float(random.uniform(-14, 3))
        while at < length:
            run = float(random.uniform(14, 34))
            first, last = max(0.0, at), min(length, at + run)
            if last - first > 0.5:
                starts.append(a + (b - a) * first / length)
                ends.append(a + (b - a) * last / length)
            at += run + float(random.uniform(2, 5))
    return _pieces(np, np.array(starts).reshape(-1, 2), np.array(ends).reshape(-1, 2))


_KINDS = {"lines": _lines, "dots": _dots, "arcs": _arcs, "streaks": _streaks}
