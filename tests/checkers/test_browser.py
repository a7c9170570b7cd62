"""The checks in the browser bite: each broken sample is found out, and the sound page passes them all."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.checkers.axe import axe_violations
from tests.checkers.browser import (
    DESK,
    PHONE,
    PHONE_DARK,
    PHONE_WITHOUT_SCRIPTS,
    VIEWS,
    View,
    console_errors,
    loads,
    opened,
    overflows,
    readable_lines,
    weight,
)
from tests.checkers.findings import listed
from tests.checkers.keyboard import journey, keyboard_faults

SOUND = """<!doctype html><html lang="en-GB"><head><meta charset="utf-8"><title>Quirk</title>
<meta name="viewport" content="width=device-width"><style>
body { background: #faf8f3; color: #22262b } a { color: #1b4a86; display: inline-block; padding: 12px }
a:focus-visible { outline: 3px solid #1b4a86 }
.skip { position: absolute; left: -999px } .skip:focus { left: 0 }
@media (prefers-color-scheme: dark) { body { background: #15181b; color: #ece8df } a { color: #9cc1f2 } }
</style></head><body><header><a class="skip" href="#work">To the work</a></header>
<main id="work" tabindex="-1"><h1>Quirk</h1><p>Set the square to 5 mm.</p><p><a href="#work">Up</a></p></main>
</body></html>"""


def page_file(folder: Path, html: str) -> Path:
    file = folder / "page.html"
    file.write_text(html, encoding="utf-8")
    return file


def rules_broken(browser: Browser, file: Path, view: View) -> set[str]:
    with opened(browser, file, view) as page:
        return {finding.rule for finding in axe_violations(page, file.name)}


@pytest.mark.parametrize("view", VIEWS, ids=str)
def test_a_sound_page_passes_in_every_view(browser: Browser, tmp_path: Path, view: View) -> None:
    file = page_file(tmp_path, SOUND)
    with opened(browser, file, view) as page:
        assert listed(axe_violations(page, str(view))) == ""
        assert listed(overflows(page, str(view))) == ""
        assert listed(keyboard_faults(page, str(view))) == ""
    assert listed(console_errors(browser, [file], view)) == ""


@pytest.mark.parametrize(
    ("sound", "broken", "rule"),
    [
        ("<p>Set", "<img src='data:,'><p>Set", "image-alt"),
        ("<h1>Quirk</h1>", "<h1>Quirk</h1><h4>Deep</h4>", "heading-order"),
        (' lang="en-GB"', "", "html-has-lang"),
        ("#22262b", "#b0b0b0", "color-contrast"),
    ],
)
def test_axe_finds_a_broken_page(
    browser: Browser, tmp_path: Path, sound: str, broken: str, rule: str
) -> None:
    assert sound in SOUND
    assert rule in rules_broken(browser, page_file(tmp_path, SOUND.replace(sound, broken)), PHONE)


def test_axe_sees_the_dark_scheme(browser: Browser, tmp_path: Path) -> None:
    file = page_file(tmp_path, SOUND.replace("#ece8df", "#33363a"))
    assert rules_broken(browser, file, PHONE) == set()
    assert rules_broken(browser, file, PHONE_DARK) == {"color-contrast"}


def test_a_wide_element_is_named(browser: Browser, tmp_path: Path) -> None:
    file = page_file(tmp_path, SOUND.replace("<p>Set", "<p class='wide' style='width:400px'>Set"))
    with opened(browser, file, PHONE) as page:
        (finding,) = overflows(page, "phone")
    assert "in a window of 360 px" in finding.says
    assert "p.wide to 408 px" in finding.says
    with opened(browser, file, DESK) as page:
        assert overflows(page, "desk") == ()


def test_the_tab_key_is_followed_in_order(browser: Browser, tmp_path: Path) -> None:
    with opened(browser, page_file(tmp_path, SOUND), PHONE) as page:
        assert [(stop.text, stop.seen, stop.marked) for stop in journey(page)] == [
            ("To the work", True, True),
            ("Up", True, True),
        ]


@pytest.mark.parametrize(
    ("sound", "broken", "rule"),
    [
        ("outline: 3px solid #1b4a86", "outline: none", "focus not shown"),
        (".skip:focus { left: 0 }", "", "hidden stop"),
        ('<a class="skip" href="#work">To the work</a>', "", "no skip link"),
        (
            '<a href="#work">Up</a>',
            "<a href='#work' onfocus='this.blur()'>Up</a><a href='#work'>On</a>",
            "never reached",
        ),
    ],
)
def test_the_keyboard_walk_finds_faults(
    browser: Browser, tmp_path: Path, sound: str, broken: str, rule: str
) -> None:
    assert SOUND.count(sound) == 1
    with opened(browser, page_file(tmp_path, SOUND.replace(sound, broken)), PHONE) as page:
        assert rule in {finding.rule for finding in keyboard_faults(page, "phone")}


def test_text_that_needs_scripts_is_missed_without_them(browser: Browser, tmp_path: Path) -> None:
    added = "document.querySelector('h1').insertAdjacentHTML('afterend', '<p>Only by script</p>')"
    script = f"<script>{added}</script>"
    file = page_file(tmp_path, SOUND.replace("</main>", f"</main>{script}"))
    with opened(browser, file, PHONE) as page:
        assert "Only by script" in readable_lines(page)
    with opened(browser, file, PHONE_WITHOUT_SCRIPTS) as page:
        assert readable_lines(page) == ("Quirk", "Set the square to 5 mm.", "Up")


def test_a_script_error_is_heard(browser: Browser, tmp_path: Path) -> None:
    file = page_file(
        tmp_path, SOUND.replace("</main>", "</main><script>missing()</script><script src='gone.js'></script>")
    )
    assert {finding.rule for finding in console_errors(browser, [file], PHONE)} == {
        "script error",
        "console",
        "failed load",
    }


def test_weight_counts_what_the_page_fetches(browser: Browser, tmp_path: Path) -> None:
    (tmp_path / "look.css").write_bytes(b"p{margin:0}")
    (tmp_path / "unused.css").write_bytes(b"p{margin:1px}")
    file = page_file(tmp_path, SOUND.replace("<style>", "<link rel='stylesheet' href='look.css'><style>"))
    assert len(loads(browser, file)) == 2
    assert weight(browser, file) == file.stat().st_size + 11
