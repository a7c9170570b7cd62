"""The table of required sections and of cautions, as data."""

from __future__ import annotations

import re

import pytest
from pydantic import BaseModel, ValidationError

from generator.model.jobs import Job
from generator.model.method import Method
from generator.safety.book import shipped_rules
from generator.safety.cautions import cautions, cautions_for
from generator.safety.reasons import refused
from generator.safety.sections import (
    KNOWN_WORDS,
    SECTION,
    SectionRule,
    law_names,
    section_rule,
    section_rules,
    sections_for,
)

RULES = section_rules()

BELONG_TO_THE_JOB = (
    "document", "scope", "duty_holders", "information", "asbestos", "old_coatings", "services", "workplace",
    "welfare", "briefing",
)  # fmt: skip


def test_there_are_twenty_four_numbered_in_order() -> None:
    assert [rule.id for rule in RULES] == [f"S{number:02}" for number in range(1, 25)]


@pytest.mark.parametrize("key", BELONG_TO_THE_JOB)
def test_what_differs_from_place_to_place_belongs_to_the_job(key: str) -> None:
    rule = section_rule(key)
    assert rule is not None and rule.answered_by == "job"


@pytest.mark.parametrize(
    "key", ["duty_holders", "information", "people_at_risk", "competence", "fire_and_escape", "workplace"]
)
def test_some_sections_always_apply(key: str) -> None:
    rule = section_rule(key)
    assert rule is not None and not rule.may_not_apply


def test_the_statement_prints_every_section_and_the_guide_all_but_document_control() -> None:
    assert sections_for("statement") == RULES
    assert [rule.key for rule in RULES if rule not in sections_for("guide")] == ["document"]


@pytest.mark.parametrize("rule", [rule for rule in RULES if "guide" in rule.editions and rule.job], ids=str)
def test_a_guide_asks_what_only_a_job_can_answer(rule: SectionRule) -> None:
    assert rule.question.endswith(("?", "."))


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.id)
def test_each_section_names_its_sources_and_how_well_they_are_known(rule: SectionRule) -> None:
    assert all(source.known in KNOWN_WORDS for source in rule.sources)
    assert rule.source


@pytest.mark.parametrize(
    ("which", "part"),
    [("job", part) for rule in RULES for part in (*rule.job, *rule.to_build) if part != SECTION]
    + [("method", part) for rule in RULES for part in rule.method if part != SECTION],
)
def test_each_part_that_fills_a_section_is_a_part_of_the_file(which: str, part: str) -> None:
    kind: type[BaseModel] = Job if which == "job" else Method
    for name in part.split("."):
        assert name in kind.model_fields, f"{kind.__name__} has no {name}"
        kind = _inside(kind, name)


def _inside(kind: type[BaseModel], name: str) -> type[BaseModel]:
    waiting = [kind.model_fields[name].annotation]
    while waiting:
        each = waiting.pop()
        if isinstance(each, type) and issubclass(each, BaseModel):
            return each
        waiting.extend(getattr(each, "__args__", ()))
    return BaseModel


def test_nobody_can_answer_a_section_without_an_owner() -> None:
    with pytest.raises(ValidationError, match="nobody answers it"):
        SectionRule.model_validate({**RULES[6].model_dump(), "method": (), "job": ()})


def test_a_strange_key_in_our_own_table_is_refused() -> None:
    with pytest.raises(ValidationError, match="Extra inputs"):
        SectionRule.model_validate({**RULES[6].model_dump(), "colour": "red"})


# Corrections to law that a reader is shown: regulation 4(4) and the rest stand in the table by number only.
@pytest.mark.parametrize(
    ("key", "cite"),
    [
        ("structure", "CDM 2015 reg 20(2)"),
        ("hazards", "PUWER 1998 reg 12(2)(a)"),
        ("ppe", "PPER 1992 regs 4-11 as amended in 2022"),
        ("services", "CDM 2015 reg 25"),
        ("equipment", "PUWER 1998 reg 22 (maintenance with equipment shut down)"),
    ],
)
def test_the_right_provision_is_cited(key: str, cite: str) -> None:
    rule = section_rule(key)
    assert rule is not None and cite in {source.cite for source in rule.sources}


def test_every_short_name_of_a_law_is_given_in_full() -> None:
    cited = [rule.source for rule in RULES]
    cited += [source.cite.value for rule in shipped_rules() for source in rule.sources]
    shorts = {word for cite in cited for word in re.findall(r"\b([A-Z]{3,6}) (?:19|20)\d\d", cite)}
    assert shorts == set(law_names())


def test_the_workplace_regulations_are_not_cited_for_a_site() -> None:
    assert not [rule.id for rule in RULES if "Workplace" in rule.source or "WHSWR" in rule.source]


def test_every_document_defers_to_law_site_and_competent_persons() -> None:
    for edition in ("statement", "guide"):
        first = cautions_for(edition)[0]
        assert first.startswith("The law where the work is done, the rules of the site")


def test_no_caution_claims_that_the_law_has_been_met() -> None:
    claims = ("complies", "compliant", "approved", "guarantee", "is safe")
    assert not [each.key for each in cautions() if any(claim in each.text.casefold() for claim in claims)]


def test_refused_phrases_are_kept_in_plain_form() -> None:
    assert {"na", "none", "not required", "see ra", "as above"} <= refused().bare
    assert refused().least_words == 5
