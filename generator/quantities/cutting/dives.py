"""Rounding dives: the linear programme made whole bar by bar, each dive with its own seed."""

from __future__ import annotations

import math
import random
from collections import Counter

from generator.quantities.cutting.correcting import filled
from generator.quantities.cutting.first_fit import first_fit
from generator.quantities.cutting.master import Master, Relaxed
from generator.quantities.cutting.problem import Bars, Pattern, Problem, cost_of, pattern_of
from generator.quantities.cutting.tidying import fitted, without_surplus

_GROWING = 4
_AT_ONCE = 4
"""Of so many bars one is settled before the programme is solved again."""
_TRIED_TO_THE_END = 400
"""First fit closes a dive at every step while no more pieces than this are left."""
_FILLED_TO_THE_END = 120
"""And so does filling bar by bar, which finds more and takes longer."""


def dive(problem: Problem, master: Master, start: Relaxed, seed: int, enough: int) -> Bars | None:
    """The cheapest plan met on one way down, or None where bars ran out; it ends at a cost of `enough`."""
    return _Dive(problem, master, seed, enough).down(start)


class _Dive:
    def __init__(self, problem: Problem, master: Master, seed: int, enough: int) -> None:
        self._enough = enough
        self._problem, self._master = problem, master
        self._random = random.Random(seed)
        self._keen = seed == 0
        self._wanted = list(problem.demands)
        self._used: Counter[int] = Counter()
        self._bars: list[Pattern] = []

    def down(self, relaxed: Relaxed) -> Bars | None:
        best: Bars | None = None
        while any(self._wanted):
            if not self._take_whole(relaxed) and not self._take_some(relaxed):
                break
            best = self._better(best, relaxed)
            if not any(self._wanted) or (best and cost_of(self._problem, best) <= self._enough):
                return best
            self._master.ask(self._wanted, self._used)
            relaxed = self._master.grow(self._wanted, _GROWING)
        return self._better(best, relaxed)

    def _better(self, best: Bars | None, relaxed: Relaxed) -> Bars | None:
        """The best plan so far, or the bars taken closed by first fit or by the worths of the programme."""
        if sum(self._wanted) > _TRIED_TO_THE_END:
            return best
        rests = [first_fit(self._problem, self._wanted, self._used)]
        if sum(self._wanted) <= _FILLED_TO_THE_END:
            worths = [max(1, worth) for worth in relaxed.worths]
            rests.append(filled(self._problem, worths, self._wanted, self._used))
        plans = [self._whole(rest) for rest in rests if rest is not None]
        offered = plans if best is None else [best, *plans]
        return min(offered, key=lambda plan: cost_of(self._problem, plan), default=None)

    def _whole(self, rest: Bars) -> Bars:
        return fitted(self._problem, without_surplus(self._problem, (*self._bars, *rest)))

    def _take_whole(self, relaxed: Relaxed) -> bool:
        taken = False
        for pattern, share in sorted(relaxed.shares, key=lambda each: (-each[1], each[0])):
            for _ in range(math.floor(share + 1e-6)):
                taken = self._take(pattern, whole=True) or taken
        return taken

    def _take_some(self, relaxed: Relaxed) -> bool:
        """A few bars where many are left to be taken, one near the end."""
        bars = sum(share for _, share in relaxed.shares)
        taken = [self._take_one(relaxed) for _ in range(max(1, int(bars) // _AT_ONCE))]
        return any(taken)

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
