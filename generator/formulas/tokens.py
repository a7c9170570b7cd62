"""A formula's text to numbers, names and signs, each with its place; what has no place here is refused."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum

from generator.problems import nearest
from generator.units import UNITS, NotAValue, Value, parse_value


class Kind(StrEnum):
    """What a token is."""

    NUMBER = "number"
    NAME = "name"
    SIGN = "sign"
    END = "end"


@dataclass(frozen=True, slots=True, kw_only=True)
class Token:
    """A run of characters that mean one thing; `start` and `end` are offsets in the formula's text.

    A number has a value, nothing else has.
    """

    kind: Kind
    text: str
    start: int
    end: int
    value: Value | None = None


class NotAFormula(ValueError):
    """A fault code, the offsets it is about, and the values its wording names."""

    def __init__(self, code: str, start: int, end: int, /, **values: str) -> None:
        super().__init__(code)
        self.code, self.start, self.end, self.values = code, start, end, values


_UNIT = "|".join(re.escape(symbol) for symbol in sorted(UNITS, key=len, reverse=True))
_SPACE = "[ \u00a0\u2009\u202f]"
_GAP = re.compile(r"\s+")
_NUMBER = re.compile(rf"£ *[0-9]+(?:\.[0-9]+)?|[0-9]+(?:\.[0-9]+)?(?:{_SPACE}*(?:{_UNIT})(?!\w))?")
_FOLLOWING_WORD = re.compile(_SPACE + r"*([^\W\d²³]\w*)")
_NAME = re.compile(r"[a-z][a-z0-9_]*")
_WORD = re.compile(r"[^\W\d]\w*")
_SIGN = re.compile(r"<=|>=|==|!=|[-+*/<>=(),.]")

_REFUSED: tuple[tuple[str, re.Pattern[str]], ...] = (
    ("formula-power", re.compile(r"\*\*|\^|(?:[^\W\d]\w*)?[²³]")),
    ("formula-text", re.compile(r"[\"'“”‘’`]")),
    ("formula-comma", re.compile(r"\d[\d.]*(?:,\d[\d.]*)+")),
    ("formula-number-gap", re.compile(rf"\d[\d.]*(?:{_SPACE}\d[\d.]*)+")),
    (
        "formula-number-form",
        re.compile(r"\.\d[\d.]*|\d+\.(?!\d)[\d.]*|\d+(?:\.\d+){2,}\.?|\d{10,}|\d+\.\d{7,}"),
    ),
    ("formula-underscores", re.compile(r"_\w*|[^\W\d]\w*__\w*")),
)
_INSTEAD: Mapping[str, str] = {
    "×": "*", "·": "*", "⋅": "*", "÷": "/", "∕": "/", "−": "-", "–": "-", "—": "-", "≤": "<=", "≥": ">=",
    "≠": "!=", "［": "(", "[": "(", "{": "(", "]": ")", "}": ")",
}  # fmt: skip


def tokens_of(text: str) -> Iterator[Token]:
    """The tokens of a formula with one END after them. Raises NotAFormula at the first fault."""
    at = _past_gap(text, 0)
    while at < len(text):
        token = _token(text, at)
        yield token
        at = _past_gap(text, token.end)
    yield Token(kind=Kind.END, text="", start=len(text.rstrip()), end=len(text.rstrip()) + 1)


def _past_gap(text: str, at: int) -> int:
    found = _GAP.match(text, at)
    return found.end() if found else at


def _token(text: str, at: int) -> Token:
    _refuse(text, at)
    if text[at] == "£" or text[at] in "0123456789":
        return _number(text, at)
    if word := _WORD.match(text, at):
        return _name(word)
    if sign := _SIGN.match(text, at):
        return Token(kind=Kind.SIGN, text=sign.group(), start=at, end=sign.end())
    if text[at] in _INSTEAD:
        raise NotAFormula("formula-sign", at, at + 1, sign=text[at], instead=_INSTEAD[text[at]])
    raise NotAFormula("formula-character", at, at + 1, character=text[at])


def _refuse(text: str, at: int) -> None:
    for code, pattern in _REFUSED:
        if found := pattern.match(text, at):
            raise NotAFormula(code, at, found.end(), written=found.group())


def _number(text: str, at: int) -> Token:
    found = _NUMBER.match(text, at)
    if not found:
        raise NotAFormula("formula-character", at, at + 1, character=text[at])
    written = found.group()
    word = _FOLLOWING_WORD.match(text, found.end())
    if word:
        raise NotAFormula(
            "formula-unit", *word.span(1), unit=word.group(1), nearest=_unit_like(word.group(1))
        )
    try:
        value = parse_value(written)
    except NotAValue as fault:
        raise NotAFormula("formula-number-form", at, found.end(), written=written) from fault
    return Token(kind=Kind.NUMBER, text=written, start=at, end=found.end(), value=value)


def _unit_like(word: str) -> str:
    return next((unit for unit in UNITS if unit.lower() == word.lower()), nearest(word, UNITS))


def _name(word: re.Match[str]) -> Token:
    written = word.group()
    if not _NAME.fullmatch(written):
        raise NotAFormula("formula-name-form", *word.span(), name=written)
    return Token(kind=Kind.NAME, text=written, start=word.start(), end=word.end())
