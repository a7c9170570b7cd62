"""Every word of ours on a guide and an index goes through the catalogue, and longer words fit a phone."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

from playwright.sync_api import Browser

from generator.documents.index import Listed
from generator.documents.task import Task
from generator.pipeline.editions import guide_in, index_in
from generator.rendering.assets import page_style
from generator.rendering.themes import Theme
from generator.wording.conventions import conventions
from tests.checkers.browser import PHONE, opened, overflows
from tests.checkers.findings import listed
from tests.languages.pseudo import pseudo, unmarked_text

WORD = re.compile(r"[^\W\d_]{3,}")
LANGUAGE_S_OWN_NAME = "polski"


def words_of_ours(html: str, task: Task) -> set[str]:
    """The words that lack their marks, but for names (firm, method, pieces of a plan) and months."""
    method = task.method
    named = f"{task.company} {method.method.value} {method.title.value} {LANGUAGE_S_OWN_NAME} "
    named += " ".join(f"{piece.name} {piece.mark}" for plan in task.plans for piece in plan.order.pieces)
    named += " ".join(conventions("pl").months)
    known = {word.lower() for word in WORD.findall(named)} | {"min"}
    return {word for text in unmarked_text(html) for word in WORD.findall(text) if word.lower() not in known}


def untranslated(task: Task) -> Task:
    """The task as if nobody had put its method into a language, so that all of it is said to be English."""
    return replace(task, project=replace(task.project, translations=()))


def test_a_guide_has_no_word_of_ours_outside_the_catalogue(guide: Task, theme: Theme) -> None:
    page = guide_in(pseudo(), untranslated(guide), "guide", ("pl",), theme)
    assert words_of_ours(page, guide) == set()


def test_an_index_has_no_word_of_ours_outside_the_catalogue(guide: Task, theme: Theme) -> None:
    entry = Listed(guide=untranslated(guide), links=(), statements=())
    assert words_of_ours(index_in(pseudo(), (entry,), ("pl",), theme), guide) == set()


def test_a_word_that_went_round_the_catalogue_is_found(guide: Task, theme: Theme) -> None:
    page = guide_in(pseudo(), untranslated(guide), "guide", ("pl",), theme)
    slipped = page.replace("</h1>", "</h1><p>Measure twice</p>", 1)
    assert words_of_ours(slipped, guide) == {"Measure", "twice"}


def test_words_longer_by_two_fifths_fit_a_phone(
    guide: Task, theme: Theme, browser: Browser, tmp_path: Path
) -> None:
    # Without the web fonts: what stands in for them is wider.
    (tmp_path / "assets").mkdir()
    (tmp_path / "assets" / "page.css").write_text(page_style(theme), encoding="utf-8")
    page = tmp_path / "pl" / "guide.html"
    page.parent.mkdir()
    page.write_text(guide_in(pseudo(longer=0.4), guide, "guide", ("pl",), theme), encoding="utf-8")
    with opened(browser, page, PHONE) as shown:
        assert listed(overflows(shown, "guide, longer by two fifths")) == ""
