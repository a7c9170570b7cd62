"""The ways of dealing with a set-back frame, set side by side: cost, what is left, what is refused."""

from __future__ import annotations

from dataclasses import dataclass, replace

from generator.quantities.calculator import (
    Angle,
    Duration,
    Example,
    Length,
    Margin,
    calculator,
)
from generator.quantities.families.architraves import ArchitraveSet
from generator.quantities.families.leaf_swing import opening_angle
from generator.quantities.families.packers import EvenPacker, PackerFit, PackerSet
from generator.quantities.functions import floor_at_nought, greatest, round_up
from generator.quantities.results import Finding, Findings, found
from generator.quantities.worked import Worked, named, plain


@dataclass(frozen=True, slots=True, kw_only=True)
class Surroundings:
    """What the architrave meets: its own thicknesses, the skirting beside it and the door's hinge pin."""

    architrave_thickness: Worked
    edge_thickness: Worked
    skirting_thickness: Worked
    shadow_margin: Worked
    pin_projection: Worked
    least_swing: Worked | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Cost:
    """A length of material that a way uses, by what it is."""

    code: str
    length: Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """One way of doing the work.

    `edge_left` is the architrave's thickness at its outer edge, `projection` how far that edge stands in
    front of the plaster at the skirting, `skirting_margin` the same less the skirting, `swing` the greatest
    opening angle of the leaf (square-edged architrave). `operations` and `asks` are codes with words of their
    own: what is done, and what must be settled first. `leaves` tells what remains; `minutes` stand only where
    they were given.
    """

    code: str
    pieces: Worked
    costs: tuple[Cost, ...]
    operations: tuple[str, ...]
    asks: tuple[str, ...]
    edge_left: Worked
    projection: Worked
    skirting_margin: Worked
    swing: Worked
    minutes: Worked | None
    leaves: Findings
    refused: Findings
    chosen: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    """The ways in the order they were given; `refused` repeats the refusals of the way that was chosen."""

    ways: tuple[Way, ...]
    refused: Findings = ()

    def choosing(self, code: str) -> Comparison:
        """The same comparison with one way marked as chosen."""
        ways = tuple(replace(way, chosen=way.code == code) for way in self.ways)
        refusals = tuple(finding for way in ways if way.chosen for finding in way.refused)
        return Comparison(ways=ways, refused=refusals)


@calculator(
    example=Example(
        inputs={
            "architrave_thickness": "18 mm",
            "edge_thickness": "18 mm",
            "skirting_thickness": "15 mm",
            "shadow_margin": "2 mm",
            "pin_projection": "5 mm",
        },
        gives={"edge_thickness": "18 mm"},
    )
)
def surroundings(
    *,
    architrave_thickness: Length,
    edge_thickness: Length,
    skirting_thickness: Margin,
    shadow_margin: Margin,
    pin_projection: Margin,
    least_swing: Angle | None = None,
) -> Surroundings:
    """What the architrave meets, gathered for the comparison of ways.

    Lengths in; `edge_thickness` is the moulding's thickness at its outer edge. Shadow margin and least swing
    are policy.
    """
    return Surroundings(
        architrave_thickness=architrave_thickness,
        edge_thickness=edge_thickness,
        skirting_thickness=skirting_thickness,
        shadow_margin=shadow_margin,
        pin_projection=pin_projection,
        least_swing=least_swing,
    )


def plaster_at_skirting(packer: EvenPacker) -> Worked:
    """The set-back where the skirting meets the architrave: the greater foot reading, else the greatest."""
    left = [item for item in packer.remainders if item.member == "left" and item.at]
    right = [item for item in packer.remainders if item.member == "right" and item.at]
    if not (left and right):
        return packer.greatest
    lowest = min(left, key=lambda item: item.at.number if item.at else 0.0)
    last = max(right, key=lambda item: item.at.number if item.at else 0.0)
    return named(greatest((lowest.reading, last.reading)), "set_back_at_foot", "Plaster proud at the foot")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Built:
    """How a way sets the architrave; `depth` is its face in front of the frame's edge."""

    code: str
    projection: Worked
    edge_left: Worked
    quirk: Worked
    depth: Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class _Work:
    """What a way costs and what has to be settled before it."""

    pieces: Worked
    costs: tuple[Cost, ...]
    operations: tuple[str, ...]
    asks: tuple[str, ...] = ()
    minutes: Worked | None = None


def _way(built: _Built, around: Surroundings, work: _Work, leaves: Findings, refused: Findings) -> Way:
    margin = built.projection - around.skirting_thickness
    swing = opening_angle(around.pin_projection, built.depth, built.quirk)
    return Way(
        code=built.code,
        pieces=work.pieces,
        costs=work.costs,
        operations=work.operations,
        asks=work.asks,
        edge_left=built.edge_left,
        projection=built.projection,
        skirting_margin=margin,
        swing=swing,
        minutes=work.minutes,
        leaves=leaves,
        refused=(*refused, *_clashes(around, margin, swing)),
    )


def _clashes(around: Surroundings, margin: Worked, swing: Worked) -> Findings:
    least = around.least_swing
    return found(
        (
            margin < around.shadow_margin,
            Finding(code="skirting-too-near", limit=around.shadow_margin, actual=margin),
        ),
        (
            least is not None and swing < least,
            Finding(code="swing-too-small", limit=least, actual=swing),
        ),
    )


def _three(extra: int = 0) -> Worked:
    return plain(3 + extra)


_PACKED = {
    "packer": "even_packer",
    "fit": "packer_fit",
    "packers": "packer_set",
    "architraves": "architrave_set",
    "around": "surroundings",
    "quirk": "9 mm",
}


@calculator(
    example=Example(
        inputs=_PACKED, gives={"projection": "17.6 mm", "skirting_margin": "2.6 mm", "pieces": "6"}
    )
)
def packed_way(
    *,
    packer: EvenPacker,
    fit: PackerFit,
    packers: PackerSet,
    architraves: ArchitraveSet,
    around: Surroundings,
    quirk: Margin,
    most_set_back: Length | None = None,
    minutes: Duration | None = None,
) -> Way:
    """Packer with a double quirk: cost, what it leaves, and why it is refused.

    `quirk` is both quirks together. The leaf clears packer and architrave together. Refused where the mean
    set-back asks for no packer, since the second quirk would then lie on nothing, and where a reading is more
    than `most_set_back`, which is policy. Own derivation.
    """
    built = _Built(
        code="packer",
        projection=packer.thickness + around.edge_thickness - plaster_at_skirting(packer),
        edge_left=around.edge_thickness,
        quirk=quirk,
        depth=packer.thickness + around.architrave_thickness,
    )
    work = _Work(
        pieces=_three(len(packers.pieces)),
        costs=(_cost("packer", packers.metres), _cost("architrave", architraves.metres)),
        operations=("rip-packers", "bare-edge", "glue-packers", "mark-second-quirk", "fit-architrave"),
        minutes=minutes,
    )
    refused = (*packer.refused, *_beyond_packing(packer, most_set_back), *fit.refused)
    return _way(built, around, work, _after_packing(packer), refused)


def _beyond_packing(packer: EvenPacker, most: Worked | None) -> Findings:
    deep = most is not None and packer.greatest > most
    return found(
        (packer.thickness.magnitude == 0, Finding(code="no-packer", actual=packer.mean)),
        (deep, Finding(code="set-back-too-great", limit=most, actual=packer.greatest)),
    )


def _cost(code: str, length: Worked) -> Cost:
    return Cost(code=code, length=length)


def _after_packing(packer: EvenPacker) -> Findings:
    return found(
        (
            packer.widest_wall_gap.magnitude > 0,
            Finding(code="wall-gap-filled", actual=packer.widest_wall_gap),
        ),
        (
            packer.widest_frame_gap.magnitude > 0,
            Finding(code="plaster-eased", actual=packer.widest_frame_gap),
        ),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Rebate:
    """The rebate's depth and width, and what it leaves of the outer edge."""

    depth: Worked
    width: Worked
    left: Worked


def _rebate_work(architraves: ArchitraveSet, minutes: Worked | None) -> _Work:
    return _Work(
        pieces=_three(),
        costs=(_cost("architrave", architraves.metres), _cost("rebate", architraves.metres)),
        operations=("test-piece", "rebate-back", "seal-rebate", "fit-architrave"),
        asks=("moulding-thickness",),
        minutes=minutes,
    )


def _rebate_refusals(rebate: _Rebate, whole: Worked, least_left: Worked) -> Findings:
    return found(
        (rebate.left < least_left, Finding(code="edge-too-thin", limit=least_left, actual=rebate.left)),
        (rebate.width >= whole, Finding(code="rebate-takes-back", limit=whole, actual=rebate.width)),
        (rebate.width.magnitude <= 0, Finding(code="rebate-not-needed", actual=rebate.width)),
    )


def _not_proud(packer: EvenPacker) -> Findings:
    return found((packer.greatest.magnitude <= 0, Finding(code="no-set-back", actual=packer.greatest)))


def _too_uneven(packer: EvenPacker, most: Worked | None) -> Findings:
    uneven = most is not None and packer.spread > most
    return found((uneven, Finding(code="rebate-uneven", limit=most, actual=packer.spread)))


def _rebate_leaves(rebate: _Rebate, around: Surroundings, packer: EvenPacker, clearance: Worked) -> Findings:
    needed = around.skirting_thickness + packer.greatest + around.shadow_margin
    return (
        Finding(code="rebate-size", limit=rebate.width, actual=rebate.depth),
        Finding(code="edge-needed", limit=needed, actual=around.edge_thickness),
        Finding(code="gap-behind-rebate", actual=packer.spread + clearance),
    )


@calculator(
    example=Example(
        inputs={
            "packer": "even_packer",
            "architraves": "architrave_set",
            "around": "surroundings",
            "architrave_width": "68 mm",
            "frame_edge": "34 mm",
            "quirk": "6 mm",
            "clearance": "0.6 mm",
            "least_left": "8 mm",
        },
        gives={"edge_left": "13 mm", "projection": "13.6 mm", "skirting_margin": "−1.4 mm"},
    )
)
def rebated_way(
    *,
    packer: EvenPacker,
    architraves: ArchitraveSet,
    around: Surroundings,
    architrave_width: Length,
    frame_edge: Length,
    quirk: Margin,
    clearance: Margin,
    least_left: Margin,
    most_uneven: Margin | None = None,
    minutes: Duration | None = None,
) -> Way:
    """Architrave rebated at the back over the plaster, with one quirk.

    The rebate takes the greatest set-back and the clearance. Refused where it would leave too thin an edge,
    take the whole back, or find no plaster to clear; and where the readings differ by more than
    `most_uneven`, since a rebate has one depth. Own derivation.
    """
    rebate = _Rebate(
        depth=packer.greatest + clearance,
        width=architrave_width - (frame_edge - quirk) + clearance,
        left=around.edge_thickness - (packer.greatest + clearance),
    )
    built = _Built(
        code="rebate",
        projection=around.edge_thickness - plaster_at_skirting(packer),
        edge_left=rebate.left,
        quirk=quirk,
        depth=around.architrave_thickness,
    )
    refused = (
        *_rebate_refusals(rebate, architrave_width, least_left),
        *_not_proud(packer),
        *_too_uneven(packer, most_uneven),
    )
    leaves = _rebate_leaves(rebate, around, packer, clearance)
    return _way(built, around, _rebate_work(architraves, minutes), leaves, refused)


@calculator(
    example=Example(
        inputs={
            "packer": "even_packer",
            "strips": "packer_set",
            "architraves": "architrave_set",
            "around": "surroundings",
            "quirk": "6 mm",
            "step": "0.5 mm",
            "thinnest_rip": "3 mm",
            "thickest_strip": "12 mm",
        },
        gives={"projection": "18 mm", "pieces": "6", "edge_left": "18 mm"},
    )
)
def extended_way(
    *,
    packer: EvenPacker,
    strips: PackerSet,
    architraves: ArchitraveSet,
    around: Surroundings,
    quirk: Margin,
    step: Length,
    thinnest_rip: Margin,
    thickest_strip: Length,
    minutes: Duration | None = None,
) -> Way:
    """Extension strip flush with the lining's face, planed to the plaster, with one quirk.

    The strip is ripped to the greatest reading, taken up to the step, and planed down to the plaster. Refused
    outside the thinnest and thickest strip, which are policy. Own derivation.
    """
    strip = floor_at_nought(round_up(packer.greatest, step))
    built = _Built(
        code="extension",
        projection=around.edge_thickness,
        edge_left=around.edge_thickness,
        quirk=quirk,
        depth=floor_at_nought(packer.greatest) + around.architrave_thickness,
    )
    refused = found(
        (strip < thinnest_rip, Finding(code="packer-too-thin", limit=thinnest_rip, actual=strip)),
        (strip > thickest_strip, Finding(code="strip-too-thick", limit=thickest_strip, actual=strip)),
    )
    work = _strip_work(strips, architraves, minutes)
    return _way(built, around, work, _strip_leaves(strip, packer), refused)


def _strip_work(strips: PackerSet, architraves: ArchitraveSet, minutes: Worked | None) -> _Work:
    return _Work(
        pieces=_three(3),
        costs=(_cost("strip", strips.metres), _cost("architrave", architraves.metres)),
        operations=("rip-strips", "glue-strips", "plane-strips", "fill-joint", "fit-architrave"),
        asks=("painted-lining",),
        minutes=minutes,
    )


def _strip_leaves(strip: Worked, packer: EvenPacker) -> Findings:
    return (
        Finding(code="strip-size", actual=strip),
        Finding(code="planed-off", actual=floor_at_nought(strip - packer.least)),
        Finding(code="joint-in-lining"),
    )


@calculator(
    example=Example(
        inputs={
            "packer": "even_packer",
            "architraves": "architrave_set",
            "around": "surroundings",
            "quirk": "6 mm",
            "filler_takes": "2 mm",
        },
        gives={"edge_left": "18 mm", "pieces": "3"},
    )
)
def reset_way(
    *,
    packer: EvenPacker,
    architraves: ArchitraveSet,
    around: Surroundings,
    quirk: Margin,
    filler_takes: Margin,
    minutes: Duration | None = None,
) -> Way:
    """Lining taken out and set again flush with the plaster, with one quirk.

    The lining comes forward by the mean set-back, so its other edge goes back by as much. Refused where the
    plaster would still stand off the moved lining by more than the filler takes, and where the lining stands
    at the mean already. Own derivation.
    """
    moved = named(packer.mean, "mean_set_back", "Mean set-back")
    behind = greatest((packer.greatest - moved, moved - packer.least))
    built = _Built(
        code="lining",
        projection=moved + around.edge_thickness - plaster_at_skirting(packer),
        edge_left=around.edge_thickness,
        quirk=quirk,
        depth=around.architrave_thickness,
    )
    work = _Work(
        pieces=_three(),
        costs=(_cost("architrave", architraves.metres),),
        operations=("take-off-door", "free-lining", "set-lining", "make-good", "hang-door", "fit-architrave"),
        asks=("other-face", "fire-door", "services"),
        minutes=minutes,
    )
    refused = found(
        (moved.magnitude == 0, Finding(code="lining-stands", actual=moved)),
        (behind > filler_takes, Finding(code="plaster-uneven", limit=filler_takes, actual=behind)),
    )
    leaves = (Finding(code="lining-moved", actual=moved), Finding(code="still-uneven", actual=behind))
    return _way(built, around, work, leaves, refused)


@calculator(
    example=Example(
        inputs={
            "packer": "even_packer",
            "architraves": "architrave_set",
            "around": "surroundings",
            "architrave_width": "68 mm",
            "frame_edge": "34 mm",
            "quirk": "6 mm",
            "most_eased": "3 mm",
        },
        gives={"projection": "13.6 mm", "edge_left": "18 mm"},
    )
)
def eased_way(
    *,
    packer: EvenPacker,
    architraves: ArchitraveSet,
    around: Surroundings,
    architrave_width: Length,
    frame_edge: Length,
    quirk: Margin,
    most_eased: Margin,
    plaster_thickness: Length | None = None,
    minutes: Duration | None = None,
) -> Way:
    """Plaster eased back to the frame behind the architrave, with one quirk.

    The skirting stands on plaster that was not eased, so it gains on the architrave by the set-back. Refused
    where more comes off than `most_eased`, which is policy, or than the plaster is thick. Own derivation.
    """
    deepest = floor_at_nought(packer.greatest)
    band = floor_at_nought(architrave_width - (frame_edge - quirk))
    built = _Built(
        code="plaster",
        projection=around.edge_thickness - plaster_at_skirting(packer),
        edge_left=around.edge_thickness,
        quirk=quirk,
        depth=around.architrave_thickness,
    )
    refused = (*_not_proud(packer), *_easing_refusals(deepest, most_eased, plaster_thickness))
    leaves = (Finding(code="eased-band", limit=band, actual=deepest),)
    return _way(built, around, _easing_work(architraves, minutes), leaves, refused)


def _easing_work(architraves: ArchitraveSet, minutes: Worked | None) -> _Work:
    return _Work(
        pieces=_three(),
        costs=(_cost("architrave", architraves.metres), _cost("eased", architraves.metres)),
        operations=("find-services", "score-plaster", "pare-plaster", "fit-architrave"),
        asks=("asbestos", "services"),
        minutes=minutes,
    )


def _easing_refusals(deepest: Worked, most: Worked, plaster: Worked | None) -> Findings:
    through = plaster is not None and deepest >= plaster
    return found(
        (deepest > most, Finding(code="eased-too-deep", limit=most, actual=deepest)),
        (through, Finding(code="plaster-too-thin", limit=plaster, actual=deepest)),
    )


@calculator(example=Example(inputs={"packer": "packed_way", "rebate": "rebated_way"}, gives={}))
def ways_out(
    *,
    packer: Way | None = None,
    rebate: Way | None = None,
    extension: Way | None = None,
    lining: Way | None = None,
    plaster: Way | None = None,
) -> Comparison:
    """The ways set side by side, in the order a craftsman tries them.

    A refused way is a result; it becomes a fault only where it is the way chosen.
    """
    given = (packer, rebate, extension, lining, plaster)
    return Comparison(ways=tuple(way for way in given if way))
