"""A plan made better without any search: surplus struck out, smaller bars, bars joined, long offcuts."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence

from generator.quantities.cutting.problem import Bars, Pattern, Problem, pattern_of, rank_of

_ROUNDS = 6


def without_surplus(problem: Problem, bars: Iterable[Pattern]) -> Bars:
    """The bars with every piece beyond the number wanted struck out, and empty bars left away."""
    wanted = list(problem.demands)
    kept: list[Pattern] = []
    for bar in bars:
        counts = {at: min(count, wanted[at]) for at, count in bar.items}
        for at, count in counts.items():
            wanted[at] -= count
        if any(counts.values()):
            kept.append(pattern_of(bar.kind, counts))
    return tuple(kept)


def fitted(problem: Problem, bars: Sequence[Pattern], used: Counter[int] | None = None) -> Bars:
    """Each bar in the cheapest kind that holds it and is not all used."""
    stands = Counter(bar.kind for bar in bars)
    stands.update(used or Counter())
    kept: list[Pattern] = []
    for bar in bars:
        stands[bar.kind] -= 1
        kind = _cheapest(problem, bar.filled(problem), stands) if bar.items else None
        kept.append(Pattern(bar.kind if kind is None else kind, bar.items))
        stands[kept[-1].kind] += 1
    return tuple(kept)


def _cheapest(problem: Problem, filled: int, stands: Counter[int]) -> int | None:
    return min(
        (at for at in _free(problem, stands) if problem.kinds[at].room >= filled),
        key=lambda at: (problem.kinds[at].cost, problem.kinds[at].length, at),
        default=None,
    )


def _free(problem: Problem, stands: Counter[int]) -> Iterator[int]:
    for at, kind in enumerate(problem.kinds):
        if kind.count is None or stands[at] < kind.count:
            yield at


def joined(problem: Problem, bars: Sequence[Pattern]) -> Bars:
    """The bars with two put into one wherever that costs no more and needs no greater length."""
    kept = sorted(bars, key=lambda bar: (bar.filled(problem), bar))
    at = 0
    while at < len(kept):
        other = _joint(problem, kept, at)
        if other is None:
            at += 1
            continue
        place, whole = other
        kept = [bar for i, bar in enumerate(kept) if i not in (at, place)]
        kept = sorted([*kept, whole], key=lambda bar: (bar.filled(problem), bar))
        at = 0
    return tuple(kept)


def _joint(problem: Problem, bars: Sequence[Pattern], at: int) -> tuple[int, Pattern] | None:
    one, most = bars[at], max(kind.room for kind in problem.kinds)
    for place in range(at + 1, len(bars)):
        two = bars[place]
        if one.filled(problem) + two.filled(problem) > most:
            return None
        whole = _whole(problem, one, two, Counter(bar.kind for bar in bars))
        if whole is not None:
            return place, whole
    return None


def _whole(problem: Problem, one: Pattern, two: Pattern, stands: Counter[int]) -> Pattern | None:
    counts = Counter(dict(one.items)) + Counter(dict(two.items))
    stands = stands - Counter([one.kind, two.kind])
    kind = _cheapest(problem, one.filled(problem) + two.filled(problem), stands)
    if kind is None:
        return None
    whole = pattern_of(kind, counts)
    return whole if rank_of(problem, [whole]) <= rank_of(problem, [one, two]) else None


def long_offcuts(problem: Problem, bars: Sequence[Pattern]) -> Bars:
    """The same bars with pieces moved from bars with much left to bars with little: offcuts grow long.

    A move is made when the sum of the squares of what is left grows by it.
    """
    counts = [Counter(dict(bar.items)) for bar in bars]
    left = [bar.left(problem) for bar in bars]
    for _ in range(_ROUNDS):
        moved = [_emptied(problem, giver, counts, left) for giver in _by_left(left)]
        if not any(moved):
            break
    return tuple(pattern_of(bar.kind, count) for bar, count in zip(bars, counts, strict=True) if +count)


def _by_left(left: Sequence[int]) -> list[int]:
    return sorted(range(len(left)), key=lambda at: (-left[at], at))


def _emptied(problem: Problem, giver: int, counts: list[Counter[int]], left: list[int]) -> bool:
    moved = False
    for at in sorted(+counts[giver]):
        size = problem.sizes[at]
        takers = (t for t in range(len(left)) if t != giver and size <= left[t] < left[giver] + size)
        taker = min(takers, key=lambda t: (left[t], t), default=None)
        if taker is None:
            continue
        counts[giver][at] -= 1
        counts[taker][at] += 1
        left[giver] += size
        left[taker] -= size
        moved = True
    return moved
