"""Wood and moisture: what it comes to in a room's air, how far it moves, and the gap a floor needs for it."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated, TypeAlias

from generator.quantities.calculator import Example, Length, Margin, Share, Takes, Times, calculator
from generator.quantities.functions import greatest, round_up
from generator.quantities.results import Finding, Findings, InputRefused, found
from generator.quantities.species import COEFFICIENTS, SAWN
from generator.quantities.worked import Origin, Worked, applied, given, literal, millimetres
from generator.units import LENGTH, NUMBER, Value

_COLDEST, _WARMEST = Decimal(0), Decimal(50)
Celsius: TypeAlias = Annotated[Worked, Takes(dimension=NUMBER, least=_COLDEST, most=_WARMEST)]
PerCent: TypeAlias = Annotated[Worked, Takes(dimension=NUMBER, least=Decimal(0), most=Decimal(30))]
SOLID, ENGINEERED = "solid", "engineered"
_DRIEST, _WETTEST = 6, 14
_METRE = literal(Value(Decimal(1000), LENGTH))
_DRIEST_AIR, _DAMPEST_AIR = 0.05, 0.95


@calculator(example=Example(inputs={"temperature": "21.1", "humidity": "65 %"}, gives={"": "11.96"}))
def equilibrium_moisture(*, temperature: Celsius, humidity: Share) -> Worked:
    """The moisture content that wood comes to in air of a temperature and relative humidity, in time.

    Degrees Celsius as a plain number, 0 to 50, and a share of saturation from 5 to 95 %; per cent of the dry
    mass out, as a plain number. USDA Wood Handbook FPL-GTR-190 eq. 4-5, which holds for wood in general; a
    board follows slowly, and heartwood or finish may keep it apart by a per cent or two.
    """
    if not _DRIEST_AIR <= humidity.number <= _DAMPEST_AIR:
        raise InputRefused("humidity-beyond-equation", "humidity", found=f"{humidity.number * 100:g} %")
    moisture = _moisture_content(temperature.number, humidity.number)
    return applied("moisture_in_air", (temperature, humidity), Value(moisture), _again)


def _again(numbers: tuple[float, ...]) -> float | None:
    celsius, humidity = numbers
    within = _COLDEST <= celsius <= _WARMEST and _DRIEST_AIR <= humidity <= _DAMPEST_AIR
    return _moisture_content(celsius, humidity) if within else None


def _moisture_content(celsius: float, humidity: float) -> float:
    """Per cent, by eq. 4-5 with its constants for degrees Celsius."""
    w = 349 + 1.29 * celsius + 0.0135 * celsius**2
    k = 0.805 + 0.000736 * celsius - 0.00000273 * celsius**2
    k1 = 6.27 - 0.00938 * celsius - 0.000303 * celsius**2
    k2 = 1.91 + 0.0407 * celsius - 0.000293 * celsius**2
    kh = k * humidity
    first, second = k1 * kh, k1 * k2 * kh**2
    return 1800 / w * (kh / (1 - kh) + (first + 2 * second) / (1 + first + second))


@calculator(example=Example(inputs={"species": "white oak", "sawn": "flat"}, gives={"": "0.00365"}))
def movement_coefficient(*, species: str, sawn: str) -> Worked:
    """How much a species moves across the grain for one per cent of moisture, as a share of its width.

    Words in, a plain number out. `sawn` is flat (tangential) or quarter (radial). USDA Wood Handbook
    FPL-GTR-190 Table 13-5, for 6 to 14 % moisture; a species that is not in the table is refused.
    """
    table = COEFFICIENTS.get(species)
    if table is None:
        raise InputRefused("word-not-offered", "species", found=species, known=", ".join(COEFFICIENTS))
    if sawn not in SAWN:
        raise InputRefused("word-not-offered", "sawn", found=sawn, known=", ".join(SAWN))
    label = f"{species}, {sawn} sawn, USDA Wood Handbook Table 13-5"
    return given("coefficient", Value(table[sawn]), label=label, origin=Origin.CATALOGUE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Movement:
    """How far a width grows (or shrinks, below nought) and what it comes to."""

    change: Worked
    width: Worked
    notes: Findings


@calculator(
    example=Example(
        inputs={"width": "232 mm", "coefficient": "0.00245", "moisture_now": "8", "moisture_then": "11"},
        gives={"change": "1.7 mm", "width": "233.7 mm"},
    )
)
def movement(*, width: Length, coefficient: Times, moisture_now: PerCent, moisture_then: PerCent) -> Movement:
    """How far wood moves across the grain as its moisture changes.

    A length, a coefficient per one per cent and moistures in per cent in; lengths out. USDA Wood Handbook
    FPL-GTR-190 eq. 13-2, which holds from 6 to 14 % moisture; outside that a note is made. Along the grain
    wood hardly moves.
    """
    change = _change(width, coefficient, moisture_now, moisture_then)
    return Movement(change=change, width=width + change, notes=_outside(moisture_now, moisture_then))


def _change(width: Worked, coefficient: Worked, now: Worked, then: Worked) -> Worked:
    for name, moisture in (("moisture_now", now), ("moisture_then", then)):
        # A share where per cent are meant would make the movement a hundred times too small.
        if 0 < moisture.number < 1:
            raise InputRefused("moisture-as-share", name, found=f"{moisture.number:g}")
    return width * coefficient * (then - now)


def _outside(*moistures: Worked) -> Findings:
    return found(
        *(
            (not _DRIEST <= each.number <= _WETTEST, Finding(code="beyond-6-to-14", actual=each))
            for each in moistures
        )
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class ExpansionGap:
    """The gap to leave at each wall, with the three figures beside one another and which one governs.

    `by_wood` is half the swelling across the floor as if its boards were solid, `by_maker` what the maker
    states over that width, `by_custom` what is commonly left.
    """

    swelling: Worked
    by_wood: Worked
    by_maker: Worked | None
    by_custom: Worked
    gap: Worked
    governed_by: str
    notes: Findings


@calculator(
    example=Example(
        inputs={
            "across": "3 m",
            "coefficient": "0.00365",
            "moisture_laid": "9",
            "moisture_wettest": "11",
            "build": "solid",
            "customary": "10 mm",
            "maker_per_metre": "2 mm",
            "step": "1 mm",
        },
        gives={"swelling": "21.9 mm", "by_wood": "11 mm", "by_maker": "6 mm", "gap": "11 mm"},
    )
)
def expansion_gap(
    *,
    across: Length,
    coefficient: Times,
    moisture_laid: PerCent,
    moisture_wettest: PerCent,
    build: str,
    customary: Margin,
    step: Length,
    maker_per_metre: Margin | None = None,
) -> ExpansionGap:
    """The gap at each wall from the wood's own movement, beside the maker's figure and the customary one.

    Lengths, a coefficient and moistures in per cent in; lengths out. `maker_per_metre` is the maker's gap at
    each wall for one metre across the boards. For solid boards the greatest of the three governs; an
    engineered board is held by its plies, so there the wood's figure is only shown. Movement by USDA Wood
    Handbook FPL-GTR-190 eq. 13-2; the customary gap is common practice, no source.
    """
    if build not in (SOLID, ENGINEERED):
        raise InputRefused("word-not-offered", "build", found=build, known=f"{SOLID}, {ENGINEERED}")
    swelling = _change(across, coefficient, moisture_laid, moisture_wettest)
    by_wood = swelling / 2
    by_maker = maker_per_metre * across / _METRE if maker_per_metre else None
    ways = {"custom": customary, **({"maker": by_maker} if by_maker else {})}
    governing = ways | ({"wood": by_wood} if build == SOLID else {})
    widest = max(governing, key=lambda name: governing[name].number)
    gap = round_up(greatest((*governing.values(), millimetres(0))), step)
    return ExpansionGap(
        swelling=swelling,
        by_wood=by_wood,
        by_maker=by_maker,
        by_custom=customary,
        gap=gap,
        governed_by=widest,
        notes=(
            *_outside(moisture_laid, moisture_wettest),
            *found((swelling.number <= 0, Finding(code="no-swelling", actual=swelling))),
            *found((by_maker is None, Finding(code="maker-not-asked"))),
        ),
    )
