"""A cutting plan as a slow pure step: plain data in, bytes out, to be remembered and shared out."""

from __future__ import annotations

import json
from collections import deque
from collections.abc import Sequence

from generator.quantities.cutting.orders import CuttingOrder, StockLength
from generator.quantities.cutting.plan import CuttingPlan, planned, refusals
from generator.quantities.cutting.problem import Bars, Kind, Problem
from generator.quantities.cutting.solving import USUAL, Effort, solve
from generator.quantities.results import Finding

STEP = "cutting plan"


def work(order: CuttingOrder, effort: Effort = USUAL) -> bytes:
    """Which pieces come from which length of stock, with the bound; `plan_from` reads it again."""
    if refusals(order):
        return json.dumps(None).encode()
    problem = problem_of(order)
    solved = solve(problem, effort)
    if solved is None:
        return json.dumps(None).encode()
    return json.dumps({"bars": _chosen(order, problem, solved.bars), "bound": solved.bound}).encode()


def plan_from(order: CuttingOrder, made: bytes) -> CuttingPlan:
    """The plan of an order from the bytes `work` made of it, counted again from the pieces."""
    found = json.loads(made)
    if found is None:
        return CuttingPlan(order=order, refused=refusals(order) or (Finding(code="stock-runs-out"),))
    return planned(order, found["bars"], found["bound"])


def plan_of(order: CuttingOrder, effort: Effort = USUAL) -> CuttingPlan:
    """The plan of an order, worked out here and now."""
    return plan_from(order, work(order, effort))


def problem_of(order: CuttingOrder) -> Problem:
    """The bare problem: a size is a piece with its saw cut, and a bar has room for one saw cut more."""
    sizes = _sizes(order)
    spare = min(order.saw(piece) for piece in order.pieces)
    wanted = sorted(set(sizes), reverse=True)
    return Problem(
        sizes=tuple(wanted),
        demands=tuple(sizes.count(size) for size in wanted),
        kinds=tuple(
            Kind(
                room=order.usable(stock) + spare,
                cost=_cost(order, stock),
                length=0 if stock.on_hand is not None else stock.length,
                count=stock.on_hand,
            )
            for stock in order.stock
        ),
    )


def _sizes(order: CuttingOrder) -> list[int]:
    return [piece.length + order.saw(piece) for piece in order.pieces]


def _cost(order: CuttingOrder, stock: StockLength) -> int:
    if stock.on_hand is not None:
        return 0
    return stock.price or 0 if order.priced else stock.length


def _chosen(order: CuttingOrder, problem: Problem, bars: Bars) -> Sequence[tuple[int, Sequence[int]]]:
    """The pieces of each bar by place; alike pieces are given out in the order of the job."""
    waiting: dict[int, deque[int]] = {size: deque() for size in problem.sizes}
    for at, size in enumerate(_sizes(order)):
        waiting[size].append(at)
    return [
        (
            bar.kind,
            [waiting[problem.sizes[at]].popleft() for at, count in bar.items for _ in range(count)],
        )
        for bar in bars
    ]
