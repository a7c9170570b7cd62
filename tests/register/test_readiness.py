"""What a statement must have before it is issued; each refusal stands at the line that is to be changed."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import pytest

from generator.model.folder import load_folder
from generator.model.jobs import DocumentControl
from generator.pipeline.issuing import _check_ready, _refuse
from generator.problems import ProblemLog
from generator.register.lines import Issued
from generator.wording.report import report_text

ROOT = Path(__file__).parents[2]
JOB = "methods/jobs/reading-room-leaf.yaml"


@dataclass(frozen=True)
class Case:
    """A line of the job file as it is and as the case has it, and where and what is then reported."""

    old: str
    new: str
    place: str
    says: str


CASES = (
    Case("status: for construction", "status: draft", "8:11", "the status draft is not issued"),
    Case("status: for construction", "status: withdrawn", "8:11", "the status withdrawn is not issued"),
    Case("  issued: 2026-11-19\n", "", "6:11", "issued is not given"),
    Case("  checked: {by: Marit Sallowfield, role: site supervisor, date: 2026-11-18}\n", "", "6:11",
         "checked is not given"),
    Case("  approved: {by: Josse Hethersedge, role: director, date: 2026-11-19}\n", "", "6:11",
         "approved is not given"),
)  # fmt: skip


def control_of(tmp_path: Path, old: str = "", new: str = "") -> DocumentControl:
    text = (ROOT / JOB).read_text()
    assert old in text
    for path in (ROOT / "methods").rglob("*.*"):
        if path.suffix in (".yaml", ".csv") and path.relative_to(ROOT).parts[1] != "register":
            copy = tmp_path / path.relative_to(ROOT)
            copy.parent.mkdir(parents=True, exist_ok=True)
            copy.write_bytes(path.read_bytes())
    (tmp_path / JOB).write_text(text.replace(old, new, 1) if old else text)
    log = ProblemLog()
    (job,) = (each for each in load_folder(Path(), log).jobs if each.span.file == JOB)
    assert not log.has_errors, report_text(log)
    assert job.document
    return job.document


@pytest.fixture(autouse=True)
def _here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)


def test_a_signed_statement_for_construction_is_ready(tmp_path: Path) -> None:
    log = ProblemLog()
    _check_ready(control_of(tmp_path), log)
    assert list(log) == []


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.says)
def test_what_is_not_ready_is_refused_at_its_line(case: Case, tmp_path: Path) -> None:
    log = ProblemLog()
    _check_ready(control_of(tmp_path, case.old, case.new), log)
    (problem,) = log
    assert problem.span
    assert f"{problem.span.line}:{problem.span.column}" == case.place
    assert case.says in report_text(log)


def test_an_issued_revision_is_refused_at_the_line_of_the_revision(tmp_path: Path) -> None:
    log, control = ProblemLog(), control_of(tmp_path)
    was = Issued(date="2026-11-19", number="ORR-MS-04", revision="C01", status="for construction",
                 job="leaf", content="", files="")  # fmt: skip
    _refuse(was, control, log)
    (problem,) = log
    assert problem.span
    assert (problem.span.file, problem.span.line, problem.span.column) == (JOB, 7, 13)
    assert "Revision C01 of ORR-MS-04 was issued on 2026-11-19" in report_text(log)
