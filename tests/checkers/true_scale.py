"""Lengths measured in a PDF's own geometry, as a steel rule would measure them on the printed sheet.

Millimetres, from the top left corner of the page's media box, y downwards. The content stream is followed
with its matrices through form XObjects and tiling patterns. Clipping and colour are not followed: a path that
is clipped away is still listed. Operators and matrices after ISO 32000-1, tables 57, 59, 60 and section 8.3.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

import pikepdf

MM = 25.4 / 72
CHORDS = 16
MOST_TILES = 400
TOUCHING = 1e-3  # of a tile: neighbours that share an edge with the painted area do not show in it

Point = tuple[float, float]
Matrix = tuple[float, float, float, float, float, float]
UNIT: Matrix = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Segment:
    """One straight piece of a stroked line, with the line's width, all in mm; a curve comes as chords."""

    x0: float
    y0: float
    x1: float
    y1: float
    width: float

    @property
    def length(self) -> float:
        """Give the distance between the two ends, mm."""
        return math.hypot(self.x1 - self.x0, self.y1 - self.y0)

    def level(self, within: float = 0.01) -> bool:
        """Tell whether the segment runs across the page, its ends at one height within so many mm."""
        return abs(self.y1 - self.y0) <= within

    def upright(self, within: float = 0.01) -> bool:
        """Tell whether the segment runs up and down the page, one end above the other within so many mm."""
        return abs(self.x1 - self.x0) <= within


@dataclass(frozen=True, slots=True, kw_only=True)
class Outline:
    """One painted subpath: its corners in mm, whether it closes, and how it is painted.

    `width` is the stroke's, mm, and None where the path is only filled.
    """

    points: tuple[Point, ...]
    closed: bool
    filled: bool
    width: float | None

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Give left, top, right and bottom of the path's centre line, mm."""
        across, down = [x for x, _ in self.points], [y for _, y in self.points]
        return min(across), min(down), max(across), max(down)

    @property
    def size(self) -> tuple[float, float]:
        """Give width and height of the box, mm."""
        left, top, right, bottom = self.box
        return right - left, bottom - top


def strokes(pdf: Path, page: int = 1) -> tuple[Segment, ...]:
    """List each straight piece of each stroked line on a page (counted from 1), in the order of painting."""
    return strokes_of(outlines(pdf, page))


def strokes_of(painted: tuple[Outline, ...]) -> tuple[Segment, ...]:
    """List each straight piece of the stroked ones among painted subpaths, in their order."""
    stroked = ((outline, outline.width) for outline in painted)
    return tuple(
        piece for outline, width in stroked if width is not None for piece in _pieces(outline, width)
    )


def _pieces(outline: Outline, width: float) -> Iterator[Segment]:
    ends = outline.points[1:] + (outline.points[:1] if outline.closed else ())
    for (x0, y0), (x1, y1) in zip(outline.points, ends, strict=False):
        if (x0, y0) != (x1, y1):
            yield Segment(x0=x0, y0=y0, x1=x1, y1=y1, width=width)


def outlines(pdf: Path, page: int = 1) -> tuple[Outline, ...]:
    """List each painted subpath on a page (counted from 1), filled, stroked or both, in order of painting.

    Errors: ValueError for a turned page, forms nested past 20, or a pattern of more than MOST_TILES tiles.
    """
    with pikepdf.open(pdf) as opened:
        return _painted(opened.pages[page - 1])


def _painted(page: pikepdf.Page) -> tuple[Outline, ...]:
    left, top = float(page.mediabox[0]), float(page.mediabox[3])
    if int(page.obj.get("/Rotate", 0)) % 360:
        raise ValueError("a turned page is not measured")
    unit = MM * float(page.obj.get("/UserUnit", 1))
    to_paper: Matrix = (unit, 0, 0, -unit, -left * unit, top * unit)
    painter = _Painter(resources=page.resources, state=_State(matrix=to_paper), base=to_paper)
    painter.run(page)
    return tuple(painter.painted)


@dataclass(frozen=True, slots=True, kw_only=True)
class _State:
    matrix: Matrix = UNIT
    width: float = 1.0
    pattern: str | None = None


@dataclass(slots=True, kw_only=True)
class _Painter:
    """Follows one content stream. Mutable because the stream itself is a list of changes of state."""

    resources: Any
    state: _State
    base: Matrix
    depth: int = 0
    saved: list[_State] = field(default_factory=list)
    path: list[tuple[list[Point], bool]] = field(default_factory=list)
    painted: list[Outline] = field(default_factory=list)

    def run(self, stream: Any) -> None:
        for instruction in pikepdf.parse_content_stream(stream):
            act = _ACTS.get(str(instruction.operator))
            if act is not None:
                act(self, *instruction.operands)

    def save(self) -> None:
        self.saved.append(self.state)

    def restore(self) -> None:
        self.state = self.saved.pop()

    def concatenate(self, *matrix: Any) -> None:
        self.state = replace(self.state, matrix=_times(_matrix(matrix), self.state.matrix))

    def line_width(self, width: Any) -> None:
        self.state = replace(self.state, width=float(width))

    def graphics_state(self, name: Any) -> None:
        entry = self.resources.ExtGState[str(name)]
        if "/LW" in entry:
            self.line_width(entry.LW)

    def colour(self, *values: Any) -> None:
        name = values[-1] if values and isinstance(values[-1], pikepdf.Name) else None
        self.state = replace(self.state, pattern=None if name is None else str(name))

    def move(self, x: Any, y: Any) -> None:
        self.path.append(([self._at(x, y)], False))

    def line(self, x: Any, y: Any) -> None:
        self._open().append(self._at(x, y))

    def curve(self, *numbers: Any) -> None:
        points = [self._at(x, y) for x, y in zip(numbers[::2], numbers[1::2], strict=True)]
        self._bend(*points)

    def curve_from_here(self, x2: Any, y2: Any, x3: Any, y3: Any) -> None:
        self._bend(self._open()[-1], self._at(x2, y2), self._at(x3, y3))

    def curve_to_there(self, x1: Any, y1: Any, x3: Any, y3: Any) -> None:
        self._bend(self._at(x1, y1), self._at(x3, y3), self._at(x3, y3))

    def close(self) -> None:
        if self.path:
            self.path[-1] = (self.path[-1][0], True)

    def rectangle(self, x: Any, y: Any, width: Any, height: Any) -> None:
        x0, y0, x1, y1 = float(x), float(y), float(x) + float(width), float(y) + float(height)
        corners = [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]
        self.path.append(([self._at(*corner) for corner in corners], True))

    def drop(self) -> None:
        self.path = []

    def paint(self, *, fill: bool, stroke: bool, close: bool = False) -> None:
        if close:
            self.close()
        width = self.state.width * _scale(self.state.matrix) if stroke else None
        if fill and self.state.pattern is not None:
            self._tile(self.state.pattern)
        self.painted += [
            Outline(points=tuple(points), closed=closed, filled=fill, width=width)
            for points, closed in self.path
            if len(points) > 1
        ]
        self.path = []

    def draw(self, name: Any) -> None:
        form = self.resources.XObject[str(name)]
        if form.Subtype == "/Form":
            self._inside(form, _times(_matrix(form.get("/Matrix", UNIT)), self.state.matrix))

    def _inside(self, stream: Any, matrix: Matrix) -> None:
        if self.depth > 20:
            raise ValueError("forms nested more than 20 deep")
        state = _State(matrix=matrix, width=self.state.width)
        resources = stream.get("/Resources", self.resources)
        inner = _Painter(resources=resources, state=state, base=matrix, depth=self.depth + 1)
        inner.run(stream)
        self.painted += inner.painted

    def _tile(self, name: str) -> None:
        pattern = self.resources.Pattern[name]
        if int(pattern.PatternType) != 1:
            return
        matrix = _times(_matrix(pattern.get("/Matrix", UNIT)), self.base)
        for shift in _shifts(pattern, matrix, [point for points, _ in self.path for point in points]):
            self._inside(pattern, _times((1, 0, 0, 1, *shift), matrix))

    def _open(self) -> list[Point]:
        points, closed = self.path[-1]
        if closed:
            self.path.append(([points[0]], False))
        return self.path[-1][0]

    def _bend(self, first: Point, second: Point, end: Point) -> None:
        points = self._open()
        start = points[-1]
        points += [_bezier(step / CHORDS, start, first, second, end) for step in range(1, CHORDS + 1)]

    def _at(self, x: Any, y: Any) -> Point:
        return _through(self.state.matrix, (float(x), float(y)))


def _shifts(pattern: Any, matrix: Matrix, area: list[Point]) -> Iterator[Point]:
    """Give the steps of a tiling pattern whose cells touch the painted area, in pattern units."""
    back = _inverse(matrix)
    across, down = zip(*(_through(back, point) for point in area), strict=True)
    left, bottom, right, top = (float(edge) for edge in pattern.BBox)
    columns = _steps(min(across), max(across), left, right, abs(float(pattern.XStep)))
    rows = _steps(min(down), max(down), bottom, top, abs(float(pattern.YStep)))
    if len(columns) * len(rows) > MOST_TILES:
        raise ValueError(f"a pattern of {len(columns) * len(rows)} tiles is not followed")
    yield from ((column, row) for column in columns for row in rows)


def _steps(least: float, most: float, start: float, end: float, step: float) -> tuple[float, ...]:
    first, last = (
        math.floor((least - end) / step + TOUCHING) + 1,
        math.ceil((most - start) / step - TOUCHING) - 1,
    )
    return tuple(number * step for number in range(first, last + 1))


def _matrix(numbers: Any) -> Matrix:
    a, b, c, d, e, f = (float(number) for number in numbers)
    return a, b, c, d, e, f


def _times(first: Matrix, then: Matrix) -> Matrix:
    a, b, c, d, e, f = first
    g, h, i, j, k, m = then
    return a * g + b * i, a * h + b * j, c * g + d * i, c * h + d * j, e * g + f * i + k, e * h + f * j + m


def _inverse(matrix: Matrix) -> Matrix:
    a, b, c, d, e, f = matrix
    size = a * d - b * c
    return d / size, -b / size, -c / size, a / size, (c * f - d * e) / size, (b * e - a * f) / size


def _through(matrix: Matrix, point: Point) -> Point:
    a, b, c, d, e, f = matrix
    x, y = point
    return a * x + c * y + e, b * x + d * y + f


def _scale(matrix: Matrix) -> float:
    a, b, c, d, _, _ = matrix
    return math.sqrt(abs(a * d - b * c))


def _bezier(share: float, start: Point, first: Point, second: Point, end: Point) -> Point:
    rest = 1 - share
    weights = (rest**3, 3 * rest**2 * share, 3 * rest * share**2, share**3)
    points = (start, first, second, end)
    across = sum(weight * x for weight, (x, _) in zip(weights, points, strict=True))
    down = sum(weight * y for weight, (_, y) in zip(weights, points, strict=True))
    return across, down


def _painting(*, fill: bool = False, stroke: bool = False, close: bool = False) -> Callable[..., None]:
    return lambda painter: painter.paint(fill=fill, stroke=stroke, close=close)


_ACTS: dict[str, Callable[..., None]] = {
    "q": _Painter.save,
    "Q": _Painter.restore,
    "cm": _Painter.concatenate,
    "w": _Painter.line_width,
    "gs": _Painter.graphics_state,
    "g": _Painter.colour,
    "rg": _Painter.colour,
    "k": _Painter.colour,
    "sc": _Painter.colour,
    "scn": _Painter.colour,
    "m": _Painter.move,
    "l": _Painter.line,
    "c": _Painter.curve,
    "v": _Painter.curve_from_here,
    "y": _Painter.curve_to_there,
    "h": _Painter.close,
    "re": _Painter.rectangle,
    "n": _Painter.drop,
    "S": _painting(stroke=True),
    "s": _painting(stroke=True, close=True),
    "f": _painting(fill=True),
    "F": _painting(fill=True),
    "f*": _painting(fill=True),
    "B": _painting(fill=True, stroke=True),
    "B*": _painting(fill=True, stroke=True),
    "b": _painting(fill=True, stroke=True, close=True),
    "b*": _painting(fill=True, stroke=True, close=True),
    "Do": _Painter.draw,
}
