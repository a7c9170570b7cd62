"""Skirting round a room: which piece first, what each end is, how long each is cut, where headings fall."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import TypeAlias

from generator.quantities.calculator import (
    Angle,
    Example,
    Length,
    Lengths,
    Margin,
    Margins,
    Numbers,
    Times,
    calculator,
)
from generator.quantities.cut_pieces import SQUARE, Piece
from generator.quantities.families.rooms import Room
from generator.quantities.functions import greatest, least, round_up, tan, total
from generator.quantities.headings import Run, heading_places
from generator.quantities.openings_in_walls import Lists, Stretch, stretches
from generator.quantities.results import Finding, Findings, InputRefused, found
from generator.quantities.rooms import outline
from generator.quantities.worked import Worked, limited, literal, millimetres, named, plain
from generator.units import ANGLE, LENGTH, Value

SCRIBE, SQUARED, MITRE, HEADING, DOOR = "scribe", "square", "mitre", "heading", "door"
LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"
_STRAIGHT = literal(Value(Decimal(180), ANGLE))
_RIGHT = literal(Value(Decimal(90), ANGLE))
_HALF_RIGHT = literal(Value(Decimal(45), ANGLE))
_BLOCK = Decimal(40)
_GRID = Decimal(10)
_NONE: tuple[Worked, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class SkirtingPiece:
    """One length as it is seen facing its wall, lettered in the order of fitting.

    A joint is scribe, square, mitre, heading or door; its saw angle is from a square cut, through the
    thickness. `start` and `end` are on the wall, from its left end; `behind` says radiator or nothing.
    """

    mark: str
    wall: Worked
    left_joint: str
    right_joint: str
    left_saw: Worked
    right_saw: Worked
    start: Worked
    end: Worked
    length_to_cut: Worked
    behind: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RadiatorPlace:
    """Where a radiator hangs: its number in the list, its wall, and its ends from the wall's left end."""

    number: Worked
    wall: Worked
    start: Worked
    end: Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class DoorMeeting:
    """The skirting where it ends against one door's architrave: how far the architrave stands past it."""

    number: Worked
    wall: Worked
    start: Worked
    end: Worked
    projection: Worked | None
    margin: Worked | None


@dataclass(frozen=True, slots=True, kw_only=True)
class SkirtingRun:
    """All the skirting of a room in the order of fitting.

    `net` is the wall without its doors, `metres` what is cut with laps and mitres. `first_wall` is faced from
    the first door listed, or is the longest. `cuts` are the pieces for a cutting plan, lying as seen from
    above, so their width is the thickness that the mitres run through.
    """

    first_wall: Worked
    pieces: tuple[SkirtingPiece, ...]
    lengths: tuple[Worked, ...]
    cuts: tuple[Piece, ...]
    net: Worked
    metres: Worked
    piece_count: Worked
    scribes: Worked
    mitres: Worked
    headings: Worked
    fixings: Worked | None
    doors: tuple[DoorMeeting, ...]
    radiators: tuple[RadiatorPlace, ...]
    notes: Findings
    refused: Findings


@dataclass(frozen=True, slots=True, kw_only=True)
class _Board:
    """A clear stretch of wall between corners or doors; `turn` says on which side of the first it comes."""

    wall: int
    start: Worked
    end: Worked
    left: str
    right: str
    left_corner: Worked
    right_corner: Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class _Rules:
    """What holds for the whole room."""

    thickness: Worked
    height: Worked | None
    longest: Worked
    clear: Worked
    mitre_from: Worked | None
    fixing_centres: Worked | None
    over: Worked
    radiators: tuple[Stretch, ...]
    sight: tuple[int, float] | None


@dataclass(frozen=True, slots=True, kw_only=True)
class _End:
    """One end of a piece: joint, saw angle, what it adds to the wall's length, its edges at wall and face."""

    joint: str
    saw: Worked
    extra: Worked
    face: Worked


Jointed: TypeAlias = tuple[tuple[SkirtingPiece, Piece], ...]


@calculator(
    example=Example(
        inputs={
            "room": "room",
            "thickness": "15 mm",
            "door_walls": ("1", "5"),
            "door_starts": ("1000 mm", "600 mm"),
            "door_widths": ("923 mm", "1003 mm"),
            "longest": "4.2 m",
            "joint_clear": "300 mm",
        },
        gives={"first_wall": "5", "net": "16674 mm", "metres": "16704 mm", "scribes": "5", "mitres": "1"},
    )
)
def skirting_run(
    *,
    room: Room,
    thickness: Length,
    door_walls: Numbers,
    door_starts: Margins,
    door_widths: Lengths,
    longest: Length,
    joint_clear: Margin,
    height: Length | None = None,
    radiator_walls: Numbers | None = None,
    radiator_starts: Margins | None = None,
    radiator_widths: Lengths | None = None,
    first_wall: Times | None = None,
    mitre_from: Angle | None = None,
    fixing_centres: Length | None = None,
    trial: Margin | None = None,
    architraves: Lengths | None = None,
    shadow_margin: Margin | None = None,
) -> SkirtingRun:
    """Skirting round a room: order of fitting, the joint at each end, lengths to cut and heading joints.

    Lengths, angles and wall numbers in; lengths and angles out. A door's width runs between the outer edges
    of its architrave, not across its opening. The wall faced from the first door listed is fitted first,
    square at both ends, and the rest from it both ways towards that door, so that each scribe is seen along
    the board; corners that stand out are mitred, and inside corners from `mitre_from` on. Headings are 45°
    laps over a fixing, clear of ends, doors and radiators, as far as may be from the line of sight. Common
    practice for the order; lengths are own derivation.
    """
    if longest <= 2 * thickness:
        raise InputRefused("stock-too-short", "longest")
    lists = Lists(kind="door", walls=door_walls, starts=door_starts, widths=door_widths)
    doors = stretches(lists, room.lengths)
    rules = _Rules(
        thickness=thickness,
        height=height,
        longest=longest,
        clear=joint_clear,
        mitre_from=mitre_from,
        fixing_centres=fixing_centres,
        over=trial or millimetres(0),
        radiators=_radiators(room, radiator_walls, radiator_starts, radiator_widths),
        sight=_sight(room, doors),
    )
    meetings = _meetings(doors, architraves, thickness)
    return _run(room, _fitted(room, doors, rules, first_wall), meetings, rules, shadow_margin)


def _radiators(
    room: Room,
    walls: tuple[Worked, ...] | None,
    starts: tuple[Worked, ...] | None,
    widths: tuple[Worked, ...] | None,
) -> tuple[Stretch, ...]:
    lists = Lists(kind="radiator", walls=walls or _NONE, starts=starts or _NONE, widths=widths or _NONE)
    return stretches(lists, room.lengths)


def _fitted(room: Room, doors: tuple[Stretch, ...], rules: _Rules, told: Worked | None) -> Jointed:
    """The pieces in the order of fitting, lettered."""
    boards = _boards(room, doors)
    ordered = _in_order(boards, _first(boards, room, rules, told), closed=not doors)
    jointed = (item for joints, board in ordered for item in _pieces(board, joints, rules))
    return tuple(_lettered(at, *item) for at, item in enumerate(jointed))


def _run(
    room: Room,
    jointed: Jointed,
    meetings: tuple[DoorMeeting, ...],
    rules: _Rules,
    shadow: Worked | None,
) -> SkirtingRun:
    pieces = tuple(piece for piece, _ in jointed)
    gaps = [meeting.end - meeting.start for meeting in meetings]
    return SkirtingRun(
        first_wall=pieces[0].wall,
        pieces=pieces,
        lengths=tuple(piece.length_to_cut for piece in pieces),
        cuts=tuple(cut for _, cut in jointed),
        net=room.perimeter - total(gaps) if gaps else room.perimeter,
        metres=total([piece.length_to_cut for piece in pieces]),
        piece_count=plain(len(pieces)),
        scribes=_ends(pieces, SCRIBE),
        mitres=_ends(pieces, MITRE) / 2,
        headings=_ends(pieces, HEADING) / 2,
        fixings=_fixings(pieces, rules.fixing_centres),
        doors=meetings,
        radiators=tuple(_place(each) for each in rules.radiators),
        notes=tuple(_notes(pieces, rules)),
        refused=(*_no_heading(pieces, rules), *_stands_past(meetings, shadow)),
    )


def _place(each: Stretch) -> RadiatorPlace:
    return RadiatorPlace(number=plain(each.number), wall=plain(each.wall + 1), start=each.start, end=each.end)


def _ends(pieces: Sequence[SkirtingPiece], joint: str) -> Worked:
    return plain(sum((piece.left_joint == joint) + (piece.right_joint == joint) for piece in pieces))


def _sight(room: Room, doors: tuple[Stretch, ...]) -> tuple[int, float] | None:
    """The wall faced from the first door, and where on it the look falls."""
    if not doors:
        return None
    shape = outline([wall.number for wall in room.lengths], [corner.number for corner in room.corners])
    door = doors[0]
    return shape.faced(door.wall, (door.start + door.width / 2).number)


def _boards(room: Room, doors: tuple[Stretch, ...]) -> tuple[_Board, ...]:
    """The clear stretches, clockwise, from the first after the first door."""
    boards = [board for at in range(len(room.walls)) for board in _on_wall(room, at, doors)]
    if not doors:
        return tuple(boards)
    main = doors[0]
    after = [
        at
        for at, board in enumerate(boards)
        if (board.wall, board.start.number) >= (main.wall, main.end.number)
    ]
    at = after[0] if after else 0
    return (*boards[at:], *boards[:at])


def _on_wall(room: Room, at: int, doors: tuple[Stretch, ...]) -> Iterator[_Board]:
    wall = room.walls[at]
    own = sorted((door for door in doors if door.wall == at), key=lambda door: door.start.number)
    starts = (millimetres(0), *(door.end for door in own))
    ends = (*(door.start for door in own), wall.length)
    for number, (start, end) in enumerate(zip(starts, ends, strict=True)):
        if end > start:
            yield _Board(
                wall=at,
                start=start,
                end=end,
                left=DOOR if number else "corner",
                right=DOOR if number < len(own) else "corner",
                left_corner=wall.left_corner,
                right_corner=wall.right_corner,
            )


def _first(boards: tuple[_Board, ...], room: Room, rules: _Rules, told: Worked | None) -> int:
    """The board that is fitted first: on the wall told, the wall faced from the door, or the longest wall."""
    faced = rules.sight[0] if rules.sight else None
    wall = int(told.number) - 1 if told else faced
    if told and (told.number != int(told.number) or not 0 <= int(told.number) - 1 < len(room.walls)):
        raise InputRefused("no-such-wall", "first_wall", found=f"{told.number:g}", most=str(len(room.walls)))
    on_wall = [at for at, board in enumerate(boards) if board.wall == wall] or list(range(len(boards)))
    return max(on_wall, key=lambda at: ((boards[at].end - boards[at].start).number, -at))


def _in_order(
    boards: tuple[_Board, ...], first: int, *, closed: bool
) -> Iterator[tuple[tuple[str, str], _Board]]:
    """Each board with what its ends do at an inside corner: from the first clockwise, then the other way.

    Round a room without a door the last board meets the first again and is scribed at both ends.
    """
    yield (SQUARED, SQUARED), boards[first]
    if closed:
        rest = (*boards[first + 1 :], *boards[:first])
        for at, board in enumerate(rest, 1):
            yield (SCRIBE, SCRIBE if at == len(rest) else SQUARED), board
        return
    for board in boards[first + 1 :]:
        yield (SCRIBE, SQUARED), board
    for board in reversed(boards[:first]):
        yield (SQUARED, SCRIBE), board


def _end(kind: str, corner: Worked, inside: str, rules: _Rules) -> _End:
    """What one end of a board is, from the corner it meets and its turn in the order."""
    nought = millimetres(0)
    if kind == DOOR:
        return _End(joint=DOOR, saw=SQUARE, extra=nought, face=nought)
    if corner > _STRAIGHT:
        saw = (corner - _STRAIGHT) / 2
        out = _through(rules.thickness, saw)
        return _End(joint=MITRE, saw=saw, extra=out, face=out)
    half = _RIGHT - corner / 2
    if rules.mitre_from and corner >= rules.mitre_from:
        return _End(joint=MITRE, saw=half, extra=nought, face=-_through(rules.thickness, half))
    if inside == SCRIBE:
        return _End(joint=SCRIBE, saw=half, extra=nought, face=-_through(rules.thickness, half))
    leaning = _RIGHT - corner
    saw = greatest((leaning, SQUARE)) if leaning.magnitude > 0 or limited(leaning.tree) else SQUARE
    return _End(joint=SQUARED, saw=saw, extra=nought, face=-_through(rules.thickness, saw))


def _through(thickness: Worked, saw: Worked) -> Worked:
    """How far a saw angle runs along the piece over its thickness; at 45° just the thickness, exactly."""
    if saw.magnitude == _HALF_RIGHT.magnitude and not limited(saw.tree):
        return thickness
    return thickness * tan(saw) if saw.magnitude or limited(saw.tree) else millimetres(0)


def _pieces(board: _Board, inside: tuple[str, str], rules: _Rules) -> Iterator[tuple[SkirtingPiece, Piece]]:
    left = _end(board.left, board.left_corner, inside[0], rules)
    right = _end(board.right, board.right_corner, inside[1], rules)
    half = rules.thickness / 2
    lap_right = _End(joint=HEADING, saw=_HALF_RIGHT, extra=half, face=-half)
    lap_left = replace(lap_right, face=half)
    places = _headings(board, left, right, rules)
    bounds = (board.start, *places, board.end)
    for at in range(len(places) + 1):
        ends = (lap_left if at else left, lap_right if at < len(places) else right)
        yield _piece(board, bounds[at], bounds[at + 1], ends, rules)


def _headings(board: _Board, left: _End, right: _End, rules: _Rules) -> tuple[Worked, ...]:
    run = Run(
        start=board.start.number,
        end=board.end.number,
        extra=(left.extra.number + rules.over.number, right.extra.number + rules.over.number),
        lap=rules.thickness.number,
        longest=rules.longest.number,
        clear=rules.clear.number,
        shut=tuple((r.start.number, r.end.number) for r in rules.radiators if r.wall == board.wall),
        sight=rules.sight[1] if rules.sight and rules.sight[0] == board.wall else None,
    )
    step = rules.fixing_centres or literal(Value(_GRID, LENGTH))
    steps = range(int(run.start // step.number), int(run.end // step.number) + 1)
    offered = {number * step.number: plain(number) * step for number in steps}
    chosen = heading_places(run, tuple(offered))
    return tuple(offered[place] for place in chosen or ())


def _piece(
    board: _Board, start: Worked, end: Worked, ends: tuple[_End, _End], rules: _Rules
) -> tuple[SkirtingPiece, Piece]:
    left, right = ends
    on_wall = end - start if start.magnitude else end
    length = on_wall
    for each in ends:
        length = length + each.extra if each.extra.magnitude else length
    behind = any(
        each.wall == board.wall and each.start < end and each.end > start for each in rules.radiators
    )
    piece = SkirtingPiece(
        mark="",
        wall=plain(board.wall + 1),
        left_joint=left.joint,
        right_joint=right.joint,
        left_saw=left.saw,
        right_saw=right.saw,
        start=start,
        end=end,
        length_to_cut=length,
        behind="radiator" if behind else "",
    )
    return piece, _cut(length, on_wall, ends, rules)


def _cut(length: Worked, on_wall: Worked, ends: tuple[_End, _End], rules: _Rules) -> Piece:
    headings = sum(end.joint == HEADING for end in ends)
    at_wall = on_wall + headings * (rules.thickness / 2)
    at_face = on_wall + ends[0].face + ends[1].face
    over = sum(end.joint == MITRE for end in ends) * rules.over
    return Piece(
        mark="",
        name="",
        role="skirting",
        hand="",
        long_point=length,
        short_point=least((at_wall, at_face)),
        left_end=ends[0].saw,
        right_end=ends[1].saw,
        over=over,
        cut_length=length + over if over.magnitude else length,
        width=rules.thickness,
        thickness=rules.height,
    )


def letter(at: int) -> str:
    """The letter of the piece fitted after `at` others: A to Z without I and O, then A2 and so on."""
    again, within = divmod(at, len(LETTERS))
    return f"{LETTERS[within]}{again + 1 if again else ''}"


def _lettered(at: int, piece: SkirtingPiece, cut: Piece) -> tuple[SkirtingPiece, Piece]:
    mark = letter(at)
    wall = int(piece.wall.number)
    length = named(piece.length_to_cut, f"piece_{mark}", f"Piece {mark}")
    return (
        replace(piece, mark=mark, length_to_cut=length),
        replace(cut, mark=mark, name=f"piece {mark}, wall {wall}"),
    )


def _fixings(pieces: tuple[SkirtingPiece, ...], centres: Worked | None) -> Worked | None:
    """A fixing within each bay and one more, piece by piece."""
    if centres is None:
        return None
    return total([round_up(piece.length_to_cut / centres, plain(1)) + 1 for piece in pieces])


def _meetings(
    doors: tuple[Stretch, ...], architraves: tuple[Worked, ...] | None, thickness: Worked
) -> tuple[DoorMeeting, ...]:
    if architraves is not None and len(architraves) != len(doors):
        raise InputRefused("lists-differ", "architraves", found=str(len(architraves)), wanted=str(len(doors)))
    stands: Mapping[int, Worked] = dict(enumerate(architraves or (), 1))
    return tuple(
        DoorMeeting(
            number=plain(door.number),
            wall=plain(door.wall + 1),
            start=door.start,
            end=door.end,
            projection=stands.get(door.number),
            margin=stands[door.number] - thickness if stands else None,
        )
        for door in doors
    )


def _stands_past(meetings: tuple[DoorMeeting, ...], shadow: Worked | None) -> Findings:
    least_margin = shadow or millimetres(0)
    return tuple(
        Finding(
            code="skirting-past-architrave",
            about=f"{meeting.number.number:g}",
            limit=least_margin,
            actual=meeting.margin,
        )
        for meeting in meetings
        if meeting.margin is not None and meeting.margin < least_margin
    )


def _no_heading(pieces: tuple[SkirtingPiece, ...], rules: _Rules) -> Findings:
    return tuple(
        Finding(code="no-heading-place", about=piece.mark, limit=rules.longest, actual=piece.length_to_cut)
        for piece in pieces
        if piece.length_to_cut.number > rules.longest.number + 1e-9
    )


def _notes(pieces: tuple[SkirtingPiece, ...], rules: _Rules) -> Iterator[Finding]:
    shortest = max(2 * rules.thickness.number, float(_BLOCK))
    for piece in pieces:
        yield from found(
            (
                piece.behind == "radiator",
                Finding(code="behind-radiator", about=piece.mark, actual=piece.length_to_cut),
            ),
            (
                piece.length_to_cut.number < shortest,
                Finding(code="block-not-run", about=piece.mark, actual=piece.length_to_cut),
            ),
            (
                piece.left_joint == piece.right_joint == SCRIBE,
                Finding(code="scribed-both-ends", about=piece.mark, actual=piece.length_to_cut),
            ),
        )
