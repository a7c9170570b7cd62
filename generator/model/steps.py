"""The steps of a method and what hangs on each: check, hold point, drawing, evidence."""

from __future__ import annotations

from typing import Annotated, ClassVar, Final

from pydantic import Field

from generator.model.amounts import Within
from generator.model.border import Described
from generator.model.lists import ManyOf, OneOrMore, SomeOf
from generator.model.scalars import (
    Code,
    DottedName,
    KebabName,
    NameOrText,
    Plain,
    Quoted,
    SnakeName,
    Told,
    Whole,
    Word,
    one_of,
)
from generator.model.tables import KebabTable, Table

# Where hands go in a lift, from the top down, and how far from the body (HSE INDG143).
ZONES: Final = (
    "above shoulder", "shoulder to elbow", "elbow to knuckle", "knuckle to mid lower leg",
    "below mid lower leg",
)  # fmt: skip
REACHES: Final = ("close", "reached")


class Check(Described):
    """A check that is measured or seen, with its limit."""

    noun: ClassVar[str] = "a check"
    what: Told = Field(description="what is checked")
    within: Within | None = Field(None, description="the limit either way, such as 1 mm")
    expect: DottedName | None = Field(None, description="the quantity whose value is expected")
    how: Told = Field(description="how it is checked and with which tool")


class Hold(Described):
    """A hold point: work waits until someone has looked and signed."""

    noun: ClassVar[str] = "a hold point"
    who: Told = Field(description="who releases it")
    before: Told = Field(description="what must not begin before it is released")
    sees: Told | None = Field(None, description="what is looked at")


class DrawingWanted(Described):
    """A drawing by its name, with quantities bound to its parameters where the names differ."""

    noun: ClassVar[str] = "a drawing"
    show: SnakeName = Field(description="the name of the drawing")
    with_: Table[NameOrText] = Field(
        Table.empty(),
        alias="with",
        description="parameters of the drawing, each with the name of its value, or a word in quotes",
    )

    @property
    def named(self) -> tuple[Word, ...]:
        """The values it is bound to by name."""
        return tuple(word for word in self.with_.values() if not isinstance(word, Quoted))


class Evidence(Described):
    """What a learner gathers at this step and which criteria it can evidence."""

    noun: ClassVar[str] = "evidence"
    ask: Told = Field(description="what the learner gathers")
    criteria: ManyOf[Code] = Field((), description="codes of the criteria it can evidence")


class Lift(Described):
    """A piece lifted by hand, with the zones the hands pass."""

    noun: ClassVar[str] = "a lift"
    what: DottedName = Field(description="the quantity that is its mass, or a role's mass, such as leaf.mass")
    zones: SomeOf[Annotated[Word, one_of(*ZONES)]] = Field(description="the zones the hands pass")
    reach: Annotated[Word, one_of(*REACHES)] = Field(description="close to the body, or reached for")
    people: Whole | None = Field(None, description="how many lift together, 1 to 3; one where not given")


class Step(Described):
    """One step of the work, in order."""

    noun: ClassVar[str] = "a step"
    title: Plain = Field(description="what is done, in a few words")
    do: SomeOf[Told] = Field(description="the actions in order, one sentence each")
    why: Told = Field(description="the reason, so that the step is understood before it is done")
    uses: ManyOf[KebabName] = Field((), description="keys of the tools used")
    materials: ManyOf[SnakeName] = Field((), description="roles of the materials used")
    minutes: Whole = Field(description="minutes of work for one opening, with the crew of the step")
    runs: KebabTable[Whole] = Field(
        Table.empty(), description="of those minutes, how many each tool runs, by its key, where it is known"
    )
    lifts: ManyOf[Lift] = Field((), description="what is lifted by hand")
    wait_minutes: Whole | None = Field(None, description="minutes to wait afterwards")
    after: ManyOf[Whole] | None = Field(
        None, description="numbers of the steps it comes after, where not the one before; none: []"
    )
    crew: Whole | None = Field(None, description="how many people the step takes, one where not given")
    who: Told | None = Field(None, description="who may do it")
    permits: ManyOf[Plain] = Field(
        (), description="permits the step needs, such as hot work; the job says who gives each"
    )
    hazards: ManyOf[KebabName] = Field((), description="keys of the hazards met")
    activities: ManyOf[KebabName] = Field(
        (), description="kinds of work in it that safety rules look at, such as fixing-into-fabric"
    )
    where: ManyOf[KebabName] = Field((), description="kinds of place it is done in, such as loft or stair")
    warn: ManyOf[Told] = Field((), description="warnings, printed before the actions")
    check: OneOrMore[Check] = Field((), description="the checks at the end of the step")
    hold: Hold | None = Field(None, description="a hold point after the step")
    drawing: DrawingWanted | None = Field(None, description="the drawing shown beside the step")
    evidence: Evidence | None = Field(None, description="what a learner gathers")
    mistakes: ManyOf[Told] = Field((), description="common mistakes and how they show")
