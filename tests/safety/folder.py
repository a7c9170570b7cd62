"""The demonstration's own method and job, edited in memory, and what the sections room says of them."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path
from types import SimpleNamespace

from generator.model.catalogue import Catalogue, CatalogueFile
from generator.model.jobs import Job
from generator.model.method import Method
from generator.model.reading import describe
from generator.problems import Problem, ProblemLog
from generator.reading.yaml_nodes import parse_yaml
from generator.safety.required import check_sections
from generator.wording.faults import words

METHODS = Path(__file__).parents[2] / "methods"
METHOD = (METHODS / "architrave-set-back-frame.yaml").read_text(encoding="utf-8")
JOB = (METHODS / "jobs" / "reading-room-doors.yaml").read_text(encoding="utf-8")

CATALOGUE = """\
format: 1
materials:
  wood-glue: {label: Wood glue, kind: adhesive, source: Made up.}
  paint-stripper: {label: Paint stripper, kind: sealant, source: Made up.}
tools:
  mitre-saw: {label: Mitre saw, kind: machine, source: Made up.}
  hand-saw: {label: Hand saw, kind: hand tool, source: Made up.}
  pin-gun: {label: Pin gun, kind: power tool, source: Made up.}
  pencil: {label: Pencil, kind: hand tool, source: Made up.}
  hop-up: {label: Hop-up, kind: access, source: Made up.}
  nail-punch: {label: Nail punch, kind: hand tool, source: Made up.}
  block-plane: {label: Block plane, kind: hand tool, source: Made up.}
  hot-air-gun: {label: Hot-air gun, kind: power tool, source: Made up.}
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """One problem as code, file, line, and the text of that line."""

    code: str
    file: str
    line: int
    text: str


def catalogue() -> Catalogue:
    """A small catalogue of the tests' own."""
    log = ProblemLog()
    node = parse_yaml(CATALOGUE, "catalogue.yaml", log)
    assert node is not None
    read = describe(CatalogueFile, node, log)
    assert read is not None and not list(log)
    return Catalogue(materials=read.materials, tools=read.tools)


def problems(method: str = METHOD, job: str | None = JOB) -> list[Problem]:
    """Everything the safety room reports of a method and a job given as text."""
    log = ProblemLog()
    read_method, read_job = _method(method, log), _job(job, log)
    assert not list(log), [words(problem) for problem in log]
    check_sections(read_method, read_job, SimpleNamespace(catalogue=catalogue()), log)
    return list(log)


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
