"""Where the limits of the sizes matter: what may come out otherwise than worked, opening by opening."""

from __future__ import annotations

from generator.documents.blocks import Column, Table
from generator.documents.task import Task, sentence
from generator.quantities.doubts import Doubt, doubts
from generator.quantities.results import finding_words

OPENING_SHARE, WHAT_SHARE = 26.0, 44.0


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


def _row(task: Task, doubt: Doubt) -> tuple[str, ...]:
    where = doubt.opening.label if doubt.opening and doubt.opening.row else task.language.say("The whole job")
    return where, doubt.entry.label, f"{sentence(finding_words(doubt.finding, task.language))}."
