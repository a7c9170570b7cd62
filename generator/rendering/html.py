"""Documents to HTML: a page for the screen, or a sheet that is ready to be printed."""

from __future__ import annotations

import itertools
import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache, partial
from typing import Any, Literal

from jinja2 import Environment, FileSystemLoader, StrictUndefined, TemplateError
from markupsafe import Markup

from generator.documents.blocks import (
    Block,
    Column,
    Document,
    Figure,
    FrontPage,
    Piece,
    Status,
    StopList,
)
from generator.documents.content import content_mark, part_mark
from generator.rendering import markdown, outline
from generator.rendering.labels import language_of
from generator.rendering.languages import with_languages
from generator.rendering.numerals import set_numbers
from generator.rendering.pictures import black_uri, data_uri, icon_symbols, inline_svg
from generator.rendering.sheet_rule import sheet_rule
from generator.rendering.template_faults import TemplateFails
from generator.rendering.themes import Theme
from generator.wording import ENGLISH, Language

Medium = Literal["screen", "paper"]
_INDENTS = re.compile(r"\n\s+")
_MARGIN_TOP = {"card": 13}
_TICKED = frozenset({"guide", "statement"})
_CAPITAL = re.compile(r"(?<!^)(?=[A-Z])")
# Height over width from which a drawing is laid beside the whole step and not beside its first half.
_TALL = 1.1
_LINES_OF_A_FIRST_PAGE = 16
_MOST_OF_A_SHEET_MM = 100
_CUT_BY = frozenset({"long_point", "short_point"})
_ROD_NOTE = "Full-size rule. 0 to 100 must measure 100 mm with a steel rule; if not, print again at 100 %."
_PIECE_FIELDS = ("mark", "opening", "piece", "hand", "count", "long_point", "short_point", "ends", "section")


class DoubledAnchor(ValueError):
    """Two blocks of a document bear one key, so that links to it would miss."""


def render_page(
    document: Document, theme: Theme, language: Language = ENGLISH, *, assets: str = "assets/"
) -> str:
    """The document as a web page; `assets` is the way from the page to the theme's assets, with its slash.

    Raises DoubledAnchor when two blocks bear one key.
    """
    return _render(document, theme, language, medium="screen", assets=assets)


def render_sheet(document: Document, theme: Theme, language: Language = ENGLISH) -> str:
    """The document as HTML for `render_pdf`, whole in itself but for the theme's style sheets."""
    return _render(document, theme, language, medium="paper", assets="")


def macro_name(kind: type[object]) -> str:
    """The macro that lays out a kind of block: its name in snake case."""
    return _CAPITAL.sub("_", kind.__name__).lower()


@dataclass(frozen=True, slots=True, kw_only=True)
class _Laying:
    """Lays blocks by the macros of one template module."""

    macros: Any

    def __call__(self, block: Block, level: int) -> Markup:
        return Markup(getattr(self.macros, macro_name(type(block)))(block, level))


def _render(document: Document, theme: Theme, language: Language, *, medium: Medium, assets: str) -> str:
    if doubled := outline.doubled_anchors(document):
        raise DoubledAnchor(", ".join(doubled))
    try:
        return _filled(document, theme, language, medium, assets)
    except TemplateError as error:
        raise TemplateFails(error, theme) from error


def _filled(document: Document, theme: Theme, language: Language, medium: Medium, assets: str) -> str:
    environment = environment_of(theme, language)
    known = _context(document, language, medium, assets)
    known["symbols"] = icon_symbols(theme) if medium == "screen" else ""
    box: dict[str, Any] = {}
    known["lay"] = lambda block, level: box["lay"](block, level)
    box["lay"] = _Laying(macros=environment.get_template("blocks.html").make_module(known))
    page = environment.get_template(f"{document.kind}.html").render(known)
    laid = _without_unused_icons(_INDENTS.sub("\n", page)) + "\n"
    return laid if language.governs else with_languages(laid)


def _without_unused_icons(page: str) -> str:
    """The page without the icons of the theme that nothing on it shows."""
    used = frozenset(_SHOWN.findall(page))
    return _SYMBOL.sub(lambda found: found.group() if found.group(1) in used else "", page)


_SHOWN = re.compile(r'<use href="#icon-([\w-]+)"')
_SYMBOL = re.compile(r'<symbol id="icon-([\w-]+)".*?</symbol>', re.DOTALL)


@lru_cache(maxsize=16)
def environment_of(theme: Theme, language: Language) -> Environment:
    """The templates of a theme, with every filter and the sentences of the language."""
    environment = Environment(
        loader=FileSystemLoader([str(folder) for folder in theme.folders]),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        extensions=["jinja2.ext.i18n"],
    )
    catalogue = language_of(theme, language).catalogue
    install = environment.install_gettext_callables  # type: ignore[attr-defined]
    install(catalogue.gettext, catalogue.ngettext, newstyle=True)
    environment.filters.update(_FILTERS)
    return environment


def _kept(text: str, make: Any) -> Markup:
    return text if isinstance(text, Markup) else make(text)


def numbers(text: object) -> Markup:
    """Plain text escaped with its numbers set; what is HTML already is left alone."""
    return _kept(text if isinstance(text, str) else str(text), set_numbers)


def prose(text: str) -> Markup:
    """Prose as HTML blocks."""
    return _kept(text, markdown.prose)


def line(text: str) -> Markup:
    """Prose as inline HTML."""
    return _kept(text, markdown.line)


def tall(figures: tuple[Figure, ...]) -> bool:
    """Whether the drawings of a step outgrow the words beside them, as a wide screen lays them."""
    shapes = [figure.phone or figure.picture for figure in figures]
    return sum(shape.height_mm / shape.width_mm for shape in shapes) > _TALL


def fill_sheet(figures: tuple[Figure, ...]) -> bool:
    """Whether drawings take so much of a sheet that they stand after the text and not in their step."""
    return sum(figure.picture.height_mm for figure in figures) > _MOST_OF_A_SHEET_MM


def crowded(front: FrontPage) -> bool:
    """Whether a first page has more lines than stay on one sheet at the usual spacing."""
    places = front.places.rows if front.places else ()
    lines = (*front.who, *places, *front.stop.holds, *front.stop.stop_if)
    return len(lines) > _LINES_OF_A_FIRST_PAGE


def shares(columns: tuple[Column, ...]) -> tuple[str, ...]:
    """Column widths as per cent of the table; a column without a width takes a fair share of what is left."""
    given = sum(column.width for column in columns)
    free = sum(1 for column in columns if not column.width)
    fair = max(100 - given, 0) / free if free else 0
    whole = given + fair * free or 1
    return tuple(f"{100 * (column.width or fair) / whole:.2f}" for column in columns)


def cut_columns(pieces: tuple[Piece, ...]) -> tuple[Column, ...]:
    """The fields of a cutting list that at least one piece fills, as columns named by the field."""
    filled = (name for name in _PIECE_FIELDS if any(getattr(piece, name) for piece in pieces))
    return tuple(
        Column(head=name, align="right" if name in _CUT_BY | {"count"} else "left", bold=name == "long_point")
        for name in filled
    )


_FILTERS: Mapping[str, Any] = {
    "numbers": numbers, "prose": prose, "line": line, "shares": shares, "data_uri": data_uri,
    "black_uri": black_uri, "tall": tall, "crowded": crowded, "fill_sheet": fill_sheet,
    "part_mark": part_mark,
}  # fmt: skip


def page_title(document: Document) -> str:
    """What a reader's window, and the PDF's title, say: number, title, job, firm."""
    named = " ".join(part for part in (document.number, document.title) if part)
    return ", ".join(part for part in (named, document.job, document.company) if part)


def names_known() -> frozenset[str]:
    """Every name that a template may use beside those that Jinja has."""
    bare = Document(kind="index", lang=ENGLISH.tag, title="", company="", blocks=())
    return frozenset(_context(bare, ENGLISH, "screen", "")) | {"symbols", "lay"}


def _context(document: Document, language: Language, medium: Medium, assets: str) -> dict[str, Any]:
    return {
        "document": document,
        "paper": medium == "paper",
        "learner": document.kind == "guide",
        "content_mark": content_mark(document) if document.kind in _TICKED else "",
        "assets": assets,
        "root": assets.removesuffix("assets/"),
        "page_title": page_title(document),
        "stops": next((block.key for block in document.blocks if isinstance(block, StopList)), ""),
        "entries": outline.contents(document),
        **_parts(document),
        "marks": outline.marks(document),
        "inline": partial(inline_svg, page=language.tag),
        "cut_columns": cut_columns,
        "code": _code(document.address) if medium == "paper" and document.address else "",
        "sheet_rule": sheet_rule(
            language.say(_ROD_NOTE),
            _diagonal_word(document, language),
            top=_MARGIN_TOP.get(document.kind, 22),
        ),
        "page_number": Markup('<span class="page-number"></span>'),
        "page_count": Markup('<span class="page-count"></span>'),
    }


def _parts(document: Document) -> dict[str, Any]:
    """A sheet's body, then drawings too big to share a page with their steps, then the annexes."""
    big = (step.figures for step in document.steps() if fill_sheet(step.figures))
    return {
        "body": tuple(itertools.takewhile(_in_body, document.blocks)),
        "plates": tuple(figure for figures in big for figure in figures),
        "annex": tuple(itertools.dropwhile(_in_body, document.blocks)),
    }


def _in_body(block: Block) -> bool:
    return not getattr(block, "key", "").startswith("annex-")


_DIAGONAL: Mapping[Status, str] = {
    Status.DRAFT: "Draft",
    Status.SUPERSEDED: "Superseded",
    Status.WITHDRAWN: "Withdrawn",
}


def _diagonal_word(document: Document, language: Language) -> str:
    status = document.issue.status if document.issue else None
    return language.say(_DIAGONAL[status]) if status and status in _DIAGONAL else ""


def _code(address: str) -> str:
    import segno

    return str(segno.make(address, error="m").svg_data_uri(border=0))
