"""What the web pages of a theme share: style sheet, script and font subsets."""

from __future__ import annotations

import re
from collections.abc import Mapping

from generator.rendering.fonts import web_font_css, web_fonts
from generator.rendering.themes import Theme
from generator.rendering.tokens import screen_rules

FURTHER = "screen-more.css"
SCRIPTS = ("page.js", "guide.js")


def page_style(theme: Theme) -> str:
    """The one style sheet of the web pages, fonts included by name, without remarks and indents."""
    sheets = (theme.text("tokens.css"), screen_rules(theme), theme.text("screen.css"), theme.further(FURTHER))
    return "\n".join([web_font_css(), *filter(None, map(_closed_up, sheets))])


def _closed_up(style: str) -> str:
    """A style sheet without remarks, indents and spaces that no browser needs; each rule keeps its line."""
    kept = _LEFT_OUT.sub("", style).strip()
    return "\n".join(_without_spaces(line) for line in kept.splitlines())


def _without_spaces(line: str) -> str:
    """The line closed up outside of what stands in quotation marks and in round brackets."""
    pieces = _WHOLE.split(line)
    return "".join(piece if n % 2 else _NEEDLESS.sub("", piece) for n, piece in enumerate(pieces))


# What stands in quotation marks or in brackets, brackets within brackets included, stays as it is.
_WHOLE = re.compile(r"""("[^"]*"|'[^']*'|\([^()]*(?:\([^()]*\)[^()]*)*\))""")
_NEEDLESS = re.compile(r"(?<=[;{},]) +| +(?=[{}])|(?<=[a-z]:) +")


def _without_remarks(script: str) -> str:
    """A script without the lines that are remarks and without indents."""
    return _REMARK_LINES.sub("", script)


_REMARK_LINES = re.compile(r"^[ \t]*//.*\n|^[ \t]+", re.MULTILINE)
_LEFT_OUT = re.compile(r"/\*.*?\*/\s*|^\s+", re.DOTALL | re.MULTILINE)


def theme_assets(theme: Theme) -> Mapping[str, bytes]:
    """Every file that pages of the theme ask for, by its name in the assets folder."""
    scripts = {name: _without_remarks(theme.text(name)) for name in SCRIPTS}
    texts = {"page.css": page_style(theme), **scripts}
    return {**{name: text.encode() for name, text in texts.items()}, **web_fonts()}
