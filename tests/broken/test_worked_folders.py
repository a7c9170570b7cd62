"""Folders that can be read and not worked out, one fault each: it is told once, with nothing after it."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from generator.documents.figures import wanted
from generator.model.folder import load_folder
from generator.problems import ProblemLog
from generator.prose import check_prose, check_unused
from generator.quantities.cutting.plans import cutting_plans
from generator.quantities.lifts import check_lifts
from generator.quantities.work import work_out
from generator.wording.report import report_text

HERE = Path(__file__).parent
BASE = HERE / "whole" / "base"
CASES = sorted(path.parent for path in (HERE / "worked").glob("*/report.txt"))


def found() -> ProblemLog:
    """What is wrong in the folder one stands in, up to the drawings; required sections are left aside."""
    log = ProblemLog()
    project = load_folder(Path(), log)
    for method in project.methods:
        for job in (None, *project.jobs):
            ledger = work_out(method, job, project, log)
            check_prose(ledger, log)
            check_lifts(ledger, log)
            cutting_plans(ledger, project, log)
            asked = wanted(ledger, log)
            if not ledger.broken:
                check_unused(method, {name for each in asked for name, _ in each.order.values}, log)
    return log


def test_there_are_cases() -> None:
    assert len(CASES) >= 6


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_a_fault_is_told_once(case: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    shutil.copytree(BASE, tmp_path, dirs_exist_ok=True)
    shutil.copytree(case, tmp_path, dirs_exist_ok=True)
    monkeypatch.chdir(tmp_path)
    log = found()
    assert report_text(log) == (case / "report.txt").read_text(encoding="utf-8")
    assert len([problem for problem in log if problem.code != "size-unused"]) == 1
