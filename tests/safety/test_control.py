"""Document control: a basis is named by revision or date, and the approver is not the author."""

from __future__ import annotations

import pytest

from generator.problems import Problem, Severity
from generator.safety.required import check_rules, check_sections
from tests.safety.folder import JOB, METHOD, line_of, problems, said

CODES = ("basis-without-revision", "approver-is-author")
BASIS = "Drawing ORR-214, revision C, ground-floor doors"


def found(job: str) -> list[Problem]:
    return [each for each in problems(METHOD, job, check=check_rules) if each.code in CODES]


def test_the_demonstration_names_its_basis_and_its_approver() -> None:
    assert BASIS in JOB
    assert found(JOB) == []


@pytest.mark.parametrize(
    ("basis", "word"),
    [
        ("Drawing ORR-214, latest revision", "latest"),
        ("Current drawing of the ground-floor doors", "Current"),
        ("Drawing ORR-214 in its newest issue", "newest"),
        ("Services plan, most recent", "most recent"),
        ("Up-to-date asbestos register", "Up-to-date"),
    ],
)
def test_a_basis_that_moves_is_refused_at_its_line(basis: str, word: str) -> None:
    (problem,) = found(JOB.replace(BASIS, basis))
    assert problem.code == "basis-without-revision"
    assert problem.severity is Severity.ERROR
    assert problem.span is not None
    assert (problem.span.line, problem.span.column) == (line_of(JOB, '    - "Drawing ORR-214'), 7)
    assert said(problem) == (
        f"“{word}” names no revision: what it means changes after this is signed.\n"
        "The revision or the date of the document, such as “Drawing A-101, revision C”."
    )


@pytest.mark.parametrize(
    "basis", ["Drawing ORR-214, current revision C", "Current services plan, read 4 September 2026"]
)
def test_a_basis_with_its_revision_or_date_stands(basis: str) -> None:
    assert found(JOB.replace(BASIS, basis)) == []


def test_an_approver_who_is_the_author_is_warned_of() -> None:
    (problem,) = found(JOB.replace("written: {by: Colm Drayley", "written: {by: Josse Hethersedge"))
    assert (problem.code, problem.severity) == ("approver-is-author", Severity.WARNING)
    assert problem.span is not None
    line = "  approved: {by: Josse Hethersedge"
    assert (problem.span.line, problem.span.column) == (line_of(JOB, line), line.index("Josse") + 1)
    assert said(problem).startswith("Josse Hethersedge wrote this and approves it too.")


@pytest.mark.parametrize(("part", "line"), [("review_by", "  review_by: 2027-05-14\n"), ("distribution", "")])
def test_a_statement_has_a_review_date_and_holders_of_copies(part: str, line: str) -> None:
    start = JOB.index("  distribution:")
    listed = line or JOB[start : JOB.index("\nsite:", start)]
    job = JOB.replace(listed, "")
    missing = [each for each in problems(METHOD, job, check=check_sections) if each.code == "part-missing"]
    (problem,) = missing
    assert problem.values["part"] == f"document.{part}"
    assert problem.severity is Severity.ERROR
    assert problem.span is not None and problem.span.line == line_of(JOB, "document:")
