"""Glue, adhesive and filler: volumes by section and length, and packs to buy."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from generator.quantities.calculator import (
    Example,
    Length,
    Pack,
    Run,
    Share,
    Volume,
    calculator,
)
from generator.quantities.families.packers import EvenPacker
from generator.quantities.functions import round_up, total
from generator.quantities.readings import MEMBERS, Path, member_lengths, path, starts
from generator.quantities.results import InputRefused
from generator.quantities.worked import Worked, applied, limited, literal, millimetres, named, plain
from generator.units import AREA, LENGTH, Value

PI = named(literal(Value(math.pi)), "π", "π")


@dataclass(frozen=True, slots=True, kw_only=True)
class Bead:
    """A bead's section, its length, and its volume with waste."""

    section: Worked
    length: Worked
    volume: Worked


@calculator(
    example=Example(
        inputs={"length": "10 m", "diameter": "6 mm"}, gives={"volume": "282.7 ml", "length": "10000 mm"}
    )
)
def glue_bead(*, length: Run, diameter: Length, waste: Share | None = None) -> Bead:
    """Volume of a round bead of glue or adhesive.

    Lengths in, a volume out. `waste` is a share added to the volume. A section of 1 mm² over 1 m is 1 ml: own
    derivation.
    """
    section = PI * diameter * diameter / 4
    return Bead(section=section, length=length, volume=_with_waste(section * length, waste))


@calculator(
    example=Example(
        inputs={"length": "42.6 m", "width": "6 mm", "depth": "6 mm", "waste": "10 %"},
        gives={"volume": "843.5 ml", "section": "18 mm²"},
    )
)
def fillet_bead(*, length: Run, width: Length, depth: Length, waste: Share | None = None) -> Bead:
    """Volume of a three-cornered bead of filler or sealant in an inner corner.

    Lengths in, a volume out; `width` and `depth` are the two sides along the corner's faces. Own derivation.
    """
    section = width * depth / 2
    return Bead(section=section, length=length, volume=_with_waste(section * length, waste))


def _with_waste(volume: Worked, waste: Worked | None) -> Worked:
    return volume * (plain(1) + waste) if waste else volume


@dataclass(frozen=True, slots=True, kw_only=True)
class Filler:
    """Filler behind the architrave's outer edge where the packer stands proud of the plaster, by member."""

    left: Worked
    head: Worked
    right: Worked
    volume: Worked


@calculator(
    example=Example(
        inputs={
            "packer": "even_packer",
            "opening_width": "768 mm",
            "opening_height": "1990 mm",
            "depth": "5 mm",
        },
        gives={"volume": "11.2 ml"},
    )
)
def gap_filler(
    *,
    packer: EvenPacker,
    opening_width: Length,
    opening_height: Length,
    depth: Length,
    waste: Share | None = None,
) -> Filler:
    """Filler for the gap at the wall side that an even packer leaves.

    Lengths in, volumes out; `depth` is how far the filler goes in. Plaster is taken as straight from reading
    to reading round the frame and level beyond the end ones, each stretch cut where packer and plaster cross.
    Readings without a place are taken as spread evenly. Own derivation.
    """
    lengths = member_lengths(opening_width, opening_height)
    volumes = {
        member: _with_waste(named(_gap_area(packer, member, lengths), f"{member}_gap", "Gap") * depth, waste)
        for member in MEMBERS
    }
    return Filler(
        left=volumes["left"],
        head=volumes["head"],
        right=volumes["right"],
        volume=total([named(each, member, "Filler") for member, each in volumes.items()]),
    )


def _gap_area(packer: EvenPacker, member: str, lengths: Mapping[str, Worked]) -> Worked:
    """The area as it is told, with arguments behind it that each only widen or only narrow the gap."""
    other = lengths["left" if member == "head" else "head"]
    shown = (
        packer.thickness,
        *packer.readings.values,
        lengths[member],
        *((other,) if limited(other.tree) else ()),
    )
    along = _by_place if packer.readings.placed else _by_share
    return applied("gap_area", shown, _gap(packer, member, lengths), behind=along(packer, member, lengths))


def _gap(packer: EvenPacker, member: str, lengths: Mapping[str, Worked]) -> Value:
    start = starts(lengths)[member]
    way, end = path(packer.readings, lengths), start + lengths[member].number
    return Value(_area(packer.thickness.number, way, start, end), AREA)


def _by_share(packer: EvenPacker, member: str, lengths: Mapping[str, Worked]) -> Worked:
    """Readings spread evenly grow with the path, so that a member is a share of it from here to there."""

    def again(numbers: tuple[float, ...]) -> float:
        level, *depths, whole, start, end = numbers
        bays = max(len(depths) - 1, 1)
        way = Path(tuple((whole * at / bays, depth) for at, depth in enumerate(depths)))
        return _area(level, way, start * whole, end * whole)

    before, own, after = _parted(member, lengths)
    whole = before + own + after
    shares = (before / whole, plain(1) - after / whole)
    sources = (packer.thickness, *packer.readings.values, whole, *shares)
    return applied("gap_area", sources, _gap(packer, member, lengths), again)


def _by_place(packer: EvenPacker, member: str, lengths: Mapping[str, Worked]) -> Worked:
    """Readings with a place stay there; other members' lengths move only those read beyond the corners."""

    def again(numbers: tuple[float, ...]) -> float:
        level, *depths, own, left, head = numbers
        there = {**lengths, "left": literal(Value(left, LENGTH)), "head": literal(Value(head, LENGTH))}
        start = starts(there)[member]
        return _area(level, path(packer.readings.reading(depths), there), start, start + own)

    sources = (packer.thickness, *packer.readings.values, *(lengths[each] for each in (member, *MEMBERS[:2])))
    return applied("gap_area", sources, _gap(packer, member, lengths), again)


def _parted(member: str, lengths: Mapping[str, Worked]) -> tuple[Worked, Worked, Worked]:
    """The path as what lies before a member, the member, and what lies after it."""
    at = MEMBERS.index(member)
    before, after = (
        sum((lengths[each] for each in part), millimetres(0)) for part in (MEMBERS[:at], MEMBERS[at + 1 :])
    )
    return before, lengths[member], after


def _area(level: float, way: Path, start: float, end: float) -> float:
    stretches = way.between(start, end)
    return math.fsum(_positive_part(run, level - first, level - second) for run, first, second in stretches)


def _positive_part(run: float, first: float, second: float) -> float:
    """The area above nought under a straight line from `first` to `second` over `run`."""
    if first >= 0 and second >= 0:
        return run * (first + second) / 2
    highest = max(first, second)
    if highest <= 0:
        return 0.0
    return run * highest * highest / abs(first - second) / 2


@calculator(example=Example(inputs={"amount": "843.5 ml", "pack": "310 ml"}, gives={"": "3"}))
def packs(*, amount: Volume, pack: Pack, used: Share | None = None) -> Worked:
    """Whole packs, bottles or cartridges that hold an amount.

    Volumes in, a count out; `used` is the share of a pack that gets used, the whole of it unless told. A
    share of nought is refused.
    """
    if used is not None and used.magnitude == 0:
        raise InputRefused("nothing-used-of-pack", "used")
    return round_up(amount / (pack * used if used else pack), plain(Decimal(1)))
