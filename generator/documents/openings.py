"""The openings of a job in a table, with the sizes the method's schedule asks for."""

from __future__ import annotations

from generator.documents.blocks import Column, Table
from generator.documents.task import Task
from generator.model.method import ScheduleColumn
from generator.prose import lookup
from generator.quantities.worked import Worked
from generator.quantities.workings import print_worked
from generator.units import print_value

NAME_SHARE = 30.0


def schedule(task: Task) -> Table | None:
    """One row an opening, one column an entry of the schedule; None where there is neither."""
    if not task.surveyed or not task.method.schedule:
        return None
    say = task.language.say
    columns = tuple(_column(task, column) for column in task.method.schedule)
    return Table(
        key="openings",
        columns=(
            Column(head=say("Opening"), width=NAME_SHARE),
            *(Column(head=_head(task, column), align="right") for column in task.method.schedule),
        ),
        rows=tuple(zip((opening.label for opening in task.surveyed), *columns, strict=True)),
        note=say("All sizes in mm."),
    )


def _head(task: Task, column: ScheduleColumn) -> str:
    if column.head:
        return task.told(column.head)
    entries = task.ledger.entries(column.show.value.partition(".")[0])
    return entries[0].label if entries else column.show.value


def _column(task: Task, column: ScheduleColumn) -> tuple[str, ...]:
    found = [lookup(column.show.value, task.ledger, opening) for opening in task.surveyed]
    decimals = max((_decimals(one) for one in found if isinstance(one, Worked)), default=0)
    return tuple(_cell(one, decimals) for one in found)


def _decimals(one: Worked) -> int:
    return len(print_worked(one).number.partition(".")[2])


def _cell(one: object, decimals: int) -> str:
    if isinstance(one, Worked):
        return print_value(one.value, decimals=decimals).number
    return one if isinstance(one, str) else ""
