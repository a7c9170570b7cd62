"""A straight private stair held against Approved Document K (England, 2013)."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from generator.quantities.calculator import Example, Length, Margin, Offset, Times, calculator
from generator.quantities.functions import atan, round_up, sqrt
from generator.quantities.results import Finding, Findings, InputRefused
from generator.quantities.worked import Worked, literal, millimetres, plain
from generator.units import ANGLE, Value

# Approved Document K 2013, Table 1.1 and paragraph 1.4, private stair.
LEAST_RISE, MOST_RISE = millimetres(150), millimetres(220)
LEAST_GOING, MOST_GOING = millimetres(220), millimetres(300)
LEAST_STRIDE, MOST_STRIDE = millimetres(550), millimetres(700)
STEEPEST = literal(Value(Decimal(42), ANGLE))
# Approved Document K 2013, paragraph 1.11: from memory.
LEAST_HEADROOM = millimetres(2000)


@dataclass(frozen=True, slots=True, kw_only=True)
class StraightStair:
    """A flight's rise, pitch and stride, with its strings; `stride` is twice the rise and the going.

    `first_rise` is from the floor as it is now to the first tread as fixed, `last_rise` from the last tread
    to the floor above as it is now: finishes still to be laid bring both to `rise`.
    """

    risers: Worked
    treads: Worked
    rise: Worked
    going: Worked
    total_going: Worked
    pitch: Worked
    stride: Worked
    string: Worked
    first_rise: Worked
    last_rise: Worked
    notes: Findings
    refused: Findings


@calculator(
    example=Example(
        inputs={"total_rise": "2600 mm", "going": "225 mm", "risers": "13"},
        gives={"rise": "200 mm", "pitch": "41.6°", "stride": "625 mm", "total_going": "2700 mm"},
    )
)
def straight_stair(
    *,
    total_rise: Length,
    going: Length,
    risers: Times | None = None,
    headroom: Length | None = None,
    floor_finish: Offset | None = None,
    landing_finish: Offset | None = None,
    tread_finish: Margin | None = None,
) -> StraightStair:
    """A straight private stair's rise, pitch and stride, held against Approved Document K 2013.

    Lengths and a number of risers in; lengths and angles out. `total_rise` is from finished floor to finished
    floor. Without `risers` the fewest that keep the greatest rise are taken. Limits of rise, going, pitch and
    stride by Approved Document K 2013 Table 1.1 (private stair); headroom from memory. A finding says which
    limit is broken; whether the stair is approved is for building control to say.
    """
    number = _number(total_rise, risers)
    rise = total_rise / number
    treads = number - 1
    pitch = atan(rise / going)
    stride = 2 * rise + going
    tread = tread_finish or millimetres(0)
    return StraightStair(
        risers=number,
        treads=treads,
        rise=rise,
        going=going,
        total_going=treads * going,
        pitch=pitch,
        stride=stride,
        string=sqrt(total_rise * total_rise + treads * going * (treads * going)),
        first_rise=rise + (floor_finish or millimetres(0)) - tread,
        last_rise=rise + tread - (landing_finish or millimetres(0)),
        notes=() if headroom else (Finding(code="headroom-not-given", limit=LEAST_HEADROOM),),
        refused=(*_outside(rise, going, stride), *_too_steep(pitch, headroom)),
    )


def _number(total_rise: Worked, risers: Worked | None) -> Worked:
    if risers is None:
        return round_up(total_rise / MOST_RISE, plain(1))
    if risers.number != int(risers.number) or risers.number < 2:
        raise InputRefused("risers-not-whole", "risers", found=f"{risers.number:g}")
    return risers


def _outside(rise: Worked, going: Worked, stride: Worked) -> Findings:
    held = (
        ("rise-low", rise < LEAST_RISE, LEAST_RISE, rise),
        ("rise-high", rise > MOST_RISE, MOST_RISE, rise),
        ("going-short", going < LEAST_GOING, LEAST_GOING, going),
        ("going-long", going > MOST_GOING, MOST_GOING, going),
        ("stride-short", stride < LEAST_STRIDE, LEAST_STRIDE, stride),
        ("stride-long", stride > MOST_STRIDE, MOST_STRIDE, stride),
    )
    return tuple(
        Finding(code=code, limit=limit, actual=actual) for code, broken, limit, actual in held if broken
    )


def _too_steep(pitch: Worked, headroom: Worked | None) -> Findings:
    steep = (Finding(code="pitch-steep", limit=STEEPEST, actual=pitch),) if pitch > STEEPEST else ()
    if headroom is not None and headroom < LEAST_HEADROOM:
        return (*steep, Finding(code="headroom-low", limit=LEAST_HEADROOM, actual=headroom))
    return steep
