"""What is worked out as one piece: a method by itself, or with a job that applies it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from generator.documents.card_rows import has_card
from generator.model.folder import HOUSE_RULES, LANGUAGES, METHODS, Project
from generator.model.jobs import Job
from generator.model.method import Method
from generator.model.translations import Translation
from generator.pipeline.inputs import Inputs
from generator.register.book import FOLDER as REGISTER
from generator.register.book import Register
from generator.register.lines import Issued
from generator.rendering.themes import Theme


@dataclass(frozen=True, slots=True, kw_only=True)
class Pair:
    """A method and a job of it, or None for its guide, in a project that holds nothing else, with the theme.

    `by` spells every file that what is made of the pair may depend on, with its hash; `issued` is what the
    register has of its document, on which its composition depends besides.
    """

    method: Method
    job: Job | None
    project: Project
    theme: Theme
    by: Mapping[str, str]
    issued: tuple[Issued, ...] = ()

    @property
    def basis(self) -> object:
        """All that its composition depends on: the files, and what was issued of it."""
        entered = [(each.date, each.revision, each.status, each.job, each.content) for each in self.issued]
        return self.by, entered

    @property
    def tags(self) -> tuple[str, ...]:
        """The further languages it is published in: a guide in those of the house, a statement in none."""
        wanted = () if self.job else self.project.house.languages
        return tuple(dict.fromkeys(word.value for word in wanted))

    @property
    def name(self) -> str:
        """The name of its files in the site, without an ending; no guide and no statement share one."""
        if self.job is None:
            return f"guide-{Path(self.method.span.file).stem}"
        return f"statement-{Path(self.job.span.file).stem}"

    @property
    def stem(self) -> str:
        """What the names of the other files of a job begin with; the method's for a guide."""
        return Path((self.job or self.method).span.file).stem

    @property
    def parcel(self) -> str:
        """The name of the file that holds all of a job's."""
        return f"{self.stem}.zip"

    @property
    def full_size(self) -> str:
        """The name of the file of its full-size drawings, where a job has any."""
        return f"{self.stem}-full-size.pdf"

    @property
    def pack(self) -> str:
        """The name of its method's tutor pack, without an ending; no file of the site has it."""
        return f"tutor-{Path(self.method.span.file).stem}"

    @property
    def card(self) -> str:
        """The name of its bench card's file; empty where it has none."""
        if self.job is None or not has_card(self.method):
            return ""
        return f"{self.stem}-card.pdf"


def pairs_of(
    project: Project, inputs: Inputs, theme: Theme, register: Register | None = None
) -> tuple[Pair, ...]:
    """The guides in the order of their files, then the jobs in theirs."""
    hashes = {path.as_posix(): value for path, value in inputs.hashes.items()}
    whole = tuple(_whole(project))
    shared = {
        path.as_posix(): value
        for path, value in inputs.hashes.items()
        if not _stands_apart(path.relative_to(inputs.folder))
    }
    return tuple(
        Pair(
            method=method,
            job=job,
            project=replace(
                project,
                methods=(method,),
                jobs=(job,) if job else (),
                translations=_own(method, job, project),
            ),
            theme=theme,
            by=shared | {file: hashes[file] for file in _files(method, job, project)},
            issued=_issued(job, register),
        )
        for method, job in whole
    )


def _own(method: Method, job: Job | None, project: Project) -> tuple[Translation, ...]:
    """The translations of a guide's method."""
    number = method.method.value
    return tuple(one for one in project.translations if one.file.method.value == number and job is None)


def company_of(pairs: tuple[Pair, ...]) -> str:
    """The name of the firm whose house rules hold; empty where none is given."""
    company = pairs[0].project.house.company if pairs else None
    return company.name.value if company else ""


def _issued(job: Job | None, register: Register | None) -> tuple[Issued, ...]:
    if register is None or job is None or job.document is None:
        return ()
    number = job.document.number.value
    return tuple(line.issued for line in register.lines if line.issued.number == number)


def _stands_apart(path: Path) -> bool:
    """True for a file of one pair alone, readable or not, and for the register, on which none rests."""
    alone = path.parent == Path(METHODS) and path.suffix == ".yaml" and path.name != HOUSE_RULES
    alone = alone or path.is_relative_to(Path(METHODS, LANGUAGES))
    return alone or path.parent == Path(METHODS, "jobs") or path.is_relative_to(Path(METHODS, REGISTER))


def _whole(project: Project) -> Iterator[tuple[Method, Job | None]]:
    yield from ((method, None) for method in project.methods)
    for job in project.jobs:
        method = project.method(job.method.value)
        if method:
            yield method, job


def _files(method: Method, job: Job | None, project: Project) -> tuple[str, ...]:
    if job is None:
        return (method.span.file, *(one.file.span.file for one in _own(method, job, project)))
    survey = (job.rows[0].span.file,) if job.rows else ()
    return (method.span.file, job.span.file, *survey)
