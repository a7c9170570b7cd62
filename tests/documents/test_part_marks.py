"""A part's mark: it follows the part's words and not its place."""

from __future__ import annotations

from dataclasses import replace

import pytest

from generator.documents.blocks import Document, StopList
from generator.documents.content import content_hash, content_mark, part_mark
from generator.documents.guide import compose_guide
from generator.documents.task import Task
from tests.documents.finding import all_of, only


@pytest.fixture(scope="module")
def guide(guide_task: Task) -> Document:
    return compose_guide(guide_task)


def test_no_two_steps_bear_one_mark(guide: Document) -> None:
    marks = [part_mark(step) for step in guide.steps()]
    assert len(set(marks)) == len(marks) > 5
    assert {len(mark) for mark in marks} == {10}


def test_a_step_that_moves_on_keeps_its_mark(guide: Document) -> None:
    step = next(step for step in guide.steps() if step.hold and step.checks and step.hazards)
    assert step.hold
    moved = replace(
        step,
        number=step.number + 1,
        checks=tuple(replace(check, number=f"{step.number + 1}.1") for check in step.checks),
        hold=replace(step.hold, number="9"),
        hazards=tuple(replace(hazard, number=hazard.number + 1) for hazard in step.hazards),
        figures=tuple(replace(figure, key="figure-9", number="9") for figure in step.figures),
    )
    assert moved != step
    assert part_mark(moved) == part_mark(step)


@pytest.mark.parametrize("field", ["title", "who", "time", "why", "question"])
def test_a_changed_word_changes_the_mark(guide: Document, field: str) -> None:
    step = guide.steps()[0]
    assert part_mark(replace(step, **{field: "otherwise"})) != part_mark(step)


def test_a_changed_action_warning_or_limit_changes_the_mark(guide: Document) -> None:
    step = next(step for step in guide.steps() if step.checks)
    changed = (
        replace(step, actions=(*step.actions, "Look again.")),
        replace(step, warnings=("Hot.",)),
        replace(step, checks=(replace(step.checks[0], tolerance="within 9 mm"), *step.checks[1:])),
    )
    assert len({part_mark(step), *map(part_mark, changed)}) == 4


def test_the_mark_of_a_guide_begins_its_content_hash(guide: Document) -> None:
    assert content_mark(guide) == content_hash(guide)[:10]
    assert content_mark(replace(guide, title="Otherwise")) != content_mark(guide)


def test_a_guide_says_what_stops_the_work_before_its_first_step(guide: Document, guide_task: Task) -> None:
    stop = only(guide, StopList)
    assert stop.lines == guide_task.lines(*guide_task.method.stop_if)
    assert stop.lines
    kinds = [type(block).__name__ for block in guide.blocks]
    assert kinds.index("StopList") + 1 == kinds.index("Sequence")
    assert all_of(guide, StopList) == (stop,)
