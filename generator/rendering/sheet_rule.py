"""The rule of a printed sheet that hangs on its document: the rod, and the diagonal word behind the text."""

from __future__ import annotations

import base64
from html import escape

from markupsafe import Markup

from generator.rendering.rod import paper_rod

# A background of `@page` is placed from the corner of the text: places on the sheet less the margins.
_MARGIN_LEFT_MM = 24
_ROD_LEFT_MM, _ROD_TOP_MM = 5.5, 16
# The word runs along the diagonal; at this size five capitals fill it, and a longer word is set smaller.
_WORD_MM, _WORD_LETTERS = 67.0, 5


def _address(svg: str) -> str:
    return "data:image/svg+xml;base64," + base64.b64encode(svg.encode()).decode("ascii")


def _place(left: float, top: float, margin: float) -> str:
    return f"{left - _MARGIN_LEFT_MM:g}mm {top - margin:g}mm"


def _word_svg(word: str) -> str:
    size = min(_WORD_MM, _WORD_MM * _WORD_LETTERS / max(len(word), 1))
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" width="210mm" height="297mm" viewBox="0 0 210 297">'
        f'<text transform="translate(108 152) rotate(-54)" text-anchor="middle" y="{size * 0.35:.1f}" '
        f'font-family="Fira Sans" font-weight="800" font-size="{size:.1f}" fill="#e9e9e9">'
        f"{escape(word)}</text></svg>"
    )


def sheet_rule(note: str, word: str = "", *, top: float = 22) -> Markup:
    """An `@page` rule with the rod 6 to 14 mm from the left edge and `note` beside it.

    `word`, where there is one, runs across the sheet behind the text. `top` is the margin over the text, mm.
    """
    layers = [(_address(paper_rod(note)), _place(_ROD_LEFT_MM, _ROD_TOP_MM, top))]
    if word:
        layers.append((_address(_word_svg(word.upper())), _place(0, 0, top)))
    images = ",".join(f'url("{address}")' for address, _ in layers)
    places = ",".join(place for _, place in layers)
    return Markup(
        f"@page{{background-image:{images};background-position:{places};background-repeat:no-repeat;"
        "background-size:auto}"
    )
