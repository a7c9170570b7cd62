"""What a document or a part of it says, as a hash: whatever its status, its signatures, and its layout."""

from __future__ import annotations

import hashlib
import json
from dataclasses import fields, is_dataclass, replace
from typing import Final

from generator.documents.blocks import (
    BriefingRecord,
    Document,
    Figure,
    Issue,
    Link,
    Origin,
    PieceList,
    Policy,
    Section,
    Signatory,
    SignOff,
    Step,
)

NOT_CONTENT: Final = (Issue, Signatory, SignOff, BriefingRecord, Link)
MARK_LENGTH: Final = 10


def content_hash(document: Document) -> str:
    """SHA-256 over the document's number, title, job, company and blocks.

    Left out are revision, status, dates, signatures, ways to other files, on which line of a file a size
    stands, which a signature above it moves, and how a drawing is drawn: a
    drawing counts by its words and its key, since every size in it stands in the blocks as well.
    """
    told = (document.number, document.title, document.job, document.company, document.blocks)
    return hashlib.sha256(json.dumps(_plain(told), ensure_ascii=False).encode()).hexdigest()


def content_mark(document: Document) -> str:
    """The beginning of the content hash, short enough for a reader to compare two copies by eye."""
    return content_hash(document)[:MARK_LENGTH]


def part_mark(part: Step | Section | PieceList) -> str:
    """A mark that changes with the words of a part, and not with the number or the place it stands at.

    A tick on a step is kept under it, so that a step put in before does not move the ticks of those behind.
    """
    told = _unnumbered(part) if isinstance(part, Step) else part
    return hashlib.sha256(json.dumps(_plain(told), ensure_ascii=False).encode()).hexdigest()[:MARK_LENGTH]


def _unnumbered(step: Step) -> Step:
    return replace(
        step,
        number=0,
        hazards=tuple(replace(hazard, number=0) for hazard in step.hazards),
        figures=tuple(replace(figure, key="", number="") for figure in step.figures),
        checks=tuple(replace(check, number="") for check in step.checks),
        hold=replace(step.hold, number="") if step.hold else None,
    )


def _plain(value: object) -> object:
    if isinstance(value, NOT_CONTENT):
        return None
    if isinstance(value, Origin):
        return _plain((value.name, value.value))
    if isinstance(value, Policy):
        return _plain((value.label, value.value, value.reason))
    if isinstance(value, Figure):
        shown = value.picture
        drawing = (shown.name, shown.title, shown.alt, shown.scale, shown.key)
        return _plain((value.key, value.number, value.caption, value.scale, value.items, drawing))
    if is_dataclass(value) and not isinstance(value, type):
        return [
            type(value).__name__,
            {each.name: _plain(getattr(value, each.name)) for each in fields(value)},
        ]
    if isinstance(value, tuple | list):
        return [_plain(each) for each in value]
    return value if isinstance(value, str | int | float | bool | None) else repr(value)
