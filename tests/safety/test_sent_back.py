"""The fifteen reasons for which a statement is sent back: what reports each exists, and bites."""

from __future__ import annotations

import re

import pytest

from generator.problems import Problem, ProblemLog, Severity
from generator.safety.book import shipped_rules
from generator.safety.required import check_rules
from generator.safety.returns import check_strangers, law
from generator.safety.sent_back import SentBack, reasons_sent_back
from generator.wording.faults import FAULTS
from tests.safety.folder import JOB, METHOD, line_of, problems, read_job, read_method, said


def test_there_are_fifteen() -> None:
    assert len(reasons_sent_back()) == 15


@pytest.mark.parametrize("reason", reasons_sent_back(), ids=lambda each: each.reason[:40])
def test_what_reports_a_reason_exists(reason: SentBack) -> None:
    assert set(reason.faults) <= set(FAULTS)
    assert set(reason.rules) <= {rule.rule.value for rule in shipped_rules()}


def found(code: str, method: str = METHOD, job: str | None = JOB) -> list[Problem]:
    return [each for each in problems(method, job, check=check_rules) if each.code == code]


OTHER = re.sub(r"Ottermere Reading Room( Trust)?", r"Fennick Chapel\1", JOB).replace(
    "3 Mill Lane", "8 Low Row"
)


def strangers(method: str, job: str) -> list[Problem]:
    log = ProblemLog()
    check_strangers((read_method(method),), (read_job(job), read_job(OTHER)), log)
    return list(log)


def test_jobs_of_their_own_share_nothing() -> None:
    assert {each.values["name"] for each in strangers(METHOD, JOB)} <= {"ORR-MS-07"}


def test_another_jobs_name_left_in_is_reported() -> None:
    job = JOB.replace("come in by the kitchen yard", "come in to Fennick Chapel by the yard")
    (problem,) = [each for each in strangers(METHOD, job) if each.values["name"] == "Fennick Chapel"]
    assert problem.code == "other-jobs-name"
    assert problem.span is not None and problem.span.text.strip().startswith("workplace:")


def test_a_job_s_name_in_a_method_is_reported() -> None:
    method = METHOD.replace("Vacuum edge, wall and floor.", "Vacuum the Ottermere Reading Room.")
    assert [each.values["name"] for each in strangers(method, JOB)] == ["Ottermere Reading Room"]


@pytest.mark.parametrize(
    "blank", ["TBC", "[insert name]", "XXX", "to be confirmed", "<client>", "lorem ipsum"]
)
def test_a_blank_left_is_reported(blank: str) -> None:
    job = JOB.replace("the reading room on Tuesday evening", f"{blank} on Tuesday evening")
    (problem,) = found("blank-left", job=job)
    assert problem.span is not None and problem.span.line == line_of(job, "  occupied:")


@pytest.mark.parametrize(
    ("name", "now"), [(name, old.now) for old in law().revoked for name in old.named[:1]]
)
def test_law_that_no_longer_holds_is_reported_with_what_does(name: str, now: str) -> None:
    (problem,) = found(
        "law-revoked", METHOD.replace("Safety data sheets stay", f"Under {name} data sheets stay")
    )
    assert problem.values == {"name": name, "now": now}


@pytest.mark.parametrize("name", ["CDM 2015", "RIDDOR 2013", "COSHH 2002", "CAR 2012", "Care 2006"])
def test_law_that_holds_is_not_reported(name: str) -> None:
    method = METHOD.replace("Safety data sheets stay", f"Under {name} data sheets stay")
    assert found("law-revoked", method) == [] == found("law-foreign", method)


def test_foreign_law_is_reported_unless_the_job_is_elsewhere() -> None:
    method = METHOD.replace("Safety data sheets stay", "Under OSHA data sheets stay")
    (problem,) = found("law-foreign", method)
    assert problem.severity is Severity.WARNING and problem.values["country"] == "the United States"
    assert found("law-foreign", method, JOB.replace("nation: England", "nation: elsewhere")) == []


def test_a_step_without_hazards_is_reported() -> None:
    method = METHOD.replace(
        '    hazards: [low-platform]\n    check:\n      what: "Both', '    check:\n      what: "Both'
    )
    (problem,) = found("step-without-hazard", method, None)
    assert problem.values["step"] == "7"


def test_a_tool_spoken_of_and_not_on_the_list_is_reported() -> None:
    method = METHOD.replace("Vacuum edge, wall and floor.", "Take the corner off with the router.")
    (problem,) = found("tool-not-on-list", method, None)
    assert problem.values["key"] == "router"


def test_too_many_words_to_read_on_site_are_reported() -> None:
    why = "    why: |\n      Glue holds to wood, not to paint."
    assert METHOD.count(why) == 1
    method = METHOD.replace(why, why + " word" * law().too_long)
    (problem,) = found("too-long-to-use", method, None)
    assert int(problem.values["words"]) > law().too_long


def test_what_remains_needs_a_reason_of_its_own() -> None:
    one = re.search(r"(?m)^    remains: \|\n(?:      .*\n)+", METHOD)
    assert one
    (problem,) = found("remains-without-reason", METHOD.replace(one.group(), "    remains: Low.\n", 1))
    assert said(problem).startswith("“Low.” gives no reason why no more remains of “blade-contact”.")
    (problem,) = found("remains-missing", METHOD.replace(one.group(), "", 1))
    assert problem.span is not None and problem.span.line == line_of(METHOD, "  - hazard: blade-contact")


def test_the_same_words_for_every_hazard_are_reported() -> None:
    alike = "    remains: Low with all of these in place.\n"
    method = re.sub(r"(?m)^    remains: \|\n(?:      .*\n)+", alike, METHOD)
    (problem,) = found("remains-all-alike", method)
    assert problem.span is not None and problem.span.line == line_of(method, "hazards:")
