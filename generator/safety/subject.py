"""What is looked at together: a method, the job that applies it where there is one, and the catalogue."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal, TypeAlias

from generator.model.catalogue import Catalogue
from generator.model.jobs import Job
from generator.model.method import Method
from generator.model.prose import Prose
from generator.model.scalars import Word
from generator.model.sections import SectionAnswer
from generator.problems import Span

Which: TypeAlias = Literal["method", "job"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Subject:
    """A method with the job that applies it; without a job only the method's own part is looked at."""

    method: Method
    job: Job | None
    catalogue: Catalogue

    @property
    def files(self) -> tuple[tuple[Which, Method | Job], ...]:
        """The files there are, each by which it is."""
        if self.job is None:
            return (("method", self.method),)
        return (("method", self.method), ("job", self.job))

    @property
    def year(self) -> tuple[int, Span] | None:
        """The year in which the building was begun and where it stands; None when it is not given."""
        site = self.job.site if self.job else None
        if site is None or site.building_begun is None:
            return None
        return int(site.building_begun), site.building_begun.span

    def answers(self, key: str) -> Iterator[SectionAnswer]:
        """What the files answer to a section, the method first."""
        for _, file in self.files:
            if key in file.sections:
                yield file.sections[key]

    def tools(self) -> Iterator[Word]:
        """Every tool named, the list of tools first."""
        yield from self.method.tools
        for step in self.method.steps:
            yield from step.uses

    def sentences(self) -> Iterator[tuple[int, Prose]]:
        """What the steps tell to do, each with the number of its step from 1."""
        for number, step in enumerate(self.method.steps, 1):
            for told in step.do:
                yield number, told

    def materials(self) -> Iterator[Word]:
        """Every catalogue key bound to a role, the job's own first."""
        bound = dict(self.method.materials) | dict(self.job.materials if self.job else {})
        yield from bound.values()
