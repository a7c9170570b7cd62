"""What a calculator finds besides sizes: refusals and remarks, as data with their words elsewhere."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

from generator.quantities.worked import Worked
from generator.quantities.workings import THIN, print_worked
from generator.wording import ENGLISH, Language
from generator.wording.results import FINDINGS


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """A thing found: its code, the limit it is held against, the actual size, and the part it is about."""

    code: str
    limit: Worked | None = None
    actual: Worked | None = None
    about: str = ""


Findings: TypeAlias = tuple[Finding, ...]


def finding_words(finding: Finding, language: Language = ENGLISH, *, space: str = THIN) -> str:
    """The finding as a sentence with its limit and actual size."""
    return language.say(
        FINDINGS[finding.code],
        limit=_size(finding.limit, space),
        actual=_size(finding.actual, space),
        about=finding.about,
    )


def _size(item: Worked | None, space: str) -> str:
    return print_worked(item).text(space) if item else ""


class InputRefused(ValueError):
    """An input that a calculator cannot work with: a fault code and the argument it concerns."""

    def __init__(self, code: str, argument: str, **values: str) -> None:
        super().__init__(code)
        self.code, self.argument, self.values = code, argument, values


def found(*checks: tuple[bool, Finding]) -> Findings:
    """The findings whose condition holds."""
    return tuple(finding for holds, finding in checks if holds)
