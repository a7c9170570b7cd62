"""Dimensions by ISO 129-1 practice: oblique ticks, figures above the line and read from below or from the
right.

Token values (tick 2.6 long, first line 9 to 10 from the object, figure 0.9 above) are this project's own.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from generator.drawings.clipping import Point, Points, arc, circle
from generator.drawings.lettering import cap, extent
from generator.drawings.pens import BLUE, DIMENSION, PAPER, TICK, Pen
from generator.drawings.sheet import Label, Spot, Stroke, arrow
from generator.drawings.views import View, dimension_layer

Direction = Literal["across", "upright"]
_ABOVE = 0.9
_OVERRUN = 1.4
_HALF_TICK = 0.92


@dataclass(frozen=True, slots=True, kw_only=True)
class _Frame:
    """Turns along-and-below coordinates into paper ones, so that one rule serves both directions."""

    upright: bool

    def to(self, u: float, v: float) -> Point:
        return (v, -u) if self.upright else (u, v)

    def back(self, x: float, y: float) -> Point:
        return (-y, x) if self.upright else (x, y)

    def spot(self, u: float, v: float, strokes: tuple[Stroke, ...] = (), anchor: str = "middle") -> Spot:
        x, y = self.to(u, v)
        return Spot(x=x, y=y, anchor=anchor, upright=self.upright, strokes=strokes)  # type: ignore[arg-type]


def _stroke(*points: Point, pen: Pen = DIMENSION, exempt: bool = False) -> Stroke:
    return Stroke(points=points, pen=pen, layer="dimension", exempt=exempt)


def dimension(
    view: View,
    start: Point,
    end: Point,
    at: float,
    text: str,
    words: str,
    *,
    direction: Direction = "across",
    ends: tuple[bool, bool] = (True, True),
    overrun: float = _OVERRUN,
) -> None:
    """Dimension the distance between two paper points on a line at paper x or y `at`.

    `ends` says whether the figure may go out past the first and the last tick; `words` names the size for the
    notes in case the view has no room for it. Extension lines start 1 mm off the points.
    """
    frame = _Frame(upright=direction == "upright")
    (u1, v1), (u2, v2) = sorted((frame.back(*start), frame.back(*end)))
    if not view.sheet.thumbnail:
        _line_and_ticks(view, frame, (u1, v1), (u2, v2), at, overrun)
    view.sheet.label(
        Label(
            text=text,
            kind="figure",
            colour=BLUE,
            spots=_figure_spots(view, frame, (u1, u2), at, text, ends),
            zone=view.zone,
            words=words,
        )
    )


def _line_and_ticks(view: View, frame: _Frame, one: Point, two: Point, at: float, overrun: float) -> None:
    line = (frame.to(one[0] - overrun, at), frame.to(two[0] + overrun, at))
    dimension_layer(view, line, DIMENSION)
    for u, v in (one, two):
        _extension(view, frame, u, v, at)
        tick(view, frame.to(u, at))


def _extension(view: View, frame: _Frame, u: float, v: float, at: float) -> None:
    way = math.copysign(1.0, at - v)
    if abs(at - v) > 1.5:
        dimension_layer(view, (frame.to(u, v + way), frame.to(u, at + 1.6 * way)), DIMENSION)


def tick(view: View, at: Point) -> None:
    """Lay one oblique tick across a dimension line's end."""
    x, y = at
    half = _HALF_TICK
    if view.disc is not None and math.hypot(x - view.disc.x, y - view.disc.y) > view.disc.radius - half:
        return
    view.sheet.stroke(_stroke((x - half, y + half), (x + half, y - half), pen=TICK, exempt=True))


def _figure_spots(
    view: View, frame: _Frame, span: tuple[float, float], at: float, text: str, ends: tuple[bool, bool]
) -> Iterator[Spot]:
    width = extent(text, view.sheet.em("figure"))[0]
    u1, u2 = span
    slack = (u2 - u1 - width - 1.6) / 2
    if slack >= 0:
        for share in (0.0, 0.35, -0.35, 0.7, -0.7, 1.0, -1.0):
            yield frame.spot((u1 + u2) / 2 + share * slack, at - _ABOVE)
    yield from _outside_spots(frame, span, at, width, ends)
    yield from _shelf_spots(frame, (u1 + u2) / 2, at, width)


def _outside_spots(
    frame: _Frame, span: tuple[float, float], at: float, width: float, ends: tuple[bool, bool]
) -> Iterator[Spot]:
    for side, u, allowed in ((1, span[1], ends[1]), (-1, span[0], ends[0])):
        for gap in (1.5, 2.4, 4.0) if allowed else ():
            far = u + side * (gap + width + 0.3)
            line = _stroke(frame.to(u, at), frame.to(far, at))
            yield frame.spot(u + side * (gap + width / 2), at - _ABOVE, (line,))


def _shelf_spots(frame: _Frame, u: float, at: float, width: float) -> Iterator[Spot]:
    """Lead from the middle of the dimension line to a level shelf, whichever way the line runs."""
    x, y = frame.to(u, at)
    for rise in (5.5, 7.5, 10.0, 13.0, 17.0, 22.0, 28.0, 35.0):
        for below in (1, -1):
            for side in (1, -1):
                for lean in (2.6, 4.5, 7.5):
                    knee, shelf = x + side * lean, y + below * rise
                    end = knee + side * (width + 1.0)
                    leader = _stroke((x, y), (knee, shelf), (end, shelf))
                    yield Spot(x=(knee + end) / 2, y=shelf - _ABOVE, strokes=(leader,))


def origin_ring(view: View, at: Point) -> None:
    """Lay the ring that marks nought of a running dimension."""
    view.sheet.stroke(
        Stroke(
            points=circle(at, 1.05),
            pen=DIMENSION.narrowed(0.25),
            layer="dimension",
            closed=True,
            filled=PAPER,
        )
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """One mark of a running dimension: the paper y it falls on, and what is printed."""

    at: float
    text: str


def running(view: View, line_at: float, origin: float, marks: Sequence[Mark], edge: float) -> None:
    """Dimension heights from one end: origin ring, an arrow at each mark, figures beside the line.

    `line_at` is the line's paper x, `origin` the paper y of nought, `edge` the x where the extension lines
    start. Marks closer than a figure are fanned out by jogged leaders in their own order.
    """
    if view.sheet.thumbnail or not marks:
        return
    ordered = sorted(marks, key=lambda mark: abs(mark.at - origin))
    view.sheet.stroke(_stroke((line_at, origin), (line_at, ordered[-1].at)))
    _running_heads(view, line_at, origin, ordered, edge + 1.0)
    origin_ring(view, (line_at, origin))
    wanted = [origin, *(mark.at for mark in ordered)]
    places = spread(wanted, [view.sheet.em("figure") + 0.6] * len(wanted))
    for at, place, text in zip(wanted, places, ["0", *(mark.text for mark in ordered)], strict=True):
        _running_figure(view, line_at, at, place, text)


def _running_heads(view: View, line_at: float, origin: float, marks: Sequence[Mark], start: float) -> None:
    before = origin
    for mark in marks:
        if abs(mark.at - before) >= 3.0:
            view.sheet.stroke(arrow((line_at, mark.at), -math.pi / 2, BLUE))
        else:
            tick(view, (line_at, mark.at))
        view.sheet.stroke(_stroke((start, mark.at), (line_at, mark.at)))
        before = mark.at


def _running_figure(view: View, line_at: float, wanted: float, place: float, text: str) -> None:
    reach = line_at + 2.6
    if abs(place - wanted) > 0.05:
        reach = line_at + 5.6
        bend = ((line_at, wanted), (line_at + 1.4, wanted), (line_at + 3.8, place), (line_at + 4.9, place))
        view.sheet.stroke(_stroke(*bend))
    view.sheet.text(text, reach, place + cap(view.sheet.em("figure")) / 2, "figure", colour=BLUE)


def spread(
    wanted: Sequence[float], need: Sequence[float], low: float = -math.inf, high: float = math.inf
) -> tuple[float, ...]:
    """Return places near the wanted ones, in the same order, no two nearer than they need, between two
    bounds.

    Runs of crowded places are pooled to the mean of what each would have liked (a least-squares fit that
    keeps the order), so a crowd fans out evenly about its middle.
    """
    if len(wanted) < 2:
        return tuple(wanted)
    way = 1.0 if wanted[-1] >= wanted[0] else -1.0
    offsets = [0.0]
    for a, b in itertools.pairwise(need):
        offsets.append(offsets[-1] + (a + b) / 2)
    least, most = (low, high) if way > 0 else (-high, -low)
    level = _pooled([way * w - o for w, o in zip(wanted, offsets, strict=True)])
    kept = (min(max(m, least), most - offsets[-1]) for m in level)
    return tuple(way * (m + o) for m, o in zip(kept, offsets, strict=True))


def _pooled(values: Sequence[float]) -> tuple[float, ...]:
    """Return the nearest rising sequence, by pooling neighbours that fall."""
    pools: list[tuple[float, int]] = []
    for value in values:
        pools.append((value, 1))
        while len(pools) > 1 and pools[-2][0] > pools[-1][0]:
            (m2, n2), (m1, n1) = pools.pop(), pools.pop()
            pools.append(((m1 * n1 + m2 * n2) / (n1 + n2), n1 + n2))
    return tuple(mean for mean, count in pools for _ in range(count))


def angle_arc(
    view: View, centre: Point, radius: float, start: float, end: float, text: str, words: str
) -> None:
    """Dimension an angle by an arc with ticks; angles in radians on paper, the figure beside the arc."""
    points: Points = arc(centre, radius, start, end)
    dimension_layer(view, points, DIMENSION)
    for tip in (points[0], points[-1]):
        tick(view, tip)
    view.sheet.label(
        Label(
            text=text,
            kind="figure",
            colour=BLUE,
            zone=view.zone,
            words=words,
            spots=_arc_spots(centre, radius, (start + end) / 2, extent(text, view.sheet.em("figure"))[0]),
        )
    )


def _arc_spots(centre: Point, radius: float, middle: float, width: float) -> Iterator[Spot]:
    for off in (1.2, 2.0, 3.0, 4.5, -3.5, -5.0):
        for turn in (0.0, 0.2, -0.2, 0.4, -0.4, 0.6, -0.6):
            a = middle + turn
            r = radius + off + (width / 2) * abs(math.cos(a)) * (1 if off > 0 else -1)
            yield Spot(x=centre[0] + r * math.cos(a), y=centre[1] + r * math.sin(a) + 1.2)
