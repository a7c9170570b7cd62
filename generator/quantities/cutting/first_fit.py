"""A quick plan: the longest piece first, into the first bar that has room, with each kind of bar in turn."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field

from generator.quantities.cutting.problem import Bars, Problem, cost_of, pattern_of
from generator.quantities.cutting.tidying import fitted


@dataclass(slots=True)
class _Bar:
    kind: int
    left: int
    counts: Counter[int] = field(default_factory=Counter)


def first_fit(problem: Problem, demands: Sequence[int], used: Counter[int] | None = None) -> Bars | None:
    """The cheapest of the first-fit plans for `demands`, or None where none has bars enough.

    `used` counts bars of each kind that are gone already.
    """
    gone = used or Counter()
    plans = (_with(problem, demands, main, gone) for main in range(len(problem.kinds)))
    whole = [fitted(problem, plan, gone) for plan in plans if plan is not None]
    return min(whole, key=lambda bars: (cost_of(problem, bars), len(bars)), default=None)


def _with(problem: Problem, demands: Sequence[int], main: int, gone: Counter[int]) -> Bars | None:
    """Bars of which there is a fixed number come first, then those of the main kind, then any that fit."""
    rest = sorted(set(range(len(problem.kinds))) - {main}, key=lambda at: problem.kinds[at].room)
    order = [*(at for at in rest if problem.kinds[at].count is not None), main, *rest]
    stands: Counter[int] = Counter(gone)
    bars: list[_Bar] = []
    for at, count in enumerate(demands):
        for _ in range(count):
            bar = _room_for(problem, problem.sizes[at], bars, order, stands)
            if bar is None:
                return None
            bar.left -= problem.sizes[at]
            bar.counts[at] += 1
    return tuple(pattern_of(bar.kind, bar.counts) for bar in bars)


def _room_for(
    problem: Problem, size: int, bars: list[_Bar], order: Sequence[int], stands: Counter[int]
) -> _Bar | None:
    for bar in bars:
        if bar.left >= size:
            return bar
    for at in order:
        kind = problem.kinds[at]
        if kind.room >= size and (kind.count is None or stands[at] < kind.count):
            stands[at] += 1
            bars.append(_Bar(at, kind.room))
            return bars[-1]
    return None
