"""Sources are read again in time: the shipped book's and those of the house, held against a given day."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from generator.model.rules import Rule
from generator.problems import Problem, ProblemLog, Severity
from generator.safety.book import shipped_rules
from generator.safety.sections import section_rules
from generator.safety.sources import SourceGroup, check_reviews, group_of, source_groups
from tests.safety.folder import line_of, project, said

HOUSE = """\
format: 1
rules:
  - rule: H1
    title: Combination square
    when: {tools: [combination-square]}
    hazard: "A square that was dropped reads wrong."
    needs:
      - administer: "Square tried both ways on a board."
        words: [square + tried]
    level: must
    sources:
      - cite: Workshop sheet WS-9
        known: house
        review_by: 2026-12-31
"""
FIRST = min(each.review_by for each in source_groups())
LAST = max(each.review_by for each in source_groups())


def found(today: date, house: str | None = None) -> list[Problem]:
    log = ProblemLog()
    check_reviews(project(house).house, today, log)
    return list(log)


def test_on_the_day_itself_nothing_is_past() -> None:
    assert found(FIRST) == []


def test_the_book_past_its_day_is_told_once_and_as_a_warning() -> None:
    (problem,) = found(LAST + timedelta(days=1))
    assert (problem.severity, problem.span) == (Severity.WARNING, None)
    names = "; ".join(each.group for each in source_groups())
    assert said(problem) == (
        f"The sources of the shipped book were to be read again by {FIRST}: {names}.\n"
        "Look for a newer version of storeyrod; until then, hold the law cited against what is in force."
    )


def test_a_source_of_the_house_past_its_day_is_told_at_its_line() -> None:
    assert found(date(2026, 12, 31), HOUSE) == []
    (problem,) = found(date(2027, 1, 1), HOUSE)
    assert problem.span is not None and problem.span.line == line_of(HOUSE, "        review_by:")
    assert said(problem) == (
        "The source “Workshop sheet WS-9” was to be read again by 2026-12-31.\n"
        "Read it again, correct the rule where it has changed, and give “review_by:” a later day."
    )


def test_a_group_reviewed_before_it_was_read_is_refused() -> None:
    with pytest.raises(ValueError, match="before it was read"):
        SourceGroup(group="Acts", begins=(), read=date(2026, 11, 24), review_by=date(2026, 11, 24))


def cited(rule: Rule) -> list[str]:
    return [source.cite.value for source in rule.sources]


def test_every_group_holds_a_source_of_the_book() -> None:
    cites = [cite for rule in shipped_rules() for cite in cited(rule)]
    cites += [source.cite for rule in section_rules() for source in rule.sources]
    assert {group_of(cite).group for cite in cites} == {each.group for each in source_groups()}
