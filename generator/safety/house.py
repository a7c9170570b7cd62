"""House rules held against the book: numbers, reasons, and names of tools, materials and sections."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from generator.model.catalogue import Catalogue, Tool
from generator.model.house import HouseRules
from generator.model.rules import Rule, When
from generator.model.scalars import Word
from generator.problems import ProblemLog, Span, nearest
from generator.safety.book import shipped_rules
from generator.safety.likeness import all_material_words, all_tool_words
from generator.safety.needs import PLACES, TOOLS_NAME
from generator.safety.phrases import phrase
from generator.safety.reasons import says_nothing
from generator.safety.sections import section_rules, sections_in_force

NEEDS_A_RULE = ("machine", "power tool", "access", "lifting")


def check_house(house: HouseRules, catalogue: Catalogue, log: ProblemLog) -> None:
    """Report rules of the house that nothing can set off, and what it sets aside without reason."""
    _check_numbers(house, log)
    _check_aside(house, log)
    for section in house.sections.values():
        if section.name.value in {rule.key for rule in section_rules()}:
            log.add("house-section-taken", section.span, key=section.name.value)
    for rule in house.rules:
        check_rule(rule, house, catalogue, log)
    _check_tools(house, catalogue, log)


def _check_numbers(house: HouseRules, log: ProblemLog) -> None:
    first = {rule.rule.value: rule.rule.span for rule in shipped_rules()}
    for rule in house.rules:
        number = rule.rule
        if number.value in first:
            where = first[number.value]
            log.add("rule-doubled", number.span, rule=number.value, place=f"{where.file}:{where.line}")
        first.setdefault(number.value, number.span)


def _check_aside(house: HouseRules, log: ProblemLog) -> None:
    numbers = {rule.rule.value for rule in (*shipped_rules(), *house.rules)}
    named = [(number, house.set_aside.place(number)) for number in house.set_aside]
    for number, span in (*named, *((word.value, word.span) for word in house.stricter)):
        if number not in numbers:
            log.add("rule-unknown", span, rule=number, nearest=nearest(number, numbers))
    for number, reason in house.set_aside.items():
        if says_nothing(reason):
            log.add("set-aside-bare", reason.span, rule=number, reason=reason.typed)


def check_rule(rule: Rule, house: HouseRules, catalogue: Catalogue, log: ProblemLog) -> None:
    """Report names in a rule that nothing answers to, and phrases that are found anywhere."""
    for when in rule.when:
        _check_when(when, catalogue, log)
    _check_places(rule, house, log)
    for word in _phrases(rule):
        if word.value != TOOLS_NAME and not phrase(word.value).whole:
            log.add("phrase-empty", word.span, phrase=word.value)


def _check_when(when: When, catalogue: Catalogue, log: ProblemLog) -> None:
    for words, known in (
        (when.tools, all_tool_words(catalogue)),
        (when.materials, all_material_words(catalogue)),
        (when.activities, catalogue.activity_keys),
        (when.where, catalogue.place_keys),
        (when.people, catalogue.person_keys),
    ):
        for word in words:
            if word.value not in known:
                log.add("rule-name-unknown", word.span, name=word.value, nearest=nearest(word.value, known))


def _check_places(rule: Rule, house: HouseRules, log: ProblemLog) -> None:
    sections = {section.key for section in sections_in_force(house)}
    _check_known(rule.sections, sections, log)
    _check_known((place for need in rule.needs for place in need.in_), sections | PLACES.keys(), log)
    said = (Word(value=key, span=rule.never_say.place(key)) for key in rule.never_say)
    _check_known(said, sections, log)


def _check_known(words: Iterable[Word], known: Iterable[str], log: ProblemLog) -> None:
    names = sorted(known)
    for word in words:
        if word.value not in names:
            near = nearest(word.value, names)
            log.add("rule-section-unknown", word.span, key=word.value, known=", ".join(names), nearest=near)


def _phrases(rule: Rule) -> Iterator[Word]:
    yield from (word for need in rule.needs for word in need.words)
    yield from (word for words in rule.never_say.values() for word in words)


def _check_tools(house: HouseRules, catalogue: Catalogue, log: ProblemLog) -> None:
    """A machine that no rule names would be taken for harmless."""
    named = {
        word.value
        for rule in (*shipped_rules(), *house.rules)
        for when in rule.when
        for word in (*when.tools,)
    }
    for tool in catalogue.tools.values():
        if not _is_ruled(tool, named):
            log.add("tool-without-rule", _place(tool), tool=tool.name.value, kind=tool.kind.value)


def _is_ruled(tool: Tool, named: set[str]) -> bool:
    own = {tool.name.value, *(word.value for word in tool.counts_as)}
    general = {"access", "lifting"} & {tool.kind.value}
    return tool.kind.value not in NEEDS_A_RULE or bool((own | general) & named)


def _place(tool: Tool) -> Span:
    return tool.name.span
