"""A room from the lengths of its walls and the angles of its corners, as they are measured going round."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from itertools import pairwise

from generator.quantities.calculator import Angle, Corners, Example, Lengths, Margin, calculator
from generator.quantities.functions import cos, sin, total
from generator.quantities.results import Finding, Findings, InputRefused, found
from generator.quantities.rooms import Outline, outline
from generator.quantities.worked import Worked, applied, literal, millimetres, named, plain
from generator.units import ANGLE, AREA, LENGTH, Magnitude, Value

FEWEST_WALLS = 3
_STRAIGHT = 180
_NEAREST_STRAIGHT, _SHARPEST = 1, 5


@dataclass(frozen=True, slots=True, kw_only=True)
class Wall:
    """One wall as a person facing it sees it; corner angles are taken inside the room."""

    number: Worked
    length: Worked
    left_corner: Worked
    right_corner: Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """A room's walls in order, its perimeter and floor area, and how well the measurements close.

    `apart` is the distance from the end of the last wall to the start of the first, `angles_over` the sum of
    the corner angles less what a room of so many corners has.
    """

    walls: tuple[Wall, ...]
    lengths: tuple[Worked, ...]
    corners: tuple[Worked, ...]
    perimeter: Worked
    area: Worked
    apart: Worked
    angles_over: Worked
    refused: Findings


@calculator(
    example=Example(
        inputs={
            "walls": ("5200 mm", "2600 mm", "1300 mm", "1500 mm", "3900 mm", "4100 mm"),
            "corners": ("90 deg", "90 deg", "270 deg", "90 deg", "90 deg", "90 deg"),
        },
        gives={"perimeter": "18600 mm", "area": "19.37 m²", "apart": "0 mm", "angles_over": "0°"},
    )
)
def room(
    *,
    walls: Lengths,
    corners: Corners,
    closes_within: Margin | None = None,
    angles_within: Angle | None = None,
) -> Room:
    """A room's outline, from its walls in order and the corner at the right-hand end of each.

    Lengths and angles in; lengths, an area and an angle out. Walls are taken facing them, from left to right
    all the way round; corner angles inside the room, over 180° where the corner stands out into it. Walls
    that end further from where they began than `closes_within` are refused, and so are corners whose sum is
    off by more than `angles_within`. Own derivation.
    """
    _refuse_unlike(walls, corners)
    shape = outline([wall.number for wall in walls], [corner.number for corner in corners])
    if shape.crosses_itself():
        raise InputRefused("walls-cross", "walls")
    apart = applied("left_open", (*walls, *corners), Value(_walked(shape.apart, corners), LENGTH))
    over = total(corners) - (plain(len(walls)) - 2) * _degrees(_STRAIGHT)
    return Room(
        walls=_walls(walls, corners),
        lengths=walls,
        corners=corners,
        perimeter=named(total(walls), "perimeter", "Round the room"),
        area=_area(walls, corners, shape),
        apart=apart,
        angles_over=over,
        refused=_refusals(apart, over, closes_within, angles_within),
    )


def _degrees(angle: int) -> Worked:
    return literal(Value(plain(angle).magnitude, ANGLE))


def _refuse_unlike(walls: tuple[Worked, ...], corners: tuple[Worked, ...]) -> None:
    if len(walls) < FEWEST_WALLS:
        raise InputRefused("walls-too-few", "walls", found=str(len(walls)))
    if len(walls) != len(corners):
        raise InputRefused("lists-differ", "corners", found=str(len(corners)), wanted=str(len(walls)))
    for number, corner in enumerate(corners, 1):
        if abs(corner.number - _STRAIGHT) < _NEAREST_STRAIGHT:
            raise InputRefused("corner-straight", "corners", number=str(number))
        if not _SHARPEST <= corner.number <= 2 * _STRAIGHT - _SHARPEST:
            raise InputRefused("corner-too-sharp", "corners", number=str(number))


def _walls(lengths: tuple[Worked, ...], corners: tuple[Worked, ...]) -> tuple[Wall, ...]:
    return tuple(
        Wall(number=plain(at + 1), length=length, left_corner=corners[at - 1], right_corner=corners[at])
        for at, length in enumerate(lengths)
    )


def _area(walls: tuple[Worked, ...], corners: tuple[Worked, ...], shape: Outline) -> Worked:
    area = Value(_walked(shape.area, corners), AREA)
    return applied("area_walked", (*walls, *corners), area, behind=_shoelace(walls, corners))


def _shoelace(walls: tuple[Worked, ...], corners: tuple[Worked, ...]) -> Worked:
    """The area as arithmetic from the first corner, for limits to be followed through."""
    ends = list(_ends(walls, corners))[:-1]
    return total([(x1 * y2 - x2 * y1) / 2 for (x1, y1), (x2, y2) in pairwise(ends)])


def _ends(walls: tuple[Worked, ...], corners: tuple[Worked, ...]) -> Iterator[tuple[Worked, Worked]]:
    turned, x, y = _degrees(0), millimetres(0), millimetres(0)
    for wall, corner in zip(walls, corners, strict=True):
        x, y = x + wall * cos(turned), y + wall * sin(turned)
        turned = turned + _degrees(_STRAIGHT) - corner
        yield x, y


def _walked(found: float, corners: tuple[Worked, ...]) -> Magnitude:
    """Exact in a room of right angles, whose walls only run along and across."""
    return Decimal(repr(found)) if all(corner.number % 90 == 0 for corner in corners) else found


def _refusals(apart: Worked, over: Worked, closes: Worked | None, angles: Worked | None) -> Findings:
    return found(
        (
            angles is not None and abs(over.number) > angles.number + 1e-9,
            Finding(code="corners-disagree", limit=angles, actual=over),
        ),
        (
            closes is not None and apart.number > closes.number + 1e-9,
            Finding(code="room-open", limit=closes, actual=apart),
        ),
    )
