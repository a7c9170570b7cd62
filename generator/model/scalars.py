"""The single values a file holds: words, whole numbers, values with units, flags, dates, formulas, prose.

Each is read from text as it was written, so that nothing is retyped on the way, and each carries its
JSON Schema, so that an editor and this tool agree on what may stand there.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date
from typing import Annotated, Any

from generator.formulas.parser import parse_formula
from generator.formulas.tree import Formula
from generator.model.prose import Prose, parse_prose
from generator.model.texts import Reads, at_fault, text_of, told, told_or_number
from generator.problems import ProblemLog, Span, nearest
from generator.reading.nodes import Node, Style, Text
from generator.units import UNITS

SNAKE = r"[a-z][a-z0-9]*(_[a-z0-9]+)*"
KEBAB = r"[a-z0-9]+(-[a-z0-9]+)*"
DOTTED = rf"{SNAKE}(\.{SNAKE})?"


@dataclass(frozen=True, slots=True, kw_only=True)
class Word:
    """A name, a code or a plain text, with its place."""

    value: str
    span: Span

    def __str__(self) -> str:
        return self.value


@dataclass(frozen=True, slots=True, kw_only=True)
class Quoted(Word):
    """A text in quotes where a name could have stood: it means itself."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Day:
    """A calendar day with its place."""

    value: date
    span: Span


class Count(int):
    """A whole number that knows its place."""

    span: Span

    def __new__(cls, number: int, span: Span) -> Count:
        counted = super().__new__(cls, number)
        counted.span = span
        return counted

    def __getnewargs__(self) -> tuple[int, Span]:  # type: ignore[override]
        return int(self), self.span


def _prose(text: Text, log: ProblemLog) -> Prose:
    prose = parse_prose(text, log)
    if prose is None:
        raise at_fault()
    return prose


def plain_word(text: Text, log: ProblemLog) -> Word:
    """The text as a word; braces have no meaning in it."""
    found = re.search(r"[{}]", text.value)
    if found:
        log.add("text-braces", text.place(found.start()))
        raise at_fault()
    return Word(value=text.value.strip(), span=text.span)


def _shaped(pattern: str, code: str) -> Callable[[Node, ProblemLog], Word]:
    shape = re.compile(pattern)

    def read(node: Node, log: ProblemLog) -> Word:
        text = told(node, "a name", log)
        if not shape.fullmatch(text.value):
            log.add(code, text.span, value=text.value)
            raise at_fault()
        return Word(value=text.value, span=text.span)

    return read


_dotted = _shaped(DOTTED, "name-dotted")


def _name_or_text(node: Node, log: ProblemLog) -> Word:
    """A dotted name, or a text in quotes."""
    if not isinstance(node, Text) or node.style is not Style.QUOTED:
        return _dotted(node, log)
    word = plain_word(node, log)
    return Quoted(value=word.value, span=word.span)


def _choice(allowed: tuple[str, ...]) -> Callable[[Node, ProblemLog], Word]:
    def read(node: Node, log: ProblemLog) -> Word:
        text = text_of(node, f"one of: {', '.join(allowed)}", log)
        if text.value not in allowed:
            near = nearest(text.value, allowed)
            log.add("choice-unknown", text.span, value=text.value, allowed=", ".join(allowed), nearest=near)
            raise at_fault()
        return Word(value=text.value, span=text.span)

    return read


def one_of(*allowed: str) -> Reads:
    """A word out of a fixed list."""
    return Reads(_choice(allowed), {"type": "string", "enum": list(allowed)})


_FLAGS = {"yes": True, "no": False} | dict.fromkeys(("true", "True", "TRUE"), True)
_FLAGS |= dict.fromkeys(("false", "False", "FALSE"), False)


def _flag(node: Node, log: ProblemLog) -> bool:
    text = text_of(node, "yes or no", log)
    if text.value not in _FLAGS:
        log.add("flag-unknown", text.span, value=text.value)
        raise at_fault()
    return _FLAGS[text.value]


def _count(node: Node, log: ProblemLog) -> Count:
    text = text_of(node, "a whole number", log)
    if not re.fullmatch(r"0|[1-9][0-9]{0,8}", text.value):
        log.add("count-form", text.span, value=text.value)
        raise at_fault()
    return Count(int(text.value), text.span)


def _day(node: Node, log: ProblemLog) -> Day:
    text = text_of(node, "a date", log)
    try:
        if not re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", text.value):
            raise ValueError
        return Day(value=date.fromisoformat(text.value), span=text.span)
    except ValueError:
        log.add("date-form", text.span, value=text.value)
        raise at_fault() from None


def _formula(node: Node, log: ProblemLog) -> Formula:
    expected = "a formula, such as first_quirk + second_quirk"
    tree = parse_formula(told_or_number(node, expected, log), log)
    if tree is None:
        raise at_fault()
    return tree


_STRING: Mapping[str, Any] = {"type": "string", "minLength": 1}
_CODE: Mapping[str, Any] = {"type": ["string", "number"]}
_FORMULA: Mapping[str, Any] = {**_CODE, "examples": ["opening_height + first_quirk"]}

_DATE: Mapping[str, Any] = {
    "type": "string", "format": "date", "pattern": r"^[0-9]{4}-[0-9]{2}-[0-9]{2}$",
    "examples": ["2026-11-11"],
}  # fmt: skip


def _shape(pattern: str, code: str, example: str) -> Reads:
    schema = {"type": "string", "pattern": f"^{pattern}$", "examples": [example]}
    return Reads(_shaped(pattern, code), schema)


Told = Annotated[Prose, Reads(lambda node, log: _prose(told(node, "a sentence", log), log), _STRING)]
ToldOrNumber = Annotated[
    Prose, Reads(lambda node, log: _prose(told_or_number(node, "a sentence or a number", log), log), _CODE)
]
Plain = Annotated[Word, Reads(lambda node, log: plain_word(told(node, "a few words", log), log), _STRING)]
Code = Annotated[Word, Reads(lambda node, log: plain_word(told_or_number(node, "a code", log), log), _CODE)]
SnakeName = Annotated[Word, _shape(SNAKE, "name-snake", "first_quirk")]
KebabName = Annotated[Word, _shape(KEBAB, "name-kebab", "chop-saw")]
NameOrText = Annotated[Word, Reads(_name_or_text, {**_STRING, "examples": ["packer.mean", "left"]})]
DottedName = Annotated[Word, _shape(DOTTED, "name-dotted", "packer.mean")]
Colour = Annotated[Word, _shape(r"#[0-9A-Fa-f]{6}", "colour-form", "#1B4A86")]
WebAddress = Annotated[
    Word,
    _shape(
        r"https?://[A-Za-z0-9.-]+(:[0-9]+)?(/[A-Za-z0-9._~%/-]*)?",
        "web-address-form",
        "https://example.org/methods",
    ),
]
Flag = Annotated[bool, Reads(_flag, {"anyOf": [{"type": "boolean"}, {"enum": ["yes", "no"]}]})]
Whole = Annotated[Count, Reads(_count, {"type": "integer", "minimum": 0})]
FormatVersion = Annotated[Count, Reads(_count, {"type": "integer", "enum": [1]})]
Dated = Annotated[Day, Reads(_day, _DATE)]
Unit = Annotated[Word, one_of(*UNITS)]
Worked = Annotated[Formula, Reads(_formula, _FORMULA)]
