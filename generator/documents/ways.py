"""The comparison a craftsman makes: each way with its cost, what it leaves, and why it is refused."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from generator.documents.blocks import Comparison, Prose, Way
from generator.documents.task import Task, sentence
from generator.quantities.families.ways import Comparison as Compared
from generator.quantities.families.ways import Way as Found
from generator.quantities.results import finding_words
from generator.quantities.workings import print_worked
from generator.units import UNITS
from generator.wording.results import ASKS, COSTS, OPERATIONS, WAYS

Told = list[tuple[str, Found]]


def comparisons(task: Task) -> tuple[Comparison, ...]:
    """Every comparison of the method; a line that is not true of all openings names those it is true of."""
    rules = task.method.quantities
    return tuple(
        _comparison(task, name)
        for name in rules
        if any(isinstance(entry.result, Compared) for entry in task.ledger.entries(name))
    )


def _comparison(task: Task, name: str) -> Comparison:
    say = task.language.say
    entry = task.ledger.entries(name)[0]
    found = list(_found(task, name))
    codes = dict.fromkeys(way.code for _, way in found)
    return Comparison(
        key=f"ways-{name.replace('_', '-')}",
        title=entry.label,
        intro=task.told(entry.note),
        ways=tuple(_way(task, code, [pair for pair in found if pair[1].code == code]) for code in codes),
        note=say(
            "The opening angle is for a square-edged architrave; a moulded edge lets the door open further."
        ),
    )


def _found(task: Task, name: str) -> Iterator[tuple[str, Found]]:
    for opening in task.ledger.openings:
        entry = opening.entries.get(name)
        if entry and isinstance(entry.result, Compared):
            yield from ((opening.mark if opening.row else "", way) for way in entry.result.ways)


def _way(task: Task, code: str, found: Told) -> Way:
    say = task.language.say
    return Way(
        name=say(WAYS[code]),
        chosen=any(way.chosen for _, way in found),
        costs=_lines(task, found, lambda way: _costs(task, way)),
        leaves=_lines(task, found, lambda way: _leaves(task, way)),
        refused=_lines(
            task, found, lambda way: (sentence(finding_words(one, task.language)) for one in way.refused)
        ),
    )


def _lines(task: Task, found: Told, told: Callable[[Found], Iterator[Prose]]) -> tuple[Prose, ...]:
    """Each different line once, with the openings it is true of where it is not true of all."""
    by_line: dict[Prose, list[str]] = {}
    for mark, way in found:
        for line in told(way):
            by_line.setdefault(line, []).append(mark)
    return tuple(_marked(task, line, marks, len(found)) for line, marks in by_line.items())


def _marked(task: Task, line: Prose, marks: list[str], openings: int) -> Prose:
    if len(marks) == openings:
        return f"{line}."
    return task.language.say("%(marks)s: %(line)s.", marks=", ".join(marks), line=line)


def _costs(task: Task, way: Found) -> Iterator[Prose]:
    say = task.language.say
    for cost in way.costs:
        length = print_worked(cost.length, UNITS["m"]).text("\u2009")
        yield say("%(length)s %(what)s", length=length, what=say(COSTS[cost.code]))
    yield sentence("; ".join(say(OPERATIONS[code]) for code in way.operations))


def _leaves(task: Task, way: Found) -> Iterator[Prose]:
    say = task.language.say
    yield say("Edge %(thickness)s thick", thickness=print_worked(way.edge_left).text("\u2009"))
    yield say("%(margin)s in front of the skirting", margin=print_worked(way.skirting_margin).text("\u2009"))
    yield say("Door opens to %(angle)s", angle=print_worked(way.swing).text())
    yield from (sentence(finding_words(one, task.language)) for one in way.leaves)
    yield from (say("To settle first: %(question)s", question=say(ASKS[code])) for code in way.asks)
