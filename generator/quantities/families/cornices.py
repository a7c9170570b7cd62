"""A sprung cornice round a room: the saw at each corner, the lengths to cut, and the ground behind it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal

from generator.quantities.calculator import Angle, Example, Length, Margin, calculator
from generator.quantities.cut_pieces import Piece
from generator.quantities.families.mouldings import SprungMitre, sprung_mitre
from generator.quantities.families.rooms import Room, Wall
from generator.quantities.families.skirting_runs import letter
from generator.quantities.functions import cos, least, round_up, sin, total
from generator.quantities.results import Finding, Findings, InputRefused, found
from generator.quantities.worked import Worked, literal, millimetres, named, plain
from generator.quantities.workings import print_worked
from generator.units import ANGLE, Value

INTERNAL, EXTERNAL = "internal", "external"
_STRAIGHT = literal(Value(Decimal(180), ANGLE))
_WHOLE_TURN = literal(Value(Decimal(360), ANGLE))
_SHARPEST, _WIDEST = 30, 175


@dataclass(frozen=True, slots=True, kw_only=True)
class Sawn:
    """How one end lies on a saw that leans its blade to the left, the piece flat on its back.

    `fence` is the edge held to the fence, `table` the side to which the handle is swung, `keep` the side of
    the blade on which the piece is.
    """

    fence: str
    table: str
    keep: str


# From the plane through the corner: the blade leans left, so the piece is turned until its cut does too.
SAWN: Mapping[tuple[str, str], Sawn] = {
    ("left", INTERNAL): Sawn(fence="wall edge", table="left", keep="left"),
    ("right", INTERNAL): Sawn(fence="ceiling edge", table="right", keep="left"),
    ("left", EXTERNAL): Sawn(fence="ceiling edge", table="right", keep="right"),
    ("right", EXTERNAL): Sawn(fence="wall edge", table="left", keep="right"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class CorniceCorner:
    """The corner at the right-hand end of a wall; `angle` is between the walls, whichever way it turns."""

    number: Worked
    angle: Worked
    turns: str
    mitre: Worked
    bevel: Worked
    longer: Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class CornicePiece:
    """One length as it is seen facing its wall: its edge at the wall and at the ceiling, and both ends."""

    mark: str
    wall: Worked
    left_turns: str
    right_turns: str
    wall_edge: Worked
    ceiling_edge: Worked
    length_to_cut: Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class CorniceRun:
    """All the cornice of a room, lettered in the order of fitting.

    `wall_line` and `ceiling_line` are the two edges round the room, `metres` what is cut. `cuts` are the
    pieces for a cutting plan, lying on their backs.
    """

    corners: tuple[CorniceCorner, ...]
    pieces: tuple[CornicePiece, ...]
    lengths: tuple[Worked, ...]
    cuts: tuple[Piece, ...]
    wall_line: Worked
    ceiling_line: Worked
    metres: Worked
    piece_count: Worked
    internals: Worked
    externals: Worked
    grounds: Worked | None
    notes: Findings
    refused: Findings


@dataclass(frozen=True, slots=True, kw_only=True)
class _Corner:
    """A corner with its settings."""

    shown: CorniceCorner
    mitre: SprungMitre

    @property
    def external(self) -> bool:
        return self.shown.turns == EXTERNAL


@dataclass(frozen=True, slots=True, kw_only=True)
class _Rules:
    """What holds for every piece."""

    width: Worked
    thickness: Worked | None
    over: Worked


@calculator(
    example=Example(
        inputs={
            "room": "room",
            "spring": "38 deg",
            "width": "96 mm",
            "longest": "6 m",
            "ground_centres": "600 mm",
        },
        gives={
            "piece_count": "6",
            "internals": "5",
            "externals": "1",
            "wall_line": "18600 mm",
            "ceiling_line": "18127.2 mm",
            "metres": "18718.2 mm",
            "grounds": "40",
        },
    )
)
def cornice_run(
    *,
    room: Room,
    spring: Angle,
    width: Length,
    longest: Length,
    thickness: Length | None = None,
    trial: Margin | None = None,
    ground_centres: Length | None = None,
    shortest_held: Length | None = None,
) -> CorniceRun:
    """Sprung cornice round a room: the saw at each corner, lengths to cut, order of fitting.

    Lengths and angles in; lengths and angles out. `spring` and `width` are as `sprung_mitre` takes them.
    The edge at the wall is as long as the wall; the edge at the ceiling is shorter at each internal and
    longer at each external corner. Pieces that meet at an external corner are fitted first, since both
    their mitres are seen: common practice, no source. `trial` is left on at each external end. A wall longer
    than `longest` is refused: joints in the length are not set out here. Lengths are own derivation.
    """
    corners = tuple(_corner(room, at, spring, width) for at in range(len(room.walls)))
    rules = _Rules(width=width, thickness=thickness, over=trial or millimetres(0))
    ends = [(corners[at - 1], corners[at]) for at in range(len(corners))]
    walls = sorted(range(len(corners)), key=lambda at: not any(end.external for end in ends[at]))
    made = [_piece(letter(place), room.walls[at], ends[at], rules) for place, at in enumerate(walls)]
    pieces = tuple(piece for piece, _ in made)
    return CorniceRun(
        corners=tuple(corner.shown for corner in corners),
        pieces=pieces,
        lengths=tuple(piece.length_to_cut for piece in pieces),
        cuts=tuple(cut for _, cut in made),
        wall_line=room.perimeter,
        ceiling_line=named(total([p.ceiling_edge for p in pieces]), "ceiling_line", "Round the ceiling"),
        metres=total([piece.length_to_cut for piece in pieces]),
        piece_count=plain(len(pieces)),
        internals=plain(sum(not corner.external for corner in corners)),
        externals=plain(sum(corner.external for corner in corners)),
        grounds=_grounds(pieces, ground_centres),
        notes=_short(pieces, shortest_held),
        refused=_too_long(pieces, longest),
    )


def _corner(room: Room, at: int, spring: Worked, width: Worked) -> _Corner:
    inside = room.corners[at]
    external = inside > _STRAIGHT
    angle = _WHOLE_TURN - inside if external else inside
    if not _SHARPEST <= angle.number <= _WIDEST:
        raise InputRefused("cornice-corner", "room", number=str(at + 1), found=print_worked(angle).text())
    turns = EXTERNAL if external else INTERNAL
    mitre = sprung_mitre(spring=spring, corner=angle, turns=turns, width=width)
    shown = CorniceCorner(
        number=plain(at + 1),
        angle=angle,
        turns=turns,
        mitre=mitre.mitre,
        bevel=mitre.bevel,
        longer=mitre.longer,
    )
    return _Corner(shown=shown, mitre=mitre)


def _piece(mark: str, wall: Wall, ends: tuple[_Corner, _Corner], rules: _Rules) -> tuple[CornicePiece, Piece]:
    left, right = ends
    length = ceiling = wall.length
    for end in ends:
        ceiling = ceiling + end.shown.longer if end.external else ceiling - end.shown.longer
        length = length + end.shown.longer if end.external else length
    if ceiling.number <= 0:
        raise InputRefused("cornice-runs-out", "width", number=f"{wall.number.number:g}")
    piece = CornicePiece(
        mark=mark,
        wall=wall.number,
        left_turns=left.shown.turns,
        right_turns=right.shown.turns,
        wall_edge=wall.length,
        ceiling_edge=ceiling,
        length_to_cut=named(length, f"piece_{mark}", f"Piece {mark}"),
    )
    return piece, _cut(piece, ends, rules)


def _cut(piece: CornicePiece, ends: tuple[_Corner, _Corner], rules: _Rules) -> Piece:
    """The piece with its longer edge away; an end whose near edge runs past that edge has a minus.

    With the wall's edge away it lies turned about, so that what is left facing the wall is right at the saw.
    """
    wall_away = piece.wall_edge.number >= piece.ceiling_edge.number
    lying = ends[::-1] if wall_away else ends
    left, right = (-end.mitre.mitre if end.external == wall_away else end.mitre.mitre for end in lying)
    over, away = sum(end.external for end in ends) * rules.over, "wall" if wall_away else "ceiling"
    return Piece(
        mark=piece.mark,
        name=f"wall {piece.wall.number:g}, {away} edge away",
        role="cornice",
        hand=" / ".join(_HANDS[end.shown.turns] for end in lying),
        long_point=piece.length_to_cut,
        short_point=least((piece.wall_edge, piece.ceiling_edge)),
        left_end=left,
        right_end=right,
        over=over,
        cut_length=piece.length_to_cut + over if over.magnitude else piece.length_to_cut,
        width=rules.width,
        thickness=rules.thickness,
        left_tilt=lying[0].mitre.bevel,
        right_tilt=lying[1].mitre.bevel,
    )


_HANDS: Mapping[str, str] = {INTERNAL: "in", EXTERNAL: "out"}


def _grounds(pieces: tuple[CornicePiece, ...], centres: Worked | None) -> Worked | None:
    """A ground within each bay of a piece and one more."""
    if centres is None:
        return None
    return total([round_up(piece.wall_edge / centres, plain(1)) + 1 for piece in pieces])


def _too_long(pieces: tuple[CornicePiece, ...], longest: Worked) -> Findings:
    return tuple(
        Finding(code="cornice-over-stock", about=piece.mark, limit=longest, actual=piece.length_to_cut)
        for piece in pieces
        if piece.length_to_cut.number > longest.number + 1e-9
    )


def _short(pieces: tuple[CornicePiece, ...], held: Worked | None) -> Findings:
    return tuple(_each_short(pieces, held)) if held else ()


def _each_short(pieces: tuple[CornicePiece, ...], held: Worked) -> Iterator[Finding]:
    for piece in pieces:
        shorter = least((piece.wall_edge, piece.ceiling_edge))
        yield from found(
            (
                shorter.number < held.number,
                Finding(code="cornice-short-at-saw", about=piece.mark, limit=held, actual=shorter),
            )
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class CorniceGround:
    """A three-cornered ground in the angle of wall and ceiling, and the flats that bear beside it.

    `up` and `out` are its sides on wall and ceiling, `face` the side the moulding's back lies on, `depth` how
    far a pin goes into it square from that side where it is deepest, `pin_line` up the moulding's face from
    its lower edge. `wall_flat` and `ceiling_flat` are the parts of the
    moulding that lie on wall and ceiling.
    """

    up: Worked
    out: Worked
    face: Worked
    depth: Worked
    pin_line: Worked
    wall_flat: Worked
    ceiling_flat: Worked
    refused: Findings


@calculator(
    example=Example(
        inputs={
            "spring": "45 deg",
            "width": "100 mm",
            "thickness": "20 mm",
            "edge": "10 mm",
            "clearance": "0 mm",
            "least_depth": "15 mm",
        },
        gives={
            "up": "52.4 mm",
            "out": "52.4 mm",
            "face": "74.1 mm",
            "depth": "37.1 mm",
            "wall_flat": "18.3 mm",
        },
    )
)
def cornice_ground(
    *,
    spring: Angle,
    width: Length,
    thickness: Length,
    edge: Margin,
    clearance: Margin,
    least_depth: Length,
) -> CorniceGround:
    """The ground behind a sprung cornice, and the flats it bears on wall and ceiling.

    Lengths and an angle in, lengths out. `thickness` is the moulding's, `edge` the breadth of its
    underside, which lies square to the wall, `width` runs between both lines of contact. The ground stays
    `clearance` short of the moulding's back, so that the edges bear and not the ground; one of less than
    `least_depth` gives a pin no hold and is refused. Own derivation.
    """
    behind = thickness - edge * cos(spring)
    if behind.number <= 0:
        raise InputRefused("no-room-for-ground", "edge")
    wall_flat, ceiling_flat = behind / sin(spring), behind / cos(spring)
    gone = clearance / sin(spring), clearance / cos(spring)
    up = width * cos(spring) - wall_flat - gone[0]
    out = width * sin(spring) - ceiling_flat - gone[1]
    if up.number <= 0 or out.number <= 0:
        raise InputRefused("no-room-for-ground", "thickness")
    depth = up * sin(spring)
    return CorniceGround(
        up=up,
        out=out,
        face=up / cos(spring),
        depth=depth,
        pin_line=width * cos(spring) * cos(spring) - edge * sin(spring),
        wall_flat=wall_flat,
        ceiling_flat=ceiling_flat,
        refused=found(
            (depth < least_depth, Finding(code="ground-too-thin", limit=least_depth, actual=depth))
        ),
    )
