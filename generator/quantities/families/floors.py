"""A wood floor: rows and their widths, boards out of full lengths and offcuts, pipes, boards to buy."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from generator.quantities.board_rows import LaidRow, Rule, fewest_boards, lay_mixed, lay_rows
from generator.quantities.calculator import Example, Length, Lengths, Margin, Margins, calculator
from generator.quantities.functions import mean, round_down, total
from generator.quantities.results import Finding, Findings, InputRefused, found
from generator.quantities.worked import Worked, applied, named, plain
from generator.quantities.workings import print_worked
from generator.units import LENGTH, Value

MOST_ROWS = 150
_HALF = 2
_NONE: tuple[Worked, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class FloorRow:
    """One row from the starting wall: its width and the boards in it from its start.

    `joints` are from the row's start; `begins` and `ends` say board, offcut or rip.
    """

    number: Worked
    width: Worked
    pieces: tuple[Worked, ...]
    joints: tuple[Worked, ...]
    begins: str
    ends: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PipeHole:
    """A hole for a pipe: its row, its place from the row's start and the starting wall, and its diameter."""

    number: Worked
    row: Worked
    along: Worked
    across: Worked
    hole: Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class FloorLayout:
    """A floor laid out row by row.

    `boards` is how many the layout opens, `fewest` what its length needs at the least; `waste` is the share
    bought beyond the floor as laid. `first_width` and `last_width` are what the outer rows are ripped to.
    """

    along: Worked
    across: Worked
    rows: Worked
    first_width: Worked
    last_width: Worked
    laid: tuple[FloorRow, ...]
    pipes: tuple[PipeHole, ...]
    boards: Worked | None
    fewest: Worked
    laid_area: Worked
    bought_area: Worked | None
    waste: Worked | None
    notes: Findings
    refused: Findings


@dataclass(frozen=True, slots=True, kw_only=True)
class _Widths:
    """Width of each row from the starting wall."""

    first: Worked
    last: Worked
    rows: int
    cover: Worked
    balanced: bool

    def of(self, at: int) -> Worked:
        if at == 0:
            return self.first
        return self.last if at == self.rows - 1 else self.cover


@calculator(
    example=Example(
        inputs={
            "room_length": "4460 mm",
            "room_width": "3570 mm",
            "gap": "10 mm",
            "cover_width": "190 mm",
            "board_lengths": ("2200 mm",),
            "least_end": "300 mm",
            "least_stagger": "300 mm",
            "least_rip": "60 mm",
        },
        gives={"along": "4440 mm", "across": "3550 mm", "rows": "19", "last_width": "130 mm", "boards": "39"},
    )
)
def floor_layout(
    *,
    room_length: Length,
    room_width: Length,
    gap: Margin,
    cover_width: Length,
    board_lengths: Lengths,
    least_end: Length,
    least_stagger: Length,
    least_rip: Length,
    saw_kerf: Margin | None = None,
    pipe_alongs: Margins | None = None,
    pipe_acrosses: Margins | None = None,
    pipe_diameters: Lengths | None = None,
    pipe_gap: Margin | None = None,
) -> FloorLayout:
    """Rows, widths, starts and boards of a floor in a room of four square corners, boards end-matched.

    Lengths in; lengths, counts and areas out. `room_length` lies along the boards. One board length is laid
    by search among starts; several are taken as they come out of the pack, in the order listed. An offcut of
    a row's end only starts a later row and that of a start only ends one, as tongues and grooves demand.
    A last row narrower than `least_rip` is shared with the first. Own derivation; limits are the maker's.
    """
    _refuse(room_length, room_width, gap, board_lengths, least_end, least_stagger)
    along, across = room_length - 2 * gap, room_width - 2 * gap
    widths = _widths(named(across, "across", "Floor across the boards"), cover_width, least_rip)
    rule = Rule(
        row=along.number,
        kerf=saw_kerf.number if saw_kerf else 0.0,
        least_end=least_end.number,
        least_stagger=least_stagger.number,
    )
    made = _lay(widths.rows, board_lengths, rule)
    pipes = _pipes(
        (pipe_alongs or _NONE, pipe_acrosses or _NONE, pipe_diameters or _NONE), pipe_gap or gap, gap, widths
    )
    laid = made[1] if made else ()
    rows = tuple(_row(at, row, along, board_lengths, widths) for at, row in enumerate(laid))
    return _layout(along, across, widths, rows, pipes, board_lengths, made[0] if made else None)


def _layout(
    along: Worked,
    across: Worked,
    widths: _Widths,
    rows: tuple[FloorRow, ...],
    pipes: tuple[PipeHole, ...],
    lengths: tuple[Worked, ...],
    opened: int | None,
) -> FloorLayout:
    long, broad = named(along, "along", "Floor along the boards"), named(across, "across", "Floor across")
    laid_area = long * broad
    boards = None if opened is None else applied("boards_opened", (along, *lengths), _count(opened))
    bought = None if boards is None else _bought(boards, lengths, widths.cover)
    return FloorLayout(
        along=along,
        across=across,
        rows=plain(widths.rows),
        first_width=widths.first,
        last_width=widths.last,
        laid=rows,
        pipes=pipes,
        boards=boards,
        fewest=applied(
            "boards_at_least", (along, mean(lengths)), _count(_fewest(widths.rows, along, lengths))
        ),
        laid_area=laid_area,
        bought_area=bought,
        waste=None if bought is None else _waste(bought, laid_area),
        notes=found(
            (widths.balanced, Finding(code="rows-shared", actual=widths.first)),
            (len(lengths) > 1, Finding(code="mixed-lengths", actual=mean(lengths))),
        ),
        refused=() if rows else (Finding(code="no-floor", actual=along, limit=lengths[0]),),
    )


def _bought(boards: Worked, lengths: tuple[Worked, ...], cover: Worked) -> Worked:
    length = lengths[0] if len(lengths) == 1 else mean(lengths)
    return named(boards, "boards", "Boards opened") * length * cover


def _waste(bought: Worked, laid: Worked) -> Worked:
    return named(bought, "bought", "Floor bought") / named(laid, "laid", "Floor laid") - 1


def _count(number: int) -> Value:
    return Value(Decimal(number))


def _fewest(rows: int, along: Worked, lengths: Sequence[Worked]) -> int:
    return fewest_boards(rows, along.number, mean(lengths).number)


def _refuse(
    length: Worked, width: Worked, gap: Worked, boards: Sequence[Worked], end: Worked, stagger: Worked
) -> None:
    if length <= 2 * gap or width <= 2 * gap:
        raise InputRefused("gap-takes-room", "gap")
    shortest = min(boards, key=lambda board: board.number)
    if end > shortest:
        raise InputRefused("end-over-board", "least_end", board=print_worked(shortest).text())
    if _HALF * stagger > shortest:
        raise InputRefused("stagger-over-half", "least_stagger", board=print_worked(shortest).text())


def _widths(across: Worked, cover: Worked, least_rip: Worked) -> _Widths:
    """Whole rows, with a last one ripped; where it would be too narrow, first and last share the loss."""
    whole = round_down(across / cover, plain(1))
    left = across - whole * cover
    full = int(whole.magnitude)
    if full > MOST_ROWS:
        raise InputRefused("too-many-marks", "cover_width", most=str(MOST_ROWS))
    if full == 0:
        return _Widths(first=across, last=across, rows=1, cover=cover, balanced=False)
    if left.number < 1e-6:
        return _Widths(first=cover, last=cover, rows=full, cover=cover, balanced=False)
    if left >= least_rip:
        return _Widths(first=cover, last=left, rows=full + 1, cover=cover, balanced=False)
    shared = (cover + left) / 2
    return _Widths(first=shared, last=shared, rows=full + 1, cover=cover, balanced=True)


def _lay(rows: int, lengths: tuple[Worked, ...], rule: Rule) -> tuple[int, tuple[LaidRow, ...]] | None:
    if len(lengths) == 1:
        return lay_rows(rows, lengths[0].number, rule)
    return lay_mixed(rows, [length.number for length in lengths], rule)


def _row(at: int, laid: LaidRow, along: Worked, lengths: tuple[Worked, ...], widths: _Widths) -> FloorRow:
    pieces = _worked_pieces(laid, along, lengths)
    joints = tuple(total(pieces[: number + 1]) for number in range(len(pieces) - 1))
    return FloorRow(
        number=plain(at + 1),
        width=widths.of(at),
        pieces=pieces,
        joints=joints,
        begins="offcut" if laid.starts_with_offcut else _kind(laid.pieces[0], lengths),
        ends="offcut" if laid.ends_with_offcut else _kind(laid.pieces[-1], lengths),
    )


def _kind(piece: float, lengths: tuple[Worked, ...]) -> str:
    return "board" if any(abs(piece - length.number) < 1e-6 for length in lengths) else "cut"


def _worked_pieces(laid: LaidRow, along: Worked, lengths: tuple[Worked, ...]) -> tuple[Worked, ...]:
    """The pieces with their arithmetic: boards as bought, the start as chosen, the end what is left."""
    by_length = {length.number: length for length in lengths}
    start = _start(laid.pieces[0], along, lengths)
    middle = tuple(by_length.get(piece) or _start(piece, along, lengths) for piece in laid.pieces[1:-1])
    if len(laid.pieces) == 1:
        return (along,)
    end = along - start
    for piece in middle:
        end = end - piece
    return (start, *middle, end)


def _start(piece: float, along: Worked, lengths: tuple[Worked, ...]) -> Worked:
    whole = next((length for length in lengths if length.number == piece), None)
    if whole is not None:
        return whole
    chosen = Decimal(str(round(piece, 3)))
    # Once chosen it is cut to that size; what the room is out by falls to the last piece of the row.
    return applied("start_chosen", (along, *lengths), Value(chosen, LENGTH), lambda _: float(chosen))


def _pipes(
    lists: tuple[tuple[Worked, ...], ...], room: Worked, gap: Worked, widths: _Widths
) -> tuple[PipeHole, ...]:
    alongs, acrosses, diameters = lists
    for name, items in (("pipe_acrosses", acrosses), ("pipe_diameters", diameters)):
        if len(items) != len(alongs):
            raise InputRefused("lists-differ", name, found=str(len(items)), wanted=str(len(alongs)))
    places = zip(alongs, acrosses, diameters, strict=True)
    return tuple(
        PipeHole(
            number=plain(number),
            row=plain(_row_at((across - gap).number, widths)),
            along=along - gap,
            across=across - gap,
            hole=diameter + 2 * room,
        )
        for number, (along, across, diameter) in enumerate(places, 1)
    )


def _row_at(across: float, widths: _Widths) -> int:
    """The row a place lies in, counted from 1; outside the floor the nearest row."""
    at = 0.0
    for number in range(widths.rows):
        at += widths.of(number).number
        if across < at:
            return number + 1
    return widths.rows
