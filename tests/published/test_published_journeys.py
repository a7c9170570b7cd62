"""Whole ways through the published site: by the keyboard alone, without scripts, and with the network cut."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page

from tests.checkers.browser import PHONE, PHONE_WITHOUT_SCRIPTS, opened
from tests.published.conftest import opened_and_kept

GUIDE = "guide-architrave-set-back-frame.html"
PRESSES = 400


@pytest.fixture
def index(site: Path, browser: Browser) -> Iterator[Page]:
    """Give the index of the site as a phone shows it."""
    with opened(browser, site / "index.html", PHONE) as page:
        yield page


def tab_to(page: Page, selector: str, key: str = "Tab") -> None:
    """Press Tab, or Tab with Shift, until the focus rests on what the selector names."""
    for _ in range(PRESSES):
        if page.evaluate("wanted => document.activeElement.matches(wanted)", selector):
            return
        page.keyboard.press(key)
    raise AssertionError(f"Tab never reaches {selector}")


def test_by_the_keyboard_alone_from_the_search_to_the_file(index: Page, tmp_path: Path) -> None:
    page = index
    tab_to(page, ".skip")
    page.keyboard.press("Enter")
    tab_to(page, "input[type=search]")
    page.keyboard.type("take the set-back readings")
    page.wait_for_selector(".find li a")
    page.keyboard.press("Enter")
    assert (
        page.evaluate("document.activeElement.textContent")
        == "Take the set-back readings and settle the packer"
    )
    page.keyboard.press("Enter")
    page.wait_for_url(f"**/{GUIDE}#step-2")
    tab_to(page, "#step-2 .ticks input")
    page.keyboard.press("Space")
    tab_to(page, "#note-step-2")
    page.keyboard.type("Block slips at the head.")
    tab_to(page, "[data-act=read-steps]", "Shift+Tab")
    page.keyboard.press("Enter")
    assert page.locator(".step >> visible=true").count() == 1
    page.keyboard.press("Escape")
    assert page.locator("#hazards").is_visible()
    page.locator("#own-name").focus()
    page.keyboard.press("Tab")
    with page.expect_download() as coming:
        page.keyboard.press("Enter")
    file = tmp_path / "kept.html"
    coming.value.save_as(file)
    text = file.read_text(encoding="utf-8")
    assert "Block slips at the head." in text
    assert text.count("☑") == 1


def test_without_scripts_every_list_leads_on_and_no_control_is_dead(site: Path, browser: Browser) -> None:
    with opened(browser, site / "index.html", PHONE_WITHOUT_SCRIPTS) as page:
        assert page.locator("button, select, .by-script").locator("visible=true").count() == 0
        page.locator("nav.ways-in a[href='#by-hazard']").click()
        page.locator("#by-hazard a").first.click()
        page.wait_for_url("**/guide-*.html#hazard-*")
        assert page.locator(":target >> visible=true").count() == 1
        assert page.locator("button, textarea, .by-script").locator("visible=true").count() == 0
        assert page.locator("#stop >> visible=true").count() == 1


def test_the_list_is_narrowed_to_a_tool_and_a_hazard_together(index: Page) -> None:
    methods = index.locator(".method >> visible=true")
    every = methods.count()
    index.select_option("#sieve-tool", "tool-chalk-line")
    assert 0 < methods.count() < every
    count = methods.count()
    assert index.locator(".sieve [role=status]").inner_text() == f"Methods shown: {count} of {every}."
    index.select_option("#sieve-stage", "stage-second-fixing")
    index.select_option("#sieve-tool", "tool-set-back-block")
    assert methods.locator(".kicker").all_inner_texts() == ["SF-07"]
    for list_ in ("stage", "tool", "hazard"):
        index.select_option(f"#sieve-{list_}", "")
    assert methods.count() == every
    assert index.locator(".sieve [role=status]").inner_text() == ""


def test_with_the_network_cut_notes_are_kept_and_saved(
    served: tuple[Path, str], context: BrowserContext, tmp_path: Path
) -> None:
    _, address = served
    page = opened_and_kept(context, address + GUIDE)
    context.set_offline(True)
    page.reload()
    page.locator(".lent").wait_for()
    page.check("#step-1 .ticks input >> nth=0")
    page.fill("#note-step-1", "No signal here.")
    page.reload()
    assert page.input_value("#note-step-1") == "No signal here."
    assert page.is_checked("#step-1 .ticks input >> nth=0")
    with page.expect_download() as coming:
        page.get_by_role("button", name="Save my ticks and notes").click()
    coming.value.save_as(tmp_path / "kept.html")
    assert "No signal here." in (tmp_path / "kept.html").read_text(encoding="utf-8")
    page.get_by_role("button", name="Read step by step").click()
    assert page.locator(".step >> visible=true").count() == 1
