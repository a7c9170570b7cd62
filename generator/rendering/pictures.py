"""Drawings set into pages: inline on the screen, in its colours; as a picture with words on paper."""

from __future__ import annotations

import base64
import re
from collections.abc import Iterable, Iterator
from functools import lru_cache

from markupsafe import Markup, escape

from generator.documents.blocks import Figure, Picture
from generator.drawings.pens import INK, PAPER, SCREEN_NAMES, STEEL, TINT
from generator.rendering.fonts import held_font_css
from generator.rendering.themes import Theme
from generator.wording import ENGLISH

_HEAD = re.compile(r"^.*?(?=<svg\b)", re.DOTALL)
_DROPPED = re.compile(r"<(metadata|title|desc)\b[^>]*>.*?</\1>|<!--.*?-->", re.DOTALL)
_ROOT = re.compile(r"<svg\b([^>]*)>", re.DOTALL)
_KEPT = re.compile(r'\b(?:viewBox|stroke-linejoin)="[^"]*"')
_NOT_ID = re.compile(r"[^\w-]+")
_ID = re.compile(r'\bid="([^"]+)"')
_POINTERS = re.compile(r'(url\(#|href="#|="#)([\w.:-]+)')


def inline_svg(picture: Picture, prefix: str, page: str = ENGLISH.tag) -> Markup:
    """The drawing as an SVG element of an HTML page.

    Its ids carry `prefix`, so that several drawings may share a page; its words are the picture's `alt`; its
    colours follow the page; it says its language where that is not `page`, the page's own. Raises
    ValueError when the SVG has no viewBox, since it could not be scaled.
    """
    tag = picture.tag if picture.tag != page else ""
    return _inlined(picture.inline(), picture.alt, prefix, tag)


@lru_cache(maxsize=256)
def _inlined(svg: str, alt: str, prefix: str, tag: str) -> Markup:
    body = _DROPPED.sub("", _HEAD.sub("", svg, count=1)).strip()
    root = _ROOT.search(body)
    kept = _KEPT.findall(root.group(1)) if root else []
    if root is None or not any(attribute.startswith("viewBox") for attribute in kept):
        raise ValueError("a drawing needs an svg element with a viewBox")
    prefix = _NOT_ID.sub("-", prefix)
    named = f"{prefix}-words"
    spoken = f' lang="{tag}"' if tag else ""
    opening = (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="drawing"{spoken} role="img" '
        f'aria-labelledby="{named}" {" ".join(kept)}><title id="{named}">{escape(alt)}</title>'
    )
    return Markup(opening + _prefixed(_with_texts_gathered(_without_usual_fill(body[root.end() :])), prefix))


def _without_usual_fill(body: str) -> str:
    """What is filled with ink alone takes it from the page's rule for drawings, as most words of one do."""
    return body.replace(_USUAL_FILL, "")


def _with_texts_gathered(body: str) -> str:
    """Lines of text that are set alike in one group, which a table of pieces has by the hundred.

    No two lines of a drawing touch, and what it says to a reader who does not see it is its title.
    """
    groups: dict[str, list[str]] = {}
    for setting, texts in _TEXTS.findall(body):
        groups.setdefault(setting, []).append(_NO_TEXT.sub("", texts))
    gathered = "".join(f"<g{setting}>{''.join(texts)}</g>" for setting, texts in groups.items())
    first = next((found.start() for found in _TEXTS.finditer(body)), len(body))
    return body[:first] + gathered + _TEXTS.sub("", body[first:])


_TEXTS = re.compile(r"<g( font-size=[^>]*)>((?:<text [^>]*(?:/>|>[^<]*</text>))+)</g>")
_NO_TEXT = re.compile(r"<text [^>]*/>")
_USUAL_FILL = f' style="fill:var({SCREEN_NAMES[INK]},{INK})"'


def _prefixed(body: str, prefix: str) -> str:
    names = frozenset(_ID.findall(body))
    body = _ID.sub(rf'id="{prefix}-\1"', body)

    def pointed(found: re.Match[str]) -> str:
        lead, name = found.groups()
        return f"{lead}{prefix}-{name}" if name in names else found.group()

    return _POINTERS.sub(pointed, body) if names else body


def icon_symbols(theme: Theme) -> Markup:
    """Every icon of the theme once, to be used by its name wherever it stands on a page."""
    symbols = "".join(_symbol(name, theme.text(f"icons/{name}.svg")) for name in theme.icons())
    return Markup(f'<svg class="symbols" width="0" height="0" aria-hidden="true">{symbols}</svg>')


def _symbol(name: str, svg: str) -> str:
    root = _ROOT.search(svg)
    if root is None:
        raise ValueError(f"the icon {name} is no SVG")
    box, inside = _KEPT.findall(root.group(1))[0], svg[root.end() :].replace("</svg>", "").strip()
    return f'<symbol id="icon-{name}" {box}>{inside}</symbol>'


def drawing_files(figures: Iterable[Figure]) -> dict[str, str]:
    """The drawings of figures that stand as files of their own, by where they stand.

    Each holds what it needs of the font, so that it is the same picture wherever it is opened.
    """
    files = {path: picture.svg for figure in figures for path, picture in _by_file(figure)}
    letters = frozenset(map(ord, "".join(text for svg in files.values() for text in _TEXT.findall(svg))))
    style = f"<style>{held_font_css(letters)}</style>" if files else ""
    return {path: svg.replace("</desc>", f"</desc>{style}", 1) for path, svg in files.items()}


def _by_file(figure: Figure) -> Iterator[tuple[str, Picture]]:
    if figure.file:
        yield figure.file, figure.picture
    if figure.phone_file and figure.phone:
        yield figure.phone_file, figure.phone


_TEXT = re.compile(r"(?<=>)[^<>]+(?=</text>)")


@lru_cache(maxsize=256)
def _encoded(svg: str) -> str:
    return "data:image/svg+xml;base64," + base64.b64encode(svg.encode()).decode("ascii")


def black_uri(picture: Picture) -> str:
    """The drawing in black on white alone, as an address that holds it whole."""
    return _encoded(_COLOUR.sub(lambda found: _BLACK.get(found.group(), "#000000"), picture.svg))


_COLOUR = re.compile(r"#[0-9a-f]{6}(?=[;\"])")
# What lies under lines and letters turns white; every line and letter turns black.
_BLACK = {TINT: "#ffffff", STEEL: "#ffffff", PAPER: "#ffffff"}


def data_uri(picture: Picture) -> str:
    """The drawing as an address that holds it whole, for an `img` on paper."""
    return _encoded(picture.svg)
