"""Prose to HTML: a small markdown with raw HTML, headings, pictures, code and outside links off."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache, lru_cache
from typing import Any

from markdown_it import MarkdownIt
from markdown_it.token import Token
from markupsafe import Markup

from generator.rendering.numerals import set_numbers
from generator.wording.marks import BEGINS, ENDS, marked, unmarked

_RULES = ("emphasis", "escape", "entity", "link", "list", "newline")
_OUTSIDE = re.compile(r"^(?:[a-z][a-z0-9+.-]*:|//|\\)", re.IGNORECASE)


def stays_inside(address: str) -> bool:
    """Whether a link leads to this publication: no scheme, no host."""
    return not _OUTSIDE.match(address.strip())


def _set_text(tokens: Sequence[Token], index: int, options: Any, env: Any) -> str:
    return str(set_numbers(tokens[index].content))


class _Prose(MarkdownIt):
    """Markdown whose links stay inside the publication."""

    def validateLink(self, url: str) -> bool:  # noqa: N802 - the library's name
        return stays_inside(url)


@cache
def _parser() -> MarkdownIt:
    parser = _Prose("zero", {"html": False, "linkify": False}).enable(list(_RULES))
    parser.add_render_rule("text", lambda _, *given: _set_text(*given))
    return parser


@lru_cache(maxsize=8192)
def prose(text: str) -> Markup:
    """Paragraphs and lists as HTML blocks."""
    inner, begins, ends = _peeled(text)
    return Markup(begins + _parser().render(inner).rstrip("\n") + ends)


@lru_cache(maxsize=8192)
def line(text: str) -> Markup:
    """One run of prose as inline HTML, its line ends taken as spaces."""
    inner, begins, ends = _peeled(text)
    return Markup(begins + _parser().renderInline(" ".join(inner.split("\n")).strip()) + ends)


def _peeled(text: str) -> tuple[str, str, str]:
    """Text without the marks of another language where they hold all of it, and the marks to set round it.

    Inside, they would hide from the markdown that a list begins or that bold ends.
    """
    inner = unmarked(text)
    return (inner, BEGINS, ENDS) if text == marked(inner) and text != inner else (text, "", "")
