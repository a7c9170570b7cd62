"""The openings of a job in a table, with the sizes the method's schedule asks for."""

from __future__ import annotations

from collections.abc import Sequence

from generator.documents.blocks import Column, Table
from generator.documents.task import Task
from generator.model.prose import Prose
from generator.prose import lookup
from generator.quantities.ledger import OpeningLedger
from generator.quantities.worked import Worked
from generator.quantities.workings import print_worked
from generator.units import ANGLE, print_value

NAME_SHARE = 30.0


def schedule(task: Task) -> Table | None:
    """One row an opening, one column an entry of the schedule; None where there is neither."""
    if not task.surveyed or not task.method.schedule:
        return None
    say = task.language.say
    columns = tuple(column_cells(task, one.show.value, task.surveyed) for one in task.method.schedule)
    return Table(
        key="openings",
        columns=(
            Column(head=say("Opening"), width=NAME_SHARE),
            *(
                Column(head=column_head(task, one.show.value, one.head), align="right")
                for one in task.method.schedule
            ),
        ),
        rows=tuple(zip((opening.label for opening in task.surveyed), *columns, strict=True)),
        note=say("All sizes in mm."),
    )


def column_head(task: Task, shown: str, head: Prose | None) -> str:
    """What a value is called over its column: the head given for it, otherwise its label."""
    if head:
        return task.told(head)
    entries = task.ledger.entries(shown.partition(".")[0])
    return entries[0].label if entries else shown


def column_cells(task: Task, shown: str, openings: Sequence[OpeningLedger]) -> tuple[str, ...]:
    """A value at each opening, in mm, all with the same decimals."""
    found = [lookup(shown, task.ledger, opening) for opening in openings]
    decimals = max((_decimals(one) for one in found if isinstance(one, Worked)), default=0)
    return tuple(_cell(one, decimals) for one in found)


def _decimals(one: Worked) -> int:
    return len(print_worked(one).number.partition(".")[2])


def _cell(one: object, decimals: int) -> str:
    if isinstance(one, Worked) and one.dimension == ANGLE:
        return print_worked(one).text()
    if isinstance(one, Worked):
        return print_value(one.value, decimals=decimals).number
    return one if isinstance(one, str) else ""
