"""A method: how one kind of work is done, for any sizes."""

from __future__ import annotations

from typing import ClassVar

from pydantic import Field

from generator.model.amounts import Figure, Length
from generator.model.border import Described, Named
from generator.model.card import Card
from generator.model.hazards import Hazard
from generator.model.lists import ManyOf, SomeOf
from generator.model.scalars import (
    Code,
    Dated,
    DottedName,
    FormatVersion,
    KebabName,
    Plain,
    SnakeName,
    Told,
    Unit,
    Whole,
    Word,
    Worked,
)
from generator.model.sections import SectionAnswer
from generator.model.sizes import Size
from generator.model.steps import Step
from generator.model.tables import CodeTable, Table, TermTable


class QuantityRule(Named):
    """A quantity by its name and the formula it is worked out by."""

    noun: ClassVar[str] = "a quantity"
    label: Plain = Field(description="what the trade calls it, as documents print it")
    work: Worked = Field(description="the formula, such as opening_height + first_quirk")
    note: Told | None = Field(None, description="what a reader should know about it")
    unit: Unit | None = Field(None, description="the unit it is printed in, where not the usual one")


class Cutting(Named):
    """A cutting plan by its name: which pieces, from which material."""

    noun: ClassVar[str] = "a cutting plan"
    of: SnakeName = Field(description="the role of the material that is cut")
    pieces: DottedName = Field(description="the quantity that holds the pieces")
    saw_kerf: Length | None = Field(None, description="what the saw takes at each cut")
    end_trim: DottedName | None = Field(
        None, description="the size that is cut off each end of a length before it is used"
    )
    waste_habit: Figure | None = Field(
        None, description="the waste usually added, printed beside the plan; 10 % where not given"
    )


class Question(Described):
    """A question that shows understanding, with its answer for the tutor."""

    noun: ClassVar[str] = "a question"
    ask: Told = Field(description="the question as the learner reads it")
    answer: Told = Field(description="the answer, which only the tutor sees")
    step: Whole | None = Field(None, description="the number of the step it belongs to, from 1")
    criteria: ManyOf[Code] = Field((), description="codes of the criteria it can evidence")


class ScheduleColumn(Described):
    """A column of the table of openings."""

    noun: ClassVar[str] = "a column of the schedule"
    show: DottedName = Field(description="the size or quantity shown, as name or name.field")
    head: Told | None = Field(None, description="the head of the column, where not the label")


class Change(Described):
    """What was changed in a method, for readers who knew it as it was."""

    noun: ClassVar[str] = "a change"
    date: Dated = Field(description="the day of the change, such as 2026-11-11")
    what: Told = Field(description="what has changed, in a sentence or two, as guides and index print it")


class Method(Described):
    """How one kind of work is done, for any sizes."""

    noun: ClassVar[str] = "a method"
    format: FormatVersion = Field(description="the version of the format, which stands first: 1")
    method: Code = Field(description="the number jobs name it by, such as SF-07")
    title: Plain = Field(description="the work, as documents print it")
    stage: Plain = Field(description="the stage of the job, such as second fixing")
    summary: Told = Field(description="the work in a sentence or two")
    sizes: Table[Size] = Field(Table.empty(), description="sizes chosen, measured or set by policy")
    materials: Table[KebabName] = Field(Table.empty(), description="roles, each with a catalogue key")
    tools: ManyOf[KebabName] = Field((), description="catalogue keys of the tools")
    quantities: Table[QuantityRule] = Field(Table.empty(), description="what is worked out from the sizes")
    choices: Table[Code] = Field(Table.empty(), description="the way chosen where ways are compared")
    cutting: Table[Cutting] = Field(Table.empty(), description="cutting plans")
    hazards: ManyOf[Hazard] = Field((), description="hazards of the work and their controls")
    sections: Table[SectionAnswer] = Field(Table.empty(), description="answers to the required sections")
    stop_if: ManyOf[Told] = Field((), description="what stops the work at once, one line each")
    steps: SomeOf[Step] = Field(description="the steps in order")
    questions: ManyOf[Question] = Field((), description="questions for the learner, with answers")
    glossary: TermTable[Told] = Field(Table.empty(), description="trade words explained")
    picture: SnakeName | None = Field(None, description="the drawing that stands for the method on the index")
    schedule: ManyOf[ScheduleColumn] = Field((), description="columns of the table of openings")
    card: Card | None = Field(None, description="what stands on the bench card")
    criteria: CodeTable[Told] = Field(Table.empty(), description="criteria by code, each in words")
    changes: ManyOf[Change] = Field((), description="what has changed in the method, each with its day")

    def shown(self) -> tuple[Word, ...]:
        """The values that the table of openings and the bench card show, as name or name.field."""
        carded = self.card.sizes if self.card else ()
        return (*(column.show for column in self.schedule), *(size.show for size in carded))

    def hazard(self, key: str) -> Hazard | None:
        """The hazard of this key."""
        return next((hazard for hazard in self.hazards if hazard.hazard.value == key), None)

    def steps_of(self, hazard: str) -> tuple[int, ...]:
        """The numbers, from 1, of the steps that meet a hazard."""
        return tuple(
            number
            for number, step in enumerate(self.steps, 1)
            if any(key.value == hazard for key in step.hazards)
        )
