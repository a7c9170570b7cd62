"""How far a door leaf opens before it meets the architrave."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from generator.quantities.calculator import Angle, Example, Length, Margin, calculator
from generator.quantities.functions import atan, sqrt
from generator.quantities.results import Finding, Findings, found
from generator.quantities.worked import Worked, literal, named
from generator.units import ANGLE, Value

HALF_TURN = literal(Value(Decimal(180), ANGLE))


@dataclass(frozen=True, slots=True, kw_only=True)
class Swing:
    """The greatest opening angle from shut, the depth the leaf has to clear, and what the angle assumes."""

    angle: Worked
    depth: Worked
    notes: Findings
    refused: Findings


@calculator(
    example=Example(
        inputs={"pin_projection": "5 mm", "depth": "18 mm", "quirk": "6 mm"},
        gives={"angle": "135.2°", "depth": "18 mm"},
    )
)
def door_swing(
    *, pin_projection: Margin, depth: Length, quirk: Margin, least_swing: Angle | None = None
) -> Swing:
    """The greatest angle a leaf opens before its face meets the edge of the architrave.

    Lengths in, an angle out, at most 180°. `pin_projection` is the hinge pin in front of the frame's edge and
    of the leaf's face; `depth` the architrave's face in front of the frame's edge, packer included; `quirk`
    the whole margin. Square-edged architrave, the pin on the line of the lining's face: a moulded edge lets
    the leaf open further. Own derivation: P + P/cos φ + q tan φ = D with 180° − φ open, solved for tan(φ/2).
    """
    angle = opening_angle(pin_projection, depth, quirk)
    narrow = least_swing is not None and angle < least_swing
    return Swing(
        angle=angle,
        depth=depth,
        notes=(Finding(code="square-edge-assumed"),) if angle < HALF_TURN else (),
        refused=found((narrow, Finding(code="swing-too-small", limit=least_swing, actual=angle))),
    )


def opening_angle(pin: Worked, depth: Worked, quirk: Worked) -> Worked:
    """The angle alone; 180° where the leaf clears the architrave lying flat."""
    if 2 * pin >= depth:
        return HALF_TURN
    depth = named(depth, "depth", "Depth to clear")
    half = (sqrt(quirk * quirk + depth * (depth - 2 * pin)) - quirk) / depth
    return HALF_TURN - 2 * atan(half)
