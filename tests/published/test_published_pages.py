"""The published pages held against the HTML standard, WCAG, the keyboard, a narrow screen and a scale."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.checkers.axe import axe_violations, axe_violations_of_colour
from tests.checkers.browser import (
    DESK,
    PHONE,
    PHONE_WITHOUT_SCRIPTS,
    VIEWS,
    View,
    console_errors,
    headings,
    leafed,
    opened,
    overflows,
    readable_lines,
    weight,
)
from tests.checkers.contrast import faint_text
from tests.checkers.findings import Finding, listed
from tests.checkers.keyboard import keyboard_faults
from tests.checkers.leftovers import other_tools, unfilled
from tests.checkers.links import broken_links, doubled_ids, outside_addresses, read_sheet
from tests.checkers.nu import nu_messages
from tests.checkers.publication import Published

MOST_BYTES = 300_000
NARROW = View(width=320, height=640)
KINDS = ("index.html", "guide-architrave-set-back-frame.html", "statement-reading-room-doors.html")


def test_there_is_an_index_a_guide_and_a_statement(published: Published) -> None:
    assert (published.site / "index.html").is_file()
    assert len(published.pages) >= 3


def test_the_html_checker_says_nothing(published: Published) -> None:
    assert listed(nu_messages([*published.pages, *sorted(published.site.rglob("*.css"))])) == ""


@pytest.mark.parametrize("view", VIEWS, ids=str)
def test_axe_finds_nothing_and_all_text_stands_out(
    published: Published, browser: Browser, view: View
) -> None:
    """The dark pages differ in their colours alone, so that only rules of colour are tried on them again."""
    rules = axe_violations if view.scheme == "light" else axe_violations_of_colour
    found: list[Finding] = []
    for file, page in leafed(browser, published.looked_at, view):
        where = f"{published.name(file)} ({view})"
        found += [*rules(page, where), *faint_text(page, where)]
    assert listed(found) == ""


@pytest.mark.parametrize("view", [NARROW, PHONE, DESK], ids=str)
def test_no_page_scrolls_sideways(published: Published, browser: Browser, view: View) -> None:
    found: list[Finding] = []
    for file, page in leafed(browser, published.looked_at, view):
        found += overflows(page, f"{published.name(file)} ({view})")
    assert listed(found) == ""


def test_the_keyboard_reaches_everything_and_shows_where_it_is(
    published: Published, browser: Browser
) -> None:
    found: list[Finding] = []
    for file, page in leafed(browser, published.looked_at, PHONE):
        found += keyboard_faults(page, f"{published.name(file)} ({PHONE})")
    assert listed(found) == ""


@pytest.mark.parametrize("name", KINDS)
def test_the_keyboard_reaches_everything_at_a_desk(published: Published, browser: Browser, name: str) -> None:
    """One page of each kind, since the pages of a kind are laid alike at that width."""
    with opened(browser, published.site / name, DESK) as page:
        assert listed(keyboard_faults(page, f"{name} ({DESK})")) == ""


def test_everything_is_readable_with_scripts_off(published: Published, browser: Browser) -> None:
    with_scripts = {file: readable_lines(page) for file, page in leafed(browser, published.looked_at, PHONE)}
    for file, page in leafed(browser, published.looked_at, PHONE_WITHOUT_SCRIPTS):
        without = readable_lines(page)
        hidden = [text for text, seen in headings(page) if not seen]
        assert [line for line in with_scripts[file] if line not in without] == [], published.name(file)
        assert hidden == [], published.name(file)


def test_no_page_reports_an_error(published: Published, browser: Browser) -> None:
    assert listed(console_errors(browser, published.looked_at, PHONE)) == ""


def test_a_page_with_all_it_fetches_weighs_under_300_kb(published: Published, browser: Browser) -> None:
    weights = {published.name(file): weight(browser, file) for file in published.looked_at}
    assert {name: bytes_ for name, bytes_ in weights.items() if bytes_ >= MOST_BYTES} == {}


def test_links_lead_somewhere_inside_the_site(site: Path) -> None:
    assert listed(broken_links(site)) == ""
    assert listed(doubled_ids(site)) == ""
    assert listed(outside_addresses(site)) == ""


def test_every_page_can_be_reached_from_the_index(published: Published) -> None:
    ways = {file.resolve(): read_sheet(file).pointers for file in published.pages}
    seen, ahead = set(), [(published.site / "index.html").resolve()]
    while ahead:
        file = ahead.pop()
        seen.add(file)
        there = {
            (file.parent / way.target.split("#")[0]).resolve() for way in ways.get(file, ()) if way.target
        }
        ahead += sorted(there - seen - set(ahead))
    meant = {file.resolve() for file in (*published.pages, *published.sheets)}
    assert sorted(published.name(published.site / lost.name) for lost in meant - seen) == []


def test_every_page_names_itself_and_its_language(published: Published) -> None:
    sheets = {published.name(file): read_sheet(file) for file in published.pages}
    meant = {published.name(file): published.tag(file) or "en-GB" for file in published.pages}
    assert {name: sheet.language for name, sheet in sheets.items()} == meant
    # A guide that nobody translated keeps its English title in the other language's folder.
    titles = [(sheet.language, sheet.title) for sheet in sheets.values()]
    assert all(title for _, title in titles)
    assert sorted(titles) == sorted(set(titles))


def test_no_page_speaks_of_its_making(published: Published, browser: Browser) -> None:
    texts = [
        file for file in sorted(published.site.rglob("*")) if file.suffix in {".html", ".css", ".js", ".svg"}
    ]
    found = [
        fault
        for file in texts
        for fault in other_tools(file.read_text(encoding="utf-8"), published.name(file))
    ]
    for file, page in leafed(browser, published.looked_at, PHONE_WITHOUT_SCRIPTS):
        found += unfilled(readable_lines(page), published.name(file))
    assert listed(found) == ""


def test_file_names_travel(published: Published) -> None:
    names = [published.name(file) for file in published.site.rglob("*") if file.is_file()]
    assert [name for name in names if not re.fullmatch(r"[A-Za-z0-9_./-]+", name)] == []
    assert len({name.lower() for name in names}) == len(names)
