"""A piece to cut: its mark, hand, long and short point, the saw angle at each end and the length to cut."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from itertools import groupby

from generator.quantities.worked import Worked, literal, millimetres, named
from generator.units import ANGLE, Value

_NUMBERED = re.compile(r"(.*?)(\d+)")
SQUARE = literal(Value(Decimal(0), ANGLE))


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """One piece, seen from its face with its long edge away from you.

    `left_end` and `right_end` are saw angles from a square cut, 0 for square. `cut_length` is the long
    point with `over` left on for fitting. A tilt is how far the blade leans from upright at that end, None
    where it stands upright; a saw angle with a minus leaves the near edge the longer one there. `hand` is
    empty for a piece that has none. `role` is what the piece is, `mark` is unique in one opening.
    """

    mark: str
    name: str
    role: str
    hand: str
    long_point: Worked
    short_point: Worked
    left_end: Worked
    right_end: Worked
    over: Worked
    cut_length: Worked
    width: Worked
    thickness: Worked | None
    left_tilt: Worked | None = None
    right_tilt: Worked | None = None


def mark_of(role: str, name: str) -> str:
    """The first letter of the role and of the piece: AL is the architrave's left leg."""
    return f"{role[0]}{name[0]}".upper()


def round_the_opening(head: Worked, left: Worked, right: Worked) -> Worked:
    """The length of a head and two legs together."""
    across, up = named(head, "head", "Head"), named(left, "leg", "Leg")
    if left.value == right.value:
        return across + 2 * up
    return across + up + named(right, "right_leg", "Right leg")


def square_piece(role: str, name: str, length: Worked, *, width: Worked, thickness: Worked | None) -> Piece:
    """A piece cut square at both ends; a square section has no hand."""
    return Piece(
        mark=mark_of(role, name),
        name=name,
        role=role,
        hand="",
        long_point=length,
        short_point=length,
        left_end=SQUARE,
        right_end=SQUARE,
        over=millimetres(0),
        cut_length=length,
        width=width,
        thickness=thickness,
    )


FEWEST_TOGETHER = 3


def in_runs(marks: Sequence[str]) -> Iterator[slice]:
    """Where marks count up by one, such as R4, R5, R6: three or more together, any other by itself."""
    start = 0
    while start < len(marks):
        end = start + 1
        while end < len(marks) and _follows(marks[end - 1], marks[end]):
            end += 1
        if end - start < FEWEST_TOGETHER:
            end = start + 1
        yield slice(start, end)
        start = end


def alike(pieces: Sequence[Piece]) -> Iterator[slice]:
    """Where pieces are alike in all but marks that count up, three or more; any other by itself."""
    start = 0
    for _, same in groupby(pieces, key=_but_mark):
        found = list(same)
        for run in in_runs([piece.mark for piece in found]):
            yield slice(start + run.start, start + run.stop)
        start += len(found)


def _but_mark(piece: Piece) -> tuple[object, ...]:
    sizes = (
        piece.long_point,
        piece.short_point,
        piece.left_end,
        piece.right_end,
        piece.over,
        piece.cut_length,
    )
    words = (piece.name, piece.role, piece.hand)
    more = (piece.width, piece.thickness, piece.left_tilt, piece.right_tilt)
    return *words, *(item.value if item else None for item in (*sizes, *more))


def _follows(mark: str, after: str) -> bool:
    one, two = _NUMBERED.fullmatch(mark), _NUMBERED.fullmatch(after)
    return bool(one and two and one[1] == two[1] and int(two[2]) == int(one[2]) + 1)
