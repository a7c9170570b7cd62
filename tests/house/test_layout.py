"""What stands at the top of the repository, and that the whole source is linted and typed."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
TOP = {"README.md", "DEVELOPERS.md", "pyproject.toml", "generator", "methods", "themes", "tests", "output"}


def kept_in_git() -> list[str]:
    listing = subprocess.check_output(["git", "-C", str(ROOT), "ls-files", "-z"], text=True)
    return [name for name in listing.split("\0") if name]


def test_the_top_level_holds_nothing_else() -> None:
    top = {name.split("/")[0] for name in kept_in_git()}
    assert {name for name in top if not name.startswith(".")} == TOP


def test_output_is_kept_by_a_dot_file_only() -> None:
    assert [name for name in kept_in_git() if name.startswith("output/")] == ["output/.gitkeep"]


@pytest.mark.parametrize(
    "command",
    [("ruff", "check", "."), ("ruff", "format", "--check", "."), ("mypy",)],
    ids=["lint", "format", "types"],
)
def test_the_source_is_clean(command: tuple[str, ...]) -> None:
    run = subprocess.run(
        [sys.executable, "-m", *command], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert run.returncode == 0, run.stdout + run.stderr
