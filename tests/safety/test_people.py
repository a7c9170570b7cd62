"""People of a job: names with a part and a number."""

from __future__ import annotations

from generator.problems import Problem, Severity
from generator.safety.required import check_rules
from tests.safety.folder import JOB, METHOD, line_of, problems, said

CODES = ("person-not-listed", "name-not-listed", "person-nameless", "person-unreachable")


def found(job: str) -> list[Problem]:
    return [each for each in problems(METHOD, job, check=check_rules) if each.code in CODES]


def test_everyone_named_in_the_demonstration_has_a_line() -> None:
    assert found(JOB) == []


def test_a_name_in_a_section_without_a_line_is_reported() -> None:
    job = JOB.replace("Certificates are in the", "Harl Quenby keeps the certificates in the")
    (problem,) = found(job)
    assert (problem.code, problem.severity) == ("name-not-listed", Severity.WARNING)
    assert said(problem) == (
        "“Harl Quenby” reads like a person's name, and nobody under “people:” is called so.\n"
        "Add a line with part and number there; or write {= Harl Quenby} where it names no person."
    )


def test_a_name_that_is_no_person_is_written_as_meant() -> None:
    assert found(JOB.replace("Certificates are in the", "{= Harl Quenby} holds the")) == []


def test_whoever_signs_or_stands_in_has_a_line() -> None:
    job = JOB.replace("deputy: Josse Hethersedge", "deputy: Wim Tarlow")
    (problem,) = found(job)
    assert (problem.code, problem.values["name"]) == ("person-not-listed", "Wim Tarlow")
    assert problem.span is not None and problem.span.line == line_of(JOB, "  - {part: supervisor")


def test_a_first_aider_has_a_name_and_a_number() -> None:
    job = JOB.replace(', phone: "07700 900281"', "")
    (problem,) = [each for each in found(job) if each.code == "person-unreachable"]
    assert problem.values["part"] == "first-aider on site"
    job = JOB.replace("part: first-aider on site, name: Owen Tacebury,", "part: first-aider on site,")
    assert "person-nameless" in {each.code for each in found(job)}
