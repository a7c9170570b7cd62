"""No calculator without evidence: the table of what is held against what is whole, its tests are there."""

from __future__ import annotations

import ast
from functools import cache
from pathlib import Path

import pytest

from generator.quantities.calculator import registered
from tests.quantities.evidence import GROUPS, Group, Held
from tests.quantities.published import PUBLISHED, PUBLISHED_VALUES, REMEMBERED

TESTS = Path(__file__).parents[1]
ALL = [(group.name, held) for group in GROUPS for held in group.held]


@cache
def tree(module: str) -> ast.Module:
    return ast.parse((TESTS / f"{module.replace('.', '/')}.py").read_text(encoding="utf-8"))


def functions(module: str) -> dict[str, ast.FunctionDef]:
    return {node.name: node for node in tree(module).body if isinstance(node, ast.FunctionDef)}


def libraries(module: str) -> set[str]:
    found: set[str] = set()
    for node in ast.walk(tree(module)):
        if isinstance(node, ast.Import):
            found |= {alias.name.split(".")[0] for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            found.add(node.module.split(".")[0])
    return found


@pytest.mark.parametrize(("name", "held"), ALL, ids=[held.test for _, held in ALL])
def test_what_is_held_is_held_by_a_test_that_asserts(name: str, held: Held) -> None:
    module, _, test = held.test.partition(":")
    body = list(ast.walk(functions(module)[test]))
    asserts = any(isinstance(node, ast.Assert) for node in body)
    calls = any(isinstance(node, ast.Call) and "check" in ast.unparse(node.func) for node in body)
    assert asserts or calls
    assert not held.library or held.library in libraries(module)


def test_every_calculator_is_computed_another_way() -> None:
    assert {name for _, held in ALL for name in held.calculators} == set(registered())


@pytest.mark.parametrize("group", GROUPS, ids=lambda group: group.name)
def test_a_group_has_a_published_value_or_says_that_there_is_none(group: Group) -> None:
    sourced = {value.calculator for value in PUBLISHED_VALUES if value.known in (PUBLISHED, REMEMBERED)}
    assert set(group.published) <= sourced
    for table in group.tables:
        module, _, test = table.partition(":")
        assert test in functions(module)
    assert bool(group.published or group.tables) != bool(group.no_source)


def test_there_are_the_twelve_groups() -> None:
    assert len(GROUPS) == 12
    assert all(group.held for group in GROUPS)
