"""Where the drawings of a job stand as files of their own."""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

from generator.documents.blocks import Figure
from generator.documents.task import Task

FOLDER = "drawings"
_NOT_PLAIN = re.compile(r"[^a-z0-9]+")


def plain(name: str) -> str:
    """A name as it may stand in an anchor and in a file's name."""
    return _NOT_PLAIN.sub("-", name.lower()).strip("-")


def in_files(task: Task, figure: Figure, name: str) -> Figure:
    """The figure with the places of its files, `name` being its own in the job.

    A guide's drawings stand in its page alone, so that the page is whole wherever it is carried.
    """
    if task.job is None:
        return figure
    stem = f"{FOLDER}/{Path(task.job.span.file).stem}-{plain(name)}"
    return replace(figure, file=f"{stem}.svg", phone_file=f"{stem}-narrow.svg" if figure.phone else "")
