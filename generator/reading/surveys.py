"""A CSV survey to rows of cells that know where they stand; a bad row hides no other."""

from __future__ import annotations

import csv
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import NamedTuple

from generator.problems import ProblemLog, Span
from generator.reading.characters import report_unseen
from generator.reading.files import read_text
from generator.reading.limits import MOST_COLUMNS, MOST_ROWS
from generator.reading.nodes import Nothing, Style, Text
from generator.reading.source import Source, source_of

_OTHER_SEPARATORS = {";": "semicolons", "\t": "tabs", "|": "upright strokes"}
_CELL = re.compile(r'(?:"(?:[^"]|"")*"|[^",][^,]*|)(?=,|$)')

Cell = Text | Nothing


@dataclass(frozen=True, slots=True, kw_only=True)
class SurveyRow:
    """One row: its cells beside the heading of their column, in the order of the file."""

    span: Span
    cells: tuple[tuple[Text, Cell], ...]

    def get(self, heading: str) -> Cell | None:
        """The cell under a heading, or None when there is no such column."""
        return next((cell for head, cell in self.cells if head.value == heading), None)


@dataclass(frozen=True, slots=True, kw_only=True)
class Survey:
    """The headings of a survey and the rows that could be read; not `whole` where some could not."""

    header: tuple[Text, ...]
    rows: tuple[SurveyRow, ...]
    whole: bool


class _Line(NamedTuple):
    """The cells of one line of the file (0-based number)."""

    number: int
    cells: tuple[Cell, ...]


def read_survey(path: Path, shown: str, log: ProblemLog) -> Survey | None:
    """The survey in a CSV file; None when it has no readable heading, with the reason in the log.

    `shown` is how the path is printed. Each faulty row is reported and left out. A blank cell is Nothing.
    """
    text = read_text(path, shown, log)
    return None if text is None else parse_survey(text, shown, log)


def parse_survey(text: str, shown: str, log: ProblemLog) -> Survey | None:
    """As `read_survey`, from text whose lines end in `\\n`."""
    source = source_of(text, shown)
    if report_unseen(source, log):
        return None
    first = next((number for number, line in enumerate(source.lines) if line.strip()), None)
    if first is None:
        log.add("survey-empty", source.span(0, 0))
        return None
    if len(source.lines) > first + MOST_ROWS + 2:
        log.add("survey-too-long", source.span(first + MOST_ROWS + 1, 0), most=f"{MOST_ROWS:,}")
        return None
    header = _header(first, source, log)
    if header is None:
        return None
    found = ProblemLog()
    rows = tuple(_rows(header, first + 1, source, found))
    log.take_all(found)
    return Survey(header=header, rows=rows, whole=not found.has_errors)


def _header(number: int, source: Source, log: ProblemLog) -> tuple[Text, ...] | None:
    if _separated_otherwise(number, source, log):
        return None
    line = _line(number, source, log)
    if line is None:
        return None
    if len(line.cells) > MOST_COLUMNS:
        log.add("survey-too-wide", source.span(number, 0), count=len(line.cells), most=MOST_COLUMNS)
        return None
    named = _named(line.cells, log)
    return named if len(named) == len(line.cells) else None


def _separated_otherwise(number: int, source: Source, log: ProblemLog) -> bool:
    text = source.line(number)
    for mark, name in _OTHER_SEPARATORS.items():
        if "," not in text and mark in text:
            log.add("survey-separator", source.span(number, text.index(mark)), separators=name)
            return True
    return False


def _named(cells: tuple[Cell, ...], log: ProblemLog) -> tuple[Text, ...]:
    headings: dict[str, Text] = {}
    for column, cell in enumerate(cells, 1):
        if isinstance(cell, Nothing):
            log.add("survey-heading-blank", cell.span, column=column)
        elif cell.value in headings:
            first = headings[cell.value].span.column
            log.add("survey-heading-doubled", cell.span, heading=cell.value, first=first)
        else:
            headings[cell.value] = cell
    return tuple(headings.values())


def _rows(header: tuple[Text, ...], first: int, source: Source, log: ProblemLog) -> Iterator[SurveyRow]:
    for number in range(first, len(source.lines)):
        line = _line(number, source, log) if source.line(number).strip() else None
        if line and _fits(line, header, source, log):
            span = source.span(number, 0, len(source.line(number)))
            yield SurveyRow(span=span, cells=tuple(zip(header, line.cells, strict=True)))


def _fits(line: _Line, header: tuple[Text, ...], source: Source, log: ProblemLog) -> bool:
    if all(isinstance(cell, Nothing) for cell in line.cells):
        return False
    count, expected = len(line.cells), len(header)
    if count > expected:
        log.add("survey-row-long", line.cells[expected].span, count=count, expected=expected)
    if count < expected:
        end = source.span(line.number, len(source.line(line.number).rstrip()))
        log.add("survey-row-short", end, count=count, expected=expected, missing=header[count].value)
    return count == expected


def _line(number: int, source: Source, log: ProblemLog) -> _Line | None:
    """One line as one row: a cell never runs over a line end, so an open quote spoils its own row only."""
    text = source.line(number)
    places = tuple(_cell_places(text))
    try:
        values = next(csv.reader([text], strict=True))
    except csv.Error:
        log.add("survey-quote", source.span(number, places[-1][1] + 1 if places else 0))
        return None
    cells = (_cell(value, *place, number, source) for value, place in zip(values, places, strict=True))
    return _Line(number, tuple(cells))


def _cell_places(text: str) -> Iterator[tuple[int, int]]:
    """Begin and end of each cell up to the first that does not close its quote."""
    found = _CELL.match(text)
    while found:
        yield found.span()
        found = _CELL.match(text, found.end() + 1) if found.end() < len(text) else None


def _cell(value: str, begin: int, end: int, number: int, source: Source) -> Cell:
    written = source.line(number)[begin:end]
    kept = written.strip()
    start = begin + len(written) - len(written.lstrip()) if kept else begin
    if not value.strip():
        return Nothing(span=source.span(number, start, len(kept)))
    quoted = kept.startswith('"') and written.startswith('"')
    span = source.span(number, start + quoted, len(kept) - 2 * quoted)
    style = Style.QUOTED if quoted else Style.PLAIN
    return Text(value=value.strip(), span=span, style=style, lines=(span,), starts=(0,))
