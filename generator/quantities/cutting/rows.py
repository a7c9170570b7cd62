"""Cutting plans as rows for a spreadsheet: what to buy, what to cut, and the bars. Lengths in mm."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from decimal import Decimal

from generator.quantities.cutting.orders import CuttingOrder, PieceToCut, mm_text
from generator.quantities.cutting.plan import Bar, CuttingPlan

Rows = tuple[tuple[str, ...], ...]

BUYING_HEAD = ("material", "section mm", "length mm", "number", "price each", "price", "on hand")
PIECE_HEAD = (
    "material", "section mm", "bar", "mark", "opening", "piece", "hand", "length to cut mm",
    "left on mm", "left end saw deg", "right end saw deg",
)  # fmt: skip
BAR_HEAD = (
    "material", "section mm", "bar", "length mm", "on hand", "place", "mark", "starts at mm", "ends at mm",
    "next starts at mm", "offcut mm",
)  # fmt: skip


def buying_rows(plans: Sequence[CuttingPlan]) -> Rows:
    """The lengths to buy and to take from what is on hand, by material, with a head."""
    return (BUYING_HEAD, *(row for plan in plans for row in _buying(plan)))


def piece_rows(plans: Sequence[CuttingPlan]) -> Rows:
    """Every piece with the bar it comes from, in the order of the job, with a head."""
    return (PIECE_HEAD, *(row for plan in plans for row in _pieces(plan)))


def bar_rows(plans: Sequence[CuttingPlan]) -> Rows:
    """Every bar, a row for each piece on it in working order, with a head."""
    return (BAR_HEAD, *(row for plan in plans for bar in plan.bars for row in _bar(plan.order, bar)))


def section_text(order: CuttingOrder) -> str:
    """Width and thickness, such as 69 × 18."""
    sizes = [size for size in (order.width, order.thickness) if size is not None]
    return " × ".join(f"{size.normalize():f}" for size in sizes)


def _buying(plan: CuttingPlan) -> Iterator[tuple[str, ...]]:
    counts = Counter(bar.stock for bar in plan.bars)
    for stock in plan.order.stock:
        if counts[stock]:
            price = "" if stock.price is None else _pounds(stock.price)
            whole = "" if stock.price is None else _pounds(stock.price * counts[stock])
            on_hand = "yes" if stock.on_hand is not None else ""
            yield (*_head(plan.order), mm_text(stock.length), str(counts[stock]), price, whole, on_hand)


def _pieces(plan: CuttingPlan) -> Iterator[tuple[str, ...]]:
    bars = {placed.piece: bar.number for bar in plan.bars for placed in bar.placed}
    for piece in plan.order.pieces:
        yield (*_head(plan.order), str(bars.get(piece, "")), *_piece(piece))


def _piece(piece: PieceToCut) -> tuple[str, ...]:
    return (
        piece.mark, piece.opening, piece.name, piece.hand, mm_text(piece.length), mm_text(piece.over),
        _degrees(piece.left_end), _degrees(piece.right_end),
    )  # fmt: skip


def _bar(order: CuttingOrder, bar: Bar) -> Iterator[tuple[str, ...]]:
    for place, placed in enumerate(bar.placed, 1):
        last = place == len(bar.placed)
        yield (
            *_head(order), str(bar.number), mm_text(bar.stock.length), "yes" if bar.on_hand else "",
            str(place), placed.piece.mark, mm_text(placed.start), mm_text(placed.end),
            mm_text(placed.next_start), mm_text(bar.offcut) if last else "",
        )  # fmt: skip


def _head(order: CuttingOrder) -> tuple[str, str]:
    return order.label, section_text(order)


def _degrees(angle: float) -> str:
    return f"{Decimal(str(angle)).quantize(Decimal('0.1')).normalize():f}"


def _pounds(pence: int) -> str:
    return f"{Decimal(pence) / 100:.2f}"
