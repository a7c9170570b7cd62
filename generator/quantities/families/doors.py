"""Hanging a door: the leaf's size, its gaps and leading edge, hinges, latch, mass and swing.

Of a fire door nothing is worked out that its certificate decides.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated, TypeAlias

from generator.quantities.calculator import Example, Length, Margin, Takes, Times, calculator
from generator.quantities.functions import atan, sqrt
from generator.quantities.results import Finding, Findings, InputRefused, found
from generator.quantities.worked import Worked, named
from generator.quantities.workings import print_worked
from generator.units import DENSITY, MASS

Density: TypeAlias = Annotated[Worked, Takes(dimension=DENSITY, above=Decimal(0))]
Mass: TypeAlias = Annotated[Worked, Takes(dimension=MASS, above=Decimal(0))]

_RATINGS = ("plain", "fire")
_CERTIFICATE = (Finding(code="certificate-decides"),)
_MOST_HINGES = 6


def _is_fire(rating: str) -> bool:
    if rating not in _RATINGS:
        raise InputRefused("word-not-offered", "rating", found=rating, known=", ".join(_RATINGS))
    return rating == "fire"


@dataclass(frozen=True, slots=True, kw_only=True)
class LeafSize:
    """The leaf that leaves its gaps in the opening, and what comes off the leaf that was delivered.

    `edge_trim` comes off each long edge alike, `end_trim` off the foot. All None for a fire door.
    """

    width: Worked | None
    height: Worked | None
    edge_trim: Worked | None
    end_trim: Worked | None
    refused: Findings


@calculator(
    example=Example(
        inputs={
            "opening_width": "766 mm",
            "opening_height": "1990 mm",
            "hinge_gap": "2.5 mm",
            "latch_gap": "3 mm",
            "head_gap": "3 mm",
            "foot_gap": "8 mm",
            "leaf_width": "762 mm",
            "leaf_height": "1981 mm",
            "most_edge_trim": "3 mm",
            "most_end_trim": "6 mm",
            "rating": "plain",
        },
        gives={"width": "760.5 mm", "height": "1979 mm", "edge_trim": "0.8 mm", "end_trim": "2 mm"},
    )
)
def leaf_size(
    *,
    opening_width: Length,
    opening_height: Length,
    hinge_gap: Margin,
    latch_gap: Margin,
    head_gap: Margin,
    foot_gap: Margin,
    leaf_width: Length,
    leaf_height: Length,
    most_edge_trim: Margin,
    most_end_trim: Margin,
    rating: str,
) -> LeafSize:
    """The size a leaf is planed to, and how much comes off each edge and off the foot.

    Lengths in, lengths out. The opening is measured between the faces the leaf closes against, its width at
    the narrowest, its height from the finished floor. A leaf that is too small, or that would lose more than
    it allows, is refused; so is every fire door (`rating` is plain or fire), whose certificate decides. Own
    derivation; what a leaf allows is its maker's to state.
    """
    if _is_fire(rating):
        return LeafSize(width=None, height=None, edge_trim=None, end_trim=None, refused=_CERTIFICATE)
    width = opening_width - hinge_gap - latch_gap
    height = opening_height - head_gap - foot_gap
    edge, end = (leaf_width - width) / 2, leaf_height - height
    return LeafSize(
        width=width,
        height=height,
        edge_trim=edge,
        end_trim=end,
        refused=found(
            (edge.magnitude < 0, Finding(code="leaf-too-narrow", limit=width, actual=leaf_width)),
            (end.magnitude < 0, Finding(code="leaf-too-short", limit=height, actual=leaf_height)),
            (edge > most_edge_trim, Finding(code="edge-trim-over", limit=most_edge_trim, actual=edge)),
            (end > most_end_trim, Finding(code="end-trim-over", limit=most_end_trim, actual=end)),
        ),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class PairSize:
    """Each leaf of a pair with rebated or square meeting edges; None for fire doors.

    `hinge_trim` comes off the hinge edge alone, so that the meeting edge stays as it was made, `end_trim` off
    the foot; both are None where the leaves delivered are not told.
    """

    each: Worked | None
    height: Worked | None
    hinge_trim: Worked | None
    end_trim: Worked | None
    refused: Findings


@calculator(
    example=Example(
        inputs={
            "opening_width": "1524 mm",
            "hinge_gap": "3 mm",
            "meeting_gap": "3 mm",
            "rebate": "12 mm",
            "rating": "plain",
            "opening_height": "1990 mm",
            "head_gap": "3 mm",
            "foot_gap": "8 mm",
            "leaf_width": "765 mm",
            "leaf_height": "1981 mm",
        },
        gives={"each": "763.5 mm", "height": "1979 mm", "hinge_trim": "1.5 mm", "end_trim": "2 mm"},
    )
)
def pair_of_leaves(
    *,
    opening_width: Length,
    hinge_gap: Margin,
    meeting_gap: Margin,
    rebate: Margin,
    rating: str,
    opening_height: Length | None = None,
    head_gap: Margin | None = None,
    foot_gap: Margin | None = None,
    leaf_width: Length | None = None,
    leaf_height: Length | None = None,
    most_edge_trim: Margin | None = None,
    most_end_trim: Margin | None = None,
) -> PairSize:
    """The size of each leaf of a pair, the meeting edges lapping by `rebate`, nought for square ones.

    Lengths in, lengths out. What is cut off a leaf delivered comes off its hinge edge and its foot; leaves
    that are too small or would lose more than they allow are refused, and so is every fire door. Own
    derivation.
    """
    if _is_fire(rating):
        return PairSize(each=None, height=None, hinge_trim=None, end_trim=None, refused=_CERTIFICATE)
    each = (opening_width - 2 * hinge_gap - meeting_gap + rebate) / 2
    height = _less(opening_height, head_gap, foot_gap)
    edge = leaf_width - each if leaf_width else None
    end = leaf_height - height if leaf_height and height else None
    return PairSize(
        each=each,
        height=height,
        hinge_trim=edge,
        end_trim=end,
        refused=(
            *_trimmed(edge, (each, leaf_width), most_edge_trim, ("leaf-too-narrow", "edge-trim-over")),
            *_trimmed(end, (height, leaf_height), most_end_trim, ("leaf-too-short", "end-trim-over")),
        ),
    )


def _less(whole: Worked | None, *gaps: Worked | None) -> Worked | None:
    for gap in gaps:
        whole = whole - gap if whole and gap else whole
    return whole


def _trimmed(
    trim: Worked | None,
    wanted: tuple[Worked | None, Worked | None],
    most: Worked | None,
    codes: tuple[str, str],
) -> Findings:
    """What is wrong with a trim: none left of it, or more of it than a leaf allows."""
    if trim is None:
        return ()
    fitted, delivered = wanted
    small, over = codes
    return found(
        (trim.magnitude < 0, Finding(code=small, limit=fitted, actual=delivered)),
        (most is not None and trim > most, Finding(code=over, limit=most, actual=trim)),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class LeadingEdge:
    """What the latch edge of a leaf needs to pass the frame.

    `gap_needed` is what a square edge needs of the latch gap, `clearance` what is then left of it (a minus
    binds). `bevel` is how far back the far arris must stand for no point of the edge to swing wider than the
    near one, `bevel_angle` the same from square. All None for a fire door.
    """

    gap_needed: Worked | None
    clearance: Worked | None
    bevel: Worked | None
    bevel_angle: Worked | None
    notes: Findings
    refused: Findings


@calculator(
    example=Example(
        inputs={
            "leaf_width": "760.5 mm",
            "leaf_thickness": "44 mm",
            "pin_inset": "1.25 mm",
            "pin_projection": "6 mm",
            "latch_gap": "3 mm",
            "most_bevel": "3 mm",
            "rating": "plain",
        },
        gives={"gap_needed": "1.6 mm", "clearance": "1.4 mm", "bevel": "1.6 mm", "bevel_angle": "2.1°"},
    )
)
def leading_edge(
    *,
    leaf_width: Length,
    leaf_thickness: Length,
    pin_inset: Margin,
    pin_projection: Margin,
    latch_gap: Margin,
    most_bevel: Margin,
    rating: str,
) -> LeadingEdge:
    """The gap a square leading edge needs, and the bevel that needs none.

    Lengths in, lengths and an angle out. `pin_inset` is the hinge pin beyond the leaf's hinge edge,
    `pin_projection` the pin in front of the leaf's face. Own derivation: the far corner swings on the
    longest radius and passes the frame where that radius lies square to it.
    """
    if _is_fire(rating):
        return LeadingEdge(
            gap_needed=None, clearance=None, bevel=None, bevel_angle=None, notes=(), refused=_CERTIFICATE
        )
    reach = named(leaf_width + pin_inset, "reach", "Pin to latch edge")
    back = named(pin_projection + leaf_thickness, "back", "Pin to far face")
    needed = sqrt(reach * reach + back * back) - reach
    bevel = reach - sqrt(reach * reach + pin_projection * pin_projection - back * back)
    binds = needed > latch_gap
    return LeadingEdge(
        gap_needed=needed,
        clearance=latch_gap - needed,
        bevel=bevel,
        bevel_angle=atan(bevel / leaf_thickness),
        notes=(Finding(code="edge-binds" if binds else "edge-clears", limit=latch_gap, actual=needed),),
        refused=found((bevel > most_bevel, Finding(code="bevel-too-deep", limit=most_bevel, actual=bevel))),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class HingeSetOut:
    """Where the hinges stand: centres and upper ends from the leaf's top, and centres from the frame's head.

    All in order from the top; empty or None for a fire door.
    """

    centres: tuple[Worked, ...]
    upper_ends: tuple[Worked, ...]
    on_frame: tuple[Worked, ...]
    first: Worked | None
    last: Worked | None
    spacing: Worked | None
    refused: Findings


@calculator(
    example=Example(
        inputs={
            "leaf_height": "1979 mm",
            "hinges": "3",
            "hinge_height": "100 mm",
            "from_top": "150 mm",
            "from_foot": "225 mm",
            "head_gap": "3 mm",
            "rating": "plain",
        },
        gives={"first": "200 mm", "last": "1704 mm", "spacing": "752 mm"},
    )
)
def hinge_set_out(
    *,
    leaf_height: Length,
    hinges: Times,
    hinge_height: Length,
    from_top: Margin,
    from_foot: Margin,
    head_gap: Margin,
    rating: str,
) -> HingeSetOut:
    """Hinge places on the leaf and on the frame, evenly spaced between the first and the last.

    Lengths and a whole number in, lengths out. `from_top` runs from the leaf's top to the upper end of the
    first hinge, `from_foot` from the leaf's foot to the lower end of the last. Own derivation; the usual
    distances are common practice, no source.
    """
    if _is_fire(rating):
        nowhere: tuple[Worked, ...] = ()
        return HingeSetOut(
            centres=nowhere, upper_ends=nowhere, on_frame=nowhere, first=None, last=None, spacing=None,
            refused=_CERTIFICATE,
        )  # fmt: skip
    count = _whole_hinges(hinges)
    first = from_top + hinge_height / 2
    last = leaf_height - from_foot - hinge_height / 2
    spacing = named((last - first) / (count - 1), "spacing", "Between hinge centres")
    whole = (first, *(first + bay * spacing for bay in range(1, count - 1)), last)
    return HingeSetOut(
        centres=whole,
        upper_ends=tuple(centre - hinge_height / 2 for centre in whole),
        on_frame=tuple(centre + head_gap for centre in whole),
        first=first,
        last=last,
        spacing=spacing,
        refused=found(
            (spacing < hinge_height, Finding(code="hinges-overlap", limit=hinge_height, actual=spacing))
        ),
    )


def _whole_hinges(hinges: Worked) -> int:
    if hinges.number != int(hinges.number) or not 2 <= hinges.number <= _MOST_HINGES:
        raise InputRefused("hinge-count", "hinges", found=print_worked(hinges).text(), most=str(_MOST_HINGES))
    return int(hinges.number)


@dataclass(frozen=True, slots=True, kw_only=True)
class LatchSetOut:
    """The latch's centre line: up the leaf from its foot, down from its top, down the frame from its head."""

    from_foot: Worked | None
    from_top: Worked | None
    on_frame: Worked | None
    refused: Findings


@calculator(
    example=Example(
        inputs={
            "handle_height": "1000 mm",
            "leaf_height": "1979 mm",
            "foot_gap": "8 mm",
            "head_gap": "3 mm",
            "rating": "plain",
        },
        gives={"from_foot": "992 mm", "from_top": "987 mm", "on_frame": "990 mm"},
    )
)
def latch_set_out(
    *, handle_height: Length, leaf_height: Length, foot_gap: Margin, head_gap: Margin, rating: str
) -> LatchSetOut:
    """The latch's height on leaf and frame from the height its handle stands above the finished floor.

    Lengths in, lengths out. Own derivation; the height is the job's to state.
    """
    if _is_fire(rating):
        return LatchSetOut(from_foot=None, from_top=None, on_frame=None, refused=_CERTIFICATE)
    up = handle_height - foot_gap
    down = leaf_height - up
    outside = up.magnitude <= 0 or down.magnitude <= 0
    return LatchSetOut(
        from_foot=up,
        from_top=down,
        on_frame=down + head_gap,
        refused=found((outside, Finding(code="latch-out-of-leaf", limit=leaf_height, actual=up))),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class LeafMass:
    """A leaf's mass without its furniture, and whether hinges and one pair of hands will bear it."""

    mass: Worked
    notes: Findings
    refused: Findings


@calculator(
    example=Example(
        inputs={
            "width": "762 mm",
            "height": "1981 mm",
            "thickness": "44 mm",
            "density": "600 kg/m3",
            "one_person": "25 kg",
        },
        gives={"mass": "39.9 kg"},
    )
)
def leaf_mass(
    *,
    width: Length,
    height: Length,
    thickness: Length,
    density: Density,
    hinges_carry: Mass | None = None,
    one_person: Mass | None = None,
) -> LeafMass:
    """The mass of a leaf from its size and the density of the whole of it.

    Lengths and a density in, a mass out. `hinges_carry` is what the maker rates the set of hinges for,
    `one_person` the mass above which two people lift. Plain arithmetic.
    """
    mass = width * height * thickness * density
    heavy = one_person is not None and mass > one_person
    over = hinges_carry is not None and mass > hinges_carry
    return LeafMass(
        mass=mass,
        notes=found((heavy, Finding(code="carried-by-two", limit=one_person, actual=mass))),
        refused=found((over, Finding(code="leaf-over-hinges", limit=hinges_carry, actual=mass))),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class LeafSweep:
    """What a leaf needs as it opens: the radius its far corner sweeps, the way left through, the gap below.

    `way_through` is between the face of the leaf standing open square and the stop on the latch side.
    """

    radius: Worked
    way_through: Worked
    foot_gap_needed: Worked
    foot_spare: Worked
    refused: Findings


@calculator(
    example=Example(
        inputs={
            "opening_width": "766 mm",
            "leaf_width": "760.5 mm",
            "leaf_thickness": "44 mm",
            "hinge_gap": "2.5 mm",
            "pin_inset": "1.25 mm",
            "pin_projection": "6 mm",
            "stop_thickness": "12 mm",
            "foot_gap": "8 mm",
            "floor_rise": "3 mm",
            "floor_clearance": "2 mm",
        },
        gives={
            "radius": "763.4 mm",
            "way_through": "702.8 mm",
            "foot_gap_needed": "5 mm",
            "foot_spare": "3 mm",
        },
    )
)
def leaf_sweep(
    *,
    opening_width: Length,
    leaf_width: Length,
    leaf_thickness: Length,
    hinge_gap: Margin,
    pin_inset: Margin,
    pin_projection: Margin,
    stop_thickness: Margin,
    foot_gap: Margin,
    floor_rise: Margin,
    floor_clearance: Margin,
    least_way: Length | None = None,
) -> LeafSweep:
    """The radius a leaf sweeps, the way through with it open square, and the gap its foot needs.

    Lengths in, lengths out. `floor_rise` is how much the floor rises anywhere under the swing above its level
    at the shut leaf. Handles and closers narrow the way further. Own derivation.
    """
    reach, back = leaf_width + pin_inset, pin_projection + leaf_thickness
    way = opening_width - (hinge_gap - pin_inset) - back - stop_thickness
    needed = floor_rise + floor_clearance
    narrow = least_way is not None and way < least_way
    return LeafSweep(
        radius=sqrt(reach * reach + back * back),
        way_through=way,
        foot_gap_needed=needed,
        foot_spare=foot_gap - needed,
        refused=found(
            (needed > foot_gap, Finding(code="floor-catches", limit=foot_gap, actual=needed)),
            (narrow, Finding(code="way-too-narrow", limit=least_way, actual=way)),
        ),
    )
