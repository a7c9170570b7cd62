"""The programme in a statement: how long, in which order, by how many, and what that rests on."""

from __future__ import annotations

from dataclasses import replace

from generator.documents.programme import moment_words, outcome, programme_orders, programme_part
from generator.documents.task import Task
from generator.quantities.programme import Task as Timed
from generator.quantities.programme import programme
from generator.wording import ENGLISH


def test_it_says_when_all_is_ready_and_what_that_rests_on(statement_task: Task) -> None:
    part = programme_part(statement_task)
    steps = statement_task.method.steps
    minutes = sum(int(step.minutes) * int(step.crew or 1) for step in steps) * 4
    assert part.intro.startswith("All is ready ")
    assert f"; {minutes // 60} h {minutes % 60} min of work, all hands added up." in part.intro
    assert "Times are the method's own and no promise" in part.intro
    assert "A working day is 7 h 30 min; a wait runs on through the night." in part.intro


def test_each_step_stands_in_the_table_with_its_minutes_at_all_openings(statement_task: Task) -> None:
    (table, figure) = programme_part(statement_task).blocks
    steps = statement_task.method.steps
    assert [row[0] for row in table.rows] == [f"{n}. {s.title}" for n, s in enumerate(steps, 1)]
    assert table.rows[0][3] == f"0:{int(steps[0].minutes)} × 4 = 1:{int(steps[0].minutes) * 4 - 60:02d}"
    assert figure.picture.name == "programme"


def test_without_a_working_day_times_run_on(statement_task: Task) -> None:
    job = statement_task.job
    assert job is not None and job.when is not None
    loose = job.model_copy(update={"when": job.when.model_copy(update={"day": None})})
    ledger = replace(statement_task.ledger, job=loose)
    pictures = dict.fromkeys(programme_orders(ledger), next(iter(statement_task.pictures.values())))
    told = programme_part(replace(statement_task, ledger=ledger, pictures=pictures)).intro
    assert "Times run on without breaks, since the job gives no working day." in told


def test_a_moment_is_told_by_its_day() -> None:
    assert [moment_words(at, 450, ENGLISH) for at in (0, 450, 451, 1440, 1530)] == [
        "day 1, 0:00", "day 1, 7:30", "night after day 1", "day 2, 0:00", "day 2, 1:30",
    ]  # fmt: skip
    assert moment_words(1530, None, ENGLISH) == "25:30"


def test_what_dries_overnight_is_ready_in_the_night() -> None:
    tasks = (Timed(number=1, work=400, wait=240),)
    assert outcome(programme(tasks, 450), ENGLISH) == (
        "All is ready in the night after day 1; 6 h 40 min of work, all hands added up."
    )
    assert outcome(programme(tasks), ENGLISH) == (
        "All is ready after 10 h 40 min; 6 h 40 min of work, all hands added up."
    )
