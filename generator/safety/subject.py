"""What is looked at together: a method, the job that applies it where there is one, and the catalogue."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Literal, TypeAlias

from generator.model.catalogue import Catalogue
from generator.model.house import HouseRules
from generator.model.jobs import Job
from generator.model.method import Method
from generator.model.scalars import Word
from generator.model.sections import SectionAnswer
from generator.problems import Span

Which: TypeAlias = Literal["method", "job"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Subject:
    """A method with the job that applies it; without a job only the method's own part is looked at.

    `exposures` are what the exposures worked out for a day come to, each with where it comes from.
    """

    method: Method
    job: Job | None
    catalogue: Catalogue
    house: HouseRules
    exposures: Mapping[str, Span] = field(default_factory=dict)

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

    @property
    def nation(self) -> str | None:
        """Whose law applies; None when it is not given."""
        site = self.job.site if self.job else None
        return site.nation.value if site and site.nation else None

    def answers(self, key: str) -> Iterator[SectionAnswer]:
        """What the files answer to a section, the method first."""
        for _, file in self.files:
            if key in file.sections:
                yield file.sections[key]

    def materials(self) -> Mapping[str, Word]:
        """The catalogue key bound to each role, the job's own before the method's."""
        return dict(self.method.materials) | dict(self.job.materials if self.job else {})
