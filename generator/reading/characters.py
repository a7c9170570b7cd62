"""Characters that do not show, or look like a space and are none: each is reported at its place."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable

from generator.problems import ProblemLog
from generator.reading.source import Source, called

MOST_REPORTED = 20
_Finder = Callable[[str], Iterable[re.Match[str]]]

_UNSEEN = re.compile(
    "[^\\n\\t\\x20-\\x7e\\xa0-\\u200a\\u200c-\\u2027\\u202f-\\u205f\\u2061-\\u2065\\u206a-\\ud7ff"
    "\\ue000-\\ufdcf\\ufdf0-\\ufefe\\uff00-\\ufffd\\U00010000-\\U0010ffff]"
)
_TAB = re.compile(r"\t+")
_ODD_INDENT = re.compile("[\\u00a0\\u2000-\\u200a\\u202f\\u205f\\u3000]+")


def report_unseen(source: Source, log: ProblemLog) -> bool:
    """Report control, direction and zero-width characters; True when there is one."""
    return _report("file-unseen-character", _UNSEEN.finditer, source, log)


def report_tabs(source: Source, log: ProblemLog) -> bool:
    """Report the tabs of each line; True when there is one."""
    return _report("yaml-tab", _TAB.finditer, source, log)


def report_odd_indents(source: Source, log: ProblemLog) -> bool:
    """Report lines set in with spaces that YAML does not count as spaces; True when there is one."""

    def leading(line: str) -> list[re.Match[str]]:
        begin = len(line) - len(line.lstrip(" "))
        found = _ODD_INDENT.match(line, begin)
        return [found] if found else []

    return _report("yaml-odd-space", leading, source, log)


def _report(code: str, find: _Finder, source: Source, log: ProblemLog) -> bool:
    found = [(number, match) for number, line in enumerate(source.lines) for match in find(line)]
    for number, match in found[:MOST_REPORTED]:
        span = source.span(number, match.start(), len(match.group()))
        log.add(code, span, character=called(match.group()[0]))
    return bool(found)
