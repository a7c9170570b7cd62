"""Something slow made once, however many test processes ask for it at the same time."""

from __future__ import annotations

import fcntl
import shutil
from collections.abc import Callable
from pathlib import Path


def made_once(folder: Path, make: Callable[[Path], None]) -> Path:
    """Fill `folder` by `make` unless that has been done already, and give it back.

    A file beside the folder says that it was filled to the end, so that what a failed or killed attempt left
    is thrown away and never passes for the finished thing. Whatever `make` raises is raised here.
    """
    folder.parent.mkdir(parents=True, exist_ok=True)
    finished = folder.with_name(folder.name + ".finished")
    with folder.with_name(folder.name + ".lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not (finished.exists() and folder.is_dir()):
            _fill(folder, make)
            finished.touch()
    return folder


def _fill(folder: Path, make: Callable[[Path], None]) -> None:
    if folder.exists():
        shutil.rmtree(folder)
    folder.mkdir()
    make(folder)
