"""SVG path data written as short as it can be: steps from point to point, in hundredths of a millimetre.

A step is the difference of two rounded places, so that nothing drifts, however long the line.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from itertools import groupby, pairwise
from typing import Any

from generator.drawings.clipping import Points, area

Whole = tuple[int, int]
PARTS = 100
_LEAST_ROUND, _NO_WIDTH = 12, 1e-6
_CURVE = 3
_MOVE = 1


def line_data(lines: Iterable[tuple[Points, bool]]) -> str:
    """Write lines through points in mm, each open or closed, in mm at two decimals; a circle as two arcs."""
    written, at = [], (0, 0)
    for points, closed in lines:
        whole = [_whole(point) for point in points]
        written.append("m" + _joined(map(_decimal, _step(at, whole[0]))))
        drawn = (_circle(points) if closed else "") or _run(whole)
        written.append(drawn + ("z" if closed else ""))
        at = whole[0] if closed else whole[-1]
    return "".join(written)


def _circle(points: Points) -> str:
    """The points as half a circle and back to the first, where they all lie on one; else nothing."""
    if len(points) < _LEAST_ROUND:
        return ""
    middle = (sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points))
    radius = math.dist(middle, points[0])
    if any(abs(math.dist(middle, point) - radius) > _NO_WIDTH for point in points) or not _even(points):
        return ""
    opposite = (2 * middle[0] - points[0][0], 2 * middle[1] - points[0][1])
    across, down = _step(_whole(points[0]), _whole(opposite))
    size = _decimal(round(radius * PARTS))
    arc = f"a{size} {size} 0 1 {int(area(points) > 0)} "
    return "".join(arc + _joined(map(_decimal, way)) for way in ((across, down), (-across, -down)))


def _even(points: Points) -> bool:
    """Whether all steps from point to point are one length, as of a flattened circle."""
    steps = [math.dist(start, end) for start, end in pairwise((*points, points[0]))]
    return max(steps) - min(steps) < _NO_WIDTH


def dot_data(path: Any) -> str:
    """Write hair-short pieces as dots, in hundredths of a mm."""
    import numpy as np

    starts = np.rint(path.vertices[::2] * PARTS).astype(int)
    steps = np.diff(starts, axis=0, prepend=np.array([[0, 0]]))
    # Each dot ends a hundredth to the right of where it began.
    steps[1:, 0] -= 1
    return _closed_up(("m%d %dh1" * len(steps)) % tuple(steps.ravel().tolist()))


def piece_data(path: Any) -> str:
    """Write straight pieces or quadratic curves, in hundredths of a mm."""
    import numpy as np

    places, codes = np.rint(path.vertices * PARTS).astype(int), path.codes
    curved = codes == _CURVE
    # The second point of a curve is told from where the curve began, as the first is.
    ends = curved & (np.cumsum(curved) % 2 == 0)
    before = np.vstack([np.zeros((1, 2), dtype=int), places])
    steps = places - before[np.arange(len(codes)) - ends]
    letters = _letters(codes.tolist(), ends.tolist())
    return _closed_up("".join(f"{letter}%d %d" for letter in letters) % tuple(steps.ravel().tolist()))


_LETTERS = {_MOVE: "m", 2: "l", _CURVE: "q"}


def _letters(codes: Sequence[int], ends: Sequence[bool]) -> Iterator[str]:
    """What stands before each point. A letter holds until another one comes; a move is followed by lines."""
    held = ""
    for code, end in zip(codes, ends, strict=True):
        letter = _LETTERS[code]
        yield " " if end or letter == held else letter
        held = "l" if code == _MOVE else letter


def _closed_up(data: str) -> str:
    return data.replace(" -", "-")


def _whole(point: tuple[float, float]) -> Whole:
    return round(point[0] * PARTS), round(point[1] * PARTS)


def _step(start: Whole, end: Whole) -> Whole:
    return end[0] - start[0], end[1] - start[1]


def _run(points: Sequence[Whole]) -> str:
    """Write the way through points; a letter holds until another one comes."""
    written: list[str] = []
    for letter, steps in groupby(_steps(points), key=lambda step: step[0]):
        written.append(letter + _joined(_decimal(part) for _, parts in steps for part in parts))
    return "".join(written)


def _steps(points: Sequence[Whole]) -> Iterator[tuple[str, tuple[int, ...]]]:
    for start, end in pairwise(points):
        across, down = _step(start, end)
        if across and down:
            yield "l", (across, down)
        elif across or down:
            yield ("v", (down,)) if down else ("h", (across,))


@lru_cache(maxsize=8192)
def _decimal(hundredths: int) -> str:
    """Write hundredths as a decimal without a nought in front or behind."""
    sign, size = ("-" if hundredths < 0 else ""), abs(hundredths)
    whole, part = divmod(size, PARTS)
    if not part:
        return f"{sign}{whole}"
    return f"{sign}{whole or ''}." + f"{part:02}".rstrip("0")


def _joined(numbers: Iterable[str]) -> str:
    """Set numbers beside each other, a space only where two would run into one."""
    return _RUNS_ON.sub(r"\1", _closed_up(" ".join(numbers)))


_RUNS_ON = re.compile(r"(\.\d+) (?=\.)")
