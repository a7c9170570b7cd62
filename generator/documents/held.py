"""Figures held against a document or the firm's own number: beside each other, never as approval."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from string import ascii_uppercase
from typing import TypeAlias

from generator.documents.blocks import Column, Part, Table, Text
from generator.documents.task import Task, sentence
from generator.quantities.held import Held, range_words
from generator.quantities.workings import print_worked
from generator.safety.sections import KNOWN_WORDS
from generator.wording.results import HELD, HELD_AGAINST, HELD_VERDICTS

Documents: TypeAlias = tuple[tuple[str, str], ...]
WHAT_SHARE, HERE_SHARE, RANGE_SHARE = 27.0, 24.0, 25.0


def held_figures(task: Task) -> tuple[Part, ...]:
    """A table of every figure that a record holds against something; none where nothing is held."""
    found = tuple(dict.fromkeys(_held(task)))
    if not found:
        return ()
    documents = tuple(dict.fromkeys((held.against, held.known) for held in found))
    say = task.language.say
    return (
        Part(
            key="held",
            title=say("Figures held against documents"),
            intro=say(
                "Each figure stands beside the one a document gives. To be inside is no approval: the "
                "designer and building control decide, and another nation has documents of its own. A "
                "figure that stands outside waits until one of them has decided on it in writing."
            ),
            blocks=(_table(task, found, documents), _documents(task, documents)),
        ),
    )


def _held(task: Task) -> Iterator[Held]:
    for _, entry in task.ledger.everything():
        yield from (held for held in getattr(entry.result, "held", ()) if isinstance(held, Held))


def _table(task: Task, found: Sequence[Held], documents: Documents) -> Table:
    say = task.language.say
    return Table(
        key="held-figures",
        columns=(
            Column(head=say("Figure"), width=WHAT_SHARE),
            Column(head=say("Here"), width=HERE_SHARE),
            Column(head=say("Held to"), width=RANGE_SHARE),
            Column(head=say("How it stands")),
        ),
        rows=tuple(dict.fromkeys(_row(task, held, documents) for held in found)),
    )


def _row(task: Task, held: Held, documents: Documents) -> tuple[str, ...]:
    say = task.language.say
    letter = ascii_uppercase[documents.index((held.against, held.known))]
    return (
        sentence(say(HELD[held.code])),
        print_worked(held.actual).text(),
        say("%(range)s (%(letter)s)", range=range_words(held, task.language), letter=letter),
        sentence(say(HELD_VERDICTS[held.verdict])),
    )


def _documents(task: Task, documents: Documents) -> Text:
    """What each letter of the table stands for, with how well its figure is known."""
    say = task.language.say
    return Text(
        text=tuple(
            say(
                "%(letter)s: %(document)s; %(known)s.",
                letter=ascii_uppercase[at],
                document=sentence(say(HELD_AGAINST[against])),
                known=say(KNOWN_WORDS[known]),
            )
            for at, (against, known) in enumerate(documents)
        )
    )
