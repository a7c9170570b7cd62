"""The ripping list: each section of strip with its number and length, so that the fence is set once."""

from __future__ import annotations

from generator.documents.blocks import Column, Table
from generator.documents.task import Task, sentence
from generator.quantities.ripping import Batch, ripping_batches
from generator.quantities.workings import THIN, print_worked
from generator.units import UNITS

MOST_MARKS = 12


def ripping_list(task: Task) -> Table | None:
    """The ripping batches of all openings in a table; None where nothing is ripped."""
    batches = ripping_batches(task.ledger)
    if not batches:
        return None
    say = task.language.say
    return Table(
        key="ripping-list",
        title=say("Ripping list"),
        intro=say(
            "Strips of one section from all openings together, so that the fence is set once for each."
        ),
        columns=(
            Column(head=say("Strip"), width=22.0),
            Column(head=say("Thickness"), align="right", width=11.0),
            Column(head=say("Width"), align="right", width=10.0),
            Column(head=say("Pieces"), align="right", width=9.0),
            Column(head=say("Together"), align="right", width=13.0),
            Column(head=say("Longest"), align="right", width=11.0),
            Column(head=say("Openings")),
        ),
        rows=tuple(_row(task, batch) for batch in batches),
        note=say("Thickness, width and longest in mm; saw cuts and offcuts are in the cutting plan."),
    )


def _row(task: Task, batch: Batch) -> tuple[str, ...]:
    return (
        sentence(batch.role),
        print_worked(batch.thickness).number,
        print_worked(batch.width).number,
        print_worked(batch.pieces).number,
        print_worked(batch.metres, UNITS["m"]).text(THIN),
        print_worked(batch.longest).number,
        _marks(task, batch.openings),
    )


def _marks(task: Task, marks: tuple[str, ...]) -> str:
    """Each opening by its mark, or how many they are where the list would be long."""
    if len(marks) <= MOST_MARKS:
        return ", ".join(marks)
    return task.language.say(
        "%(count)s, from %(first)s to %(last)s", count=str(len(marks)), first=marks[0], last=marks[-1]
    )
