"""The rulebook and the required sections in force, told to a person or to a program."""

from __future__ import annotations

import json
import textwrap
from collections.abc import Iterable, Iterator

from generator.model.house import HouseRules
from generator.model.rules import SAY, Need, When
from generator.safety.book import InForce, rules_in_force
from generator.safety.phrases import one_line
from generator.safety.sections import KNOWN_WORDS, SectionRule, sections_in_force
from generator.safety.sent_back import reasons_sent_back
from generator.safety.sources import source_groups

WIDTH = 100
MARGIN = " " * 5


def book_as_text(house: HouseRules) -> str:
    """Every rule, then every section, then what a statement is commonly sent back for."""
    parts = [
        *(_block(f"{rule.number}  {rule.title}", _rule_lines(rule)) for rule in rules_in_force(house)),
        *(_block(f"{rule.id}  {rule.title}", _section_lines(rule)) for rule in sections_in_force(house)),
        _block("Commonly sent back for", _sent_back_lines()),
        _block("Sources read, each only so far as its own line says", _group_lines()),
    ]
    return "\n\n".join(parts) + "\n"


def _block(head: str, lines: Iterable[str]) -> str:
    wrapped = (
        textwrap.fill(
            line, WIDTH, initial_indent=MARGIN, subsequent_indent=f"{MARGIN}  ", break_on_hyphens=False
        )
        for line in lines
    )
    return "\n".join([head, *wrapped])


def _rule_lines(rule: InForce) -> Iterator[str]:
    yield f"{rule.level}{', a rule of the house' if rule.of_house else ''}"
    if rule.aside:
        yield f"set aside: {one_line(rule.aside.typed)}"
    yield f"applies: {'; or '.join(_when(when) for when in rule.rule.when)}"
    yield f"hazard: {one_line(rule.rule.hazard.typed)}"
    yield from (_need(need) for need in rule.rule.needs)
    if rule.rule.sections:
        yield f"mandatory: {', '.join(key.value for key in rule.rule.sections)}"
    for section, phrases in rule.rule.never_say.items():
        yield f"{section} may not say: {'; '.join(word.value for word in phrases)}"
    if rule.rule.note:
        yield f"note: {one_line(rule.rule.note.typed)}"
    for source in rule.rule.sources:
        nations = f", {' and '.join(each.value for each in source.nations)}" if source.nations else ""
        yield f"source: {source.cite}{nations} ({KNOWN_WORDS[source.known.value]})"


def _when(when: When) -> str:
    named = (
        f"{key.replace('_', ' ')} {', '.join(map(str, value)) if isinstance(value, tuple) else value}"
        for key in type(when).keys()  # noqa: SIM118
        if key != "always" and (value := getattr(when, key))
    )
    return " with ".join(named) or "always"


def _need(need: Need) -> str:
    places = ", ".join(place.value for place in need.in_)
    form = f"{need.form} in {places}" if need.form == SAY else need.form
    return f"{form}: {one_line(need.text.typed)} [{'; '.join(word.value for word in need.words)}]"


def _section_lines(rule: SectionRule) -> Iterator[str]:
    yield f"answered by: {rule.answered_by}"
    yield f"asks: {rule.asks}"
    yield f"does not apply only where: {rule.not_applicable}" if rule.not_applicable else "always applies"
    for source in rule.sources:
        yield f"source: {source.cite} ({KNOWN_WORDS[source.known]})"


def _sent_back_lines() -> Iterator[str]:
    for number, each in enumerate(reasons_sent_back(), 1):
        yield f"{number}. {each.reason} Reported by: {', '.join((*each.rules, *each.faults))}."


def _group_lines() -> Iterator[str]:
    for each in source_groups():
        yield f"{each.group}: read {each.read}, to be read again by {each.review_by}"


def book_as_json(house: HouseRules) -> str:
    """The same as data."""
    book = {
        "rules": [_rule_data(rule) for rule in rules_in_force(house)],
        "sections": [rule.model_dump(mode="json") for rule in sections_in_force(house)],
        "sources_read": [each.model_dump(mode="json") for each in source_groups()],
        "sent_back": [each.model_dump(mode="json") for each in reasons_sent_back()],
    }
    return json.dumps(book, indent=1, ensure_ascii=False) + "\n"


def _rule_data(rule: InForce) -> dict[str, object]:
    return {
        "rule": rule.number,
        "title": rule.title,
        "level": rule.level,
        "of_house": rule.of_house,
        "set_aside": one_line(rule.aside.typed) if rule.aside else None,
        "applies": [_when(when) for when in rule.rule.when],
        "hazard": one_line(rule.rule.hazard.typed),
        "needs": [_need_data(need) for need in rule.rule.needs],
        "sections": [key.value for key in rule.rule.sections],
        "sources": [
            {"cite": each.cite.value, "known": each.known.value, "nations": [n.value for n in each.nations]}
            for each in rule.rule.sources
        ],
    }


def _need_data(need: Need) -> dict[str, object]:
    return {
        "form": need.form,
        "text": one_line(need.text.typed),
        "words": [word.value for word in need.words],
        "in": [place.value for place in need.in_],
    }
