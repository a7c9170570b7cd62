"""The search of the published site, opened from disk as on a stick that was handed over."""

from __future__ import annotations

import json
import zipfile
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from tests.checkers.axe import axe_violations
from tests.checkers.browser import PHONE, VIEWS, View, opened, overflows
from tests.checkers.contrast import faint_text
from tests.checkers.findings import listed
from tests.checkers.publication import Published

MOST_BYTES_OF_A_PAGE_IN_THE_INDEX = 25_000


@pytest.fixture
def page(site: Path, browser: Browser) -> Iterator[Page]:
    """Give the index of the site as a phone shows it."""
    with opened(browser, site / "index.html", PHONE) as page:
        yield page


def found(page: Page, words: str) -> list[str]:
    page.get_by_role("searchbox").fill(words)
    page.wait_for_function("document.querySelector('.find [role=status]').textContent")
    return page.locator(".find li a").all_inner_texts()


def told(page: Page) -> str:
    return page.get_by_role("status").inner_text()


def test_a_word_of_a_title_leads_to_its_pages_first(page: Page) -> None:
    found(page, "architrave")
    first = page.locator(".find li").first
    assert "Architrave" in first.inner_text()
    assert first.locator("mark").count() > 0
    assert "places" in told(page)


def test_the_beginning_of_a_word_is_enough_and_marks_on_letters_do_not_matter(page: Page) -> None:
    plain = found(page, "architrave packer")
    assert plain != []
    assert found(page, "ÀRCHITRÂVE  Packér") == plain
    assert found(page, "archi") != []


def test_a_step_is_named_by_its_own_heading(page: Page) -> None:
    assert found(page, "mark the second quirk")[0] == "Mark the second quirk"


def test_neither_guide_nor_statement_buries_the_other(page: Page) -> None:
    found(page, "set-back")
    first = page.locator(".find li a").evaluate_all("links => links.slice(0, 4).map(a => a.pathname)")
    assert any("guide-architrave" in way for way in first)
    assert any("statement-reading-room-doors" in way for way in first)


def test_a_part_of_an_annex_comes_after_the_like_outside_it(page: Page) -> None:
    parts = [[0, "annex-dust", "Dust", [0], 1], [1, "dust", "Dust", [0]]]
    told = {"pages": [["a.html", "A"], ["b.html", "B"]], "sentences": ["Dust is drawn off."], "parts": parts}
    page.evaluate("told => Object.defineProperty(self, 'SEARCHED', {value: told})", told)
    assert found(page, "dust") == ["Dust", "Dust"]
    hashes = page.locator(".find li a").evaluate_all("links => links.map(link => link.hash)")
    assert hashes == ["#dust", "#annex-dust"]


def test_arithmetic_is_searched_by_its_headings_alone(site: Path) -> None:
    index = json.loads((site / "search.js").read_text(encoding="utf-8").removeprefix("self.SEARCHED=")[:-2])
    arithmetic = [part for part in index["parts"] if part[1] in ("workings", "policy")]
    assert arithmetic
    assert [part[3:] for part in arithmetic] == [[[], 1]] * len(arithmetic)
    steps = [part for part in index["parts"] if part[1].startswith("step-")]
    assert [part for part in steps if not (part[2] and part[3])] == []


def test_the_search_is_of_the_site_alone(published: Published) -> None:
    assert (published.site / "assets" / "find.js").is_file()
    private = [file.name for file in (published.folder / "output" / "tutor").rglob("*")]
    assert "page.js" in private
    parcels = list(published.site.glob("*.zip"))
    assert parcels
    carried = [name for each in parcels for name in zipfile.ZipFile(each).namelist()]
    assert [
        name for name in (*private, *carried) if name.endswith(("find.js", "search.js", "worker.js"))
    ] == []


def test_every_word_must_stand_in_a_part(page: Page) -> None:
    assert len(found(page, "quirk")) > 0
    assert found(page, "quirk zeppelin") == []


def test_nothing_found_is_said_plainly(page: Page) -> None:
    assert found(page, "zeppelin") == []
    assert told(page).startswith("Nothing found for “zeppelin”.")


def test_what_was_found_can_be_opened_by_the_keyboard_alone(page: Page) -> None:
    page.get_by_role("searchbox").focus()
    page.keyboard.type("second quirk")
    page.wait_for_selector(".find li a")
    page.keyboard.press("Enter")
    aimed = page.evaluate("document.activeElement.getAttribute('href')")
    page.keyboard.press("Enter")
    page.wait_for_url(f"**/{aimed}")
    anchor = aimed.partition("#")[2]
    assert anchor
    assert page.locator(f"[id='{anchor}']").count() == 1


def test_escape_clears_the_search(page: Page) -> None:
    found(page, "packer")
    page.keyboard.press("Escape")
    assert page.locator(".find li").count() == 0
    assert page.get_by_role("searchbox").input_value() == ""


def test_a_search_is_not_taken_for_markup(page: Page) -> None:
    found(page, "<img src=x>zeppelin")
    assert page.locator(".find img").count() == 0


@pytest.mark.parametrize("view", VIEWS, ids=str)
def test_results_are_clean_to_axe_and_stay_within_the_screen(
    site: Path, browser: Browser, view: View
) -> None:
    with opened(browser, site / "index.html", view) as page:
        assert found(page, "dust") != []
        where = f"search ({view})"
        faults = [*axe_violations(page, where), *faint_text(page, where), *overflows(page, where)]
    assert listed(faults) == ""


def test_the_words_searched_are_fetched_once_the_field_is_used_and_no_sooner(
    site: Path, browser: Browser
) -> None:
    with opened(browser, site / "index.html", PHONE) as page:
        assert page.evaluate("self.SEARCHED === undefined")
        page.get_by_role("searchbox").focus()
        page.wait_for_function("self.SEARCHED !== undefined")
    pages = [*site.glob("guide-*.html"), *site.glob("statement-*.html")]
    assert (site / "search.js").stat().st_size < MOST_BYTES_OF_A_PAGE_IN_THE_INDEX * len(pages)
