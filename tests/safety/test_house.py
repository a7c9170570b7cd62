"""House rules: rules, sections and words added, made stricter, or set aside with a reason that is printed."""

from __future__ import annotations

from generator.problems import Problem, Severity
from generator.safety.required import check_safety, rules_applied
from tests.safety.folder import JOB, METHOD, answered, line_of, problems, project, read_job, read_method, said

RULE = """\
format: 1
rules:
  - rule: H1
    title: Combination square
    when: {tools: [combination-square]}
    hazard: "A square that was dropped reads wrong, and the work with it."
    needs:
      - administer: "Square tried both ways on a board before the first mark."
        words: [square + tried]
    level: must
    sources: [{cite: Workshop sheet WS-9, known: house}]
"""
SECTION = """\
format: 1
sections:
  parking:
    title: Parking
    asks: Where vans stand and who may use the yard.
    answered_by: job
"""
ASIDE = (
    'format: 1\nset_aside:\n  R78: "The principal contractor\'s own form covers it and is signed daily."\n'
)


def found(house: str, method: str = METHOD, job: str | None = JOB) -> list[Problem]:
    return problems(method, job, house=house, check=check_safety)


def test_a_rule_of_the_house_is_asked_like_one_of_the_book() -> None:
    (problem,) = found(RULE)
    assert problem.values["rule"] == "H1" and problem.severity is Severity.ERROR
    assert problem.span is not None and problem.span.text.strip().startswith("uses: [")
    kept = METHOD.replace(
        '    controls:\n      - engineer: "One hop-up',
        '    controls:\n      - administer: "Square tried on a board."\n        who: the person at the head\n'
        '      - engineer: "One hop-up',
    )
    assert found(RULE, kept) == []


def test_a_section_of_the_house_is_required_and_numbered() -> None:
    (problem,) = found(SECTION)
    assert (problem.code, problem.values["id"]) == ("section-missing", "H01")
    job = JOB.replace(
        "\nsections:\n", '\nsections:\n  parking: "Vans stand in the kitchen yard, two at most."\n'
    )
    assert found(SECTION, job=job) == []


def test_a_rule_made_stricter_is_an_error() -> None:
    job = answered(
        JOB, "information", ' "The plan and the survey came on 2 November, other trades have gone."'
    )
    job = answered(job, "briefing", ' "Marit Sallowfield briefs everyone at eight each day on the revision."')
    job = answered(
        job, "welfare", ' "Toilet and hot water; accidents go in the book, Josse Hethersedge reports."'
    )
    (usual,) = [each for each in found("format: 1\n", job=job) if each.values.get("rule") == "R78"]
    (strict,) = [
        each for each in found("format: 1\nstricter: [R78]\n", job=job) if each.values.get("rule") == "R78"
    ]
    assert (usual.severity, strict.severity) == (Severity.WARNING, Severity.ERROR)


def test_a_rule_set_aside_is_not_asked_and_is_printed_with_its_reason() -> None:
    aside = ASIDE.replace("R78", "R02")
    method = METHOD.replace("Self-closing guard seen to close, work clamped", "Work clamped")
    assert [each.values["rule"] for each in found("format: 1\n", method)] == ["R02"]
    assert found(aside, method) == []
    (rule,) = [
        each
        for each in rules_applied(read_method(method), read_job(JOB), project(aside))
        if each.set_aside is not None
    ]
    assert (rule.number, rule.level, rule.steps) == ("R02", "must", (1, 5, 8, 9))
    assert rule.set_aside == "The principal contractor's own form covers it and is signed daily."


def test_a_bare_reason_sets_nothing_aside_quietly() -> None:
    house = "format: 1\nset_aside:\n  R02: Not required.\n"
    (problem,) = found(house)
    assert problem.code == "set-aside-bare"
    assert problem.span is not None and problem.span.line == line_of(house, "  R02:")


def test_unknown_numbers_are_reported_with_the_nearest() -> None:
    reports = found(
        'format: 1\nstricter: [R078]\nset_aside:\n  R999: "A whole sentence that names a fact."\n'
    )
    assert [each.code for each in reports] == ["rule-unknown", "rule-unknown"]
    assert said(reports[0]).endswith("Did you mean “R78”?")


def test_a_rule_that_nothing_can_set_off_is_reported() -> None:
    house = RULE.replace("[combination-square]", "[combination-sqare]").replace("square + tried", "square +")
    codes = {each.code: each for each in found(house)}
    assert set(codes) == {"rule-name-unknown", "phrase-empty"}
    assert said(codes["rule-name-unknown"]).endswith("Did you mean “combination-square”?")


def test_a_number_of_the_book_may_not_be_used_again() -> None:
    (problem,) = found(RULE.replace("rule: H1", "rule: R02"))
    assert problem.code == "rule-doubled"


def test_a_section_of_the_book_may_not_be_written_over() -> None:
    (problem,) = found(SECTION.replace("parking:", "waste:"))
    assert problem.code == "house-section-taken"


def test_a_rule_that_names_no_section_is_reported() -> None:
    reports = found(RULE + "    sections: [wastes]\n")
    (problem,) = [each for each in reports if each.code == "rule-section-unknown"]
    assert said(problem).endswith("Did you mean “waste”?")
