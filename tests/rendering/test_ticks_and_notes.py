"""What a learner adds to a guide: kept on the device, taken away in a file, never on changed words."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from generator.documents.blocks import Block, Document, Sequence, Step
from generator.rendering.html import render_page
from generator.rendering.themes import Theme
from tests.checkers.axe import axe_violations
from tests.checkers.browser import DESK_DARK, PHONE, PHONE_WITHOUT_SCRIPTS, View, opened, overflows
from tests.checkers.contrast import faint_text
from tests.checkers.findings import listed
from tests.rendering import sample

TICK = "#step-2 .ticks input >> nth=0"
NOTE = "#note-step-2"
RESTORED = "() => localStorage.setItem('kept:' + location.pathname, JSON.stringify(%s))"
STORED = "() => JSON.parse(localStorage.getItem('kept:' + location.pathname))"


@pytest.fixture
def page(pages: dict[str, Path], browser: Browser) -> Iterator[Page]:
    """Give the guide as a phone shows it, on a device that keeps nothing of it yet."""
    with opened(browser, pages["guide"], PHONE) as page:
        yield page


def written(page: Page) -> None:
    page.check(TICK)
    page.fill(NOTE, "The square <slips>.")
    page.fill("#own-name", "Jo Fairlie")


def saved(page: Page, folder: Path) -> Path:
    with page.expect_download() as coming:
        page.get_by_role("button", name="Save my ticks and notes").click()
    file = folder / coming.value.suggested_filename
    coming.value.save_as(file)
    return file


def read_back(page: Page, file: Path) -> str:
    page.set_input_files("#own [type=file]", file)
    page.wait_for_function(
        "document.querySelector('.own-told').textContent || document.querySelector('.ask').open"
    )
    return page.locator(".own-told").inner_text()


def answer(page: Page, words: str) -> None:
    page.get_by_role("dialog").get_by_role("button", name=words).click()
    page.evaluate("() => new Promise(done => setTimeout(done, 50))")


def changed(document: Document, **words: object) -> Document:
    """The guide with its second step in other words, and the same step still the second."""

    def other(step: Step) -> Step:
        return replace(step, **words) if step.number == 2 else step  # type: ignore[arg-type]

    def again(block: Block) -> Block:
        is_sequence = isinstance(block, Sequence)
        return replace(block, steps=tuple(map(other, block.steps))) if is_sequence else block

    return replace(document, blocks=tuple(map(again, document.blocks)))


@pytest.fixture
def rewritten(pages: dict[str, Path], theme: Theme) -> Iterator[Path]:
    """Give a copy of the guide that a test may publish anew."""
    file = pages["guide"].with_name("guide-again.html")
    file.write_text(render_page(sample.guide(), theme), encoding="utf-8")
    yield file
    file.unlink()


def test_a_note_is_kept_on_the_device(page: Page) -> None:
    written(page)
    page.reload()
    assert page.is_checked(TICK)
    assert page.input_value(NOTE) == "The square <slips>."
    assert "Notes: 1." in page.locator(".own-count").inner_text()


def test_the_file_can_be_read_by_a_tutor_who_has_nothing_else(
    page: Page, browser: Browser, tmp_path: Path
) -> None:
    written(page)
    file = saved(page, tmp_path)
    assert file.name.startswith("SF-07-Jo-Fairlie-2")
    with opened(browser, file, PHONE_WITHOUT_SCRIPTS) as told:
        text = told.locator("body").inner_text()
        assert told.evaluate("document.documentElement.lang") == "en-GB"
    mark = page.evaluate("document.documentElement.dataset.content")
    assert f"Guide SF-07, content mark {mark}." in text
    assert "Learner: Jo Fairlie" in text
    assert "The square <slips>." in text
    assert text.count("☑") == 1
    assert text.count("(not ticked)") == page.locator("main [type=checkbox]").count() - 1
    assert "Evidence asked: " in text


def test_the_file_takes_ticks_and_notes_to_another_device(
    page: Page, pages: dict[str, Path], browser: Browser, tmp_path: Path
) -> None:
    written(page)
    file = saved(page, tmp_path)
    with opened(browser, pages["guide"], PHONE) as other:
        assert read_back(other, file) == f"Read from {file.name}. Ticks: 1. Notes: 1."
        assert other.is_checked(TICK)
        other.reload()
        assert (other.input_value(NOTE), other.input_value("#own-name")) == (
            "The square <slips>.",
            "Jo Fairlie",
        )


def test_what_is_here_already_is_replaced_only_when_asked_to(page: Page, tmp_path: Path) -> None:
    written(page)
    file = saved(page, tmp_path)
    page.fill(NOTE, "Later and better.")
    page.evaluate("document.querySelector('.own-told').textContent = ''")
    read_back(page, file)
    answer(page, "No, leave them")
    assert page.input_value(NOTE) == "Later and better."
    read_back(page, file)
    answer(page, "Yes, replace them")
    assert page.input_value(NOTE) == "The square <slips>."


def test_a_file_of_another_guide_is_refused(page: Page, tmp_path: Path) -> None:
    written(page)
    file = saved(page, tmp_path)
    file.write_text(
        file.read_text(encoding="utf-8").replace('"guide":"SF-07"', '"guide":"SF-04"'), encoding="utf-8"
    )
    page.evaluate("document.querySelector('.own-told').textContent = ''")
    assert read_back(page, file) == (
        f"{file.name} belongs to guide SF-04, and this is guide SF-07. Nothing was changed."
    )


DATA = '<script type="application/json" id="ticks-and-notes">%s</script>'
STRANGE = {
    "a picture": "\x89PNG",
    "a page of something else": "<!doctype html><title>x</title>",
    "no state": DATA % '{"guide":"SF-07"}',
    "a tick at no time": DATA
    % (
        '{"guide":"SF-07","state":{"format":1,"content":"","name":"","left":[],"old":[],'
        '"parts":{"m":{"id":"","title":"","note":"","values":{},"ticks":{"0":"no"}}}}}'
    ),
}


@pytest.mark.parametrize("text", STRANGE.values(), ids=STRANGE)
def test_a_file_of_something_else_is_refused(page: Page, text: str, tmp_path: Path) -> None:
    file = tmp_path / "other.html"
    file.write_text(text, encoding="utf-8")
    assert read_back(page, file) == "other.html is no file of ticks and notes. Nothing was changed."


def test_all_is_cleared_only_when_asked_to(page: Page) -> None:
    written(page)
    page.get_by_role("button", name="Clear my ticks").click()
    answer(page, "No, leave them")
    assert page.is_checked(TICK)
    page.get_by_role("button", name="Clear my ticks").click()
    answer(page, "Yes, clear them")
    page.reload()
    assert not page.is_checked(TICK)
    assert (page.input_value(NOTE), page.input_value("#own-name")) == ("", "")


def test_a_browser_that_keeps_nothing_says_so_and_still_saves_a_file(
    pages: dict[str, Path], browser: Browser, tmp_path: Path
) -> None:
    with opened(browser, pages["guide"], PHONE) as page:
        refused = "Object.defineProperty(window, 'localStorage', {get() { throw new Error('refused'); }})"
        page.add_init_script(refused)
        page.reload()
        written(page)
        assert "keeps nothing for this page" in page.locator(".own-count").inner_text()
        assert "The square" in saved(page, tmp_path).read_text(encoding="utf-8")


def test_a_tick_on_a_step_whose_words_changed_is_taken_off_and_the_step_named(
    rewritten: Path, theme: Theme, browser: Browser
) -> None:
    with opened(browser, rewritten, PHONE) as page:
        written(page)
        page.check("#step-1 .ticks input >> nth=0")
        title = page.locator("#step-2 .step-title").inner_text()
        rewritten.write_text(render_page(changed(sample.guide(), why="For another reason."), theme), "utf-8")
        page.reload()
        told = page.locator(".changed")
        assert "This guide has changed since you ticked." in told.inner_text()
        assert told.locator("li").count() == 1
        assert f"Step 2: {title}" in told.inner_text()
        assert "Ticks taken off: 1." in told.inner_text()
        assert not page.is_checked(TICK)
        assert page.is_checked("#step-1 .ticks input >> nth=0")
        assert page.input_value(NOTE) == "The square <slips>."
        page.reload()
        told.get_by_role("button").click()
        page.reload()
        assert not told.is_visible()


def test_a_change_elsewhere_is_told_and_takes_no_tick_off(
    rewritten: Path, theme: Theme, browser: Browser
) -> None:
    with opened(browser, rewritten, PHONE) as page:
        page.check("#step-1 .ticks input >> nth=0")
        rewritten.write_text(render_page(changed(sample.guide(), why="For another reason."), theme), "utf-8")
        page.reload()
        assert "No part that you ticked or wrote on has changed." in page.locator(".changed").inner_text()
        assert page.is_checked("#step-1 .ticks input >> nth=0")


def test_a_step_that_is_gone_leaves_its_note_in_the_file(page: Page, tmp_path: Path) -> None:
    left = {"id": "step-40", "title": "Sweep up", "ticks": {"0": "2026-11-20T09:00:00Z"}, "values": {}}
    state = {"format": 1, "content": "0", "name": "", "at": "", "left": [], "old": []}
    page.evaluate(RESTORED % json.dumps(state | {"parts": {"0000000000": left | {"note": "Bags torn."}}}))
    page.reload()
    told = page.locator(".changed").inner_text()
    assert "Step 40: Sweep up" in told
    assert "no longer in the page" in told
    page.locator(".changed").get_by_role("button").click()
    page.reload()
    assert page.evaluate(STORED)["old"][0]["note"] == "Bags torn."
    assert "Bags torn." in saved(page, tmp_path).read_text(encoding="utf-8")


def test_without_scripts_no_control_stands_that_only_a_script_serves(
    pages: dict[str, Path], browser: Browser
) -> None:
    with opened(browser, pages["guide"], PHONE_WITHOUT_SCRIPTS) as page:
        assert [one.inner_text() for one in page.locator("button").all() if one.is_visible()] == []
        assert page.locator(".by-script >> visible=true").count() == 0
        assert page.locator("textarea").count() == 0


@pytest.mark.parametrize("view", [PHONE, DESK_DARK], ids=str)
def test_notes_notice_and_question_are_accessible_and_fit_the_window(
    pages: dict[str, Path], view: View, browser: Browser
) -> None:
    with opened(browser, pages["guide"], view) as page:
        written(page)
        page.evaluate("""() => {
          const key = 'kept:' + location.pathname, kept = JSON.parse(localStorage.getItem(key));
          const mark = Object.keys(kept.parts)[0];
          kept.parts['0'] = kept.parts[mark];
          delete kept.parts[mark];
          localStorage.setItem(key, JSON.stringify(kept));
        }""")
        page.reload()
        assert page.locator(".changed li").count() == 1
        faults = [*axe_violations(page, "notes"), *faint_text(page, "notes"), *overflows(page, "notes")]
        page.get_by_role("button", name="Clear my ticks").click()
        faults += [*axe_violations(page, "question"), *overflows(page, "question")]
    assert listed(faults) == ""
