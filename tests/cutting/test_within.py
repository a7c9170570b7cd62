"""Cutting plans within the limits of the sizes: both ends of what may have to be bought."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from generator.model.amounts import Amount
from generator.model.folder import Project, load_folder
from generator.problems import ProblemLog
from generator.quantities.cutting.plans import cutting_plans
from generator.quantities.cutting.within import plans_within
from generator.quantities.cutting.wording import within_words
from generator.quantities.ledger import Ledger
from generator.quantities.work import work_out
from generator.units import LENGTH, Value

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def project() -> Project:
    return load_folder(ROOT, ProblemLog())


def ledger_of(project: Project, within: str = "", shift: str = "0") -> Ledger:
    """The doors with their heights known so well, or all taller by a shift."""
    job = next(job for job in project.jobs if job.job.value == "Reading Room doors")
    rows = []
    for row in job.rows:
        height = row.sizes["opening_height"]
        assert isinstance(height, Amount)
        limit = Value(Decimal(within), LENGTH) if within else None
        value = Value(Decimal(height.value.magnitude) + Decimal(shift), LENGTH)
        changed = replace(height, value=value, within=limit)
        rows.append(replace(row, sizes={**row.sizes, "opening_height": changed}))
    method = project.method(job.method.value)
    assert method is not None
    return work_out(method, job.model_copy(update={"rows": tuple(rows)}), project, ProblemLog())


def test_without_limits_there_is_nothing_to_plan_again(project: Project) -> None:
    assert plans_within(ledger_of(project), project) == ()


def test_both_ends_are_the_plans_of_jobs_that_are_so_much_shorter_and_taller(project: Project) -> None:
    found = plans_within(ledger_of(project, within="60"), project)
    for ends, shift in ((lambda each: each.shortest, "-60"), (lambda each: each.longest, "60")):
        plans = cutting_plans(ledger_of(project, shift=shift), project, ProblemLog())
        assert [ends(each).totals for each in found] == [plan.totals for plan in plans]


def test_the_plan_as_worked_lies_between_both_ends(project: Project) -> None:
    found = plans_within(ledger_of(project, within="60"), project)
    plans = cutting_plans(ledger_of(project), project, ProblemLog())
    for plan, each in zip(plans, found, strict=True):
        assert each.shortest.spent <= plan.spent <= each.longest.spent


def test_it_is_said_whether_other_stock_may_be_needed(project: Project) -> None:
    near = [within_words(each) for each in plans_within(ledger_of(project, within="1"), project)]
    assert near[0] == "The same stock does within the limits of the sizes."
    far = [within_words(each) for each in plans_within(ledger_of(project, within="400"), project)]
    assert far[0].startswith("Within the limits of the sizes anything from ")
    tall = ledger_of(project, within="1900", shift="600")
    beyond = [within_words(each) for each in plans_within(tall, project)]
    assert beyond[0] == "With pieces at the most their limits allow, no length of this stock is enough."
