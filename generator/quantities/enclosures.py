"""Enclosures: a number with its share from each source that may be a little off, and what bounds the rest.

A number is written x0 + Σ pᵢ·eᵢ + r: x0 as worked, pᵢ its slope to source i, eᵢ how far that source is off,
at most its limit either way, and r a remainder between two bounds. Sources that two numbers share stay
shared, so that x − x is nought. This is affine arithmetic (Comba and Stolfi, 1993), with every curvature and
step kept in the remainder, so that no outcome lies outside the bounds. Angles are in degrees.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import Generic, TypeVar

Source = TypeVar("Source")
Interval = tuple[float, float]
_LEAN = 1e-9


class NotFollowed(Exception):
    """A function that limits cannot be followed through, by its name."""

    def __init__(self, function: str) -> None:
        super().__init__(function)
        self.function = function


@dataclass(frozen=True, slots=True, kw_only=True)
class Enclosure(Generic[Source]):
    """A number within limits: `slopes` and `reach` by source, `rest` the remainder.

    `bounds` hold whatever the sources do. `smooth` is true while neither a step, a choice nor a search lies
    on the way, so that the slopes are its derivatives.
    """

    at: float
    slopes: Mapping[Source, float] = field(default_factory=dict)
    reach: Mapping[Source, float] = field(default_factory=dict)
    rest: Interval = (0.0, 0.0)
    bounds: Interval = (-math.inf, math.inf)
    smooth: bool = True

    @property
    def low(self) -> float:
        """The least it can be."""
        return min(max(self.at - self.spread + self.rest[0], self.bounds[0]), self.at)

    @property
    def high(self) -> float:
        """The most it can be."""
        return max(min(self.at + self.spread + self.rest[1], self.bounds[1]), self.at)

    @property
    def spread(self) -> float:
        """What the sources come to together, to first order."""
        return math.fsum(abs(slope) * self.reach[source] for source, slope in self.slopes.items())

    @property
    def fixed(self) -> bool:
        """True where nothing can move it."""
        return self.low == self.high

    def moved(self, offset: float) -> Enclosure[Source]:
        """The same with a constant added."""
        return replace(self, at=self.at + offset, bounds=(self.bounds[0] + offset, self.bounds[1] + offset))


def constant(at: float) -> Enclosure[Source]:
    """A number that nothing moves."""
    return Enclosure(at=at, bounds=(at, at))


def source(key: Source, at: float, reach: float) -> Enclosure[Source]:
    """A written number with its limit either way."""
    return Enclosure(at=at, slopes={key: 1.0}, reach={key: reach}, bounds=(at - reach, at + reach))


def add(left: Enclosure[Source], right: Enclosure[Source]) -> Enclosure[Source]:
    """The sum."""
    return _weighted(((1.0, left), (1.0, right)))


def subtract(left: Enclosure[Source], right: Enclosure[Source]) -> Enclosure[Source]:
    """The difference."""
    return _weighted(((1.0, left), (-1.0, right)))


def negative(item: Enclosure[Source]) -> Enclosure[Source]:
    """The number with its sign turned."""
    return _weighted(((-1.0, item),))


def total(items: Sequence[Enclosure[Source]]) -> Enclosure[Source]:
    """The sum of several."""
    return _weighted([(1.0, item) for item in items])


def mean(items: Sequence[Enclosure[Source]]) -> Enclosure[Source]:
    """The mean of several."""
    return _weighted([(1.0 / len(items), item) for item in items])


def _weighted(parts: Sequence[tuple[float, Enclosure[Source]]]) -> Enclosure[Source]:
    scaled = [_scaled_interval(factor, item.rest) for factor, item in parts]
    bounds = [_scaled_interval(factor, (item.low, item.high)) for factor, item in parts]
    return Enclosure(
        at=math.fsum(factor * item.at for factor, item in parts),
        slopes=_slopes(parts),
        reach=_reach([item for _, item in parts]),
        rest=_interval_sum(scaled),
        bounds=_interval_sum(bounds),
        smooth=all(item.smooth for _, item in parts),
    )


def _slopes(parts: Sequence[tuple[float, Enclosure[Source]]]) -> dict[Source, float]:
    slopes: dict[Source, float] = {}
    for factor, item in parts:
        for key, slope in item.slopes.items():
            slopes[key] = slopes.get(key, 0.0) + factor * slope
    return slopes


def _reach(items: Sequence[Enclosure[Source]]) -> dict[Source, float]:
    return {key: reach for item in items for key, reach in item.reach.items()}


def _interval_sum(intervals: Sequence[Interval]) -> Interval:
    return math.fsum(low for low, _ in intervals), math.fsum(high for _, high in intervals)


def _scaled_interval(factor: float, interval: Interval) -> Interval:
    ends = (factor * interval[0], factor * interval[1]) if factor else (0.0, 0.0)
    return min(ends), max(ends)


def multiply(left: Enclosure[Source], right: Enclosure[Source]) -> Enclosure[Source]:
    """The product; of one number with itself the square, which is never negative."""
    first = _weighted(((right.at, left), (left.at, right)))
    by, over = (left.low - left.at, left.high - left.at), (right.low - right.at, right.high - right.at)
    second = _product(by, over)
    bounds = _product((left.low, left.high), (right.low, right.high))
    if left is right:
        second, bounds = (max(0.0, second[0]), second[1]), (max(0.0, bounds[0]), bounds[1])
    return replace(
        first,
        at=left.at * right.at,
        rest=(first.rest[0] + min(second[0], 0.0), first.rest[1] + max(second[1], 0.0)),
        bounds=bounds,
    )


def _product(one: Interval, two: Interval) -> Interval:
    ends = [a * b for a in one for b in two]
    return min(ends), max(ends)


def divide(left: Enclosure[Source], right: Enclosure[Source]) -> Enclosure[Source]:
    """The quotient; NotFollowed where the divisor may be nought. One number over itself is one."""
    if left is right:
        return constant(1.0)
    if right.low <= 0 <= right.high:
        raise NotFollowed("/")
    return multiply(left, _curved(right, lambda x: 1 / x, lambda x: -1 / x**2, ()))


def sqrt(item: Enclosure[Source]) -> Enclosure[Source]:
    """The square root; NotFollowed where the number may be negative."""
    if item.low < 0:
        raise NotFollowed("sqrt")
    return _curved(item, math.sqrt, lambda x: 0.5 / math.sqrt(x) if x else math.inf, ())


def sin(item: Enclosure[Source]) -> Enclosure[Source]:
    """The sine of an angle."""
    turns = (*_every(180, 90, item), *_every(360, -item.at, item), *_every(360, item.at, item))
    return _curved(item, lambda x: math.sin(math.radians(x)), _slope_of_sin, turns)


def cos(item: Enclosure[Source]) -> Enclosure[Source]:
    """The cosine of an angle."""
    return sin(item.moved(90.0))


def tan(item: Enclosure[Source]) -> Enclosure[Source]:
    """The tangent of an angle; NotFollowed where the angle may be a right one."""
    if _every(180, 90, item):
        raise NotFollowed("tan")
    turns = (*_every(180, -item.at, item), *_every(180, item.at, item))
    return _curved(item, lambda x: math.tan(math.radians(x)), _slope_of_tan, turns)


def atan(item: Enclosure[Source]) -> Enclosure[Source]:
    """The angle whose tangent it is."""
    return _curved(item, lambda x: math.degrees(math.atan(x)), _slope_of_atan, (-item.at,))


def asin(item: Enclosure[Source]) -> Enclosure[Source]:
    """The angle whose sine it is; NotFollowed where the number may be beyond −1 or 1."""
    if item.low < -1 or item.high > 1:
        raise NotFollowed("asin")
    return _curved(item, lambda x: math.degrees(math.asin(x)), _slope_of_asin, (-item.at,))


def _slope_of_sin(x: float) -> float:
    return math.radians(math.cos(math.radians(x)))


def _slope_of_tan(x: float) -> float:
    return math.radians(1 / math.cos(math.radians(x)) ** 2)


def _slope_of_atan(x: float) -> float:
    return math.degrees(1 / (1 + x * x))


def _slope_of_asin(x: float) -> float:
    return math.degrees(1 / math.sqrt(1 - x * x)) if abs(x) < 1 else math.inf


def _every(period: float, first: float, item: Enclosure[Source]) -> tuple[float, ...]:
    """The places first + k × period that the number can come to."""
    start = math.ceil((item.low - first) / period)
    end = math.floor((item.high - first) / period)
    return tuple(first + k * period for k in range(start, end + 1))


def _curved(
    item: Enclosure[Source],
    function: Callable[[float], float],
    slope: Callable[[float], float],
    turns: Sequence[float],
) -> Enclosure[Source]:
    """A smooth function of the number; `turns` are where it, or its distance from its tangent, turns.

    Between turns both are monotone, so their extremes stand at the ends, at the turns or at the value itself.
    """
    tangent = slope(item.at)
    looked_at = [item.low, item.high, item.at, *(x for x in turns if item.low < x < item.high)]
    values = [function(x) for x in looked_at]
    bounds = (min(values), max(values))
    if not math.isfinite(tangent):
        at = function(item.at)
        return Enclosure(at=at, rest=(bounds[0] - at, bounds[1] - at), bounds=bounds, smooth=item.fixed)
    first = _weighted(((tangent, item),))
    at = function(item.at)
    off = [value - at - tangent * (x - item.at) for value, x in zip(values, looked_at, strict=True)]
    rest = (first.rest[0] + min(off), first.rest[1] + max(off))
    return replace(first, at=at, rest=rest, bounds=bounds)


def stepped(
    item: Enclosure[Source], step: float, rounded: Callable[[float], float], *, up: bool
) -> Enclosure[Source]:
    """The number taken up or down to whole steps by `rounded`, which moves it by less than a step."""
    at, low, high = rounded(item.at), rounded(item.low), rounded(item.high)
    if low == high:
        return constant(at)
    moved, hair = at - item.at, _LEAN * step
    under, over = (-hair, step) if up else (-step, hair)
    rest = (item.rest[0] + under - moved, item.rest[1] + over - moved)
    return replace(item, at=at, rest=rest, bounds=(low, high), smooth=False)


def least(items: Sequence[Enclosure[Source]]) -> Enclosure[Source]:
    """The least of several: the one that is least as worked, and what another may fall below it."""
    winner = min(items, key=lambda item: item.at)
    apart = [subtract(item, winner) for item in items if item is not winner]
    below = min((each.low for each in apart), default=0.0)
    if below >= 0:
        return winner
    bounds = (min(item.low for item in items), min(item.high for item in items))
    return replace(winner, rest=(winner.rest[0] + below, winner.rest[1]), bounds=bounds, smooth=False)


def greatest(items: Sequence[Enclosure[Source]]) -> Enclosure[Source]:
    """The greatest of several."""
    return negative(least([negative(item) for item in items]))


def worst_ways(
    items: Sequence[Enclosure[Source]], again: Callable[[tuple[float, ...]], float | None], name: str
) -> Enclosure[Source]:
    """A search or construction that rises or falls with each argument all through, worked out again.

    Each argument is taken to both its ends to see which way it works, then all together the worst ways.
    NotFollowed where one of these has no answer.
    """
    at = tuple(item.at for item in items)
    lowest, highest = list(at), list(at)
    for place, item in enumerate(items):
        ends = (item.low, item.high)
        outcomes = [_answer(again, (*at[:place], end, *at[place + 1 :]), name) for end in ends]
        rises = outcomes[0] <= outcomes[1]
        lowest[place], highest[place] = ends if rises else ends[::-1]
    here = _answer(again, at, name)
    low, high = _answer(again, tuple(lowest), name), _answer(again, tuple(highest), name)
    bounds = (min(low, here), max(high, here))
    rest = (bounds[0] - here, bounds[1] - here)
    return Enclosure(at=here, rest=rest, bounds=bounds, smooth=bounds[0] == bounds[1])


def _answer(again: Callable[[tuple[float, ...]], float | None], at: tuple[float, ...], name: str) -> float:
    outcome = again(at)
    if outcome is None:
        raise NotFollowed(name)
    return outcome
