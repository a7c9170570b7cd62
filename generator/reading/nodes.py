"""What a YAML file is made of once read: text, lists and mappings, each with the place it stands at.

Scalars stay text: the model decides what a text means, so `no`, `012` and `1:30` arrive as they were written.
"""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import dataclass
from enum import StrEnum

from generator.problems import Span


class Style(StrEnum):
    """How a scalar was written."""

    PLAIN = "plain"
    QUOTED = "quoted"
    BLOCK = "block"


@dataclass(frozen=True, slots=True, kw_only=True)
class Text:
    """A scalar as written, with the places its parts were read from.

    `lines` are the places of the pieces the value was put together from and `starts` their offsets in
    `value`, ascending. In a literal block (`|`) there is exactly one piece a line of `value`; a folded or
    quoted text has one for each line of the file, and a further one after each escape.
    """

    value: str
    span: Span
    style: Style = Style.PLAIN
    lines: tuple[Span, ...] = ()
    starts: tuple[int, ...] = ()

    def place(self, offset: int, length: int = 1) -> Span:
        """Where the characters of `value` from `offset` stand in the file, cut at the end of their line."""
        nearest = bisect_right(self.starts, offset) - 1
        if nearest < 0:
            return self.span
        piece, within = self.lines[nearest], offset - self.starts[nearest]
        beyond = self.starts[nearest + 1] - offset if nearest + 1 < len(self.starts) else length
        room = len(piece.text) - (piece.column - 1 + within)
        return piece.at(within, max(1, min(length, max(room, 1), max(beyond, 1))))


@dataclass(frozen=True, slots=True, kw_only=True)
class Nothing:
    """A key with no value after it."""

    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Items:
    """A list in order."""

    items: tuple[Node, ...]
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Entries:
    """A mapping in the order written; no key stands twice."""

    entries: tuple[tuple[Text, Node], ...]
    span: Span

    def get(self, key: str) -> Node | None:
        """The value under `key`, or None."""
        return next((value for name, value in self.entries if name.value == key), None)


Node = Text | Nothing | Items | Entries
