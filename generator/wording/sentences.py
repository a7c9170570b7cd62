"""The sentences that Python source says, read off its syntax: what `say` and `say_count` are given.

A sentence that stands in a table is followed to the table, in the same module or the one it is imported from.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import NamedTuple

Table = ast.expr
_FORMS = {"say": 1, "say_count": 2}
# The helper that says a word of a closed list, which it is given first.
_LIST = "among"


class Said(NamedTuple):
    """A sentence (with its form for many, or empty) and the file and line it stands in."""

    one: str
    many: str
    file: str
    line: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Module:
    """A module: its file from the root, its syntax, its tables by name, the files of the names it imports."""

    file: str
    syntax: ast.Module
    tables: Mapping[str, Table]
    imported: Mapping[str, str]


def modules(root: Path) -> dict[str, Module]:
    """The modules of the package under `root`, by file from `root`."""
    found = (_module(path, root) for path in sorted((root / "generator").rglob("*.py")))
    return {module.file: module for module in found}


def said(known: Mapping[str, Module]) -> Iterator[Said]:
    """Every sentence that the modules say, in order of file and line."""
    for module in known.values():
        for call in _calls(module.syntax):
            yield from _of_call(call, module, known)


def _module(path: Path, root: Path) -> Module:
    syntax = ast.parse(path.read_text(encoding="utf-8"))
    return Module(
        file=path.relative_to(root).as_posix(),
        syntax=syntax,
        tables=dict(_tables(syntax)),
        imported=dict(_imported(syntax)),
    )


def _tables(syntax: ast.Module) -> Iterator[tuple[str, Table]]:
    for node in syntax.body:
        if isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name) and node.value:
            yield node.target.id, node.value
        elif isinstance(node, ast.Assign) and isinstance(node.targets[0], ast.Name):
            yield node.targets[0].id, node.value


def _imported(syntax: ast.Module) -> Iterator[tuple[str, str]]:
    for node in syntax.body:
        if isinstance(node, ast.ImportFrom) and node.module:
            for name in node.names:
                yield name.asname or name.name, f"{node.module.replace('.', '/')}.py"


def strays(known: Mapping[str, Module]) -> tuple[str, ...]:
    """Where something is said that could not be followed to its sentence, as "file: source"."""
    return tuple(
        f"{module.file}: {ast.unparse(call.args[0])}"
        for module in known.values()
        for call in _calls(module.syntax)
        if call.args and not tuple(_of_call(call, module, known))
    )


def _calls(syntax: ast.Module) -> Iterator[ast.Call]:
    """Calls of `say` and `say_count`, but for those of the terminal's own `say`, which prints a line."""
    printed = any("say" in _names(node) and _of_terminal(node) for node in syntax.body)
    for node in ast.walk(syntax):
        if isinstance(node, ast.Call) and _name(node.func) in _FORMS and not (printed and _bare(node)):
            yield node


def _of_terminal(node: ast.stmt) -> bool:
    imported = isinstance(node, ast.ImportFrom) and (node.module or "").endswith(".terminal")
    return imported or isinstance(node, ast.FunctionDef)


def _names(node: ast.stmt) -> tuple[str, ...]:
    if isinstance(node, ast.ImportFrom):
        return tuple(name.name for name in node.names)
    return (node.name,) if isinstance(node, ast.FunctionDef) else ()


def _bare(call: ast.Call) -> bool:
    return isinstance(call.func, ast.Name)


def _name(function: ast.expr) -> str:
    if isinstance(function, ast.Attribute):
        return function.attr
    return function.id if isinstance(function, ast.Name) else ""


def _of_call(call: ast.Call, module: Module, known: Mapping[str, Module]) -> Iterator[Said]:
    forms = [_literal(one) for one in call.args[: _FORMS[_name(call.func)]]]
    if forms and all(forms):
        yield Said(forms[0], "".join(forms[1:]), module.file, call.lineno)
    elif call.args:
        yield from _followed(call.args[0], module, known)


def _literal(node: ast.expr) -> str:
    return node.value if isinstance(node, ast.Constant) and isinstance(node.value, str) else ""


def _followed(node: ast.expr, module: Module, known: Mapping[str, Module]) -> Iterator[Said]:
    """The sentences that an expression may give: of either way, of a table, or of what a function returns."""
    if isinstance(node, ast.IfExp):
        yield from _followed(node.body, module, known)
        yield from _followed(node.orelse, module, known)
    elif text := _literal(node):
        yield Said(text, "", module.file, node.lineno)
    elif isinstance(node, ast.Subscript):
        yield from _followed(node.value, module, known)
    elif isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == _LIST:
        yield from _followed(node.args[0], module, known)
    elif isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
        yield from _returned(node.func.id, module, known)
    elif isinstance(node, ast.Name):
        home = known.get(module.imported.get(node.id, module.file), module)
        yield from _texts(home.tables[node.id], home.file) if node.id in home.tables else ()


def _returned(name: str, module: Module, known: Mapping[str, Module]) -> Iterator[Said]:
    for function in module.syntax.body:
        if isinstance(function, ast.FunctionDef) and function.name == name:
            for node in ast.walk(function):
                if isinstance(node, ast.Return) and node.value:
                    yield from _followed(node.value, module, known)


def _texts(table: Table, file: str) -> Iterator[Said]:
    for value in table.values if isinstance(table, ast.Dict) else (table,):
        for node in ast.walk(value):
            if isinstance(node, ast.expr) and (text := _literal(node)):
                yield Said(text, "", file, node.lineno)
