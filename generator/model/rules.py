"""Safety rules as a file writes them: when a rule applies, what a document must then hold, on what ground."""

from __future__ import annotations

from typing import Annotated, ClassVar, Final, Self

from pydantic import ConfigDict, Field, ValidationInfo, model_validator

from generator.model.border import Described
from generator.model.hazards import RANKS
from generator.model.jobs import NATIONS
from generator.model.lists import ManyOf, OneOrMore, SomeOf
from generator.model.prose import Prose
from generator.model.scalars import (
    Code,
    Dated,
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
from generator.model.tables import Table
from generator.model.texts import at_fault, log_of

SAY: Final = "say"
FORMS: Final = (*RANKS, SAY)
LEVELS: Final = ("must", "should")
KNOWN: Final = ("official", "copy", "likely", "memory", "house")
EXPOSURES: Final = (
    "noise-lower-action", "noise-upper-action", "noise-limit", "vibration-action", "vibration-limit",
    "lift-over-filter",
)  # fmt: skip


class RuleSource(Described):
    """What a rule rests on, and how well its text is known."""

    noun: ClassVar[str] = "a source"
    cite: Plain = Field(description="the law or publication, with its provision")
    known: Annotated[Word, one_of(*KNOWN)] = Field(
        description="official page, copy of it, likely (twin text or secondary account), memory, or house"
    )
    nations: ManyOf[Annotated[Word, one_of(*NATIONS)]] = Field(
        (), description="the nations it holds in; every one where none is named"
    )
    review_by: Dated | None = Field(
        None, description="the day it is to be read again by, such as 2027-05-31; check warns after it"
    )


class When(Described):
    """When a rule applies. Of each list one entry is enough; every key that is given must hold."""

    noun: ClassVar[str] = "when a rule applies"
    always: Flag = Field(False, description="yes for a rule that every document meets")
    tools: ManyOf[Plain] = Field((), description="tools by key, kind, or what they do, such as cuts")
    materials: ManyOf[Plain] = Field(
        (), description="materials by key, kind or hazard, or by their dust, such as “softwood dust”"
    )
    activities: ManyOf[KebabName] = Field((), description="kinds of work by key")
    where: ManyOf[KebabName] = Field((), description="kinds of place by key")
    people: ManyOf[KebabName] = Field((), description="kinds of people by key")
    begun_before: Whole | None = Field(
        None, description="a building begun before this year, or whose year is not given"
    )
    nations: ManyOf[Annotated[Word, one_of(*NATIONS)]] = Field((), description="the nations it holds in")
    exposures: ManyOf[Annotated[Word, one_of(*EXPOSURES)]] = Field(
        (), description="what the exposures worked out for a day come to"
    )

    @model_validator(mode="after")
    def _something(self, info: ValidationInfo) -> Self:
        named = [key for key in self.keys() if key != "nations" and getattr(self, key)]
        if not named and not self.lost:
            log_of(info).add("when-empty", self.span)
            raise at_fault()
        return self


class Need(Described):
    """Something the document must hold: a control of a rank, or a sentence in a section.

    The text under the one word that says which is offered to the writer. It is found by `words`: phrases of
    which one is enough. In a phrase, + joins parts that all stand in one control or section, and / parts of
    which one is enough; each part matches the beginning of a word.
    """

    model_config = ConfigDict(json_schema_extra={"oneOf": [{"required": [form]} for form in FORMS]})
    noun: ClassVar[str] = "what a rule needs"
    eliminate: Told | None = Field(None, description="a control that removes the hazard")
    substitute: Told | None = Field(None, description="something less harmful put in its place")
    engineer: Told | None = Field(None, description="a guard, extraction, a barrier")
    administer: Told | None = Field(None, description="a way of working, training, time limits, signs")
    ppe: Told | None = Field(None, description="what is worn")
    say: Told | None = Field(None, description="a sentence that stands in one of the places under in")
    words: SomeOf[Plain] = Field(description="phrases it is found by, such as “guard + clos/works”")
    in_: ManyOf[SnakeName] = Field(
        (), alias="in", description="keys of sections, or people, emergency, stop_if, steps, holds"
    )

    @model_validator(mode="after")
    def _one_form(self, info: ValidationInfo) -> Self:
        log, given = log_of(info), [form for form in FORMS if getattr(self, form)]
        if not given and not self.lost & set(FORMS):
            log.add("need-no-form", self.span)
        if len(given) > 1:
            log.add("need-forms", self.span, given=" and ".join(given))
        if len(given) != 1:
            raise at_fault()
        if given == [SAY] and not self.in_ and self.knows("in_") and "in" not in self.lost:
            log.add("need-nowhere", self.span)
            raise at_fault()
        return self

    @property
    def form(self) -> str:
        """A rank of controls, or "say"."""
        return next(form for form in FORMS if getattr(self, form) is not None)

    @property
    def text(self) -> Prose:
        """What is offered to the writer."""
        text = getattr(self, self.form)
        assert isinstance(text, Prose)
        return text


class Rule(Described):
    """A safety rule: when it applies, the hazard, what the document must hold, and the ground for it."""

    noun: ClassVar[str] = "a rule"
    rule: Code = Field(description="the number of the rule, printed in documents")
    title: Plain = Field(description="what sets it off, in a few words")
    when: OneOrMore[When] = Field(description="when it applies; of several entries one is enough")
    hazard: Told = Field(description="how the harm comes about, in a sentence")
    needs: ManyOf[Need] = Field((), description="what the document must then hold")
    sections: ManyOf[SnakeName] = Field(
        (), description="keys of sections that it makes mandatory, so that they may not be said not to apply"
    )
    never_say: Table[SomeOf[Plain]] = Field(
        Table.empty(), description="phrases that a section may not hold beside it, by the key of the section"
    )
    level: Annotated[Word, one_of(*LEVELS)] = Field(description="must is an error, should a warning")
    sources: SomeOf[RuleSource] = Field(description="what it rests on")
    note: Told | None = Field(None, description="what a reader should know about it")


class Rulebook(Described):
    """One file of the rulebook."""

    noun: ClassVar[str] = "a rulebook"
    format: FormatVersion = Field(description="the version of the format, which stands first: 1")
    rules: SomeOf[Rule] = Field(description="the rules in order")
