"""The required sections of a method and of a job: filled, honest, and not contradicted."""

from __future__ import annotations

from typing import Protocol

from generator.model.catalogue import Catalogue
from generator.model.jobs import Job
from generator.model.method import Method
from generator.problems import ProblemLog
from generator.safety.contradictions import check_contradictions
from generator.safety.filling import check_filled
from generator.safety.reasons import check_copies
from generator.safety.subject import Subject


class HoldsCatalogue(Protocol):
    """Whatever holds the catalogue in force, such as the whole project."""

    @property
    def catalogue(self) -> Catalogue: ...


def check_sections(method: Method, job: Job | None, project: HoldsCatalogue, log: ProblemLog) -> None:
    """Report required sections that are missing, say nothing, are in the wrong file or are contradicted.

    Without a job only what the method must answer is looked at. Legal basis and honest grounds stand in the
    table of sections with their sources.
    """
    subject = Subject(method=method, job=job, catalogue=project.catalogue)
    check_filled(subject, log)
    check_copies(subject, log)
    check_contradictions(subject, log)
