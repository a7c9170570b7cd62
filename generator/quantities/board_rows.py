"""Rows of end-matched boards laid out of full boards and offcuts: which start each row takes.

A board's two ends differ. What is sawn off the end of a row keeps its tongue end and can only start a later
row; what is sawn off a start keeps its groove end and can only end one. So offcuts are kept apart, and a
layout that swaps them could not be laid.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

_NEAR = 1e-6
_WIDTH = 40
_PARTS = (5 / 6, 2 / 3, 1 / 2, 1 / 3)
_SHARES = (1.0, 0.5, 1 / 3, 2 / 3, 0.25, 0.75, 0.2, 0.8, 0.4, 0.6)


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """What every row must keep, in mm: its length, the saw, the least end piece and the least stagger."""

    row: float
    kerf: float
    least_end: float
    least_stagger: float


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidRow:
    """One row: the lengths in order as laid, and whether its first and its last piece are offcuts."""

    pieces: tuple[float, ...]
    starts_with_offcut: bool
    ends_with_offcut: bool

    @property
    def joints(self) -> tuple[float, ...]:
        """Where its joints stand, from the start of the row."""
        places, at = [], 0.0
        for piece in self.pieces[:-1]:
            at += piece
            places.append(at)
        return tuple(places)


@dataclass(frozen=True, slots=True)
class _State:
    """A floor laid so far: boards opened, offcuts that may start or end a row, and the rows."""

    boards: int
    starts: tuple[float, ...]
    ends: tuple[float, ...]
    rows: tuple[LaidRow, ...]

    def worth(self, board: float) -> tuple[float, ...]:
        """Less is better: boards opened, an offcut counted as half its length since it may not fit again."""
        spare = sum(self.starts) + sum(self.ends)
        return (self.boards * board - spare / 2, self.boards)


def lay_rows(rows: int, board: float, rule: Rule) -> tuple[int, tuple[LaidRow, ...]] | None:
    """Boards opened and the rows, out of boards of one length; None where no row keeps the rule.

    A beam search over the rows: at each row the most hopeful of the floors so far are carried on. The count
    is a count of a floor that can be laid, not proven the least; compare it with `fewest_boards`.
    """
    beam: Sequence[_State] = (_State(0, (), (), ()),)
    for _ in range(rows):
        grown = {_key(state): state for old in beam for state in _next(old, board, rule)}
        beam = sorted(grown.values(), key=lambda state: state.worth(board))[:_WIDTH]
        if not beam:
            return None
    best = min(beam, key=lambda state: (state.boards, state.worth(board)))
    return best.boards, best.rows


def fewest_boards(rows: int, row: float, board: float) -> int:
    """No floor needs fewer boards than its length holds."""
    return int(-(-(rows * row - _NEAR) // board))


def _key(state: _State) -> tuple[object, ...]:
    last = state.rows[-1].joints if state.rows else ()
    return state.boards, tuple(sorted(state.starts)), tuple(sorted(state.ends)), last


def _next(state: _State, board: float, rule: Rule) -> Iterator[_State]:
    for start, opened, left in _starts(state, board, rule):
        row = _row(start, board, rule)
        if row is None or not _staggered(row, state.rows, rule):
            continue
        grown = replace(
            state, boards=state.boards + opened, starts=_without(state.starts, start, opened), ends=left
        )
        yield _ended(grown, row, board, rule, offcut=not opened)


def _starts(state: _State, board: float, rule: Rule) -> Iterator[tuple[float, int, tuple[float, ...]]]:
    """Each way to start a row: its length, boards opened for it, and the offcuts for row ends after it.

    A full board always serves. A row no longer than a board starts and ends with one piece.
    """
    if rule.row <= board + _NEAR:
        yield rule.row, 1, state.ends
        return
    for length in dict.fromkeys(state.starts):
        yield length, 0, state.ends
    for length in _cuts(state, board, rule):
        spare = board - length - rule.kerf
        left = (*state.ends, spare) if spare >= rule.least_end else state.ends
        yield length, 1, left


def _cuts(state: _State, board: float, rule: Rule) -> tuple[float, ...]:
    """Lengths worth cutting a start to: shares of a board, and those that make an end of an offcut."""
    wanted = [share * board for share in _SHARES]
    wanted += [rule.least_end, rule.row % board - rule.least_end, rule.row % board]
    wanted += [(rule.row - end) % board or board for end in state.ends]
    wanted += [(rule.row - rule.least_end) % board or board]
    whole = (board if length > board - 1 else float(int(length + _NEAR)) for length in wanted)
    return tuple(dict.fromkeys(length for length in whole if rule.least_end <= length <= board))


def _without(starts: tuple[float, ...], used: float, opened: int) -> tuple[float, ...]:
    if opened:
        return starts
    at = starts.index(used)
    return (*starts[:at], *starts[at + 1 :])


def _row(start: float, board: float, rule: Rule) -> tuple[float, ...] | None:
    """The row that begins with `start`, or None where what is left for its end is too short."""
    if start >= rule.row - _NEAR:
        return (rule.row,)
    full, end = divmod(rule.row - start + _NEAR, board)
    end -= _NEAR
    pieces = [start, *([board] * int(full))]
    if end > _NEAR:
        pieces.append(end)
    return tuple(pieces) if pieces[-1] >= rule.least_end - _NEAR else None


def _staggered(row: tuple[float, ...], laid: tuple[LaidRow, ...], rule: Rule) -> bool:
    if not laid:
        return True
    own = LaidRow(pieces=row, starts_with_offcut=False, ends_with_offcut=False).joints
    return all(abs(a - b) >= rule.least_stagger - _NEAR for a in own for b in laid[-1].joints)


def _ended(state: _State, row: tuple[float, ...], board: float, rule: Rule, *, offcut: bool) -> _State:
    """The floor with a row laid: full boards opened, and its end out of an offcut or a new board."""
    full = sum(1 for piece in row[1:] if piece >= board - _NEAR)
    short = row[-1] if len(row) > 1 and row[-1] < board - _NEAR else None
    fits = [end for end in state.ends if short is not None and end >= short - _NEAR]
    laid = LaidRow(pieces=row, starts_with_offcut=offcut, ends_with_offcut=bool(fits))
    boards, starts, ends = state.boards + full, state.starts, state.ends
    if fits:
        ends = _without(ends, min(fits), 0)
    elif short is not None:
        boards += 1
        spare = board - short - rule.kerf
        starts = (*starts, round(spare, 3)) if spare >= rule.least_end - _NEAR else starts
    return _State(boards, starts, ends, (*state.rows, laid))


@dataclass(frozen=True, slots=True)
class _Hand:
    """Boards within reach, one of each listed length's turn, filled up from the pack as boards are used."""

    lengths: tuple[float, ...]
    boards: tuple[float, ...]
    used: int = 0

    def take(self, at: int) -> _Hand:
        """The hand after a board is laid and the next of the pack taken up."""
        fresh = self.lengths[self.used % len(self.lengths)]
        return _Hand(self.lengths, (*self.boards[:at], *self.boards[at + 1 :], fresh), self.used + 1)

    def choices(self) -> Iterator[tuple[float, _Hand]]:
        """Each length within reach with the hand after it, the one longest within reach first."""
        seen: set[float] = set()
        for at, board in enumerate(self.boards):
            if board not in seen:
                seen.add(board)
                yield board, self.take(at)


@dataclass(frozen=True, slots=True)
class _Filled:
    """A row filled so far out of mixed boards, with what is left of the board that was cut last."""

    pieces: tuple[float, ...]
    at: float
    hand: _Hand
    spare: float = 0.0


def lay_mixed(rows: int, boards: Sequence[float], rule: Rule) -> tuple[int, tuple[LaidRow, ...]] | None:
    """Boards used and the rows, out of boards of mixed lengths that come as often as they are listed.

    Any board within reach may come next; the first row that keeps the rule is laid. The offcut of a row's end
    starts the next where it may. None where a row has no way on.
    """
    hand, spare = _Hand(tuple(boards), tuple(boards)), 0.0
    floor: tuple[LaidRow, ...] = ()
    for _ in range(rows):
        row = _mixed_row(hand, spare, floor[-1].joints if floor else (), rule)
        if row is None:
            return None
        made, begun = row
        floor = (*floor, LaidRow(pieces=made.pieces, starts_with_offcut=begun, ends_with_offcut=False))
        hand, spare = made.hand, made.spare
    return hand.used, floor


def _mixed_row(
    hand: _Hand, spare: float, above: tuple[float, ...], rule: Rule
) -> tuple[_Filled, bool] | None:
    for start, after, offcut in _mixed_starts(hand, spare, rule):
        begun = _Filled((min(start, rule.row),), min(start, rule.row), after)
        made = _fill(begun, above, rule)
        if made is not None:
            return made, offcut
    return None


def _mixed_starts(hand: _Hand, spare: float, rule: Rule) -> Iterator[tuple[float, _Hand, bool]]:
    if spare >= rule.least_end:
        yield spare, hand, True
    for board, after in hand.choices():
        yield board, after, False
    for board, after in hand.choices():
        parts = (float(int(board * share)) for share in _PARTS)
        yield from ((part, after, False) for part in parts if part >= rule.least_end)


def _fill(row: _Filled, above: tuple[float, ...], rule: Rule) -> _Filled | None:
    """Carry a row on to its end, trying each board within reach; the last one is cut."""
    if row.at >= rule.row - _NEAR:
        return row
    if any(abs(row.at - joint) < rule.least_stagger - _NEAR for joint in above):
        return None
    left = rule.row - row.at
    for board, hand in row.hand.choices():
        piece = min(board, left)
        grown = _Filled((*row.pieces, piece), row.at + piece, hand, max(board - left - rule.kerf, 0.0))
        if piece == left and piece < rule.least_end - _NEAR:
            return None
        made = _fill(grown, above, rule)
        if made is not None:
            return made
    return None
