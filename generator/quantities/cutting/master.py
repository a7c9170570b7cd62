"""The linear programme over patterns, grown by the patterns that would improve it (column generation).

P. C. Gilmore and R. E. Gomory, Operations Research 9 (1961) and 11 (1963).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from generator.quantities.cutting.bound import SCALE
from generator.quantities.cutting.knapsack import best_patterns
from generator.quantities.cutting.problem import Pattern, Problem

_TOLERANCE = SCALE // 10**6
_DUAL, _PRIMAL = 1, 4
_BUNDLES = 4
_ASKED_AFTER = 4
_MISSING_COST = 8
"""A piece that is not cut at all costs this many times the dearest bar, so that none is left out for long."""


def silent() -> Any:
    """A solver that says nothing, works on one thread, and does the same on every machine."""
    solver = _without_herald()
    solver.setOptionValue("output_flag", False)
    solver.setOptionValue("threads", 1)
    solver.setOptionValue("parallel", "off")
    solver.setOptionValue("random_seed", 0)
    return solver


def _without_herald() -> Any:
    """A new solver; turning its callbacks on would print its name before it can be told to be silent."""
    import highspy

    base: Any = highspy.Highs
    return type("Solver", (base,), {"enableCallbacks": lambda solver: None})()


@dataclass(frozen=True, slots=True, kw_only=True)
class Relaxed:
    """A solved linear programme: how often each pattern is cut, in fractions, and whole scaled duals."""

    shares: tuple[tuple[Pattern, float], ...]
    worths: tuple[int, ...]
    limits: tuple[int, ...]
    missing: float

    def cost(self, problem: Problem) -> float:
        """What the bars in fractions cost."""
        return sum(problem.kinds[pattern.kind].cost * share for pattern, share in self.shares)


class Master:
    """The linear programme, kept warm while patterns are added and demands fall."""

    def __init__(self, problem: Problem, patterns: Iterable[Pattern]) -> None:
        self.problem = problem
        self.patterns: list[Pattern] = []
        self._known: set[Pattern] = set()
        self._limit_rows = {at: len(problem.sizes) + row for row, at in enumerate(problem.limited)}
        self._solver = silent()
        self._rows()
        self.add(patterns)

    def _rows(self) -> None:
        import highspy
        import numpy as np

        none = np.array([], dtype=np.int32), np.array([], dtype=np.float64)
        for count in self.problem.demands:
            self._solver.addRow(float(count), highspy.kHighsInf, 0, *none)
        for at in self.problem.limited:
            self._solver.addRow(-highspy.kHighsInf, float(self.problem.kinds[at].count or 0), 0, *none)
        dear = _MISSING_COST * max(1, *(kind.cost for kind in self.problem.kinds))
        for row in range(len(self.problem.sizes)):
            self._column(dear, [(row, 1)])
        self._slack = len(self.problem.sizes)

    def _column(self, cost: float, entries: Sequence[tuple[int, int]]) -> None:
        import highspy
        import numpy as np

        rows = np.array([row for row, _ in entries], dtype=np.int32)
        counts = np.array([count for _, count in entries], dtype=np.float64)
        self._solver.addCol(float(cost), 0.0, highspy.kHighsInf, len(rows), rows, counts)

    def add(self, patterns: Iterable[Pattern]) -> int:
        """Add the patterns that are new; how many were."""
        before = len(self.patterns)
        for pattern in patterns:
            if pattern not in self._known:
                self._known.add(pattern)
                self.patterns.append(pattern)
                limit = self._limit_rows.get(pattern.kind)
                entries = [*pattern.items, *([(limit, 1)] if limit is not None else [])]
                self._column(self.problem.kinds[pattern.kind].cost, entries)
        return len(self.patterns) - before

    def ask(self, demands: Sequence[int], used: Counter[int]) -> None:
        """Ask for other numbers of each size, with some bars of the limited kinds gone."""
        import highspy

        self._solver.setOptionValue("simplex_strategy", _DUAL)
        for row, count in enumerate(demands):
            self._solver.changeRowBounds(row, float(count), highspy.kHighsInf)
        for at, row in self._limit_rows.items():
            left = max(0, (self.problem.kinds[at].count or 0) - used[at])
            self._solver.changeRowBounds(row, -highspy.kHighsInf, float(left))

    def solve(self) -> Relaxed:
        """Solve what is asked for with the patterns there are."""
        self._solver.run()
        found = self._solver.getSolution()
        values, duals = found.col_value, found.row_dual
        size = len(self.problem.sizes)
        shares = zip(self.patterns, values[self._slack :], strict=True)
        return Relaxed(
            shares=tuple((pattern, share) for pattern, share in shares if share > 1e-9),
            worths=tuple(int(max(0.0, dual) * SCALE) for dual in duals[:size]),
            limits=tuple(int(max(0.0, -dual) * SCALE) for dual in duals[size:]),
            missing=sum(values[: self._slack]),
        )

    def grow(
        self, most: Sequence[int], rounds: int, enough: Callable[[Relaxed], bool] = lambda relaxed: False
    ) -> Relaxed:
        """Add improving patterns with at most `most` of each size until there are none or `rounds` end.

        It ends too when `enough`, asked now and then, says so.
        """
        relaxed = self.solve()
        self._solver.setOptionValue("simplex_strategy", _PRIMAL)
        for number in range(1, rounds + 1):
            if not self.add(improving(self.problem, relaxed, most)):
                break
            relaxed = self.solve()
            if number % _ASKED_AFTER == 0 and enough(relaxed):
                break
        return relaxed


def improving(problem: Problem, relaxed: Relaxed, most: Sequence[int]) -> list[Pattern]:
    """The best pattern of each kind that is worth more than its bar costs, and the best of what that leaves.

    Patterns that share few pieces come into the programme together, so that it is solved less often.
    """
    left, found = list(most), list[Pattern]()
    for _ in range(_BUNDLES):
        better = _better(problem, relaxed, left)
        if not better:
            break
        found += better
        for at, count in better[0].items:
            left[at] -= count
    return found


def _better(problem: Problem, relaxed: Relaxed, most: Sequence[int]) -> list[Pattern]:
    """The best pattern of each kind that is worth more than its bar costs, the one worth most more first."""
    toll = dict(zip(problem.limited, relaxed.limits, strict=True))
    best = best_patterns(problem, relaxed.worths, most)
    more = [
        (each.value - kind.cost * SCALE - toll.get(at, 0) - _TOLERANCE * max(1, kind.cost), each.pattern)
        for at, (kind, each) in enumerate(zip(problem.kinds, best, strict=True))
    ]
    return [pattern for gain, pattern in sorted(more, key=lambda each: (-each[0], each[1])) if gain > 0]
