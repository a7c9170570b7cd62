"""The headings of a document: its list of contents, the marks on its rod, and that no anchor stands twice."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from generator.documents.blocks import (
    Block,
    CheckList,
    Document,
    Figure,
    HazardTable,
    MethodList,
    Part,
    Sequence,
    Step,
    UseList,
    every_block,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """A line of the contents: anchor, title, and how deep its heading stands (1 for the outermost)."""

    key: str
    title: str
    depth: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """A mark on the rod of a screen page: anchor, number (empty for a stage), name and hold point."""

    key: str
    number: str
    title: str
    hold: str = ""


def contents(document: Document) -> tuple[Entry, ...]:
    """Every titled block of the document in reading order; figures are not listed."""
    return tuple(entry for block in document.blocks for entry in _entries(block, 1))


def _entries(block: Block, depth: int) -> Iterator[Entry]:
    title, key = getattr(block, "title", ""), getattr(block, "key", "")
    if title and key and not isinstance(block, Figure):
        yield Entry(key=key, title=title, depth=depth)
    if isinstance(block, Part):
        yield from (entry for inner in block.blocks for entry in _entries(inner, depth + 1))
    if isinstance(block, Sequence):
        for step in block.steps:
            yield Entry(key=f"step-{step.number}", title=f"{step.number} {step.title}", depth=depth + 1)


def marks(document: Document) -> tuple[Mark, ...]:
    """What stands on the screen rod: the steps, or the stages of an index."""
    stages = (s for b in every_block(document.blocks) if isinstance(b, MethodList) for s in b.stages)
    staged = tuple(Mark(key=stage.key, number="", title=stage.title) for stage in stages)
    return staged or tuple(map(_mark, document.steps()))


def _mark(step: Step) -> Mark:
    return Mark(
        key=f"step-{step.number}",
        number=str(step.number),
        title=step.short or step.title,
        hold=step.hold.number if step.hold else "",
    )


def doubled_anchors(document: Document) -> tuple[str, ...]:
    """Anchors that stand more than once in the document, in order of first standing."""
    counted = Counter(_anchors(document))
    return tuple(anchor for anchor, times in counted.items() if times > 1)


def _anchors(document: Document) -> Iterator[str]:
    for block in every_block(document.blocks):
        if key := getattr(block, "key", ""):
            yield key
        yield from _inner_anchors(block)


def _inner_anchors(block: Block) -> Iterator[str]:
    if isinstance(block, HazardTable):
        yield from (f"hazard-{hazard.number}" for hazard in block.hazards)
    if isinstance(block, CheckList):
        yield from (f"reading-{check.number}" for check in block.checks)
    if isinstance(block, MethodList):
        yield from (stage.key for stage in block.stages)
    if isinstance(block, UseList):
        yield from (used.key for used in block.used)
    for step in block.steps if isinstance(block, Sequence) else ():
        yield f"step-{step.number}"
        yield from (figure.key for figure in step.figures)
        yield from (f"reading-{check.number}" for check in step.checks)
        yield from (f"hold-{hold.number}" for hold in (step.hold,) if hold)
