"""Each required section filled, by whoever must fill it."""

from __future__ import annotations

import re

import pytest

from generator.safety.sections import SECTION, SectionRule, section_rules
from tests.safety.folder import JOB, METHOD, Found, added, answered, found, line_of, problems, said, without

RULES = section_rules()
METHODS_OWN = [rule for rule in RULES if SECTION in rule.method]
JOBS_OWN = [rule for rule in RULES if SECTION in rule.job]


def test_the_demonstration_has_nothing_to_report() -> None:
    assert [said(problem) for problem in problems()] == []


def test_the_demonstrations_method_has_nothing_to_report_without_a_job() -> None:
    assert [said(problem) for problem in problems(job=None)] == []


@pytest.mark.parametrize("rule", METHODS_OWN, ids=lambda rule: rule.key)
def test_a_section_taken_out_of_the_method_is_missed_at_its_sections(rule: SectionRule) -> None:
    method = without(METHOD, rule.key)
    (problem,) = problems(method)
    assert problem.code in ("section-missing", "section-missing-or-not-applicable")
    assert problem.values["id"] == rule.id
    assert problem.span is not None
    assert (problem.span.file, problem.span.line) == ("method.yaml", line_of(method, "sections:"))


@pytest.mark.parametrize("rule", JOBS_OWN, ids=lambda rule: rule.key)
def test_a_section_taken_out_of_the_job_is_missed_at_its_sections(rule: SectionRule) -> None:
    job = without(JOB, rule.key)
    (problem,) = problems(job=job)
    assert problem.code in ("section-missing", "section-missing-or-not-applicable")
    assert problem.values["id"] == rule.id
    assert problem.span is not None
    assert (problem.span.file, problem.span.line) == ("job.yaml", line_of(job, "sections:"))


def test_without_any_sections_each_is_missed_at_the_head_of_the_file() -> None:
    job = JOB.partition("\nsections:\n")[0] + "\n"
    missed = [each for each in problems(job=job) if each.code.startswith("section-missing")]
    assert [each.values["id"] for each in missed] == [rule.id for rule in JOBS_OWN]
    assert {each.span.line for each in missed if each.span} == {1}


def test_what_a_missing_section_asks_is_said() -> None:
    (problem,) = problems(without(METHOD, "ppe"))
    assert said(problem) == (
        "Section S20, “Protective equipment”, is not answered.\n"
        "Write “ppe: |” under “sections:” and the answer below it. It asks: Each item with its class, for "
        "which step, who supplies it, face-fit, worn together without clash, and why a stronger control was "
        "not enough."
    )


def test_the_honest_ground_is_said_where_there_is_one() -> None:
    (problem,) = problems(job=without(JOB, "services"))
    assert said(problem).endswith(
        "Write “applies: no” with “because:” and “decided_by:” only on this ground: Battery tools only, "
        "and nothing existing is fixed into, cut or lifted."
    )


@pytest.mark.parametrize(
    "key", ["asbestos", "services", "welfare", "duty_holders", "information", "workplace", "permits"]
)
def test_a_method_may_not_answer_for_a_place(key: str) -> None:
    method = added(METHOD, key, ' "The building is known to us and this has been looked into."')
    (report,) = found(method)
    assert report.code in ("section-is-the-jobs", "section-filled-elsewhere")
    assert report.line == line_of(method, f"  {key}:")


def test_a_job_may_not_answer_for_the_method() -> None:
    job = added(JOB, "substances", ' "Glue and filler as in every other job of ours."')
    (problem,) = problems(job=job)
    assert said(problem) == (
        "“Materials and substances” belongs to the method, so a job may not answer it.\n"
        "Take it out here and answer it in the method that this job applies."
    )


def test_a_section_filled_from_the_file_itself_is_not_written_again() -> None:
    job = added(JOB, "scope", ' "Four openings on the ground floor of the reading room."')
    (problem,) = problems(job=job)
    assert problem.code == "section-filled-elsewhere"


def test_an_unknown_section_is_named_with_the_nearest() -> None:
    job = added(JOB, "wellfare", ' "Toilet and hot water in the building, agreed with the Trust."')
    (problem,) = problems(job=job)
    assert problem.code == "section-unknown"
    assert said(problem).endswith("Did you mean “welfare”?")


# A part of the job, the line that goes, and the line the report stands on.
PARTS = [
    ("document.review_by", "  review_by: 2027-05-14\n", "document:"),
    ("document.issued", "  issued: 2026-11-16\n", "document:"),
    (
        "document.approved",
        "  approved: {by: Josse Hethersedge, role: director, date: 2026-11-16}\n",
        "document:",
    ),
    ("site.address", '  address: "3 Mill Lane, Ottermere"\n', "site:"),
    ("site.nation", "  nation: England\n", "site:"),
    ("emergency.shut_off", None, "emergency:"),
    ("emergency.hurt", None, "emergency:"),
]


@pytest.mark.parametrize(("part", "line", "stands"), PARTS, ids=[part for part, *_ in PARTS])
def test_a_part_of_the_job_that_a_section_needs_is_missed(part: str, line: str | None, stands: str) -> None:
    key = part.partition(".")[2]
    taken = line or re.search(rf"(?m)^  {key}: .*\n", JOB).group()  # type: ignore[union-attr]
    assert JOB.count(taken) == 1
    job = JOB.replace(taken, "")
    (problem,) = problems(job=job)
    assert (problem.code, problem.values["part"]) == ("part-missing", part)
    assert problem.span is not None and problem.span.line == line_of(job, stands)


def test_a_draft_needs_no_approval_yet() -> None:
    job = JOB.replace("status: for construction", "status: draft")
    for line in re.findall(r"(?m)^  (?:issued|checked|approved): .*\n", job):
        job = job.replace(line, "")
    assert found(job=job) == []


def test_someone_must_be_able_to_release_hold_points() -> None:
    (report,) = found(job=JOB.replace("holds: yes, ", ""))
    assert report == Found(code="part-missing", file="job.yaml", line=line_of(JOB, "people:"), text="people:")


def test_a_method_without_hold_points_is_told_so() -> None:
    method = re.sub(r"(?m)^    hold:\n(?:      .*\n)+", "", METHOD)
    (problem,) = problems(method)
    assert problem.values["part"] == "steps.hold"


@pytest.mark.parametrize(
    "text", ['"n/a"', '"None."', '"As above"', '"TBC"', '"See RA"', '"Four words are few."']
)
def test_an_answer_that_says_nothing_is_refused(text: str) -> None:
    job = answered(JOB, "workplace", f" {text}")
    (report,) = found(job=job)
    assert (report.code, report.line) == ("section-bare", line_of(job, "  workplace:"))


def test_an_answer_copied_from_another_section_is_refused() -> None:
    told = ' "Everything is as the construction phase plan sets out."'
    job = answered(answered(JOB, "workplace", told), "briefing", told)
    (problem,) = problems(job=job)
    assert problem.code == "section-copied"
    assert problem.values["place"] == f"job.yaml:{line_of(job, '  workplace:')}"
    assert problem.span is not None and problem.span.line == line_of(job, "  briefing:")
