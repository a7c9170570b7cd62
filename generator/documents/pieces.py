"""The cutting list: every piece with its hand, its points and the angles of its ends."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import groupby

from generator.documents.blocks import Piece, PieceList
from generator.documents.task import Task
from generator.prose import lookup
from generator.quantities.cut_pieces import Piece as Cut
from generator.quantities.cut_pieces import in_runs
from generator.quantities.ledger import OpeningLedger
from generator.quantities.worked import Worked
from generator.quantities.workings import print_worked


def piece_list(task: Task) -> PieceList | None:
    """The pieces of every cutting plan at every opening; None where the method cuts none."""
    say = task.language.say
    pieces = tuple(_together(task, [_piece(task, opening, cut) for opening, cut in _cuts(task)]))
    if not pieces:
        return None
    return PieceList(
        key="cutting-list",
        title=say("Cutting list"),
        intro=_intro(task),
        pieces=pieces,
        note=say("Sizes in mm. A size after a plus is left on until the piece is marked from its neighbour."),
    )


def _intro(task: Task) -> str:
    """How the list is read; what a tilt and a minus mean only where there is one."""
    say, cuts = task.language.say, [cut for _, cut in _cuts(task)]
    told = [say("Seen from the face, long edge away from you. Angles are from a square cut.")]
    if any(cut.left_tilt or cut.right_tilt for cut in cuts):
        told.append(say("A tilt is the blade's, from upright."))
    if any(_one_way(cut) for cut in cuts):
        told.append(say("Where both ends lean one way, the two cuts are parallel."))
    turned = [end for cut in cuts if not _one_way(cut) for end in (cut.left_end, cut.right_end)]
    if any(end.magnitude < 0 for end in turned):
        told.append(say("A minus leans the other way, so that the near edge runs past the far one."))
    return " ".join(told)


def _together(task: Task, pieces: Sequence[Piece]) -> Iterator[Piece]:
    """Pieces alike in all but their mark on one line, where their marks count up; any other by itself."""
    for _, same in groupby(pieces, key=lambda piece: replace(piece, mark="")):
        alike = list(same)
        for part in in_runs([piece.mark for piece in alike]):
            run = alike[part]
            yield replace(run[0], mark=_marks(task, run), count=str(len(run)))


def _marks(task: Task, run: Sequence[Piece]) -> str:
    if len(run) == 1:
        return run[0].mark
    return task.language.say("%(first)s to %(last)s", first=run[0].mark, last=run[-1].mark)


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
        piece=task.language.quote(f"{cut.role}, {cut.name}"),
        opening=opening.mark if opening.row else "",
        hand=task.language.quote(cut.hand),
        long_point=f"{long}{over}",
        short_point=short if short != long else "",
        ends=ends_of(task, cut),
        section=_section(cut),
    )


def ends_of(task: Task, cut: Cut) -> str:
    """How both ends are cut, once where they are alike; left before right."""
    if _one_way(cut):
        return task.language.say("%(angle)s, both one way", angle=print_worked(cut.left_end).text())
    ends = [_end(task, *one) for one in ((cut.left_end, cut.left_tilt), (cut.right_end, cut.right_tilt))]
    return ends[0] if ends[0] == ends[1] else " / ".join(ends)


def _one_way(cut: Cut) -> bool:
    """Whether both ends lean the same way by the same angle, as a raked baluster's do."""
    upright = not (cut.left_tilt or cut.right_tilt)
    return upright and cut.left_end.magnitude != 0 and cut.left_end.magnitude == -cut.right_end.magnitude


def _end(task: Task, turned: Worked, tilted: Worked | None) -> str:
    if tilted:
        angle, tilt = (print_worked(each).text() for each in (turned, tilted))
        return task.language.say("%(angle)s, tilt %(tilt)s", angle=angle, tilt=tilt)
    return print_worked(turned).text() if turned.magnitude else task.language.say("square")


def _section(cut: Cut) -> str:
    width = print_worked(cut.width).number
    return f"{width} × {print_worked(cut.thickness).number}" if cut.thickness else width
