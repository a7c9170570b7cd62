"""Words of another language on a page: the marks they carry in blocks turned into `lang` attributes.

Every run of marked text between two tags is wrapped by itself, so that what comes out nests however the marks
lay. In an attribute, a title or a drawing, where no element can stand, the marks are taken out.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from generator.wording.marks import BEGINS, ENDS, unmarked

ENGLISH_TAG: Final = "en"
# An element of its own name, since a theme may dress any span it holds.
ELEMENT: Final = "x-en"
_ALONE = re.compile(rf'<(\w+)((?: [^<>]*)?)><{ELEMENT} lang="{ENGLISH_TAG}">([^<]*)</{ELEMENT}></\1>')
_PIECE = re.compile(r"<!--.*?-->|<(script|style|title|svg)\b.*?</\1>|<[^>]*>|[^<]+", re.DOTALL)
_MARK = re.compile(f"([{BEGINS}{ENDS}])")
_LETTER = re.compile(r"[^\W\d_]")
_SIZE_ALONE = re.compile(r"[\s\d.,×−±+/%°£]*(?:mm|cm|m|kg|min|h|dB)?[²³]?[\s.,;:)]*")


def with_languages(html: str) -> str:
    """A page with each marked run in an element that says it is English.

    Raises ValueError when a mark that begins has none that ends, which would put the wrong language on the
    rest of the page.
    """
    depth, made = 0, []
    for found in _PIECE.finditer(html):
        piece = found.group()
        if piece.startswith("<"):
            made.append(unmarked(piece))
            continue
        for part in _MARK.split(piece):
            depth += {BEGINS: 1, ENDS: -1}.get(part, 0)
            made.extend(_wrapped(part, depth))
    if depth:
        raise ValueError(f"marks of another language are left open: {depth}")
    return _ALONE.sub(_said_of_all, "".join(made))


def _said_of_all(found: re.Match[str]) -> str:
    """The language given by the element that holds nothing else, which is shorter."""
    tag, attributes, text = found.groups()
    if " lang=" in attributes:
        return found.group()
    return f'<{tag}{attributes} lang="{ENGLISH_TAG}">{text}</{tag}>'


def _wrapped(part: str, depth: int) -> Iterator[str]:
    if part in (BEGINS, ENDS):
        return
    if depth < 1 or not _LETTER.search(part) or _SIZE_ALONE.fullmatch(part):
        yield part
        return
    words = part.strip()
    before, _, after = part.partition(words)
    yield f'{before}<{ELEMENT} lang="{ENGLISH_TAG}">{words}</{ELEMENT}>{after}'
