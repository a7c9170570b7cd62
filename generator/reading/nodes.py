"""What a YAML file is made of once read: text, lists and mappings, each with the place it stands at.

Scalars stay text: the model decides what a text means, so `no`, `012` and `1:30` arrive as they were written.
"""

from __future__ import annotations

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
    """A scalar as written. `lines` gives the place of each line of `value`, to find a fault inside prose."""

    value: str
    span: Span
    style: Style = Style.PLAIN
    lines: tuple[Span, ...] = ()


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
