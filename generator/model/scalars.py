"""The single values a file holds: words, whole numbers, values with units, flags, dates, formulas, prose.

Each is read from text as it was written, so that nothing is retyped on the way, and each carries its
JSON Schema, so that an editor and this tool agree on what may stand there.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date
from typing import Annotated, Any, TypeAlias

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler, ValidationInfo
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from generator.formulas.parser import parse_formula
from generator.formulas.tree import Formula
from generator.model.prose import Prose, parse_prose
from generator.problems import ProblemLog, Span, nearest
from generator.reading.nodes import Entries, Items, Node, Nothing, Text
from generator.units import (
    ACCELERATION,
    ANGLE,
    AREA,
    DENSITY,
    LENGTH,
    LEVEL,
    MASS,
    MONEY,
    NUMBER,
    TIME,
    UNITS,
    VOLUME,
    Dimension,
    NotAValue,
    Value,
    dimension_name,
    looks_like_value,
    parse_value,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Word:
    """A name, a code or a plain text, with its place."""

    value: str
    span: Span

    def __str__(self) -> str:
        return self.value


@dataclass(frozen=True, slots=True, kw_only=True)
class Amount:
    """A value with its unit, as written, with its place."""

    value: Value
    text: str
    span: Span


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


SizeValue: TypeAlias = Amount | Word | tuple[Amount, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class NamedNode:
    """A node that stands under a name the user chose."""

    key: Text
    node: Node


def bare(node: Node | NamedNode) -> Node:
    """The node without the name it stands under."""
    return node.node if isinstance(node, NamedNode) else node


def at_fault() -> PydanticCustomError:
    """Raised once a fault is in the log, so that the value is not built."""
    return PydanticCustomError("at_fault", "the fault is in the log")


def log_of(info: ValidationInfo) -> ProblemLog:
    """The log that a reading carries along."""
    if not isinstance(info.context, ProblemLog):
        raise TypeError("a file is read with a problem log")
    return info.context


@dataclass(frozen=True, slots=True, eq=False)
class Reads:
    """How one kind of value is read from its node, and what an editor may expect there."""

    read: Callable[[Node, ProblemLog], object]
    schema: Mapping[str, Any]

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        def read(node: Node | NamedNode, info: ValidationInfo) -> object:
            return self.read(bare(node), log_of(info))

        return core_schema.with_info_plain_validator_function(read)

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        return dict(self.schema)


FOUND = {Text: "Text", Nothing: "Nothing", Items: "A list", Entries: "A group of keys"}


def wrong_kind(node: Node, expected: str, log: ProblemLog) -> PydanticCustomError:
    """Log that something else stands here than was expected."""
    log.add("kind-wrong", node.span, found=FOUND[type(node)], expected=expected)
    return at_fault()


def text_of(node: Node, expected: str, log: ProblemLog) -> Text:
    """The node as text that is not empty."""
    if not isinstance(node, Text):
        raise wrong_kind(node, expected, log)
    if not node.value.strip():
        log.add("text-empty", node.span, expected=expected)
        raise at_fault()
    return node


# The core schema of YAML 1.2.2, section 10.3.2
_RETYPED = re.compile(
    r"[-+]?(\.\d+|\d+(\.\d*)?)([eE][-+]?\d+)?|0o[0-7]+|0x[0-9a-fA-F]+|[-+]?\.(inf|Inf|INF)|\.(nan|NaN|NAN)"
    r"|~|null|Null|NULL|true|True|TRUE|false|False|FALSE"
)


def retyped(text: Text) -> bool:
    """True when a YAML 1.2 editor takes this plain scalar for a number, a truth value or nothing."""
    return text.style == "plain" and bool(_RETYPED.fullmatch(text.value.strip()))


def _told(node: Node, expected: str, log: ProblemLog) -> Text:
    text = text_of(node, expected, log)
    if retyped(text):
        log.add("text-retyped", text.span, value=text.value)
        raise at_fault()
    return text


def _told_or_number(node: Node, expected: str, log: ProblemLog) -> Text:
    text = text_of(node, expected, log)
    if text.style == "plain" and text.value.lower() in ("true", "false"):
        log.add("text-retyped", text.span, value=text.value)
        raise at_fault()
    return text


def _prose(text: Text, log: ProblemLog) -> Prose:
    prose = parse_prose(text, log)
    if prose is None:
        raise at_fault()
    return prose


def _word(text: Text, log: ProblemLog) -> Word:
    found = re.search(r"[{}]", text.value)
    if found:
        log.add("text-braces", text.place(found.start()))
        raise at_fault()
    return Word(value=text.value.strip(), span=text.span)


def _shaped(pattern: str, code: str) -> Callable[[Node, ProblemLog], Word]:
    shape = re.compile(pattern)

    def read(node: Node, log: ProblemLog) -> Word:
        text = _told(node, "a name", log)
        if not shape.fullmatch(text.value):
            log.add(code, text.span, value=text.value)
            raise at_fault()
        return Word(value=text.value, span=text.span)

    return read


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
    if not re.fullmatch(r"0|[1-9]\d{0,8}", text.value):
        log.add("count-form", text.span, value=text.value)
        raise at_fault()
    return Count(int(text.value), text.span)


def _day(node: Node, log: ProblemLog) -> Day:
    text = text_of(node, "a date", log)
    try:
        if not re.fullmatch(r"\d{4}-\d\d-\d\d", text.value):
            raise ValueError
        return Day(value=date.fromisoformat(text.value), span=text.span)
    except ValueError:
        log.add("date-form", text.span, value=text.value)
        raise at_fault() from None


def amount_in(text: Text, log: ProblemLog, dimension: Dimension | None = None) -> Amount:
    """The text as a value; of `dimension` where one is asked for."""
    try:
        value = parse_value(text.value)
    except NotAValue as fault:
        values: dict[str, Any] = {"nearest": _nearest_unit(fault.values.get("unit", "")), **fault.values}
        log.add(fault.code, text.place(fault.offset, fault.length), **values)
        raise at_fault() from None
    amount = Amount(value=value, text=text.value.strip(), span=text.span)
    if dimension is not None and value.dimension != dimension:
        wrong_dimension(amount, dimension, log)
        raise at_fault()
    return amount


def _nearest_unit(typed: str) -> str:
    """Of two letters only a slip of the shift key says anything: “in” is not meant as “min”."""
    lowered = typed.lower()
    return nearest(lowered, UNITS) if len(typed) > 2 or lowered in UNITS else ""


def wrong_dimension(amount: Amount, dimension: Dimension, log: ProblemLog) -> None:
    """Log that a value lacks its unit or is of another dimension than was expected."""
    found = dimension_name(amount.value.dimension)
    if amount.value.dimension == NUMBER:
        log.add("amount-unit-missing", amount.span, value=amount.text, example=_EXAMPLES[dimension])
    else:
        expected = f"{dimension_name(dimension)}, such as {_EXAMPLES[dimension]}"
        log.add("amount-dimension", amount.span, value=amount.text, found=found, expected=expected)


_EXAMPLES: Mapping[Dimension, str] = {
    NUMBER: "4", LENGTH: "18 mm", AREA: "28 mm2", VOLUME: "310 ml", MASS: "3 kg", TIME: "20 min",
    ANGLE: "45 deg", LEVEL: "85 dB", MONEY: "£4.20", DENSITY: "560 kg/m3", ACCELERATION: "2.5 m/s2",
}  # fmt: skip

NUMBER_PATTERN = r"^\s*[+-]?\d{1,9}(\.\d{1,6})?\s*%?\s*$"


def units_of(dimension: Dimension) -> tuple[str, ...]:
    """The unit symbols a value of this dimension may be typed with."""
    return tuple(symbol for symbol, unit in UNITS.items() if unit.dimension == dimension)


def _amount_schema(dimension: Dimension) -> dict[str, Any]:
    if dimension == NUMBER:
        return {"anyOf": [{"type": "number"}, {"type": "string", "pattern": NUMBER_PATTERN}]}
    units = "|".join(re.escape(symbol) for symbol in units_of(dimension))
    pattern = rf"^\s*[+-]?\d{{1,9}}(\.\d{{1,6}})?\s*({units})\s*$"
    if dimension == MONEY:
        pattern = rf"^\s*£\s*\d{{1,9}}(\.\d{{1,6}})?\s*$|{pattern}"
    return {"type": "string", "pattern": pattern, "examples": [_EXAMPLES[dimension]]}


def amount_of(dimension: Dimension) -> Reads:
    """A value of one dimension, with its unit written."""

    def read(node: Node, log: ProblemLog) -> Amount:
        expected = f"{dimension_name(dimension)}, such as {_EXAMPLES[dimension]}"
        return amount_in(text_of(node, expected, log), log, dimension)

    return Reads(read, _amount_schema(dimension))


def _formula(node: Node, log: ProblemLog) -> Formula:
    expected = "a formula, such as first_quirk + second_quirk"
    tree = parse_formula(_told_or_number(node, expected, log), log)
    if tree is None:
        raise at_fault()
    return tree


def _within(node: Node, log: ProblemLog) -> Amount:
    amount = amount_in(text_of(node, "a limit, such as 1 mm", log), log)
    if amount.value.dimension not in (LENGTH, ANGLE):
        wrong_dimension(amount, LENGTH, log)
        raise at_fault()
    return amount


def size_in(text: Text, log: ProblemLog) -> Amount | Word:
    """A size as written: a value where the text begins as a number does, otherwise a word."""
    return amount_in(text, log) if looks_like_value(text.value) else _word(text, log)


def _size(node: Node, log: ProblemLog) -> SizeValue:
    expected = "a size, such as 768 mm"
    if isinstance(node, Items) and node.items:
        read = [amount_in(text_of(item, expected, log), log) for item in node.items]
        return tuple(read)
    return size_in(_told_or_number(node, expected, log), log)


_ONE_SIZE: Mapping[str, Any] = {"type": ["string", "number"], "examples": ["768 mm"]}
_SIZE: Mapping[str, Any] = {"anyOf": [_ONE_SIZE, {"type": "array", "items": _ONE_SIZE, "minItems": 1}]}
_STRING: Mapping[str, Any] = {"type": "string", "minLength": 1}
_CODE: Mapping[str, Any] = {"type": ["string", "number"]}
_FORMULA: Mapping[str, Any] = {**_CODE, "examples": ["opening_height + first_quirk"]}

_DATE: Mapping[str, Any] = {
    "type": "string", "format": "date", "pattern": r"^\d{4}-\d\d-\d\d$", "examples": ["2026-11-11"],
}  # fmt: skip

SNAKE = r"[a-z][a-z0-9]*(_[a-z0-9]+)*"
KEBAB = r"[a-z0-9]+(-[a-z0-9]+)*"
DOTTED = rf"{SNAKE}(\.{SNAKE})?"


def _shape(pattern: str, code: str, example: str) -> Reads:
    schema = {"type": "string", "pattern": f"^{pattern}$", "examples": [example]}
    return Reads(_shaped(pattern, code), schema)


Told = Annotated[Prose, Reads(lambda node, log: _prose(_told(node, "a sentence", log), log), _STRING)]
ToldOrNumber = Annotated[
    Prose, Reads(lambda node, log: _prose(_told_or_number(node, "a sentence or a number", log), log), _CODE)
]
Plain = Annotated[Word, Reads(lambda node, log: _word(_told(node, "a few words", log), log), _STRING)]
Code = Annotated[Word, Reads(lambda node, log: _word(_told_or_number(node, "a code", log), log), _CODE)]
SnakeName = Annotated[Word, _shape(SNAKE, "name-snake", "first_quirk")]
KebabName = Annotated[Word, _shape(KEBAB, "name-kebab", "chop-saw")]
DottedName = Annotated[Word, _shape(DOTTED, "name-dotted", "packer.mean")]
Colour = Annotated[Word, _shape(r"#[0-9A-Fa-f]{6}", "colour-form", "#1B4A86")]
Flag = Annotated[bool, Reads(_flag, {"anyOf": [{"type": "boolean"}, {"enum": ["yes", "no"]}]})]
Whole = Annotated[Count, Reads(_count, {"type": "integer", "minimum": 0})]
FormatVersion = Annotated[Count, Reads(_count, {"type": "integer", "enum": [1]})]
Dated = Annotated[Day, Reads(_day, _DATE)]
Length = Annotated[Amount, amount_of(LENGTH)]
Area = Annotated[Amount, amount_of(AREA)]
Volume = Annotated[Amount, amount_of(VOLUME)]
Mass = Annotated[Amount, amount_of(MASS)]
Density = Annotated[Amount, amount_of(DENSITY)]
Level = Annotated[Amount, amount_of(LEVEL)]
Acceleration = Annotated[Amount, amount_of(ACCELERATION)]
Figure = Annotated[Amount, amount_of(NUMBER)]
Within = Annotated[Amount, Reads(_within, {"anyOf": [_amount_schema(LENGTH), _amount_schema(ANGLE)]})]
Unit = Annotated[Word, one_of(*UNITS)]
Worked = Annotated[Formula, Reads(_formula, _FORMULA)]
AnyAmount = Annotated[
    Amount, Reads(lambda node, log: amount_in(text_of(node, "a value, such as 768 mm", log), log), _ONE_SIZE)
]
SizeGiven = Annotated[SizeValue, Reads(_size, _SIZE)]
