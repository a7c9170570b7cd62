"""One issue as one line of the register, and the chain that the lines make."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass
from typing import Final

from generator.problems import Span

HEADING: Final = "date | number | revision | status | job | content | files | previous line | this line"
JOINT: Final = " | "
PARTS: Final = 9
BEGINNING: Final = "0" * 64


@dataclass(frozen=True, slots=True, kw_only=True)
class Issued:
    """An issue as it is entered. `content` and `files` are SHA-256, `date` is ISO, `job` a file's stem."""

    date: str
    number: str
    revision: str
    status: str
    job: str
    content: str
    files: str

    @property
    def folder(self) -> str:
        """The name of the folder that holds its frozen files."""
        plain = (
            each if each.isalnum() or each in "-._" else "-" for each in f"{self.number}-{self.revision}"
        )
        return "".join(plain).lstrip(".")

    def line(self, previous: str) -> str:
        """The line of the register that enters it after the line whose own hash is `previous`."""
        told = JOINT.join(
            (self.date, self.number, self.revision, self.status, self.job, self.content, self.files, previous)
        )
        return f"{told}{JOINT}{hash_of(told.encode())}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A line as it stands: what it enters, the hashes that tie it to its neighbours, and where it is."""

    issued: Issued
    previous: str
    own: str
    span: Span

    @property
    def is_untouched(self) -> bool:
        """True when the line still has the words over which its own hash was made."""
        return self.issued.line(self.previous) == self.span.text

    def part(self, number: int) -> Span:
        """The place of one part of the line, counted from 0."""
        parts = self.span.text.split(JOINT)
        before = sum(len(part) + len(JOINT) for part in parts[:number])
        return self.span.at(before, len(parts[number]))


def line_at(span: Span) -> Line | None:
    """The line that stands at a place, or None where it is no line of a register."""
    parts = span.text.split(JOINT)
    if len(parts) != PARTS:
        return None
    date, number, revision, status, job, content, files, previous, own = parts
    issued = Issued(
        date=date, number=number, revision=revision, status=status, job=job, content=content, files=files
    )
    return Line(issued=issued, previous=previous, own=own, span=span)


def hash_of(content: bytes) -> str:
    """SHA-256 in hexadecimal."""
    return hashlib.sha256(content).hexdigest()
