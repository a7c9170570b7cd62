"""The tutor's folder holds the answers; the published site holds none of them and no way to them."""

from __future__ import annotations

import html
import json
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from generator.documents.task import Task
from generator.model.folder import load_folder
from generator.problems import ProblemLog
from generator.quantities.work import work_out
from generator.wording import ENGLISH
from tests.checkers.axe import axe_violations
from tests.checkers.browser import VIEWS, View, opened, overflows
from tests.checkers.findings import Finding, listed
from tests.checkers.links import broken_links, doubled_ids, outside_addresses, read_sheet
from tests.checkers.nu import nu_messages
from tests.checkers.pdf_ua import text_of, ua_failures
from tests.checkers.publication import Published

TEXTS = {".html", ".css", ".js", ".svg", ".csv", ".json", ".webmanifest"}
# Eleven words in a row are an answer given away, even where its beginning or its end is another's.
RUN = 11


@pytest.fixture(scope="session")
def tutor(published: Published) -> Path:
    return published.folder / "output" / "tutor"


@pytest.fixture(scope="session")
def answers(published: Published) -> tuple[str, ...]:
    """Every answer of the demonstration with its values in, as bare words."""
    project = load_folder(published.folder, ProblemLog())
    told = []
    for method in project.methods:
        ledger = work_out(method, None, project, ProblemLog())
        task = Task(project=project, ledger=ledger, pictures={}, language=ENGLISH)
        told += [_bare(task.told(question.answer)) for question in method.questions]
    assert len(told) > 30
    return tuple(told)


def _bare(text: str) -> str:
    """Words and figures alone, so that no markup, break or kind of space can hide them."""
    return " ".join(re.findall(r"\w+", text.lower()))


def _runs(answer: str) -> Iterator[str]:
    words = answer.split()
    for start in range(max(len(words) - RUN, 0) + 1):
        yield " ".join(words[start : start + RUN])


def _told_by(file: Path) -> str:
    if file.suffix == ".pdf":
        return _bare(text_of(file))
    text = html.unescape(re.sub(r"<[^>]*>", " ", file.read_text(encoding="utf-8")))
    return _bare(text)


def test_the_pack_holds_every_answer(tutor: Path, answers: tuple[str, ...]) -> None:
    told = " ".join(_told_by(file) for file in sorted(tutor.glob("*.html")))
    assert [answer for answer in answers if answer not in told] == []


def test_no_answer_reaches_a_learner(published: Published, answers: tuple[str, ...]) -> None:
    files = [
        file for file in sorted(published.site.rglob("*")) if file.suffix in TEXTS or file.suffix == ".pdf"
    ]
    assert len(files) > 20
    given_away = []
    for file in files:
        told = _told_by(file)
        given_away += [
            f"{published.name(file)}: {run}" for answer in answers for run in _runs(answer) if run in told
        ]
    assert given_away == []


def test_no_answer_stands_in_any_byte_of_the_site(published: Published, answers: tuple[str, ...]) -> None:
    starts = [" ".join(answer.split()[:6]).encode() for answer in answers]
    for file in sorted(file for file in published.site.rglob("*") if file.is_file()):
        content = re.sub(rb"\s+", b" ", file.read_bytes().lower())
        assert [start for start in starts if start in content] == [], published.name(file)


def test_no_answer_can_be_searched_for(published: Published, answers: tuple[str, ...]) -> None:
    index = json.loads((published.site / "search.js").read_text(encoding="utf-8").partition("=")[2][:-2])
    parts = [" ".join(index["sentences"][place] for place in part[3]) for part in index["parts"]]
    told = _bare(" ".join(parts))
    assert "quirk" in told
    assert [run for answer in answers for run in _runs(answer) if run in told] == []


def test_no_way_leads_from_the_site_to_the_pack(published: Published) -> None:
    ways = [(page, way.target) for page in published.pages for way in read_sheet(page).pointers]
    assert len(ways) > 50
    assert [way for _, way in ways if "tutor" in way] == []
    inside = published.site.resolve()
    led = {way: (page.parent / way.split("#")[0]).resolve() for page, way in ways if "://" not in way}
    assert [way for way, file in led.items() if not file.is_relative_to(inside)] == []
    assert [file.name for file in published.site.rglob("*") if "tutor" in file.name] == []


def test_the_check_for_answers_bites(tutor: Path, answers: tuple[str, ...]) -> None:
    told = _told_by(tutor / "tutor-architrave-set-back-frame.html")
    assert any(run in told for answer in answers for run in _runs(answer))


def test_the_packs_are_valid_html_and_lead_nowhere_else(tutor: Path) -> None:
    pages = sorted(tutor.glob("*.html"))
    assert len(pages) >= 5
    assert listed(nu_messages(pages)) == ""
    assert listed([*broken_links(tutor), *doubled_ids(tutor), *outside_addresses(tutor)]) == ""


@pytest.mark.parametrize("view", VIEWS, ids=str)
def test_axe_finds_nothing_in_a_pack(tutor: Path, browser: Browser, view: View) -> None:
    found: list[Finding] = []
    for name in ("index.html", "tutor-architrave-set-back-frame.html"):
        with opened(browser, tutor / name, view) as page:
            found += [*axe_violations(page, f"{name} ({view})"), *overflows(page, f"{name} ({view})")]
    assert listed(found) == ""


def test_the_printed_packs_conform_to_pdf_ua(tutor: Path) -> None:
    sheets = sorted(tutor.glob("*.pdf"))
    assert len(sheets) >= 5
    assert listed(fault for sheet in sheets for fault in ua_failures(sheet)) == ""
