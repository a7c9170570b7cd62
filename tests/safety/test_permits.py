"""Permits: each that a step waits for is given by somebody in the job."""

from __future__ import annotations

import pytest

from generator.safety.required import check_rules
from tests.safety.folder import JOB, METHOD, problems, said

GIVEN = """\
permits:
  - permit: opening a ceiling
    given_by: Hilde Marrabel
    until: "16:30 on the day."
"""


def needing(permit: str) -> str:
    """The method whose first step waits for a permit."""
    return METHOD.replace("    minutes: 20\n", f"    minutes: 20\n    permits: [{permit}]\n", 1)


def told(method: str, job: str) -> list[str]:
    found = problems(method, job, check=check_rules)
    return [said(problem) for problem in found if problem.code.startswith("permit")]


def with_permits(text: str) -> str:
    return JOB.replace("sections:\n", f"{text}sections:\n", 1)


def test_a_permit_that_the_job_gives_is_not_reported() -> None:
    assert told(needing("opening a ceiling"), with_permits(GIVEN)) == []


def test_a_permit_that_nobody_gives_is_reported() -> None:
    (found,) = told(needing("opening a ceiling"), JOB)
    assert found == (
        "Step 1 needs a permit for opening a ceiling, and the job does not say who gives it.\n"
        "A line under “permits:” with “permit: opening a ceiling”, “given_by:” and “until:”."
    )


def test_a_permit_that_no_step_needs_is_reported_with_the_nearest() -> None:
    found = told(needing("opening a ceilin"), with_permits(GIVEN))
    assert [line.partition("\n")[0] for line in found] == [
        "Step 1 needs a permit for opening a ceilin, and the job does not say who gives it.",
        "No step of the method needs a permit for opening a ceiling.",
    ]


@pytest.mark.parametrize("needed", [True, False])
def test_permits_cannot_be_denied_where_a_step_waits_for_one(needed: bool) -> None:
    before, _, rest = with_permits(GIVEN).partition("  permits: |\n")
    after = rest.split("\n  briefing:", 1)[1]
    no = 'applies: no, because: "The site rules ask for none; Hilde Marrabel was asked."'
    denied = f"{before}  permits: {{{no}, decided_by: Josse Hethersedge}}\n  briefing:{after}"
    found = told(needing("opening a ceiling") if needed else METHOD, denied)
    said_denied = [line for line in found if line.startswith("The permits are said not to apply")]
    assert bool(said_denied) is needed
