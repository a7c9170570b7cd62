"""Every fault that can be found has words, and every worded fault can be found."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from generator.wording.faults import FAULTS

PACKAGE = Path(__file__).parents[2] / "generator"
FILES = [path for path in sorted(PACKAGE.rglob("*.py")) if "wording/faults" not in path.as_posix()]
CODE = re.compile(r"[a-z]+(-[a-z0-9]+)+|[a-z]+")
MAKERS = ("Problem", "MachineLacks", "WrongUse")
OWN_VALUES = ("warning",)


def codes_given(tree: ast.Module) -> Iterator[tuple[str, ast.Call]]:
    """Each code written out where a fault is recorded or raised."""
    for node in ast.walk(tree):
        if not isinstance(node, ast.Call):
            continue
        given = _code_of(node)
        if isinstance(given, ast.Constant) and isinstance(given.value, str):
            yield given.value, node


def _code_of(call: ast.Call) -> ast.expr | None:
    if isinstance(call.func, ast.Attribute) and call.func.attr == "add" and _is_log(call.func.value):
        return call.args[0] if call.args else None
    if isinstance(call.func, ast.Name) and call.func.id in MAKERS:
        named = [keyword.value for keyword in call.keywords if keyword.arg == "code"]
        return next(iter([*named, *call.args]), None)
    return None


def _is_log(owner: ast.expr) -> bool:
    return ast.unparse(owner).split(".")[-1].strip("_") in ("log", "problems", "faults", "found")


def words_written(tree: ast.Module) -> set[str]:
    return {
        node.value
        for node in ast.walk(tree)
        if isinstance(node, ast.Constant) and isinstance(node.value, str)
    }


def test_every_code_that_is_used_is_worded() -> None:
    used = {
        code: f"{path.relative_to(PACKAGE)}:{call.lineno}"
        for path in FILES
        for code, call in codes_given(ast.parse(path.read_text()))
    }
    assert len(used) > 10
    assert {code: place for code, place in used.items() if code not in FAULTS} == {}


def test_every_worded_code_is_used() -> None:
    written: set[str] = set()
    for path in FILES:
        written |= words_written(ast.parse(path.read_text()))
    assert sorted(set(FAULTS) - written) == []


@pytest.mark.parametrize("code", sorted(FAULTS))
def test_a_wording_is_whole(code: str) -> None:
    fault = FAULTS[code]
    assert CODE.fullmatch(code)
    assert fault.says.strip() == fault.says
    assert fault.says.endswith((".", "?", "”")), fault.says
    for sentence in (fault.says, fault.expected):
        placeholders = re.findall(r"%\((\w+)\)s", sentence)
        assert sentence % dict.fromkeys(placeholders, "x") == re.sub(r"%\(\w+\)s", "x", sentence).replace(
            "%%", "%"
        )


def test_every_value_a_wording_names_is_given() -> None:
    missing = []
    for path in FILES:
        for code, call in codes_given(ast.parse(path.read_text())):
            given = _values_given(call)
            if code in FAULTS and given is not None:
                wanted = set(re.findall(r"%\((\w+)\)s", FAULTS[code].says + FAULTS[code].expected))
                missing += [f"{path.name}:{call.lineno} {code}: {name}" for name in sorted(wanted - given)]
    assert missing == []


def _values_given(call: ast.Call) -> set[str] | None:
    """The names of the values given, or None when they cannot be read off the call."""
    if any(keyword.arg is None for keyword in call.keywords):
        return None
    keywords = {keyword.arg: keyword.value for keyword in call.keywords}
    if "values" in keywords or "code" in keywords:
        values = keywords.get("values")
        if not isinstance(values, ast.Dict):
            return set() if values is None else None
        return {str(key.value) for key in values.keys if isinstance(key, ast.Constant)}
    return {str(name) for name in keywords} - set(OWN_VALUES)


def test_a_code_without_words_is_seen() -> None:
    tree = ast.parse(
        "log.add('no-such-fault', span)\nraise MachineLacks('no-such-lack')\nProblem(code='third')"
    )
    assert [code for code, _ in codes_given(tree)] == ["no-such-fault", "no-such-lack", "third"]
