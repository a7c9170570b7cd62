"""The lines of one file under the name it is printed by, and the spans that point into them."""

from __future__ import annotations

import unicodedata
from dataclasses import dataclass

from generator.problems import Span

CURLY_QUOTES = "\u201c\u201d\u201e\u2018\u2019\u00ab\u00bb"


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """A file as read: how its path is printed, and its lines without their ends."""

    shown: str
    lines: tuple[str, ...]

    def line(self, number: int) -> str:
        """The line of a 0-based number; empty beyond the end of the file."""
        return self.lines[number] if 0 <= number < len(self.lines) else ""

    def span(self, line: int, column: int, length: int = 1) -> Span:
        """The place of a 0-based line and column."""
        return Span(
            file=self.shown,
            line=line + 1,
            column=column + 1,
            text=self.line(line),
            length=max(length, 1),
        )


def source_of(text: str, shown: str) -> Source:
    """The source of a text whose lines end in `\\n`."""
    return Source(shown=shown, lines=tuple(text.split("\n")))


def quoted(text: str) -> str:
    """The text as YAML writes it in quotes: double ones, or single ones where it holds either itself."""
    if '"' in text or "\\" in text:
        return "'" + text.replace("'", "''") + "'"
    return f'"{text}"'


def straightened(text: str) -> str:
    """The text as YAML writes it in quotes, without the typographic ones that stand round it."""
    return quoted(text.strip(CURLY_QUOTES))


def called(character: str) -> str:
    """A character by its code point and name."""
    point = f"U+{ord(character):04X}"
    name = unicodedata.name(character, "").lower()
    return f"{point}, {name}" if name else point
