"""The published guides in further languages: how they lead to each other, are searched and kept."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.checkers.browser import PHONE, opened
from tests.checkers.links import read_sheet
from tests.checkers.publication import LANGUAGES, TRANSLATED, Published

ALTERNATE = re.compile(r'<link rel="alternate" hreflang="([^"]+)" href="([^"]+)">')


def alternates(page: Path) -> dict[str, Path]:
    found = ALTERNATE.findall(page.read_text(encoding="utf-8"))
    return {tag: (page.parent / way).resolve() for tag, way in found}


def test_every_guide_and_the_index_stand_in_every_language(published: Published) -> None:
    english = {file.name for file in published.site.glob("guide-*.html")} | {"index.html"}
    for tag in LANGUAGES:
        assert {file.name for file in (published.site / tag).glob("*.html")} == english


def test_the_editions_of_a_page_name_each_other_both_ways(published: Published) -> None:
    for tag in LANGUAGES:
        for there in (published.site / tag).glob("*.html"):
            here = published.site / there.name
            meant = {"en-GB": here.resolve(), "x-default": here.resolve(), tag: there.resolve()}
            assert alternates(here) == alternates(there) == meant


def test_a_statement_stands_in_english_alone(published: Published) -> None:
    assert [page.name for page in published.site.glob("statement-*.html") if alternates(page)] == []


@pytest.mark.parametrize("name", ["index.html", TRANSLATED])
def test_a_reader_can_change_the_language_and_back(site: Path, browser: Browser, name: str) -> None:
    with opened(browser, site / name, PHONE) as page:
        page.get_by_role("link", name="polski").click()
        assert page.locator("html").get_attribute("lang") == "pl"
        assert page.locator(".translated").is_visible()
        page.get_by_role("link", name="English").first.click()
        assert page.locator("html").get_attribute("lang") == "en-GB"


def test_the_index_of_a_language_searches_its_own_guides(site: Path, browser: Browser) -> None:
    with opened(browser, site / "pl" / "index.html", PHONE) as page:
        page.get_by_role("searchbox").fill("odsadzke")
        page.wait_for_function("document.querySelector('.find [role=status]').textContent")
        first = page.locator(".find li a").first
        assert "odsadzkę" in first.inner_text()
        assert "/pl/guide-" in (first.evaluate("link => link.href"))
        assert page.get_by_role("status").first.inner_text().startswith("Liczba miejsc: ")


def test_the_worker_keeps_the_pages_of_a_language_too(site: Path) -> None:
    script = (site / "worker.js").read_text(encoding="utf-8")
    kept = json.loads(script.split("const PUBLISHED = ")[1].split(";\n")[0])["pages"]
    assert kept["pl/index.html"] == ["pl/search.js"]
    assert f"pl/{TRANSLATED}" in kept
    assert read_sheet(site / "pl" / TRANSLATED).language == "pl"
    assert 'data-worker="../worker.js"' in (site / "pl" / TRANSLATED).read_text(encoding="utf-8")
