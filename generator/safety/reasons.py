"""Whether what is written in a section says anything: neither bare, nor short, nor copied."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator
from functools import cache

from pydantic import BaseModel, ConfigDict, Field

from generator.model.prose import Prose
from generator.model.sections import SectionAnswer
from generator.problems import ProblemLog
from generator.safety.sections import SectionRule, section_rule
from generator.safety.subject import Subject
from generator.safety.tables import table


class Refused(BaseModel):
    """The phrases that give no reason, and how few words are too few."""

    model_config = ConfigDict(frozen=True, extra="forbid")
    least_words: int = Field(gt=0)
    bare: frozenset[str]


@cache
def refused() -> Refused:
    """What is refused; compared in the plain form of `plain`."""
    read = Refused.model_validate(table("reasons"))
    return read.model_copy(update={"bare": frozenset(plain(phrase) for phrase in read.bare)})


def plain(text: str) -> str:
    """Text without case, punctuation and spare space, for comparing."""
    return " ".join(re.sub(r"[^\w\s]", "", text.casefold()).split())


def check_answer(rule: SectionRule, answer: SectionAnswer, log: ProblemLog) -> None:
    """Report an answer that says nothing, or that claims not to apply without honest ground."""
    if answer.text is not None:
        _check_text(rule, answer.text, log)
    elif answer.applies:
        return
    elif not rule.may_not_apply:
        log.add("section-always-applies", answer.span, title=rule.title, asks=rule.asks)
    else:
        _check_reason(rule, answer.because, log)
        _check_decider(rule, answer, log)


def _check_text(rule: SectionRule, text: Prose, log: ProblemLog) -> None:
    if says_nothing(text):
        log.add("section-bare", text.span, title=rule.title, text=text.typed, asks=rule.asks)


def _check_reason(rule: SectionRule, reason: Prose | None, log: ProblemLog) -> None:
    if reason is None:
        return
    if plain(reason.typed) in refused().bare:
        log.add("reason-bare", reason.span, title=rule.title, reason=reason.typed, honest=rule.honest)
    elif too_short(reason):
        least = refused().least_words
        log.add("reason-short", reason.span, title=rule.title, least=least, honest=rule.honest)


def _check_decider(rule: SectionRule, answer: SectionAnswer, log: ProblemLog) -> None:
    if "decided_by" in answer.lost:
        return
    if answer.decided_by is None:
        log.add("decider-missing", answer.span, title=rule.title)
    elif plain(answer.decided_by.value) in refused().bare:
        name = answer.decided_by
        log.add("decider-bare", name.span, title=rule.title, name=name.value)


def says_nothing(prose: Prose) -> bool:
    """True for a bare phrase and for too few words."""
    return plain(prose.typed) in refused().bare or too_short(prose)


def too_short(prose: Prose) -> bool:
    """True for fewer words than a sentence needs."""
    return len(plain(prose.typed).split()) < refused().least_words


def check_copies(subject: Subject, log: ProblemLog) -> None:
    """Report every answer that repeats, word for word, an earlier answer to another section."""
    seen: dict[str, list[tuple[str, Prose]]] = defaultdict(list)
    for key, prose in _said(subject):
        others = [told for other, told in seen[plain(prose.typed)] if other != key]
        if others and not says_nothing(prose):
            log.add("section-copied", prose.span, title=_title(key, subject), place=place(others[0]))
        seen[plain(prose.typed)].append((key, prose))


def _said(subject: Subject) -> Iterator[tuple[str, Prose]]:
    for _, file in subject.files:
        for key, answer in file.sections.items():
            for prose in _present((answer.text, answer.because)):
                yield key, prose


def _present(proses: Iterable[Prose | None]) -> Iterator[Prose]:
    return (prose for prose in proses if prose is not None)


def _title(key: str, subject: Subject) -> str:
    rule = section_rule(key, subject.house)
    return rule.title if rule else key


def place(prose: Prose) -> str:
    """File and line, for a report that names two places."""
    return f"{prose.span.file}:{prose.span.line}"
