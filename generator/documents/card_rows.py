"""The sizes of a bench card: those its method names, or the pieces to cut, or the openings' table's."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from generator.documents.blocks import CardRow
from generator.documents.openings import column_cells, column_head
from generator.documents.pieces import cuts_of, ends_of
from generator.documents.task import Task, sentence
from generator.model.method import Method
from generator.prose import lookup
from generator.quantities.cut_pieces import Piece
from generator.quantities.ledger import OpeningLedger
from generator.quantities.worked import Worked
from generator.quantities.workings import print_worked
from generator.units import LENGTH

Openings = Sequence[OpeningLedger]


def has_card(method: Method) -> bool:
    """True for a method that says what stands on its card, cuts pieces, or works out a column of a table."""
    worked = any(_is_worked(method, column.show.value) for column in method.schedule)
    return bool(method.card and method.card.sizes) or bool(method.cutting.names) or worked


def card_rows(task: Task, openings: Openings) -> tuple[CardRow, ...]:
    """The rows from the first of the three that has any."""
    found = (tuple(rows(task, openings)) for rows in (_named, _cut, _scheduled))
    return next((rows for rows in found if rows), ())


def _named(task: Task, openings: Openings) -> Iterator[CardRow]:
    one = openings[0] if len(openings) == 1 else None
    for size in task.method.card.sizes if task.method.card else ():
        yield CardRow(
            label=column_head(task, size.show.value, size.head),
            note=task.told(size.note, one),
            sizes=column_cells(task, size.show.value, openings),
        )


def _cut(task: Task, openings: Openings) -> Iterator[CardRow]:
    """Each piece by its mark, at the openings that have it."""
    by_opening = [{piece.mark: piece for piece in cuts_of(task, opening)} for opening in openings]
    for mark in dict.fromkeys(mark for pieces in by_opening for mark in pieces):
        each = [pieces.get(mark) for pieces in by_opening]
        first = next(piece for piece in each if piece)
        yield CardRow(
            label=sentence(first.name)
            if mark in first.name.split(", ")[0].split()
            else f"{mark} {first.name}",
            note=_note(task, first),
            sizes=tuple(print_worked(piece.long_point).number if piece else "" for piece in each),
        )


def _note(task: Task, piece: Piece) -> str:
    ends = ends_of(task, piece)
    if not piece.over.magnitude:
        return ends
    over = print_worked(piece.over).text("\u2009")
    return task.language.say("%(ends)s; cut %(over)s over", ends=ends, over=over)


def _scheduled(task: Task, openings: Openings) -> Iterator[CardRow]:
    for column in task.method.schedule:
        shown = column.show.value
        if _is_worked(task.method, shown) and _is_length(lookup(shown, task.ledger, openings[0])):
            head = column_head(task, shown, column.head)
            yield CardRow(label=head, sizes=column_cells(task, shown, openings))


def _is_worked(method: Method, shown: str) -> bool:
    """True for what is worked out, since a size measured there is not cut by."""
    return shown.partition(".")[0] in method.quantities


def _is_length(found: object) -> bool:
    return isinstance(found, Worked) and found.value.dimension == LENGTH
