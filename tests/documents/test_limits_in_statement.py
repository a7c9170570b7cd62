"""Limits of sizes and readings wanting in a statement: on each working, and where they would show."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from generator.documents.blocks import Table
from generator.documents.doubts import few_readings, left_open
from generator.documents.figures import orders_of
from generator.documents.statement import compose_statement
from generator.documents.task import Task
from generator.documents.workings import workings
from generator.model.amounts import Amount
from generator.problems import ProblemLog
from generator.quantities.work import work_out
from generator.units import LENGTH, Value
from tests.documents.conftest import pictures
from tests.documents.finding import all_of


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


def read_at(task: Task, kept: int) -> Task:
    """The same job with only so many readings of the set-back at its first opening."""
    assert task.job is not None
    first, *others = task.job.rows
    few = replace(first, readings={**first.readings, "set_back": first.readings["set_back"][:kept]})
    job = task.job.model_copy(update={"rows": (few, *others)})
    return replace(task, ledger=work_out(task.method, job, task.project, ProblemLog()))


def test_a_packer_that_rests_on_one_reading_is_said_at_its_opening(statement_task: Task) -> None:
    assert few_readings(statement_task) == ()
    task = read_at(statement_task, 1)
    (table,) = few_readings(task)
    assert {row[0] for row in table.rows} == {task.ledger.openings[0].label}
    words = [row[2] for row in table.rows]
    assert "There is one reading alone; the packer rests on it." in words
    assert "Nothing was read on the member called head." in words
    assert "Nothing was read on the member called right." in words


def test_a_statement_prints_the_readings_wanting_beside_its_workings(statement_task: Task) -> None:
    task = read_at(statement_task, 1)
    drawn = {**statement_task.pictures, **pictures(orders_of(task.ledger))}
    statement = compose_statement(replace(task, pictures=drawn))
    assert "few-readings" in [table.key for table in all_of(statement, Table)]
