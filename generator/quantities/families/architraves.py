"""Architrave round a square opening: lengths to short and long points, hands and saw angles."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from generator.quantities.calculator import Example, Length, Margin, Offset, calculator
from generator.quantities.cut_pieces import SQUARE, Piece, mark_of, round_the_opening
from generator.quantities.functions import atan
from generator.quantities.results import InputRefused
from generator.quantities.worked import Worked, literal, millimetres
from generator.units import ANGLE, Value

RIGHT_ANGLE = literal(Value(Decimal(90), ANGLE))


@dataclass(frozen=True, slots=True, kw_only=True)
class ArchitraveSet:
    """Head and two legs. Saw angles are from a square cut; `metres` sums the long points as finished.

    `leg_cut` is the length a leg is cut to before it is marked from the fitted head.
    """

    head_short_point: Worked
    head_long_point: Worked
    leg_short_point: Worked
    leg_long_point: Worked
    right_leg_short_point: Worked
    right_leg_long_point: Worked
    leg_over: Worked
    leg_cut: Worked
    head_saw_angle: Worked
    leg_saw_angle: Worked
    metres: Worked
    pieces: tuple[Piece, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Sizes:
    """What the pieces are made from, with the widths of head and legs."""

    head: Worked
    leg: Worked
    head_saw: Worked
    leg_saw: Worked
    over: Worked
    thickness: Worked | None


@calculator(
    example=Example(
        inputs={
            "opening_width": "775 mm",
            "opening_height": "1994 mm",
            "quirk": "6 mm",
            "head_width": "90 mm",
            "leg_width": "68 mm",
            "floor_gap": "3 mm",
            "leg_over": "5 mm",
        },
        gives={
            "head_short_point": "787 mm",
            "head_long_point": "923 mm",
            "leg_short_point": "1997 mm",
            "leg_long_point": "2087 mm",
            "leg_cut": "2092 mm",
            "head_saw_angle": "37.1°",
            "leg_saw_angle": "52.9°",
        },
    )
)
def architrave_set(
    *,
    opening_width: Length,
    opening_height: Length,
    quirk: Margin,
    head_width: Length,
    leg_width: Length | None = None,
    head_quirk: Margin | None = None,
    floor_gap: Offset | None = None,
    right_floor_gap: Offset | None = None,
    leg_over: Margin | None = None,
    thickness: Length | None = None,
) -> ArchitraveSet:
    """Architrave lengths to short and long points, a left and a right leg, and saw angles.

    Lengths in, lengths and angles out. `quirk` is the whole margin from lining face to architrave; the head
    may have another. Legs as wide as the head unless told. `leg_over` is left on each leg until it is marked
    from the fitted head. A leg with no length is refused. Own derivation.
    """
    sizes = _sizes(head_width, leg_width or head_width, leg_over or millimetres(0), thickness)
    short = opening_width + 2 * quirk
    standing = opening_height + (head_quirk or quirk)
    left = standing - floor_gap if floor_gap else standing
    right = standing - right_floor_gap if right_floor_gap else left
    _refuse_no_leg(left, right)
    return _set_of(
        _leg("left", left, sizes), _head(short, short + 2 * sizes.leg, sizes), _leg("right", right, sizes)
    )


def _set_of(left: Piece, head: Piece, right: Piece) -> ArchitraveSet:
    return ArchitraveSet(
        head_short_point=head.short_point,
        head_long_point=head.long_point,
        leg_short_point=left.short_point,
        leg_long_point=left.long_point,
        right_leg_short_point=right.short_point,
        right_leg_long_point=right.long_point,
        leg_over=left.over,
        leg_cut=left.cut_length,
        head_saw_angle=head.left_end,
        leg_saw_angle=left.right_end,
        metres=round_the_opening(head.long_point, left.long_point, right.long_point),
        pieces=(left, head, right),
    )


def _refuse_no_leg(*legs: Worked) -> None:
    if any(leg.magnitude <= 0 for leg in legs):
        raise InputRefused("leg-without-length", "floor_gap")


def _sizes(head: Worked, leg: Worked, over: Worked, thickness: Worked | None) -> _Sizes:
    equal = head.value == leg.value
    return _Sizes(
        head=head,
        leg=leg,
        head_saw=RIGHT_ANGLE / 2 if equal else atan(leg / head),
        leg_saw=RIGHT_ANGLE / 2 if equal else atan(head / leg),
        over=over,
        thickness=thickness,
    )


def _head(short: Worked, long: Worked, sizes: _Sizes) -> Piece:
    return Piece(
        mark=mark_of("architrave", "head"),
        name="head",
        role="architrave",
        hand="",
        long_point=long,
        short_point=short,
        left_end=sizes.head_saw,
        right_end=sizes.head_saw,
        over=millimetres(0),
        cut_length=long,
        width=sizes.head,
        thickness=sizes.thickness,
    )


def _leg(hand: str, short: Worked, sizes: _Sizes) -> Piece:
    # With the outer edge away from you the top of a left leg lies to the right, of a right leg to the left.
    left_leg = hand == "left"
    long = short + sizes.head
    return Piece(
        mark=mark_of("architrave", f"{hand} leg"),
        name=f"{hand} leg",
        role="architrave",
        hand=hand,
        long_point=long,
        short_point=short,
        left_end=SQUARE if left_leg else sizes.leg_saw,
        right_end=sizes.leg_saw if left_leg else SQUARE,
        over=sizes.over,
        cut_length=long + sizes.over,
        width=sizes.leg,
        thickness=sizes.thickness,
    )
