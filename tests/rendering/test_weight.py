"""What a page need not carry: repeated settings of text, icons that nothing shows, needless spaces."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

from generator.rendering.assets import page_style, theme_assets
from generator.rendering.pictures import inline_svg
from generator.rendering.themes import Theme
from tests.rendering import sample

INK = 'style="fill:#1c1c1c"'


def test_lines_of_text_set_alike_stand_in_one_group_and_none_is_lost() -> None:
    body = (
        '<svg viewBox="0 0 9 9"><path d="m0 0h1"/><g font-size="3"><text x="1" y="1">a</text></g>'
        f'<g font-size="4" {INK}><text x="1" y="2">b</text><text x="2" y="2"/></g>'
        '<g font-size="3"><text x="1" y="3">c</text></g></svg>'
    )
    drawn = inline_svg(replace(sample.section_picture(), svg=body), "f")
    assert '<g font-size="3"><text x="1" y="1">a</text><text x="1" y="3">c</text></g>' in drawn
    assert '<g font-size="4"><text x="1" y="2">b</text></g>' in drawn
    assert drawn.index("<path") < drawn.index("<g")
    assert drawn.endswith("</svg>")


def test_a_page_holds_every_icon_it_shows_and_no_other(pages: dict[str, Path]) -> None:
    for file in pages.values():
        text = file.read_text(encoding="utf-8")
        held = set(re.findall(r'<symbol id="icon-([\w-]+)"', text))
        assert held == set(re.findall(r'href="#icon-([\w-]+)"', text))
        assert held or file.name == "index.html"


def test_a_closed_up_style_sheet_keeps_what_stands_in_brackets_and_quotation_marks(theme: Theme) -> None:
    style = page_style(theme)
    assert "calc(100vw - 32px)" in style
    assert ".dashes > li::before" in style
    assert 'content:"–"' in style
    assert "@media (min-width: 720px){" in style
    assert style.count("{") == style.count("}")


def test_scripts_are_published_without_their_remarks(theme: Theme) -> None:
    for name in ("page.js", "guide.js"):
        script = theme_assets(theme)[name].decode()
        assert not re.search(r"^\s*//", script, re.MULTILINE)
        assert script.count("\n") > 50
