"""The catalogue: materials and tools by key, with the facts calculations and drawings rest on."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Annotated, ClassVar, Final, Self, TypeAlias

from pydantic import Field, ValidationInfo, model_validator

from generator.model.amounts import Acceleration, Amount, Area, Density, Figure, Length, Level, Money, Volume
from generator.model.border import Described, Named
from generator.model.lists import ManyOf
from generator.model.scalars import (
    Code,
    Count,
    Flag,
    FormatVersion,
    Plain,
    SnakeName,
    Told,
    Whole,
    Word,
    one_of,
)
from generator.model.tables import KebabTable, Table
from generator.model.texts import log_of
from generator.problems import ProblemLog, nearest

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
FieldValue: TypeAlias = Amount | Word | Count | tuple[Amount, ...]

DUSTS: Final = ("softwood", "hardwood", "mixed", "none")

# The measures of each profile; an arris (a rounded outer edge) may be left out, the others may not.
PROFILES: Final[Mapping[str, tuple[str, ...]]] = {
    "square": (),
    "pencil round": ("radius", "arris"),
    "chamfer": ("depth", "breadth", "arris"),
    "ovolo": ("radius", "fillet_depth", "fillet_breadth", "arris"),
    "ogee": ("depth", "breadth", "arris"),
    "torus": ("radius", "inner_fillet", "outer_fillet", "arris"),
    "bullnose": ("arris",),
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
    prices: ManyOf[Money] = Field((), description="what each of those lengths costs, in the same order")
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

    @model_validator(mode="after")
    def _shaped(self, info: ValidationInfo) -> Self:
        log, shape = log_of(info), self.profile.value if self.profile else ""
        wanted = PROFILES.get(shape, ())
        for name in self.geometry.names - set(wanted):
            near, known = nearest(name, wanted), ", ".join(wanted) or "none"
            place = self.geometry.place(name)
            log.add("geometry-unknown", place, name=name, shape=shape or "none", known=known, nearest=near)
        for name in sorted(set(wanted) - self.geometry.names - {"arris"}):
            log.add("geometry-missing", self.span, name=name, shape=shape)
        check_assumed(self.assumed, self.fields, log)
        return self

    @property
    def fields(self) -> Mapping[str, FieldValue]:
        """The values that `role.field` can read, by name; the measures of the profile among them."""
        own = {name: getattr(self, name) for name in READABLE}
        return {name: value for name, value in own.items() if value not in (None, ())} | dict(self.geometry)


READABLE: Final = (
    "width", "thickness", "edge_thickness", "profile", "density", "stock", "covers", "pack", "pack_count",
    "length", "gauge", "diameter", "dust",
)  # fmt: skip


def check_assumed(assumed: tuple[Word, ...], fields: Iterable[str], log: ProblemLog) -> None:
    """Log each name that is marked as assumed and has no value."""
    for word in assumed:
        if word.value not in fields:
            log.add("assumed-unknown", word.span, name=word.value, nearest=nearest(word.value, fields))


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

    @model_validator(mode="after")
    def _assumed(self, info: ValidationInfo) -> Self:
        given = [name for name in ("kerf", "noise", "vibration", "dust_class") if getattr(self, name)]
        check_assumed(self.assumed, given, log_of(info))
        return self


class CatalogueFile(Described):
    """One file of the catalogue."""

    noun: ClassVar[str] = "a catalogue"
    format: FormatVersion = Field(description="the version of the format, which stands first: 1")
    materials: KebabTable[Material] = Field(Table.empty(), description="materials by key")
    tools: KebabTable[Tool] = Field(Table.empty(), description="tools by key")


@dataclass(frozen=True, slots=True, kw_only=True)
class Catalogue:
    """The shipped catalogue with the user's entries added; `lost` are keys whose entries had faults."""

    materials: Mapping[str, Material]
    tools: Mapping[str, Tool]
    lost: frozenset[str] = frozenset()

    @property
    def material_keys(self) -> frozenset[str]:
        """Every key that may name a material; those whose entries had faults too."""
        return frozenset(self.materials) | self.lost

    @property
    def tool_keys(self) -> frozenset[str]:
        """Every key that may name a tool; those whose entries had faults too."""
        return frozenset(self.tools) | self.lost
