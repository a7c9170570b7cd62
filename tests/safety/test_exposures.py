"""What the exposures of the demonstration's jobs come to, and that the rulebook acts on it."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from generator.model.folder import Project, load_folder
from generator.model.steps import Step
from generator.problems import ProblemLog
from generator.quantities.ledger import Ledger
from generator.quantities.work import work_out
from generator.safety.exposures import exposures_reached, noise_reached, vibration_reached
from generator.safety.required import rules_applied

ROOT = Path(__file__).parents[2]


@cache
def project() -> Project:
    return load_folder(ROOT, ProblemLog())


def ledger(method: str, job: str = "") -> Ledger:
    found = project().method(method)
    assert found is not None
    of = next((each for each in project().jobs if each.job.value == job), None)
    return work_out(found, of, project(), ProblemLog())


def reached(method: str, job: str = "") -> dict[str, int]:
    tools = project().catalogue.tools
    return {name: span.line for name, span in exposures_reached(ledger(method, job), tools).items()}


@pytest.mark.parametrize(
    ("level", "name"),
    [
        (79.9, ""), (80, "noise-lower-action"), (84.9, "noise-lower-action"), (85, "noise-upper-action"),
        (87, "noise-upper-action"), (87.1, "noise-limit"),
    ],
)  # fmt: skip
def test_noise_is_named_by_the_highest_value_it_reaches(level: float, name: str) -> None:
    """Control of Noise at Work Regulations 2005, regulation 4: at an action value, above the limit."""
    assert noise_reached(level) == name


@pytest.mark.parametrize(
    ("level", "name"),
    [(2.4, ""), (2.5, "vibration-action"), (4.9, "vibration-action"), (5, "vibration-limit")],
)
def test_vibration_is_named_by_the_highest_value_it_reaches(level: float, name: str) -> None:
    """Control of Vibration at Work Regulations 2005, regulation 4."""
    assert vibration_reached(level) == name


def test_the_saw_of_four_doors_takes_the_day_over_the_limit() -> None:
    found = reached("SF-07", "Reading Room doors")
    assert list(found) == ["noise-limit"]
    text = Path(ROOT / "methods" / "architrave-set-back-frame.yaml").read_text(encoding="utf-8")
    assert "mitre-saw" in text.splitlines()[found["noise-limit"] - 1]


def test_a_method_alone_has_no_days_but_its_lifts() -> None:
    assert list(reached("SF-04")) == ["lift-over-filter"]
    assert reached("SF-07") == {}


def test_rules_apply_by_what_is_reached() -> None:
    worked = ledger("SF-07", "Reading Room doors")
    found = exposures_reached(worked, project().catalogue.tools)
    applied = rules_applied(worked.method, worked.job, project(), exposures=found)
    without = rules_applied(worked.method, worked.job, project())
    assert {rule.number for rule in applied} - {rule.number for rule in without} == {"R92", "R93", "R94"}


def test_a_saw_that_runs_less_stays_below() -> None:
    worked = ledger("SF-07", "Reading Room doors")
    quiet = tuple(_without_runs(step) for step in worked.method.steps)
    method = worked.method.model_copy(update={"steps": quiet})
    again = work_out(method, worked.job, project(), ProblemLog())
    assert dict(exposures_reached(again, project().catalogue.tools)) == {}


def _without_runs(step: Step) -> Step:
    none = type(step.runs)(
        {name: type(minutes)(0, minutes.span) for name, minutes in step.runs.items()},
        {name: step.runs.place(name) for name in step.runs},
        frozenset(),
    )
    return step.model_copy(update={"runs": none})
