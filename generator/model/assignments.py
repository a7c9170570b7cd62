"""A job held against its method and the catalogue, and house rules against every method."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from generator.model.catalogue import Catalogue
from generator.model.house import HouseRules
from generator.model.jobs import Job
from generator.model.method import Method
from generator.model.names import check_choices, check_known
from generator.model.sizes import fits
from generator.model.survey_rows import log_missing
from generator.model.tables import Table
from generator.problems import ProblemLog, nearest


def method_of(job: Job, methods: Mapping[str, Method | None], log: ProblemLog) -> Method | None:
    """The method a job applies. A number that no method has is logged; one that could not be read is None."""
    number = job.method
    unreadable = "" in methods
    if number.value not in methods and not unreadable:
        near, known = nearest(number.value, methods), ", ".join(sorted(methods)) or "none"
        log.add("method-unknown", number.span, name=number.value, known=known, nearest=near)
    return methods.get(number.value)


def check_job(job: Job, method: Method, catalogue: Catalogue, log: ProblemLog) -> None:
    """Log what a job sets that its method does not have or allow, and what it leaves out."""
    _check_sizes(job, method, log)
    _check_roles(job, method, log)
    check_known(job.materials.values(), catalogue.material_keys, "material-unknown", log)
    check_choices(job.choices, method, log)
    if job.site:
        check_known(job.site.where, catalogue.place_keys, "place-unknown", log)
    kinds = (kind for person in job.people for kind in person.counts_as)
    check_known(kinds, catalogue.person_keys, "person-kind-unknown", log)
    if job.survey is None and job.knows("survey") and job.knows("sizes"):
        _check_given(job, method, log)


def _check_sizes(job: Job, method: Method, log: ProblemLog) -> None:
    for name, value in job.sizes.items() if method.knows("sizes") else ():
        size = method.sizes.get(name)
        if size:
            fits(size, value, log)
        elif name not in method.sizes.names:
            near, number = nearest(name, method.sizes.names), method.method
            log.add("size-unknown", job.sizes.place(name), name=name, method=number, nearest=near)


def _check_roles(job: Job, method: Method, log: ProblemLog) -> None:
    tables: tuple[Table[Any], ...] = (job.materials, job.offcuts) if method.knows("materials") else ()
    for table in tables:
        for role in sorted(table.names - method.materials.names):
            near, number = nearest(role, method.materials.names), method.method
            log.add("role-not-of-method", table.place(role), name=role, method=number, nearest=near)


def _check_given(job: Job, method: Method, log: ProblemLog) -> None:
    for name, size in method.sizes.items():
        if size.measured and name not in job.sizes.names:
            log_missing(size, job.places.get("sizes", job.span), log)


def check_policy(house: HouseRules, methods: Sequence[Method], complete: bool, log: ProblemLog) -> None:
    """Log policy sizes that no method has or whose values a method does not allow.

    `complete` is False when a method could not be read, so that the absence of a name proves nothing.
    """
    for name, value in house.policy.items():
        sizes = [size for method in methods if (size := method.sizes.get(name)) and size.policy]
        for size in sizes:
            fits(size, value, log)
        if not sizes and complete and methods:
            known = {name for method in methods for name, size in method.sizes.items() if size.policy}
            log.add("policy-unknown", house.policy.place(name), name=name, nearest=nearest(name, known))
