"""What a remembered result rests on besides its payload."""

from __future__ import annotations

import subprocess
import sys
from importlib import metadata
from pathlib import Path

import pytest

from generator.memory import surroundings
from generator.memory.surroundings import (
    Native,
    hash_of_surroundings,
    library_versions,
    native_version,
    source_digest,
)


def test_a_change_in_our_own_source_changes_the_digest(tmp_path: Path) -> None:
    (tmp_path / "room.py").write_text("step = 1\n")
    before = source_digest((tmp_path,))
    (tmp_path / "__pycache__").mkdir()
    (tmp_path / "__pycache__" / "room.pyc").write_bytes(b"compiled")
    assert source_digest((tmp_path,)) == before
    (tmp_path / "room.py").write_text("step = 2\n")
    changed = source_digest((tmp_path,))
    (tmp_path / "room.py").rename(tmp_path / "hall.py")
    assert len({before, changed, source_digest((tmp_path,))}) == 3


def test_the_libraries_that_draw_and_print_are_all_in_it() -> None:
    versions = library_versions("storeyrod")
    for name in ("weasyprint", "pydyf", "tinycss2", "fonttools", "matplotlib", "numpy", "pillow", "jinja2",
                 "markupsafe", "markdown-it-py", "pyyaml", "pydantic-core", "fontpkg-fira-sans"):  # fmt: skip
        assert versions[name] == metadata.version(name), name
    assert "pytest" not in versions


def test_a_library_that_is_not_there_has_no_version() -> None:
    assert library_versions("no-such-distribution") == {"no-such-distribution": ""}


def test_the_text_engines_are_found_and_a_missing_one_is_told_apart() -> None:
    pango = next(library for library in surroundings.NATIVE if "pango-1" in library.names[0])
    assert native_version(pango).split()[1].count(".") == 2
    assert native_version(Native(("libno-such-thing.so.9",))) == ""


def test_any_part_changes_the_whole(monkeypatch: pytest.MonkeyPatch) -> None:
    seen = {hash_of_surroundings()}
    for name, value in (
        ("source_digest", lambda folders: "other"),
        ("library_versions", lambda distribution: {"weasyprint": "0"}),
        ("native_version", lambda library: "other"),
        ("font_files", lambda: iter(["/usr/share/fonts/new.ttf 1 2"])),
    ):
        with monkeypatch.context() as patched:
            patched.setattr(surroundings, name, value)
            seen.add(hash_of_surroundings())
    assert len(seen) == 5


def test_the_same_twice() -> None:
    assert hash_of_surroundings() == hash_of_surroundings()


def test_no_heavy_library_is_imported() -> None:
    code = (
        "import sys; from generator.memory import open_memory; open_memory();"
        "print([n for n in ('weasyprint', 'matplotlib', 'numpy', 'pydantic', 'yaml') if n in sys.modules])"
    )
    assert subprocess.check_output([sys.executable, "-c", code], text=True).strip() == "[]"
