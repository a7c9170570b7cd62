"""Problems as a report: for a person as text with the spot marked, for a program as JSON."""

from __future__ import annotations

import json
import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import NamedTuple

from generator.problems import Problem, Severity, Span, in_file_order
from generator.wording import ENGLISH, Language
from generator.wording.faults import words

WIDEST_LINE = 100
LONGEST_VALUE = 120
LONGEST_TEXT = 600
LISTS = frozenset({"allowed", "known"})
"""Names to choose from; a list too long for a sentence ends after a whole name."""
OUR_TEXTS = LISTS | {
    *("asks", "because", "hazard", "honest", "left", "offer"),
    *("phrases", "remark", "source", "where", "why", "write"),
}
"""Values that a writer needs whole: what a section asks, what a rule offers or a calculator finds, and where,
the names to choose from."""
_MARGIN = "    "
_TAB = " " * 4
_CUT = "…"
_UNSEEN = "\N{REPLACEMENT CHARACTER}"
_COLOURS = {Severity.ERROR: "\x1b[1;31m", Severity.WARNING: "\x1b[1;33m"}
_COLOUR_OFF = "\x1b[0m"
_CONTROLS = frozenset(("Cc", "Cf", "Cs", "Zl", "Zp"))
_SEVERITIES = {Severity.ERROR: "error", Severity.WARNING: "warning"}
_COUNTS = {
    (True, True, True): "%(errors)s, %(warnings)s in %(files)s",
    (True, False, True): "%(errors)s in %(files)s",
    (False, True, True): "%(warnings)s in %(files)s",
    (True, True, False): "%(errors)s, %(warnings)s",
    (True, False, False): "%(errors)s",
    (False, True, False): "%(warnings)s",
    (False, False, False): "No faults found.",
}


class Excerpt(NamedTuple):
    """A line as printed, the columns before the spot, and the columns the spot takes."""

    line: str
    before: int
    run: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Report:
    """One problem in words: its place ("file:line:column", empty when it has none), what is wrong, what was
    expected (may be empty), and the line it stands in."""

    place: str
    severity: Severity
    named: str
    says: str
    expected: str
    excerpt: Excerpt | None

    def text(self, colour: bool = False) -> str:
        """The report as lines, the spot marked by carets."""
        head = ": ".join(part for part in (self.place, self._coloured(self.named, colour), self.says) if part)
        lines = [head]
        if self.excerpt:
            carets = self._coloured("^" * self.excerpt.run, colour)
            lines += [_MARGIN + self.excerpt.line, f"{_MARGIN}{' ' * self.excerpt.before}{carets}"]
        return "\n".join([*lines, _MARGIN + self.expected] if self.expected else lines)

    def _coloured(self, text: str, colour: bool) -> str:
        return f"{_COLOURS[self.severity]}{text}{_COLOUR_OFF}" if colour else text


def report(problem: Problem, language: Language = ENGLISH) -> Report:
    """One problem in words, its values made fit to stand in a sentence."""
    says, expected = words(_fit(problem), language)
    span = problem.span
    return Report(
        place=f"{_visible(span.file)}:{span.line}:{span.column}" if span else "",
        severity=problem.severity,
        named=language.say(_SEVERITIES[problem.severity]),
        says=says,
        expected=expected,
        excerpt=_excerpt(span) if span and span.text.strip() else None,
    )


def report_text(problems: Iterable[Problem], colour: bool = False, language: Language = ENGLISH) -> str:
    """All problems in file order, each with its line and a caret run under the spot, then their count.

    `colour` sets the severity and the carets in the terminal's red or yellow.
    """
    ordered = in_file_order(problems)
    parts = [report(problem, language).text(colour) for problem in ordered]
    return "\n\n".join([*parts, counted(ordered, language)]) + "\n"


def report_json(problems: Iterable[Problem], language: Language = ENGLISH) -> str:
    """The problems in file order as a JSON list of objects.

    Keys: file, line, column (null where a problem has no place), severity, code, message, expected.
    """
    entries = [_entry(problem, language) for problem in in_file_order(problems)]
    return json.dumps(entries, ensure_ascii=False, indent=2) + "\n"


def counted(problems: Iterable[Problem], language: Language = ENGLISH) -> str:
    """How many errors and warnings there are, and in how many files."""
    listed = tuple(problems)
    errors = sum(problem.severity is Severity.ERROR for problem in listed)
    warnings = len(listed) - errors
    files = len({problem.span.file for problem in listed if problem.span})
    return language.say(
        _COUNTS[bool(errors), bool(warnings), bool(files)],
        errors=language.say_count("%(count)s error", "%(count)s errors", errors),
        warnings=language.say_count("%(count)s warning", "%(count)s warnings", warnings),
        files=language.say_count("%(count)s file", "%(count)s files", files),
    )


def _entry(problem: Problem, language: Language) -> dict[str, object]:
    told, span = report(problem, language), problem.span
    return {
        "file": span.file if span else None,
        "line": span.line if span else None,
        "column": span.column if span else None,
        "severity": problem.severity.value,
        "code": problem.code,
        "message": told.says,
        "expected": told.expected,
    }


def _fit(problem: Problem) -> Problem:
    """The problem with each value on one line, nothing unseen in it, and not too long."""
    values = {
        name: _in_sentence(value, LONGEST_TEXT if name in OUR_TEXTS else LONGEST_VALUE, name in LISTS)
        for name, value in problem.values.items()
    }
    return replace(problem, values=values)


def _in_sentence(value: str, longest: int, names: bool) -> str:
    text = _visible(" ".join(value.split("\n")))
    cut = _cut_end(text, longest)
    return _whole_names(cut) if names and cut != text else cut


def _whole_names(cut: str) -> str:
    """A cut list of names without the half of a name it was cut in."""
    kept, joint, _ = cut.rpartition(", ")
    return f"{kept}{joint}{_CUT}" if joint else cut


def _visible(text: str) -> str:
    return "".join(map(_shown, text))


def _shown(character: str) -> str:
    """A character as it is printed: tabs at one width, unseen ones as a mark, so that carets stay true."""
    if character == "\t":
        return _TAB
    return _UNSEEN if unicodedata.category(character) in _CONTROLS else character


def _width(text: str) -> int:
    """Columns the text takes on a terminal."""
    return sum(map(_columns, text))


def _columns(character: str) -> int:
    if unicodedata.category(character) in ("Mn", "Me"):
        return 0
    return 2 if unicodedata.east_asian_width(character) in "WF" else 1


def _excerpt(span: Span) -> Excerpt:
    begin, end = span.column - 1, span.column - 1 + span.length
    parts = (span.text[:begin].ljust(begin), span.text[begin:end], span.text[end:].rstrip())
    before, spot, after = _trimmed(*map(_visible, parts))
    return Excerpt((before + spot + after).rstrip(), _width(before), max(_width(spot), 1))


def _trimmed(before: str, spot: str, after: str) -> tuple[str, str, str]:
    """What fits in one line about the spot, cut ends marked."""
    if len(before) + len(spot) + len(after) <= WIDEST_LINE:
        return before, spot, after
    spot = _cut_end(spot, WIDEST_LINE * 2 // 3)
    room = WIDEST_LINE - len(spot)
    before = _cut_start(before, max(room // 2, room - len(after)))
    return before, spot, _cut_end(after, room - len(before))


def _cut_start(text: str, most: int) -> str:
    return text if len(text) <= most else _CUT + text[len(text) - most + 1 :]


def _cut_end(text: str, most: int) -> str:
    return text if len(text) <= most else text[: max(most - 1, 0)] + _CUT
