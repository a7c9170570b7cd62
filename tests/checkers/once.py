"""Something slow made once, however many test processes ask for it at the same time."""

from __future__ import annotations

import fcntl
import shutil
import tempfile
from collections.abc import Callable
from pathlib import Path


def made_once(folder: Path, make: Callable[[Path], None]) -> Path:
    """Fill `folder` by `make` unless it is there already, and give it back.

    `make` fills a scratch folder that is renamed when complete, so that a failed or killed attempt leaves
    nothing that could pass for the finished thing. Whatever `make` raises is raised here.
    """
    folder.parent.mkdir(parents=True, exist_ok=True)
    with folder.with_name(folder.name + ".lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not folder.exists():
            _make(folder, make)
    return folder


def _make(folder: Path, make: Callable[[Path], None]) -> None:
    scratch = Path(tempfile.mkdtemp(prefix=folder.name, dir=folder.parent))
    try:
        make(scratch)
        scratch.rename(folder)
    finally:
        shutil.rmtree(scratch, ignore_errors=True)
