"""The index: methods found by tool and by hazard, and what changed lately, by the days in the files alone."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from generator.documents.blocks import ChangeLog, Document, Link, MethodList, UseList
from generator.documents.changes import LATELY
from generator.documents.guide import compose_guide
from generator.documents.index import Listed, compose_index
from generator.documents.task import Task
from generator.model.method import Change
from generator.model.prose import Prose, parse_prose
from generator.model.scalars import Day
from generator.problems import ProblemLog
from generator.reading.nodes import Text
from tests.documents.finding import all_of, only

GUIDE, STATEMENT = "guide.html", "statement.html"


def listed(guide: Task, statement: Task) -> Listed:
    link, sheet = Link(text="Task guide", href=GUIDE), Link(text="To print (PDF)", href="guide.pdf")
    to_statement = (Link(text="Method statement", href=STATEMENT),)
    return Listed(guide=guide, links=(link, sheet), statements=((statement, to_statement),))


@pytest.fixture(scope="module")
def index(guide_task: Task, statement_task: Task) -> Document:
    return compose_index([listed(guide_task, statement_task)])


def told(guide: Task, *changes: tuple[date, str]) -> Task:
    """The guide with changes of these days in the place of its own."""
    span = guide.method.span

    def prose(words: str) -> Prose:
        text = Text(value=words, span=span)
        made = parse_prose(text, ProblemLog())
        assert made is not None
        return made

    made = tuple(
        Change.model_construct(date=Day(value=day, span=span), what=prose(words), span=span)
        for day, words in changes
    )
    method = guide.method.model_copy(update={"changes": made})
    return replace(guide, ledger=replace(guide.ledger, method=method))


def test_every_tool_of_a_method_is_listed_with_the_steps_that_use_it(
    index: Document, guide_task: Task
) -> None:
    tools = all_of(index, UseList)[0]
    method = guide_task.method
    assert {used.key for used in tools.used} == {f"tool-{key.value}" for key in method.tools}
    names = [used.name.casefold() for used in tools.used]
    assert names == sorted(names)
    square = next(used for used in tools.used if used.key == "tool-combination-square")
    (use,) = square.uses
    wanted = [n for n, step in enumerate(method.steps, 1) if "combination-square" in map(str, step.uses)]
    assert (use.number, use.href, list(use.steps)) == ("SF-07", GUIDE, wanted)


def test_every_hazard_leads_to_its_controls(index: Document, guide_task: Task) -> None:
    hazards = all_of(index, UseList)[1]
    ways = {used.key: used.uses[0].href for used in hazards.used}
    assert ways == {
        f"hazard-{rule.hazard.value}": f"{GUIDE}#hazard-{number}"
        for number, rule in enumerate(guide_task.method.hazards, 1)
    }


def test_a_method_bears_the_keys_it_is_found_by(index: Document) -> None:
    (stage,) = only(index, MethodList).stages
    keys = {used.key for uses in all_of(index, UseList) for used in uses.used}
    assert set(stage.methods[0].met) == keys


def test_the_newest_change_comes_first_whatever_the_order_of_the_file(
    guide_task: Task, statement_task: Task
) -> None:
    days = ((date(2026, 3, 1), "Old."), (date(2027, 5, 2), "New."), (date(2026, 9, 9), "Between."))
    guide = told(guide_task, *days)
    assert [change.text for change in only(compose_guide(guide), ChangeLog).changes] == [
        "New.",
        "Between.",
        "Old.",
    ]
    (log,) = all_of(compose_index([listed(guide, statement_task)]), ChangeLog)
    shown = [(change.day, change.title, change.href) for change in log.changes]
    assert shown == [
        ("2 May 2027", "SF-07 Architrave to a set-back frame", GUIDE),
        ("16 November 2026", "Reading Room doors, revision C01", STATEMENT),
        ("9 September 2026", "SF-07 Architrave to a set-back frame", GUIDE),
        ("1 March 2026", "SF-07 Architrave to a set-back frame", GUIDE),
    ]


def test_an_index_shows_the_latest_changes_only(guide_task: Task, statement_task: Task) -> None:
    guide = told(guide_task, *((date(2027, 1, day), f"Change {day}.") for day in range(1, 20)))
    (log,) = all_of(compose_index([listed(guide, statement_task)]), ChangeLog)
    assert [change.text for change in log.changes] == [f"Change {day}." for day in range(19, 19 - LATELY, -1)]
    assert len(only(compose_guide(guide), ChangeLog).changes) == 19


def test_a_guide_whose_file_tells_of_no_change_says_nothing_of_it(guide_task: Task) -> None:
    assert all_of(compose_guide(told(guide_task)), ChangeLog) == ()
