"""A job whose sizes lie anywhere within their bounds is worked and planned, or told where it is wrong."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.documents.figures import wanted
from generator.model.amounts import Amount
from generator.model.folder import Project, load_folder
from generator.model.jobs import Job
from generator.model.method import Method
from generator.model.sizes import Size
from generator.model.surveys import Row
from generator.model.tables import Table
from generator.problems import ProblemLog
from generator.prose import check_prose
from generator.quantities.cutting.plans import cutting_plans
from generator.quantities.work import work_out
from generator.units import LENGTH, Value

ROOT = Path(__file__).parents[2]
SHARES = st.sampled_from([0, 0, 8, 8, 1, 3, 5, 7])
WITHIN = Value(Decimal(2), LENGTH)
# The floor's layouts are searched for, which takes a second each; they are tried in their own tests.
SLOW = "SF-11"
# In eighths of the way from the least to the most; None leaves the size as the job has it.
Moves = dict[str, int | None]


@pytest.fixture(scope="module")
def project() -> Project:
    log = ProblemLog()
    found = load_folder(ROOT, log)
    assert not log.has_errors
    return found


def within_bounds(found: Value, size: Size, share: int | None) -> Value:
    """The value taken that share of the way between the size's bounds, where it has both."""
    least, most = size.least, size.most
    if share is None or least is None or most is None:
        return found
    low, high = (Decimal(str(bound.value.magnitude)) for bound in (least, most))
    return Value(low + (high - low) * share / 8, found.dimension)


def moved(given: object, size: Size, share: int | None, *, limited: bool) -> object:
    if not isinstance(given, Amount):
        return given
    at = within_bounds(given.value, size, share)
    return replace(given, value=at, within=WITHIN if limited and at.dimension == LENGTH else None)


def moved_row(row: Row, method: Method, moves: Moves, *, limited: bool) -> Row:
    sizes = {
        name: moved(each, method.sizes[name], moves[name], limited=limited)
        for name, each in row.sizes.items()
    }
    readings = {
        name: tuple(
            replace(each, value=within_bounds(each.value, method.sizes[name], moves[name])) for each in items
        )
        for name, items in row.readings.items()
    }
    return replace(row, sizes=sizes, readings=readings)


def moved_job(job: Job, method: Method, moves: Moves, *, limited: bool) -> Job:
    """The job's first opening and whole-job sizes with some moved to or within their bounds."""
    rows = tuple(moved_row(row, method, moves, limited=limited) for row in job.rows[:1])
    sizes = {
        name: moved(each, method.sizes[name], moves[name], limited=limited)
        for name, each in job.sizes.items()
    }
    return job.model_copy(update={"rows": rows, "sizes": Table(sizes, {}, frozenset())})


def names_of(job: Job) -> list[str]:
    first = job.rows[:1]
    return sorted({*job.sizes, *(name for row in first for name in (*row.sizes, *row.readings))})


@settings(max_examples=40, deadline=None, derandomize=True)
@given(data=st.data(), limited=st.booleans())
def test_no_size_within_its_bounds_breaks_the_working_or_the_plan(
    data: st.DataObject, limited: bool, project: Project
) -> None:
    job = data.draw(st.sampled_from([job for job in project.jobs if job.method.value != SLOW]))
    method = project.method(job.method.value)
    assert method is not None
    names = names_of(job)
    moves = data.draw(st.fixed_dictionaries({name: st.one_of(st.none(), SHARES) for name in names}))
    log = ProblemLog()
    odd = moved_job(job, method, moves, limited=limited)
    ledger = work_out(method, odd, project, log)
    check_prose(ledger, log)
    plans = cutting_plans(ledger, project, log)
    wanted(ledger, log)
    assert [problem for problem in log if problem.span is None or problem.span.line < 1] == []
    if not log.has_errors:
        assert all(plan.bars for plan in plans)
        assert all(piece.length > 0 for plan in plans for piece in plan.order.pieces)
