"""The cheapest set of bars: first fit, column generation, dives, and a last choice that closes the gap."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace

from generator.quantities.cutting.bound import SCALE, bound_of, next_sum, plain_worths
from generator.quantities.cutting.choice import choose
from generator.quantities.cutting.correcting import corrections
from generator.quantities.cutting.dives import dive
from generator.quantities.cutting.first_fit import first_fit
from generator.quantities.cutting.master import Master, Relaxed
from generator.quantities.cutting.near import near_patterns
from generator.quantities.cutting.problem import (
    Bars,
    Pattern,
    Problem,
    check,
    cost_of,
    pattern_of,
    rank_of,
    reduced,
)
from generator.quantities.cutting.tidying import fitted, joined, long_offcuts, without_surplus


@dataclass(frozen=True, slots=True, kw_only=True)
class Effort:
    """How far the search goes; counted in turns and never in time, so every machine finds the same plan."""

    corrections: int = 3_000
    most_corrections: int = 12
    rounds: int = 600
    few: int = 30
    dives: int = 20_000
    most_dives: int = 10
    patterns: int = 1200
    steps: int = 40_000
    pool: int = 250
    nodes: int = 1_200_000


@dataclass(frozen=True, slots=True, kw_only=True)
class Solved:
    """The bars with what they cost and what no plan can cost less than, both in the problem's own costs."""

    bars: Bars
    cost: int
    bound: int

    @property
    def proven(self) -> bool:
        """Whether no cheaper plan can exist."""
        return self.cost == self.bound


USUAL = Effort()
_MORE = 4
"""So many times the dives are made while the best plan is not near the bound."""
_NEAR = 200
"""A plan is near the bound when no more than this part of its cost is left unproved."""


def solve(problem: Problem, effort: Effort = USUAL) -> Solved | None:
    """The cheapest bars found that hold every piece; None where first fit runs out of bars.

    Sizes must fall and fit some kind. The result is counted again in whole numbers before it is returned.
    """
    small = reduced(_useful(problem))
    start = first_fit(small, small.demands)
    if start is None:
        return None
    search = _Search(small, start, effort)
    search.run()
    kept = [at for at, kind in enumerate(problem.kinds) if _holds_some(problem, kind.room)]
    bars = tuple(Pattern(kept[bar.kind], bar.items) for bar in search.finished())
    check(problem, bars)
    cost, share = cost_of(problem, bars), search.cost
    unit = cost // share if share else 0
    return Solved(bars=tuple(sorted(bars)), cost=cost, bound=search.bound * unit if share else 0)


def _holds_some(problem: Problem, room: int) -> bool:
    return room >= problem.sizes[-1]


def _useful(problem: Problem) -> Problem:
    """The problem with only those kinds that hold a piece at all."""
    return replace(problem, kinds=tuple(kind for kind in problem.kinds if _holds_some(problem, kind.room)))


class _Search:
    def __init__(self, problem: Problem, start: Bars, effort: Effort) -> None:
        self._problem, self._effort = problem, effort
        self._best = _cleaned(problem, start)
        self._proof = bound_of(problem, plain_worths(problem))
        self._met: dict[Pattern, None] = {}
        self.bound = 0
        self._raise(self._proof.whole)

    @property
    def cost(self) -> int:
        """What the best bars so far cost."""
        return cost_of(self._problem, self._best)

    def run(self) -> None:
        """Search until the best is proven or the effort is spent."""
        if not self._proven:
            self._correct()
        if not self._proven:
            self._improve()
        if len({(kind.cost, kind.length) for kind in self._problem.kinds}) > 1:
            self._lengths()

    def _correct(self) -> None:
        worths = plain_worths(self._problem)
        pieces = sum(self._problem.demands)
        rounds = max(2, min(self._effort.most_corrections, self._effort.corrections // pieces))
        for bars in corrections(self._problem, worths, rounds):
            self._met.update(dict.fromkeys(bars))
            self._offer(bars)
            if self._proven:
                break

    def _improve(self) -> None:
        master = self._relax()
        for seed in range(self._effort.most_dives):
            if self._proven or seed >= self._dives:
                break
            self._dive(master, seed)
        if not self._proven:
            self._close(master)

    def finished(self) -> Bars:
        """The best bars, joined and shifted so that what is left over is long."""
        bars = long_offcuts(self._problem, joined(self._problem, self._best))
        return min(fitted(self._problem, bars), self._best, key=self._rank)

    def _rank(self, bars: Bars) -> tuple[int, int, int]:
        return rank_of(self._problem, bars)

    @property
    def _dives(self) -> int:
        """Fewer dives where there are more sizes, since each takes longer by the square of their number."""
        dives = self._effort.dives if self._near else _MORE * self._effort.dives
        return max(1, dives // len(self._problem.sizes) ** 2)

    @property
    def _proven(self) -> bool:
        return self.cost <= self.bound

    @property
    def _many(self) -> bool:
        """Whether there are so many sizes that each step of a long search takes its time."""
        return len(self._problem.sizes) > self._effort.few

    @property
    def _near(self) -> bool:
        """Whether all a better plan could save is too little to be worth a long search."""
        return (self.cost - self.bound) * _NEAR <= self.cost

    def _raise(self, least: int) -> None:
        """Take the bound up to the next cost that bars can make."""
        self.bound = max(self.bound, self._next(least))

    def _next(self, least: int) -> int:
        return next_sum([kind.cost for kind in self._problem.kinds], least, self.cost)

    def _offer(self, bars: Bars | None) -> None:
        if bars is None:
            return
        clean = _cleaned(self._problem, bars)
        if self._rank(clean) < self._rank(self._best):
            self._best = clean

    def _relax(self) -> Master:
        master = Master(self._problem, [*self._best, *_singles(self._problem)])
        relaxed = master.grow(self._problem.demands, self._effort.rounds, self._is_tight)
        self._take_proof(relaxed)
        return master

    def _take_proof(self, relaxed: Relaxed) -> None:
        proof = bound_of(self._problem, relaxed.worths)
        self._proof = max(self._proof, proof, key=lambda bound: bound.scaled)
        self._raise(self._proof.whole)

    def _is_tight(self, relaxed: Relaxed) -> bool:
        """Whether the programme grown further could prove no more than is proved by now."""
        self._take_proof(relaxed)
        if not self._many or relaxed.missing:
            return False
        return self.bound >= self._next(_whole(relaxed.cost(self._problem)))

    def _dive(self, master: Master, seed: int) -> None:
        master.ask(self._problem.demands, Counter())
        self._offer(dive(self._problem, master, master.solve(), seed, self.bound))

    def _close(self, master: Master) -> None:
        """Choose among every pattern a cheaper plan could use, or the best met where those are too many."""
        every = self._every(self.cost - 1)
        if every is None and self._many:
            return
        patterns = every if every is not None else self._pool(master)
        prices = [self._problem.kinds[pattern.kind].cost for pattern in patterns]
        if not patterns:
            self._raise(self.cost)
            return
        chosen = choose(self._problem, patterns, prices, self._nodes(patterns))
        known, before = self.bound, self.cost
        self._offer(chosen.bars)
        if every is not None and chosen.closed:
            self._raise(min(before, self.cost))
        elif every is not None:
            self._raise(min(before, max(known, _whole(chosen.bound))))

    def _every(self, cost: int) -> list[Pattern] | None:
        effort = self._effort
        return near_patterns(self._problem, self._proof, cost, effort.patterns, effort.steps)

    def _nodes(self, patterns: Sequence[Pattern]) -> int:
        """Fewer nodes where each costs more."""
        return max(1, self._effort.nodes // (len(patterns) * len(self._problem.sizes)))

    def _pool(self, master: Master) -> list[Pattern]:
        """The best bars so far, and of the patterns met those that waste the least worth."""
        met = sorted(self._met | dict.fromkeys(master.patterns), key=self._waste)
        return list(dict.fromkeys([*self._best, *met]))[: self._effort.pool]

    def _waste(self, pattern: Pattern) -> tuple[int, Pattern]:
        worth = sum(self._proof.worths[at] * count for at, count in pattern.items)
        cost = self._problem.kinds[pattern.kind].cost * SCALE + self._proof.excess[pattern.kind]
        return cost - worth, pattern

    def _lengths(self) -> None:
        """Among bars that cost no more, choose the least length and then the fewest bars."""
        self._offer(joined(self._problem, self._best))
        every = self._every(self.cost)
        if every is None or len(every) > self._effort.pool:
            return
        patterns = list(dict.fromkeys([*self._best, *every]))
        kinds, most = self._problem.kinds, len(self._best) + 1
        prices = [kinds[pattern.kind].length * most + 1 for pattern in patterns]
        nodes = self._nodes(patterns)
        self._offer(choose(self._problem, patterns, prices, nodes, within=self.cost).bars)


def _whole(bound: float) -> int:
    """A floating bound taken up to a whole cost; a hair above a whole is that whole."""
    return -int(-(bound - 1e-6) // 1)


def _cleaned(problem: Problem, bars: Bars) -> Bars:
    clean = fitted(problem, without_surplus(problem, bars))
    check(problem, clean)
    return clean


def _singles(problem: Problem) -> Sequence[Pattern]:
    """For each size and kind, a bar of that size alone."""
    return [
        pattern_of(kind, {at: min(count, problem.kinds[kind].room // size)})
        for at, (size, count) in enumerate(zip(problem.sizes, problem.demands, strict=True))
        for kind in range(len(problem.kinds))
        if problem.kinds[kind].room >= size
    ]
