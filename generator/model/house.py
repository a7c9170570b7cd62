"""House rules: what a firm decides for all its work."""

from __future__ import annotations

from typing import Annotated, ClassVar, Self

from pydantic import Field, ValidationInfo, model_validator

from generator.model.amounts import SizeGiven
from generator.model.border import Described, Named
from generator.model.lists import ManyOf, OneOrMore, SomeOf
from generator.model.rules import Rule
from generator.model.scalars import (
    Code,
    Colour,
    Flag,
    FormatVersion,
    KebabName,
    Plain,
    Told,
    WebAddress,
    Whole,
    Word,
    one_of,
)
from generator.model.tables import CodeTable, Table
from generator.model.texts import at_fault, log_of
from generator.wording.languages import tags


class Company(Described):
    """The firm, as documents print it."""

    noun: ClassVar[str] = "a company"
    name: Plain = Field(description="the firm's name")
    address: Told | None = Field(None, description="the firm's address")
    phone: Code | None = Field(None, description="the firm's telephone number")
    accent: Colour | None = Field(None, description="a colour such as “#1B4A86”, for the theme's blue")
    logo: Plain | None = Field(None, description="the file of the logo, from this folder")
    site: WebAddress | None = Field(
        None, description="where the published site will stand, for the code that leads back to it from paper"
    )


class HouseSection(Named):
    """A section that the firm wants in every statement, beside those that are required anyway."""

    noun: ClassVar[str] = "a section of the house"
    title: Plain = Field(description="the section as documents print it")
    asks: Told = Field(description="what it asks, in a sentence")
    answered_by: OneOrMore[Annotated[Word, one_of("method", "job")]] = Field(
        description="which files answer it: method, job, or both"
    )
    not_applicable: Told | None = Field(
        None, description="the only honest ground for “applies: no”; without one it always applies"
    )
    question: Told | None = Field(None, description="what a guide asks where the job answers")


class HouseWords(Described):
    """Words that the firm does not want in place of a control, with what to write instead."""

    noun: ClassVar[str] = "words of the house"
    avoid: Plain = Field(description="the words")
    write: Told = Field(description="what to write instead")


class Band(Described):
    """A band of scores, from its lowest to where the next begins."""

    noun: ClassVar[str] = "a band"
    name: Plain = Field(description="the band as documents print it")
    from_: Whole = Field(alias="from", description="the lowest score in it")
    do: Told = Field(description="what is done about a hazard in it")
    stop: Flag = Field(False, description="yes where work may not begin with a hazard left in it")


class RatingScales(Described):
    """The scales by which the firm rates, in its own words, and the bands of the score."""

    noun: ClassVar[str] = "the scales of rating"
    likelihood: SomeOf[Plain] = Field(description="words from the least likely to the most")
    severity: SomeOf[Plain] = Field(description="words from the least harm to the worst")
    bands: SomeOf[Band] = Field(description="bands of likelihood times severity, the first from 1")

    @model_validator(mode="after")
    def _in_order(self, info: ValidationInfo) -> Self:
        starts = [int(band.from_) for band in self.bands]
        if starts and (starts[0] != 1 or sorted(set(starts)) != starts):
            log_of(info).add("bands-order", self.bands[0].from_.span)
            raise at_fault()
        return self

    def band(self, score: int) -> Band:
        """The band a score falls into."""
        return next(band for band in reversed(self.bands) if int(band.from_) <= score)


class HouseRules(Described):
    """The firm, its policy numbers, and what it asks of documents beyond the shipped book."""

    noun: ClassVar[str] = "the house rules"
    format: FormatVersion = Field(description="the version of the format, which stands first: 1")
    company: Company | None = Field(None, description="the firm, as documents print it")
    theme: KebabName | None = Field(
        None,
        description="the theme by its folder's name, in “themes” here or shipped",
    )
    languages: ManyOf[Annotated[Word, one_of(*tags())]] = Field(
        (), description="further languages for the learner's guides, such as pl; the English text governs"
    )
    policy: Table[SizeGiven] = Field(Table.empty(), description="policy sizes by name, for every method")
    rules: ManyOf[Rule] = Field((), description="safety rules of the firm, beside those of the shipped book")
    stricter: ManyOf[Code] = Field(
        (), description="numbers of rules that are only a should in the book and a must here"
    )
    set_aside: CodeTable[Told] = Field(
        Table.empty(),
        description="numbers of rules that are set aside, each with the reason, which is printed",
    )
    sections: Table[HouseSection] = Field(
        Table.empty(), description="sections required here beside those of the shipped table, by key"
    )
    words: ManyOf[HouseWords] = Field((), description="words not wanted in place of a control")
    rating: RatingScales | None = Field(None, description="scales by which hazards may be rated")
