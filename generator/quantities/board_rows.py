"""Rows of end-matched boards laid out of full boards and offcuts: which start each row takes.

A board's two ends differ. What is sawn off the end of a row keeps its tongue end and can only start a later
row; what is sawn off a start keeps its groove end and can only end one. So offcuts are kept apart, and a
layout that swaps them could not be laid. A row that walls part is laid as several runs, each from wall to
wall.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import accumulate, takewhile

_NEAR = 1e-6
_WIDTH = 40
_PARTS = (5 / 6, 2 / 3, 1 / 2, 1 / 3)
_SHARES = (1.0, 0.5, 1 / 3, 2 / 3, 0.25, 0.75, 0.2, 0.8, 0.4, 0.6)


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """What every run must keep, in mm: the saw, the least end piece and the least stagger."""

    kerf: float
    least_end: float
    least_stagger: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """A stretch of a row from wall to wall: its row, where it starts along the rows, and its length."""

    row: int
    start: float
    length: float


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidRow:
    """One run as laid: the lengths in order, its joints, and whether its first and last piece are offcuts.

    Joints are told along the rows. A run of one piece out of an offcut says by which of the two it came from.
    """

    run: Run
    pieces: tuple[float, ...]
    joints: tuple[float, ...]
    starts_with_offcut: bool
    ends_with_offcut: bool


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


def lay_rows(runs: Sequence[Run], board: float, rule: Rule) -> tuple[int, tuple[LaidRow, ...]] | None:
    """Boards opened and the runs laid, out of boards of one length; None where no run keeps the rule.

    The runs are in the order of laying, row by row. A beam search over them: at each the most hopeful of the
    floors so far are carried on. The count is a count of a floor that can be laid, not proven the least;
    compare it with `fewest_boards`.
    """
    beam: Sequence[_State] = (_State(0, (), (), ()),)
    for run, after in zip(runs, (*runs[1:], None), strict=True):
        since = after.row - 1 if after else run.row
        grown = {_key(state, since): state for old in beam for state in _next(old, run, board, rule)}
        beam = sorted(grown.values(), key=lambda state: state.worth(board))[:_WIDTH]
        if not beam:
            return None
    best = min(beam, key=lambda state: (state.boards, state.worth(board)))
    return best.boards, best.rows


def fewest_boards(length: float, board: float) -> int:
    """No floor needs fewer boards than its rows end to end hold."""
    return int(-(-(length - _NEAR) // board))


def _key(state: _State, since: int) -> tuple[object, ...]:
    """What the runs to come can tell two floors apart by: boards, offcuts, joints from a row on."""
    near = tuple(joint for laid in _from_row(state.rows, since) for joint in laid.joints)
    return state.boards, tuple(sorted(state.starts)), tuple(sorted(state.ends)), near


def _from_row(laid: tuple[LaidRow, ...], row: int) -> Iterator[LaidRow]:
    """The runs laid last, back to the first of a row."""
    return takewhile(lambda each: each.run.row >= row, reversed(laid))


def _next(state: _State, run: Run, board: float, rule: Rule) -> Iterator[_State]:
    if run.length <= board + _NEAR:
        yield from _of_one_piece(state, run, board, rule)
        return
    above = _above(run, state.rows)
    for start, opened, left in _starts(state, run, board, rule):
        row = _row(start, run, board, rule)
        if row is None or not _staggered(joints_of(row, run), above, rule):
            continue
        starts = _without(state.starts, start, opened)
        grown = _State(state.boards + opened, starts, left, state.rows)
        yield _ended(grown, run, row, board, rule, offcut=not opened)


def _of_one_piece(state: _State, run: Run, board: float, rule: Rule) -> Iterator[_State]:
    """A run no longer than a board: out of the shortest offcut of either kind that holds it, or a new board.

    It meets walls at both ends, so either kind serves. What is left of an offcut keeps its own end; what is
    left of a board keeps its tongue.
    """
    for heap in ("starts", "ends"):
        offcuts: tuple[float, ...] = getattr(state, heap)
        fits = [offcut for offcut in offcuts if offcut >= run.length - _NEAR]
        if fits:
            kept = (*_without(offcuts, min(fits), 0), *_spare(min(fits), run, rule))
            laid = _whole(run, starts=heap == "starts", ends=heap == "ends")
            yield _State(
                state.boards,
                kept if heap == "starts" else state.starts,
                kept if heap == "ends" else state.ends,
                (*state.rows, laid),
            )
    starts = (*state.starts, *_spare(board, run, rule))
    laid = _whole(run, starts=False, ends=False)
    yield _State(state.boards + 1, starts, state.ends, (*state.rows, laid))


def _whole(run: Run, *, starts: bool, ends: bool) -> LaidRow:
    return LaidRow(run=run, pieces=(run.length,), joints=(), starts_with_offcut=starts, ends_with_offcut=ends)


def _spare(stock: float, run: Run, rule: Rule) -> tuple[float, ...]:
    """What is left of a length out of which a whole run was cut, where it may still serve."""
    left = round(stock - run.length - rule.kerf, 3)
    return (left,) if left >= rule.least_end - _NEAR else ()


def _starts(
    state: _State, run: Run, board: float, rule: Rule
) -> Iterator[tuple[float, int, tuple[float, ...]]]:
    """Each way to start a run: its length, boards opened for it, and the offcuts for row ends after it.

    A full board always serves.
    """
    for length in dict.fromkeys(state.starts):
        yield length, 0, state.ends
    for length in _cuts(state, run, board, rule):
        spare = board - length - rule.kerf
        left = (*state.ends, spare) if spare >= rule.least_end else state.ends
        yield length, 1, left


def _cuts(state: _State, run: Run, board: float, rule: Rule) -> tuple[float, ...]:
    """Lengths worth cutting a start to: shares of a board, and those that make an end of an offcut."""
    wanted = [share * board for share in _SHARES]
    wanted += [rule.least_end, run.length % board - rule.least_end, run.length % board]
    wanted += [(run.length - end) % board or board for end in state.ends]
    wanted += [(run.length - rule.least_end) % board or board]
    whole = (board if length > board - 1 else float(int(length + _NEAR)) for length in wanted)
    return tuple(dict.fromkeys(length for length in whole if rule.least_end <= length <= board))


def _without(starts: tuple[float, ...], used: float, opened: int) -> tuple[float, ...]:
    if opened:
        return starts
    at = starts.index(used)
    return (*starts[:at], *starts[at + 1 :])


def _row(start: float, run: Run, board: float, rule: Rule) -> tuple[float, ...] | None:
    """The run that begins with `start`, or None where what is left for its end is too short."""
    full, end = divmod(run.length - start + _NEAR, board)
    end -= _NEAR
    pieces = [start, *([board] * int(full))]
    if end > _NEAR:
        pieces.append(end)
    return tuple(pieces) if pieces[-1] >= rule.least_end - _NEAR else None


def joints_of(pieces: Sequence[float], run: Run) -> tuple[float, ...]:
    """Where the joints of a run stand, along the rows."""
    return tuple(accumulate(pieces[:-1], initial=run.start))[1:]


def _staggered(own: tuple[float, ...], above: tuple[float, ...], rule: Rule) -> bool:
    """Whether joints keep off those of the row before; beside each other in one row they never meet."""
    least = rule.least_stagger - _NEAR
    return all(abs(a - b) >= least for a in own for b in above)


def _above(run: Run, laid: tuple[LaidRow, ...]) -> tuple[float, ...]:
    """The joints of the row before a run's own."""
    near = (each for each in _from_row(laid, run.row - 1) if each.run.row < run.row)
    return tuple(joint for each in near for joint in each.joints)


def _ended(
    state: _State, run: Run, row: tuple[float, ...], board: float, rule: Rule, *, offcut: bool
) -> _State:
    """The floor with a run laid: full boards opened, and its end out of an offcut or a new board."""
    full = sum(1 for piece in row[1:] if piece >= board - _NEAR)
    short = row[-1] if len(row) > 1 and row[-1] < board - _NEAR else None
    fits = [end for end in state.ends if short is not None and end >= short - _NEAR]
    laid = LaidRow(
        run=run,
        pieces=row,
        joints=joints_of(row, run),
        starts_with_offcut=offcut,
        ends_with_offcut=bool(fits),
    )
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
    """A run filled so far out of mixed boards, with what is left of the board that was cut last."""

    pieces: tuple[float, ...]
    at: float
    hand: _Hand
    spare: float = 0.0


def lay_mixed(
    runs: Sequence[Run], boards: Sequence[float], rule: Rule
) -> tuple[int, tuple[LaidRow, ...]] | None:
    """Boards used and the runs, out of boards of mixed lengths that come as often as they are listed.

    Any board within reach may come next; the first run that keeps the rule is laid. The offcut of a run's end
    starts the next where it may. None where a run has no way on.
    """
    hand, spare = _Hand(tuple(boards), tuple(boards)), 0.0
    floor: tuple[LaidRow, ...] = ()
    for run in runs:
        row = _mixed_row(hand, spare, run, floor, rule)
        if row is None:
            return None
        made, begun = row
        laid = LaidRow(
            run=run,
            pieces=made.pieces,
            joints=joints_of(made.pieces, run),
            starts_with_offcut=begun,
            ends_with_offcut=False,
        )
        floor = (*floor, laid)
        hand, spare = made.hand, made.spare
    return hand.used, floor


def _mixed_row(
    hand: _Hand, spare: float, run: Run, floor: tuple[LaidRow, ...], rule: Rule
) -> tuple[_Filled, bool] | None:
    above = tuple(joint - run.start for joint in _above(run, floor))
    for start, after, offcut in _mixed_starts(hand, spare, rule):
        piece = min(start, run.length)
        begun = _Filled((piece,), piece, after, max(start - piece - rule.kerf, 0.0))
        made = _fill(begun, above, run, rule)
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


def _fill(row: _Filled, above: tuple[float, ...], run: Run, rule: Rule) -> _Filled | None:
    """Carry a run on to its end, trying each board within reach; the last one is cut."""
    if row.at >= run.length - _NEAR:
        return row
    if any(abs(row.at - joint) < rule.least_stagger - _NEAR for joint in above):
        return None
    left = run.length - row.at
    for board, hand in row.hand.choices():
        piece = min(board, left)
        grown = _Filled((*row.pieces, piece), row.at + piece, hand, max(board - left - rule.kerf, 0.0))
        if piece == left and piece < rule.least_end - _NEAR:
            return None
        made = _fill(grown, above, run, rule)
        if made is not None:
            return made
    return None
