"""Each rule of the book: what sets it off, keeps it quiet and satisfies it, and each need missed alone."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest

from generator.model.rules import Need, Rule
from generator.model.shipped import shipped_catalogue
from generator.problems import Problem, ProblemLog, Severity
from generator.safety.book import shipped_rules
from generator.safety.house import check_house, check_rule
from generator.safety.phrases import one_line
from generator.safety.required import check_rules
from generator.safety.sections import KNOWN_WORDS, law_names, section_rule
from tests.safety.folder import METHOD, problems, project, said
from tests.safety.least import CASES, Least, with_needs

RULES: Mapping[str, Rule] = {rule.rule.value: rule for rule in shipped_rules()}
STANDS = {
    "uses": "  uses:", "listed": "- ", "materials": "  materials:", "activities": "  activities:",
    "where": "  where:", "do": "  do:",
}  # fmt: skip


def cases(which: str) -> list[Any]:
    return [
        pytest.param(RULES[number], each, id=f"{number}-{each}")
        for number, case in CASES.items()
        for each in case.get(which, ())
    ]


def of_rule(rule: Rule, problems: list[Problem]) -> list[Problem]:
    return [problem for problem in problems if problem.values.get("rule") == rule.rule.value]


def test_every_rule_has_a_case_and_every_case_a_rule() -> None:
    assert len(RULES) == len(shipped_rules()) >= 80
    assert set(CASES) == set(RULES)


def test_every_rule_but_those_that_always_apply_is_kept_quiet_by_something() -> None:
    always = {number for number, rule in RULES.items() if any(when.always for when in rule.when)}
    assert {number for number, case in CASES.items() if "quiet" not in case} == always


def test_the_first_eighty_are_numbered_in_order() -> None:
    assert {f"R{number:02}" for number in range(1, 81)} <= set(RULES)


@pytest.mark.parametrize(("rule", "case"), cases("fires"))
def test_a_rule_is_set_off_and_its_needs_are_missed_where_it_was(rule: Rule, case: Mapping[str, Any]) -> None:
    least = Least(case=case)
    assert rule.rule.value in {each.number for each in least.applied()}
    missed = of_rule(rule, least.problems())
    asked = {one_line(need.text.typed) for need in rule.needs}
    assert {problem.values["offer"] for problem in missed} == asked
    for problem in missed:
        assert problem.span is not None
        assert (problem.severity is Severity.ERROR) == (rule.level.value == "must")
        assert problem.span.text.startswith(expected_start(case, problem)), problem.span.text


def expected_start(case: Mapping[str, Any], problem: Problem) -> tuple[str, ...]:
    """How the line may begin on which the rule is reported."""
    if "exposures" in case:
        return ("format: 1",)
    if "people" in case:
        return ("  - ",)
    if not case:
        return ("sections:", "people:", *(f"  {key}:" for key in ("welfare", "handling", "competence")),
                "  people_at_risk:", "  workplace:", "  information:", "  waste:", "site:")  # fmt: skip
    if set(case) == {"begun"}:
        return ("  building_begun:", "site:")
    if "place" in case and not set(case) - {"place", "begun"}:
        return ("  - ",)
    return ("  - ", "    - ", "- ")


@pytest.mark.parametrize(("rule", "case"), cases("quiet"))
def test_a_rule_is_kept_quiet(rule: Rule, case: Mapping[str, Any]) -> None:
    least = Least(case=case)
    assert rule.rule.value not in {each.number for each in least.applied()}
    assert of_rule(rule, least.problems()) == []


@pytest.mark.parametrize(("rule", "case"), cases("fires"))
def test_what_a_rule_offers_satisfies_it(rule: Rule, case: Mapping[str, Any]) -> None:
    kept = with_needs(case, rule, rule.needs)
    assert [said(problem) for problem in of_rule(rule, kept.problems())] == []


NEEDS = [
    pytest.param(RULES[number], need, id=f"{number}-{need.form}-{index}")
    for number in CASES
    for index, need in enumerate(RULES[number].needs)
]


@pytest.mark.parametrize(("rule", "need"), NEEDS)
def test_each_need_is_missed_by_itself(rule: Rule, need: Need) -> None:
    case = CASES[rule.rule.value]["fires"][0]
    others = [each for each in rule.needs if each is not need]
    missed = of_rule(rule, with_needs(case, rule, others).problems())
    assert [problem.values["offer"] for problem in missed] == [one_line(need.text.typed)]


MANDATORY = [
    pytest.param(rule, key.value, id=f"{number}-{key}")
    for number, rule in RULES.items()
    for key in rule.sections
    if (section := section_rule(key.value)) and section.may_not_apply
]


@pytest.mark.parametrize(("rule", "section"), MANDATORY)
def test_a_section_that_a_rule_makes_mandatory_may_not_be_said_not_to_apply(rule: Rule, section: str) -> None:
    case = CASES[rule.rule.value]["fires"][0]
    found = Least(case=case, not_applicable=section).problems()
    against = [each for each in found if each.code.startswith("contradicted")]
    assert {section_rule(section).title} <= {each.values["title"] for each in against}  # type: ignore[union-attr]
    assert all(each.span and each.span.text.strip().startswith("because:") for each in against)


SAYINGS = [
    pytest.param(rule, key, word.value, id=f"{number}-{word}")
    for number, rule in RULES.items()
    for key, words in rule.never_say.items()
    for word in words
]


@pytest.mark.parametrize(("rule", "section", "words"), SAYINGS)
def test_what_a_rule_forbids_to_say_is_reported(rule: Rule, section: str, words: str) -> None:
    case = CASES[rule.rule.value]["fires"][0]
    told = f"There is {words} in this work."
    found = Least(case=case, said={section: [told]}).problems()
    (problem,) = [each for each in found if each.code.startswith("claim-contradicted")]
    assert problem.values["words"].startswith(words)


def test_the_book_names_only_what_there_is() -> None:
    log, holder = ProblemLog(), project()
    for rule in shipped_rules():
        check_rule(rule, holder.house, holder.catalogue, log)
    check_house(holder.house, holder.catalogue, log)
    assert [said(problem) for problem in log] == []


@pytest.mark.parametrize("rule", RULES.values(), ids=lambda rule: rule.rule.value)
def test_a_rule_names_its_sources_and_how_well_they_are_known(rule: Rule) -> None:
    for source in rule.sources:
        assert source.known.value in KNOWN_WORDS
        (short, *_) = source.cite.value.replace(",", " ").split()
        assert short in law_names() or not short.isupper() or short in ("HSE", "BS", "UK")
    assert rule.hazard.typed.endswith(".")
    assert rule.needs or rule.sections or rule.never_say


# Corrections of published accounts of the law: what a rule must not say.
@pytest.mark.parametrize(
    ("number", "cited", "wrong"),
    [
        ("R55", "CDM 2015 reg 17", "Workplace"),
        ("R68", "CDM 2015 regs 17-18", "Workplace"),
        ("R76", "CDM 2015 reg 20(2)", "regs 19-20"),
        ("R49", "CDM 2015 reg 25", "zones prove"),
        ("R20", "PUWER 1998 reg 22", "reg 7"),
        ("R37", "0.1 % by weight or more", "more than 0.1"),
        ("R58", "within the last 7 days where a fall of 2 m or more", "every seven days"),
        ("R56", "besides either short use or", "low risk or"),
        ("R64", "may ask for protectors", "90"),
        ("R42", "450 °C", "500 °C"),
        ("R29", "3 mg/m³", "2 mg/m³"),
        ("R80", "more than seven consecutive days", "three days"),
    ],
)
def test_a_rule_holds_the_law_as_it_was_read(number: str, cited: str, wrong: str) -> None:
    rule = RULES[number]
    texts = [rule.hazard, rule.note, *(need.text for need in rule.needs)]
    whole = " ".join([*(text.typed for text in texts if text), *(each.cite.value for each in rule.sources)])
    assert cited in whole
    assert wrong not in whole


def test_no_blood_lead_figure_is_printed() -> None:
    assert "µg" not in " ".join(need.text.typed for rule in RULES.values() for need in rule.needs)


def test_every_powered_shipped_tool_is_named_by_a_rule() -> None:
    named = {word.value for rule in RULES.values() for when in rule.when for word in when.tools}
    powered = [
        tool.name.value
        for tool in shipped_catalogue().tools.values()
        if tool.kind.value in ("machine", "power tool")
    ]
    assert powered and set(powered) <= named


def test_a_step_that_names_no_hazard_for_what_it_sets_off_is_reported_at_its_cause() -> None:
    method = METHOD.replace("[blade-contact, wood-dust, noise, lifting", "[blade-contact, noise, lifting", 1)
    (problem,) = problems(method, check=check_rules)
    assert problem.severity is Severity.ERROR
    assert problem.span is not None
    assert problem.span.line == method[: method.index("Mark and cut the legs")].count("\n") + 9
    assert said(problem) == (
        "Rule R29, “Hardwood or mixed dust”, applies, and step 9 names no hazard that deals with it.\n"
        "Add one of these to the hazards of the step: wood-dust."
    )
