"""An issue entered into the register, whole or not at all.

The files are made ready in a hidden folder; one rename of the book then enters the line, and is the moment of
issue. A kill before it leaves the register as it was, a kill after it leaves the issue whole.
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

from generator.problems import ProblemLog
from generator.publishing.lock import only_publisher
from generator.register.book import BOOK, FOLDER, UNFINISHED, Register, read_register
from generator.register.frozen import LIST, list_of
from generator.register.lines import BEGINNING, HEADING, Issued, hash_of


def enter(methods: Path, issued: Issued, files: Mapping[str, bytes], log: ProblemLog) -> bool:
    """Enter an issue with its frozen files; False, with the reason in the log, for a register at fault.

    The hash of the files is worked out here. The same issue twice is the caller's to refuse.
    """
    folder = methods / FOLDER
    folder.mkdir(parents=True, exist_ok=True)
    with only_publisher(folder):
        found = ProblemLog()
        register = read_register(methods, found)
        log.take_all(found)
        if found.has_errors:
            return False
        _finish(register)
        _make_ready(folder / UNFINISHED, files)
        _write_book(register, replace(issued, files=hash_of(list_of(files))))
        _finish(read_register(methods, ProblemLog()))
    return True


def _finish(register: Register) -> None:
    """Give the last issue its lasting folder after a kill, and clear away what was never issued."""
    unfinished = register.folder / UNFINISHED
    if register.lines and register.files_of(register.lines[-1]) == unfinished:
        unfinished.rename(register.folder / register.lines[-1].issued.folder)
    elif unfinished.exists():
        shutil.rmtree(unfinished)


def _make_ready(folder: Path, files: Mapping[str, bytes]) -> None:
    for name, content in {**files, LIST: list_of(files)}.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        _write(path, content)


def _write_book(register: Register, issued: Issued) -> None:
    previous = register.lines[-1].own if register.lines else BEGINNING
    lines = [HEADING, *(line.span.text for line in register.lines), issued.line(previous)]
    fresh = register.folder / f".{BOOK}"
    _write(fresh, "".join(f"{line}\n" for line in lines).encode())
    fresh.replace(register.folder / BOOK)


def _write(path: Path, content: bytes) -> None:
    with path.open("wb") as file:
        file.write(content)
        file.flush()
        os.fsync(file.fileno())
