"""A finished publication laid down whole or not at all.

`output/site` is a symbolic link to a finished folder beside it. A new publication is built in a folder of
its own; one rename of a fresh link over the old one makes it the published site, so that whoever looks, or
whatever kills the process, meets the old site or the new one and nothing between.
"""

from __future__ import annotations

import errno
import os
import re
import shutil
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from generator.problems import MachineLacks
from generator.publishing.lock import only_publisher
from generator.publishing.manifest import MANIFEST, Manifest, manifest_of, read_manifest, stands_whole


@dataclass(frozen=True, slots=True, kw_only=True)
class Laid:
    """What laying down did: the published folder, its digest, and the files written, kept and removed."""

    folder: Path
    digest: str
    written: int
    kept: int
    removed: int


def lay_down(output: Path, files: Mapping[str, bytes], name: str = "site") -> Laid:
    """Make `output/name` hold exactly `files` (POSIX paths to contents) and their manifest.

    A file whose bytes stand in the old publication is linked over, not written again. Raises MachineLacks
    when the folder cannot be written, the disk is full, another publisher holds it, or something that is
    not ours stands where the publication belongs; then the old publication stands.
    """
    _refuse_unsafe_names(files)
    try:
        output.mkdir(parents=True, exist_ok=True)
        with only_publisher(output):
            return _Place(output, name).publish(files)
    except OSError as error:
        raise _machine_fault(error, output) from error


def standing(output: Path, digest: str, name: str = "site") -> bool:
    """True when the publication `digest` is the published one and each of its files has its bytes."""
    return (output / name).is_symlink() and stands_whole(output / name, digest)


class _Place:
    """Where one publication stands: the link that readers follow and the folders it may point to."""

    def __init__(self, output: Path, name: str) -> None:
        self._output = output
        self._link = output / name
        self._finished_name = re.compile(rf"\.{re.escape(name)}-[0-9a-f]{{16}}(-again)?")
        self._building = output / f".building-{name}"
        self._fresh_link = output / f".link-{name}"

    def publish(self, files: Mapping[str, bytes]) -> Laid:
        old = self._published()
        self._clear_away(keep=old)
        manifest = manifest_of(files)
        if old and stands_whole(old, manifest.digest):
            return Laid(
                folder=self._link, digest=manifest.digest, written=0, kept=len(manifest.files), removed=0
            )
        kept = self._build(files, manifest, old)
        self._swap(self._finished(manifest))
        laid = self._tell(manifest, old, kept)
        self._clear_away(keep=self._published())
        return laid

    def _published(self) -> Path | None:
        """The folder the link points to; refuses to go on where anything else stands."""
        if not os.path.lexists(self._link):
            return None
        target = self._output / self._link.readlink() if self._link.is_symlink() else self._link
        ours = target.parent == self._output and self._finished_name.fullmatch(target.name)
        if not self._link.is_symlink() or not ours:
            raise MachineLacks("output-not-ours", folder=self._link)
        return target if target.is_dir() else None

    def _clear_away(self, keep: Path | None) -> None:
        """Remove what an earlier, killed publication left, and the publication before this one."""
        self._fresh_link.unlink(missing_ok=True)
        for folder in sorted(self._output.iterdir()):
            ours = folder == self._building or self._finished_name.fullmatch(folder.name)
            if ours and folder != keep:
                shutil.rmtree(folder)

    def _build(self, files: Mapping[str, bytes], manifest: Manifest, old: Path | None) -> int:
        """Fill the building folder; returns how many files were taken over from `old`."""
        self._building.mkdir()
        placed = (
            _place_file(self._building / name, content, old / name if old else None)
            for name, content in sorted(files.items())
        )
        kept = sum(placed)
        _write(self._building / MANIFEST, manifest.text())
        _settle(self._building)
        return kept

    def _finished(self, manifest: Manifest) -> Path:
        """The building folder under its lasting name, which no other folder has."""
        stem = f".{self._link.name}-{manifest.digest[:16]}"
        finished = self._output / stem
        if finished.exists():
            finished = self._output / f"{stem}-again"
        return self._building.rename(finished)

    def _swap(self, finished: Path) -> None:
        self._fresh_link.symlink_to(finished.name, target_is_directory=True)
        self._fresh_link.replace(self._link)

    def _tell(self, manifest: Manifest, old: Path | None, kept: int) -> Laid:
        before = read_manifest(old) if old else None
        return Laid(
            folder=self._link,
            digest=manifest.digest,
            written=len(manifest.files) - kept,
            kept=kept,
            removed=len((before.files if before else {}).keys() - manifest.files.keys()),
        )


def _place_file(path: Path, content: bytes, old: Path | None) -> bool:
    """Put `content` at `path`; True when the old file with the same bytes was linked over."""
    path.parent.mkdir(parents=True, exist_ok=True)
    if old and old.is_file() and not old.is_symlink() and old.read_bytes() == content and _linked(old, path):
        return True
    _write(path, content)
    return False


def _linked(old: Path, path: Path) -> bool:
    """True when the file system could give the old file this second name."""
    try:
        path.hardlink_to(old)
    except OSError:
        return False
    return True


def _write(path: Path, content: bytes) -> None:
    with path.open("wb") as file:
        file.write(content)
        file.flush()
        os.fsync(file.fileno())


def _settle(folder: Path) -> None:
    """The names in `folder` and below put on the disk, so that a power cut after the swap finds them."""
    for inner in (folder, *(path for path in folder.rglob("*") if path.is_dir())):
        handle = os.open(inner, os.O_RDONLY | os.O_DIRECTORY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def _refuse_unsafe_names(files: Mapping[str, bytes]) -> None:
    for name in files:
        path = PurePosixPath(name)
        if path.is_absolute() or ".." in path.parts or str(path) != name or name == MANIFEST or "\0" in name:
            raise ValueError(f"{name!r} is no place inside a publication")


def _machine_fault(error: OSError, output: Path) -> MachineLacks:
    if error.errno in (errno.ENOSPC, errno.EDQUOT):
        return MachineLacks("disk-full", folder=output)
    return MachineLacks("output-unwritable", folder=output, reason=error.strerror or str(error))
