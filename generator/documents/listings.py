"""Lists for a spreadsheet: the cutting list and the materials, numbers as numbers, units in the heads."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from typing import TypeAlias

from generator.documents.pieces import cuts_of
from generator.documents.task import Task
from generator.formulas import names_in
from generator.quantities.cut_pieces import Piece
from generator.quantities.cutting.orders import in_mm
from generator.quantities.cutting.plan import CuttingPlan
from generator.quantities.ledger import Entry, OpeningLedger, Scope
from generator.quantities.worked import Worked
from generator.quantities.workings import print_worked

Cell: TypeAlias = str | Decimal | int | float | None
"""None for what is not known or does not apply; a number is one a spreadsheet may reckon with."""

Row: TypeAlias = tuple[Cell, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Listing:
    """A list by its name (as a file bears it) and title; a head and a cell of each row for each column."""

    name: str
    title: str
    heads: tuple[str, ...]
    rows: tuple[Row, ...]


def listings(task: Task) -> tuple[Listing, ...]:
    """The lists of a job that have a row."""
    return tuple(listing for listing in (_cutting_list(task), _materials(task)) if listing.rows)


def _cutting_list(task: Task) -> Listing:
    say = task.language.say
    cuts = [(opening, cut) for opening in task.ledger.openings for cut in cuts_of(task, opening)]
    tilted = any(cut.left_tilt or cut.right_tilt for _, cut in cuts)
    tilts = (
        say("Left end, tilt of the blade in degrees"), say("Right end, tilt of the blade in degrees"),
    )  # fmt: skip
    return Listing(
        name="cutting-list",
        title=say("Cutting list"),
        heads=(
            say("Mark"), say("Opening"), say("Material"), say("Piece"), say("Hand"), say("Long point, mm"),
            say("Short point, mm"), say("Left end, degrees off square"), say("Right end, degrees off square"),
            say("Left on for fitting, mm"), say("Cut, mm"), say("Width, mm"), say("Thickness, mm"),
            *(tilts if tilted else ()),
        ),
        rows=tuple((*_piece(*one), *(_tilts(one[1]) if tilted else ())) for one in cuts),
    )  # fmt: skip


def _piece(opening: OpeningLedger, cut: Piece) -> Row:
    ends = (cut.long_point, cut.short_point, cut.left_end, cut.right_end, cut.over, cut.cut_length, cut.width)
    mark = f"{opening.mark}{cut.mark}" if opening.row else cut.mark
    thickness = _number(cut.thickness) if cut.thickness else None
    return (mark, opening.label, cut.role, cut.name, cut.hand or None, *map(_number, ends), thickness)


def _tilts(cut: Piece) -> Row:
    return tuple(_number(tilt) if tilt else None for tilt in (cut.left_tilt, cut.right_tilt))


def _number(worked: Worked) -> Cell:
    """The number as documents print it, so that paper and spreadsheet never differ."""
    return Decimal(print_worked(worked).number.replace("−", "-").replace("\u2009", ""))


def _materials(task: Task) -> Listing:
    say = task.language.say
    return Listing(
        name="materials",
        title=say("Materials"),
        heads=(say("Used as"), say("Material"), say("What"), say("Amount"), say("Unit")),
        rows=tuple(row for role in task.ledger.materials for row in _material(task, role)),
    )


def _material(task: Task, role: str) -> Iterator[Row]:
    """What is bought of a material; one that no amount is worked out for stands with its amount empty."""
    label = task.ledger.materials[role].label.value
    amounts = (*_lengths(task, role), *_amounts(task, role)) or ((None, None, None),)
    yield from ((role.replace("_", " "), label, *amount) for amount in amounts)


def _lengths(task: Task, role: str) -> Iterator[Row]:
    for plan in task.plans:
        cutting = task.method.cutting.get(plan.order.name)
        if cutting and cutting.of.value == role:
            yield from _bought(task, plan)


def _bought(task: Task, plan: CuttingPlan) -> Iterator[Row]:
    say = task.language.say
    counts = Counter(bar.stock.length for bar in plan.bars if not bar.on_hand)
    for length, count in sorted(counts.items()):
        yield (say("Lengths of %(length)s mm", length=in_mm(length).normalize()), count, say("lengths"))


def _amounts(task: Task, role: str) -> Iterator[Row]:
    """The job's own quantities that name the material in their formula, such as the cartridges of filler."""
    for entry in task.ledger.job_entries.values():
        if entry.scope is Scope.JOB and isinstance(entry.result, Worked) and role in _named(entry):
            printed = print_worked(entry.result, entry.unit)
            yield (entry.label, Decimal(printed.number.replace("−", "-")), printed.unit or None)


def _named(entry: Entry) -> frozenset[str]:
    return frozenset(name.name for name in names_in(entry.rule.work)) if entry.rule else frozenset()
