"""The usual way to order: the length of all pieces, some per cent for waste, taken up to whole lengths."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import ROUND_CEILING, Decimal

from generator.quantities.cutting.orders import CuttingOrder, StockLength, net_length


@dataclass(frozen=True, slots=True, kw_only=True)
class Habit:
    """What the habit orders: `lengths` of one `stock` length, in half millimetres; `cost` in pence.

    Common practice, no source; it looks at no piece and may order too little as well as too much.
    """

    percent: Decimal
    net: int
    with_waste: Decimal
    stock: int
    lengths: int
    cost: int | None

    @property
    def bought(self) -> int:
        """The length ordered."""
        return self.stock * self.lengths


def habit_of(order: CuttingOrder) -> Habit | None:
    """The habit with the length to buy that makes it order least; None where none is long enough."""
    return min(_habits(order), key=lambda habit: (habit.bought, habit.lengths), default=None)


def _habits(order: CuttingOrder) -> Iterator[Habit]:
    net, longest = net_length(order.pieces), max(piece.length for piece in order.pieces)
    wanted = net * (100 + order.habit) / 100
    for stock in order.stock:
        if stock.on_hand is None and order.usable(stock) >= longest:
            lengths = int((wanted / stock.length).to_integral_value(ROUND_CEILING))
            yield Habit(
                percent=order.habit,
                net=net,
                with_waste=wanted,
                stock=stock.length,
                lengths=lengths,
                cost=_cost(stock, lengths),
            )


def _cost(stock: StockLength, lengths: int) -> int | None:
    return None if stock.price is None else stock.price * lengths
