"""Whether each section is filled, and by the file that must fill it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from generator.model.border import Described
from generator.model.house import HouseRules
from generator.model.jobs import Job
from generator.model.lists import Listed
from generator.model.method import Method
from generator.problems import ProblemLog, Span, nearest
from generator.safety.reasons import check_answer
from generator.safety.sections import SECTION, SectionRule, section_rule, sections_in_force
from generator.safety.subject import Subject, Which

BUILDING = "for construction"


def check_filled(subject: Subject, log: ProblemLog) -> None:
    """Report what is missing, what stands in the wrong file, and answers that say nothing."""
    for which, file in subject.files:
        _check_names(which, file, subject.house, log)
        for rule in sections_in_force(subject.house):
            if SECTION in rule.parts(which):
                _check_section(rule, file, log)
            for part in _parts(rule, which, file):
                _check_part(rule, part, file, log)


def _check_names(which: Which, file: Method | Job, house: HouseRules, log: ProblemLog) -> None:
    for key in sorted(file.sections.names):
        _check_name(which, key, file.sections.place(key), house, log)


def _check_name(which: Which, key: str, span: Span, house: HouseRules, log: ProblemLog) -> None:
    rule = section_rule(key, house)
    known = [rule.key for rule in sections_in_force(house) if SECTION in rule.parts(which)]
    if rule is None:
        log.add("section-unknown", span, key=key, known=", ".join(known), nearest=nearest(key, known))
    elif not rule.parts(which):
        code = "section-is-the-jobs" if which == "method" else "section-is-the-methods"
        log.add(code, span, title=rule.title)
    elif SECTION not in rule.parts(which):
        log.add("section-filled-elsewhere", span, title=rule.title, parts=" and ".join(rule.parts(which)))


def _check_section(rule: SectionRule, file: Method | Job, log: ProblemLog) -> None:
    if rule.key in file.sections:
        check_answer(rule, file.sections[rule.key], log)
    elif rule.key not in file.sections.names and "sections" not in file.lost:
        span = file.places.get("sections", file.span)
        code = "section-missing-or-not-applicable" if rule.may_not_apply else "section-missing"
        log.add(code, span, id=rule.id, key=rule.key, title=rule.title, asks=rule.asks, honest=rule.honest)


def _parts(rule: SectionRule, which: Which, file: Method | Job) -> Iterator[str]:
    """The parts to look for; what is inside a part that is not there goes without saying."""
    parts = [part for part in rule.parts(which) if part != SECTION]
    if isinstance(file, Job) and _to_be_built(file):
        parts += rule.to_build
    empty = {part for part in parts if "." not in part and not find_part(file, part).whole}
    yield from (part for part in parts if part in empty or part.partition(".")[0] not in empty)


def _to_be_built(job: Job) -> bool:
    return job.document is not None and job.document.status.value == BUILDING


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """How far down a dotted part something stands, and whether all of it does."""

    whole: bool
    span: Span


def _check_part(rule: SectionRule, part: str, file: Method | Job, log: ProblemLog) -> None:
    found = find_part(file, part)
    if not found.whole:
        log.add("part-missing", found.span, part=part, title=rule.title, asks=rule.asks)


def find_part(thing: Described, part: str) -> Found:
    """Look for `people.phone` and the like. Of a list one entry is enough, and a part with faults counts."""
    name, _, rest = part.partition(".")
    value = getattr(thing, name)
    place = thing.places.get(name, thing.span)
    if name in thing.lost or _partly_read(value):
        return Found(whole=True, span=place)
    if not _given(value):
        return Found(whole=False, span=place)
    return _further(value, rest, place) if rest else Found(whole=True, span=place)


def _further(value: Any, rest: str, place: Span) -> Found:
    if isinstance(value, Described):
        inner = find_part(value, rest)
        return Found(whole=inner.whole, span=place)
    return Found(whole=any(find_part(entry, rest).whole for entry in value), span=place)


def _partly_read(value: Any) -> bool:
    return isinstance(value, Listed) and not value.whole


def _given(value: Any) -> bool:
    return value is not None and value is not False and value != ()
