"""Permits to work: each that a step needs is given by somebody in the job, until a time."""

from __future__ import annotations

from generator.model.jobs import Job
from generator.model.method import Method
from generator.problems import ProblemLog, nearest

SECTION = "permits"


def check_permits(method: Method, job: Job | None, log: ProblemLog) -> None:
    """Report permits that a step needs and the job lacks or denies, and those no step needs."""
    if job is None:
        return
    needed = {word.value: number for number, step in enumerate(method.steps, 1) for word in step.permits}
    given = [permit.permit.value for permit in job.permits]
    for permit, number in needed.items():
        if permit not in given and job.knows("permits"):
            place = job.places.get("permits", job.span)
            log.add("permit-not-given", place, permit=permit, step=number)
    for one in job.permits:
        if one.permit.value not in needed and method.knows("steps"):
            near = nearest(one.permit.value, needed)
            log.add("permit-not-needed", one.permit.span, permit=one.permit.value, nearest=near)
    answer = job.sections.get(SECTION)
    if needed and answer and not answer.applies:
        log.add("permit-denied", answer.span, permit=next(iter(needed)))
