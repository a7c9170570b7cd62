"""A mistake that takes away all hazards or all people is reported once, and not by every rule."""

from __future__ import annotations

import re

from generator.safety.required import check_rules, check_safety
from tests.safety.folder import JOB, METHOD, problems, said


def block_taken_out(text: str, key: str) -> str:
    """The file without one key of its top level and all that stands under it."""
    changed, count = re.subn(rf"(?m)^{key}:\n(?:  .*\n|\n)*", "", text)
    assert count == 1
    return changed


def test_a_method_without_hazards_is_one_report() -> None:
    (problem,) = problems(block_taken_out(METHOD, "hazards"), check=check_safety)
    assert said(problem) == (
        "“hazards” is not given, and “Hazards, risk and controls” needs it.\n"
        "That section asks: For each significant hazard how harm happens and to whom, controls strongest "
        "first with who and when, and what remains."
    )


def test_a_job_without_people_is_one_report() -> None:
    (problem,) = problems(job=block_taken_out(JOB, "people"), check=check_safety)
    assert problem.code == "part-missing" and problem.values["part"] == "people"


def test_where_supplies_are_shut_off_counts_however_it_is_worded() -> None:
    job = re.sub(r"(?m)^(  services:) \|?.*\n(?:    .*\n)*", r'\1 "Asked of the caretaker."\n', JOB)
    job = re.sub(r"(?m)^  shut_off: .*\n(?:    .*\n)*", "", job)
    asked = [
        each for each in problems(job=job, check=check_rules) if "shut off" in each.values.get("offer", "")
    ]
    assert [each.values["rule"] for each in asked] == ["R49"]
    job = job.replace("\nemergency:\n", '\nemergency:\n  shut_off: "Grey switch in the porch."\n')
    asked = [
        each for each in problems(job=job, check=check_rules) if "shut off" in each.values.get("offer", "")
    ]
    assert asked == []
