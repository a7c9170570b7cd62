"""The openings of a job in a table, with the sizes the method's schedule asks for."""

from __future__ import annotations

from generator.documents.blocks import Column, Table
from generator.documents.task import Task
from generator.model.method import ScheduleColumn
from generator.prose import lookup
from generator.quantities.ledger import OpeningLedger
from generator.quantities.worked import Worked
from generator.quantities.workings import print_worked

NAME_SHARE = 30.0


def schedule(task: Task) -> Table | None:
    """One row an opening, one column an entry of the schedule; None where there is neither."""
    if not task.surveyed or not task.method.schedule:
        return None
    say = task.language.say
    heads = (Column(head=_head(task, column), align="right") for column in task.method.schedule)
    return Table(
        key="openings",
        columns=(Column(head=say("Opening"), width=NAME_SHARE), *heads),
        rows=tuple(_row(task, opening) for opening in task.surveyed),
        note=say("All sizes in mm."),
    )


def _head(task: Task, column: ScheduleColumn) -> str:
    if column.head:
        return task.told(column.head)
    entries = task.ledger.entries(column.show.value.partition(".")[0])
    return entries[0].label if entries else column.show.value


def _row(task: Task, opening: OpeningLedger) -> tuple[str, ...]:
    return (opening.label, *(_cell(task, column, opening) for column in task.method.schedule))


def _cell(task: Task, column: ScheduleColumn, opening: OpeningLedger) -> str:
    found = lookup(column.show.value, task.ledger, opening)
    if isinstance(found, Worked):
        return print_worked(found).number
    return str(found) if isinstance(found, str) else ""
