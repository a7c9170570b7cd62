"""What the web pages of a theme share: style sheet, script and font subsets."""

from __future__ import annotations

import re
from collections.abc import Mapping

from generator.rendering.fonts import web_font_css, web_fonts
from generator.rendering.themes import Theme
from generator.rendering.tokens import screen_rules

FURTHER = "screen-more.css"


def page_style(theme: Theme) -> str:
    """The one style sheet of the web pages, fonts included by name, without remarks and indents."""
    sheets = (theme.text("tokens.css"), screen_rules(theme), theme.text("screen.css"), theme.further(FURTHER))
    return "\n".join([web_font_css(), *filter(None, map(_closed_up, sheets))])


def _closed_up(style: str) -> str:
    return _LEFT_OUT.sub("", style).strip()


_LEFT_OUT = re.compile(r"/\*.*?\*/\s*|^\s+", re.DOTALL | re.MULTILINE)


def theme_assets(theme: Theme) -> Mapping[str, bytes]:
    """Every file that pages of the theme ask for, by its name in the assets folder."""
    texts = {"page.css": page_style(theme), "page.js": theme.text("page.js")}
    return {**{name: text.encode() for name, text in texts.items()}, **web_fonts()}
