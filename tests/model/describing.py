"""Text to the thing it describes, with the report it got."""

from __future__ import annotations

from typing import TypeVar

from generator.model.border import Described
from generator.model.reading import describe
from generator.problems import Problem, ProblemLog
from generator.reading.yaml_nodes import parse_yaml
from generator.wording.report import report_text

D = TypeVar("D", bound=Described)
NO_FAULT = "No faults found.\n"


def read(kind: type[D], text: str) -> tuple[D | None, str]:
    """The thing a text describes, and the report."""
    log = ProblemLog()
    node = parse_yaml(text, "methods/file.yaml", log)
    thing = describe(kind, node, log) if node else None
    return thing, report_text(log)


def problems(kind: type[D], text: str) -> list[Problem]:
    """The faults in a text, in file order."""
    log = ProblemLog()
    node = parse_yaml(text, "methods/file.yaml", log)
    if node:
        describe(kind, node, log)
    return list(log)


def codes(kind: type[D], text: str) -> list[str]:
    """The codes of the faults in a text, in file order."""
    return [problem.code for problem in problems(kind, text)]


METHOD = """\
format: 1
method: SF-01
title: Architrave
stage: second fixing
summary: Fix it.
steps:
  - title: Fix
    do: [Fix it.]
    why: It is loose.
    minutes: 5
"""


def method(*more: str) -> str:
    """The least method that reads, with lines added."""
    return METHOD + "".join(f"{line}\n" for line in more)
