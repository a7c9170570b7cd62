"""Sizes: what is chosen, what is measured on site, and what is the firm's policy."""

from __future__ import annotations

from typing import Annotated, ClassVar, Final, Self, TypeAlias

from pydantic import ConfigDict, Field, ValidationInfo, model_validator

from generator.model.amounts import Amount, AnyAmount, SizeGiven, SizeValue, wrong_dimension
from generator.model.border import Described, Named
from generator.model.lists import ManyOf
from generator.model.scalars import Flag, Plain, Told, Word
from generator.model.texts import at_fault, log_of
from generator.problems import ProblemLog, nearest
from generator.units import NUMBER, Dimension

KINDS: Final = ("chosen", "measured", "policy")

Default = Annotated[SizeGiven, Field(description="the value used where nothing else is given")]
Least = Annotated[AnyAmount | None, Field(description="the least value allowed")]
Most = Annotated[AnyAmount | None, Field(description="the greatest value allowed")]
From = Annotated[
    ManyOf[Plain], Field(alias="from", description="the words to choose from, for a size that is a word")
]


class Chosen(Described):
    """A size the craftsman chooses: a default and its bounds, or a word out of a list."""

    noun: ClassVar[str] = "a chosen size"
    default: Default
    least: Least = None
    most: Most = None
    from_: From = ()


class Measured(Described):
    """A size taken on site: an example, used only in the guide, and the bounds it must keep."""

    noun: ClassVar[str] = "a measured size"
    example: SizeGiven = Field(description="a likely value, used only in the guide")
    least: Least = None
    most: Most = None
    from_: From = ()


class Policy(Described):
    """A number the firm decides for all its work, with a default and its bounds; printed as policy."""

    noun: ClassVar[str] = "a policy number"
    default: Default
    least: Least = None
    most: Most = None


Bounds: TypeAlias = Chosen | Measured | Policy


class Size(Named):
    """A size of the work by its name: exactly one of chosen, measured and policy."""

    model_config = ConfigDict(json_schema_extra={"oneOf": [{"required": [kind]} for kind in KINDS]})
    noun: ClassVar[str] = "a size"
    label: Plain = Field(description="what the trade calls it, as documents print it")
    take: Told | None = Field(None, description="how to take it on site, with which tool and where")
    why: Told | None = Field(None, description="what goes wrong when it is wrong")
    readings: Flag = Field(False, description="yes when several readings are taken of it")
    chosen: Chosen | None = Field(None, description="a size the craftsman chooses")
    measured: Measured | None = Field(None, description="a size taken on site")
    policy: Policy | None = Field(None, description="a number the firm decides for all its work")

    @model_validator(mode="after")
    def _one_kind(self, info: ValidationInfo) -> Self:
        log, given = log_of(info), [kind for kind in KINDS if getattr(self, kind)]
        if self.lost & {*KINDS, "readings"}:
            raise at_fault()
        if len(given) != 1:
            log.add(
                "size-kinds" if given else "size-no-kind",
                self.span,
                name=self.name,
                given=" and ".join(given),
            )
            raise at_fault()
        _check_bounds(self, log)
        return self

    @property
    def bounds(self) -> Bounds:
        """Whichever of the three is given."""
        given = self.chosen or self.measured or self.policy
        assert given is not None, "reading lets no size pass without one"
        return given

    @property
    def start(self) -> SizeValue:
        """The default, or the example of a measured size."""
        bounds = self.bounds
        return bounds.example if isinstance(bounds, Measured) else bounds.default

    @property
    def least(self) -> Amount | None:
        """The lower bound, where there is one."""
        return self.bounds.least

    @property
    def most(self) -> Amount | None:
        """The upper bound, where there is one."""
        return self.bounds.most

    @property
    def words(self) -> tuple[Word, ...]:
        """The words to choose from; none when the size is a value."""
        bounds = self.bounds
        return () if isinstance(bounds, Policy) else bounds.from_

    @property
    def dimension(self) -> Dimension | None:
        """The dimension its values share; None when it is a word. A number without a unit decides last."""
        start = self.start
        given = (*(start if isinstance(start, tuple) else (start,)), self.least, self.most)
        dimensions = [value.value.dimension for value in given if isinstance(value, Amount)]
        return max(dimensions, key=lambda dimension: dimension != NUMBER, default=None)


def _check_bounds(size: Size, log: ProblemLog) -> None:
    """Log what does not fit and raise, so that nothing is worked out from a value nobody meant."""
    bounds = [bound for bound in (size.least, size.most) if bound]
    if size.words and bounds:
        log.add("size-word-bounds", bounds[0].span, name=size.name)
        raise at_fault()
    sound = [_has_dimension(size, bound, log) for bound in bounds]
    if not all(sound):
        raise at_fault()
    if size.least and size.most and size.least.value.magnitude > size.most.value.magnitude:
        log.add("size-bounds", size.least.span, least=size.least.text, most=size.most.text)
        raise at_fault()
    if size.start == ():
        log.add("size-list-empty", size.span, name=size.name)
        raise at_fault()
    if not fits(size, size.start, log):
        raise at_fault()


def fits(size: Size, value: SizeValue, log: ProblemLog) -> bool:
    """Whether a value may stand for a size: its kind, its dimension and its bounds. Faults are logged."""
    if isinstance(value, tuple):
        return _fit_together(size, value, log)
    return _word_fits(size, value, log) if isinstance(value, Word) else _amount_fits(size, value, log)


def _fit_together(size: Size, values: tuple[Amount, ...], log: ProblemLog) -> bool:
    if size.readings:
        fitting = [_amount_fits(size, value, log) for value in values]
        return all(fitting)
    log.add("size-several", values[0].span if values else size.span, name=size.name)
    return False


def _word_fits(size: Size, word: Word, log: ProblemLog) -> bool:
    allowed = [choice.value for choice in size.words]
    if not allowed:
        log.add("size-word", word.span, value=word.value, name=size.name)
    elif word.value not in allowed:
        near, listed = nearest(word.value, allowed), ", ".join(allowed)
        log.add("choice-unknown", word.span, value=word.value, allowed=listed, nearest=near)
    return word.value in allowed


def _amount_fits(size: Size, amount: Amount, log: ProblemLog) -> bool:
    if size.words:
        listed = ", ".join(choice.value for choice in size.words)
        log.add("choice-unknown", amount.span, value=amount.text, allowed=listed, nearest="")
        return False
    return _has_dimension(size, amount, log) and _within_bounds(size, amount, log)


def _has_dimension(size: Size, amount: Amount, log: ProblemLog) -> bool:
    dimension = size.dimension
    if dimension is None or amount.value.dimension == dimension:
        return True
    wrong_dimension(amount, dimension, log)
    return False


def _within_bounds(size: Size, amount: Amount, log: ProblemLog) -> bool:
    least, most, magnitude = size.least, size.most, amount.value.magnitude
    if least and least.value.dimension == amount.value.dimension and magnitude < least.value.magnitude:
        log.add("size-low", amount.span, name=size.name, value=amount.text, least=least.text)
        return False
    if most and most.value.dimension == amount.value.dimension and magnitude > most.value.magnitude:
        log.add("size-high", amount.span, name=size.name, value=amount.text, most=most.text)
        return False
    return True
