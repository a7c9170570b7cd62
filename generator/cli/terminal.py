"""What is printed and how: plain lines, or colour and a bar where a person watches a terminal."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING, TextIO

from generator.problems import Problem
from generator.publishing.progress import Progress
from generator.wording.report import report_text

if TYPE_CHECKING:
    from rich.progress import Progress as Bar
    from rich.progress import TaskID


def on_terminal(stream: TextIO) -> bool:
    """True when a person watches `stream` on a terminal that can move its cursor."""
    return stream.isatty() and os.environ.get("TERM") != "dumb"


def coloured(stream: TextIO) -> bool:
    """True on a terminal whose owner has not asked for no colour (no-color.org)."""
    return on_terminal(stream) and not os.environ.get("NO_COLOR")


def tell(problems: Iterable[Problem], stream: TextIO) -> None:
    """Print each problem and how many there are; nothing when there are none."""
    problems = tuple(problems)
    if problems:
        stream.write(report_text(problems, colour=coloured(stream)))


def say(line: str, stream: TextIO | None = None) -> None:
    """Print one line, on the standard output when no stream is given."""
    (stream or sys.stdout).write(line + "\n")


@contextmanager
def watched(stream: TextIO) -> Iterator[Progress]:
    """Progress for the length of a run: a bar on a terminal, else a line a stage."""
    if not on_terminal(stream):
        yield PlainLines(stream)
        return
    from rich.console import Console
    from rich.progress import Progress as Bar

    console = Console(file=stream, no_color=not coloured(stream))
    with Bar(console=console, transient=True) as bar:
        yield Bars(bar)


class PlainLines:
    """Progress as one line when a stage with work begins."""

    def __init__(self, stream: TextIO) -> None:
        self._stream = stream

    def stage(self, name: str, pieces: int) -> None:
        """Say what is being made and how many."""
        if pieces:
            say(f"{name}: {pieces}", self._stream)

    def done(self) -> None:
        """A line a piece would drown the rest."""


class Bars:
    """Progress as a bar for each stage with work."""

    def __init__(self, bar: Bar) -> None:
        self._bar = bar
        self._stage: TaskID | None = None

    def stage(self, name: str, pieces: int) -> None:
        """A new bar."""
        if pieces:
            self._stage = self._bar.add_task(name, total=pieces)

    def done(self) -> None:
        """One step along."""
        if self._stage is not None:
            self._bar.advance(self._stage)
