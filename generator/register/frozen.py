"""The frozen files of one issue, and the list by which any of them can be proved."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Final

from generator.register.lines import hash_of

LIST: Final = "SHA256SUMS"
"""In the form that `sha256sum --check` reads."""


def list_of(files: Mapping[str, bytes]) -> bytes:
    """The list of the files by path, each with its SHA-256."""
    return "".join(f"{hash_of(content)}  {name}\n" for name, content in sorted(files.items())).encode()


def listed(text: bytes) -> Mapping[str, str]:
    """The SHA-256 of each file by its path, read from such a list."""
    pairs = (line.partition("  ") for line in text.decode(errors="replace").splitlines())
    return {name: value for value, _, name in pairs}


def files_in(folder: Path) -> Mapping[str, bytes]:
    """Every file under a folder but the list, by its POSIX path."""
    paths = (path for path in sorted(folder.rglob("*")) if path.is_file() and path != folder / LIST)
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in paths}
