"""The plans are the cheapest there are: held against known optima and against every plan there is."""

from __future__ import annotations

import itertools
import json
import os
import random
from collections import Counter
from collections.abc import Iterator, Sequence
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.quantities.cutting.bound import SCALE, bound_of, next_sum, plain_worths
from generator.quantities.cutting.correcting import corrections
from generator.quantities.cutting.first_fit import first_fit
from generator.quantities.cutting.knapsack import best_patterns
from generator.quantities.cutting.orders import StockLength
from generator.quantities.cutting.problem import (
    Kind,
    Pattern,
    Problem,
    WrongBars,
    check,
    cost_of,
    rank_of,
)
from generator.quantities.cutting.solving import solve
from generator.quantities.cutting.task import plan_of, problem_of
from tests.cutting.samples import built, chance
from tests.quantities.published import ROLL, ROLL_FEWEST, ROLL_LEFT, ROLL_WIDTHS

PUBLISHED = "STOREYROD_CUTTING_INSTANCES"


def problem(sizes: dict[int, int], *kinds: Kind) -> Problem:
    """A problem of sizes with their numbers."""
    ordered = sorted(sizes.items(), reverse=True)
    return Problem(
        sizes=tuple(size for size, _ in ordered), demands=tuple(count for _, count in ordered), kinds=kinds
    )


def bar(room: int, cost: int | None = None, count: int | None = None) -> Kind:
    return Kind(room=room, cost=room if cost is None else cost, length=room, count=count)


# Optima known by construction: whole bars were cut up without waste


@pytest.mark.parametrize(("seed", "bars"), [(1, 4), (2, 10), (3, 20), (4, 40), (5, 60)])
def test_bars_that_were_cut_up_whole_are_put_together_again(seed: int, bars: int) -> None:
    order, optimum = built(seed, bars, 4800)
    plan = plan_of(order)
    assert plan.totals is not None
    assert plan.bound == optimum
    assert plan.totals.bought - optimum <= 4800, "at most one bar over the optimum"
    if bars <= 40:
        assert plan.proven


# Every plan there is, for few pieces


def partitions(items: Sequence[int]) -> Iterator[list[list[int]]]:
    """Every way to share items out over any number of bars."""
    if not items:
        yield []
        return
    first, *rest = items
    for shared in partitions(rest):
        for at in range(len(shared)):
            yield [*shared[:at], [first, *shared[at]], *shared[at + 1 :]]
        yield [[first], *shared]


def cheapest(pieces: Sequence[int], kinds: Sequence[Kind]) -> int | None:
    """The least cost over every partition and every kind of bar for each part."""
    best: int | None = None
    for parts in partitions(pieces):
        fitting = [[at for at, kind in enumerate(kinds) if kind.room >= sum(part)] for part in parts]
        for choice in itertools.product(*fitting):
            if any(kind.count is not None and choice.count(at) > kind.count for at, kind in enumerate(kinds)):
                continue
            cost = sum(kinds[at].cost for at in choice)
            best = cost if best is None else min(best, cost)
    return best


@settings(max_examples=120, deadline=None)
@given(
    pieces=st.lists(st.integers(3, 20), min_size=1, max_size=6),
    rooms=st.lists(
        st.tuples(st.integers(20, 60), st.integers(1, 9)),
        min_size=1,
        max_size=2,
        unique_by=lambda kind: kind[0],
    ),
    on_hand=st.one_of(st.none(), st.tuples(st.integers(8, 50), st.integers(1, 2))),
)
def test_no_plan_at_all_is_cheaper(
    pieces: list[int], rooms: list[tuple[int, int]], on_hand: tuple[int, int] | None
) -> None:
    kinds = [bar(room, cost) for room, cost in rooms]
    if on_hand:
        kinds.insert(0, bar(on_hand[0], 0, on_hand[1]))
    sizes = {size: pieces.count(size) for size in pieces}
    solved = solve(problem(sizes, *kinds))
    assert solved is not None
    assert solved.cost == cheapest(pieces, kinds)
    assert solved.bound <= solved.cost


def test_too_few_bars_on_hand_and_none_to_buy_give_no_plan() -> None:
    assert solve(problem({10: 3}, bar(12, 0, 2))) is None


def test_equal_cost_prefers_fewer_bars() -> None:
    solved = solve(problem({21: 2}, bar(22), bar(44)))
    assert solved is not None
    assert [(each.kind, each.items) for each in solved.bars] == [(1, ((0, 2),))]


def test_offcuts_grow_long_where_cost_is_equal() -> None:
    """Two bars are needed; one is filled as full as can be, so that one long offcut is left."""
    told = problem({60: 1, 50: 1, 30: 1}, bar(100))
    solved = solve(told)
    assert solved is not None
    assert sorted(each.left(told) for each in solved.bars) == [10, 50]


def test_lengths_on_hand_are_used_before_any_is_bought() -> None:
    solved = solve(problem({60: 1, 40: 2}, bar(45, 0, 1), bar(100)))
    assert solved is not None
    assert sorted(each.kind for each in solved.bars) == [0, 1]


def test_prices_may_make_the_longer_length_the_better_one() -> None:
    solved = solve(problem({30: 2}, bar(35, 10), bar(100, 15)))
    assert solved is not None
    assert (solved.cost, solved.proven) == (15, True)


# Published instances, where they are at hand


def published() -> list[dict[str, object]]:
    path = os.environ.get(PUBLISHED)
    return json.loads(Path(path).read_text())["instances"] if path else []


@pytest.mark.skipif(not os.environ.get(PUBLISHED), reason=f"{PUBLISHED} names no file of published instances")
def test_published_instances_reach_their_published_optimum() -> None:
    """One length, no saw; the source of each instance and optimum stands in the file."""
    found = {}
    for one in published():
        sizes = dict(zip(one["lengths"], one["demands"], strict=True))  # type: ignore[call-overload]
        solved = solve(problem(sizes, bar(int(str(one["capacity"])), 1)))
        assert solved is not None
        found[one["name"]] = (solved.cost, solved.proven)
    assert found == {one["name"]: (one["optimum_bars"], True) for one in published()}
    assert found


def fewest_by_assignment(lengths: Sequence[int], room: int) -> int:
    """Bars by the plainest whole-number model: each piece in one bar, each bar used or not."""
    import highspy

    model = highspy.Highs()
    model.silent()
    used = [model.addBinary() for _ in lengths]
    placed = [[model.addBinary() for _ in used] for _ in lengths]
    for piece in placed:
        model.addConstr(sum(piece[1:], piece[0]) == 1)
    for bar_, on in enumerate(used):
        held = [length * piece[bar_] for length, piece in zip(lengths, placed, strict=True)]
        model.addConstr(sum(held[1:], held[0]) <= room * on)
    model.minimize(sum(used[1:], used[0]))
    return round(model.getObjectiveValue())


@pytest.mark.parametrize("seed", range(6))
def test_the_whole_number_model_finds_no_fewer_bars(seed: int) -> None:
    draw = random.Random(seed)
    lengths = [draw.randint(900, 4200) for _ in range(7)]
    solved = solve(problem(dict(Counter(lengths)), bar(8400, 1)))
    assert solved is not None
    assert solved.cost == fewest_by_assignment(lengths, 8400)


def test_the_paper_rolls_of_the_textbooks_take_seventy_three() -> None:
    solved = solve(problem(ROLL_WIDTHS, bar(ROLL, 1)))
    assert solved is not None
    assert (solved.cost, solved.proven) == (ROLL_FEWEST, True)
    used = sum(width * count for width, count in ROLL_WIDTHS.items())
    assert 1 - used / (solved.cost * ROLL) == pytest.approx(ROLL_LEFT, abs=5e-6)


# How good, where nothing is known beforehand


@pytest.mark.parametrize("seed", [1, 2, 3])
@pytest.mark.parametrize(("count", "kinds"), [(60, 0), (120, 0), (600, 40)])
def test_the_gap_of_everyday_orders_is_half_a_per_cent_at_most(seed: int, count: int, kinds: int) -> None:
    stock = tuple(StockLength(length=length) for length in (4200, 4800, 8400))
    plan = plan_of(chance(seed, count, 300, 2000, kinds, stock=stock, trim=20))
    assert plan.gap <= 0.5
    assert plan.totals is not None
    assert plan.bound <= plan.totals.bought


# The parts by themselves


@settings(max_examples=60, deadline=None)
@given(
    sizes=st.dictionaries(st.integers(1, 15), st.integers(1, 3), min_size=1, max_size=4),
    room=st.integers(15, 30),
    seed=st.integers(0, 99),
)
def test_the_knapsack_finds_the_best_of_every_pattern(sizes: dict[int, int], room: int, seed: int) -> None:
    told = problem(sizes, bar(room))
    values = [random.Random(seed + at).randint(0, 9) for at in range(len(told.sizes))]
    (found,) = best_patterns(told, values, told.demands)
    every = itertools.product(*(range(count + 1) for count in told.demands))
    worth = max(
        sum(count * value for count, value in zip(counts, values, strict=True))
        for counts in every
        if sum(count * size for count, size in zip(counts, told.sizes, strict=True)) <= room
    )
    assert found.value == worth
    assert sum(values[at] * count for at, count in found.pattern.items) == worth
    assert found.pattern.left(told) >= 0


@settings(max_examples=60, deadline=None)
@given(
    pieces=st.lists(st.integers(3, 20), min_size=1, max_size=30),
    on_hand=st.tuples(st.integers(8, 50), st.integers(1, 3)),
)
def test_each_corrected_plan_is_whole_and_the_same_again(pieces: list[int], on_hand: tuple[int, int]) -> None:
    told = problem(
        {size: pieces.count(size) for size in pieces}, bar(on_hand[0], 0, on_hand[1]), bar(20), bar(45)
    )
    plans = list(corrections(told, plain_worths(told), 4))
    assert len(plans) == 4
    for plan in plans:
        check(told, plan)
    assert list(corrections(told, plain_worths(told), 4)) == plans


def test_correcting_worths_finds_a_plan_that_first_fit_does_not() -> None:
    order = chance(24, 115, 300, 2000, stock=tuple(StockLength(length=each) for each in (4200, 4800, 8400)))
    told = problem_of(order)
    first = first_fit(told, told.demands)
    assert first is not None
    best = min(cost_of(told, plan) for plan in corrections(told, plain_worths(told), 4))
    assert best < cost_of(told, first)


@settings(max_examples=60, deadline=None)
@given(
    pieces=st.lists(st.integers(3, 20), min_size=1, max_size=6),
    worth=st.integers(0, 40),
    room=st.integers(20, 50),
)
def test_any_worths_give_a_bound_that_holds(pieces: list[int], worth: int, room: int) -> None:
    told = problem({size: pieces.count(size) for size in pieces}, bar(room))
    best = cheapest(pieces, told.kinds)
    assert best is not None
    for worths in (plain_worths(told), [worth * SCALE] * len(told.sizes)):
        assert bound_of(told, worths).whole <= best


def test_a_bound_is_taken_up_to_a_sum_that_bars_can_make() -> None:
    assert next_sum([7, 8, 14], 9, 100) == 14
    assert next_sum([7, 8, 14], 17, 100) == 21
    assert next_sum([7, 8, 14], 17, 19) == 19
    assert next_sum([0, 5], 6, 100) == 10


@pytest.mark.parametrize(
    ("bars", "reason"),
    [
        ([Pattern(0, ((0, 3),))], "a bar of room 25 holds 30"),
        ([Pattern(0, ((0, 2),))], "the bars do not hold each piece once"),
        ([Pattern(1, ((0, 1),))] * 3, "more bars of a kind are used than there are"),
    ],
)
def test_bars_that_do_not_hold_are_seen(bars: list[Pattern], reason: str) -> None:
    with pytest.raises(WrongBars, match=reason):
        check(problem({10: 3}, bar(25), bar(12, 0, 2)), bars)


def test_cost_and_rank_are_counted_from_the_bars() -> None:
    told = problem({10: 2}, bar(25, 4), bar(12, 3))
    assert cost_of(told, [Pattern(0, ((0, 1),)), Pattern(1, ((0, 1),))]) == 7
    assert rank_of(told, [Pattern(1, ((0, 1),))] * 2) == (6, 24, 2)
