"""Traces that published text must not bear: of the programs that made it, of values never filled in."""

from __future__ import annotations

import re
from collections.abc import Iterable

from tests.checkers.findings import Finding

OTHER_TOOLS = ("weasyprint", "matplotlib", "jinja", "markdown-it", "pydantic", "python", "chromium", "kozea")
UNFILLED = {
    "a template's braces": re.compile(r"\{\{|\}\}|\{%|%\}"),
    "a name in braces": re.compile(r"\{[a-z_]+(?:\.[a-z_]+)?(?: in [a-z]+)?\}"),
    "a gettext placeholder": re.compile(r"%\(\w+\)s"),
    "a value of the program": re.compile(
        r"\bNone\b(?=[,)\]}])|\bDecimal\(|\bFraction\(|<[\w.]+ object at|\bundefined\b"
    ),
    "a number never rounded": re.compile(r"\d\.\d{6,}"),
    "a number that is none": re.compile(r"\b(?:NaN|nan|inf) ?(?:mm|m|min)\b"),
    "a path on the maker's machine": re.compile(r"(?:^|[\s\"'(])/(?:home|root|tmp|work|Users|var)/"),
}


def other_tools(text: str, where: str) -> tuple[Finding, ...]:
    """List the programs that the text names, upper or lower case."""
    low = text.lower()
    return tuple(Finding(where=where, rule="another tool", says=tool) for tool in OTHER_TOOLS if tool in low)


def unfilled(lines: Iterable[str], where: str) -> tuple[Finding, ...]:
    """List the lines of visible text with something in them that was to be replaced and was not."""
    return tuple(
        Finding(where=where, rule=what, says=line.strip())
        for line in lines
        for what, pattern in UNFILLED.items()
        if pattern.search(line)
    )
