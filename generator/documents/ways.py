"""The comparison a craftsman makes: each way with its cost, what it leaves, and why it is refused."""

from __future__ import annotations

from collections.abc import Iterator

from generator.documents.blocks import Column, Comparison, Prose, Table, Way
from generator.documents.task import Task, sentence
from generator.quantities.families.ways import Comparison as Compared
from generator.quantities.families.ways import Way as Found
from generator.quantities.ledger import OpeningLedger
from generator.quantities.results import finding_words
from generator.quantities.workings import THIN, print_worked
from generator.units import UNITS
from generator.wording.marks import without_end
from generator.wording.results import ASKS, COSTS, OPERATIONS, WAYS

WAY_SHARE, STANDS_SHARE = 26.0, 44.0


def comparisons(task: Task) -> tuple[Comparison | Table, ...]:
    """Every comparison of the method: for the first opening in words, for the others in a table."""
    return tuple(block for name in task.method.quantities for block in _blocks(task, name))


def _blocks(task: Task, name: str) -> Iterator[Comparison | Table]:
    found = [(opening, compared) for opening in task.ledger.openings if (compared := _at(opening, name))]
    if found:
        yield _comparison(task, name, *found[0])
    if len(found) > 1:
        yield _table(task, name, found[1:])


def _at(opening: OpeningLedger, name: str) -> Compared | None:
    entry = opening.entries.get(name)
    return entry.result if entry and isinstance(entry.result, Compared) else None


def _comparison(task: Task, name: str, opening: OpeningLedger, compared: Compared) -> Comparison:
    say, entry = task.language.say, opening.entries[name]
    return Comparison(
        key=f"compared-{name.replace('_', '-')}",
        title=f"{entry.label}: {opening.label}" if opening.row else entry.label,
        intro=task.told(entry.note),
        ways=tuple(_way(task, way) for way in compared.ways),
        note=say(
            "The opening angle is for a square-edged architrave; a moulded edge lets the door open further."
        ),
    )


def _way(task: Task, way: Found) -> Way:
    return Way(
        name=task.language.say(WAYS[way.code]),
        chosen=way.chosen,
        costs=tuple(f"{line}." for line in _costs(task, way)),
        leaves=tuple(f"{line}." for line in _leaves(task, way)),
        refused=tuple(f"{line}." for line in _refused(task, way)),
    )


def _costs(task: Task, way: Found) -> Iterator[Prose]:
    say = task.language.say
    for cost in way.costs:
        length = print_worked(cost.length, UNITS["m"]).text(THIN)
        yield say("%(length)s %(what)s", length=length, what=say(COSTS[cost.code]))
    yield sentence("; ".join(say(OPERATIONS[code]) for code in way.operations))


def _leaves(task: Task, way: Found) -> Iterator[Prose]:
    say = task.language.say
    yield say("Edge %(thickness)s thick", thickness=print_worked(way.edge_left).text(THIN))
    yield say("%(margin)s in front of the skirting", margin=print_worked(way.skirting_margin).text(THIN))
    yield say("Door opens to %(angle)s", angle=print_worked(way.swing).text())
    yield from (sentence(finding_words(one, task.language)) for one in way.leaves)
    yield from (
        without_end(say("To settle first: %(question)s", question=say(ASKS[code])), "?") for code in way.asks
    )


def _refused(task: Task, way: Found) -> Iterator[Prose]:
    yield from (sentence(finding_words(one, task.language)) for one in way.refused)


def _table(task: Task, name: str, found: list[tuple[OpeningLedger, Compared]]) -> Table:
    say = task.language.say
    heads = (say("Edge left"), say("To skirting"), say("Door opens"))
    return Table(
        key=f"compared-{name.replace('_', '-')}-others",
        title=say("The same at the other openings"),
        columns=(
            Column(head=say("Opening and way"), width=WAY_SHARE),
            *(Column(head=head, align="right") for head in heads),
            Column(head=say("How it stands"), width=STANDS_SHARE),
        ),
        rows=tuple(_row(task, opening, way) for opening, compared in found for way in compared.ways),
        note=say(
            "Sizes in mm, the opening of the door in degrees. A minus: the skirting would stand in front."
        ),
    )


def _row(task: Task, opening: OpeningLedger, way: Found) -> tuple[str, ...]:
    figures = (print_worked(one).number for one in (way.edge_left, way.skirting_margin, way.swing))
    return (f"{opening.mark} {task.language.say(WAYS[way.code])}", *figures, _stands(task, way))


def _stands(task: Task, way: Found) -> str:
    say = task.language.say
    reasons = "; ".join(_refused(task, way))
    if way.chosen:
        return say("Chosen")
    return say("Refused: %(reasons)s", reasons=reasons) if reasons else say("Would do")
