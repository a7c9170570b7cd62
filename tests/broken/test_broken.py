"""Broken files, one fault each: a folder a case, with the report it gets beside it in report.txt."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.wording.report import report_text
from tests.broken.checking import check

CASES = sorted(path.parent for path in Path(__file__).parent.glob("*/report.txt"))


def test_there_are_cases() -> None:
    assert len(CASES) >= 45


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_a_broken_file_gets_its_report(case: Path) -> None:
    assert report_text(check(case)) == (case / "report.txt").read_text(encoding="utf-8")


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_a_report_names_the_place_and_the_cure(case: Path) -> None:
    log = check(case)
    files = {path.relative_to(case).as_posix() for path in (case / "methods").rglob("*.*")}
    assert log.has_errors
    for problem in log:
        assert problem.span is not None
        assert problem.span.file in files
        assert (problem.span.line, problem.span.column) >= (1, 1)


def test_every_folder_has_a_report() -> None:
    folders = {path.parent for path in Path(__file__).parent.glob("*/methods")}
    assert folders == set(CASES)
