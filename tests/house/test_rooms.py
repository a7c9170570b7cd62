"""The house rules that hold for every file of `generator/`, read off its syntax."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

import pytest

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "generator"
ROOMS = (
    "problems", "shipped", "memory", "wording", "units", "reading", "formulas", "model", "quantities",
    "prose", "safety", "drawings", "documents", "rendering", "publishing", "register", "pipeline", "preview",
    "cli",
)  # fmt: skip
HEAVY = ("matplotlib", "weasyprint", "numpy", "PIL", "fontTools", "highspy", "rich", "segno")
WRITERS = ("memory", "publishing", "register", "cli/start.py", "shipped/carry.py")
WRITING_METHODS = (
    "write_text", "write_bytes", "touch", "mkdir", "unlink", "rmdir", "rename", "symlink_to",
    "hardlink_to", "chmod",
)  # fmt: skip
WRITING_CALLS = (
    "os.remove", "os.unlink", "os.rename", "os.replace", "os.makedirs", "os.mkdir", "os.rmdir", "os.link",
    "os.symlink", "os.truncate", "os.write", "shutil.copy", "shutil.copyfile", "shutil.copytree",
    "shutil.move", "shutil.rmtree", "tempfile.mkstemp", "tempfile.mkdtemp", "tempfile.NamedTemporaryFile",
    "tempfile.TemporaryDirectory",
)  # fmt: skip

FILES = sorted(PACKAGE.rglob("*.py"))


class Import(NamedTuple):
    """A module imported at a line, and whether that happens inside a function."""

    module: str
    line: int
    inside: bool


def shown(path: Path) -> str:
    return path.relative_to(PACKAGE).as_posix()


def room_of(name: str) -> str:
    return name.split("/")[0].removesuffix(".py")


def imports(tree: ast.Module) -> Iterator[Import]:
    inside = {
        id(node)
        for function in ast.walk(tree)
        if isinstance(function, ast.FunctionDef | ast.AsyncFunctionDef | ast.Lambda)
        for node in ast.walk(function)
    }
    for node in _run_time_nodes(tree):
        if isinstance(node, ast.Import):
            yield from (Import(alias.name, node.lineno, id(node) in inside) for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"line {node.lineno}: a relative import hides which room it means"
            module = node.module or ""
            names = [alias.name for alias in node.names] if module == "generator" else [""]
            yield from (
                Import(".".join(filter(None, (module, name))), node.lineno, id(node) in inside)
                for name in names
            )


def _run_time_nodes(tree: ast.AST) -> Iterator[ast.AST]:
    """Every node but those under `if TYPE_CHECKING:`, which never runs."""
    for child in ast.iter_child_nodes(tree):
        if (
            isinstance(child, ast.If)
            and isinstance(child.test, ast.Name)
            and child.test.id == "TYPE_CHECKING"
        ):
            for other in child.orelse:
                yield from _run_time_nodes(other)
            continue
        yield child
        yield from _run_time_nodes(child)


def breaks_order(name: str, tree: ast.Module) -> list[str]:
    own = ROOMS.index(room_of(name))
    found = []
    for module, line, _ in imports(tree):
        if module == "generator":
            found.append(f"{name}:{line} imports the package root")
        elif module.startswith("generator."):
            room = module.split(".")[1]
            if room not in ROOMS or ROOMS.index(room) > own:
                found.append(f"{name}:{line} imports {room}, which is no room above it")
    return found


def imports_heavily(name: str, tree: ast.Module) -> list[str]:
    return [
        f"{name}:{line} imports {module} outside a function"
        for module, line, inside in imports(tree)
        if not inside and module.split(".")[0] in HEAVY
    ]


def writes(name: str, tree: ast.Module) -> list[str]:
    if any(name == writer or name.startswith(f"{writer}/") for writer in WRITERS):
        return []
    calls = (node for node in ast.walk(tree) if isinstance(node, ast.Call))
    return [f"{name}:{call.lineno} writes" for call in calls if _may_write(call)]


def _may_write(call: ast.Call) -> bool:
    called = ast.unparse(call.func)
    if called == "os.open":
        return "O_CREAT" in ast.unparse(call) or "O_TRUNC" in ast.unparse(call)
    if called in WRITING_CALLS:
        return True
    if isinstance(call.func, ast.Attribute) and call.func.attr in WRITING_METHODS:
        return True
    if called in ("open", "io.open") or (isinstance(call.func, ast.Attribute) and call.func.attr == "open"):
        return _opened_to_write(call)
    return False


def _opened_to_write(call: ast.Call) -> bool:
    at = 0 if isinstance(call.func, ast.Attribute) and ast.unparse(call.func) != "io.open" else 1
    modes = [keyword.value for keyword in call.keywords if keyword.arg == "mode"]
    modes += call.args[at : at + 1]
    return any(
        not isinstance(mode, ast.Constant) or bool(set(str(mode.value)) & set("wax+")) for mode in modes
    )


@pytest.mark.parametrize("path", FILES, ids=shown)
def test_a_room_imports_only_rooms_above_it(path: Path) -> None:
    name = shown(path)
    if name != "__init__.py":
        assert breaks_order(name, ast.parse(path.read_text())) == []


@pytest.mark.parametrize("path", FILES, ids=shown)
def test_heavy_libraries_are_imported_where_they_are_used(path: Path) -> None:
    assert imports_heavily(shown(path), ast.parse(path.read_text())) == []


@pytest.mark.parametrize("path", FILES, ids=shown)
def test_only_the_writing_rooms_write(path: Path) -> None:
    assert writes(shown(path), ast.parse(path.read_text())) == []


def test_the_package_root_holds_nothing_to_import() -> None:
    statements = ast.parse((PACKAGE / "__init__.py").read_text()).body
    assert all(isinstance(statement, ast.Expr) for statement in statements)


def test_every_file_belongs_to_a_room() -> None:
    rooms = {room_of(shown(path)) for path in FILES} - {"__init__"}
    assert rooms <= set(ROOMS)
    assert {"problems", "reading", "publishing", "cli"} <= rooms


@pytest.mark.parametrize(
    ("source", "fault"),
    [
        ("from generator import units", "imports units, which is no room above it"),
        ("import generator", "imports the package root"),
        ("from generator.cli import main", "imports cli, which is no room above it"),
        ("def f():\n    from generator.rendering.pdf import render_pdf", "imports rendering"),
        ("import generator.helpers", "imports helpers"),
    ],
)
def test_the_order_is_seen_to_be_broken(source: str, fault: str) -> None:
    found = breaks_order("memory/x.py", ast.parse(source))
    assert len(found) == 1
    assert fault in found[0]


@pytest.mark.parametrize(
    "source",
    [
        "path.write_text('x')",
        "open('a', 'w')",
        "open('a', mode='ab')",
        "path.open('r+')",
        "path.open(mode)",
        "os.replace(a, b)",
        "shutil.rmtree(a)",
    ],
)
def test_writing_is_seen(source: str) -> None:
    assert writes("model/x.py", ast.parse(source)) == ["model/x.py:1 writes"]
    assert writes("publishing/x.py", ast.parse(source)) == []


@pytest.mark.parametrize(
    "source", ["open('a')", "path.open('rb')", "path.read_text()", "text.replace('a', 'b')"]
)
def test_reading_is_not_taken_for_writing(source: str) -> None:
    assert writes("model/x.py", ast.parse(source)) == []


def test_a_heavy_import_is_seen_only_outside_functions() -> None:
    inside = "def f():\n    import weasyprint\n"
    guarded = "if TYPE_CHECKING:\n    import weasyprint\n"
    assert imports_heavily("x.py", ast.parse(inside + guarded)) == []
    assert imports_heavily("x.py", ast.parse("from matplotlib.path import Path")) == [
        "x.py:1 imports matplotlib.path outside a function"
    ]
