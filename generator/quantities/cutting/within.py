"""What a cutting plan comes to when pieces are as short or as long as the limits of their sizes allow.

No piece that grows lets less stock do, so the plans with every piece at its shortest and at its longest are
the ends of the range. Sections stay as worked: a strip that comes out thicker is another batch.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, is_dataclass, replace
from typing import Any

from generator.model.folder import Project
from generator.problems import ProblemLog
from generator.quantities.cut_pieces import Piece
from generator.quantities.cutting.plan import CuttingPlan
from generator.quantities.cutting.plans import cutting_orders
from generator.quantities.cutting.task import plan_of
from generator.quantities.ledger import Entry, Ledger, OpeningLedger
from generator.quantities.limits import Limits, limits_of
from generator.quantities.worked import Worked, literal
from generator.units import Value


@dataclass(frozen=True, slots=True, kw_only=True)
class PlansWithin:
    """One order planned with its pieces at their shortest and at their longest; either may be refused."""

    shortest: CuttingPlan
    longest: CuttingPlan

    @property
    def open(self) -> bool:
        """Whether other stock might be needed."""
        return self._stock(self.shortest) != self._stock(self.longest)

    @staticmethod
    def _stock(plan: CuttingPlan) -> tuple[int, ...]:
        return tuple(sorted(bar.stock.length for bar in plan.bars))


def plans_within(ledger: Ledger, project: Project) -> tuple[PlansWithin, ...]:
    """Each cutting plan of a ledger at both ends of its limits, in the plans' order; none without limits."""
    if not any(_open(piece) for piece in _pieces(ledger)):
        return ()
    ends = (_at_end(ledger, lambda found: found.low), _at_end(ledger, lambda found: found.high))
    shortest, longest = (
        [plan_of(each) for each in cutting_orders(end, project, ProblemLog())] for end in ends
    )
    return tuple(
        PlansWithin(shortest=short, longest=long) for short, long in zip(shortest, longest, strict=True)
    )


def _pieces(ledger: Ledger) -> list[Piece]:
    names = [cutting.pieces.value.partition(".") for cutting in ledger.method.cutting.values()]
    found = [
        getattr(entry.result, field, ()) if field else entry.result
        for opening in ledger.openings
        for name, _, field in names
        if (entry := ledger.entry(name, opening))
    ]
    return [
        piece for pieces in found if isinstance(pieces, tuple) for piece in pieces if isinstance(piece, Piece)
    ]


def _open(piece: Piece) -> bool:
    found = limits_of(piece.cut_length)
    return found is not None and found.open


End = Callable[[Limits], Value | None]


def _at_end(ledger: Ledger, end: End) -> Ledger:
    return replace(ledger, openings=tuple(_opening(ledger, opening, end) for opening in ledger.openings))


def _opening(ledger: Ledger, opening: OpeningLedger, end: End) -> OpeningLedger:
    entries: dict[str, Entry] = dict(opening.entries)
    for cutting in ledger.method.cutting.values():
        name, _, field = cutting.pieces.value.partition(".")
        if name in entries:
            entries[name] = replace(entries[name], result=_moved(entries[name].result, field, end))
    return replace(opening, entries=entries)


def _moved(result: Any, field: str, end: End) -> Any:
    if not field:
        return _all_moved(result, end)
    if not is_dataclass(result) or isinstance(result, type):
        return result
    return replace(result, **{field: _all_moved(getattr(result, field), end)})


def _all_moved(pieces: Any, end: End) -> Any:
    if not isinstance(pieces, tuple):
        return pieces
    return tuple(_piece(piece, end) if isinstance(piece, Piece) else piece for piece in pieces)


def _piece(piece: Piece, end: End) -> Piece:
    return replace(piece, long_point=_at(piece.long_point, end), cut_length=_at(piece.cut_length, end))


def _at(item: Worked, end: End) -> Worked:
    """The value at one end of its limits; as worked where it has none or they could not be followed."""
    found = limits_of(item)
    value = end(found) if found else None
    return item if value is None else literal(value)
