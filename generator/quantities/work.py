"""Working out a method on its example sizes, or a job on its own, into a ledger."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from generator.model.catalogue import Material
from generator.model.folder import Project
from generator.model.jobs import Job
from generator.model.method import Method
from generator.model.surveys import Row
from generator.problems import ProblemLog, Span
from generator.quantities.calculator import Result
from generator.quantities.choices import check_choices, choose, chosen_way, options, report
from generator.quantities.evaluation import NotWorked, Place
from generator.quantities.givens import size_entry, sizes_in_rows
from generator.quantities.ledger import Entry, Ledger, OpeningLedger, Scope
from generator.quantities.plan import Plan, plan_of
from generator.quantities.worked import Worked
from generator.units import UNITS, Unit, dimension_name

EXAMPLE = "the example sizes"
WHOLE_JOB = "the whole job"


def work_out(method: Method, job: Job | None, project: Project, log: ProblemLog) -> Ledger:
    """Work out every quantity of a method: for a job at each opening, without one on the example sizes.

    Faults go to the log at the formula, the reference or the argument they are about, naming the opening;
    one that cannot be worked out hides neither other quantities nor other openings.
    """
    rows: tuple[Row | None, ...] = (job.rows if job else ()) or (None,)
    plan = plan_of(method, sizes_in_rows(job.rows) if job else (), log)
    if job:
        check_choices(method, job, log)
    return _Work(method, job, project, plan, log).ledger(rows)


@dataclass(slots=True)
class _Desk:
    """One place with its row, its marks and the entries made there."""

    place: Place
    row: Row | None
    mark: str
    label: str
    scope: Scope
    entries: dict[str, Entry]


class _Work:
    def __init__(
        self, method: Method, job: Job | None, project: Project, plan: Plan, log: ProblemLog
    ) -> None:
        self._method, self._job, self._project, self._plan, self._log = method, job, project, plan, log
        self._materials = _bound(method, job, project)
        self._options = options(plan, job)
        self._broken = (set(method.quantities.names) - set(plan.formulas)) | method.sizes.lost

    def ledger(self, rows: tuple[Row | None, ...]) -> Ledger:
        """The ledger of the given openings."""
        whole = self._desk(None, Scope.JOB, "", "", WHOLE_JOB if self._job else EXAMPLE)
        desks = tuple(self._opening(row, rows) for row in rows)
        whole.place.openings = tuple(desk.place for desk in desks)
        for desk in desks:
            desk.place.job = whole.place
        for desk in (whole, *desks):
            self._sizes(desk)
        for name in self._plan.formulas:
            for desk in (whole,) if self._plan.scopes[name] is Scope.JOB else desks:
                self._quantity(name, desk)
        return self._closed(whole, desks)

    def _closed(self, whole: _Desk, desks: Iterable[_Desk]) -> Ledger:
        openings = tuple(
            OpeningLedger(row=desk.row, mark=desk.mark, label=desk.label, entries=desk.entries)
            for desk in desks
        )
        return Ledger(
            method=self._method,
            job=self._job,
            openings=openings,
            job_entries=whole.entries,
            materials=self._materials,
            broken=frozenset(self._broken),
        )

    def _opening(self, row: Row | None, rows: tuple[Row | None, ...]) -> _Desk:
        if row is None:
            where = WHOLE_JOB if self._job else EXAMPLE
            return self._desk(None, Scope.OPENING, "", "", where)
        faces = sum(1 for other in rows if other and other.opening == row.opening)
        mark = f"{row.opening} {row.face}".strip() if faces > 1 else row.opening
        label = f"{mark}, {row.name}" if row.name else mark
        return self._desk(row, Scope.OPENING, mark, label, f"opening {label}")

    def _desk(self, row: Row | None, scope: Scope, mark: str, label: str, where: str) -> _Desk:
        place = Place(where=where, plan=self._plan, materials=self._materials, log=self._log)
        return _Desk(place, row, mark, label, scope, {})

    def _sizes(self, desk: _Desk) -> None:
        for name, size in self._method.sizes.items():
            if self._plan.scopes[name] is not desk.scope:
                continue
            entry = size_entry(size, desk.scope, desk.row, self._job, self._project.house)
            if entry:
                desk.entries[name] = entry
                desk.place.results[name] = entry.result
            else:
                self._broken.add(name)

    def _quantity(self, name: str, desk: _Desk) -> None:
        tree, rule = self._plan.formulas[name], self._method.quantities[name]
        try:
            result = self._settled(name, desk.place.work(tree), desk, tree.span)
        except NotWorked:
            self._broken.add(name)
            return
        desk.place.results[name] = result
        desk.entries[name] = Entry(
            name=name,
            label=rule.label.value,
            note=rule.note,
            result=result,
            scope=desk.scope,
            span=rule.span,
            rule=rule,
            unit=self._unit(name, result),
        )

    def _settled(self, name: str, result: Result, desk: _Desk, span: Span) -> Result:
        choice = chosen_way(name, self._method, self._job)
        if choice:
            result = choose(name, result, choice, desk.place.where, self._log)
        label = self._method.quantities[name].label.value
        report(result, label, desk.place.where, span, self._log, optional=name in self._options)
        return result

    def _unit(self, name: str, result: Result) -> Unit | None:
        wanted = self._method.quantities[name].unit
        if wanted is None:
            return None
        unit = UNITS[wanted.value]
        if isinstance(result, Worked) and result.dimension == unit.dimension:
            return unit
        found = dimension_name(result.dimension) if isinstance(result, Worked) else "no single value"
        self._log.add("print-unit", wanted.span, name=name, unit=wanted.value, found=found)
        return None


def _bound(method: Method, job: Job | None, project: Project) -> Mapping[str, Material]:
    """The material each role is bound to; a key the catalogue lacks is reported where it is read."""
    keys = {role: key.value for role, key in method.materials.items()}
    if job:
        keys |= {role: key.value for role, key in job.materials.items() if role in keys}
    materials = project.catalogue.materials
    return {role: materials[key] for role, key in keys.items() if key in materials}
