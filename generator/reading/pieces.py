"""Where each part of a scalar stands in the file, so that a fault inside prose is shown at its spot.

PyYAML gives only the two ends of a scalar; what it did between them (folding, escapes, indentation) is
followed again here, line by line.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from generator.problems import Span
from generator.reading.source import Source


class Extent(NamedTuple):
    """The two ends of a scalar in its file: 0-based lines and columns, the end exclusive."""

    line: int
    column: int
    end_line: int
    end_column: int


class Fragment(NamedTuple):
    """A run of characters of one line that stand in the value as they are."""

    line: int
    column: int
    text: str


Pieces = tuple[tuple[Span, ...], tuple[int, ...]]
Placed = Iterator[tuple[int, Fragment]]

# Folding and escapes put at most this much between two fragments that follow each other in the value.
_WIDEST_GAP = 200
_ESCAPES = {'"': re.compile(r"\\(?:x..|u.{4}|U.{8}|.|$)"), "'": re.compile("''")}


def pieces_of(value: str, mark: str, extent: Extent, source: Source) -> Pieces:
    """The places of the pieces of `value` and their offsets in it.

    `mark` is how the scalar was written: `|`, `>`, `"`, `'` or nothing.
    """
    literal = mark == "|"
    placed = tuple(
        _literal(value, extent, source) if literal else _aligned(value, _fragments(mark, extent, source))
    )
    spans = tuple(source.span(part.line, part.column, len(part.text)) for _, part in placed)
    return spans, tuple(start for start, _ in placed)


def _literal(value: str, extent: Extent, source: Source) -> Placed:
    start = 0
    for number, text in enumerate(value.removesuffix("\n").split("\n"), extent.line + 1):
        yield start, Fragment(number, max(len(source.line(number)) - len(text), 0), text)
        start += len(text) + 1


def _aligned(value: str, fragments: Iterator[Fragment]) -> Placed:
    reached = 0
    for fragment in fragments:
        size = len(fragment.text)
        start = value.find(fragment.text, reached, reached + size + _WIDEST_GAP)
        if start >= 0:
            yield start, fragment
            reached = start + size


def _fragments(mark: str, extent: Extent, source: Source) -> Iterator[Fragment]:
    for number in range(extent.line + (mark == ">"), extent.end_line + 1):
        begin, text = _inside(number, mark, extent, source.line(number))
        last, escapes = 0, _ESCAPES.get(mark)
        for escape in escapes.finditer(text) if escapes else ():
            yield from _fragment(number, begin + last, text[last : escape.start()])
            last = escape.end()
        yield from _fragment(number, begin + last, text[last:])


def _inside(number: int, mark: str, extent: Extent, line: str) -> tuple[int, str]:
    """The part of a line that belongs to the scalar, without indentation and quotes."""
    quote = len(mark) if mark in _ESCAPES else 0
    begin = extent.column + quote if number == extent.line else len(line) - len(line.lstrip())
    end = extent.end_column - quote if number == extent.end_line else len(line)
    return begin, line[begin : max(begin, end)]


def _fragment(number: int, column: int, text: str) -> Iterator[Fragment]:
    kept = text.rstrip()
    if kept:
        yield Fragment(number, column, kept)
