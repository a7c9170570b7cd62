"""Openings out of square: the shape from six measurements, and architrave that is mitred to fit it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal

from generator.quantities.calculator import Angle, Example, Length, Margin, Offset, calculator
from generator.quantities.cut_pieces import Piece, mark_of, round_the_opening
from generator.quantities.functions import atan, cos, greatest, sin, sqrt, tan
from generator.quantities.quadrilaterals import CORNERS, DIAGONALS, SIDES, Quadrilateral, triangle
from generator.quantities.results import Finding, Findings, InputRefused, found
from generator.quantities.worked import Worked, applied, literal, millimetres, named, plain
from generator.quantities.workings import print_worked
from generator.units import ANGLE, LENGTH, Value, print_value

RIGHT_ANGLE = literal(Value(Decimal(90), ANGLE))
_LEAST_CORNER, _MOST_CORNER = Decimal(60), Decimal(120)
_SUSPECTS = 2
_SAID = {
    "width_top": "the width at the top",
    "width_floor": "the width at the floor",
    "height_left": "the left height",
    "height_right": "the right height",
    "diagonal_left_foot": "the diagonal from the left foot",
    "diagonal_right_foot": "the diagonal from the right foot",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """One of the six measurements and what the other five call for; `difference` is read less called for."""

    name: str
    read: Worked
    called_for: Worked
    difference: Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class Shape:
    """The four corner angles of an opening and how well its six measurements agree.

    `parted` is the gap or overlap left at the top when the opening is built up from the other five;
    `parted_by_rounding` the most that reading to whole steps can leave. `measured` has every measurement
    beside what the others call for, the likeliest slip first where they do not agree.
    """

    left_top: Worked
    right_top: Worked
    left_foot: Worked
    right_foot: Worked
    widest_off: Worked
    parted: Worked
    parted_by_rounding: Worked
    width_top: Worked
    height_left: Worked
    height_right: Worked
    measured: tuple[Measured, ...]
    notes: Findings
    refused: Findings


@calculator(
    example=Example(
        inputs={
            "width_top": "855 mm",
            "width_floor": "840 mm",
            "height_left": "2003 mm",
            "height_right": "2010 mm",
            "diagonal_left_foot": "2180.8 mm",
            "diagonal_right_foot": "2175.5 mm",
            "read_to": "0.5 mm",
        },
        gives={"left_top": "90.2°", "right_top": "89.4°", "left_foot": "90.3°", "right_foot": "90.2°"},
    )
)
def opening_shape(
    *,
    width_top: Length,
    width_floor: Length,
    height_left: Length,
    height_right: Length,
    diagonal_left_foot: Length,
    diagonal_right_foot: Length,
    read_to: Length,
    square_within: Angle | None = None,
) -> Shape:
    """The corner angles of an opening from two widths, two heights and two diagonals.

    Lengths in, angles out. A diagonal is named by the foot it starts from and ends at the other side's top.
    `read_to` is the step to which the tape was read. A triangle that cannot close is refused, and so are six
    measurements that are further apart than such rounding explains: the measurement whose change alone would
    leave the opening nearest to square is named as the first to be taken again. Own derivation (cosine rule
    by half angles; misclosure by the self-stress of four points).
    """
    read = (width_top, width_floor, height_left, height_right, diagonal_left_foot, diagonal_right_foot)
    six = dict(zip(SIDES, read, strict=True))
    rising_right, rising_left = diagonal_left_foot, diagonal_right_foot
    _refuse_open_triangles(six)
    left_top = _corner("left_top", height_left, width_top, rising_right)
    right_top = _corner("right_top", height_right, width_top, rising_left)
    left_foot = _corner("left_foot", height_left, width_floor, rising_left)
    right_foot = _corner("right_foot", height_right, width_floor, rising_right)
    parted, limit = _parted(six, left_foot, right_foot), _limit(six, read_to)
    shape = Shape(
        left_top=left_top,
        right_top=right_top,
        left_foot=left_foot,
        right_foot=right_foot,
        widest_off=_widest_off(left_top, right_top, left_foot, right_foot),
        parted=parted,
        parted_by_rounding=limit,
        width_top=width_top,
        height_left=height_left,
        height_right=height_right,
        measured=_measured(six),
        notes=(),
        refused=(),
    )
    return _judged(shape, square_within)


def _corner(name: str, up: Worked, across: Worked, opposite: Worked) -> Worked:
    """The angle between two sides by the side opposite: tan²(A/2) from sums and differences alone."""
    spare = (up + across) * (up + across) - opposite * opposite
    reach = opposite * opposite - (up - across) * (up - across)
    return named(2 * atan(sqrt(reach / spare)), name, name.replace("_", " ").capitalize())


def _refuse_open_triangles(six: dict[str, Worked]) -> None:
    """Two triangles that cannot close share one measurement; of a single one the diagonal is named."""
    shape = _plain(six)
    open_at = [corner for corner in CORNERS if shape.angle(corner) is None]
    if not open_at:
        return
    times = {name: sum(name in triangle(corner) for corner in open_at) for name in SIDES}
    name = max(SIDES, key=lambda each: (times[each], each in DIAGONALS))
    called = shape.called_for(name)
    if called is None:
        raise InputRefused("opening-cannot-close", name)
    raise InputRefused(
        "measurement-disagrees",
        name,
        measured=_SAID[name],
        read=print_worked(six[name]).text(),
        called=print_value(Value(called, LENGTH)).text(),
    )


def _plain(six: dict[str, Worked]) -> Quadrilateral:
    return Quadrilateral(sizes={name: size.number for name, size in six.items()})


def _parted(six: dict[str, Worked], left_foot: Worked, right_foot: Worked) -> Worked:
    left, right, floor = six["height_left"], six["height_right"], six["width_floor"]
    across = floor - left * cos(left_foot) - right * cos(right_foot)
    rise = left * sin(left_foot) - right * sin(right_foot)
    return sqrt(across * across + rise * rise) - six["width_top"]


def _limit(six: dict[str, Worked], read_to: Worked) -> Worked:
    shape = _plain(six)
    size = sum(shape.leverage(name) for name in SIDES) * read_to.number / 2
    return applied("parted_by_rounding", (read_to, *six.values()), Value(size, LENGTH))


def _measured(six: dict[str, Worked]) -> tuple[Measured, ...]:
    """Every measurement beside what the rest call for, first the one whose change leaves it most square."""
    shape = _plain(six)

    def left_off(name: str) -> float:
        size = shape.called_for(name)
        return shape.with_size(name, size).off_square() if size else float("inf")

    return tuple(_beside(name, six, shape) for name in sorted(SIDES, key=left_off))


def _beside(name: str, six: dict[str, Worked], shape: Quadrilateral) -> Measured:
    others = tuple(size for other, size in six.items() if other != name)
    called_for = shape.called_for(name)
    behind = _called_for(name, six) if called_for else None
    called = applied("called_for_by", others, Value(called_for or 0.0, LENGTH), behind=behind)
    return Measured(name=name, read=six[name], called_for=called, difference=six[name] - called)


def _widest_off(*corners: Worked) -> Worked:
    return max((_size_of(corner - RIGHT_ANGLE) for corner in corners), key=lambda off: off.number)


def _size_of(item: Worked) -> Worked:
    return item if item.magnitude >= 0 else -item


def _called_for(name: str, six: dict[str, Worked]) -> Worked:
    """What `Quadrilateral.called_for` works out, as arithmetic that limits can be followed through."""
    one, two = sorted(SIDES[name])
    start, end = sorted(set(CORNERS) - SIDES[name])
    by_side = {side: six[each] for each, side in SIDES.items()}
    base = by_side[frozenset((start, end))]
    first, second = (
        _stood_on(base, by_side[frozenset((start, corner))], by_side[frozenset((end, corner))])
        for corner in (one, two)
    )
    across = first[0] - second[0]
    rise = first[1] + second[1] if name in DIAGONALS else first[1] - second[1]
    return sqrt(across * across + rise * rise)


def _stood_on(base: Worked, near: Worked, far: Worked) -> tuple[Worked, Worked]:
    along = (base * base + near * near - far * far) / (2 * base)
    return along, sqrt(near * near - along * along)


def _judged(shape: Shape, square_within: Worked | None) -> Shape:
    """The shape with what was found: measurements that disagree, corners out of reach, square enough."""
    parted = _size_of(shape.parted)
    apart = parted > shape.parted_by_rounding
    refused = found((apart, Finding(code="six-disagree", limit=shape.parted_by_rounding, actual=parted)))
    suspects = tuple(_suspect(each) for each in shape.measured[:_SUSPECTS]) if apart else ()
    square = square_within is not None and shape.widest_off <= square_within
    return replace(
        shape,
        refused=(*refused, *suspects, *(() if apart else _far_off(shape))),
        notes=found((square, Finding(code="square-enough", limit=square_within, actual=shape.widest_off))),
    )


def _suspect(each: Measured) -> Finding:
    return Finding(code="measure-again", limit=each.called_for, actual=each.read, about=_SAID[each.name])


def _far_off(shape: Shape) -> Findings:
    corners = ((name, getattr(shape, name.replace(" ", "_"))) for name in CORNERS)
    return tuple(
        Finding(code="corner-far-off", actual=angle, about=name)
        for name, angle in corners
        if not _LEAST_CORNER <= angle.number <= _MOST_CORNER
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Mitre:
    """One corner: its angle, the half of it a bevel shows, and each saw's angle from a square cut.

    `plain_gap` is what opens when both pieces are cut to the usual angles for a square corner: at the
    `toe` (the long points) where the corner is under square, at the `heel` (the short points) where it is
    over; `opens_at` says which, and is empty where nothing opens.
    """

    corner: str
    angle: Worked
    off_square: Worked
    bisected: Worked
    head_saw: Worked
    leg_saw: Worked
    plain_head_saw: Worked
    plain_leg_saw: Worked
    plain_gap: Worked
    opens_at: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MitredSet:
    """Head and two legs fitted to an opening out of square. Saw angles are from a square cut.

    `left_foot_saw` and `right_foot_saw` are the cuts at the floor; positive leaves the outer edge longer.
    """

    left: Mitre
    right: Mitre
    head_short_point: Worked
    head_long_point: Worked
    left_leg_short_point: Worked
    left_leg_long_point: Worked
    right_leg_short_point: Worked
    right_leg_long_point: Worked
    left_foot_saw: Worked
    right_foot_saw: Worked
    widest_plain_gap: Worked
    metres: Worked
    pieces: tuple[Piece, ...]


@calculator(
    example=Example(
        inputs={
            "shape": "opening_shape",
            "quirk": "6 mm",
            "head_width": "68 mm",
        },
        gives={
            "head_short_point": "867 mm",
            "head_long_point": "1003.6 mm",
            "left_leg_short_point": "2009 mm",
            "left_leg_long_point": "2076.4 mm",
            "right_leg_short_point": "2016 mm",
            "right_leg_long_point": "2084.6 mm",
            "left_foot_saw": "−0.3°",
            "widest_plain_gap": "1.1 mm",
        },
    )
)
def mitred_set(
    *,
    shape: Shape,
    quirk: Margin,
    head_width: Length,
    leg_width: Length | None = None,
    floor_gap: Offset | None = None,
    right_floor_gap: Offset | None = None,
    leg_over: Margin | None = None,
    thickness: Length | None = None,
) -> MitredSet:
    """Architrave lengths, bisected mitres and saw angles for an opening that is out of square.

    A shape and lengths in, lengths and angles out. The quirk runs even round the opening, so each piece is
    parallel to its own side. A floor gap is taken square off the floor. Own derivation.
    """
    wide = leg_width or head_width
    left = _mitre("left", shape.left_top, head_width, wide)
    right = _mitre("right", shape.right_top, head_width, wide)
    head = shape.width_top + quirk * (_spread(shape.left_top) + _spread(shape.right_top))
    head_long = head + _run(shape.left_top, wide, head_width) + _run(shape.right_top, wide, head_width)
    other_gap = right_floor_gap or floor_gap
    left_leg = _leg_short(shape.height_left, quirk, shape.left_top, shape.left_foot, floor_gap)
    right_leg = _leg_short(shape.height_right, quirk, shape.right_top, shape.right_foot, other_gap)
    _refuse_no_leg(left_leg, right_leg)
    left_long = left_leg + _run(shape.left_top, head_width, wide) + wide * _lean(shape.left_foot)
    right_long = right_leg + _run(shape.right_top, head_width, wide) + wide * _lean(shape.right_foot)
    lengths = _Lengths(
        head=(head, head_long), left=(left_leg, left_long), right=(right_leg, right_long),
        over=leg_over or millimetres(0), head_width=head_width, leg_width=wide, thickness=thickness,
    )  # fmt: skip
    feet = (RIGHT_ANGLE - shape.left_foot, RIGHT_ANGLE - shape.right_foot)
    return MitredSet(
        left=left,
        right=right,
        head_short_point=head,
        head_long_point=head_long,
        left_leg_short_point=left_leg,
        left_leg_long_point=left_long,
        right_leg_short_point=right_leg,
        right_leg_long_point=right_long,
        left_foot_saw=feet[0],
        right_foot_saw=feet[1],
        widest_plain_gap=greatest((left.plain_gap, right.plain_gap)),
        metres=round_the_opening(head_long, left_long, right_long),
        pieces=_pieces(lengths, (left, right), feet),
    )


def _spread(corner: Worked) -> Worked:
    """The cotangent of half a corner: how far a parallel line runs on, for each mm it stands off."""
    return plain(1) / _half_tan(corner)


def _lean(foot: Worked) -> Worked:
    """The cotangent of a foot's angle, by sine and cosine: a foot is nearly square and may be wholly so."""
    return cos(foot) / sin(foot)


def _half_tan(corner: Worked) -> Worked:
    return tan(corner / 2)


def _run(corner: Worked, other: Worked, own: Worked) -> Worked:
    """How much longer the outer edge of a piece `own` wide is than its inner at a corner with `other`."""
    if other.value == own.value:
        return own / _half_tan(corner)
    return (other + own * cos(corner)) / sin(corner)


def _leg_short(up: Worked, quirk: Worked, top: Worked, foot: Worked, gap: Worked | None) -> Worked:
    standing = up + quirk * (_spread(top) + _lean(foot))
    return standing - gap / sin(foot) if gap else standing


def _refuse_no_leg(*legs: Worked) -> None:
    if any(leg.magnitude <= 0 for leg in legs):
        raise InputRefused("leg-without-length", "floor_gap")


def _mitre(side: str, corner: Worked, head: Worked, leg: Worked) -> Mitre:
    equal = head.value == leg.value
    off = corner - RIGHT_ANGLE
    usual = RIGHT_ANGLE / 2
    opens = "heel" if off.magnitude > 0 else "toe" if off.magnitude < 0 else ""
    # Touching at one end of their cut faces, the two pieces part like a hinge opened by what is off square.
    gap = 2 * sqrt(head * head + leg * leg) * sin(_size_of(off) / 2)
    return Mitre(
        corner=f"{side} top",
        angle=corner,
        off_square=off,
        bisected=corner / 2,
        head_saw=RIGHT_ANGLE - corner / 2 if equal else atan(_run(corner, leg, head) / head),
        leg_saw=RIGHT_ANGLE - corner / 2 if equal else atan(_run(corner, head, leg) / leg),
        plain_head_saw=usual if equal else atan(leg / head),
        plain_leg_saw=usual if equal else atan(head / leg),
        plain_gap=gap,
        opens_at=opens,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Lengths:
    """Short and long point of each piece, what is left on the legs, and the sections."""

    head: tuple[Worked, Worked]
    left: tuple[Worked, Worked]
    right: tuple[Worked, Worked]
    over: Worked
    head_width: Worked
    leg_width: Worked
    thickness: Worked | None


def _pieces(lengths: _Lengths, mitres: tuple[Mitre, Mitre], feet: tuple[Worked, Worked]) -> tuple[Piece, ...]:
    # With the outer edge away from you the top of a left leg lies to the right, of a right leg to the left.
    left, right = mitres
    return (
        _piece("left leg", "left", lengths, (feet[0], left.leg_saw)),
        _piece("head", "", lengths, (left.head_saw, right.head_saw)),
        _piece("right leg", "right", lengths, (right.leg_saw, feet[1])),
    )


def _piece(name: str, hand: str, lengths: _Lengths, ends: tuple[Worked, Worked]) -> Piece:
    short, long = getattr(lengths, hand or "head")
    over = lengths.over if hand else millimetres(0)
    return Piece(
        mark=mark_of("architrave", name),
        name=name,
        role="architrave",
        hand=hand,
        long_point=long,
        short_point=short,
        left_end=ends[0],
        right_end=ends[1],
        over=over,
        cut_length=long + over,
        width=lengths.leg_width if hand else lengths.head_width,
        thickness=lengths.thickness,
    )
