"""Sheets to PDF/UA-1 by WeasyPrint, the same bytes for the same sheet."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from generator.rendering.every_sheet import FIRST_ALONE, repeat_background
from generator.rendering.fonts import FACES, paper_font_css
from generator.rendering.references import referring_document
from generator.rendering.themes import Theme
from generator.rendering.tokens import print_rules

SHEETS = ("tokens.css", "print.css")
FURTHER = "print-more.css"


class OutsideAddress(ValueError):
    """A sheet or its style asks for something that is neither in the theme nor in the sheet itself."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Press:
    """What every sheet of a theme shares: parsed style sheets and loaded fonts."""

    sheets: tuple[Any, ...]
    fonts: Any
    fetcher: Any


def render_pdf(html: str, theme: Theme) -> bytes:
    """A sheet made by `render_sheet` as a tagged PDF with bookmarks.

    The first call of a process parses the style sheets and loads the fonts; later ones share them. Raises
    OutsideAddress when anything but the theme's own files and data addresses is asked for.
    """
    from weasyprint import DEFAULT_OPTIONS, HTML

    press = _press(theme, _text_of_sheets(theme))
    options = {**DEFAULT_OPTIONS, "stylesheets": list(press.sheets), "pdf_variant": "pdf/ua-1"}
    with _no_collecting(), _outside_told():
        parsed = HTML(string=html, url_fetcher=press.fetcher)
        document = referring_document()._render(parsed, press.fonts, None, None, options)
        return bytes(document.write_pdf(finisher=repeat_background, **options))


def _text_of_sheets(theme: Theme) -> tuple[str, ...]:
    return (*(theme.text(name) for name in SHEETS), theme.further(FURTHER), print_rules(theme))


# The text is part of the key: a preview that edits a style sheet must not print by the old one.
@lru_cache(maxsize=4)
def _press(theme: Theme, texts: tuple[str, ...]) -> _Press:
    from weasyprint import CSS
    from weasyprint.text.fonts import FontConfiguration

    fonts, fetcher = FontConfiguration(), _fetcher(theme)
    own = (paper_font_css(), FIRST_ALONE)
    sheets = [CSS(string=text, font_config=fonts, url_fetcher=fetcher) for text in own]
    base = theme.folders[0].as_uri() + "/"
    for text in texts:
        sheets.append(CSS(string=text, base_url=base, font_config=fonts, url_fetcher=fetcher))
    return _Press(sheets=tuple(sheets), fonts=fonts, fetcher=fetcher)


def _fetcher(theme: Theme) -> Any:
    from weasyprint.urls import FatalURLFetchingError, URLFetcher

    class Fetcher(URLFetcher):  # type: ignore[misc]
        """Fetches data addresses and files of the theme and the font."""

        def fetch(self, url: str, headers: Any = None) -> Any:
            if url.startswith("data:") or url.startswith(allowed):
                return super().fetch(_standing(url, theme), headers)
            raise FatalURLFetchingError(url)

    folders = [folder.resolve().as_uri() + "/" for folder in theme.folders]
    allowed = (*folders, FACES[0].path.parent.as_uri() + "/")
    return Fetcher(allowed_protocols=("data", "file"))


def _standing(url: str, theme: Theme) -> str:
    """The address in the first folder of the theme that holds such a file, or as it is where none does."""
    own = theme.folders[0].as_uri() + "/"
    if url.startswith(own):
        for folder in theme.folders:
            if (folder / url.removeprefix(own)).is_file():
                return (folder / url.removeprefix(own)).as_uri()
    return url


@contextmanager
def _outside_told() -> Iterator[None]:
    # WeasyPrint prints on without a thing that cannot be fetched, unless it is told by an error of this kind,
    # which stands outside `Exception` and would be missed by whoever called.
    from weasyprint.urls import FatalURLFetchingError

    try:
        yield
    except FatalURLFetchingError as error:
        raise OutsideAddress(*error.args) from error


@contextmanager
def _no_collecting() -> Iterator[None]:
    # Laying out a sheet makes very many objects that all live to its end; walking them in between is waste.
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()
        # All of it is young; what is older is left alone.
        gc.collect(0)
