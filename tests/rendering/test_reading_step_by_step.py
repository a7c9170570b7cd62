"""Reading a guide one step at a time: hazards in sight, no hold point passed, the way out always there."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from tests.checkers.axe import axe_violations
from tests.checkers.browser import DESK_DARK, PHONE, View, opened, overflows
from tests.checkers.contrast import faint_text
from tests.checkers.findings import listed


@pytest.fixture
def page(pages: dict[str, Path], browser: Browser) -> Iterator[Page]:
    """Give the guide as a phone shows it, read step by step from the first."""
    with opened(browser, pages["guide"], PHONE) as page:
        page.get_by_role("button", name="Read step by step").click()
        yield page


def steps_shown(page: Page) -> list[str]:
    return page.locator(".step >> visible=true").evaluate_all("steps => steps.map(step => step.id)")


def held(page: Page) -> list[int]:
    """The numbers of the steps that end in a hold point."""
    return page.locator(".step:has(.hold)").evaluate_all("steps => steps.map(step => +step.id.slice(5))")


def dangerous(page: Page) -> int:
    """The number of the first step that meets a hazard."""
    met = page.locator(".step:has(.need-hazards)").first.get_attribute("id")
    assert met is not None
    return int(met.removeprefix("step-"))


def turn(page: Page, key: str) -> None:
    """Press a key and let what follows the address happen."""
    page.keyboard.press(key)
    page.evaluate("() => new Promise(done => setTimeout(done, 30))")


def turn_to(page: Page, number: int) -> None:
    """Turn the pages by the keyboard alone, looking at each hold point on the way."""
    for _ in range(60):
        if steps_shown(page) == [f"step-{number}"]:
            return
        turn(page, "ArrowRight")
    raise AssertionError(f"step {number} was never shown")


def test_one_step_stands_alone_with_its_number_and_its_hazards(page: Page) -> None:
    assert steps_shown(page) == ["step-1"]
    number = dangerous(page)
    turn_to(page, number)
    head = page.locator(".reading-head")
    count = page.locator(".step").count()
    assert head.locator("strong").inner_text() == f"Step {number} of {count}"
    hazards = page.locator(f"#step-{number} .need-hazards a").all_text_contents()
    assert hazards
    assert head.locator(".reading-risks a").all_inner_texts() == hazards
    assert page.locator(".stop-list").is_visible()
    assert not page.locator("#hazards").is_visible()


def test_the_head_stays_in_sight_to_the_end_of_the_step(page: Page) -> None:
    page.mouse.wheel(0, 4000)
    page.wait_for_function("scrollY > 100")
    box = page.locator(".reading-head").bounding_box()
    assert box is not None
    assert 0 <= box["y"] < 10


def test_the_arrow_keys_and_the_buttons_turn_the_page(page: Page) -> None:
    turn_to(page, 2)
    assert page.url.endswith("#step-2")
    turn(page, "ArrowLeft")
    assert steps_shown(page) == ["step-1"]
    page.locator("#step-1 .step-foot a").last.click()
    page.wait_for_function("document.querySelector('#step-2.now')")
    title = page.locator("#step-2 .step-title").inner_text()
    assert page.evaluate("document.activeElement.innerText") == title


def test_arrow_keys_in_a_note_move_the_cursor_and_not_the_page(page: Page) -> None:
    page.fill("#note-step-1", "ab")
    turn(page, "ArrowRight")
    assert steps_shown(page) == ["step-1"]


def test_no_hold_point_is_passed_unseen(page: Page) -> None:
    first = held(page)[0]
    last = page.locator(".step").count()
    page.evaluate(f"location.hash = 'step-{last}'")
    page.wait_for_function("document.querySelector('.reading-told').textContent")
    assert steps_shown(page) == [f"step-{first}"]
    told = page.locator(".reading-told").inner_text()
    assert told == f"First the hold point of step {first}. Look at it, then go on."
    assert page.evaluate("document.activeElement.classList.contains('hold')")
    turn_to(page, last)
    assert page.locator(".reading-told").inner_text() == ""


def test_a_hold_point_seen_once_need_not_be_seen_again(page: Page) -> None:
    last = page.locator(".step").count()
    turn_to(page, last)
    page.reload()
    page.evaluate("location.hash = ''")
    page.get_by_role("button", name="Read step by step").click()
    assert steps_shown(page) == [f"step-{last}"]


def test_the_way_out_leads_to_the_step_in_hand(page: Page) -> None:
    turn_to(page, 2)
    page.get_by_role("button", name="Whole guide").click()
    assert page.locator("#hazards").is_visible()
    box = page.locator("#step-2").bounding_box()
    assert box is not None
    assert abs(box["y"]) < 100
    page.get_by_role("button", name="Read step by step").click()
    turn(page, "Escape")
    assert page.locator("#hazards").is_visible()


def test_a_hazard_is_looked_up_in_the_whole_guide_and_going_back_reads_on(page: Page) -> None:
    number = dangerous(page)
    turn_to(page, number)
    page.locator(".reading-risks a").first.click()
    page.wait_for_function("!document.documentElement.classList.contains('stepwise')")
    assert page.locator("#hazards").is_visible()
    page.go_back()
    page.wait_for_function("document.documentElement.classList.contains('stepwise')")
    assert steps_shown(page) == [f"step-{number}"]


def test_what_stops_the_work_is_shown_without_leaving_the_step(page: Page) -> None:
    page.get_by_role("link", name="When to stop").click()
    page.wait_for_function("document.activeElement.classList.contains('stop-list')")
    assert steps_shown(page) == ["step-1"]
    assert page.url.endswith("#step-1")


def test_a_link_to_a_step_opens_the_whole_guide_at_it(pages: dict[str, Path], browser: Browser) -> None:
    with opened(browser, pages["guide"], PHONE) as page:
        page.goto(pages["guide"].as_uri() + "#step-3")
        assert len(steps_shown(page)) == page.locator(".step").count()
        box = page.locator("#step-3").bounding_box()
        assert box is not None
        assert abs(box["y"]) < 100


def test_printing_while_reading_prints_the_whole_guide(page: Page) -> None:
    page.emulate_media(media="print")
    assert len(steps_shown(page)) == page.locator(".step").count()
    assert not page.locator(".reading-head").is_visible()
    assert page.locator("#hazards").is_visible()


@pytest.mark.parametrize("view", [PHONE, DESK_DARK], ids=str)
def test_a_step_alone_is_accessible_and_fits_the_window(
    pages: dict[str, Path], view: View, browser: Browser
) -> None:
    with opened(browser, pages["guide"], view) as page:
        page.get_by_role("button", name="Read step by step").click()
        turn_to(page, 2)
        faults = [*axe_violations(page, "reading"), *faint_text(page, "reading"), *overflows(page, "reading")]
    assert listed(faults) == ""
