"""Where a fault stands and what it is: spans, problems and the log that gathers them.

Faults are data here. Their words stand in `generator.wording.faults`, so that a fault reads the same
wherever it is printed and can be said in another language.
"""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from enum import StrEnum


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """A place in a user's file: 1-based line and column, the line's text, how many characters are meant."""

    file: str
    line: int
    column: int
    text: str
    length: int = 1

    def at(self, offset: int, length: int = 1) -> Span:
        """The place `offset` characters further along the same line."""
        return Span(
            file=self.file, line=self.line, column=self.column + offset, text=self.text, length=max(length, 1)
        )


class Severity(StrEnum):
    """An error stops the publication; a warning is printed and stops nothing."""

    ERROR = "error"
    WARNING = "warning"


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """One fault: a code with its own wording, the values that wording names, and where it stands."""

    code: str
    span: Span | None = None
    values: Mapping[str, str] = field(default_factory=dict)
    severity: Severity = Severity.ERROR


class ProblemLog:
    """Gathers the problems of a whole run; the same problem at the same place is kept once."""

    def __init__(self) -> None:
        self._problems: dict[tuple[object, ...], Problem] = {}

    def add(self, code: str, span: Span | None = None, /, *, warning: bool = False, **values: object) -> None:
        """Record a fault. `values` fill the named placeholders of the code's wording."""
        severity = Severity.WARNING if warning else Severity.ERROR
        said = {name: str(value) for name, value in values.items()}
        self.take(Problem(code=code, span=span, values=said, severity=severity))

    def take(self, problem: Problem) -> None:
        """Record a problem made elsewhere."""
        key = (problem.code, problem.span, tuple(sorted(problem.values.items())))
        self._problems.setdefault(key, problem)

    def take_all(self, problems: Iterable[Problem]) -> None:
        """Record several."""
        for problem in problems:
            self.take(problem)

    def __iter__(self) -> Iterator[Problem]:
        return iter(in_file_order(self._problems.values()))

    def __len__(self) -> int:
        return len(self._problems)

    @property
    def has_errors(self) -> bool:
        """True when anything recorded stops the publication."""
        return any(problem.severity is Severity.ERROR for problem in self._problems.values())


def in_file_order(problems: Iterable[Problem]) -> list[Problem]:
    """By file, line and column; problems without a place first."""

    def place(problem: Problem) -> tuple[str, int, int]:
        span = problem.span
        return (span.file, span.line, span.column) if span else ("", 0, 0)

    return sorted(problems, key=place)


def nearest(name: str, names: Iterable[str]) -> str:
    """The existing name most like `name`, or an empty string when none is near.

    Capitals, and what joins the words of a name, make no difference: PPE is nearest to ppe.
    """
    folded = {_folded(each): each for each in sorted(names)}
    close = difflib.get_close_matches(_folded(name), folded, n=1, cutoff=0.6)
    return folded[close[0]] if close else ""


def _folded(name: str) -> str:
    return name.casefold().replace("-", "_").replace(" ", "_")


class MachineLacks(Exception):
    """The machine lacks something the work needs; carries the problem that names it with its cure."""

    def __init__(self, code: str, span: Span | None = None, /, **values: object) -> None:
        super().__init__(code)
        said = {name: str(value) for name, value in values.items()}
        self.problem = Problem(code=code, span=span, values=said)
