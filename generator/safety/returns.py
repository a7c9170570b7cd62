"""What gets a statement sent back beside missing controls: copied names, old law, blanks, loose ends."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from pydantic import BaseModel, ConfigDict, Field

from generator.model.catalogue import Tool
from generator.model.jobs import Job
from generator.model.method import Method
from generator.model.prose import Prose
from generator.problems import ProblemLog, Span
from generator.prose.walk import prose_in
from generator.safety.likeness import tool_words
from generator.safety.phrases import one_line, phrase, sign_in
from generator.safety.sections import Known
from generator.safety.subject import Subject
from generator.safety.tables import table

BROUGHT = frozenset({"machine", "power tool", "access", "lifting"})


class Revoked(BaseModel):
    """Names of law that no longer holds, and what holds now."""

    model_config = ConfigDict(frozen=True, extra="forbid")
    named: tuple[str, ...] = Field(min_length=1)
    now: str = Field(min_length=1)
    known: Known


class Foreign(BaseModel):
    """Names of law and guidance of another country."""

    model_config = ConfigDict(frozen=True, extra="forbid")
    named: tuple[str, ...] = Field(min_length=1)
    of: str = Field(min_length=1)


class Law(BaseModel):
    """The table of law that does not hold here, of blanks left open, and how many words are too many."""

    model_config = ConfigDict(frozen=True, extra="forbid")
    revoked: tuple[Revoked, ...] = Field(min_length=1)
    foreign: tuple[Foreign, ...] = Field(min_length=1)
    placeholders: tuple[str, ...] = Field(min_length=1)
    too_long: int = Field(gt=0)


@cache
def law() -> Law:
    """The shipped table."""
    return Law.model_validate(table("law"))


def check_returns(subject: Subject, log: ProblemLog) -> None:
    """Report old and foreign law, blanks, hazards tied to no step, tools not on the list, and length."""
    for _, file in subject.files:
        for prose in prose_in(file):
            _check_law(prose, subject, log)
            _check_blanks(prose, log)
    if subject.job is None:
        _check_ties(subject.method, log)
        _check_tools_told(subject, log)
        _check_length(subject.method, log)


def _check_law(prose: Prose, subject: Subject, log: ProblemLog) -> None:
    line = one_line(prose.typed)
    for old in law().revoked:
        if name := _named(old.named, line):
            log.add("law-revoked", prose.span, name=name, now=old.now)
    for other in law().foreign if subject.nation != "elsewhere" else ():
        if name := _named(other.named, line):
            log.add("law-foreign", prose.span, warning=True, name=name, country=other.of)


def _named(names: tuple[str, ...], line: str) -> str:
    """The first of the names that stands in the line; case and a closing letter matter in names of law."""
    found = (name for name in names if name in line and _pattern(name).search(line))
    return next(found, "")


@cache
def _pattern(name: str) -> re.Pattern[str]:
    return re.compile(rf"(?<![A-Za-z]){re.escape(name)}(?![a-z])")


def _check_blanks(prose: Prose, log: ProblemLog) -> None:
    line = one_line(prose.typed)
    for blank in law().placeholders:
        stands = blank.casefold() in line.casefold() if not blank.isalpha() else _named((blank,), line)
        if stands:
            log.add("blank-left", prose.span, blank=blank)
            return


def _check_ties(method: Method, log: ProblemLog) -> None:
    """Risks are tied to steps: every hazard is met in one, and a step says which it meets."""
    known = method.knows("steps") and all(step.knows("hazards") for step in method.steps)
    for hazard in method.hazards if known else ():
        if not method.steps_of(hazard.hazard.value):
            log.add("hazard-in-no-step", hazard.hazard.span, hazard=hazard.hazard.value)
    for number, step in enumerate(method.steps, 1):
        if not step.hazards and step.knows("hazards") and method.hazards:
            log.add("step-without-hazard", step.title.span, warning=True, step=number)


def _check_tools_told(subject: Subject, log: ProblemLog) -> None:
    """A step or control that speaks of a machine, powered tool or platform has it on the list."""
    listed = {word for key in subject.method.tools for word in tool_words(key.value, subject.catalogue)}
    for key, tool in subject.catalogue.tools.items() if subject.method.knows("tools") else ():
        if tool.kind.value in BROUGHT and key not in listed:
            for prose in _told(subject.method):
                if sign_in([_name(tool)], one_line(prose.typed)):
                    log.add("tool-not-on-list", prose.span, warning=True, tool=_name(tool), key=key)
                    break


def _name(tool: Tool) -> str:
    return tool.name.value.replace("-", " ")


def _told(method: Method) -> Iterator[Prose]:
    for step in method.steps:
        yield from step.do
    for hazard in method.hazards:
        for control in hazard.controls:
            if control.rank not in ("eliminate", "substitute"):
                yield control.what


def _check_length(method: Method, log: ProblemLog) -> None:
    read = [*method.steps, *method.hazards, *method.sections.values()]
    words = sum(len(prose.typed.split()) for part in read for prose in prose_in(part))
    if words > law().too_long:
        log.add("too-long-to-use", method.title.span, warning=True, words=words, most=law().too_long)


def check_strangers(methods: tuple[Method, ...], jobs: tuple[Job, ...], log: ProblemLog) -> None:
    """Report the names of one job left in another, and of any job in a method, which is for every place."""
    for file in (*methods, *jobs):
        others = [job for job in jobs if job is not file]
        own = _names_of(file) if isinstance(file, Job) else frozenset()
        names = {name: job for job in others for name in _names_of(job) - own}
        for prose in prose_in(file):
            _check_strangers_in(prose, names, log)


def _names_of(job: Job) -> frozenset[str]:
    """The place, its address, the client and the document of a job."""
    site, control = job.site, job.document
    names = (
        site.name.value if site and site.name else "",
        one_line(site.address.typed) if site and site.address else "",
        job.client.name.value if job.client else "",
        control.number.value if control else "",
    )
    return frozenset(name for name in names if name)


def _check_strangers_in(prose: Prose, names: dict[str, Job], log: ProblemLog) -> None:
    line = one_line(prose.typed)
    for name, job in names.items():
        if phrase(name.replace("/", " ").replace("+", " ")).stands_in(line):
            log.add("other-jobs-name", prose.span, name=name, job=job.job.value, place=_place(job.span))
            return


def _place(span: Span) -> str:
    return f"{span.file}:{span.line}"
