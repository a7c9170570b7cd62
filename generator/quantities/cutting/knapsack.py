"""The fullest-valued bar: a bounded knapsack by dynamic programme, in whole numbers throughout."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from generator.quantities.cutting.problem import Pattern, Problem, pattern_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Best:
    """For a kind of bar, the greatest value its room can hold, and a pattern that holds it."""

    value: int
    pattern: Pattern


@dataclass(frozen=True, slots=True)
class _Share:
    """A bundle of one size in the dynamic programme: `count` pieces that are taken all or not at all."""

    at: int
    count: int


def best_patterns(problem: Problem, values: Sequence[int], most: Sequence[int]) -> tuple[Best, ...]:
    """The best pattern of each kind when a piece of each size is worth `values`, with at most `most` of each.

    Values are whole and at least nought. One table over rooms serves every kind.
    """
    import numpy as np

    room = max(kind.room for kind in problem.kinds)
    shares = _shares(problem, values, most, room)
    table = np.zeros(room + 1, dtype=np.int64)
    taken = np.zeros((len(shares), room + 1), dtype=bool)
    for row, share in enumerate(shares):
        size, worth = problem.sizes[share.at] * share.count, values[share.at] * share.count
        with_it = table[: room + 1 - size] + worth
        np.greater(with_it, table[size:], out=taken[row, size:])
        np.maximum(with_it, table[size:], out=table[size:])
    return tuple(
        Best(value=int(table[kind.room]), pattern=_traced(problem, at, shares, taken))
        for at, kind in enumerate(problem.kinds)
    )


def _shares(problem: Problem, values: Sequence[int], most: Sequence[int], room: int) -> list[_Share]:
    shares: list[_Share] = []
    for at, size in enumerate(problem.sizes):
        left = min(most[at], room // size) if values[at] > 0 else 0
        bundle = 1
        while left > 0:
            shares.append(_Share(at, min(bundle, left)))
            left -= bundle
            bundle *= 2
    return shares


def _traced(problem: Problem, kind: int, shares: Sequence[_Share], taken: Any) -> Pattern:
    room, counts = problem.kinds[kind].room, dict[int, int]()
    for row in range(len(shares) - 1, -1, -1):
        if taken[row, room]:
            share = shares[row]
            counts[share.at] = counts.get(share.at, 0) + share.count
            room -= problem.sizes[share.at] * share.count
    return pattern_of(kind, counts)
