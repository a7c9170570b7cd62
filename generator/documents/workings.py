"""The annex of workings: each quantity as arithmetic, with the lines of the files it rests on."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import groupby

from generator.documents.blocks import Policy, PolicyNote, Working, Workings
from generator.documents.origins import origins
from generator.documents.task import Task
from generator.quantities.ledger import Entry, OpeningLedger
from generator.quantities.limits import limit_lines, with_limits
from generator.quantities.worked import Worked
from generator.quantities.workings import print_worked, working_lines


def workings(task: Task) -> Workings:
    """Every quantity that is one value. Openings whose arithmetic is the same share one entry."""
    say = task.language.say
    return Workings(
        key="workings",
        title=say("Workings"),
        intro=say(
            "Each figure as it was worked out. Under it stand the values it rests on and the line of the "
            "file each was written on. ≈ marks a number that is not shown whole."
        ),
        workings=tuple(_shared(_each(task))),
    )


def _each(task: Task) -> Iterator[tuple[Working, OpeningLedger | None]]:
    order = {name: place for place, name in enumerate(task.method.quantities)}
    entries = (pair for pair in task.ledger.everything() if pair[1].rule)
    for opening, entry in sorted(entries, key=lambda pair: order[pair[1].name]):
        if isinstance(entry.result, Worked):
            yield _working(task, entry, entry.result), opening


def _working(task: Task, entry: Entry, result: Worked) -> Working:
    return Working(
        name=entry.name,
        label=entry.label,
        lines=(
            *working_lines(result, task.language, name=entry.name, unit=entry.unit),
            *reversed(limit_lines(result, entry.unit, language=task.language)),
        ),
        result=with_limits(result, entry.unit, language=task.language),
        origins=origins(task, result.tree),
    )


def _shared(found: Iterator[tuple[Working, OpeningLedger | None]]) -> Iterator[Working]:
    for _, alike in groupby(found, key=lambda pair: pair[0].name):
        by_lines: dict[tuple[str, ...], list[tuple[Working, OpeningLedger | None]]] = {}
        for working, opening in alike:
            by_lines.setdefault(working.lines, []).append((working, opening))
        yield from (_joined(same) for same in by_lines.values())


def _joined(same: list[tuple[Working, OpeningLedger | None]]) -> Working:
    marks = [opening.mark for _, opening in same if opening and opening.row]
    return replace(same[0][0], scope=", ".join(marks))


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
        print_worked(entry.result).text("\u2009") if isinstance(entry.result, Worked) else str(entry.result)
    )
    return Policy(
        label=entry.label,
        value=value,
        reason=task.told(entry.size.why) if entry.size else "",
        place=f"{entry.origin}, {task.place(entry.span)}",
    )
