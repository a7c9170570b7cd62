"""A worked value: its magnitude with dimension, and the tree of arithmetic that made it.

The operators build the tree, so what is printed as the working is the arithmetic that was done. Every
source size stays in the tree as a `Given` with the place it was written at.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from decimal import Context, Decimal, localcontext
from enum import StrEnum
from typing import TypeAlias

from generator.problems import Span
from generator.units import EXACT_DIGITS, LENGTH, NUMBER, Dimension, Magnitude, Value

Operand: TypeAlias = "Worked | int | Decimal"
Again: TypeAlias = Callable[[tuple[float, ...]], float | None]


class Origin(StrEnum):
    """Where a given value comes from."""

    ROW = "survey row"
    JOB = "job"
    HOUSE = "house rules"
    DEFAULT = "default"
    EXAMPLE = "example"
    CATALOGUE = "catalogue"
    POLICY = "policy"


@dataclass(frozen=True, slots=True, kw_only=True)
class Given:
    """A value that was written down: by its name in the file, with its label, origin and place.

    `within` is the limit either way that was written with it, such as the 1 mm of 762 mm ± 1 mm.
    """

    name: str
    label: str
    value: Value
    origin: Origin
    span: Span | None = None
    within: Value | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Literal:
    """A number typed in a formula, or one that belongs to the formula itself, such as the 2 in two legs."""

    value: Value


@dataclass(frozen=True, slots=True, kw_only=True)
class Named:
    """A quantity worked out elsewhere, which a working names and does not repeat."""

    name: str
    label: str
    of: Working

    @property
    def value(self) -> Value:
        """The value it was worked out to."""
        return self.of.value


@dataclass(frozen=True, slots=True, kw_only=True)
class Operation:
    """Two workings joined by + − × ÷; a negation has one part."""

    symbol: str
    parts: tuple[Working, ...]
    value: Value


@dataclass(frozen=True, slots=True, kw_only=True)
class Applied:
    """A named function of workings, such as `round_up`.

    `again` works it out for other magnitudes of its arguments, in base units, None where there is no answer;
    it must rise or fall with each of them all through. Limits cannot be followed through a function that is
    neither arithmetic nor has it; `behind` is that arithmetic where the name stands for more than is printed.
    """

    function: str
    arguments: tuple[Working, ...]
    value: Value
    again: Again | None = field(default=None, compare=False, repr=False)
    behind: Working | None = field(default=None, compare=False, repr=False)


Working: TypeAlias = Given | Literal | Named | Operation | Applied


class DimensionMismatch(ValueError):
    """Two values that cannot be joined, with the sign or function that tried to."""

    def __init__(self, symbol: str, left: Value, right: Value) -> None:
        super().__init__(symbol)
        self.symbol, self.left, self.right = symbol, left, right


class Undefined(ValueError):
    """Arithmetic without an answer, such as a division by nought; `reason` is a fault code."""

    def __init__(self, reason: str) -> None:
        super().__init__(reason)
        self.reason = reason


@dataclass(frozen=True, slots=True, kw_only=True)
class Worked:
    """A value with its working. Joins with other worked values and with plain whole or decimal numbers."""

    value: Value
    tree: Working

    def __add__(self, other: Operand) -> Worked:
        return _joined("+", self, worked(other))

    def __sub__(self, other: Operand) -> Worked:
        return _joined("-", self, worked(other))

    def __mul__(self, other: Operand) -> Worked:
        return _joined("*", self, worked(other))

    def __rmul__(self, other: Operand) -> Worked:
        return _joined("*", worked(other), self)

    def __radd__(self, other: Operand) -> Worked:
        return _joined("+", worked(other), self)

    def __rtruediv__(self, other: Operand) -> Worked:
        return _joined("/", worked(other), self)

    def __rsub__(self, other: Operand) -> Worked:
        return _joined("-", worked(other), self)

    def __truediv__(self, other: Operand) -> Worked:
        return _joined("/", self, worked(other))

    def __neg__(self) -> Worked:
        value = Value(-self.value.magnitude, self.value.dimension)
        return Worked(value=value, tree=Operation(symbol="-", parts=(self.tree,), value=value))

    def __lt__(self, other: Worked) -> bool:
        return compare("<", self, other)

    def __le__(self, other: Worked) -> bool:
        return compare("<=", self, other)

    def __gt__(self, other: Worked) -> bool:
        return compare(">", self, other)

    def __ge__(self, other: Worked) -> bool:
        return compare(">=", self, other)

    @property
    def magnitude(self) -> Magnitude:
        """The number in base units."""
        return self.value.magnitude

    @property
    def dimension(self) -> Dimension:
        """What kind of thing it measures."""
        return self.value.dimension

    @property
    def number(self) -> float:
        """The magnitude in base units as a float, for geometry."""
        return float(self.value.magnitude)


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """A comparison and whether it holds."""

    holds: bool
    symbol: str
    left: Worked
    right: Worked


def worked(operand: Operand) -> Worked:
    """A plain number as a worked one; a worked value as it is."""
    if isinstance(operand, Worked):
        return operand
    return literal(Value(Decimal(operand)))


def literal(value: Value) -> Worked:
    """A value that stands in the formula itself."""
    return Worked(value=value, tree=Literal(value=value))


def given(
    name: str,
    value: Value,
    *,
    label: str,
    origin: Origin,
    span: Span | None = None,
    within: Value | None = None,
) -> Worked:
    """A written value as the start of a working; `within` is the limit either way written with it."""
    tree = Given(name=name, label=label or name, value=value, origin=origin, span=span, within=within)
    return Worked(value=value, tree=tree)


def millimetres(length: int | str | Decimal) -> Worked:
    """A length that belongs to a formula itself."""
    return literal(Value(Decimal(length), LENGTH))


def named(item: Worked, name: str, label: str) -> Worked:
    """`item` under a name, so that later workings say the name and not the whole arithmetic again."""
    if isinstance(item.tree, Given):
        return item
    return Worked(value=item.value, tree=Named(name=name, label=label, of=item.tree))


def applied(
    function: str,
    arguments: tuple[Worked, ...],
    value: Value,
    again: Again | None = None,
    behind: Worked | None = None,
) -> Worked:
    """The outcome of a named function, with its arguments kept; see `Applied` for `again` and `behind`."""
    trees = tuple(item.tree for item in arguments)
    tree = Applied(
        function=function, arguments=trees, value=value, again=again, behind=behind.tree if behind else None
    )
    return Worked(value=value, tree=tree)


_COMPARISONS: Mapping[str, Callable[[Magnitude, Magnitude], bool]] = {
    "<": lambda a, b: a < b,
    "<=": lambda a, b: a <= b,
    ">": lambda a, b: a > b,
    ">=": lambda a, b: a >= b,
    "==": lambda a, b: a == b,
    "!=": lambda a, b: a != b,
}


def compare(symbol: str, left: Worked, right: Worked) -> bool:
    """Whether `left symbol right` holds; DimensionMismatch when they are of different kinds."""
    if left.dimension != right.dimension:
        raise DimensionMismatch(symbol, left.value, right.value)
    return _COMPARISONS[symbol](*_alike(left.magnitude, right.magnitude))


def judge(symbol: str, left: Worked, right: Worked) -> Judged:
    """A comparison kept with both its sides."""
    return Judged(holds=compare(symbol, left, right), symbol=symbol, left=left, right=right)


def _alike(left: Magnitude, right: Magnitude) -> tuple[Magnitude, Magnitude]:
    if isinstance(left, Decimal) and isinstance(right, Decimal):
        return left, right
    return float(left), float(right)


def _add(left: Magnitude, right: Magnitude) -> Magnitude:
    return left + right  # type: ignore[operator]


def _subtract(left: Magnitude, right: Magnitude) -> Magnitude:
    return left - right  # type: ignore[operator]


def _multiply(left: Magnitude, right: Magnitude) -> Magnitude:
    return left * right  # type: ignore[operator]


def _divide(left: Magnitude, right: Magnitude) -> Magnitude:
    if not right:
        raise Undefined("division-by-nought")
    return left / right  # type: ignore[operator]


_ARITHMETIC: Mapping[str, Callable[[Magnitude, Magnitude], Magnitude]] = {
    "+": _add,
    "-": _subtract,
    "*": _multiply,
    "/": _divide,
}


def _joined(symbol: str, left: Worked, right: Worked) -> Worked:
    dimension = _dimension(symbol, left.value, right.value)
    with localcontext(Context(prec=EXACT_DIGITS)):
        magnitude = _ARITHMETIC[symbol](*_alike(left.magnitude, right.magnitude))
    if not math.isfinite(magnitude):
        raise Undefined("value-beyond-range")
    value = Value(magnitude, dimension)
    return Worked(value=value, tree=Operation(symbol=symbol, parts=(left.tree, right.tree), value=value))


def join(symbol: str, left: Worked, right: Worked) -> Worked:
    """`left symbol right` for one of + - * /; DimensionMismatch or Undefined when it has no answer."""
    return _joined(symbol, left, right)


def _dimension(symbol: str, left: Value, right: Value) -> Dimension:
    if symbol == "*":
        return left.dimension.times(right.dimension)
    if symbol == "/":
        return left.dimension.over(right.dimension)
    if left.dimension != right.dimension:
        raise DimensionMismatch(symbol, left, right)
    return left.dimension


def givens(tree: Working) -> tuple[Given, ...]:
    """Every written value a working rests on, each once, in the order they are used."""
    return tuple({(item.name, item.span, item.value): item for item in _givens(tree)}.values())


def _givens(tree: Working) -> Iterator[Given]:
    if isinstance(tree, Given):
        yield tree
    for part in parts_of(tree):
        yield from _givens(part)


def limited(tree: Working) -> bool:
    """Whether a working rests on any value that was written with a limit."""
    if isinstance(tree, Given):
        return tree.within is not None
    return any(limited(part) for part in parts_of(tree))


def parts_of(tree: Working) -> tuple[Working, ...]:
    """What a working is made from."""
    if isinstance(tree, Operation):
        return tree.parts
    if isinstance(tree, Applied):
        return tree.arguments
    return (tree.of,) if isinstance(tree, Named) else ()


def plain(number: int | str | Decimal) -> Worked:
    """A number without a unit that belongs to a formula itself."""
    return literal(Value(Decimal(number), NUMBER))
