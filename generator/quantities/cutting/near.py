"""Every pattern that a cheaper plan could use: those whose waste, in worth, is within the gap."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import Any

from generator.quantities.cutting.bound import SCALE, Bound
from generator.quantities.cutting.problem import Pattern, Problem, pattern_of


def near_patterns(problem: Problem, bound: Bound, cost: int, most: int, steps: int) -> list[Pattern] | None:
    """Every pattern a plan of at most `cost` could use, or None where there are more than `most`.

    A pattern that leaves more worth unused than lies between the bound and `cost` cannot stand in such a
    plan. Patterns that another holds whole are left out. The search stops after so many `steps`.
    """
    gap = cost * SCALE - bound.scaled
    search = _Search(problem, bound, steps)
    found: list[Pattern] = []
    for kind in range(len(problem.kinds)):
        for pattern in search.of(kind, gap):
            found.append(pattern)
            if len(found) > most:
                return None
        if search.stopped:
            return None
    return found


class _Search:
    """Goes through the sizes in order, giving up where what can still be added is worth too little."""

    def __init__(self, problem: Problem, bound: Bound, steps: int) -> None:
        self._problem, self._worths, self._excess = problem, bound.worths, bound.excess
        self._steps = steps
        self._tables = _suffix_tables(problem, bound.worths)

    @property
    def stopped(self) -> bool:
        return self._steps <= 0

    def of(self, at: int, gap: int) -> Iterator[Pattern]:
        kind = self._problem.kinds[at]
        least = kind.cost * SCALE + self._excess[at] - gap
        yield from self._from(at, 0, kind.room, least, Counter())

    def _from(self, kind: int, at: int, room: int, least: int, counts: Counter[int]) -> Iterator[Pattern]:
        """Extend a pattern by sizes from `at` on, where `least` worth is still wanted."""
        self._steps -= 1
        if self._steps <= 0 or int(self._tables[at][room]) < least:
            return
        if at == len(self._problem.sizes):
            if counts and self._full(room, counts) and not self._fits_cheaper(kind, room):
                yield pattern_of(kind, counts)
            return
        size, worth = self._problem.sizes[at], self._worths[at]
        for count in range(min(self._problem.demands[at], room // size), -1, -1):
            counts[at] = count
            yield from self._from(kind, at + 1, room - count * size, least - count * worth, counts)
        counts[at] = 0

    def _fits_cheaper(self, at: int, room: int) -> bool:
        """Whether a kind that costs less and can always be had would hold as much."""
        own = self._problem.kinds[at]
        filled = own.room - room
        return any(
            kind.count is None and kind.cost < own.cost and kind.room >= filled
            for kind in self._problem.kinds
        )

    def _full(self, room: int, counts: Counter[int]) -> bool:
        """Whether no piece that is still wanted fits in what is left."""
        sizes, demands = self._problem.sizes, self._problem.demands
        return not any(sizes[at] <= room and counts[at] < demands[at] for at in range(len(sizes)))


def _suffix_tables(problem: Problem, worths: tuple[int, ...]) -> list[Any]:
    """For each place, the greatest worth that sizes from there on can fill each room with."""
    import numpy as np

    room = max(kind.room for kind in problem.kinds)
    tables = [np.zeros(room + 1, dtype=np.int64)]
    for at in range(len(problem.sizes) - 1, -1, -1):
        table = tables[-1].copy()
        left, bundle = min(problem.demands[at], room // problem.sizes[at]), 1
        while left > 0:
            count = min(bundle, left)
            size = problem.sizes[at] * count
            np.maximum(table[size:], table[: room + 1 - size] + worths[at] * count, out=table[size:])
            left, bundle = left - count, bundle * 2
        tables.append(table)
    return tables[::-1]
