"""A leaning ladder set up at one out to four up."""

from __future__ import annotations

from dataclasses import dataclass

from generator.quantities.calculator import Example, Length, calculator
from generator.quantities.functions import atan, sqrt
from generator.quantities.worked import Worked, plain

UP_FOR_ONE_OUT = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class LadderSetUp:
    """How far the foot stands out, how much of the ladder lies below the resting point, and its angle."""

    foot_out: Worked
    rails: Worked
    angle: Worked


@calculator(
    example=Example(
        inputs={"height": "3.2 m"},
        gives={"foot_out": "800 mm", "rails": "3298.5 mm", "angle": "76°"},
    )
)
def ladder_set_up(*, height: Length) -> LadderSetUp:
    """Where a leaning ladder's foot stands, one out to four up.

    `height` is from the ground to where the ladder rests; lengths and an angle out. The rule and its 75.96
    degrees are those that HSE's ladder guidance uses (read in a second-hand report). Whether a ladder may be
    used at all is for the site's own assessment and the competent person to say.
    """
    foot_out = height / plain(UP_FOR_ONE_OUT)
    return LadderSetUp(
        foot_out=foot_out,
        rails=sqrt(height * height + foot_out * foot_out),
        angle=atan(height / foot_out),
    )
