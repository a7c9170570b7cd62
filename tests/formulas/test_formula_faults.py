"""What is no formula, and how it is told. Whole reports of the common ones stand in tests/broken."""

from __future__ import annotations

import time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.formulas import nodes_in, parse_formula
from generator.formulas.parser import MOST_CHARACTERS, MOST_DEPTH, MOST_NODES
from generator.problems import ProblemLog
from generator.wording.report import report_text
from tests.formulas.test_formula_trees import text_of


def told(written: str) -> tuple[str, int, int]:
    """The fault's code, its column and its length."""
    log = ProblemLog()
    assert parse_formula(text_of(written), log) is None
    (problem,) = log
    assert problem.span is not None
    return problem.code, problem.span.column, problem.span.length


@pytest.mark.parametrize(
    ("written", "fault"),
    [
        ("", ("formula-empty", 1, 1)),
        ("a ** 2", ("formula-power", 3, 2)),
        ("a ^ 2", ("formula-power", 3, 1)),
        ("5²", ("formula-power", 2, 1)),
        ("a²", ("formula-power", 1, 2)),
        ("'a'", ("formula-text", 1, 1)),
        ("“a”", ("formula-text", 1, 1)),
        ("__import__", ("formula-underscores", 1, 10)),
        ("a.__class__", ("formula-underscores", 3, 9)),
        ("a__b", ("formula-underscores", 1, 4)),
        ("_a", ("formula-underscores", 1, 2)),
        ("a.b.c", ("formula-dots", 4, 1)),
        ("a..b", ("formula-field", 3, 1)),
        ("a.", ("formula-field", 3, 1)),
        ("a.b(c)", ("formula-field-called", 4, 1)),
        ("f(a).b", ("formula-call-field", 5, 1)),
        ("(a).b", ("formula-dot-place", 4, 1)),
        ("7,5 mm", ("formula-comma", 1, 3)),
        ("1,200.5 mm", ("formula-comma", 1, 7)),
        ("least(1,2)", ("formula-comma", 7, 3)),
        ("1 200 mm", ("formula-number-gap", 1, 5)),
        (".5 mm", ("formula-number-form", 1, 2)),
        ("5. mm", ("formula-number-form", 1, 2)),
        ("1.2.3", ("formula-number-form", 1, 5)),
        ("1234567890", ("formula-number-form", 1, 10)),
        ("0.1234567", ("formula-number-form", 1, 9)),
        ("5 inches", ("formula-unit", 3, 6)),
        ("1e3", ("formula-unit", 2, 2)),
        ("2 x", ("formula-unit", 3, 1)),
        ("a b", ("formula-two-values", 3, 1)),
        ("2(a)", ("formula-two-values", 2, 1)),
        ("a 5 mm", ("formula-two-values", 3, 4)),
        ("a if b", ("formula-two-values", 3, 2)),
        ("a ÷ b", ("formula-sign", 3, 1)),
        ("a − b", ("formula-sign", 3, 1)),
        ("a ≤ b", ("formula-sign", 3, 1)),
        ("[a]", ("formula-sign", 1, 1)),
        ("a @ b", ("formula-character", 3, 1)),
        ("a; b", ("formula-character", 2, 1)),
        ("£", ("formula-character", 1, 1)),
        ("٣ mm", ("formula-character", 1, 1)),
        ("lambda: 0", ("formula-character", 7, 1)),
        ("Leg", ("formula-name-form", 1, 3)),
        ("größe", ("formula-name-form", 1, 5)),
        ("a = b", ("formula-equals", 3, 1)),
        ("a, b", ("formula-comma-outside", 2, 1)),
        ("(a", ("formula-bracket-unclosed", 1, 1)),
        ("f(a", ("formula-bracket-unclosed", 2, 1)),
        ("a)", ("formula-bracket-stray", 2, 1)),
        ("a < b < c", ("formula-compare-twice", 7, 1)),
        ("f(a < b)", ("formula-compare-place", 5, 1)),
        ("f(a = 1, a = 2)", ("formula-argument-doubled", 10, 1)),
        ("f(a = 1, 2)", ("formula-argument-unnamed", 10, 1)),
        ("a +", ("formula-unfinished", 3, 1)),
        ("+a", ("formula-no-value", 1, 1)),
        ("f(a,)", ("formula-no-value", 5, 1)),
        ("a // b", ("formula-no-value", 4, 1)),
    ],
)
def test_a_fault_is_named_at_its_place(written: str, fault: tuple[str, int, int]) -> None:
    assert told(written) == fault


def test_a_unit_is_guessed_at() -> None:
    log = ProblemLog()
    parse_formula(text_of("leg + 5 MM"), log)
    assert report_text(log) == (
        "m.yaml:1:9: error: “MM” after a number is not a unit.\n"
        "    leg + 5 MM\n"
        "            ^^\n"
        "    Expected a unit such as mm, m, m2, ml, kg, min, h, deg, % or £. To multiply, write *. "
        "Did you mean “mm”?\n"
        "\n"
        "1 error in 1 file\n"
    )


@pytest.mark.parametrize("opening", ["(", "-", "f(", "-(", "f(a = "])
def test_depth_is_bounded(opening: str) -> None:
    written = opening * (MOST_DEPTH + 1) + "1"
    assert told(written)[0] == "formula-deep"


def test_the_deepest_formula_is_read() -> None:
    assert parse_formula(text_of("(" * MOST_DEPTH + "1" + ")" * MOST_DEPTH), ProblemLog()) is not None


def test_length_is_bounded() -> None:
    assert told("a" * (MOST_CHARACTERS + 1))[0] == "formula-long"
    assert parse_formula(text_of("a" * MOST_CHARACTERS), ProblemLog()) is not None


def test_the_number_of_parts_is_bounded() -> None:
    assert told("+".join(["1"] * (MOST_NODES // 2 + 1)))[0] == "formula-large"
    assert parse_formula(text_of("+".join(["1"] * (MOST_NODES // 2))), ProblemLog()) is not None


BITS = st.sampled_from(
    ["a", "packer", "1", "0.5", " mm", " ", "\n", "+", "-", "*", "/", "(", ")", ",", "=", "<", ">", "!", ".",
     "_", "£", "%", "f(", "'", "²", "é", "9" * 12, "x = "]
)  # fmt: skip


@given(st.lists(BITS, max_size=80).map("".join) | st.text(max_size=1200))
@settings(max_examples=600, deadline=None)
def test_any_text_gives_a_bounded_tree_or_one_worded_fault(written: str) -> None:
    log = ProblemLog()
    begun = time.perf_counter()
    tree = parse_formula(text_of(written), log)
    assert time.perf_counter() - begun < 1
    assert (tree is None) == (len(log) == 1)
    assert report_text(log).endswith("\n")
    assert tree is None or len(list(nodes_in(tree))) <= MOST_NODES
