"""The rows of a floor: how wide the first is ripped, so that no wall meets a sliver, and their strips."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal

from generator.quantities.floor_outline import FloorOutline, between
from generator.quantities.functions import round_down
from generator.quantities.rectilinear import Patch, patches, sides
from generator.quantities.results import InputRefused
from generator.quantities.worked import Worked, applied, literal, millimetres, plain
from generator.units import LENGTH, Value

MOST_ROWS = 150
_NEAR = 1e-6
_LETTERS = "abcdefghijklmnopqrstuvwxyz"


@dataclass(frozen=True, slots=True, kw_only=True)
class Widths:
    """The width of each row from the starting wall, and the narrowest strip they leave along any wall.

    `shared` says that first and last are both ripped alike, `shifted` that another width of row 1 was chosen.
    """

    first: Worked
    last: Worked
    rows: int
    cover: Worked
    narrowest: Worked
    shared: bool = False
    shifted: bool = False

    def of(self, row: int) -> Worked:
        """The width of a row, counted from nought."""
        if row == 0:
            return self.first
        return self.last if row == self.rows - 1 else self.cover

    def top(self, row: int) -> Worked:
        """How far a row begins from the floor's edge at the first."""
        if row == 0:
            return millimetres(0)
        return self.first + (row - 1) * self.cover if row > 1 else self.first


@dataclass(frozen=True, slots=True, kw_only=True)
class Strip:
    """A row from wall to wall: the row counted from nought, its mark, place, length, width and shape."""

    row: int
    mark: str
    start: Worked
    top: Worked
    length: Worked
    width: Worked
    patch: Patch

    def off(self, x: float, y: float) -> tuple[float, float]:
        """How far a place lies off the strip, across it and then along it."""
        hull = self.patch.hull
        return (
            max(hull.top - y, 0.0, y - hull.bottom + _NEAR),
            max(hull.left - x, 0.0, x - hull.right),
        )


def row_widths(outline: FloorOutline, cover: Worked, least: Worked) -> Widths:
    """Whole rows with a last one ripped; where any strip would be under `least`, row 1 is ripped as well.

    First and last share the loss if that serves; otherwise row 1 takes the width that leaves the widest
    narrowest strip. InputRefused for more rows than can be drawn.
    """
    across = outline.across
    whole = round_down(across / cover, plain(1))
    left = across - whole * cover
    full = int(whole.magnitude)
    if full > MOST_ROWS:
        raise InputRefused("too-many-marks", "cover_width", most=str(MOST_ROWS))
    if full == 0:
        return Widths(first=across, last=across, rows=1, cover=cover, narrowest=across)
    edges = _edges(outline)
    exact = left.number < _NEAR
    plainly = Widths(
        first=cover,
        last=cover if exact else left,
        rows=full if exact else full + 1,
        cover=cover,
        narrowest=_millimetres(_narrowest(edges, cover.number, cover.number)),
    )
    if plainly.narrowest.number >= least.number - _NEAR:
        return plainly
    return _shared(outline, plainly, left, edges, least)


def _shared(outline: FloorOutline, plainly: Widths, left: Worked, edges: _Edges, least: Worked) -> Widths:
    cover = plainly.cover
    shared = (cover + left) / 2
    narrow = _narrowest(edges, shared.number, cover.number)
    only_ends = len(outline.ring) == 4
    if only_ends or narrow >= least.number - _NEAR:
        return Widths(
            first=shared,
            last=shared,
            rows=plainly.rows,
            cover=cover,
            narrowest=_millimetres(narrow),
            shared=True,
        )
    return _shifted(outline, cover, edges)


def _shifted(outline: FloorOutline, cover: Worked, edges: _Edges) -> Widths:
    across = outline.across
    chosen = _best(edges, cover.number)
    narrow = _millimetres(_narrowest(edges, chosen, cover.number))
    # Once chosen row 1 is ripped to that width; what the room is out by falls to the last row.
    value = Value(Decimal(str(chosen)), LENGTH)
    first = applied("row_chosen", (across, cover), value, lambda _: chosen)
    rows = 1 + math.ceil((across.number - chosen) / cover.number - _NEAR)
    if rows == 1:
        return Widths(first=across, last=across, rows=1, cover=cover, narrowest=narrow, shifted=True)
    last = across - first - (rows - 2) * cover if rows > 2 else across - first
    return Widths(first=first, last=last, rows=rows, cover=cover, narrowest=narrow, shifted=True)


def _millimetres(number: float) -> Worked:
    return literal(Value(Decimal(str(round(number, 3))), LENGTH))


@dataclass(frozen=True, slots=True)
class _Edges:
    """The heights at which the floor begins going down, and those at which it ends."""

    tops: tuple[float, ...]
    bottoms: tuple[float, ...]


def _edges(outline: FloorOutline) -> _Edges:
    level = [(y1, x2 > x1) for (x1, y1), (x2, y2) in sides(outline.ring) if y1 == y2]
    return _Edges(
        tuple(sorted({y for y, begins in level if begins})),
        tuple(sorted({y for y, begins in level if not begins})),
    )


def _narrowest(edges: _Edges, first: float, cover: float) -> float:
    """The narrowest strip along any wall, row 1 being so wide."""
    return min((*_below(edges.tops, first, cover), *_above(edges.bottoms, first, cover)))


def _below(tops: Sequence[float], first: float, cover: float) -> Iterator[float]:
    for at in tops:
        yield first - at if at < first - _NEAR else _rest(first - at, cover)


def _above(bottoms: Sequence[float], first: float, cover: float) -> Iterator[float]:
    for at in bottoms:
        yield at if at <= first + _NEAR else _rest(at - first, cover)


def _rest(length: float, cover: float) -> float:
    """What is left of a length after whole boards; a whole board where nothing is."""
    rest = length % cover
    return cover if min(rest, cover - rest) < _NEAR else rest


def _best(edges: _Edges, cover: float) -> float:
    """The width of row 1 with the widest narrowest strip, a round one and a wide one before another.

    The narrowest strip rises and falls evenly with that width, so that it is greatest where a row's edge
    falls on a wall, or where a strip below one wall is as wide as one above another.
    """
    falls = [at % cover for at in (*edges.tops, *edges.bottoms)]
    halves = [((top + bottom) / 2) % (cover / 2) for top in edges.tops for bottom in edges.bottoms]
    met = [*falls, *halves, *(half + cover / 2 for half in halves)]
    offered = {width if width > _NEAR else cover for at in met for width in (round(at, 3), float(round(at)))}
    return max(
        (width for width in offered if width <= cover),
        key=lambda width: (round(_narrowest(edges, width, cover), 1), width == round(width), width),
    )


def strips(outline: FloorOutline, widths: Widths) -> tuple[Strip, ...]:
    """Every row from wall to wall, row by row from the starting wall and from left to right."""
    return tuple(strip for row in range(widths.rows) for strip in _of_row(outline, widths, row))


def _of_row(outline: FloorOutline, widths: Widths, row: int) -> Iterator[Strip]:
    top = widths.top(row).number
    bottom = outline.across.number if row == widths.rows - 1 else widths.top(row + 1).number
    found = patches(outline.ring, top, bottom)
    for at, patch in enumerate(found):
        letter = _LETTERS[at % len(_LETTERS)] if len(found) > 1 else ""
        yield _strip(outline, widths, row, f"{row + 1}{letter}", patch, (top, bottom))


def _strip(
    outline: FloorOutline, widths: Widths, row: int, mark: str, patch: Patch, within: tuple[float, float]
) -> Strip:
    hull = patch.hull
    start = outline.x(hull.left)
    high, low = hull.top > within[0] + _NEAR, hull.bottom < within[1] - _NEAR
    top = outline.y(hull.top) if high else widths.top(row)
    width = widths.of(row)
    if high or low:
        end = outline.y(hull.bottom) if low else widths.top(row) + width
        width = between(top, end)
    return Strip(
        row=row,
        mark=mark,
        start=start,
        top=top,
        length=between(start, outline.x(hull.right)),
        width=width,
        patch=patch,
    )
