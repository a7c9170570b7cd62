"""What the sizes leave in doubt, opening by opening: limits that would show, and readings that are few."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from generator.documents.blocks import Column, Table
from generator.documents.task import Task, sentence
from generator.quantities.doubts import Doubt, doubts
from generator.quantities.families.packers import EvenPacker
from generator.quantities.ledger import OpeningLedger
from generator.quantities.results import finding_words

OPENING_SHARE, WHAT_SHARE = 26.0, 44.0
FEW: Final = ("one-reading", "member-unread")
"""The remarks on a packer that tell how little it was read."""


def left_open(task: Task) -> tuple[Table, ...]:
    """A table of what the limits leave open; none where they leave nothing open that would show."""
    found = doubts(task.ledger)
    if not found:
        return ()
    say = task.language.say
    return (
        Table(
            key="left-open",
            title=say("What the limits of the sizes leave open"),
            intro=say(
                "Sizes written with a limit, such as ± 1 mm, may be off by the whole of it, all at once. "
                "This is what would show in the work; each figure's own range stands with its working."
            ),
            columns=(
                Column(head=say("Opening"), width=OPENING_SHARE),
                Column(head=say("Quantity"), width=WHAT_SHARE),
                Column(head=say("Within the limits")),
            ),
            rows=tuple(_row(task, doubt) for doubt in found),
        ),
    )


def few_readings(task: Task) -> tuple[Table, ...]:
    """A table of packers that rest on one reading, or on members not read; none where all were read."""
    rows = tuple(_few(task))
    if not rows:
        return ()
    say = task.language.say
    return (
        Table(
            key="few-readings",
            title=say("Where few readings were taken"),
            intro=say(
                "What was not read is not known: read there before the packer is cut, and work it out again."
            ),
            columns=(
                Column(head=say("Opening"), width=OPENING_SHARE),
                Column(head=say("Quantity"), width=WHAT_SHARE),
                Column(head=say("What is wanting")),
            ),
            rows=rows,
        ),
    )


def _few(task: Task) -> Iterator[tuple[str, ...]]:
    for opening, entry in task.ledger.everything():
        for finding in entry.result.remarks if isinstance(entry.result, EvenPacker) else ():
            if finding.code in FEW:
                words = f"{sentence(finding_words(finding, task.language))}."
                yield _where(task, opening), entry.label, words


def _row(task: Task, doubt: Doubt) -> tuple[str, ...]:
    words = f"{sentence(finding_words(doubt.finding, task.language))}."
    return _where(task, doubt.opening), doubt.entry.label, words


def _where(task: Task, opening: OpeningLedger | None) -> str:
    return opening.label if opening and opening.row else task.language.say("The whole job")
