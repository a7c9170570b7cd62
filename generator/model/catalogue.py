"""The catalogue: materials and tools by key, with the facts calculations and drawings rest on."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, ClassVar, Final

from pydantic import Field

from generator.model.border import Described, KebabTable, ManyOf, Named, Table
from generator.model.scalars import (
    Acceleration,
    Amount,
    Area,
    Code,
    Count,
    Density,
    Figure,
    Flag,
    Length,
    Level,
    Plain,
    SnakeName,
    Told,
    Volume,
    Whole,
    Word,
    one_of,
)

MATERIAL_KINDS: Final = (
    "moulding", "planed timber", "sawn timber", "board", "adhesive", "filler", "sealant", "pins", "screws",
)  # fmt: skip
TOOL_KINDS: Final = (
    "hand tool",
    "measuring tool",
    "power tool",
    "machine",
    "extraction",
    "access",
    "detector",
)
DUSTS: Final = ("softwood", "hardwood", "mixed", "none")

PROFILES: Final[Mapping[str, tuple[str, ...]]] = {
    "square": (),
    "rounded": ("radius",),
    "chamfered": ("chamfer_width", "chamfer_depth"),
    "bullnose": ("radius",),
    "torus": ("inner_flat", "inner_thickness", "bead_radius", "sunk_flat", "arris_radius"),
    "ogee": ("inner_thickness", "curve_width", "curve_depth", "arris_radius"),
}


class Material(Named):
    """A material by its key. Every field below `label` that is a value can be read as role.field."""

    noun: ClassVar[str] = "a material"
    label: Plain = Field(description="the material as documents print it")
    kind: Annotated[Word, one_of(*MATERIAL_KINDS)] = Field(description="what kind of material it is")
    width: Length | None = Field(None, description="the width across the face")
    thickness: Length | None = Field(None, description="the greatest thickness")
    edge_thickness: Length | None = Field(None, description="the thickness at the outer edge")
    profile: Annotated[Word, one_of(*PROFILES)] | None = Field(None, description="the shape of the section")
    geometry: Table[Length] = Field(Table.empty(), description="the measures of the profile")
    density: Density | None = Field(None, description="the density, such as 560 kg/m3")
    stock: ManyOf[Length] = Field((), description="the lengths it is sold in")
    covers: Area | None = Field(None, description="the section of a bead of it, such as 28 mm2")
    pack: Volume | None = Field(None, description="what one bottle, tube or tub holds")
    pack_count: Whole | None = Field(None, description="how many pieces one box holds")
    length: Length | None = Field(None, description="the length of a pin or screw")
    gauge: Figure | None = Field(None, description="the gauge of a pin or screw")
    diameter: Length | None = Field(None, description="the diameter of a pin or screw")
    dust: Annotated[Word, one_of(*DUSTS)] | None = Field(None, description="the dust it makes when cut")
    assumed: ManyOf[SnakeName] = Field((), description="fields whose values are assumed")
    source: Told = Field(description="where the values come from")
    replaces: Flag = Field(False, description="yes to put this entry in the place of a shipped one")

    @property
    def fields(self) -> Mapping[str, Amount | Word | Count]:
        """The values that `role.field` can read, by name; the measures of the profile among them."""
        own = {name: getattr(self, name) for name in READABLE}
        return {name: value for name, value in own.items() if value is not None} | dict(self.geometry)


READABLE: Final = (
    "width", "thickness", "edge_thickness", "profile", "density", "covers", "pack", "pack_count", "length",
    "gauge", "diameter", "dust",
)  # fmt: skip


class Tool(Named):
    """A tool by its key."""

    noun: ClassVar[str] = "a tool"
    label: Plain = Field(description="the tool as documents print it")
    kind: Annotated[Word, one_of(*TOOL_KINDS)] = Field(description="what kind of tool it is")
    kerf: Length | None = Field(None, description="the width of its cut")
    noise: Level | None = Field(None, description="the sound level at the ear when it works")
    vibration: Acceleration | None = Field(None, description="the vibration at the hand")
    dust_class: Code | None = Field(None, description="the class of an extractor: L, M or H")
    before_use: ManyOf[Told] = Field((), description="what is looked at before each use")
    assumed: ManyOf[SnakeName] = Field((), description="fields whose values are assumed")
    source: Told = Field(description="where the values come from")
    replaces: Flag = Field(False, description="yes to put this entry in the place of a shipped one")


class CatalogueFile(Described):
    """One file of the catalogue."""

    noun: ClassVar[str] = "a catalogue"
    format: Whole = Field(description="the version of the format, which stands first: 1")
    materials: KebabTable[Material] = Field(Table.empty(), description="materials by key")
    tools: KebabTable[Tool] = Field(Table.empty(), description="tools by key")


@dataclass(frozen=True, slots=True, kw_only=True)
class Catalogue:
    """The shipped catalogue with the user's entries added."""

    materials: Mapping[str, Material]
    tools: Mapping[str, Tool]
