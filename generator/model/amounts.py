"""Values with their units as a file writes them, and the sizes that are values or words."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, Any, TypeAlias

from pydantic_core import PydanticCustomError

from generator.model.scalars import Word, plain_word
from generator.model.texts import Reads, at_fault, text_of, told_or_number
from generator.problems import ProblemLog, Span, nearest
from generator.reading.nodes import Items, Node, Text
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
)  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Amount:
    """A value with its unit, as written, with its place; `within` is the limit written after ± or +-."""

    value: Value
    text: str
    span: Span
    within: Value | None = None


SizeValue: TypeAlias = Amount | Word | tuple[Amount, ...]


def amount_in(text: Text, log: ProblemLog, dimension: Dimension | None = None) -> Amount:
    """The text as a value; of `dimension` where one is asked for."""
    _refuse_limit(text, log)
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


_LIMIT = re.compile(r"±|\+-")


def _refuse_limit(text: Text, log: ProblemLog) -> None:
    """A limit either way belongs to a size; anywhere else it would be dropped without a word."""
    sign = _LIMIT.search(text.value)
    if sign:
        log.add("limit-misplaced", text.place(sign.start(), len(sign.group())), value=text.value.strip())
        raise at_fault()


def limited_in(text: Text, log: ProblemLog) -> Amount:
    """The text as a value, with a limit either way where one is written after +- or ±: “762 mm +- 1 mm”."""
    sign = _LIMIT.search(text.value)
    if not sign:
        return amount_in(text, log)
    amount = amount_in(_part(text, 0, sign.start()), log)
    limit = not_negative(amount_in(_part(text, sign.end(), len(text.value)), log), log)
    if limit.value.dimension != amount.value.dimension:
        log.add("limit-unlike", limit.span, limit=limit.text, value=amount.text)
        raise at_fault()
    within = limit.value if limit.value.magnitude else None
    return Amount(value=amount.value, text=text.value.strip(), span=text.span, within=within)


def _part(text: Text, start: int, end: int) -> Text:
    """The text from `start` to `end` with its own place."""
    return Text(value=text.value[start:end], span=text.place(start, max(end - start, 1)))


def not_negative(amount: Amount, log: ProblemLog) -> Amount:
    """The amount, which may be nought and not less."""
    if amount.value.magnitude < 0:
        log.add("amount-negative", amount.span, value=amount.text)
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

NUMBER_PATTERN = r"^\s*\+?[0-9]{1,9}(\.[0-9]{1,6})?\s*%?\s*$"


def units_of(dimension: Dimension) -> tuple[str, ...]:
    """The unit symbols a value of this dimension may be typed with."""
    return tuple(symbol for symbol, unit in UNITS.items() if unit.dimension == dimension)


def _amount_schema(dimension: Dimension) -> dict[str, Any]:
    if dimension == NUMBER:
        return {"anyOf": [{"type": "number", "minimum": 0}, {"type": "string", "pattern": NUMBER_PATTERN}]}
    units = "|".join(re.escape(symbol) for symbol in units_of(dimension))
    pattern = rf"^\s*\+?[0-9]{{1,9}}(\.[0-9]{{1,6}})?\s*({units})\s*$"
    if dimension == MONEY:
        pattern = rf"^\s*£\s*[0-9]{{1,9}}(\.[0-9]{{1,6}})?\s*$|{pattern}"
    return {"type": "string", "pattern": pattern, "examples": [_EXAMPLES[dimension]]}


def amount_of(dimension: Dimension) -> Reads:
    """A value of one dimension, with its unit written."""

    def read(node: Node, log: ProblemLog) -> Amount:
        expected = f"{dimension_name(dimension)}, such as {_EXAMPLES[dimension]}"
        return not_negative(amount_in(text_of(node, expected, log), log, dimension), log)

    return Reads(read, _amount_schema(dimension))


def _within(node: Node, log: ProblemLog) -> Amount:
    amount = amount_in(text_of(node, "a limit, such as 1 mm", log), log)
    if amount.value.dimension not in (LENGTH, ANGLE):
        wrong_dimension(amount, LENGTH, log)
        raise at_fault()
    return not_negative(amount, log)


def size_in(text: Text, log: ProblemLog) -> Amount | Word:
    """A size as written: a value where the text begins as a number does, otherwise a word."""
    return limited_in(text, log) if looks_like_value(text.value) else plain_word(text, log)


def _readings(items: Items, log: ProblemLog) -> tuple[Amount, ...]:
    read: list[Amount] = []
    for item in items.items:
        try:
            read.append(limited_in(text_of(item, "a reading, such as 7.5 mm", log), log))
        except PydanticCustomError:
            continue
    if len(read) < len(items.items):
        raise at_fault()
    return tuple(read)


def _size(node: Node, log: ProblemLog) -> SizeValue:
    expected = "a size, such as 768 mm"
    if isinstance(node, Items):
        return _readings(node, log)
    return size_in(told_or_number(node, expected, log), log)


_ONE_SIZE: Mapping[str, Any] = {"type": ["string", "number"], "examples": ["768 mm"]}
_SIZE: Mapping[str, Any] = {"anyOf": [_ONE_SIZE, {"type": "array", "items": _ONE_SIZE}]}
Length = Annotated[Amount, amount_of(LENGTH)]
Area = Annotated[Amount, amount_of(AREA)]
Volume = Annotated[Amount, amount_of(VOLUME)]
Mass = Annotated[Amount, amount_of(MASS)]
Density = Annotated[Amount, amount_of(DENSITY)]
Level = Annotated[Amount, amount_of(LEVEL)]
Acceleration = Annotated[Amount, amount_of(ACCELERATION)]
Duration = Annotated[Amount, amount_of(TIME)]
Figure = Annotated[Amount, amount_of(NUMBER)]
Money = Annotated[Amount, amount_of(MONEY)]
Within = Annotated[Amount, Reads(_within, {"anyOf": [_amount_schema(LENGTH), _amount_schema(ANGLE)]})]
AnyAmount = Annotated[
    Amount, Reads(lambda node, log: amount_in(text_of(node, "a value, such as 768 mm", log), log), _ONE_SIZE)
]
SizeGiven = Annotated[SizeValue, Reads(_size, _SIZE)]
