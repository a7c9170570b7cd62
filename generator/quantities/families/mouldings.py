"""Mouldings: area, girth and mass of a profile from its own path, and compound mitres for sprung ones."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from functools import partial
from typing import Annotated, TypeAlias

from generator.model.catalogue import PROFILES as MEASURES
from generator.quantities.calculator import Angle, Example, Length, Margin, Run, Takes, calculator
from generator.quantities.functions import asin, atan, cos, sin, tan
from generator.quantities.profile_measures import ProfileMeasures
from generator.quantities.profiles import Profile, profile
from generator.quantities.results import InputRefused
from generator.quantities.worked import Worked, applied, literal
from generator.quantities.workings import print_worked
from generator.units import ANGLE, AREA, DENSITY, LENGTH, Value, print_value

Density: TypeAlias = Annotated[Worked, Takes(dimension=DENSITY, above=Decimal(0))]

# What lies side by side across the face, and one behind another through the thickness, in each profile.
_ACROSS: Mapping[str, tuple[str, ...]] = {
    "square": (),
    "pencil round": ("radius", "arris"),
    "chamfer": ("breadth", "arris"),
    "ovolo": ("radius", "fillet_breadth", "arris"),
    "ogee": ("breadth", "arris"),
    "torus": ("inner_fillet", "radius", "radius", "outer_fillet", "arris"),
    "bullnose": ("half_thickness", "arris"),
    "cove": ("fillet_breadth", "fillet_breadth"),
}
_THROUGH: Mapping[str, tuple[tuple[str, ...], ...]] = {
    "square": (),
    "pencil round": (("radius",), ("arris",)),
    "chamfer": (("depth",), ("arris",)),
    "ovolo": (("radius", "fillet_depth"), ("arris",)),
    "ogee": (("depth",), ("arris",)),
    "torus": (("radius",), ("arris",)),
    "bullnose": (("arris",),),
    "cove": (("depth",),),
}
_MAY_BE_LEFT_OUT = "arris"


@dataclass(frozen=True, slots=True, kw_only=True)
class MouldingSection:
    """A moulding's section: area, girth to paint (all but the back), and what a length of it comes to.

    `volume`, `paint` and `mass` are of the length given, `mass` by the density given; None without them.
    """

    area: Worked
    girth: Worked
    volume: Worked | None
    paint: Worked | None
    mass: Worked | None


@calculator(
    example=Example(
        inputs={
            "shape": "torus",
            "width": "119 mm",
            "thickness": "18 mm",
            "radius": "7 mm",
            "inner_fillet": "0 mm",
            "outer_fillet": "3 mm",
            "length": "2.4 m",
            "density": "560 kg/m3",
        },
        gives={"area": "2100 mm²", "volume": "5039.9 ml", "mass": "2.8 kg"},
    )
)
def moulding_section(
    *,
    shape: str,
    width: Length,
    thickness: Length,
    radius: Margin | None = None,
    depth: Margin | None = None,
    breadth: Margin | None = None,
    fillet_depth: Margin | None = None,
    fillet_breadth: Margin | None = None,
    inner_fillet: Margin | None = None,
    outer_fillet: Margin | None = None,
    arris: Margin | None = None,
    measures: ProfileMeasures | None = None,
    length: Run | None = None,
    density: Density | None = None,
) -> MouldingSection:
    """Area and girth of a moulding's section, and volume, face to paint and mass of a length.

    Lengths in; area, length, volume and mass out, by shoelace and circular segments over the same lines and
    arcs that are drawn. `shape` is a profile of the catalogue and takes the measures the catalogue gives it,
    one by one or all as `role.measures`, which holds for whichever profile a job binds; a measure given by
    itself goes before. A square arris where none is given. Own derivation.
    """
    given = {
        "radius": radius, "depth": depth, "breadth": breadth, "fillet_depth": fillet_depth,
        "fillet_breadth": fillet_breadth, "inner_fillet": inner_fillet, "outer_fillet": outer_fillet,
        "arris": arris,
    }  # fmt: skip
    drawn = _measures(shape, given, measures)
    made = _section(shape, width, thickness, drawn)
    drawn_to = (width, thickness, *drawn.values())
    again = partial(_again, shape, tuple(drawn))
    area = applied("section_area", drawn_to, Value(made.area(), AREA), partial(again, Profile.area))
    girth = applied("section_girth", drawn_to, Value(made.girth(), LENGTH), partial(again, Profile.girth))
    volume = area * length if length else None
    return MouldingSection(
        area=area,
        girth=girth,
        volume=volume,
        paint=girth * length if length else None,
        mass=volume * density if volume and density else None,
    )


def _again(
    shape: str, names: tuple[str, ...], of: Callable[[Profile], float], numbers: tuple[float, ...]
) -> float:
    width, thickness, *sizes = numbers
    return of(profile(shape, width, thickness, {"arris": 0.0, **dict(zip(names, sizes, strict=True))}))


def _measures(
    shape: str, singly: Mapping[str, Worked | None], whole: ProfileMeasures | None
) -> dict[str, Worked]:
    """The measures this shape has, every one of them given but the arris."""
    own = {name: size for name, size in singly.items() if size}
    given = {**(whole.given() if whole else {}), **own}
    if shape not in MEASURES:
        raise InputRefused("word-not-offered", "shape", found=shape, known=", ".join(MEASURES))
    for name in MEASURES[shape]:
        if name not in given and name != _MAY_BE_LEFT_OUT:
            raise InputRefused("moulding-measure-missing", name, shape=shape, measure=name)
    return {name: given[name] for name in MEASURES[shape] if name in given}


def _section(shape: str, width: Worked, thickness: Worked, measures: Mapping[str, Worked]) -> Profile:
    sizes = {name: size.number for name, size in measures.items()}
    parts = {**sizes, "half_thickness": thickness.number / 2}
    _refuse_over(shape, "across", width, _ACROSS[shape], parts)
    for chain in _THROUGH[shape]:
        _refuse_over(shape, "thick", thickness, chain, parts)
    if shape == "cove" and sizes["depth"] > width.number / 2 - sizes["fillet_breadth"]:
        raise InputRefused("cove-overhangs", "depth", found=print_worked(measures["depth"]).text())
    if shape == "ogee" and sizes["depth"] > sizes["breadth"]:
        raise InputRefused("ogee-overhangs", "depth", found=print_worked(measures["depth"]).text())
    return profile(shape, width.number, thickness.number, {"arris": 0.0, **sizes})


def _refuse_over(
    shape: str, way: str, room: Worked, chain: tuple[str, ...], parts: Mapping[str, float]
) -> None:
    needs = sum(parts.get(name, 0.0) for name in chain)
    if needs > room.number + 1e-9:
        raise InputRefused(
            "moulding-does-not-fit",
            "width" if way == "across" else "thickness",
            shape=shape,
            way=way,
            needs=print_value(Value(needs, LENGTH)).text(),
            has=print_worked(room).text(),
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class SprungMitre:
    """Both saw settings for a moulding that leans between wall and ceiling, cut lying on its back.

    `mitre` turns the saw from a square cut, `bevel` tilts it from upright. `nested` is the one setting where
    the piece is held at the saw as it leans on the wall. `drop` and `projection` are what it covers of wall
    and ceiling; the `long_point` of a piece is on the edge named, `longer` than the other at each mitre.
    """

    mitre: Worked
    bevel: Worked
    nested: Worked
    drop: Worked
    projection: Worked
    longer: Worked
    long_point: str


_LONG_POINTS = {"internal": "wall edge", "external": "ceiling edge"}
_SPRING = (5, 85)
_CORNER = (30, 175)


@calculator(
    example=Example(
        inputs={"spring": "38 deg", "corner": "90 deg", "turns": "internal", "width": "96 mm"},
        gives={
            "mitre": "31.6°",
            "bevel": "33.9°",
            "nested": "45°",
            "drop": "75.6 mm",
            "projection": "59.1 mm",
            "longer": "59.1 mm",
        },
    )
)
def sprung_mitre(*, spring: Angle, corner: Angle, turns: str, width: Length) -> SprungMitre:
    """Compound mitre for a sprung moulding at an internal or an external corner.

    Angles and the width of the back across both lines of contact in; angles and lengths out. `spring` is from
    the wall to the moulding's back, never from the ceiling; `corner` the angle between the two walls on plan,
    under 180° whichever way it turns; `turns` is internal or external, which mirrors the same settings.
    tan(mitre) = sin(spring) ÷ tan(corner/2), sin(bevel) = cos(spring) × cos(corner/2). Own derivation.
    """
    if turns not in _LONG_POINTS:
        raise InputRefused("word-not-offered", "turns", found=turns, known=", ".join(_LONG_POINTS))
    _refuse_angle("spring-out-of-range", "spring", spring, _SPRING)
    _refuse_angle("corner-out-of-range", "corner", corner, _CORNER)
    half = corner / 2
    mitre = atan(sin(spring) / tan(half))
    return SprungMitre(
        mitre=mitre,
        bevel=asin(cos(spring) * cos(half)),
        nested=literal(Value(Decimal(90), ANGLE)) - half,
        drop=width * cos(spring),
        projection=width * sin(spring),
        longer=width * sin(spring) / tan(half),
        long_point=_LONG_POINTS[turns],
    )


def _refuse_angle(code: str, argument: str, angle: Worked, bounds: tuple[int, int]) -> None:
    if not bounds[0] <= angle.number <= bounds[1]:
        raise InputRefused(code, argument, found=print_worked(angle).text())
