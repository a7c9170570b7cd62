"""The rows of a survey: what each cell holds, which rows stand twice, what nobody has measured yet."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from pydantic_core import PydanticCustomError

from generator.model.amounts import Amount, size_in
from generator.model.jobs import Job, SurveyFile
from generator.model.method import Method
from generator.model.scalars import Word
from generator.model.sizes import Size, fits
from generator.model.survey_columns import Column, Columns, columns_of, with_unit
from generator.model.surveys import Given, ReadingAt, Row
from generator.problems import ProblemLog, Span, nearest
from generator.reading.nodes import Nothing, Text
from generator.reading.surveys import Survey, SurveyRow
from generator.units import UNITS, Unit


def rows_of(survey: Survey, wanted: SurveyFile, method: Method, job: Job, log: ProblemLog) -> tuple[Row, ...]:
    """The rows of a job's survey. A fault is logged at its cell and hides no other."""
    unit = UNITS[wanted.unit.value]
    columns = columns_of(survey.header, method.sizes, unit, log)
    _check_key(survey, wanted, log)
    _check_columns(columns, method, job, log)
    rows = tuple(_row(row, columns, unit, log) for row in survey.rows)
    for row in survey.rows:
        _check_blanks(row, columns, job, log)
    _check_once(survey, wanted, log)
    if not rows and survey.whole:
        log.add("survey-no-rows", survey.header[0].span)
    return rows


def _check_key(survey: Survey, wanted: SurveyFile, log: ProblemLog) -> None:
    headings = [heading.value for heading in survey.header]
    for column in wanted.key:
        if column.value not in headings:
            near = nearest(column.value, headings)
            log.add("survey-no-key", column.span, name=column.value, nearest=near)


def _row(row: SurveyRow, columns: Columns, unit: Unit, log: ProblemLog) -> Row:
    sizes: dict[str, Given] = {}
    readings: dict[str, tuple[ReadingAt, ...]] = {}
    for column, cell in _filled(row, columns):
        given, name = _given(cell, column.size, unit, log), column.size.name.value
        if isinstance(given, Amount) and column.at is not None:
            reading = ReadingAt(
                member=column.member, at=column.at, value=given.value, span=given.span, within=given.within
            )
            readings[name] = (*readings.get(name, ()), reading)
        elif given is not None:
            sizes[name] = given
    label = {name: _typed(row, name) for name in ("opening", "face", "name")}
    return Row(
        span=row.span, opening=label["opening"], face=label["face"], name=label["name"] or None,
        sizes=sizes, readings=readings,
    )  # fmt: skip


def _filled(row: SurveyRow, columns: Columns) -> Iterator[tuple[Column, Text]]:
    for column in columns.known:
        cell = row.get(column.heading.value)
        if isinstance(cell, Text):
            yield column, cell


def _typed(row: SurveyRow, heading: str) -> str:
    cell = row.get(heading)
    return cell.value.strip() if isinstance(cell, Text) else ""


def _given(cell: Text, size: Size, unit: Unit, log: ProblemLog) -> Given | None:
    try:
        typed = size_in(cell, log)
    except PydanticCustomError:
        return None
    given: Given = typed if isinstance(typed, Word) else with_unit(typed, unit, size)
    return given if fits(size, given, log) else None


def _check_columns(columns: Columns, method: Method, job: Job, log: ProblemLog) -> None:
    """Log each measured size that neither the job nor a column of the survey gives."""
    for name, size in method.sizes.items():
        if size.measured and _job_lacks(job, name) and name not in columns.sizes:
            log_missing(size, job.places.get("survey", job.span), log)


def log_missing(size: Size, span: Span, log: ProblemLog) -> None:
    """Log that a measured size is given nowhere, with how to take it where the method says so."""
    name, label = size.name, size.label
    if size.take:
        take = " ".join(size.take.typed.split())
        log.add("size-not-given-take", span, name=name, label=label, take=take)
    else:
        log.add("size-not-given", span, name=name, label=label)


def _job_lacks(job: Job, name: str) -> bool:
    return job.knows("sizes") and name not in job.sizes.names


def _check_blanks(row: SurveyRow, columns: Columns, job: Job, log: ProblemLog) -> None:
    for name, column in _first_columns(columns).items():
        if not column.size.measured or not _job_lacks(job, name) or name in columns.meant:
            continue
        cells = [row.get(one.heading.value) for one in columns.of(name)]
        if all(isinstance(cell, Nothing) for cell in cells):
            log_blank(column.size, row, cells, log)


def _first_columns(columns: Columns) -> Mapping[str, Column]:
    return {column.size.name.value: column for column in reversed(columns.known)}


def log_blank(size: Size, row: SurveyRow, cells: list[Text | Nothing | None], log: ProblemLog) -> None:
    """Log a measured size that is blank in a row: it is unknown, and unknown is never nought."""
    span = cells[0].span if cells and cells[0] else row.span
    log.add("size-blank", span, name=size.name, label=size.label, opening=_typed(row, "opening"))


def _check_once(survey: Survey, wanted: SurveyFile, log: ProblemLog) -> None:
    seen: dict[tuple[str, ...], int] = {}
    for row in survey.rows:
        for column in wanted.key:
            cell = row.get(column.value)
            if isinstance(cell, Nothing):
                log.add("row-unnamed", cell.span, column=column.value)
        key = tuple(_typed(row, column.value) for column in wanted.key)
        if key in seen and all(key):
            cell = row.get(wanted.key[0].value)
            log.add("row-doubled", cell.span if cell else row.span, key=", ".join(key), first=seen[key])
        seen.setdefault(key, row.span.line)
