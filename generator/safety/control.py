"""Document control that only looks whole: a basis without its revision, an approval of one's own writing."""

from __future__ import annotations

import re
from typing import Final

from generator.model.jobs import DocumentControl
from generator.model.prose import Prose
from generator.problems import ProblemLog
from generator.safety.phrases import one_line
from generator.safety.subject import Subject

MOVING: Final = re.compile(r"\b(latest|current|newest|most recent|up[ -]to[ -]date)\b", re.IGNORECASE)
"""Words whose meaning changes with the day of reading (common practice, no source)."""
FIXED: Final = re.compile(
    r"\b(?:revision|rev\.?|issue|edition|version) +(?:[A-Z]{0,2}\d+|[A-Z])\b|\b(?:19|20)\d\d\b"
)
"""A revision by its letter or number, or a year."""


def check_control(subject: Subject, log: ProblemLog) -> None:
    """Report a basis document without a revision, and an approver who is the author."""
    control = subject.job.document if subject.job else None
    if control is None:
        return
    for basis in control.based_on:
        _check_basis(basis, log)
    _check_approver(control, log)


def _check_basis(basis: Prose, log: ProblemLog) -> None:
    line = one_line(basis.typed)
    moving = MOVING.search(line)
    if moving and not FIXED.search(line):
        log.add("basis-without-revision", basis.span, word=moving.group())


def _check_approver(control: DocumentControl, log: ProblemLog) -> None:
    """In a firm of one person it is true and stands; so it is a warning."""
    written, approved = control.written, control.approved
    if written and approved and written.by.value.casefold() == approved.by.value.casefold():
        log.add("approver-is-author", approved.by.span, warning=True, name=approved.by.value)
