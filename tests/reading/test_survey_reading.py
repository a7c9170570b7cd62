"""A CSV survey to cells with their places."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.problems import ProblemLog
from generator.reading.limits import MOST_COLUMNS, MOST_ROWS
from generator.reading.nodes import Nothing, Text
from generator.reading.surveys import Survey, parse_survey, read_survey
from generator.wording.report import report_text

SHOWN = "methods/jobs/doors.csv"


def read(text: str) -> tuple[Survey | None, ProblemLog]:
    log = ProblemLog()
    return parse_survey(text, SHOWN, log), log


def sound(text: str) -> Survey:
    survey, log = read(text)
    assert list(log) == []
    assert survey is not None
    return survey


def values(survey: Survey) -> list[list[str | None]]:
    return [[cell.value if isinstance(cell, Text) else None for _, cell in row.cells] for row in survey.rows]


def test_headings_and_rows_come_out_in_order() -> None:
    survey = sound("opening,face,set_back@left:100\n1,hall,7.5\n2,hall,8.0\n")
    assert [heading.value for heading in survey.header] == ["opening", "face", "set_back@left:100"]
    assert values(survey) == [["1", "hall", "7.5"], ["2", "hall", "8.0"]]


def test_a_cell_is_found_by_its_heading() -> None:
    cell = sound("opening,face\n1,hall\n").rows[0].get("face")
    assert isinstance(cell, Text)
    assert cell.value == "hall"
    assert sound("opening,face\n1,hall\n").rows[0].get("name") is None


@pytest.mark.parametrize("blank", ["", " ", '""', '" "'])
def test_a_blank_cell_is_nothing_and_never_nought(blank: str) -> None:
    cell = sound(f"opening,set_back\n1,{blank}\n").rows[0].get("set_back")
    assert isinstance(cell, Nothing)
    assert (cell.span.line, cell.span.column) == (2, 3)


def test_a_cell_knows_its_line_and_column() -> None:
    survey = sound('name,note,width\n"Hall, north","a ""tight"" door", 768 \n')
    places = [(cell.span.line, cell.span.column, cell.span.length) for _, cell in survey.rows[0].cells]
    assert places == [(2, 2, 11), (2, 16, 16), (2, 35, 3)]
    assert values(survey) == [["Hall, north", 'a "tight" door', "768"]]


def test_a_quote_inside_an_unquoted_cell_is_a_quote() -> None:
    assert values(sound('name,width\n6" stud,768\n')) == [['6" stud', "768"]]


def test_empty_lines_and_rows_of_commas_are_passed_over() -> None:
    survey = sound("\nopening,face\n\n1,hall\n,\n,,,\n   \n2,hall\n")
    assert [row.span.line for row in survey.rows] == [4, 8]


def test_a_row_spans_its_line() -> None:
    span = sound("opening,face\n1,hall\n").rows[0].span
    assert (span.line, span.column, span.length, span.text) == (2, 1, 6, "1,hall")


def test_a_bad_row_hides_no_other() -> None:
    survey, log = read('opening,face\n1,"hall\n2,hall\n3\n4,hall,x\n5,hall\n')
    assert survey is not None
    assert values(survey) == [["2", "hall"], ["5", "hall"]]
    assert [(problem.code, problem.span.line) for problem in log if problem.span] == [
        ("survey-quote", 2),
        ("survey-row-short", 4),
        ("survey-row-long", 5),
    ]


def test_a_quote_closed_too_soon_is_marked() -> None:
    _, log = read('opening,face\n1,"hall"way\n')
    assert report_text(log) == (
        "methods/jobs/doors.csv:2:3: error: The quote opened here is not closed at the end of its cell.\n"
        '    1,"hall"way\n'
        "      ^\n"
        "    A quoted cell begins and ends with a double quote and stays on one line; a double quote inside "
        "it is written twice.\n"
        "\n"
        "1 error in 1 file\n"
    )


@pytest.mark.parametrize(("mark", "name"), [(";", "semicolons"), ("\t", "tabs"), ("|", "upright strokes")])
def test_another_separator_is_named(mark: str, name: str) -> None:
    survey, log = read(f"opening{mark}face\n1{mark}hall\n")
    assert survey is None
    assert [problem.values for problem in log] == [{"separators": name}]


def test_a_heading_row_too_wide_is_refused() -> None:
    survey, log = read(",".join(f"c{number}" for number in range(MOST_COLUMNS + 1)))
    assert survey is None
    assert [problem.code for problem in log] == ["survey-too-wide"]


@pytest.mark.parametrize("end", ["", "\n"])
def test_the_number_of_rows_is_bounded(end: str) -> None:
    rows = "opening,face\n" + "\n".join(["1,hall"] * MOST_ROWS) + end
    assert len(sound(rows).rows) == MOST_ROWS
    survey, log = read(rows.rstrip() + "\n2,hall\n2,hall\n")
    assert survey is None
    assert [(problem.code, problem.span.line) for problem in log if problem.span] == [
        ("survey-too-long", MOST_ROWS + 2)
    ]


def test_a_spreadsheet_file_reads_with_its_byte_order_mark(tmp_path: Path) -> None:
    file = tmp_path / "doors.csv"
    file.write_bytes(b"\xef\xbb\xbfopening,face\r\n1,hall\r\n")
    log = ProblemLog()
    survey = read_survey(file, SHOWN, log)
    assert survey is not None
    assert survey.header[0].value == "opening"
    assert survey.header[0].span.column == 1
    assert list(log) == []
