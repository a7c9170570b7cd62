"""The plan of an order: nothing is lost, the saw has its room, and what is said about it is true."""

from __future__ import annotations

import dataclasses
import json
import os
import subprocess
import sys
from collections import Counter
from decimal import Decimal
from math import cos, radians, tan
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon

from generator.memory.canonical import canonical
from generator.quantities.cutting.habit import habit_of
from generator.quantities.cutting.orders import (
    CuttingOrder,
    StockLength,
    mm_text,
    taken_down,
    taken_up,
    too_long,
)
from generator.quantities.cutting.plan import CuttingPlan, planned
from generator.quantities.cutting.problem import WrongBars
from generator.quantities.cutting.rows import BAR_HEAD, bar_rows, buying_rows, piece_rows
from generator.quantities.cutting.task import plan_from, plan_of, work
from generator.quantities.cutting.wording import outcome_words
from generator.quantities.results import finding_words
from tests.cutting.samples import chance, door, doors, order, piece

ROOT = Path(__file__).parents[2]


@st.composite
def orders(draw: st.DrawFn) -> CuttingOrder:
    """Orders with square and mitred pieces, a saw, a trim, offcuts and sometimes prices."""
    angles = st.sampled_from([0.0, 22.5, 37.1, 45.0, 52.9])
    lengths = st.integers(100, 1900)
    cuts = draw(st.lists(st.tuples(lengths, angles, angles), min_size=1, max_size=9))
    priced = draw(st.booleans())
    stock = [StockLength(length=length, price=length // 4 if priced else None) for length in (4000, 6001)]
    on_hand = draw(st.lists(st.integers(300, 3000), max_size=2, unique=True))
    kept = [StockLength(length=length, on_hand=1) for length in on_hand]
    return order(
        *(piece(f"P{at}", mm / 2, left, right) for at, (mm, left, right) in enumerate(cuts, 1)),
        stock=(*kept, *stock),
        kerf=draw(st.sampled_from([Decimal(0), Decimal("1.2"), Decimal("2.2"), Decimal(3)])),
        trim=draw(st.sampled_from([0, 20, 31])),
    )


@settings(max_examples=80, deadline=None)
@given(told=orders())
def test_stock_is_pieces_saw_trim_and_offcut_to_the_last_half_millimetre(told: CuttingOrder) -> None:
    plan = plan_of(told)
    totals = plan.totals
    assert totals is not None
    whole = totals.pieces + totals.kerf + totals.trim + totals.offcut
    assert totals.bought + totals.on_hand == whole
    assert totals.bought + totals.on_hand == sum(bar.stock.length for bar in plan.bars)
    for bar in plan.bars:
        assert bar.stock.length == bar.pieces + bar.kerf + bar.trim + bar.offcut
        assert bar.offcut >= 0
    marks = Counter(placed.piece.mark for bar in plan.bars for placed in bar.placed)
    assert marks == Counter(cut.mark for cut in told.pieces)


@settings(max_examples=80, deadline=None)
@given(told=orders())
def test_the_saw_has_room_for_the_steeper_of_two_facing_cuts(told: CuttingOrder) -> None:
    """Along the long edge a cut takes the kerf over the cosine of its angle."""
    for bar in plan_of(told).bars:
        for one, two in zip(bar.placed, bar.placed[1:], strict=False):
            steeper = max(one.piece.right_end, two.piece.left_end)
            needed = float(told.kerf) / cos(radians(steeper)) * 2
            assert two.start - one.end >= needed - 1e-6
            assert two.start == one.next_start
        assert bar.placed[-1].end <= bar.stock.length - bar.trim


@settings(max_examples=80, deadline=None)
@given(
    one=st.sampled_from([0.0, 22.5, 37.1, 45.0, 52.9]),
    two=st.sampled_from([0.0, 22.5, 37.1, 45.0, 52.9]),
    kerf=st.sampled_from([1.2, 2.2, 3.0]),
)
def test_no_cut_touches_the_neighbouring_piece(one: float, two: float, kerf: float) -> None:
    """The bands the saw takes outside two facing ends, laid out as polygons by shapely."""
    face, gap = 69.0, max(kerf / cos(radians(one)), kerf / cos(radians(two)))
    run, back, far = face * tan(radians(one)), face * tan(radians(two)), 500.0
    left = Polygon([(-far, 0), (0, 0), (-run, face), (-far, face)])
    right = Polygon([(gap, 0), (far, 0), (far, face), (gap + back, face)])
    wide, near = kerf / cos(radians(one)), kerf / cos(radians(two))
    first = Polygon([(0, 0), (wide, 0), (wide - run, face), (-run, face)])
    second = Polygon([(gap - near, 0), (gap, 0), (gap + back, face), (gap + back - near, face)])
    assert first.intersection(right).area == pytest.approx(0, abs=1e-6)
    assert second.intersection(left).area == pytest.approx(0, abs=1e-6)


@settings(max_examples=60, deadline=None)
@given(told=orders())
def test_what_is_spent_is_never_under_the_bound(told: CuttingOrder) -> None:
    plan = plan_of(told)
    assert plan.totals is not None
    bought = sum(bar.stock.length for bar in plan.bars if not bar.on_hand)
    price = sum(bar.stock.price or 0 for bar in plan.bars if not bar.on_hand)
    assert plan.spent == (price if told.priced else bought)
    assert 0 <= plan.bound <= plan.spent
    assert plan.proven == (plan.gap == 0)


@settings(max_examples=40, deadline=None)
@given(told=orders())
def test_the_order_of_the_pieces_does_not_change_what_is_spent(told: CuttingOrder) -> None:
    turned = dataclasses.replace(told, pieces=told.pieces[::-1])
    assert plan_of(turned).spent == plan_of(told).spent


@settings(max_examples=40, deadline=None)
@given(told=orders())
def test_a_wider_saw_never_needs_less(told: CuttingOrder) -> None:
    wider = dataclasses.replace(told, kerf=told.kerf + 1)
    narrow, wide = plan_of(told), plan_of(wider)
    if narrow.proven and wide.proven:
        assert wide.spent >= narrow.spent


def test_a_door_comes_from_the_lengths_a_joiner_would_take() -> None:
    plan = plan_of(doors(1))
    assert plan.proven
    placed = [
        [(each.piece.mark, each.start / 2, each.end / 2, each.next_start / 2) for each in bar.placed]
        for bar in plan.bars
    ]
    assert placed == [
        [("1AL", 0, 2070, 2074.5), ("1AR", 2074.5, 4144.5, 4149)],
        [("1AH", 0, 924, 928.5)],
    ]
    assert [(bar.stock.length / 2, bar.offcut / 2) for bar in plan.bars] == [(4400, 251), (2200, 1271.5)]


def test_alike_pieces_go_out_in_the_order_of_the_job() -> None:
    plan = plan_of(order(*(piece(f"P{at}", 1000) for at in range(1, 5))))
    assert [placed.piece.mark for bar in plan.bars for placed in bar.placed] == ["P1", "P2", "P3", "P4"]


def test_bars_come_in_the_order_of_the_job() -> None:
    bars = plan_of(doors(4)).bars
    assert [bar.placed[0].piece.mark for bar in bars] == ["1AL", "2AH", "2AL", "3AL", "4AL"]


def test_hands_stay_with_their_pieces() -> None:
    rows = piece_rows([plan_of(doors(2))])
    assert [(row[3], row[6], row[9], row[10]) for row in rows[1:]] == [
        ("1AL", "left", "0", "45"), ("1AH", "", "45", "45"), ("1AR", "right", "45", "0"),
        ("2AL", "left", "0", "45"), ("2AH", "", "45", "45"), ("2AR", "right", "45", "0"),
    ]  # fmt: skip


# Refusals


def test_a_piece_longer_than_every_length_is_refused_with_limit_and_actual() -> None:
    told = order(*door("1", 768, 4330), trim=20)
    plan = plan_of(told)
    (finding,) = plan.refused
    assert (plan.bars, plan.totals, plan.proven) == ((), None, False)
    assert [cut.mark for cut in too_long(told)] == ["1AL", "1AR"]
    assert finding_words(finding, space=" ") == (
        "1AL is 4411 mm long and the longest piece its stock gives is 4380 mm"
    )


def test_too_few_lengths_on_hand_are_refused() -> None:
    plan = plan_of(order(piece("A", 900), piece("B", 900), stock=(StockLength(length=2000, on_hand=1),)))
    assert [finding_words(finding) for finding in plan.refused] == [
        "there are too few lengths on hand, and none to buy"
    ]


def test_a_plan_that_does_not_hold_its_pieces_is_seen() -> None:
    told = order(piece("A", 1500), piece("B", 1500))
    with pytest.raises(WrongBars, match="B ends at 6006 on a bar of 4400"):
        planned(told, [(0, [0, 1])], 0)
    with pytest.raises(WrongBars, match="the bars do not hold each piece once"):
        planned(told, [(0, [0])], 0)
    with pytest.raises(WrongBars, match="cost less than was proved possible"):
        planned(told, [(1, [0, 1])], 10_000)


# The same on every machine


def test_the_same_order_gives_the_same_bytes_in_any_process() -> None:
    """Hash seeds change the order of sets and dictionaries of a careless search."""
    code = (
        "import sys; from generator.quantities.cutting.task import work; "
        "from tests.cutting.samples import chance, doors; "
        "sys.stdout.buffer.write(work(doors(9)) + work(chance(7, 45, 300, 2000)))"
    )
    made = [
        subprocess.run(
            [sys.executable, "-c", code],
            cwd=ROOT,
            env={**os.environ, "PYTHONHASHSEED": seed},
            capture_output=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    ]
    assert made[0] == made[1] == work(doors(9)) + work(chance(7, 45, 300, 2000))


def test_an_order_is_plain_data_and_a_plan_comes_back_from_bytes() -> None:
    told = doors(3)
    assert canonical(told) == canonical(doors(3))
    assert plan_from(told, work(told)) == plan_of(told)
    assert json.loads(work(order(piece("A", 9000)))) is None


def test_the_solver_writes_nothing(capfd: pytest.CaptureFixture[str]) -> None:
    plan_of(chance(5, 40, 300, 2000))
    assert capfd.readouterr() == ("", "")


# Halves, habit, words, rows


@pytest.mark.parametrize(
    ("mm", "up", "down"),
    [
        (Decimal("924"), 1848, 1848),
        (Decimal("924.1"), 1849, 1848),
        (0.1 + 0.2 + 923.7, 1848, 1848),
        (4.243, 9, 8),
    ],
)
def test_pieces_are_taken_up_and_stock_down_to_half_a_millimetre(
    mm: Decimal | float, up: int, down: int
) -> None:
    assert (taken_up(mm), taken_down(mm)) == (up, down)


def test_halves_are_printed_as_the_trade_prints_them() -> None:
    assert [mm_text(halves) for halves in (0, 1, 4147, 4148)] == ["0", "0.5", "2073.5", "2074"]


def test_the_habit_adds_a_percentage_and_takes_whole_lengths() -> None:
    """2070 + 924 + 2070 = 5064 mm, 10 % more 5570.4 mm: 3 of 2200 make 6600, 2 of 4400 make 8800."""
    habit = habit_of(doors(1))
    assert habit is not None
    assert (habit.net / 2, habit.with_waste / 2) == (5064, Decimal("5570.4"))
    assert (habit.lengths, habit.stock / 2, habit.bought / 2) == (3, 2200, 6600)


def outcome(plan: CuttingPlan) -> str:
    return outcome_words(plan)


def test_the_outcome_says_what_is_bought_that_it_is_proved_and_what_the_habit_does() -> None:
    assert outcome(plan_of(doors(1))) == (
        "Buy 1 × 2200, 1 × 4400. No plan needs less length: proved. "
        "The usual habit, 10 % added to 5.06 m and taken up to whole lengths, would be 3 × 2200."
    )


def test_the_habit_is_called_too_few_or_more_only_where_that_is_proved() -> None:
    """Four pieces of 1500 need four lengths of 2200; 6000 mm and 10 % of it fill three."""
    short = (StockLength(length=4400),)
    four = [piece(f"P{at}", 1500) for at in range(4)]
    assert outcome(plan_of(order(*four, stock=short))) == (
        "Buy 4 × 2200. No plan needs less length: proved. The usual habit, 10 % added to 6.00 m and taken up "
        "to whole lengths, would be 3 × 2200: too few, since it looks at no piece."
    )
    assert outcome(plan_of(order(*four, stock=short, habit=Decimal(60)))).endswith(
        "5 × 2200: more than is needed."
    )
    on_hand = (*short, StockLength(length=3200, on_hand=1))
    assert outcome(plan_of(order(*four, stock=on_hand))).endswith("would be 3 × 2200.")


def test_a_gap_is_stated_and_taken_up() -> None:
    plan = planned(order(piece("A", 1500)), [(1, [0])], 4400)
    assert (plan.gap, plan.proven) == (Decimal(50), False)
    assert "A better plan could save at most 50.00 % of the length." in outcome(plan)


def test_prices_and_lengths_on_hand_are_said() -> None:
    stock = (StockLength(length=2000, on_hand=1), StockLength(length=4400, price=1250))
    plan = plan_of(order(piece("A", 900), piece("B", 2000), stock=stock))
    assert outcome(plan).startswith("Buy 1 × 2200 and use 1 × 1000 on hand. No plan costs less: proved.")
    assert buying_rows([plan])[1:] == (
        ("Torus architrave, MDF, 69 × 18 mm", "69 × 18", "1000", "1", "", "", "yes"),
        ("Torus architrave, MDF, 69 × 18 mm", "69 × 18", "2200", "1", "12.50", "12.50", ""),
    )


def test_the_bars_are_rows_with_running_lengths() -> None:
    assert [row[2:] for row in bar_rows([plan_of(doors(1))])] == [
        BAR_HEAD[2:],
        ("1", "4400", "", "1", "1AL", "0", "2070", "2074.5", ""),
        ("1", "4400", "", "2", "1AR", "2074.5", "4144.5", "4149", "251"),
        ("2", "2200", "", "1", "1AH", "0", "924", "928.5", "1271.5"),
    ]  # fmt: skip
