"""`applies: no`: where it is allowed, and which reasons are refused."""

from __future__ import annotations

import pytest

from generator.safety.sections import SECTION, SectionRule, section_rules
from tests.safety.folder import JOB, METHOD, answered, found, line_of, problems, said

GOOD = "Begun in 2004 on open ground, evidence: the completion certificate in the site file."
NEW = JOB.replace("building_begun: 1998", "building_begun: 2004")


def lapse(because: str | None = GOOD, decided_by: str | None = "Marit Sallowfield, site supervisor") -> str:
    """An answer that the section does not apply."""
    lines = ["", "    applies: no"]
    lines += [f'    because: "{because}"'] if because is not None else []
    lines += [f'    decided_by: "{decided_by}"'] if decided_by is not None else []
    return "\n".join(lines)


def test_an_honest_reason_is_taken() -> None:
    assert found(job=answered(NEW, "asbestos", lapse())) == []


ALWAYS = [
    (which, rule)
    for rule in section_rules()
    for which in ("method", "job")
    if SECTION in rule.parts(which) and not rule.may_not_apply  # type: ignore[arg-type]
]


@pytest.mark.parametrize(("which", "rule"), ALWAYS, ids=[f"{which}-{rule.key}" for which, rule in ALWAYS])
def test_a_section_that_always_applies_cannot_be_put_aside(which: str, rule: SectionRule) -> None:
    text = answered(METHOD if which == "method" else JOB, rule.key, lapse())
    (problem,) = problems(text, JOB) if which == "method" else problems(METHOD, text)
    assert problem.code == "section-always-applies"
    assert problem.span is not None and problem.span.text == f"  {rule.key}:"
    assert text.splitlines()[problem.span.line] == "    applies: no"


@pytest.mark.parametrize(
    "because", ["n/a", "N/A.", "none", "None", "not required", "Not Required!", "see RA", "As above.", "TBC"]
)
def test_a_bare_reason_is_refused(because: str) -> None:
    job = answered(NEW, "asbestos", lapse(because))
    (report,) = found(job=job)
    assert (report.code, report.line) == ("reason-bare", line_of(job, "    because:"))


def test_a_bare_reason_is_answered_with_the_honest_ground() -> None:
    (problem,) = problems(job=answered(NEW, "asbestos", lapse("n/a")))
    assert said(problem) == (
        "“n/a” is no reason why “Asbestos” does not apply.\n"
        "A full sentence that names the fact. The only honest ground: Construction wholly started in 2000 or "
        "later, with the evidence named; or only new timber is worked and nothing existing is disturbed."
    )


@pytest.mark.parametrize("because", ["New building, no risk.", "Built in 2004", "Domestic"])
def test_a_reason_under_five_words_is_refused(because: str) -> None:
    (report,) = found(job=answered(NEW, "asbestos", lapse(because)))
    assert report.code == "reason-short"


def test_a_reason_of_five_words_is_taken() -> None:
    assert found(job=answered(NEW, "asbestos", lapse("Begun 2004, certificate on file."))) == []


def test_one_reason_does_not_serve_two_sections() -> None:
    job = answered(answered(NEW, "asbestos", lapse()), "old_coatings", lapse())
    reports = [report for report in found(job=job) if report.code == "section-copied"]
    first, second = [n for n, line in enumerate(job.splitlines(), 1) if line.startswith("    because:")]
    assert [report.line for report in reports] == [second]
    assert problems(job=job)[0].values["place"] == f"job.yaml:{first}"


def test_case_and_full_stops_do_not_make_a_copy_another_reason() -> None:
    job = answered(answered(NEW, "asbestos", lapse(GOOD)), "old_coatings", lapse(GOOD.upper().rstrip(".")))
    assert "section-copied" in {report.code for report in found(job=job)}


def test_a_person_must_have_decided() -> None:
    job = answered(NEW, "asbestos", lapse(decided_by=None))
    (report,) = found(job=job)
    assert (report.code, report.line) == ("decider-missing", line_of(job, "  asbestos:"))


@pytest.mark.parametrize("name", ["n/a", "None", "TBC"])
def test_nobody_is_not_a_person(name: str) -> None:
    (report,) = found(job=answered(NEW, "asbestos", lapse(decided_by=name)))
    assert report.code == "decider-bare"
