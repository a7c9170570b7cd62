"""What no plan can cost less than: a bound in whole numbers from the worth of each size."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from generator.quantities.cutting.knapsack import best_patterns
from generator.quantities.cutting.problem import Problem

SCALE = 1 << 32
"""Worths are whole numbers of this part of a unit of cost."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bound:
    """A proof that no plan costs less than `scaled / SCALE`.

    `worths` of a piece of each size (scaled) are such that no pattern of an unlimited kind holds more than it
    costs; `excess` is how much the best pattern of each limited kind does.
    """

    worths: tuple[int, ...]
    excess: tuple[int, ...]
    scaled: int

    @property
    def whole(self) -> int:
        """The bound taken up to a whole cost."""
        return -(-self.scaled // SCALE)


def bound_of(problem: Problem, worths: Sequence[int]) -> Bound:
    """The bound that any whole worths give, after taking them down until no pattern holds more than it costs.

    Farley's bound (A. Farley, Operations Research 38, 1990) with the limited kinds relaxed; exact, since the
    knapsack is solved in whole numbers.
    """
    values = [best.value for best in best_patterns(problem, worths, problem.demands)]
    up, down = _worst(problem, values)
    shrunk = tuple(worth * down // up for worth in worths)
    excess = tuple(
        max(0, value * down // up - kind.cost * SCALE) if kind.count is not None else 0
        for kind, value in zip(problem.kinds, values, strict=True)
    )
    limits = sum(each * (kind.count or 0) for each, kind in zip(excess, problem.kinds, strict=True))
    scaled = sum(worth * count for worth, count in zip(shrunk, problem.demands, strict=True)) - limits
    return Bound(worths=shrunk, excess=excess, scaled=max(scaled, 0))


def _worst(problem: Problem, values: Sequence[int]) -> tuple[int, int]:
    """By which fraction the worths must come down; 1 where no unlimited kind is over its cost."""
    up, down = 1, 1
    for kind, value in zip(problem.kinds, values, strict=True):
        if kind.count is None and value * down > kind.cost * SCALE * up:
            up, down = value, kind.cost * SCALE
    return up, down


def plain_worths(problem: Problem) -> tuple[int, ...]:
    """Worths by length alone, at the cheapest rate of any kind."""
    kinds = [kind for kind in problem.kinds if kind.cost > 0 and kind.count is None] or list(problem.kinds)
    return tuple(min(kind.cost * SCALE * size // kind.room for kind in kinds) for size in problem.sizes)


def next_sum(costs: Sequence[int], least: int, most: int) -> int:
    """The least sum of costs, each taken any number of times, from `least` up; `most` where there is none."""
    reach, mask = 1, (1 << (most + 1)) - 1
    for cost in costs:
        step = cost
        while 0 < step <= most:
            reach |= (reach << step) & mask
            step *= 2
    above = reach >> least
    return min(most, least + (above & -above).bit_length() - 1) if above else most
