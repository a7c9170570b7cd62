"""A cutting plan's figures as its drawing takes them, a set of values for each sheet."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal

from generator.drawings.bars import sheets_of
from generator.drawings.figures import Size
from generator.drawings.orders import Bound
from generator.drawings.stock import StockBar, StockPiece
from generator.drawings.words import say
from generator.quantities.cutting.orders import CuttingOrder, PieceToCut, mm_text
from generator.quantities.cutting.plan import Bar, CuttingPlan, Placed
from generator.quantities.cutting.rows import section_text

NAME = "cutting_plan"
_FEW = 4


def sheet_values(plan: CuttingPlan, *, explained: bool = False) -> tuple[Mapping[str, Bound], ...]:
    """The values of the drawing `cutting_plan` for each sheet of a plan; none where it was refused.

    `explained` where an earlier plan of the same document has said how running lengths are read.
    """
    if plan.totals is None:
        return ()
    order = plan.order
    shared: dict[str, Bound] = {
        "material": _material(order),
        "face_width": _size(order.width),
        "kerf": _size(order.kerf),
        "profile": order.profile,
    }
    bars = tuple(_bar(order, bar) for bar in plan.bars)
    return tuple(
        {
            **shared,
            "bars": share,
            **({} if at else {"marks": _marks(order)}),
            **({"explained": "yes"} if at or explained else {}),
        }
        for at, share in enumerate(sheets_of(bars))
    )


def _material(order: CuttingOrder) -> str:
    """The material's label, with the section of the pieces where the label does not say it."""
    sizes = [size for size in (order.width, order.thickness) if size is not None]
    said = all(f"{size.normalize():f}" in order.label for size in sizes)
    return order.label if said else f"{order.label}, {section_text(order)}"


def _size(mm: Decimal) -> Size:
    return Size(mm=float(mm), text=f"{mm.normalize():f}")


def _halves(halves: int) -> Size:
    return Size(mm=halves / 2, text=mm_text(halves))


def _bar(order: CuttingOrder, bar: Bar) -> StockBar:
    return StockBar(
        number=str(bar.number),
        length=_halves(bar.stock.length),
        trim=_halves(order.trim),
        pieces=tuple(_piece(placed) for placed in bar.placed),
        offcut=_halves(bar.offcut),
        on_hand=bar.on_hand,
    )


def _piece(placed: Placed) -> StockPiece:
    piece = placed.piece
    return StockPiece(
        mark=piece.mark,
        length=_halves(piece.length),
        start=_halves(placed.start),
        end=_halves(placed.end),
        next_start=_halves(placed.next_start),
        left=piece.left_end,
        right=piece.right_end,
    )


def _marks(order: CuttingOrder) -> str:
    """What the letters of the marks stand for, each once, and which pieces are cut over their length."""
    names: dict[str, dict[str, None]] = {}
    for piece in order.pieces:
        names.setdefault(piece.name, {})[_letters(piece)] = None
    before = say("The opening's number, then ") if any(piece.opening for piece in order.pieces) else ""
    listed = "; ".join(f"{_several(tuple(marks))} {name}" for name, marks in names.items())
    mitred = any(piece.steepest for piece in order.pieces)
    points = [say("Lengths are to the long points.")] if mitred else []
    return " ".join((f"{before}{listed}.", *points, *_left_on(order)))


def _several(marks: tuple[str, ...]) -> str:
    """Marks one by one, or from the first to the last where they are many."""
    return (
        ", ".join(marks)
        if len(marks) <= _FEW
        else say("%(marks)s to %(marks_2)s", marks=marks[0], marks_2=marks[-1])
    )


def _left_on(order: CuttingOrder) -> list[str]:
    over: dict[str, dict[str, None]] = {}
    for piece in order.pieces:
        if piece.over:
            over.setdefault(mm_text(piece.over), {})[_letters(piece)] = None
    return [
        say("%(several)s is cut %(mm)s over and marked in place.", several=_several(tuple(marks)), mm=mm)
        if len(marks) == 1
        else say(
            "%(several)s are cut %(mm)s over and marked in place.", several=_several(tuple(marks)), mm=mm
        )
        for mm, marks in over.items()
    ]


def _letters(piece: PieceToCut) -> str:
    return piece.mark.removeprefix(piece.opening)
