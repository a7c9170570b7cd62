"""Joints sealed, stuck and screwed: beads in a gap, tooled or wavy, glue over a face, screws in rows."""

from __future__ import annotations

from dataclasses import dataclass

from generator.quantities.calculator import (
    Area,
    Example,
    Length,
    Lengths,
    Margin,
    Pack,
    Run,
    Share,
    Times,
    calculator,
)
from generator.quantities.families.beads import PI, Bead
from generator.quantities.families.fixings import MOST_FIXINGS, PinLength, shortest_between
from generator.quantities.functions import round_up, sqrt
from generator.quantities.results import Finding, Findings, InputRefused, found
from generator.quantities.worked import Worked, millimetres, plain


@dataclass(frozen=True, slots=True, kw_only=True)
class JointBead:
    """Sealant in a joint: its section, its length and its volume with waste."""

    section: Worked
    length: Worked
    volume: Worked
    refused: Findings


@calculator(
    example=Example(
        inputs={"length": "8.61 m", "width": "6 mm", "depth": "6 mm"},
        gives={"section": "36 mm²", "volume": "310 ml"},
    )
)
def joint_bead(
    *,
    length: Run,
    width: Length,
    depth: Length,
    waste: Share | None = None,
    widest: Length | None = None,
) -> JointBead:
    """Volume of sealant that fills a joint of square section.

    Lengths in, a volume out; `waste` is a share added to the volume, `widest` the maker's widest joint. A
    section of 1 mm² over 1 m is 1 ml: own derivation.
    """
    section = width * depth
    return JointBead(
        section=section,
        length=length,
        volume=with_waste(section * length, waste),
        refused=found(
            (
                widest is not None and width > widest,
                Finding(code="joint-too-wide", limit=widest, actual=width),
            )
        ),
    )


def with_waste(volume: Worked, waste: Worked | None) -> Worked:
    """The volume with a share added for waste."""
    return volume * (plain(1) + waste) if waste else volume


@calculator(
    example=Example(
        inputs={"length": "10 m", "radius": "8 mm"}, gives={"section": "14 mm²", "volume": "137.3 ml"}
    )
)
def tooled_bead(*, length: Run, radius: Length, waste: Share | None = None) -> Bead:
    """Volume of sealant in a square inner corner, tooled hollow to a radius.

    Lengths in, a volume out: a square of the radius less a quarter circle. Own derivation.
    """
    section = radius * radius * (plain(1) - PI / 4)
    return Bead(section=section, length=length, volume=with_waste(section * length, waste))


@calculator(
    example=Example(
        inputs={"length": "2 m", "swing": "60 mm", "period": "120 mm", "diameter": "6 mm"},
        gives={"length": "2828.4 mm", "volume": "80 ml"},
    )
)
def wavy_bead(
    *, length: Run, swing: Length, period: Length, diameter: Length, waste: Share | None = None
) -> Bead:
    """Volume of a round bead laid to and fro in straight strokes along a piece.

    Lengths in, a length and a volume out. `swing` is from peak to peak across the piece, `period` the length
    of a whole stroke there and back. Own derivation.
    """
    slope = 2 * swing / period
    run = length * sqrt(plain(1) + slope * slope)
    section = PI * diameter * diameter / 4
    return Bead(section=section, length=run, volume=with_waste(section * run, waste))


@calculator(
    example=Example(inputs={"area": "2.4 m2", "film": "0.2 mm", "waste": "10 %"}, gives={"": "528 ml"})
)
def spread(*, area: Area, film: Length, waste: Share | None = None) -> Worked:
    """Volume of glue, primer or filler spread over a face.

    An area and a film in, a volume out. A maker's rate in ml a square metre is a film of as many thousandths
    of a mm: 200 ml a square metre is 0.2 mm. Own derivation.
    """
    return with_waste(area * film, waste)


@calculator(example=Example(inputs={"pack": "310 ml", "section": "36 mm2"}, gives={"": "8611.1 mm"}))
def bead_reach(*, pack: Pack, section: Area, used: Share | None = None) -> Worked:
    """Length of bead that one pack gives.

    A volume and a section in, a length out; `used` is the share of a pack that gets used, the whole of it
    unless told. A share of nought is refused. Own derivation.
    """
    if used is not None and used.magnitude == 0:
        raise InputRefused("nothing-used-of-pack", "used")
    return (pack * used if used else pack) / section


@dataclass(frozen=True, slots=True, kw_only=True)
class ScrewRows:
    """Screws in rows along a piece: how many rows, in each row and in all, how far apart, and where.

    `row_pitch` is nought for one row, `pitch` for one screw in a row. `along` and `across` are the places
    from one end and one edge.
    """

    rows: Worked
    in_row: Worked
    count: Worked
    pitch: Worked
    row_pitch: Worked
    along: tuple[Worked, ...]
    across: tuple[Worked, ...]
    refused: Findings


@calculator(
    example=Example(
        inputs={
            "length": "2400 mm",
            "width": "200 mm",
            "spacing": "400 mm",
            "row_spacing": "150 mm",
            "end": "40 mm",
            "edge": "25 mm",
            "diameter": "5 mm",
            "end_times": "7",
            "edge_times": "4",
        },
        gives={"rows": "2", "in_row": "7", "count": "14", "pitch": "386.7 mm", "row_pitch": "150 mm"},
    )
)
def screw_rows(
    *,
    length: Length,
    width: Length,
    spacing: Length,
    row_spacing: Length,
    end: Margin,
    edge: Margin,
    diameter: Length | None = None,
    end_times: Times | None = None,
    edge_times: Times | None = None,
) -> ScrewRows:
    """Screws evenly along and across a piece, no further apart than a spacing each way.

    Lengths in, counts and lengths out. Places stand `end` from the ends and `edge` from the edges; a piece
    no wider than both edges together takes one row in its middle, and likewise along it. `end_times` and
    `edge_times` are how many diameters must lie between a screw and an end or edge, as the maker or the
    designer states; nearer is refused. Own derivation.
    """
    along, pitch = _places(length, spacing, end, "spacing")
    across, row_pitch = _places(width, row_spacing, edge, "row_spacing")
    rows, in_row = plain(len(across)), plain(len(along))
    return ScrewRows(
        rows=rows,
        in_row=in_row,
        count=rows * in_row,
        pitch=pitch,
        row_pitch=row_pitch,
        along=along,
        across=across,
        refused=(
            *_too_near("end-too-near", along[0], diameter, end_times),
            *_too_near("edge-too-near", across[0], diameter, edge_times),
        ),
    )


def _places(size: Worked, spacing: Worked, margin: Worked, name: str) -> tuple[tuple[Worked, ...], Worked]:
    """Places along one way of a piece and how far apart they are; one in the middle where two will not go."""
    usable = size - 2 * margin
    if usable.magnitude <= 0:
        return (size / 2,), millimetres(0)
    if usable.number / spacing.number > MOST_FIXINGS:
        raise InputRefused("too-many-marks", name, most=str(MOST_FIXINGS))
    bays = round_up(usable / spacing, plain(1))
    pitch = usable / bays
    return tuple(margin + plain(number) * pitch for number in range(int(bays.magnitude) + 1)), pitch


def _too_near(code: str, at: Worked, diameter: Worked | None, times: Worked | None) -> Findings:
    if diameter is None or times is None:
        return ()
    least = diameter * times
    return found((at < least, Finding(code=code, limit=least, actual=at)))


@calculator(
    example=Example(
        inputs={
            "stock": ("40 mm", "50 mm", "60 mm", "70 mm"),
            "held": "18 mm",
            "hold": "30 mm",
            "ground": "47 mm",
            "cover": "5 mm",
        },
        gives={"length": "50 mm", "least": "48 mm", "most": "60 mm", "holds": "32 mm"},
    )
)
def screw_length(
    *, stock: Lengths, held: Length, hold: Length, ground: Length, cover: Margin | None = None
) -> PinLength:
    """The shortest stock screw that bites deep enough and does not come through the ground behind.

    Lengths in, lengths out. `held` is the thickness it passes through, `hold` the least that must be in the
    ground, `ground` the sound depth there, `cover` what must stay unpierced. Own derivation.
    """
    most = held + ground - cover if cover else held + ground
    return shortest_between(stock, held, held + hold, most, "no-screw")
