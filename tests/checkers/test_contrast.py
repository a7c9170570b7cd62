"""The contrast check bites, in prose and in a drawing, in light and in dark."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.checkers.browser import PHONE, PHONE_DARK, View, opened
from tests.checkers.contrast import faint_text

PAGE = """<!doctype html><html lang="en-GB"><title>Quirk</title><style>
body { background: #faf8f3; color: #22262b }
@media (prefers-color-scheme: dark) { body { background: #15181b; color: #ece8df } }
</style><body><p>Set the square</p><svg width="80" height="20">
<text y="15" fill="%s">8.5</text></svg></body></html>"""


def says(browser: Browser, folder: Path, fill: str, view: View) -> list[str]:
    file = folder / "page.html"
    file.write_text(PAGE % fill, encoding="utf-8")
    with opened(browser, file, view) as page:
        return [finding.says for finding in faint_text(page, "page")]


@pytest.mark.parametrize("view", [PHONE, PHONE_DARK], ids=str)
def test_text_in_the_page_colour_passes(browser: Browser, tmp_path: Path, view: View) -> None:
    assert says(browser, tmp_path, "currentColor", view) == []


def test_ink_fixed_for_light_is_found_in_the_dark(browser: Browser, tmp_path: Path) -> None:
    assert says(browser, tmp_path, "#22262b", PHONE) == []
    assert says(browser, tmp_path, "#22262b", PHONE_DARK) == [
        'text: rgb(34,38,43) on rgb(21,24,27) is 1.17 ("8.5")'
    ]


@pytest.mark.parametrize(("fill", "found"), [("#777777", ["4.48"]), ("#767676", [])])
def test_the_border_lies_where_it_is_known_to_lie(
    browser: Browser, tmp_path: Path, fill: str, found: list[str]
) -> None:
    """Grey #777777 on white is 4.48:1 and #767676 is 4.54:1 (from memory, and easily worked out)."""
    told = says(browser, tmp_path, f'{fill}" style="background:white', PHONE)
    assert [line.split(" is ")[1][:4] for line in told] == found
