"""The annex of workings: each quantity as arithmetic, with the lines of the files it rests on."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from itertools import groupby

from generator.documents.blocks import Policy, PolicyNote, Working, WorkingCase, Workings
from generator.documents.origins import origin_told, origins
from generator.documents.task import Task
from generator.model.amounts import Amount
from generator.prose import print_result
from generator.quantities.ledger import Entry, OpeningLedger
from generator.quantities.limits import limit_lines, with_limits
from generator.quantities.worked import Worked
from generator.quantities.workings import working_lines
from generator.units import UNITS, Unit


@dataclass(frozen=True, slots=True, kw_only=True)
class _Found:
    """One quantity at one opening, with its working in names and in numbers."""

    entry: Entry
    opening: OpeningLedger | None
    formula: str
    case: WorkingCase


def workings(task: Task) -> Workings:
    """Every quantity that is one value; openings share its arithmetic in names, and numbers where alike."""
    say = task.language.say
    return Workings(
        key="workings",
        title=say("Workings"),
        intro=say(
            "Each figure as it was worked out. Under it stand the values it rests on and the line of the "
            "file each was written on. ≈ marks a number that is not shown whole."
        ),
        workings=tuple(_working(list(alike)) for _, alike in groupby(_each(task), key=_formula)),
    )


def _formula(found: _Found) -> tuple[str, str]:
    return found.entry.name, found.formula


def _each(task: Task) -> Iterator[_Found]:
    order = {name: place for place, name in enumerate(task.method.quantities)}
    entries = (pair for pair in task.ledger.everything() if pair[1].rule)
    for opening, entry in sorted(entries, key=lambda pair: order[pair[1].name]):
        if isinstance(entry.result, Worked):
            yield _found(task, opening, entry, entry.result)


def _found(task: Task, opening: OpeningLedger | None, entry: Entry, result: Worked) -> _Found:
    formula, *lines = working_lines(result, task.language, name=entry.name, unit=entry.unit)
    limits = reversed(limit_lines(result, entry.unit, language=task.language))
    case = WorkingCase(
        lines=(*lines, *limits),
        result=with_limits(result, entry.unit, language=task.language),
        origins=origins(task, result.tree),
    )
    return _Found(entry=entry, opening=opening, formula=formula, case=case)


def _working(alike: list[_Found]) -> Working:
    entry = alike[0].entry
    cases = tuple(_cases(alike))
    shared = tuple(one for one in cases[0].origins if all(one in case.origins for case in cases))
    own = (replace(case, origins=tuple(one for one in case.origins if one not in shared)) for case in cases)
    return Working(label=entry.label, formula=alike[0].formula, cases=tuple(own), origins=shared)


def _cases(alike: Iterable[_Found]) -> Iterator[WorkingCase]:
    """The openings with the same numbers in one."""
    by_lines: dict[tuple[str, ...], list[_Found]] = {}
    for found in alike:
        by_lines.setdefault(found.case.lines, []).append(found)
    for same in by_lines.values():
        marks = [found.opening.mark for found in same if found.opening and found.opening.row]
        yield replace(same[0].case, scope=", ".join(marks))


def policy_note(task: Task) -> PolicyNote:
    """The numbers that are neither measured nor worked out: what the firm has settled for itself."""
    say = task.language.say
    entries = (entry for _, entry in task.ledger.everything() if entry.size and entry.size.policy)
    by_name = {entry.name: entry for entry in entries}
    return PolicyNote(
        key="policy",
        title=say("Numbers set by policy"),
        intro=say("Chosen by the firm, neither measured nor worked out. Another firm may choose others."),
        policies=tuple(_policy(task, entry) for entry in by_name.values()),
    )


def _policy(task: Task, entry: Entry) -> Policy:
    value = (
        print_result(entry.result, _own_unit(entry), task.language)
        if isinstance(entry.result, Worked)
        else str(entry.result)
    )
    return Policy(
        label=entry.label,
        value=value or "",
        reason=task.told(entry.size.why) if entry.size else "",
        place=", ".join(_where(task, entry)),
    )


def _where(task: Task, entry: Entry) -> Iterator[str]:
    if entry.origin:
        yield origin_told(entry.origin, task.language)
    yield task.place(entry.span)


def _own_unit(entry: Entry) -> Unit | None:
    """Per cent for a number whose default is written in per cent; None for the usual unit."""
    default = entry.size.policy.default if entry.size and entry.size.policy else None
    percent = isinstance(default, Amount) and default.text.endswith("%")
    return UNITS["%"] if percent else None
