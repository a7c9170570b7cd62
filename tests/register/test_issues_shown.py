"""What the site shows of the register: issues byte for byte, what superseded them, where pages stand."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from generator.documents.blocks import FrontPage
from generator.model.jobs import DocumentControl
from generator.pipeline.issues import issued_files
from generator.pipeline.standing import ways_to_issues, with_standing
from generator.problems import ProblemLog
from generator.register.book import Register, read_register
from generator.register.entering import enter
from generator.register.lines import Issued
from generator.rendering.html import render_page, render_sheet
from generator.rendering.themes import load_theme
from generator.wording import ENGLISH
from tests.rendering import sample
from tests.safety.folder import JOB, read_job


def issue(revision: str, content: str = "0" * 64) -> Issued:
    return Issued(
        date="2026-11-19", number="ORR-MS-07", revision=revision, status="for construction",
        job="doors", content=content, files="",
    )  # fmt: skip


@pytest.fixture
def register(tmp_path: Path) -> Register:
    """Two issues of one statement."""
    log = ProblemLog()
    for revision in ("C01", "C02"):
        files = {"statement-doors.html": revision.encode(), "inputs/methods/jobs/doors.yaml": b"format: 1\n"}
        assert enter(tmp_path, issue(revision), files, log)
    return read_register(tmp_path, log)


def control() -> DocumentControl:
    document = read_job(JOB).document
    assert document is not None
    return document


def standing(*issued: Issued, content: str = "0" * 64) -> str:
    document = with_standing(sample.statement(), control(), content, issued, ENGLISH)
    front = document.blocks[0]
    assert isinstance(front, FrontPage)
    assert document.issue == front.issue
    for html in (render_page(document, load_theme()), render_sheet(document, load_theme())):
        assert f'<p class="standing">{front.issue.standing}</p>' in html
    return front.issue.standing


def test_the_copies_have_the_bytes_of_the_issue_and_leave_the_inputs_in_the_register(
    register: Register,
) -> None:
    files = issued_files(register, "Hethersedge Joinery", load_theme())
    assert files["issued/ORR-MS-07-C01/statement-doors.html"] == b"C01"
    assert files["issued/ORR-MS-07-C02/statement-doors.html"] == b"C02"
    assert [name for name in files if "inputs" in name] == []


def test_only_an_older_issue_has_a_page_that_says_what_superseded_it(register: Register) -> None:
    files = issued_files(register, "Hethersedge Joinery", load_theme())
    assert "issued/ORR-MS-07-C02.html" not in files
    page = files["issued/ORR-MS-07-C01.html"].decode()
    assert "Superseded by revision C02, issued on 19 November 2026." in re.sub(r"<[^>]*>", "", page)
    assert re.findall(r'href="(ORR[^"]*)"', page) == [
        "ORR-MS-07-C02/statement-doors.html",
        "ORR-MS-07-C01/statement-doors.html",
    ]


def test_an_empty_register_adds_nothing(tmp_path: Path) -> None:
    assert issued_files(read_register(tmp_path, ProblemLog()), "", load_theme()) == {}


def test_a_statement_leads_to_its_issues_the_newest_first() -> None:
    assert [(way.text, way.href) for way in ways_to_issues((issue("C01"), issue("C02")), ENGLISH)] == [
        ("Issued revision C02, 19 November 2026", "issued/ORR-MS-07-C02/statement-doors.html"),
        ("Superseded: revision C01, issued on 19 November 2026", "issued/ORR-MS-07-C01.html"),
    ]


def test_a_statement_never_issued_says_so() -> None:
    assert standing() == "Revision C01 is not in the register of issues."


def test_what_was_issued_says_that_it_is_that() -> None:
    assert standing(issue("B01"), issue("C01")) == (
        "Issued as revision C01 on 19 November 2026; this page is that content."
    )


@pytest.mark.parametrize("last", [issue("C01", "1" * 64), issue("C02")], ids=["content", "revision"])
def test_what_differs_from_the_last_issue_is_not_worked_from(last: Issued) -> None:
    assert standing(last) == (
        f"Changed since revision {last.revision} was issued: not to be worked from until it is issued again."
    )
