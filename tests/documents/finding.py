"""Looking a block up in a composed document."""

from __future__ import annotations

from typing import TypeVar

from generator.documents.blocks import Document, every_block

T = TypeVar("T")


def all_of(document: Document, kind: type[T]) -> tuple[T, ...]:
    """Every block of a kind, in reading order."""
    return tuple(block for block in every_block(document.blocks) if isinstance(block, kind))


def only(document: Document, kind: type[T]) -> T:
    """The one block of a kind."""
    (found,) = all_of(document, kind)
    return found
