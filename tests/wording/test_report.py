"""Problems as a report, for a person and for a program."""

from __future__ import annotations

import json

import pytest

from generator.problems import Problem, Severity, Span
from generator.quantities.results import Finding, finding_words
from generator.quantities.worked import millimetres
from generator.wording.report import LONGEST_VALUE, counted, report, report_json, report_text


def problem(text: str, column: int, length: int = 1, **changes: object) -> Problem:
    span = Span(file="methods/m.yaml", line=3, column=column, text=text, length=length)
    given: dict[str, object] = {"code": "yaml-tab", "span": span, **changes}
    return Problem(**given)  # type: ignore[arg-type]


def marked(text: str, column: int, length: int = 1) -> list[str]:
    """The line and the caret run as printed."""
    return report_text([problem(text, column, length)]).split("\n")[1:3]


def test_a_report_says_where_what_and_how() -> None:
    told = problem(
        "title: {leg}", 8, 5, code="yaml-brace-text", values={"text": "{leg}", "quoted": '"{leg}"'}
    )
    assert report_text([told]) == (
        "methods/m.yaml:3:8: error: “{leg}” without quotes was read as a mapping, not as text.\n"
        "    title: {leg}\n"
        "           ^^^^^\n"
        '    Put the whole text in quotes: "{leg}"\n'
        "\n"
        "1 error in 1 file\n"
    )


def test_problems_come_in_file_order_with_their_count() -> None:
    later = Problem(code="yaml-tab", span=Span(file="b.yaml", line=1, column=1, text=""))
    warning = Problem(
        code="yaml-tab", span=Span(file="a.yaml", line=9, column=1, text=""), severity=Severity.WARNING
    )
    first = Problem(code="yaml-tab", span=Span(file="a.yaml", line=2, column=1, text=""))
    heads = [line for line in report_text([later, warning, first]).split("\n") if line[:1] not in ("", " ")]
    assert heads == [
        "a.yaml:2:1: error: A tab stands here.",
        "a.yaml:9:1: warning: A tab stands here.",
        "b.yaml:1:1: error: A tab stands here.",
        "2 errors, 1 warning in 2 files",
    ]


@pytest.mark.parametrize(
    ("errors", "warnings", "said"),
    [
        (0, 0, "No faults found."),
        (1, 0, "1 error in 1 file"),
        (3, 0, "3 errors in 1 file"),
        (0, 1, "1 warning in 1 file"),
        (2, 2, "2 errors, 2 warnings in 1 file"),
    ],
)
def test_the_count_is_said_in_whole_words(errors: int, warnings: int, said: str) -> None:
    listed = [problem("a", 1)] * errors + [problem("a", 1, severity=Severity.WARNING)] * warnings
    assert counted(listed) == said


def test_a_problem_without_a_place_has_no_place() -> None:
    assert report_text([Problem(code="yaml-tab")]).split("\n")[0] == "error: A tab stands here."
    assert report_text([Problem(code="yaml-tab")]).endswith("\n\n1 error\n")


@pytest.mark.parametrize(
    ("text", "column", "length", "carets"),
    [
        ("a: b", 4, 1, "       ^"),
        ("a:\tb", 4, 1, "          ^"),
        ("\ta", 1, 1, "    ^^^^"),
        ("幅: 5", 4, 1, "        ^"),
        ("a: 幅広", 4, 2, "       ^^^^"),
        ("e\u0301: x", 5, 1, "       ^"),
        ("a:", 3, 1, "      ^"),
        ("a:", 6, 1, "         ^"),
        ("a: bc", 4, 40, "       ^^"),
    ],
)
def test_carets_stand_under_the_spot(text: str, column: int, length: int, carets: str) -> None:
    assert marked(text, column, length)[1] == carets


def test_what_does_not_show_is_shown() -> None:
    assert marked("a: \x1b[31mb\x00\u202ec", 4)[0] == "    a: �[31mb��c"


@pytest.mark.parametrize(("column", "length"), [(1, 1), (50, 5), (500, 3), (996, 4), (1000, 1), (300, 400)])
def test_a_long_line_is_cut_about_the_spot(column: int, length: int) -> None:
    text = "".join(chr(ord("a") + number % 26) for number in range(1000))
    line, carets = marked(text, column, length)
    run, begin = carets.count("^"), carets.index("^")
    assert len(line) <= 104
    assert (
        line[begin : begin + run].rstrip("…")
        == text[column - 1 :][: len(line[begin : begin + run].rstrip("…"))]
    )
    assert run == min(length, 66)


def test_a_long_value_is_cut_in_the_sentence() -> None:
    told = problem("x", 1, code="yaml-brace-text", values={"text": "x" * 500, "quoted": "y\nz"})
    says = report_text([told]).split("\n")[0]
    assert (
        says
        == f"methods/m.yaml:3:1: error: “{'x' * 119}…” without quotes was read as a mapping, not as text."
    )


def test_colour_marks_severity_and_carets() -> None:
    lines = report_text([problem("a: b", 4, severity=Severity.WARNING)], colour=True).split("\n")
    assert lines[0] == "methods/m.yaml:3:4: \x1b[1;33mwarning\x1b[0m: A tab stands here."
    assert lines[2] == "       \x1b[1;33m^\x1b[0m"


def test_a_program_reads_the_same() -> None:
    told = problem(
        "title: {leg}", 8, 5, code="yaml-brace-text", values={"text": "{leg}", "quoted": '"{leg}"'}
    )
    assert json.loads(report_json([told, Problem(code="yaml-tab", severity=Severity.WARNING)])) == [
        {
            "file": None,
            "line": None,
            "column": None,
            "severity": "warning",
            "code": "yaml-tab",
            "message": "A tab stands here.",
            "expected": "Use spaces: each editor makes a tab as wide as it likes, so it cannot show what "
            "belongs together.",
        },
        {
            "file": "methods/m.yaml",
            "line": 3,
            "column": 8,
            "severity": "error",
            "code": "yaml-brace-text",
            "message": "“{leg}” without quotes was read as a mapping, not as text.",
            "expected": 'Put the whole text in quotes: "{leg}"',
        },
    ]


def test_no_problems_are_an_empty_list() -> None:
    assert report_json([]) == "[]\n"


def test_a_long_list_of_names_ends_after_a_whole_name() -> None:
    names = ", ".join(f"name_{number:03}" for number in range(100))
    values = {"key": "nam", "noun": "a size", "known": names}
    told = report(Problem(code="key-unknown", span=None, values=values)).expected
    listed = told.removeprefix("Keys here are: ").removesuffix("….").rstrip(", ").split(", ")
    assert 50 < len(listed) < 100
    assert set(listed) <= set(names.split(", "))


def test_what_a_calculator_found_is_told_whole() -> None:
    because = finding_words(Finding(code="twisted", limit=millimetres(1), actual=millimetres(8)), space=" ")
    assert len(because) > LONGEST_VALUE
    values = {"way": "Packer with a double quirk", "where": "opening 6, Twisted", "because": because}
    told = report(Problem(code="no-way-left", values=values))
    assert told.says.endswith("an even packer cannot follow a twist.")
