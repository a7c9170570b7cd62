"""What only some firms and sites ask for is printed where it belongs: permits, ratings, the nation's law."""

from __future__ import annotations

from dataclasses import replace

import pytest

from generator.documents.hazards import hazard_table
from generator.documents.statement import cautions
from generator.documents.steps import sequence
from generator.documents.task import Task
from generator.problems import ProblemLog
from generator.quantities.work import work_out
from tests.safety.folder import JOB, METHOD, project, read_job, read_method
from tests.safety.test_permits import GIVEN, needing, with_permits
from tests.safety.test_ratings import HOUSE, rated


def applied(task: Task, method: str = METHOD, job: str = JOB, house: str | None = None) -> Task:
    """The demonstration's doors with a method, a job and house rules given as text."""
    assert task.job is not None
    of, by = read_method(method), read_job(job).model_copy(update={"rows": task.job.rows})
    whole = replace(task.project, house=project(house).house) if house else task.project
    return replace(task, project=whole, ledger=work_out(of, by, whole, ProblemLog()))


def test_a_permit_stands_at_its_step_with_who_gives_it(statement_task: Task) -> None:
    told = applied(statement_task, needing("opening a ceiling"), with_permits(GIVEN))
    first = sequence(told).steps[0].warnings[0]
    assert first.startswith("Permit for opening a ceiling, number not given yet: given and taken back by ")
    assert first.endswith("Hilde Marrabel, 16:30 on the day.")


def test_a_guide_says_to_ask_for_the_permit(guide_task: Task) -> None:
    method = read_method(needing("opening a ceiling"))
    asked = replace(guide_task, ledger=work_out(method, None, guide_task.project, ProblemLog()))
    (first, *_) = sequence(asked).steps
    assert first.warnings[0] == "Permit for opening a ceiling: ask who gives it, and wait for it."


def test_a_rating_is_printed_with_its_bands_and_that_it_passes_nothing(statement_task: Task) -> None:
    table = hazard_table(applied(statement_task, rated((4, 3), (2, 3)), house=HOUSE))
    assert [hazard.rating for hazard in table.hazards if hazard.rating] == [
        "Rated 12 (medium) before, 6 (medium) after."
    ]
    assert "medium from 6: Look for better controls" in table.note
    assert table.note.endswith("A rating makes no document pass and no work safe.")


def test_without_ratings_nothing_is_said_of_them(statement_task: Task) -> None:
    assert hazard_table(statement_task).note == ""


@pytest.mark.parametrize(
    ("nation", "told"),
    [
        ("Scotland", "In Scotland the law and guidance are, building work: Building (Scotland)"),
        ("elsewhere", "The law of this place is not known here: ask the competent person"),
    ],
)
def test_the_nation_decides_what_is_named(statement_task: Task, nation: str, told: str) -> None:
    job = JOB.replace("nation: England", f"nation: {nation}")
    assert job != JOB
    assert cautions(applied(statement_task, job=job)).lines[-1].startswith(told)
