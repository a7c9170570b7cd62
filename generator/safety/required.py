"""Everything the safety room asks of a method and of a job."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Protocol

from generator.model.catalogue import Catalogue
from generator.model.house import HouseRules
from generator.model.jobs import Job
from generator.model.method import Method
from generator.problems import ProblemLog, Span
from generator.safety.control import check_control
from generator.safety.emptiness import check_controls
from generator.safety.filling import check_filled
from generator.safety.house import check_house
from generator.safety.names import check_people
from generator.safety.permits import check_permits
from generator.safety.ratings import check_ratings
from generator.safety.reasons import check_copies
from generator.safety.remains import check_remains
from generator.safety.returns import check_returns
from generator.safety.rules import AppliedRule, check_rules_of, rules_applied_to
from generator.safety.subject import Subject


class HoldsRules(Protocol):
    """Whatever holds the catalogue and the house rules in force, such as the whole project."""

    @property
    def catalogue(self) -> Catalogue: ...

    @property
    def house(self) -> HouseRules: ...


def check_sections(method: Method, job: Job | None, project: HoldsRules, log: ProblemLog) -> None:
    """Report required sections that are missing, say nothing, are in the wrong file or repeat another.

    Without a job only what the method must answer is looked at. Legal basis and honest grounds stand in the
    table of sections with their sources.
    """
    subject = _subject(method, job, project, {})
    check_filled(subject, log)
    check_copies(subject, log)


def check_rules(
    method: Method,
    job: Job | None,
    project: HoldsRules,
    log: ProblemLog,
    *,
    exposures: Mapping[str, Span] | None = None,
) -> None:
    """Report what the rulebook asks of a method and its job and does not find, at the line that set it off.

    `exposures` are what the exposures worked out for a day come to, by the names in `model.rules.EXPOSURES`.
    """
    subject = _subject(method, job, project, exposures or {})
    check_rules_of(subject, log)
    check_controls(subject, log)
    check_remains(method, log)
    check_ratings(method, project.house, log)
    check_permits(method, job, log)
    check_people(subject, log)
    check_control(subject, log)
    check_returns(subject, log)


def check_safety(
    method: Method,
    job: Job | None,
    project: HoldsRules,
    log: ProblemLog,
    *,
    exposures: Mapping[str, Span] | None = None,
) -> None:
    """Report everything: sections, rules, words that are no controls, people, loose ends, house rules."""
    check_sections(method, job, project, log)
    check_rules(method, job, project, log, exposures=exposures)
    check_house(project.house, project.catalogue, log)


def rules_applied(
    method: Method, job: Job | None, project: HoldsRules, *, exposures: Mapping[str, Span] | None = None
) -> tuple[AppliedRule, ...]:
    """The rules that apply, for a document to list; those set aside carry the firm's reason."""
    return rules_applied_to(_subject(method, job, project, exposures or {}))


def _subject(method: Method, job: Job | None, project: HoldsRules, exposures: Mapping[str, Span]) -> Subject:
    return Subject(
        method=method, job=job, catalogue=project.catalogue, house=project.house, exposures=exposures
    )
