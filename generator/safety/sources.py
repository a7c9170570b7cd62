"""When the sources of the book were read, and which are past the day they are to be read again by."""

from __future__ import annotations

from datetime import date
from functools import cache

from pydantic import BaseModel, ConfigDict, Field, model_validator

from generator.model.house import HouseRules
from generator.problems import ProblemLog
from generator.safety.tables import table


class SourceGroup(BaseModel):
    """Sources gone through together: the beginnings of their citations, none where all others are meant."""

    model_config = ConfigDict(frozen=True, extra="forbid")
    group: str = Field(min_length=1)
    begins: tuple[str, ...]
    read: date
    review_by: date

    @model_validator(mode="after")
    def _in_order(self) -> SourceGroup:
        if self.review_by <= self.read:
            raise ValueError(f"{self.group}: to be reviewed before it was read")
        return self


@cache
def source_groups() -> tuple[SourceGroup, ...]:
    """All groups in their order; the last one takes every source that no other does."""
    groups = tuple(SourceGroup.model_validate(entry) for entry in table("sources")["groups"])
    if [bool(each.begins) for each in groups] != [True] * (len(groups) - 1) + [False]:
        raise ValueError("the last group, and no other, takes all other sources")
    return groups


def group_of(cite: str) -> SourceGroup:
    """The group a citation belongs to."""
    return next(each for each in source_groups() if not each.begins or cite.startswith(each.begins))


def check_reviews(house: HouseRules, today: date, log: ProblemLog) -> None:
    """Warn once of the shipped book, and once of each source of the house, whose day of review is past."""
    past = [each for each in source_groups() if each.review_by < today]
    if past:
        names = "; ".join(each.group for each in past)
        by = min(each.review_by for each in past).isoformat()
        log.add("book-past-review", warning=True, groups=names, by=by)
    for source in (source for rule in house.rules for source in rule.sources):
        if source.review_by and source.review_by.value < today:
            by = source.review_by.value.isoformat()
            log.add("source-past-review", source.review_by.span, warning=True, cite=source.cite.value, by=by)
