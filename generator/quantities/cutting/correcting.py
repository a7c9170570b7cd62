"""Plans made bar by bar, the fullest-valued first; what was left to wasteful bars is worth more next time.

Sequential value correction: E. A. Mukhacheva, G. N. Belov, V. M. Kartack and A. S. Mukhacheva, Pesquisa
Operacional 20 (2000).
"""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Iterator, Sequence

from generator.quantities.cutting.bound import SCALE
from generator.quantities.cutting.knapsack import best_patterns
from generator.quantities.cutting.problem import Bars, Pattern, Problem
from generator.quantities.cutting.tidying import fitted

_MOST = 4
"""An old worth and a corrected one make the next in shares of 1 to so many each, by chance from a seed."""


def corrections(problem: Problem, worths: Sequence[int], rounds: int) -> Iterator[Bars]:
    """A plan a round, begun with `worths`; none where bars run out."""
    random_ = random.Random(0)
    for _ in range(rounds):
        bars = filled(problem, worths, problem.demands, Counter())
        if bars is None:
            return
        plan = fitted(problem, bars)
        yield plan
        shares = random_.randint(1, _MOST), random_.randint(1, _MOST)
        worths = _corrected(problem, worths, plan, shares)


def filled(
    problem: Problem, worths: Sequence[int], demands: Sequence[int], gone: Counter[int]
) -> Bars | None:
    """Bars for `demands`, each the best that can still be filled, with some of the limited kinds `gone`."""
    wanted, used = list(demands), Counter(gone)
    bars: list[Pattern] = []
    while any(wanted):
        bar = _best(problem, worths, wanted, used)
        if bar is None:
            return None
        times = _times(problem, bar, wanted)
        bars += [bar] * times
        used[bar.kind] += times
        for at, count in bar.items:
            wanted[at] -= count * times
    return tuple(bars)


def _best(
    problem: Problem, worths: Sequence[int], wanted: Sequence[int], used: Counter[int]
) -> Pattern | None:
    """The bar that holds most worth for its cost, of the kinds that are not all used."""
    found = best_patterns(problem, worths, wanted)
    free = [
        (each.value / max(kind.cost, 1e-3), -at, each.pattern)
        for at, (kind, each) in enumerate(zip(problem.kinds, found, strict=True))
        if each.value and (kind.count is None or used[at] < kind.count)
    ]
    return max(free)[2] if free else None


def _times(problem: Problem, bar: Pattern, wanted: Sequence[int]) -> int:
    """How often a bar is taken before the next is looked for: half as often as it could be, at least once."""
    if problem.kinds[bar.kind].count is not None:
        return 1
    return max(1, min(wanted[at] // count for at, count in bar.items) // 2)


def _corrected(problem: Problem, worths: Sequence[int], bars: Bars, shares: tuple[int, int]) -> list[int]:
    """Each size worth more where its bars were filled badly: by what its share of a bar's cost came to."""
    paid, count = [0] * len(worths), [0] * len(worths)
    for bar in bars:
        cost, filled = problem.kinds[bar.kind].cost * SCALE, bar.filled(problem)
        for at, times in bar.items:
            paid[at] += times * cost * problem.sizes[at] // filled
            count[at] += times
    return [
        max(1, (shares[0] * old + shares[1] * (new // times)) // sum(shares))
        for old, new, times in zip(worths, paid, count, strict=True)
    ]
