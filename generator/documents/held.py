"""Figures held against a document or the firm's own number: beside each other, never as approval."""

from __future__ import annotations

from collections.abc import Iterator

from generator.documents.blocks import Column, Part, Table
from generator.documents.task import Task, sentence
from generator.quantities.held import Held, range_words
from generator.quantities.workings import print_worked
from generator.safety.sections import KNOWN_WORDS
from generator.wording.results import HELD, HELD_AGAINST, HELD_VERDICTS

WHAT_SHARE, HERE_SHARE, RANGE_SHARE, VERDICT_SHARE = 19.0, 11.0, 17.0, 18.0


def held_figures(task: Task) -> tuple[Part, ...]:
    """A table of every figure that a record holds against something; none where nothing is held."""
    rows = tuple(dict.fromkeys(_rows(task)))
    if not rows:
        return ()
    say = task.language.say
    table = Table(
        key="held-figures",
        columns=(
            Column(head=say("Figure"), width=WHAT_SHARE),
            Column(head=say("Here"), width=HERE_SHARE),
            Column(head=say("Held to"), width=RANGE_SHARE),
            Column(head=say("By, and how well that is known")),
            Column(head=say("How it stands"), width=VERDICT_SHARE),
        ),
        rows=rows,
    )
    return (
        Part(
            key="held",
            title=say("Figures held against documents"),
            intro=say(
                "Each figure stands beside the one a document gives. To be inside is no approval: the "
                "designer and building control decide, and another nation has documents of its own. A "
                "figure that stands outside waits until one of them has decided on it in writing."
            ),
            blocks=(table,),
        ),
    )


def _rows(task: Task) -> Iterator[tuple[str, ...]]:
    for _, entry in task.ledger.everything():
        for held in getattr(entry.result, "held", ()):
            if isinstance(held, Held):
                yield _row(task, held)


def _row(task: Task, held: Held) -> tuple[str, ...]:
    say = task.language.say
    return (
        sentence(say(HELD[held.code])),
        print_worked(held.actual).text(),
        range_words(held, task.language),
        say(
            "%(document)s; %(known)s",
            document=sentence(say(HELD_AGAINST[held.against])),
            known=KNOWN_WORDS[held.known],
        ),
        sentence(say(HELD_VERDICTS[held.verdict])),
    )
