"""People: whoever is named has a line with a part, and whoever is called in a hurry a number."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from itertools import pairwise

from generator.model.jobs import Job, Person
from generator.model.prose import Prose, Words
from generator.model.scalars import Word
from generator.problems import ProblemLog
from generator.prose.walk import prose_in
from generator.safety.subject import Subject
from generator.safety.tables import table

CAPITAL = re.compile(r"[A-Z][a-zà-ÿ]+(?:[-'][A-Z][a-zà-ÿ]+)*")
WORD = re.compile(r"[A-Za-zÀ-ÿ'-]+|[^\sA-Za-zÀ-ÿ'-]")


def check_people(subject: Subject, log: ProblemLog) -> None:
    """Report names without a line under people, and people of weight without a name or number."""
    job = subject.job
    # That nobody is listed is reported once; each name would only say it again.
    if job is None or not job.people or not job.knows("people"):
        return
    for name in _signing(job):
        if name.value not in _names(job):
            log.add("person-not-listed", name.span, name=name.value)
    for person in job.people:
        _check_reachable(person, log)
    _check_prose(job, subject, log)


def _names(job: Job) -> frozenset[str]:
    return frozenset(person.name.value for person in job.people if person.name)


def _signing(job: Job) -> Iterator[Word]:
    """Deputies, and those who wrote, checked and approved."""
    yield from (person.deputy for person in job.people if person.deputy)
    control = job.document
    signed = (control.written, control.checked, control.approved) if control else ()
    yield from (each.by for each in signed if each)


def _check_reachable(person: Person, log: ProblemLog) -> None:
    """Whoever releases hold points or gives first aid is called in a hurry."""
    hurried = person.holds or "first-aid" in person.part.value.casefold().replace(" ", "-")
    if hurried and person.name is None and "name" not in person.lost:
        log.add("person-nameless", person.part.span, part=person.part.value)
    if hurried and person.phone is None and "phone" not in person.lost:
        log.add("person-unreachable", person.part.span, part=person.part.value)


def _check_prose(job: Job, subject: Subject, log: ProblemLog) -> None:
    known = _known_words(job, subject)
    for prose in prose_in(job):
        for first, second in _pairs(prose):
            if not {first, second} <= known and f"{first} {second}" not in _names(job):
                log.add("name-not-listed", prose.span, warning=True, name=f"{first} {second}")


def _known_words(job: Job, subject: Subject) -> frozenset[str]:
    """Every capital word of names that are no people: the place, the client, firms, the method."""
    company = subject.house.company
    named = [
        job.job.value,
        subject.method.title.value,
        job.site.name.value if job.site and job.site.name else "",
        job.site.address.typed if job.site and job.site.address else "",
        job.client.name.value if job.client else "",
        company.name.value if company else "",
        company.address.typed if company and company.address else "",
        *(person.firm.value for person in job.people if person.firm),
    ]
    return frozenset(CAPITAL.findall(" ".join(named)))


def _pairs(prose: Prose) -> Iterator[tuple[str, str]]:
    """Two words side by side that read like a person's name.

    What is typed as {= so} is passed over: a name that is no person's is written that way.
    """
    for part in prose.parts:
        if isinstance(part, Words):
            yield from (pair for pair in pairwise(WORD.findall(part.text)) if all(map(_names_someone, pair)))


def _names_someone(word: str) -> bool:
    return bool(CAPITAL.fullmatch(word)) and word not in common_words()


@cache
def common_words() -> frozenset[str]:
    """Words that stand with a capital and are no part of a person's name."""
    return frozenset(str(word) for word in table("common_words")["common"])
