"""Everything besides its payload that a slow step's result may depend on, in one hash.

Found without importing any heavy library, since a run with nothing to do must stay cheap.
"""

from __future__ import annotations

import ctypes
import hashlib
import json
import platform
import re
import sys
from collections.abc import Iterator
from importlib import metadata
from pathlib import Path
from typing import NamedTuple

from generator.shipped import shipped

PACKAGE = Path(__file__).parent.parent
DISTRIBUTION = "storeyrod"
FONT_FOLDERS = (
    "/etc/fonts",
    "/usr/share/fonts",
    "/usr/local/share/fonts",
    "/System/Library/Fonts",
    "/Library/Fonts",
    "~/Library/Fonts",
    "~/.config/fontconfig",
    "~/.local/share/fonts",
    "~/.fonts",
)


class Native(NamedTuple):
    """A native library by its file names on Linux and macOS, with its version call when that returns text."""

    names: tuple[str, ...]
    version: str = ""


NATIVE = (
    Native(("libpango-1.0.so.0", "libpango-1.0.dylib"), "pango_version_string"),
    Native(("libharfbuzz.so.0", "libharfbuzz.0.dylib"), "hb_version_string"),
    Native(("libpangoft2-1.0.so.0", "libpangoft2-1.0.dylib")),
    Native(("libharfbuzz-subset.so.0", "libharfbuzz-subset.0.dylib")),
    Native(("libfontconfig.so.1", "libfontconfig.1.dylib")),
)


def hash_of_surroundings() -> str:
    """A hash of the interpreter, our source, the libraries, the native text engines and the fonts."""
    whole = {
        "python": sys.version,
        "machine": platform.machine(),
        "source": source_digest((PACKAGE, shipped("themes"))),
        "libraries": library_versions(DISTRIBUTION),
        "native": [native_version(library) for library in NATIVE],
        "fonts": sorted(font_files()),
    }
    return hashlib.sha256(json.dumps(whole, sort_keys=True).encode()).hexdigest()


def source_digest(folders: tuple[Path, ...]) -> str:
    """A hash of the names and contents of every file in `folders`, compiled Python left out."""
    whole = hashlib.sha256()
    for folder in folders:
        for path in sorted(folder.rglob("*")):
            if path.is_file() and "__pycache__" not in path.parts:
                whole.update(f"{path.relative_to(folder).as_posix()}\0".encode())
                whole.update(hashlib.sha256(path.read_bytes()).digest())
    return whole.hexdigest()


def library_versions(distribution: str) -> dict[str, str]:
    """The version of each library that `distribution` needs, directly or through another.

    One that is not installed has an empty version; extras are left out, since none runs in a publication.
    """
    versions: dict[str, str] = {}
    waiting = [distribution]
    while waiting:
        name = waiting.pop()
        if name in versions:
            continue
        versions[name], needs = _version_and_needs(name)
        waiting += needs
    return versions


def _version_and_needs(name: str) -> tuple[str, list[str]]:
    try:
        found = metadata.distribution(name)
    except metadata.PackageNotFoundError:
        return "", []
    return found.version, [_needed(line) for line in found.requires or () if "extra ==" not in line]


def _needed(requirement: str) -> str:
    name = re.match(r"[\w.-]+", requirement)
    return name.group().lower() if name else ""


def native_version(library: Native) -> str:
    """The version it tells, "present" when it tells none in words, empty when it cannot be loaded."""
    for name in library.names:
        try:
            loaded = ctypes.CDLL(name)
        except OSError:
            continue
        return f"{name} {_told_version(loaded, library.version) if library.version else 'present'}"
    return ""


def _told_version(loaded: ctypes.CDLL, call: str) -> str:
    tell = getattr(loaded, call)
    tell.restype = ctypes.c_char_p
    return str(tell().decode())


def font_files() -> Iterator[str]:
    """Each font and font setting of the system with its size and date of change."""
    for folder in FONT_FOLDERS:
        for path in Path(folder).expanduser().rglob("*"):
            if path.is_file():
                state = path.stat()
                yield f"{path} {state.st_size} {int(state.st_mtime)}"
