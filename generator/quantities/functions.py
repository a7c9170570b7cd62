"""The functions every formula may use: rounding, least, greatest, mean, total, count, roots and angles."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from decimal import ROUND_CEILING, ROUND_FLOOR, Context, Decimal, localcontext

from generator.quantities.worked import DimensionMismatch, Undefined, Worked, applied, limited, literal
from generator.units import ANGLE, EXACT_DIGITS, NUMBER, Dimension, Magnitude, Value

# A quotient that was cut at the last digit kept must not push a length over the next step.
NEAR_ENOUGH = Decimal("1e-9")


def round_up(item: Worked, step: Worked) -> Worked:
    """`item` taken up to the next whole number of steps; a step of nought or less is Undefined."""
    return _rounded("round_up", item, step, -NEAR_ENOUGH, ROUND_CEILING)


def round_down(item: Worked, step: Worked) -> Worked:
    """`item` taken down to a whole number of steps; a step of nought or less is Undefined."""
    return _rounded("round_down", item, step, NEAR_ENOUGH, ROUND_FLOOR)


def _rounded(function: str, item: Worked, step: Worked, lean: Decimal, way: str) -> Worked:
    _same_kind(function, (item, step))
    if step.magnitude <= 0:
        raise Undefined("step-not-positive")
    return applied(function, (item, step), stepped(item.value, step.value, lean, way))


def stepped(value: Value, step: Value, lean: Decimal, way: str) -> Value:
    """`value` at a whole number of steps, rounded the `way` named after leaning by `lean` steps."""
    with localcontext(Context(prec=EXACT_DIGITS)):
        size = _decimal(step.magnitude)
        whole = (_decimal(value.magnitude) / size + lean).to_integral_value(rounding=way)
        return Value(whole * size, value.dimension)


def rounded_like(function: str, value: Value, step: Value) -> Value:
    """What `round_up` or `round_down` by name makes of a value."""
    lean, way = (-NEAR_ENOUGH, ROUND_CEILING) if function == "round_up" else (NEAR_ENOUGH, ROUND_FLOOR)
    return stepped(value, step, lean, way)


def _decimal(magnitude: Magnitude) -> Decimal:
    return magnitude if isinstance(magnitude, Decimal) else Decimal(repr(magnitude))


def least(items: Sequence[Worked]) -> Worked:
    """The smallest of values of one kind."""
    _same_kind("least", items)
    return applied("least", tuple(items), min((item.value for item in items), key=_size))


def greatest(items: Sequence[Worked]) -> Worked:
    """The largest of values of one kind."""
    _same_kind("greatest", items)
    return applied("greatest", tuple(items), max((item.value for item in items), key=_size))


def _size(value: Value) -> Magnitude:
    return value.magnitude


def total(items: Sequence[Worked]) -> Worked:
    """The sum of values of one kind."""
    _same_kind("total", items)
    return applied("total", tuple(items), _sum(items))


def mean(items: Sequence[Worked]) -> Worked:
    """The sum of values of one kind divided by their count."""
    _same_kind("mean", items)
    whole = _sum(items)
    with localcontext(Context(prec=EXACT_DIGITS)):
        magnitude = whole.magnitude / len(items)
    return applied("mean", tuple(items), Value(magnitude, whole.dimension))


def count(items: Sequence[Worked]) -> Worked:
    """How many there are."""
    return applied("count", tuple(items), Value(Decimal(len(items))))


def _sum(items: Sequence[Worked]) -> Value:
    if all(item.value.exact for item in items):
        with localcontext(Context(prec=EXACT_DIGITS)):
            exact = sum((_decimal(item.magnitude) for item in items), Decimal(0))
        return Value(exact, items[0].dimension)
    return Value(math.fsum(item.number for item in items), items[0].dimension)


def _same_kind(function: str, items: Sequence[Worked]) -> None:
    if not items:
        raise Undefined("nothing-to-gather")
    for item in items[1:]:
        if item.dimension != items[0].dimension:
            raise DimensionMismatch(function, items[0].value, item.value)


def sqrt(item: Worked) -> Worked:
    """The square root; a negative value or one whose kind has no root is Undefined."""
    if item.magnitude < 0 or any(power % 2 for power in item.dimension):
        raise Undefined("no-square-root")
    dimension = Dimension(*(power // 2 for power in item.dimension))
    return applied("sqrt", (item,), Value(math.sqrt(item.number), dimension))


def atan(item: Worked) -> Worked:
    """The angle in degrees whose tangent is a plain number."""
    _kind("atan", item, NUMBER)
    return applied("atan", (item,), Value(math.degrees(math.atan(item.number)), ANGLE))


def asin(item: Worked) -> Worked:
    """The angle in degrees whose sine is a plain number from −1 to 1; Undefined beyond."""
    _kind("asin", item, NUMBER)
    if not -1 <= item.number <= 1:
        raise Undefined("no-such-angle")
    return applied("asin", (item,), Value(math.degrees(math.asin(item.number)), ANGLE))


def tan(item: Worked) -> Worked:
    """The tangent of an angle in degrees."""
    return _of_angle("tan", math.tan, item)


def sin(item: Worked) -> Worked:
    """The sine of an angle in degrees."""
    return _of_angle("sin", math.sin, item)


def cos(item: Worked) -> Worked:
    """The cosine of an angle in degrees."""
    return _of_angle("cos", math.cos, item)


def _of_angle(name: str, function: Callable[[float], float], item: Worked) -> Worked:
    _kind(name, item, ANGLE)
    return applied(name, (item,), Value(function(math.radians(item.number))))


def _kind(function: str, item: Worked, dimension: Dimension) -> None:
    if item.dimension != dimension:
        raise DimensionMismatch(function, item.value, Value(Decimal(1), dimension))


def floor_at_nought(item: Worked) -> Worked:
    """`item`, or nought where it is negative; with limits the working always says so."""
    nought = literal(Value(Decimal(0), item.dimension))
    return item if item >= nought and not limited(item.tree) else greatest((item, nought))
