"""A job's statement issued: the whole folder checked, the statement frozen, its line entered."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

from generator.memory import Memory
from generator.model.folder import METHODS
from generator.model.jobs import DocumentControl
from generator.pipeline.line import Assessed, assess, compositions_of, make_parcel
from generator.pipeline.pairs import Pair
from generator.problems import ProblemLog
from generator.publishing.crew import Crew
from generator.publishing.progress import UNWATCHED, Progress
from generator.register.book import Register
from generator.register.entering import enter
from generator.register.lines import Issued, Line

ISSUABLE: Final = ("for comment", "for construction")
SIGNED: Final = ("written", "checked", "approved", "issued")


@dataclass(frozen=True, slots=True, kw_only=True)
class Issuing:
    """How an issue ended: entered, or standing already with the same content, or neither for the problems."""

    log: ProblemLog
    issued: Issued | None = None
    stood_already: bool = False


def issue(folder: Path, job: Path, memory: Memory, workers: int, progress: Progress = UNWATCHED) -> Issuing:
    """Issue the statement of the file `job`, one of the folder's; any fault of the folder forbids it."""
    log = ProblemLog()
    with Crew(memory, workers, progress) as crew:
        assessed = assess(folder, log, crew)
        register = assessed.register
        pair = next((each for each in assessed.pairs if _is_of(each, job)), None)
        control = pair.job.document if pair and pair.job else None
        if control:
            _check_ready(control, log)
        if log.has_errors or pair is None or control is None:
            return Issuing(log=log)
        return _issue(pair, control, register, crew, log)


def check_register(assessed: Assessed, crew: Crew, log: ProblemLog) -> None:
    """Report what is wrong with the register, and every statement that differs from its last issue."""
    register = assessed.register
    if log.has_errors:
        return
    issued = [(pair, line) for pair in assessed.pairs if (line := _last(pair, register))]
    composed = compositions_of(tuple(pair for pair, _ in issued), crew)
    for (pair, line), made in zip(issued, composed, strict=True):
        control = pair.job.document if pair.job else None
        if control and made.content != line.issued.content:
            span, was = control.revision.span, line.issued
            log.add("issued-since-changed", span, warning=True, revision=was.revision, date=was.date)


def _last(pair: Pair, register: Register) -> Line | None:
    control = pair.job.document if pair.job else None
    return register.last(control.number.value) if control else None


def _is_of(pair: Pair, job: Path) -> bool:
    return pair.job is not None and Path(pair.job.span.file).resolve() == job.resolve()


def _check_ready(control: DocumentControl, log: ProblemLog) -> None:
    if control.status.value not in ISSUABLE:
        log.add("issue-status", control.status.span, status=control.status.value)
    for key in SIGNED:
        if getattr(control, key) is None:
            log.add("issue-unsigned", control.number.span, missing=key)


def _issue(pair: Pair, control: DocumentControl, register: Register, crew: Crew, log: ProblemLog) -> Issuing:
    (composed,) = compositions_of((pair,), crew)
    asked = _asked(pair, control, composed.content)
    before = register.of(asked.number, asked.revision)
    if before and (before.issued.content, before.issued.status) == (asked.content, asked.status):
        return Issuing(log=log, issued=before.issued, stood_already=True)
    if before:
        _refuse(before.issued, control, log)
        return Issuing(log=log)
    # The frozen page says of itself that it is issued.
    last = replace(pair, issued=(*pair.issued, asked))
    (frozen,) = compositions_of((last,), crew)
    files = {**_unpacked(make_parcel(last, frozen, crew), pair.stem), **_inputs(pair)}
    entered = enter(pair.project.folder / METHODS, asked, files, log)
    return Issuing(log=log, issued=asked if entered else None)


def _refuse(was: Issued, control: DocumentControl, log: ProblemLog) -> None:
    span, named = control.revision.span, was.number
    log.add(
        "issue-revision-taken", span, number=named, revision=was.revision, date=was.date, status=was.status
    )


def _asked(pair: Pair, control: DocumentControl, content: str) -> Issued:
    return Issued(
        date=control.issued.value.isoformat() if control.issued else "",
        number=control.number.value,
        revision=control.revision.value,
        status=control.status.value,
        job=pair.stem,
        content=content,
        files="",
    )


def _unpacked(parcel: bytes, stem: str) -> Mapping[str, bytes]:
    with zipfile.ZipFile(io.BytesIO(parcel)) as whole:
        return {name.removeprefix(f"{stem}/"): whole.read(name) for name in whole.namelist()}


def _inputs(pair: Pair) -> Mapping[str, bytes]:
    """The files that the statement was made from, as they were."""
    folder = pair.project.folder
    return {
        f"inputs/{Path(file).relative_to(folder).as_posix()}": Path(file).read_bytes() for file in pair.by
    }
