"""Drawings set into pages: inline on the screen, in its colours; as a picture with words on paper."""

from __future__ import annotations

import base64
import re
from functools import lru_cache

from markupsafe import Markup, escape

from generator.documents.blocks import Picture

_HEAD = re.compile(r"^.*?(?=<svg\b)", re.DOTALL)
_DROPPED = re.compile(r"<(metadata|title|desc)\b[^>]*>.*?</\1>|<!--.*?-->", re.DOTALL)
_ROOT = re.compile(r"<svg\b([^>]*)>", re.DOTALL)
_KEPT = re.compile(r'\b(?:viewBox|font-family|stroke-linejoin)="[^"]*"')
_NOT_ID = re.compile(r"[^\w-]+")
_ID = re.compile(r'\bid="([^"]+)"')
_POINTERS = re.compile(r'(url\(#|href="#|="#)([\w.:-]+)')


def inline_svg(picture: Picture, prefix: str) -> Markup:
    """The drawing as an SVG element of an HTML page.

    Its ids carry `prefix`, so that several drawings may share a page; its words are the picture's `alt`; its
    colours follow the page. Raises ValueError when the SVG has no viewBox, since it could not be scaled.
    """
    return _inlined(picture.inline(), picture.alt, prefix)


@lru_cache(maxsize=256)
def _inlined(svg: str, alt: str, prefix: str) -> Markup:
    body = _DROPPED.sub("", _HEAD.sub("", svg, count=1)).strip()
    root = _ROOT.search(body)
    kept = _KEPT.findall(root.group(1)) if root else []
    if root is None or not any(attribute.startswith("viewBox") for attribute in kept):
        raise ValueError("a drawing needs an svg element with a viewBox")
    prefix = _NOT_ID.sub("-", prefix)
    named = f"{prefix}-words"
    opening = (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="drawing" role="img" aria-labelledby="{named}" '
        f'{" ".join(kept)}><title id="{named}">{escape(alt)}</title>'
    )
    return Markup(opening + _prefixed(body[root.end() :], prefix))


def _prefixed(body: str, prefix: str) -> str:
    names = frozenset(_ID.findall(body))
    body = _ID.sub(rf'id="{prefix}-\1"', body)

    def pointed(found: re.Match[str]) -> str:
        lead, name = found.groups()
        return f"{lead}{prefix}-{name}" if name in names else found.group()

    return _POINTERS.sub(pointed, body) if names else body


@lru_cache(maxsize=256)
def _encoded(svg: str) -> str:
    return "data:image/svg+xml;base64," + base64.b64encode(svg.encode()).decode("ascii")


def data_uri(picture: Picture) -> str:
    """The drawing as an address that holds it whole, for an `img` on paper."""
    return _encoded(picture.svg)
