"""The cutting list: every piece with its hand, its points and the angles of its ends."""

from __future__ import annotations

from collections.abc import Iterator

from generator.documents.blocks import Piece, PieceList
from generator.documents.task import Task
from generator.prose import lookup
from generator.quantities.cut_pieces import Piece as Cut
from generator.quantities.ledger import OpeningLedger
from generator.quantities.workings import print_worked


def piece_list(task: Task) -> PieceList | None:
    """The pieces of every cutting plan at every opening; None where the method cuts none."""
    say = task.language.say
    pieces = tuple(_piece(task, opening, cut) for opening, cut in _cuts(task))
    if not pieces:
        return None
    return PieceList(
        key="cutting-list",
        title=say("Cutting list"),
        intro=say("Seen from the face, long edge away from you. Angles are from a square cut."),
        pieces=pieces,
        note=say("Sizes in mm. A size after a plus is left on until the piece is marked from its neighbour."),
    )


def _cuts(task: Task) -> Iterator[tuple[OpeningLedger, Cut]]:
    for opening in task.ledger.openings:
        yield from ((opening, cut) for cut in cuts_of(task, opening))


def cuts_of(task: Task, opening: OpeningLedger) -> Iterator[Cut]:
    """The pieces of every cutting plan at one opening."""
    for plan in task.method.cutting.values():
        found = lookup(plan.pieces.value, task.ledger, opening)
        if isinstance(found, tuple):
            yield from (cut for cut in found if isinstance(cut, Cut))


def _piece(task: Task, opening: OpeningLedger, cut: Cut) -> Piece:
    long, short = print_worked(cut.long_point).number, print_worked(cut.short_point).number
    over = f" + {print_worked(cut.over).number}" if cut.over.magnitude else ""
    return Piece(
        mark=f"{opening.mark}{cut.mark}" if opening.row else cut.mark,
        piece=f"{cut.role}, {cut.name}",
        opening=opening.mark if opening.row else "",
        hand=cut.hand,
        long_point=f"{long}{over}",
        short_point=short if short != long else "",
        ends=ends_of(task, cut),
        section=_section(cut),
    )


def ends_of(task: Task, cut: Cut) -> str:
    """How both ends are cut, once where they are alike; left before right."""
    if cut.left_end.magnitude and cut.left_end.magnitude == -cut.right_end.magnitude:
        return task.language.say("%(angle)s, both one way", angle=print_worked(cut.left_end).text())
    ends = [_end(task, end.magnitude == 0, print_worked(end).text()) for end in (cut.left_end, cut.right_end)]
    return ends[0] if ends[0] == ends[1] else " / ".join(ends)


def _end(task: Task, square: bool, angle: str) -> str:
    return task.language.say("square") if square else angle


def _section(cut: Cut) -> str:
    width = print_worked(cut.width).number
    return f"{width} × {print_worked(cut.thickness).number}" if cut.thickness else width
