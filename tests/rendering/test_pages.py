"""Web pages: valid, accessible, whole without scripts, nothing running off a telephone."""

from __future__ import annotations

import re
from itertools import pairwise
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.checkers.axe import axe_violations
from tests.checkers.browser import (
    PHONE,
    PHONE_WITHOUT_SCRIPTS,
    VIEWS,
    View,
    headings,
    loads,
    opened,
    overflows,
)
from tests.checkers.findings import listed
from tests.checkers.keyboard import keyboard_faults
from tests.checkers.nu import nu_messages

KINDS = ("statement", "guide", "index")


def test_pages_are_valid_html(pages: dict[str, Path]) -> None:
    assert listed(nu_messages(pages.values())) == ""


@pytest.mark.parametrize("view", VIEWS, ids=str)
@pytest.mark.parametrize("kind", KINDS)
def test_pages_are_accessible_and_fit_the_window(
    kind: str, view: View, pages: dict[str, Path], browser: Browser
) -> None:
    with opened(browser, pages[kind], view) as page:
        assert listed(axe_violations(page, kind)) == ""
        assert listed(overflows(page, kind)) == ""


@pytest.mark.parametrize("kind", KINDS)
def test_the_keyboard_reaches_everything(kind: str, pages: dict[str, Path], browser: Browser) -> None:
    with opened(browser, pages[kind], VIEWS[-1]) as page:
        assert listed(keyboard_faults(page, kind)) == ""


@pytest.mark.parametrize("kind", KINDS)
def test_headings_nest_under_one_title(kind: str, pages: dict[str, Path]) -> None:
    levels = [int(level) for level in re.findall(r"<h([1-6])\b", pages[kind].read_text(encoding="utf-8"))]
    assert levels.count(1) == 1
    assert levels[0] == 1
    assert all(later <= earlier + 1 for earlier, later in pairwise(levels))


def test_every_id_stands_once_with_several_drawings_inline(pages: dict[str, Path]) -> None:
    text = pages["statement"].read_text(encoding="utf-8")
    ids = re.findall(r'\bid="([^"]+)"', text)
    assert text.count('<svg xmlns="http://www.w3.org/2000/svg" class="drawing"') >= 4
    assert len(ids) == len(set(ids))


def test_a_guide_is_whole_without_scripts(pages: dict[str, Path], browser: Browser) -> None:
    with opened(browser, pages["guide"], PHONE_WITHOUT_SCRIPTS) as page:
        assert all(seen for _, seen in headings(page))
        page.click("a[href='#step-5'].button")
        page.check("#step-5 .ticks input >> nth=0")
        assert page.is_checked("#step-5 .ticks input >> nth=0")


def test_the_pointer_stands_at_the_step_in_hand_without_scripts(
    pages: dict[str, Path], browser: Browser
) -> None:
    with opened(browser, pages["guide"], PHONE_WITHOUT_SCRIPTS) as page:
        page.goto(f"{pages['guide'].as_uri()}#step-5")
        page.mouse.wheel(0, 400)
        page.wait_for_timeout(200)
        pointer, mark = (
            page.locator("#step-5 .pointer").bounding_box(),
            page.locator(".rod li >> nth=4").bounding_box(),
        )
        assert pointer and mark
        assert abs(pointer["y"] + pointer["height"] / 2 - mark["y"] - mark["height"] / 2) < 2


def test_ticks_are_kept_on_the_device(pages: dict[str, Path], browser: Browser) -> None:
    with opened(browser, pages["guide"], PHONE) as page:
        for box in page.locator("#step-1 .ticks input").all():
            box.check()
        page.reload()
        assert all(box.is_checked() for box in page.locator("#step-1 .ticks input").all())
        assert page.locator(".rod li.done").count() == 1


@pytest.mark.parametrize("kind", KINDS)
def test_pages_ask_only_for_what_lies_beside_them(
    kind: str, pages: dict[str, Path], browser: Browser
) -> None:
    folder = pages[kind].parent.resolve().as_uri()
    assert [address for address in loads(browser, pages[kind]) if not address.startswith(folder)] == []


@pytest.mark.parametrize("kind", KINDS)
def test_controls_are_big_enough_for_a_thumb(kind: str, pages: dict[str, Path], browser: Browser) -> None:
    with opened(browser, pages[kind], PHONE) as page:
        small = page.evaluate(
            "() => [...document.querySelectorAll('label.tick, .button, .contents a, .links a, .step-bar a')]"
            ".filter(e => e.checkVisibility() && e.getBoundingClientRect().height < 40)"
            ".map(e => e.className + ' ' + e.innerText)"
        )
    assert small == []


def test_a_drawing_fills_the_screen_and_goes_back(pages: dict[str, Path], browser: Browser) -> None:
    with opened(browser, pages["guide"], PHONE) as page:
        page.click("#figure-3 .enlarge")
        assert page.locator("dialog[open] svg.drawing").count() == 1
        assert page.locator("#figure-3 svg.drawing").count() == 0
        page.keyboard.press("Escape")
        page.locator("#figure-3 svg.drawing").wait_for(state="attached", timeout=5000)
        assert page.evaluate("document.activeElement.className") == "button enlarge"
