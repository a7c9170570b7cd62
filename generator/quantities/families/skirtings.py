"""Where the skirting meets the architrave."""

from __future__ import annotations

from dataclasses import dataclass

from generator.quantities.calculator import Example, Length, Margin, calculator
from generator.quantities.families.packers import EvenPacker
from generator.quantities.families.ways import plaster_at_skirting
from generator.quantities.results import Finding, Findings, found
from generator.quantities.worked import Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class SkirtingMeets:
    """The architrave's outer edge in front of the plaster, and in front of the skirting."""

    projection: Worked
    margin: Worked
    refused: Findings


@calculator(
    example=Example(
        inputs={
            "packer": "even_packer",
            "edge_thickness": "18 mm",
            "skirting_thickness": "15 mm",
            "shadow_margin": "2 mm",
        },
        gives={"projection": "17.6 mm", "margin": "2.6 mm"},
    )
)
def skirting_meets(
    *,
    packer: EvenPacker,
    edge_thickness: Length,
    skirting_thickness: Margin,
    shadow_margin: Margin,
    forward: Margin | None = None,
) -> SkirtingMeets:
    """How far the architrave stands in front of the skirting that ends against it.

    Lengths in, lengths out. The architrave comes forward of the frame by the packer, or by `forward` where
    told (nought without a packer). Taken at the foot readings where both legs have stations, else at the
    greatest reading. The shadow margin is policy. Own derivation.
    """
    brought = packer.thickness if forward is None else forward
    projection = brought + edge_thickness - plaster_at_skirting(packer)
    margin = projection - skirting_thickness
    return SkirtingMeets(
        projection=projection,
        margin=margin,
        refused=found(
            (margin < shadow_margin, Finding(code="skirting-too-near", limit=shadow_margin, actual=margin)),
        ),
    )
