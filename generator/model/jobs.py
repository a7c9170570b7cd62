"""A job: one method applied to one place, with its own sizes, people and dates."""

from __future__ import annotations

from itertools import pairwise
from typing import Annotated, ClassVar, Final, Self

from pydantic import Field, ValidationInfo, model_validator

from generator.model.amounts import Density, Duration, Length, SizeGiven
from generator.model.border import MADE, Described
from generator.model.lists import ManyOf, SomeOf
from generator.model.scalars import (
    Code,
    Dated,
    Day,
    Flag,
    FormatVersion,
    KebabName,
    Plain,
    Told,
    ToldOrNumber,
    Whole,
    Word,
    one_of,
)
from generator.model.sections import SectionAnswer
from generator.model.surveys import Row
from generator.model.tables import Table
from generator.model.texts import at_fault, log_of
from generator.problems import ProblemLog

STATUSES: Final = ("draft", "for comment", "for construction", "superseded", "withdrawn")
_CLOCK_DAY: Final = 24 * 60 * 60
NATIONS: Final = ("England", "Wales", "Scotland", "Northern Ireland", "elsewhere")


def _check_order(first: Day, last: Day, log: ProblemLog) -> None:
    if last.value < first.value:
        log.add("dates-order", last.span, first=first.value.isoformat(), last=last.value.isoformat())


class Signed(Described):
    """Who wrote, checked or approved the document, and when."""

    noun: ClassVar[str] = "a signature"
    by: Plain = Field(description="the person's name")
    role: Plain = Field(description="the person's role")
    date: Dated = Field(description="the date, such as 2026-11-11")


class DocumentControl(Described):
    """Number, revision and status of the document, and who stands behind it."""

    noun: ClassVar[str] = "document control"
    number: Code = Field(description="the number of the document")
    revision: Code = Field(description="the revision, such as P02")
    status: Annotated[Word, one_of(*STATUSES)] = Field(description="where the revision stands")
    written: Signed | None = Field(None, description="who wrote it")
    checked: Signed | None = Field(None, description="who checked it")
    approved: Signed | None = Field(None, description="who approved it")
    issued: Dated | None = Field(None, description="the date of issue")
    review_by: Dated | None = Field(None, description="the date by which it is reviewed")
    replaces: ToldOrNumber | None = Field(None, description="the revision it replaces")
    changed: Told | None = Field(None, description="what has changed since that revision")
    based_on: ManyOf[Told] = Field((), description="drawings, specifications and surveys it rests on")
    distribution: ManyOf[Told] = Field((), description="who receives it")

    @model_validator(mode="after")
    def _in_order(self, info: ValidationInfo) -> Self:
        signed = (each.date for each in (self.written, self.checked, self.approved) if each)
        days = [*signed, *(day for day in (self.issued, self.review_by) if day)]
        for first, last in pairwise(days):
            _check_order(first, last, log_of(info))
        return self


class Site(Described):
    """The place."""

    noun: ClassVar[str] = "a site"
    name: Plain | None = Field(None, description="the name of the place")
    address: Told | None = Field(None, description="the address an ambulance can find")
    building_begun: Whole | None = Field(
        None, description="the year in which the oldest part of the building was begun"
    )
    nation: Annotated[Word, one_of(*NATIONS)] | None = Field(None, description="whose law applies")
    occupied: Told | None = Field(None, description="who is in the building while the work goes on")
    where: ManyOf[KebabName] = Field(
        (), description="kinds of place the work is in or passes through, such as occupied or stair"
    )


class Client(Described):
    """The client."""

    noun: ClassVar[str] = "a client"
    name: Plain = Field(description="the client's name")
    kind: Annotated[Word, one_of("commercial", "domestic")] = Field(description="commercial or domestic")
    does: ManyOf[Told] = Field(
        (), description="what the client must do and will notice: noise, ways closed, who accepts the work"
    )


class When(Described):
    """Dates and hours of the work."""

    noun: ClassVar[str] = "the dates of the work"
    from_: Dated = Field(alias="from", description="the first day")
    to: Dated = Field(description="the last day")
    hours: Told | None = Field(None, description="working hours and noisy hours")
    day: Duration | None = Field(
        None, description="working time in a day, breaks taken off, such as 7.5 h; the programme goes by it"
    )

    @model_validator(mode="after")
    def _in_order(self, info: ValidationInfo) -> Self:
        _check_order(self.from_, self.to, log_of(info))
        if self.day and not 0 < self.day.value.magnitude <= _CLOCK_DAY:
            log_of(info).add("day-length", self.day.span, value=self.day.text)
            raise at_fault()
        return self


class Person(Described):
    """A person with a part in the job; `holds` says that he or she may release hold points."""

    noun: ClassVar[str] = "a person"
    part: Plain = Field(description="the part the person has, such as supervisor")
    name: Plain | None = Field(None, description="the person's name")
    firm: Plain | None = Field(None, description="the firm")
    phone: Code | None = Field(None, description="the telephone number")
    holds: Flag = Field(False, description="yes when the person may release hold points")
    deputy: Plain | None = Field(None, description="who stands in")
    counts_as: ManyOf[KebabName] = Field(
        (), description="what safety rules take the person for, such as young-person or lone-worker"
    )


class Emergency(Described):
    """What is done in an emergency here."""

    noun: ClassVar[str] = "the emergency plan"
    call: ToldOrNumber | None = Field(None, description="which number is called, and what is said")
    hurt: Told | None = Field(None, description="what is done when someone is hurt")
    fire: Told | None = Field(None, description="what is done when there is a fire")
    shut_off: Told | None = Field(None, description="where electricity, water and gas are shut off")


class SurveyFile(Described):
    """The survey that lists the openings."""

    noun: ClassVar[str] = "a survey"
    file: Plain = Field(description="the name of the CSV file beside the job")
    unit: Annotated[Word, one_of("mm", "cm", "m")] = Field(description="the unit of its plain numbers")
    key: SomeOf[Annotated[Word, one_of("opening", "face")]] = Field(
        description="the columns that tell the rows apart: opening, or opening and face"
    )

    @model_validator(mode="after")
    def _names_openings(self, info: ValidationInfo) -> Self:
        log = log_of(info)
        if not self.knows("key"):
            raise at_fault()
        if "opening" not in [column.value for column in self.key]:
            log.add("survey-key", self.key[0].span)
            raise at_fault()
        return self


class Permit(Described):
    """A permit to work, by the name steps use for it."""

    noun: ClassVar[str] = "a permit"
    permit: Plain = Field(description="what it permits, such as hot work")
    number: Code | None = Field(None, description="its number, once it is given")
    given_by: Plain = Field(description="who gives it and takes it back")
    until: Told = Field(description="how long it holds")


class DustMeasured(Described):
    """What air sampling found of wood dust where people breathe."""

    noun: ClassVar[str] = "a measured dust"
    level: Density = Field(description="the concentration over eight hours, such as 4 mg/m3")
    from_: Told = Field(alias="from", description="where and when it was sampled, and the report")


class Job(Described):
    """One method applied to one place. `rows` are the faces of its survey, in order."""

    noun: ClassVar[str] = "a job"
    format: FormatVersion = Field(description="the version of the format, which stands first: 1")
    job: Plain = Field(description="the title of the job")
    method: Code = Field(description="the number of the method applied")
    document: DocumentControl | None = Field(None, description="number, revision and status of the document")
    site: Site | None = Field(None, description="the place")
    client: Client | None = Field(None, description="the client")
    when: When | None = Field(None, description="dates and hours of the work")
    people: ManyOf[Person] = Field((), description="people with a part in the job")
    emergency: Emergency | None = Field(None, description="what is done in an emergency")
    stop_if: ManyOf[Told] = Field((), description="what stops the work here, beside what the method says")
    not_included: Told | None = Field(None, description="what is not part of the job")
    permits: ManyOf[Permit] = Field((), description="permits to work that steps of the method need")
    sizes: Table[SizeGiven] = Field(Table.empty(), description="sizes that hold for the whole job")
    materials: Table[KebabName] = Field(Table.empty(), description="roles bound to other catalogue keys")
    offcuts: Table[ManyOf[Length]] = Field(
        Table.empty(), description="lengths on hand of a material by role, cut where that saves buying"
    )
    choices: Table[Code] = Field(Table.empty(), description="the way chosen where the method compares ways")
    wood_dust: DustMeasured | None = Field(None, description="wood dust in the air, where it was measured")
    survey: SurveyFile | None = Field(None, description="the survey that lists the openings")
    sections: Table[SectionAnswer] = Field(Table.empty(), description="answers to the required sections")
    rows: Annotated[tuple[Row, ...], MADE] = ()

    @model_validator(mode="after")
    def _is_begun(self, info: ValidationInfo) -> Self:
        """A year still to come would pass for a building too young for asbestos."""
        begun, last = self.site and self.site.building_begun, self.when and self.when.to
        if begun and last and int(begun) > last.value.year:
            log_of(info).add("year-to-come", begun.span, year=begun, last=last.value.year)
        return self
