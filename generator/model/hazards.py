"""Hazards of a method and the controls against them."""

from __future__ import annotations

from typing import ClassVar, Final, Self

from pydantic import ConfigDict, Field, ValidationInfo, model_validator

from generator.model.border import Described
from generator.model.lists import SomeOf
from generator.model.prose import Prose
from generator.model.scalars import KebabName, Plain, Told, Whole
from generator.model.texts import at_fault, log_of

RANKS: Final = ("eliminate", "substitute", "engineer", "administer", "ppe")


class Control(Described):
    """A control, under the one word that says how strong it is, with who sees to it."""

    model_config = ConfigDict(json_schema_extra={"oneOf": [{"required": [rank]} for rank in RANKS]})
    noun: ClassVar[str] = "a control"
    eliminate: Told | None = Field(None, description="a control that removes the hazard")
    substitute: Told | None = Field(None, description="something less harmful put in its place")
    engineer: Told | None = Field(None, description="a guard, extraction, a barrier")
    administer: Told | None = Field(None, description="a way of working, training, time limits, signs")
    ppe: Told | None = Field(None, description="what is worn")
    who: Told = Field(description="who sees to it")
    when: Told | None = Field(None, description="when it must be in place")

    @model_validator(mode="after")
    def _one_rank(self, info: ValidationInfo) -> Self:
        log, given = log_of(info), [rank for rank in RANKS if getattr(self, rank)]
        if not given and not self.lost & set(RANKS):
            log.add("control-no-rank", self.span)
        if len(given) > 1:
            log.add("control-ranks", self.span, given=" and ".join(given))
        if len(given) != 1:
            raise at_fault()
        return self

    @property
    def rank(self) -> str:
        """Which of the five ranks the control has; strongest is "eliminate"."""
        return next(rank for rank in RANKS if getattr(self, rank) is not None)

    @property
    def what(self) -> Prose:
        """The control itself."""
        what = getattr(self, self.rank)
        assert isinstance(what, Prose)
        return what


class Mark(Described):
    """How likely the harm is and how bad, by the firm's own scales, counted from 1."""

    noun: ClassVar[str] = "a mark"
    likelihood: Whole = Field(description="how likely, by its number in the scale of the house rules")
    severity: Whole = Field(description="how bad, by its number in the scale of the house rules")

    @property
    def score(self) -> int:
        """Likelihood by severity."""
        return int(self.likelihood) * int(self.severity)


class Rating(Described):
    """A hazard rated before its controls and with them in place."""

    noun: ClassVar[str] = "a rating"
    before: Mark = Field(description="as the work is usually found, without the controls named here")
    after: Mark = Field(description="with all controls in place")


class Hazard(Described):
    """A hazard of the work: whom it harms, how, what is done about it, what remains."""

    noun: ClassVar[str] = "a hazard"
    hazard: KebabName = Field(description="the key steps name it by, such as wood-dust")
    title: Plain | None = Field(None, description="the hazard as documents print it")
    harms: SomeOf[Told] = Field(description="who may be harmed, one line each")
    how: Told | None = Field(None, description="how the harm comes about")
    controls: SomeOf[Control] = Field(description="what is done about it, strongest first")
    remains: Told | None = Field(None, description="the risk that remains, with the reason")
    rated: Rating | None = Field(None, description="a rating, where the house rules give scales for it")
