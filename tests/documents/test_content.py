"""The hash of what a statement says moves with what it says, and with nothing else."""

from __future__ import annotations

from dataclasses import replace

import pytest

from generator.documents.content import content_hash
from generator.documents.exposures import dose_orders
from generator.documents.figures import orders_of
from generator.documents.programme import programme_orders
from generator.documents.statement import compose_statement
from generator.documents.task import Task
from generator.model.jobs import Job
from generator.problems import ProblemLog
from generator.quantities.work import work_out
from tests.documents.conftest import pictures
from tests.safety.folder import JOB, read_job

SIGNED = "  approved: {by: Josse Hethersedge, role: director, date: 2026-11-16}\n"


def content(task: Task, text: str) -> str:
    """The hash of the statement of a job's text, with the demonstration's own survey."""
    job = _with_rows(read_job(text), task.job)
    ledger = work_out(task.method, job, task.project, ProblemLog())
    dosed = dose_orders(ledger, task.project.catalogue.tools)
    drawn = pictures((*orders_of(ledger), *programme_orders(ledger), *dosed))
    return content_hash(compose_statement(replace(task, ledger=ledger, pictures=drawn)))


def _with_rows(job: Job, demonstration: Job | None) -> Job:
    assert demonstration is not None
    return job.model_copy(update={"rows": demonstration.rows})


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("status: for construction", "status: superseded"),
        ("  revision: C01", "  revision: C07"),
        (SIGNED, ""),
        (SIGNED, SIGNED.replace("Josse Hethersedge", "Marit Sallowfield")),
        ("  issued: 2026-11-16\n", "  issued: 2026-11-17\n"),
    ],
)
def test_it_stands_whatever_the_status_and_the_signatures(statement_task: Task, old: str, new: str) -> None:
    assert old in JOB
    assert content(statement_task, JOB.replace(old, new, 1)) == content(statement_task, JOB)


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("  hinge_gap: 3 mm", "  hinge_gap: 4 mm"),
        ("  day: 7.5 h", "  day: 8 h"),
        ("Keep the hall clear and send", "Keep the hall clear or send"),
        ('phone: "07700 900281"', 'phone: "07700 900282"'),
    ],
)
def test_it_moves_with_what_is_said(statement_task: Task, old: str, new: str) -> None:
    assert old in JOB
    assert content(statement_task, JOB.replace(old, new, 1)) != content(statement_task, JOB)
