"""Broken folders, one fault each: a case's files, laid over a sound folder, get the report beside them."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from generator.model.folder import load_folder
from generator.problems import ProblemLog
from generator.wording.report import report_text

WHOLE = Path(__file__).parent / "whole"
BASE = WHOLE / "base"
CASES = sorted(path.parent for path in WHOLE.glob("*/report.txt"))


@pytest.fixture
def log_of(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Callable[[Path], ProblemLog]:
    """Reads the base folder with a case laid over it, as a user reads the folder he stands in."""

    def read(case: Path) -> ProblemLog:
        shutil.copytree(BASE, tmp_path, dirs_exist_ok=True)
        shutil.copytree(case, tmp_path, dirs_exist_ok=True)
        monkeypatch.chdir(tmp_path)
        log = ProblemLog()
        load_folder(Path(), log)
        return log

    return read


def test_there_are_cases() -> None:
    assert len(CASES) >= 80
    assert {path.parent for path in WHOLE.glob("*/methods")} == {*CASES, BASE}


def test_the_base_has_no_fault(log_of: Callable[[Path], ProblemLog]) -> None:
    assert report_text(log_of(BASE)) == "No faults found.\n"


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_a_broken_folder_gets_its_report(case: Path, log_of: Callable[[Path], ProblemLog]) -> None:
    log = log_of(case)
    assert report_text(log) == (case / "report.txt").read_text(encoding="utf-8")
    assert log.has_errors
    assert all(problem.span is not None and problem.span.line >= 1 for problem in log)
