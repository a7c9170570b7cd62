"""The register read and held against itself and against the files it vouches for."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from generator.problems import ProblemLog, Span
from generator.register.frozen import LIST, files_in, list_of, listed
from generator.register.lines import BEGINNING, HEADING, Line, hash_of, line_at

FOLDER: Final = "register"
BOOK: Final = "register.txt"
UNFINISHED: Final = ".issuing"
"""Where an issue is made ready. Once its line is in the book, it holds that issue's files until renamed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Register:
    """The lines of a folder's register, in order."""

    folder: Path
    lines: tuple[Line, ...]

    def last(self, number: str) -> Line | None:
        """The latest issue of a document."""
        return next((line for line in reversed(self.lines) if line.issued.number == number), None)

    def of(self, number: str, revision: str) -> Line | None:
        """The issue of one revision of a document."""
        wanted = (number, revision)
        same = (line for line in self.lines if (line.issued.number, line.issued.revision) == wanted)
        return next(same, None)

    def files_of(self, line: Line) -> Path:
        """The folder with the frozen files of an issue."""
        lasting = self.folder / line.issued.folder
        unfinished = self.folder / UNFINISHED
        is_last = line is self.lines[-1]
        return unfinished if is_last and not lasting.exists() and unfinished.exists() else lasting


def read_register(methods: Path, log: ProblemLog) -> Register:
    """The register under a folder of methods, whole or with everything that is wrong with it in the log."""
    folder = methods / FOLDER
    register = Register(folder=folder, lines=tuple(_lines(folder / BOOK, log)))
    _check_chain(register, log)
    for line in register.lines:
        _check_files(line, register.files_of(line), log)
    _check_folders(register, log)
    return register


def _lines(book: Path, log: ProblemLog) -> Iterator[Line]:
    if not book.exists():
        return
    for number, text in enumerate(book.read_text(encoding="utf-8", errors="replace").splitlines(), 1):
        span = Span(file=book.as_posix(), line=number, column=1, text=text, length=len(text))
        line = line_at(span)
        if number == 1 and text == HEADING:
            continue
        if number == 1 or line is None:
            log.add("register-no-line", span)
        else:
            yield line


def _check_chain(register: Register, log: ProblemLog) -> None:
    previous = BEGINNING
    for line in register.lines:
        if not line.is_untouched:
            log.add("register-line-changed", line.span, revision=line.issued.revision)
        if line.previous != previous:
            log.add("register-chain-broken", line.part(7))
        previous = line.own


def _check_files(line: Line, folder: Path, log: ProblemLog) -> None:
    """Each file of an issue is there with its own bytes, and none beside them."""
    place, shown = line.part(6), folder.as_posix()
    if not (folder / LIST).is_file():
        log.add("register-file-missing", place, file=f"{shown}/{LIST}")
        return
    text, files = (folder / LIST).read_bytes(), files_in(folder)
    if hash_of(text) != line.issued.files:
        log.add("register-file-changed", place, file=f"{shown}/{LIST}")
        return
    if list_of(files) == text:
        return
    known = listed(text)
    for name in sorted(known.keys() | files.keys()):
        if name not in files:
            log.add("register-file-missing", place, file=f"{shown}/{name}")
        elif name not in known:
            log.add("register-file-added", place, file=f"{shown}/{name}")
        elif hash_of(files[name]) != known[name]:
            log.add("register-file-changed", place, file=f"{shown}/{name}")


def _check_folders(register: Register, log: ProblemLog) -> None:
    """A folder that no line speaks of shows that a line was taken out."""
    if not register.folder.is_dir():
        return
    known = {line.issued.folder for line in register.lines}
    for path in sorted(register.folder.iterdir()):
        if path.is_dir() and not path.name.startswith(".") and path.name not in known:
            log.add("register-folder-unknown", _end(register), folder=path.as_posix())


def _end(register: Register) -> Span:
    if register.lines:
        return register.lines[-1].span
    return Span(file=(register.folder / BOOK).as_posix(), line=1, column=1, text=HEADING)
