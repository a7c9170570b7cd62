"""What a formula means: precedence, units, calls, and the place of each part."""

from __future__ import annotations

from decimal import Decimal

import pytest

from generator.formulas import (
    Binary,
    Call,
    Compare,
    Formula,
    Minus,
    Name,
    Number,
    calls_in,
    names_in,
    nodes_in,
    parse_formula,
)
from generator.problems import ProblemLog, Span
from generator.reading.nodes import Entries, Text
from generator.reading.yaml_nodes import parse_yaml
from generator.units import ACCELERATION, DENSITY, LENGTH, MONEY, NUMBER, UNITS, Value


def text_of(written: str) -> Text:
    span = Span(file="m.yaml", line=1, column=1, text=written, length=len(written))
    return Text(value=written, span=span, lines=(span,), starts=(0,))


def tree_of(written: str) -> Formula:
    log = ProblemLog()
    tree = parse_formula(text_of(written), log)
    assert list(log) == []
    assert tree is not None
    return tree


def drawn(tree: Formula) -> str:
    """The tree with a bracket round every sign."""
    match tree:
        case Number():
            return tree.text
        case Name():
            return f"{tree.name}.{tree.field}" if tree.field else tree.name
        case Minus():
            return f"(-{drawn(tree.of)})"
        case Call():
            given = ", ".join(
                f"{argument.name}={drawn(argument.tree)}" if argument.name else drawn(argument.tree)
                for argument in tree.arguments
            )
            return f"{tree.function}({given})"
        case Binary() | Compare():
            return f"({drawn(tree.left)} {tree.symbol} {drawn(tree.right)})"


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("a + b * c", "(a + (b * c))"),
        ("(a + b) * c", "((a + b) * c)"),
        ("a - b - c", "((a - b) - c)"),
        ("a / b / c", "((a / b) / c)"),
        ("a - b + c / d * e", "((a - b) + ((c / d) * e))"),
        ("-a * b", "((-a) * b)"),
        ("a * -b", "(a * (-b))"),
        ("a - -b", "(a - (-b))"),
        ("--a", "(-(-a))"),
        ("a + b < c * d", "((a + b) < (c * d))"),
        ("(a <= b)", "(a <= b)"),
        ("total((a == b), (c != d))", "total((a == b), (c != d))"),
        ("a >= b", "(a >= b)"),
        ("a > b", "(a > b)"),
        ("architrave.width - leg", "(architrave.width - leg)"),
        ("even_packer(readings = set_back, step = 0.5 mm)", "even_packer(readings=set_back, step=0.5 mm)"),
        ("round_up(mean(set_back), 0.5 mm)", "round_up(mean(set_back), 0.5 mm)"),
        ("least(a, b + 1 mm, -c)", "least(a, (b + 1 mm), (-c))"),
        ("ways_out()", "ways_out()"),
        ("marks(length, spacing = 300 mm)", "marks(length, spacing=300 mm)"),
    ],
)
def test_signs_bind_as_in_arithmetic(written: str, meant: str) -> None:
    assert drawn(tree_of(written)) == meant


@pytest.mark.parametrize(
    ("written", "value"),
    [
        ("5 mm", Value(Decimal(5), LENGTH)),
        ("0.5mm", Value(Decimal("0.5"), LENGTH)),
        ("2.4 m", Value(Decimal("2400.0"), LENGTH)),
        ("25 %", Value(Decimal("0.25"), NUMBER)),
        ("£4", Value(Decimal(4), MONEY)),
        ("£ 4.20", Value(Decimal("4.20"), MONEY)),
        ("600 kg/m3", Value(Decimal("0.000000600"), DENSITY)),
        ("2.5 m/s2", Value(Decimal("2500.0"), ACCELERATION)),
        ("2", Value(Decimal(2), NUMBER)),
    ],
)
def test_a_number_is_followed_by_its_unit(written: str, value: Value) -> None:
    tree = tree_of(written)
    assert isinstance(tree, Number)
    assert tree.value == value
    assert tree.text == written


@pytest.mark.parametrize("unit", [unit for unit in UNITS if unit != "£"])
def test_every_unit_follows_a_number(unit: str) -> None:
    tree = tree_of(f"3 {unit}")
    assert isinstance(tree, Number)
    assert tree.value.dimension == UNITS[unit].dimension


def test_a_unit_ends_where_the_arithmetic_goes_on() -> None:
    assert drawn(tree_of("5 mm/2")) == "(5 mm / 2)"
    assert drawn(tree_of("6 kg / share")) == "(6 kg / share)"
    assert drawn(tree_of("5 m-2 m")) == "(5 m - 2 m)"


def test_each_part_has_its_place() -> None:
    tree = tree_of("leg + round_up(x, step = 0.5 mm)")
    places = [(type(node).__name__, node.span.column, node.span.length) for node in nodes_in(tree)]
    assert places == [("Binary", 1, 32), ("Name", 1, 3), ("Call", 7, 26), ("Name", 16, 1), ("Number", 26, 6)]
    assert [argument.span.column for argument in calls_in(tree)[0].arguments] == [16, 19]


def test_a_part_of_a_block_is_found_on_its_own_line() -> None:
    node = parse_yaml("work: |\n  opening_height\n    + first_quirk\n", "m.yaml", ProblemLog())
    assert isinstance(node, Entries)
    text = node.get("work")
    assert isinstance(text, Text)
    tree = parse_formula(text, ProblemLog())
    assert isinstance(tree, Binary)
    assert (tree.right.span.line, tree.right.span.column, tree.right.span.length) == (3, 7, 11)
    assert (tree.span.line, tree.span.column, tree.span.length) == (2, 3, 14)


def test_names_come_in_the_order_written() -> None:
    tree = tree_of("a + packer.thickness * least(b, c = a) < d")
    assert [(name.name, name.field) for name in names_in(tree)] == [
        ("a", None), ("packer", "thickness"), ("b", None), ("a", None), ("d", None),
    ]  # fmt: skip


def test_calls_come_outer_first() -> None:
    assert [call.function for call in calls_in(tree_of("a(b(c), d()) + e()"))] == ["a", "b", "d", "e"]
