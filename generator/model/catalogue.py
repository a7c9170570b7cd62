"""The catalogue: materials, tools, places, people and activities by key, with the facts others rest on."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Annotated, ClassVar, Final, Self, TypeAlias

from pydantic import Field, ValidationInfo, model_validator

from generator.model.amounts import (
    Acceleration,
    Amount,
    Area,
    Density,
    Figure,
    Length,
    Level,
    Mass,
    Money,
    Volume,
)
from generator.model.border import Described, Named
from generator.model.kinds import Activity, PersonKind, Place
from generator.model.lists import ManyOf
from generator.model.scalars import (
    Code,
    Count,
    Flag,
    FormatVersion,
    KebabName,
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
    "door", "ironmongery",
    "door leaf", "worktop", "glass", "insulation", "foam", "finish", "stripper", "preservative", "gas",
)  # fmt: skip
TOOL_KINDS: Final = (
    "hand tool",
    "measuring tool",
    "power tool",
    "machine",
    "extraction",
    "access",
    "detector",
    "lifting",
    "supply",
)
FieldValue: TypeAlias = Amount | Word | Count | tuple[Amount, ...] | Table[Amount]

# What a moulding or board is cut from, in the words drawings know it by.
MADE_OF: Final = ("timber", "mdf")
# Dust tells timber by itself; mixed dust comes of MDF, plywood and much else.
_TIMBER_DUSTS: Final = frozenset({"softwood", "hardwood"})

DUSTS: Final = ("softwood", "hardwood", "mixed", "none")

# What a safety data sheet or the trade says of a material, in the words rules look for.
MATERIAL_HAZARDS: Final = (
    "flammable", "solvent", "diisocyanate", "dichloromethane", "corrosive", "skin sensitiser", "irritant",
    "toxic species", "preservative", "silica", "fibres", "self-heating",
)  # fmt: skip
# What a tool does that rules look at, and who may use it.
TOOL_EFFECTS: Final = (
    "cuts", "sands", "drills", "shakes", "is loud", "drives fixings", "sparks", "heats", "plugs in",
    "burns gas", "runs on air", "has an edge", "strikes", "levers", "scrapes",
)  # fmt: skip
TOOL_USERS: Final = ("anyone", "supervised learner", "trained")

# The measures of each profile; an arris (a rounded outer edge) may be left out, the others may not.
PROFILES: Final[Mapping[str, tuple[str, ...]]] = {
    "square": (),
    "pencil round": ("radius", "arris"),
    "chamfer": ("depth", "breadth", "arris"),
    "ovolo": ("radius", "fillet_depth", "fillet_breadth", "arris"),
    "ogee": ("depth", "breadth", "arris"),
    "torus": ("radius", "inner_fillet", "outer_fillet", "arris"),
    "bullnose": ("arris",),
    "cove": ("depth", "fillet_breadth"),
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
    made_of: Annotated[Word, one_of(*MADE_OF)] | None = Field(
        None, description="what it is cut from; timber where its dust is of softwood or hardwood"
    )
    mass: Mass | None = Field(None, description="the mass of one piece, such as a door leaf or a sheet")
    emission: Code | None = Field(None, description="the formaldehyde class of a board, such as E1")
    hazards: ManyOf[Annotated[Word, one_of(*MATERIAL_HAZARDS)]] = Field(
        (), description="what makes it harmful, in the words that safety rules look for"
    )
    statements: ManyOf[Told] = Field((), description="what its data sheet says, as plain facts")
    counts_as: ManyOf[KebabName] = Field(
        (), description="keys of shipped materials whose safety rules hold for it too"
    )
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
        """The values that `role.field` can read, by name: the profile's measures one by one and together."""
        own = {name: getattr(self, name) for name in READABLE} | {"made_of": self._made_of}
        found = {name: value for name, value in own.items() if value not in (None, ())} | dict(self.geometry)
        return found | {"measures": self.geometry} if self.profile else found

    @property
    def _made_of(self) -> Word | None:
        """What it is cut from: as it is given, or timber by its dust; otherwise not known."""
        if self.made_of or not self.dust or self.dust.value not in _TIMBER_DUSTS:
            return self.made_of
        return Word(value="timber", span=self.dust.span)


READABLE: Final = (
    "width", "thickness", "edge_thickness", "profile", "density", "stock", "covers", "pack", "pack_count",
    "length", "gauge", "diameter", "dust", "made_of", "mass", "emission",
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
    mass: Mass | None = Field(None, description="its mass, where it is carried about")
    does: ManyOf[Annotated[Word, one_of(*TOOL_EFFECTS)]] = Field(
        (), description="what it does that safety rules look at"
    )
    used_by: Annotated[Word, one_of(*TOOL_USERS)] | None = Field(None, description="who may use it")
    counts_as: ManyOf[KebabName] = Field(
        (), description="keys of shipped tools whose safety rules hold for it too"
    )
    before_use: ManyOf[Told] = Field((), description="what is looked at before each use")
    assumed: ManyOf[SnakeName] = Field((), description="fields whose values are assumed")
    source: Told = Field(description="where the values come from")
    replaces: Flag = Field(False, description="yes to put this entry in the place of a shipped one")

    @model_validator(mode="after")
    def _assumed(self, info: ValidationInfo) -> Self:
        given = [name for name in TOOL_FACTS if getattr(self, name)]
        check_assumed(self.assumed, given, log_of(info))
        return self


TOOL_FACTS: Final = ("kerf", "noise", "vibration", "dust_class", "mass")


class CatalogueFile(Described):
    """One file of the catalogue."""

    noun: ClassVar[str] = "a catalogue"
    format: FormatVersion = Field(description="the version of the format, which stands first: 1")
    materials: KebabTable[Material] = Field(Table.empty(), description="materials by key")
    tools: KebabTable[Tool] = Field(Table.empty(), description="tools by key")
    kinds_of_place: KebabTable[Place] = Field(Table.empty(), description="kinds of place by key")
    kinds_of_people: KebabTable[PersonKind] = Field(
        Table.empty(), description="kinds of people who need more thought, by key"
    )
    kinds_of_work: KebabTable[Activity] = Field(Table.empty(), description="kinds of work by key")


@dataclass(frozen=True, slots=True, kw_only=True)
class Catalogue:
    """The shipped catalogue with the user's entries added; `lost` are keys whose entries had faults."""

    materials: Mapping[str, Material]
    tools: Mapping[str, Tool]
    places: Mapping[str, Place] = field(default_factory=dict)
    people: Mapping[str, PersonKind] = field(default_factory=dict)
    activities: Mapping[str, Activity] = field(default_factory=dict)
    lost: frozenset[str] = frozenset()

    @property
    def material_keys(self) -> frozenset[str]:
        """Every key that may name a material; those whose entries had faults too."""
        return frozenset(self.materials) | self.lost

    @property
    def tool_keys(self) -> frozenset[str]:
        """Every key that may name a tool; those whose entries had faults too."""
        return frozenset(self.tools) | self.lost

    @property
    def place_keys(self) -> frozenset[str]:
        """Every key that may name a kind of place."""
        return frozenset(self.places) | self.lost

    @property
    def person_keys(self) -> frozenset[str]:
        """Every key that may name a kind of person."""
        return frozenset(self.people) | self.lost

    @property
    def activity_keys(self) -> frozenset[str]:
        """Every key that may name a kind of work."""
        return frozenset(self.activities) | self.lost
