"""Rounding dives: the linear programme made whole bar by bar, each dive with its own seed."""

from __future__ import annotations

import math
import random
from collections import Counter

from generator.quantities.cutting.first_fit import first_fit
from generator.quantities.cutting.master import Master, Relaxed
from generator.quantities.cutting.problem import Bars, Pattern, Problem, cost_of, pattern_of
from generator.quantities.cutting.tidying import fitted, without_surplus

_GROWING = 4
_TRIED_TO_THE_END = 400
"""First fit closes a dive at every step while no more pieces than this are left."""


def dive(problem: Problem, master: Master, start: Relaxed, seed: int) -> Bars | None:
    """The cheapest plan met on one way down, or None where bars ran out."""
    return _Dive(problem, master, seed).down(start)


class _Dive:
    def __init__(self, problem: Problem, master: Master, seed: int) -> None:
        self._problem, self._master = problem, master
        self._random = random.Random(seed)
        self._keen = seed == 0
        self._wanted = list(problem.demands)
        self._used: Counter[int] = Counter()
        self._bars: list[Pattern] = []

    def down(self, relaxed: Relaxed) -> Bars | None:
        best: Bars | None = None
        while any(self._wanted):
            if not self._take_whole(relaxed) and not self._take_one(relaxed):
                break
            best = self._better(best)
            if not any(self._wanted):
                break
            self._master.ask(self._wanted, self._used)
            relaxed = self._master.grow(self._wanted, _GROWING)
        return self._better(best)

    def _better(self, best: Bars | None) -> Bars | None:
        if sum(self._wanted) > _TRIED_TO_THE_END:
            return best
        rest = first_fit(self._problem, self._wanted, self._used)
        if rest is None:
            return best
        plan = fitted(self._problem, without_surplus(self._problem, (*self._bars, *rest)))
        if best is None or cost_of(self._problem, plan) < cost_of(self._problem, best):
            return plan
        return best

    def _take_whole(self, relaxed: Relaxed) -> bool:
        taken = False
        for pattern, share in sorted(relaxed.shares, key=lambda each: (-each[1], each[0])):
            for _ in range(math.floor(share + 1e-6)):
                taken = self._take(pattern, whole=True) or taken
        return taken

    def _take_one(self, relaxed: Relaxed) -> bool:
        """One bar more of a pattern that is nearly whole, likelier the nearer it is."""
        shares = [(pattern, share) for pattern, share in relaxed.shares if self._proper(pattern)]
        shares = sorted(shares or relaxed.shares, key=lambda each: (-each[1], each[0]))
        if not shares:
            return False
        if self._keen:
            return self._take(shares[0][0], whole=False)
        first = shares[: max(1, min(8, len(shares)))]
        weights = [share**3 for _, share in first]
        (chosen,) = self._random.choices([pattern for pattern, _ in first], weights)
        return self._take(chosen, whole=False)

    def _proper(self, pattern: Pattern) -> bool:
        return all(count <= self._wanted[at] for at, count in pattern.items)

    def _take(self, pattern: Pattern, *, whole: bool) -> bool:
        limit = self._problem.kinds[pattern.kind].count
        if limit is not None and self._used[pattern.kind] >= limit:
            return False
        if whole and not self._proper(pattern):
            return False
        counts = {at: min(count, self._wanted[at]) for at, count in pattern.items}
        if not any(counts.values()):
            return False
        for at, count in counts.items():
            self._wanted[at] -= count
        self._used[pattern.kind] += 1
        self._bars.append(pattern_of(pattern.kind, counts))
        return True
