"""What a formula is made of: numbers with units, names, calls and the signs between them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from generator.problems import Span
from generator.units import Value


@dataclass(frozen=True, slots=True, kw_only=True)
class Number:
    """A number as written, with its unit: `5 mm`, `25 %`, `£4.20`, `2`."""

    value: Value
    text: str
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Name:
    """A size or quantity, or one declared field of a record: `leg`, `architrave.width`."""

    name: str
    field: str | None
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Argument:
    """One argument of a call; `name` is None for one given by its place alone."""

    name: str | None
    tree: Formula
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Call:
    """A calculator or a named function with its arguments in the order written."""

    function: str
    arguments: tuple[Argument, ...]
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Minus:
    """The negative of something."""

    of: Formula
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Binary:
    """Two values with `+`, `-`, `*` or `/` between them."""

    symbol: str
    left: Formula
    right: Formula
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Compare:
    """Two values with `<`, `<=`, `>`, `>=`, `==` or `!=` between them."""

    symbol: str
    left: Formula
    right: Formula
    span: Span


Formula = Number | Name | Call | Minus | Binary | Compare


def parts_of(tree: Formula) -> tuple[Formula, ...]:
    """What a node is put together from, left to right."""
    match tree:
        case Call():
            return tuple(argument.tree for argument in tree.arguments)
        case Minus():
            return (tree.of,)
        case Binary() | Compare():
            return (tree.left, tree.right)
        case _:
            return ()


def nodes_in(tree: Formula) -> Iterator[Formula]:
    """Every node, a whole before its parts, left to right."""
    waiting = [tree]
    while waiting:
        node = waiting.pop()
        yield node
        waiting.extend(reversed(parts_of(node)))


def names_in(tree: Formula) -> tuple[Name, ...]:
    """The sizes and quantities a formula refers to, in the order written, each as often as it stands."""
    return tuple(node for node in nodes_in(tree) if isinstance(node, Name))


def calls_in(tree: Formula) -> tuple[Call, ...]:
    """The calls of a formula, an outer one before those inside it."""
    return tuple(node for node in nodes_in(tree) if isinstance(node, Call))
