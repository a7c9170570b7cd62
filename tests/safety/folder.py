"""The demonstration's own method and job, edited in memory, and what the sections room says of them."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TypeAlias

from generator.model.catalogue import Catalogue
from generator.model.folder import no_house_rules
from generator.model.house import HouseRules
from generator.model.jobs import Job
from generator.model.method import Method
from generator.model.reading import describe
from generator.model.shipped import shipped_catalogue
from generator.problems import Problem, ProblemLog
from generator.reading.yaml_nodes import parse_yaml
from generator.safety.required import HoldsRules, check_sections
from generator.wording.faults import words

METHODS = Path(__file__).parents[2] / "methods"
METHOD = (METHODS / "architrave-set-back-frame.yaml").read_text(encoding="utf-8")
JOB = (METHODS / "jobs" / "reading-room-doors.yaml").read_text(encoding="utf-8")


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """One problem as code, file, line, and the text of that line."""

    code: str
    file: str
    line: int
    text: str


Check: TypeAlias = Callable[[Method, Job | None, HoldsRules, ProblemLog], None]


@dataclass(frozen=True, slots=True, kw_only=True)
class Holder:
    """The shipped catalogue with the house rules of a test."""

    catalogue: Catalogue
    house: HouseRules


def project(house: str | None = None) -> Holder:
    """What the rules are looked up in; house rules given as text, or none."""
    return Holder(catalogue=shipped_catalogue(), house=_house(house) if house else no_house_rules(Path("h")))


def _house(text: str) -> HouseRules:
    log = ProblemLog()
    node = parse_yaml(text, "house-rules.yaml", log)
    read = describe(HouseRules, node, log) if node else None
    assert read is not None and not list(log), [words(problem) for problem in log]
    return read


def problems(
    method: str = METHOD, job: str | None = JOB, *, house: str | None = None, check: Check = check_sections
) -> list[Problem]:
    """Everything a check of the safety room reports of a method and a job given as text."""
    log = ProblemLog()
    read_method, read_job = _method(method, log), _job(job, log)
    assert not list(log), [words(problem) for problem in log]
    check(read_method, read_job, project(house), log)
    return list(log)


def read_method(text: str) -> Method:
    """A method given as text, which has no fault."""
    log = ProblemLog()
    method = _method(text, log)
    assert not list(log), [words(problem) for problem in log]
    return method


def read_job(text: str) -> Job:
    """A job given as text, which has no fault."""
    log = ProblemLog()
    job = _job(text, log)
    assert job is not None and not list(log), [words(problem) for problem in log]
    return job


def _method(text: str, log: ProblemLog) -> Method:
    node = parse_yaml(text, "method.yaml", log)
    read = describe(Method, node, log) if node else None
    assert read is not None, [words(problem) for problem in log]
    return read


def _job(text: str | None, log: ProblemLog) -> Job | None:
    if text is None:
        return None
    node = parse_yaml(text, "job.yaml", log)
    read = describe(Job, node, log) if node else None
    assert read is not None, [words(problem) for problem in log]
    return read


def found(method: str = METHOD, job: str | None = JOB) -> list[Found]:
    """The same, short."""
    return [
        Found(code=each.code, file=each.span.file, line=each.span.line, text=each.span.text.strip())
        for each in problems(method, job)
        if each.span
    ]


def said(problem: Problem) -> str:
    """The problem's words on two lines."""
    return "\n".join(words(problem))


def line_of(text: str, start: str) -> int:
    """The number of the one line that begins so."""
    (number,) = [n for n, line in enumerate(text.splitlines(), 1) if line.startswith(start)]
    return number


def without(text: str, key: str) -> str:
    """The file without one answer of its sections."""
    return _replaced(text, key, "")


def answered(text: str, key: str, answer: str) -> str:
    """The file with another answer to one section, written as it follows the colon."""
    return _replaced(text, key, f"  {key}:{answer}\n")


def added(text: str, key: str, answer: str) -> str:
    """The file with one more answer at the head of its sections."""
    return text.replace("\nsections:\n", f"\nsections:\n  {key}:{answer}\n", 1)


def _replaced(text: str, key: str, answer: str) -> str:
    head, sections, rest = text.partition("\nsections:\n")
    changed, count = re.subn(rf"(?m)^  {key}:.*\n(?:    .*\n)*", lambda _: answer, rest, count=1)
    assert count, f"the file does not answer {key}"
    return head + sections + changed
