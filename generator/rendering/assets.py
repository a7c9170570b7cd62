"""What the web pages of a theme share: style sheet, script and font subsets."""

from __future__ import annotations

from collections.abc import Mapping

from generator.rendering.fonts import WEB_FACES, web_font, web_font_css
from generator.rendering.themes import Theme

_SHEETS = ("tokens.css", "screen.css")


def page_style(theme: Theme) -> str:
    """The one style sheet of the web pages, fonts included by name."""
    return "\n".join([web_font_css(), *(theme.text(name) for name in _SHEETS)])


def theme_assets(theme: Theme) -> Mapping[str, bytes]:
    """Every file that pages of the theme ask for, by its name in the assets folder."""
    fonts = {face.web_name: web_font(face) for face in WEB_FACES}
    texts = {"page.css": page_style(theme), "page.js": theme.text("page.js")}
    return {**{name: text.encode() for name, text in texts.items()}, **fonts}
