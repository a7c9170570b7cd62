"""What tells that a file was saved: the state of every input file, asked again and again."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from threading import Event
from typing import NamedTuple

from generator.pipeline.inputs import INPUT_FOLDERS

SECONDS_BETWEEN_LOOKS = 0.1


class Stamp(NamedTuple):
    """What changes when a file is saved: time in nanoseconds, size in bytes, and the file itself."""

    time: int
    size: int
    node: int


def stamps(folder: Path) -> Mapping[Path, Stamp]:
    """The stamp of every file that a publication of `folder` may depend on."""
    return dict(_stamped(folder))


def _stamped(folder: Path) -> Iterator[tuple[Path, Stamp]]:
    for path in (path for name in INPUT_FOLDERS for path in (folder / name).rglob("*")):
        try:
            state = path.stat()
        except OSError:
            # An editor that saves by renaming takes a file away for a moment.
            continue
        if path.is_file():
            yield path, Stamp(state.st_mtime_ns, state.st_size, state.st_ino)


def watch(folder: Path, seen: Mapping[Path, Stamp], saved: Callable[[], None], ended: Event) -> None:
    """Call `saved` after each change in `folder` from what was `seen` of it, until `ended` is set."""
    while not ended.wait(SECONDS_BETWEEN_LOOKS):
        now = stamps(folder)
        if now != seen:
            seen = now
            saved()
