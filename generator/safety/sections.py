"""The required sections: what each asks, who answers it, in which editions it stands, on what law."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Literal, TypeAlias

from pydantic import BaseModel, ConfigDict, Field, model_validator

from generator.model.house import HouseRules, HouseSection
from generator.safety.tables import table

Edition: TypeAlias = Literal["statement", "guide"]
Known: TypeAlias = Literal["official", "copy", "likely", "memory", "house"]
SECTION = "section"

KNOWN_WORDS: dict[str, str] = {
    "official": "read on an official page",
    "copy": "read in a copy of the official text",
    "likely": "known from a twin text or a secondary account: check before relying on it",
    "memory": "not opened: check before relying on it",
    "house": "decided by the firm",
}


class Source(BaseModel):
    """A law or publication a section rests on, and how well its text is known."""

    model_config = ConfigDict(frozen=True, extra="forbid")
    cite: str = Field(min_length=1)
    known: Known


class SectionRule(BaseModel):
    """One required section. `method` and `job` name what fills it: `section`, or dotted parts of the file.

    `to_build` names parts of a job that only a statement issued for construction must have.
    """

    model_config = ConfigDict(frozen=True, extra="forbid")
    id: str = Field(pattern=r"[SH]\d\d")
    key: str = Field(pattern=r"[a-z][a-z_]*")
    title: str = Field(min_length=1)
    asks: str = Field(min_length=1)
    status: Literal["written", "done", "good"]
    method: tuple[str, ...]
    job: tuple[str, ...]
    to_build: tuple[str, ...] = ()
    editions: tuple[Edition, ...] = Field(min_length=1)
    not_applicable: str = ""
    question: str = ""
    note: str = ""
    sources: tuple[Source, ...] = Field(min_length=1)

    @model_validator(mode="after")
    def _whole(self) -> SectionRule:
        if not self.method and not self.job:
            raise ValueError(f"{self.id}: nobody answers it")
        if self.job and "guide" in self.editions and not self.question:
            raise ValueError(f"{self.id}: a guide needs the question to ask on site")
        if self.may_not_apply and SECTION not in self.method + self.job:
            raise ValueError(f"{self.id}: without an answer it cannot be said not to apply")
        return self

    @property
    def answered_by(self) -> Literal["method", "job", "both"]:
        """Which file answers it."""
        if self.method and self.job:
            return "both"
        return "method" if self.method else "job"

    @property
    def filled_by(self) -> tuple[str, ...]:
        """All that fills it, the method's parts first; `section` is an answer under `sections:`."""
        return tuple(dict.fromkeys((*self.method, *self.job)))

    @property
    def may_not_apply(self) -> bool:
        """True when `applies: no` can be honest."""
        return bool(self.not_applicable)

    @property
    def honest(self) -> str:
        """The only honest grounds for `applies: no`; empty when it always applies."""
        return self.not_applicable

    @property
    def source(self) -> str:
        """The sources in one line."""
        return "; ".join(source.cite for source in self.sources)

    def parts(self, of: Literal["method", "job"]) -> tuple[str, ...]:
        """What fills it in one of the files."""
        return self.method if of == "method" else self.job


@cache
def section_rules() -> tuple[SectionRule, ...]:
    """All required sections in their order; ValueError when the table contradicts itself."""
    rules = tuple(SectionRule.model_validate(entry) for entry in table("sections")["sections"])
    if [rule.id for rule in rules] != [f"S{number:02}" for number in range(1, len(rules) + 1)]:
        raise ValueError("section numbers are not consecutive from S01")
    if len({rule.key for rule in rules}) != len(rules):
        raise ValueError("two sections have the same key")
    return rules


@cache
def law_names() -> Mapping[str, str]:
    """The short names that sources use, each with its name in full."""
    return {str(short): str(whole) for short, whole in table("sections")["laws"].items()}


def sections_in_force(house: HouseRules | None = None) -> tuple[SectionRule, ...]:
    """The required sections, those that the house adds after the others with numbers from H01."""
    taken = {rule.key for rule in section_rules()}
    own = [section for section in house.sections.values() if section.name.value not in taken] if house else []
    return section_rules() + tuple(_of_house(number, section) for number, section in enumerate(own, 1))


def _of_house(number: int, section: HouseSection) -> SectionRule:
    answered_by = [word.value for word in section.answered_by]
    return SectionRule(
        id=f"H{number:02}",
        key=section.name.value,
        title=section.title.value,
        asks=section.asks.typed,
        status="good",
        method=(SECTION,) if "method" in answered_by else (),
        job=(SECTION,) if "job" in answered_by else (),
        editions=("statement", "guide"),
        not_applicable=section.not_applicable.typed if section.not_applicable else "",
        question=section.question.typed if section.question else section.asks.typed,
        sources=(Source(cite="house rules", known="house"),),
    )


def sections_for(edition: Edition, house: HouseRules | None = None) -> tuple[SectionRule, ...]:
    """The sections an edition prints, in order."""
    return tuple(rule for rule in sections_in_force(house) if edition in rule.editions)


def section_rule(key: str, house: HouseRules | None = None) -> SectionRule | None:
    """The section of this key."""
    return next((rule for rule in sections_in_force(house) if rule.key == key), None)
