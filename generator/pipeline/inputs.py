"""The files of a user's folder that a publication may depend on."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from generator.memory import canonical

INPUT_FOLDERS = ("methods", "themes")


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs:
    """The folder as it was named, and the SHA-256 of each input file by its path."""

    folder: Path
    hashes: Mapping[Path, str]

    def payload(self) -> bytes:
        """All of it as bytes; the folder's name counts, since faults are told with it."""
        files = {path.relative_to(self.folder).as_posix(): value for path, value in self.hashes.items()}
        return canonical({"folder": str(self.folder), "files": files})


def read_inputs(folder: Path) -> Inputs:
    """Every file under `methods` and `themes` as it is now, hidden ones left out."""
    paths = (path for name in INPUT_FOLDERS for path in sorted((folder / name).rglob("*")))
    seen = (path for path in paths if path.is_file() and not _hidden(path.relative_to(folder)))
    return Inputs(
        folder=folder, hashes={path: hashlib.sha256(path.read_bytes()).hexdigest() for path in seen}
    )


def _hidden(path: Path) -> bool:
    return any(part.startswith(".") for part in path.parts)
