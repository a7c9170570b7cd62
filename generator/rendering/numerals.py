"""Numbers in text: real minus and multiplication signs, and a number kept on one line with its unit."""

from __future__ import annotations

import re

from markupsafe import Markup, escape

from generator.units import UNITS

# A unit may be set with any space between it and its number; these are the ones that reach us.
_GAPS = " \u00a0\u2009\u202f"
_CLOSE_UNITS = frozenset({"°", "£", "GBP", "deg"})
_SPACED_UNITS = sorted((unit for unit in UNITS if unit not in _CLOSE_UNITS), key=len, reverse=True)
_NUMBER = r"[+−±]?\d+(?:[.,]\d+)*"
_WITH_UNIT = re.compile(
    rf"(?<![\w.])({_NUMBER}(?:\s?[×/]\s?{_NUMBER})*)"
    rf"[{_GAPS}]({'|'.join(map(re.escape, _SPACED_UNITS))})(?![\w²³])"
)
_SIGNS = (
    (re.compile(r"\+/?-(?=\s?\d)"), "±"),
    (re.compile(r"(?<![\w\d-])-(?=\d)"), "−"),
    (re.compile(r"(?<=\d) ?x ?(?=\d)"), " × "),
    (re.compile(r"(?<=\w)'(?=\w)"), "’"),
)


def with_signs(text: str) -> str:
    """`text` with the minus and multiplication signs and the apostrophes that a printer would set."""
    for pattern, sign in _SIGNS:
        text = pattern.sub(sign, text)
    return text


def set_numbers(text: str) -> Markup:
    """Plain text escaped, each number with its unit set apart so that it never breaks.

    The element isolates it in a language written from the right too, and is the shortest there is: a guide
    has hundreds. The space inside is an ordinary one, narrowed by the style sheet: the font has no thin one.
    """
    return Markup(_WITH_UNIT.sub(r"<bdi>\1 \2</bdi>", str(escape(with_signs(text)))))
