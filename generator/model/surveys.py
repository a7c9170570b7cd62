"""Survey rows: one face of one opening each, with what was measured there."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypeAlias

from generator.model.amounts import Amount
from generator.model.scalars import Word
from generator.problems import Span
from generator.units import Value

Given: TypeAlias = Amount | Word


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingAt:
    """A reading: on which member of the frame, how far from its start in path order, and what was read.

    `left` starts at the foot, `head` at the left, `right` at the top; `within` is the limit either way that
    was written with it.
    """

    member: str
    at: Value
    value: Value
    span: Span
    within: Value | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One face of one opening as surveyed; what is blank in the file is absent here."""

    span: Span
    opening: str
    face: str
    name: str | None
    sizes: Mapping[str, Given]
    readings: Mapping[str, tuple[ReadingAt, ...]]
