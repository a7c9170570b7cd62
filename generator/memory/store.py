"""The entries themselves: one file each, checked when read, replaced whole when written, oldest out first."""

from __future__ import annotations

import contextlib
import hashlib
import os
import tempfile
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import NamedTuple

from generator.problems import Problem, Severity

CHECKSUM_BYTES = hashlib.sha256().digest_size
USUAL_LIMIT = 512 * 1024 * 1024
"""Bytes the memory may take before its oldest entries go."""
ROOM_LEFT_BY_TRIMMING = 0.8
"""Trimming goes below the limit, so that the next few entries do not trim again."""


def usual_folder(environment: Mapping[str, str] = os.environ) -> Path:
    """`STOREYROD_CACHE`, else `storeyrod` under `XDG_CACHE_HOME`, else under `~/.cache`."""
    chosen = environment.get("STOREYROD_CACHE")
    if chosen:
        return Path(chosen)
    shared = environment.get("XDG_CACHE_HOME", "")
    home = Path(environment.get("HOME") or Path.home())
    # A relative XDG_CACHE_HOME is to be ignored (XDG Base Directory Specification 0.8).
    return (Path(shared) if Path(shared).is_absolute() else home / ".cache") / "storeyrod"


class Entry(NamedTuple):
    """A remembered file with its last use and its size in bytes."""

    used: float
    size: int
    path: Path


class Memory:
    """Remembers the bytes a pure step made from its bytes; works without keeping where it cannot write.

    `limit` is the most it may take on disk, in bytes. After a run `trouble` says why nothing could be kept.
    """

    def __init__(self, folder: Path, *, surroundings: str, limit: int = USUAL_LIMIT) -> None:
        self._folder = folder
        self._surroundings = surroundings
        self._limit = limit
        self._kept = False
        self.trouble: Problem | None = None

    def key(self, step: str, payload: bytes) -> str:
        """The name of what `step` makes from `payload` in these surroundings."""
        whole = hashlib.sha256()
        for part in (step.encode(), self._surroundings.encode(), payload):
            whole.update(len(part).to_bytes(8, "big"))
            whole.update(part)
        return whole.hexdigest()

    def recall(self, key: str) -> bytes | None:
        """What was kept under `key`, or None when it is missing or damaged."""
        path = self._path(key)
        try:
            entry = path.read_bytes()
        except OSError:
            return None
        checksum, value = entry[:CHECKSUM_BYTES], entry[CHECKSUM_BYTES:]
        if hashlib.sha256(value).digest() != checksum:
            return None
        with contextlib.suppress(OSError):
            os.utime(path)
        return value

    def keep(self, key: str, value: bytes) -> None:
        """Remember `value` under `key`; the first failure is noted in `trouble` and ends all keeping."""
        if self.trouble:
            return
        try:
            _write_whole(self._path(key), hashlib.sha256(value).digest() + value)
        except OSError as error:
            self.trouble = Problem(
                code="memory-unwritable",
                severity=Severity.WARNING,
                values={"folder": str(self._folder), "reason": error.strerror or str(error)},
            )
        self._kept = True

    def trim(self) -> None:
        """After keeping, let the entries longest unused go until the memory is within its limit."""
        if self._kept:
            _remove_oldest(list(self._entries()), self._limit)

    def _path(self, key: str) -> Path:
        return self._folder / key[:2] / key

    def _entries(self) -> Iterator[Entry]:
        for path in self._folder.glob("*/*"):
            with contextlib.suppress(OSError):
                state = path.stat()
                yield Entry(state.st_mtime, state.st_size, path)


def _write_whole(path: Path, content: bytes) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    handle, name = tempfile.mkstemp(dir=path.parent, prefix=".")
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
        Path(name).replace(path)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise


def _remove_oldest(entries: list[Entry], limit: int) -> None:
    size = sum(entry.size for entry in entries)
    if size <= limit:
        return
    for entry in sorted(entries):
        if size <= limit * ROOM_LEFT_BY_TRIMMING:
            return
        with contextlib.suppress(OSError):
            entry.path.unlink()
            size -= entry.size
