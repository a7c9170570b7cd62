"""A wood floor: rows and their widths, boards out of full lengths and offcuts, pipes, boards to buy."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from itertools import groupby

from generator.quantities.board_rows import LaidRow, Rule, Run, fewest_boards, lay_mixed, lay_rows
from generator.quantities.calculator import (
    Example,
    Length,
    Lengths,
    Margin,
    Margins,
    Numbers,
    Offsets,
    Times,
    calculator,
)
from generator.quantities.families.rooms import Room
from generator.quantities.floor_outline import FloorOutline, between, floor_outline, reach
from generator.quantities.floor_rows import Strip, Widths, row_widths, strips
from generator.quantities.functions import mean, total
from generator.quantities.openings_in_walls import Lists, Stretch, stretches
from generator.quantities.rectilinear import holds, sides
from generator.quantities.results import Finding, Findings, InputRefused, found
from generator.quantities.worked import Worked, applied, named, plain
from generator.quantities.workings import print_worked
from generator.units import LENGTH, Value

_HALF = 2
_NEAR = 1e-6
_NONE: tuple[Worked, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class RoomReach:
    """How far a room reaches along its starting wall and across it, at the most."""

    along: Worked
    across: Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class FloorRow:
    """One row from wall to wall: its width and the boards in it from its start, on the left.

    Rows are numbered from the starting wall; `mark` adds a letter where walls part a row into several.
    `start` and `top` are from the floor's leftmost edge and from row 1's. `joints` are from the row's own
    start; `begins` and `ends` say board, offcut or cut, `fitted` notched where a board meets a corner.
    """

    number: Worked
    mark: str
    start: Worked
    top: Worked
    width: Worked
    length: Worked
    pieces: tuple[Worked, ...]
    joints: tuple[Worked, ...]
    begins: str
    ends: str
    fitted: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PipeHole:
    """A hole for a pipe: its row, its place from the row's start and from row 1's edge, its diameter."""

    number: Worked
    row: Worked
    mark: str
    along: Worked
    across: Worked
    hole: Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class FloorCorner:
    """A corner of the floor within its gap, at which its side along a wall begins, and how long that is."""

    wall: Worked
    x: Worked
    y: Worked
    side: Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class Threshold:
    """A door that the floor ends at: its wall, its ends from the wall's left end, and the strip across it."""

    number: Worked
    wall: Worked
    start: Worked
    end: Worked
    strip: Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class FloorLayout:
    """A floor laid out row by row; `edge` goes round it clockwise from the starting wall's left end.

    `boards` is how many the layout opens, `fewest` what its length needs at the least; `waste` is the share
    bought beyond the floor as laid. `first_width` and `last_width` are what the outer rows are ripped to,
    `notched` counts the rows with a board cut round a corner, `beading` is the edge along the walls.
    """

    along: Worked
    across: Worked
    rows: Worked
    first_width: Worked
    last_width: Worked
    edge: tuple[FloorCorner, ...]
    laid: tuple[FloorRow, ...]
    pipes: tuple[PipeHole, ...]
    thresholds: tuple[Threshold, ...]
    boards: Worked | None
    fewest: Worked
    laid_area: Worked
    bought_area: Worked | None
    waste: Worked | None
    notched: Worked
    strip_length: Worked
    beading: Worked
    notes: Findings
    refused: Findings


@calculator(
    example=Example(
        inputs={"room": "room", "start_wall": "1"},
        gives={"along": "5200 mm", "across": "4100 mm"},
    )
)
def room_reach(*, room: Room, start_wall: Times | None = None) -> RoomReach:
    """How far a room with square corners reaches along one of its walls and across it.

    Walls and a wall's number in; lengths out, wall to wall at the widest. Own derivation.
    """
    along, across = reach(room, start_wall)
    return RoomReach(along=along, across=across)


@calculator(
    example=Example(
        inputs={
            "room": "room",
            "gap": "10 mm",
            "cover_width": "190 mm",
            "board_lengths": ("2200 mm",),
            "least_end": "300 mm",
            "least_stagger": "300 mm",
            "least_rip": "60 mm",
            "door_walls": ("1",),
            "door_starts": ("1000 mm",),
            "door_widths": ("838 mm",),
        },
        gives={"along": "5180 mm", "across": "4080 mm", "rows": "22", "beading": "17762 mm"},
    )
)
def floor_layout(
    *,
    room: Room,
    gap: Margin,
    cover_width: Length,
    board_lengths: Lengths,
    least_end: Length,
    least_stagger: Length,
    least_rip: Length,
    start_wall: Times | None = None,
    saw_kerf: Margin | None = None,
    pipe_alongs: Offsets | None = None,
    pipe_acrosses: Margins | None = None,
    pipe_diameters: Lengths | None = None,
    pipe_gap: Margin | None = None,
    door_walls: Numbers | None = None,
    door_starts: Margins | None = None,
    door_widths: Lengths | None = None,
) -> FloorLayout:
    """Rows, widths, starts and boards of a floor in a room of square corners, boards end-matched.

    Lengths in; lengths, counts and areas out. Row 1 lies along `start_wall` and rows begin at its left; walls
    may stand in and out, so that a row is cut round a corner or parted in two. One board length is laid by
    search among starts; several are taken as they come out of the pack, in the order listed. An offcut of a
    row's end only starts a later row and that of a start only ends one, as tongues and grooves demand. Row
    widths are shifted where a strip along any wall would be narrower than `least_rip`. Pipes are from the
    starting wall's left end and from that wall; doors as in `skirting_run`, by the width their strip covers.
    Own derivation; limits are the maker's.
    """
    _refuse(board_lengths, least_end, least_stagger)
    lists = Lists(
        kind="door", walls=door_walls or _NONE, starts=door_starts or _NONE, widths=door_widths or _NONE
    )
    doors = stretches(lists, room.lengths)
    outline = floor_outline(room, gap, least_rip, start_wall)
    widths = row_widths(outline, cover_width, least_rip)
    laid = strips(outline, widths)
    rule = Rule(
        kerf=saw_kerf.number if saw_kerf else 0.0,
        least_end=least_end.number,
        least_stagger=least_stagger.number,
    )
    made = _lay(laid, board_lengths, rule)
    floor = _Floor(
        outline=outline,
        widths=widths,
        strips=laid,
        lengths=board_lengths,
        opened=made[0] if made else None,
        rows=tuple(
            _row(strip, row, board_lengths)
            for strip, row in zip(laid, made[1] if made else (), strict=bool(made))
        ),
    )
    places = (pipe_alongs or _NONE, pipe_acrosses or _NONE, pipe_diameters or _NONE)
    pipes = _pipes(floor, places, pipe_gap or gap, gap)
    return _layout(floor, room, pipes, doors, least_rip)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Floor:
    """What has been laid: the outline, its rows from wall to wall, and how many boards were opened."""

    outline: FloorOutline
    widths: Widths
    strips: tuple[Strip, ...]
    lengths: tuple[Worked, ...]
    opened: int | None
    rows: tuple[FloorRow, ...]

    @property
    def end_to_end(self) -> Worked:
        """All rows end to end, those of one length together."""
        ordered = sorted((strip.length for strip in self.strips), key=lambda length: length.number)
        groups = [list(group) for _, group in groupby(ordered, key=lambda length: length.number)]
        parts = [plain(len(group)) * group[0] for group in groups]
        return named(parts[0] if len(parts) == 1 else total(parts), "end_to_end", "Rows end to end")


def _layout(
    floor: _Floor, room: Room, pipes: tuple[PipeHole, ...], doors: tuple[Stretch, ...], least_rip: Worked
) -> FloorLayout:
    lengths, widths, outline = floor.lengths, floor.widths, floor.outline
    along = named(outline.along, "along", "Floor along the boards")
    across = named(outline.across, "across", "Floor across the boards")
    whole = len(outline.ring) == 4
    laid_area = along * across if whole else outline.area()
    boards = (
        None
        if floor.opened is None
        else applied("boards_opened", (floor.end_to_end, *lengths), _count(floor.opened))
    )
    bought = None if boards is None else _bought(boards, lengths, widths.cover)
    openings = total([door.width for door in doors]) if doors else None
    return FloorLayout(
        along=outline.along,
        across=outline.across,
        rows=plain(widths.rows),
        first_width=widths.first,
        last_width=widths.last,
        edge=tuple(_corners(outline)),
        laid=floor.rows,
        pipes=pipes,
        thresholds=tuple(_threshold(door) for door in doors),
        boards=boards,
        fewest=applied("boards_at_least", (floor.end_to_end, mean(lengths)), _count(_fewest(floor))),
        laid_area=laid_area,
        bought_area=bought,
        waste=None if bought is None else _waste(bought, laid_area),
        notched=plain(sum(not strip.patch.whole for strip in floor.strips)),
        strip_length=openings or plain(0) * room.perimeter,
        beading=room.perimeter - openings if openings else room.perimeter,
        notes=_notes(floor, least_rip),
        refused=() if floor.rows else _no_floor(floor),
    )


def _notes(floor: _Floor, least_rip: Worked) -> Findings:
    widths, lengths = floor.widths, floor.lengths
    return found(
        (widths.shared, Finding(code="rows-shared", actual=widths.first)),
        (widths.shifted, Finding(code="rows-shifted", actual=widths.first)),
        (
            widths.shifted and widths.narrowest.number < least_rip.number - _NEAR,
            Finding(code="strip-narrow", actual=widths.narrowest, limit=least_rip),
        ),
        (len(lengths) > 1, Finding(code="mixed-lengths", actual=mean(lengths))),
    )


def _no_floor(floor: _Floor) -> Findings:
    longest = max((strip.length for strip in floor.strips), key=lambda length: length.number)
    return (Finding(code="no-floor", actual=longest, limit=floor.lengths[0]),)


def _corners(outline: FloorOutline) -> Iterator[FloorCorner]:
    for wall, ((x, y), (next_x, next_y)) in zip(outline.walls, sides(outline.ring), strict=True):
        level = y == next_y
        ends = (outline.x(x), outline.x(next_x)) if level else (outline.y(y), outline.y(next_y))
        start, end = sorted(ends, key=lambda place: place.number)
        yield FloorCorner(wall=plain(wall + 1), x=outline.x(x), y=outline.y(y), side=between(start, end))


def _threshold(door: Stretch) -> Threshold:
    return Threshold(
        number=plain(door.number),
        wall=plain(door.wall + 1),
        start=door.start,
        end=door.end,
        strip=door.width,
    )


def _bought(boards: Worked, lengths: tuple[Worked, ...], cover: Worked) -> Worked:
    length = lengths[0] if len(lengths) == 1 else mean(lengths)
    return named(boards, "boards", "Boards opened") * length * cover


def _waste(bought: Worked, laid: Worked) -> Worked:
    return named(bought, "bought", "Floor bought") / named(laid, "laid", "Floor laid") - 1


def _count(number: int) -> Value:
    return Value(Decimal(number))


def _fewest(floor: _Floor) -> int:
    return fewest_boards(floor.end_to_end.number, mean(floor.lengths).number)


def _refuse(boards: Sequence[Worked], end: Worked, stagger: Worked) -> None:
    shortest = min(boards, key=lambda board: board.number)
    if end > shortest:
        raise InputRefused("end-over-board", "least_end", board=print_worked(shortest).text())
    if _HALF * stagger > shortest:
        raise InputRefused("stagger-over-half", "least_stagger", board=print_worked(shortest).text())


def _lay(
    laid: tuple[Strip, ...], lengths: tuple[Worked, ...], rule: Rule
) -> tuple[int, tuple[LaidRow, ...]] | None:
    runs = [Run(row=strip.row, start=strip.patch.hull.left, length=strip.length.number) for strip in laid]
    if len(lengths) == 1:
        return lay_rows(runs, lengths[0].number, rule)
    return lay_mixed(runs, [length.number for length in lengths], rule)


def _row(strip: Strip, laid: LaidRow, lengths: tuple[Worked, ...]) -> FloorRow:
    pieces = _worked_pieces(laid, strip.length, lengths)
    joints = tuple(total(pieces[: number + 1]) for number in range(len(pieces) - 1))
    only = len(pieces) == 1 and (laid.starts_with_offcut or laid.ends_with_offcut)
    return FloorRow(
        number=plain(strip.row + 1),
        mark=strip.mark,
        start=strip.start,
        top=strip.top,
        width=strip.width,
        length=strip.length,
        pieces=pieces,
        joints=joints,
        begins="offcut" if laid.starts_with_offcut or only else _kind(laid.pieces[0], lengths),
        ends="offcut" if laid.ends_with_offcut or only else _kind(laid.pieces[-1], lengths),
        fitted="" if strip.patch.whole else "notched",
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
    floor: _Floor, lists: tuple[tuple[Worked, ...], ...], room: Worked, gap: Worked
) -> tuple[PipeHole, ...]:
    alongs, acrosses, diameters = lists
    for name, items in (("pipe_acrosses", acrosses), ("pipe_diameters", diameters)):
        if len(items) != len(alongs):
            raise InputRefused("lists-differ", name, found=str(len(items)), wanted=str(len(alongs)))
    places = zip(alongs, acrosses, diameters, strict=True)
    return tuple(
        _pipe(floor, number, (along, across), diameter + 2 * room, gap)
        for number, (along, across, diameter) in enumerate(places, 1)
    )


def _pipe(floor: _Floor, number: int, place: tuple[Worked, Worked], hole: Worked, gap: Worked) -> PipeHole:
    outline = floor.outline
    right = place[0] + outline.origin if outline.origin.number else place[0]
    along, across = right - gap, place[1] - gap
    if not holds(outline.room, (along.number, across.number)):
        raise InputRefused("pipe-outside", "pipe_alongs", number=str(number))
    strip = min(floor.strips, key=lambda strip: strip.off(along.number, across.number))
    return PipeHole(
        number=plain(number),
        row=plain(strip.row + 1),
        mark=strip.mark,
        along=between(strip.start, along),
        across=across,
        hole=hole,
    )
