"""Limits of sizes in a statement: on each working, and where they would show in the work."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from generator.documents.doubts import left_open
from generator.documents.task import Task
from generator.documents.workings import workings
from generator.model.amounts import Amount
from generator.problems import ProblemLog
from generator.quantities.work import work_out
from generator.units import LENGTH, Value


def limited(task: Task, millimetres: str) -> Task:
    """The same job with the width and every reading known only so well."""
    within, job = Value(Decimal(millimetres), LENGTH), task.job
    assert job is not None
    rows = []
    for row in job.rows:
        width = row.sizes["opening_width"]
        assert isinstance(width, Amount)
        readings = tuple(replace(each, within=within) for each in row.readings["set_back"])
        rows.append(
            replace(
                row,
                sizes={**row.sizes, "opening_width": replace(width, within=within)},
                readings={**row.readings, "set_back": readings},
            )
        )
    shaken = job.model_copy(update={"rows": tuple(rows)})
    return replace(task, ledger=work_out(task.method, shaken, task.project, ProblemLog()))


def test_a_working_ends_with_its_limits_and_what_they_come_from(statement_task: Task) -> None:
    found = {one.formula.partition(" = ")[0]: one for one in workings(limited(statement_task, "1")).workings}
    (metres,) = found["architrave_metres"].cases
    assert metres.result == "20.23\u2009m ± 0.01\u2009m"
    assert metres.lines[-2:] == ("limits from opening_width ± 1\u2009mm: 4\u2009mm", f"= {metres.result}")
    origins = (
        origin
        for one in found.values()
        for origin in (*one.origins, *(own for case in one.cases for own in case.origins))
    )
    assert any("± 1\u2009mm" in origin.value for origin in origins)


def test_what_limits_leave_open_is_told_opening_by_opening(statement_task: Task) -> None:
    (table,) = left_open(limited(statement_task, "1"))
    first = [row[2] for row in table.rows if row[0].startswith("1, ")]
    assert any("may stand" in text for text in first)
    assert any("the packer comes to anything from" in text for text in first)


def test_sizes_without_limits_leave_nothing_to_say(statement_task: Task) -> None:
    assert left_open(statement_task) == ()
    cases = [case for one in workings(statement_task).workings for case in one.cases]
    assert cases
    assert not any("±" in case.result for case in cases)
