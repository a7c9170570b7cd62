"""A cutting plan: each bar with its pieces at their running lengths, the totals, and how good it is."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from generator.quantities.cutting.habit import Habit, habit_of
from generator.quantities.cutting.orders import CuttingOrder, PieceToCut, StockLength, in_mm, longest_usable
from generator.quantities.cutting.problem import WrongBars
from generator.quantities.results import Finding, Findings
from generator.quantities.worked import millimetres


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """A piece on a bar by running lengths from the squared end; `next_start` is where the saw leaves off."""

    piece: PieceToCut
    start: int
    end: int
    next_start: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """One bar, numbered from 1; lengths in half millimetres. `trim` is what comes off both ends together."""

    number: int
    stock: StockLength
    placed: tuple[Placed, ...]
    trim: int
    kerf: int
    offcut: int

    @property
    def on_hand(self) -> bool:
        """Whether the bar is there already and need not be bought."""
        return self.stock.on_hand is not None

    @property
    def pieces(self) -> int:
        """The lengths of its pieces together."""
        return sum(placed.piece.length for placed in self.placed)


@dataclass(frozen=True, slots=True, kw_only=True)
class Totals:
    """Sums over the bars: bought + on_hand = pieces + kerf + trim + offcut; `cost` in pence where priced."""

    bought: int
    on_hand: int
    pieces: int
    kerf: int
    trim: int
    offcut: int
    cost: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class CuttingPlan:
    """The plan of one order.

    `bound` is what no plan can do with less than: pence where the order is priced, otherwise half
    millimetres bought. `refused` says why there are no bars.
    """

    order: CuttingOrder
    bars: tuple[Bar, ...] = ()
    totals: Totals | None = None
    bound: int = 0
    habit: Habit | None = None
    refused: Findings = ()

    @property
    def spent(self) -> int:
        """What is measured against `bound`."""
        if self.totals is None:
            return 0
        return self.totals.bought if self.totals.cost is None else self.totals.cost

    @property
    def proven(self) -> bool:
        """Whether no plan can do with less."""
        return self.totals is not None and self.spent == self.bound

    @property
    def gap(self) -> Decimal:
        """The most that a better plan could save, in per cent of this one."""
        return Decimal(100 * (self.spent - self.bound)) / self.spent if self.spent else Decimal(0)


def refusals(order: CuttingOrder) -> Findings:
    """Why an order cannot be planned at all: the longest piece is longer than any length of stock gives."""
    longest = max(order.pieces, key=lambda piece: piece.length)
    if longest.length <= longest_usable(order):
        return ()
    return (
        Finding(
            code="piece-over-stock",
            limit=millimetres(in_mm(longest_usable(order))),
            actual=millimetres(in_mm(longest.length)),
            about=longest.mark,
        ),
    )


def laid_out(order: CuttingOrder, chosen: Sequence[tuple[int, Sequence[int]]]) -> tuple[Bar, ...]:
    """The bars of (stock by place, pieces by place), in working order; WrongBars where they do not fit."""
    _check_pieces(order, chosen)
    ordered = sorted(chosen, key=lambda one: _bar_order(order.stock[one[0]], one[1]))
    return tuple(
        _bar(order, number, order.stock[stock], [order.pieces[at] for at in sorted(pieces)])
        for number, (stock, pieces) in enumerate(ordered, 1)
    )


def _bar_order(stock: StockLength, pieces: Sequence[int]) -> tuple[bool, int, int]:
    """Bars on hand first, then the longest, then as the job goes on."""
    return stock.on_hand is None, -stock.length, min(pieces)


def _check_pieces(order: CuttingOrder, chosen: Sequence[tuple[int, Sequence[int]]]) -> None:
    if sorted(at for _, pieces in chosen for at in pieces) != list(range(len(order.pieces))):
        raise WrongBars("the bars do not hold each piece once")
    for at, stock in enumerate(order.stock):
        if stock.on_hand is not None and sum(1 for used, _ in chosen if used == at) > stock.on_hand:
            raise WrongBars("more of a length is used than is on hand")


def _bar(order: CuttingOrder, number: int, stock: StockLength, pieces: Sequence[PieceToCut]) -> Bar:
    usable, at, placed = order.usable(stock), 0, list[Placed]()
    for piece in sorted(pieces, key=lambda piece: (-order.saw(piece), -piece.length)):
        end = at + piece.length
        if end > usable:
            raise WrongBars(f"{piece.mark} ends at {end} on a bar of {usable}")
        after = min(end + order.saw(piece), usable)
        placed.append(Placed(piece=piece, start=at, end=end, next_start=after))
        at = after
    kerf = sum(each.next_start - each.end for each in placed)
    trim = stock.length - usable
    return Bar(number=number, stock=stock, placed=tuple(placed), trim=trim, kerf=kerf, offcut=usable - at)


def totals_of(order: CuttingOrder, bars: Sequence[Bar]) -> Totals:
    """The sums over the bars, each counted by itself."""
    bought = [bar for bar in bars if not bar.on_hand]
    return Totals(
        bought=sum(bar.stock.length for bar in bought),
        on_hand=sum(bar.stock.length for bar in bars if bar.on_hand),
        pieces=sum(bar.pieces for bar in bars),
        kerf=sum(bar.kerf for bar in bars),
        trim=sum(bar.trim for bar in bars),
        offcut=sum(bar.offcut for bar in bars),
        cost=sum(bar.stock.price or 0 for bar in bought) if order.priced else None,
    )


def planned(order: CuttingOrder, chosen: Sequence[tuple[int, Sequence[int]]], bound: int) -> CuttingPlan:
    """The plan of chosen bars, everything counted again from the pieces; WrongBars below the bound."""
    bars = laid_out(order, chosen)
    plan = CuttingPlan(
        order=order, bars=bars, totals=totals_of(order, bars), bound=bound, habit=habit_of(order)
    )
    if plan.spent < bound:
        raise WrongBars("the bars cost less than was proved possible")
    return plan
