"""Prose as the user wrote it, cut into words, references and figures that are meant."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TypeAlias

from generator.problems import ProblemLog, Span
from generator.reading.nodes import Text


@dataclass(frozen=True, slots=True, kw_only=True)
class Words:
    """Words that stand as they are; doubled braces are already single."""

    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Reference:
    """`{name}`, `{name.field}` or `{name in m}`: a worked value to put in, in `unit` if one is asked for."""

    name: str
    field: str | None
    unit: str | None
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Kept:
    """`{= 5 mm}`: a figure typed on purpose, which no comparison with worked values questions."""

    text: str
    span: Span


Part: TypeAlias = Words | Reference | Kept


@dataclass(frozen=True, slots=True, kw_only=True)
class Prose:
    """Prose with its place, the text it was read from, and its parts in order.

    `tag` is the language of a translation, empty for the English of a file.
    """

    span: Span
    source: Text
    parts: tuple[Part, ...]
    tag: str = ""

    @property
    def references(self) -> tuple[Reference, ...]:
        """The references in order."""
        return tuple(part for part in self.parts if isinstance(part, Reference))

    @property
    def typed(self) -> str:
        """The text as typed, without the white space round it."""
        return self.source.value.strip()


_PIECE = re.compile(r"\{\{|\}\}|\{[^{}\n]*\}|[{}]")
_REFERENCE = re.compile(r"\s*([^\s.{}=]+)(?:\.([^\s.{}]+))?(?:\s+in\s+(\S+))?\s*")
_NAME = re.compile(r"[a-z][a-z0-9]*(_[a-z0-9]+)*")


def parse_prose(text: Text, log: ProblemLog) -> Prose | None:
    """Cut `text` at its braces. Every fault is logged at its own place; None when there is one."""
    parts: list[Part] = []
    spoken, sound, start = "", True, 0
    for found in _PIECE.finditer(text.value):
        spoken += text.value[start : found.start()]
        start = found.end()
        if found.group() in ("{{", "}}"):
            spoken += found.group()[0]
            continue
        part = _part(found.group(), text.place(found.start(), len(found.group())), log)
        sound = sound and part is not None
        parts += _flush(spoken) + ([part] if part else [])
        spoken = ""
    parts += _flush(spoken + text.value[start:])
    return Prose(span=text.span, source=text, parts=tuple(parts)) if sound else None


def _flush(spoken: str) -> list[Part]:
    return [Words(text=spoken)] if spoken else []


def _part(piece: str, span: Span, log: ProblemLog) -> Part | None:
    if len(piece) == 1:
        log.add("braces-open" if piece == "{" else "braces-stray", span)
        return None
    inside = piece[1:-1]
    if inside.lstrip().startswith("="):
        return _kept(inside.lstrip()[1:].strip(), span, log)
    return _reference(inside, span, log)


def _kept(figure: str, span: Span, log: ProblemLog) -> Kept | None:
    if figure:
        return Kept(text=figure, span=span)
    log.add("braces-empty", span)
    return None


def _reference(inside: str, span: Span, log: ProblemLog) -> Reference | None:
    found = _REFERENCE.fullmatch(inside)
    if not found or not all(_NAME.fullmatch(name) for name in found.groups()[:2] if name is not None):
        log.add("braces-reference", span, inside=inside.strip())
        return None
    name, field, unit = found.groups()
    return Reference(name=name, field=field, unit=unit, span=span)
