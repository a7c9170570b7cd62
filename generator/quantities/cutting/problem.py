"""The bare problem of cutting stock, in whole numbers: sizes to cut, kinds of bar, and what a bar costs.

A size is a piece and the saw after it. The room of a bar is what is left of it when trimmed, and one saw cut
more, since nothing need follow the last piece.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TypeAlias

Items: TypeAlias = tuple[tuple[int, int], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Kind:
    """A kind of bar: its room, its cost, its length where costs are equal, and how many there are.

    `count` is None where any number can be bought.
    """

    room: int
    cost: int
    length: int
    count: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """Sizes with the number wanted of each, the greatest first, and the kinds of bar."""

    sizes: tuple[int, ...]
    demands: tuple[int, ...]
    kinds: tuple[Kind, ...]

    @property
    def limited(self) -> tuple[int, ...]:
        """The kinds of which there is a fixed number, by place."""
        return tuple(at for at, kind in enumerate(self.kinds) if kind.count is not None)


@dataclass(frozen=True, slots=True, order=True)
class Pattern:
    """One bar as it is cut: its kind by place, and the sizes by place with how often each is cut."""

    kind: int
    items: Items

    def filled(self, problem: Problem) -> int:
        """How much of the room is taken."""
        return sum(problem.sizes[at] * count for at, count in self.items)

    def left(self, problem: Problem) -> int:
        """How much of the room is not taken."""
        return problem.kinds[self.kind].room - self.filled(problem)


Bars: TypeAlias = tuple[Pattern, ...]


class WrongBars(AssertionError):
    """Bars that do not hold what they are said to hold: a fault of the solving, never of the input."""


def pattern_of(kind: int, counts: Mapping[int, int]) -> Pattern:
    """A pattern of the sizes that are cut at all, in order."""
    return Pattern(kind, tuple(sorted((at, count) for at, count in counts.items() if count > 0)))


def reduced(problem: Problem) -> Problem:
    """The same problem in the largest unit all sizes share; rooms are taken down, costs lose their gcd."""
    step = math.gcd(*problem.sizes)
    share = math.gcd(*(kind.cost for kind in problem.kinds)) or 1
    kinds = (replace(kind, room=kind.room // step, cost=kind.cost // share) for kind in problem.kinds)
    return replace(problem, sizes=tuple(size // step for size in problem.sizes), kinds=tuple(kinds))


def cost_of(problem: Problem, bars: Iterable[Pattern]) -> int:
    """What the bars cost together."""
    return sum(problem.kinds[bar.kind].cost for bar in bars)


def rank_of(problem: Problem, bars: Sequence[Pattern]) -> tuple[int, int, int]:
    """Cost, then length, then number of bars: the order in which one set of bars is preferred to another."""
    length = sum(problem.kinds[bar.kind].length for bar in bars)
    return cost_of(problem, bars), length, len(bars)


def check(problem: Problem, bars: Sequence[Pattern]) -> None:
    """Count everything again in whole numbers; WrongBars when a piece is missing or a bar holds too much."""
    cut: Counter[int] = Counter()
    for bar in bars:
        if bar.left(problem) < 0:
            raise WrongBars(f"a bar of room {problem.kinds[bar.kind].room} holds {bar.filled(problem)}")
        cut.update(dict(bar.items))
    if [cut[at] for at in range(len(problem.sizes))] != list(problem.demands):
        raise WrongBars("the bars do not hold each piece once")
    used = Counter(bar.kind for bar in bars)
    for at in problem.limited:
        if used[at] > (problem.kinds[at].count or 0):
            raise WrongBars("more bars of a kind are used than there are")
