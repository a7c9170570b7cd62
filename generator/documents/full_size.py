"""The full-size drawings of a job: each on a sheet of its own, to be laid on the work."""

from __future__ import annotations

from dataclasses import dataclass, replace

from generator.documents.blocks import Document, Figure
from generator.documents.drawing_files import plain
from generator.documents.figures import PLACE, wanted
from generator.documents.front import issue_of
from generator.documents.task import Task
from generator.drawings.orders import Order
from generator.problems import ProblemLog
from generator.quantities.ledger import Ledger

_FULL_SIZE = "1:1"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Shared:
    """One drawing with the openings it serves, by their marks; none where there is no survey."""

    step: int
    order: Order
    marks: tuple[str, ...]


def full_size_orders(ledger: Ledger) -> tuple[Order, ...]:
    """The drawings that a sheet may show at full size: each once, however many openings it serves."""
    return tuple(one.order for one in _shared(ledger))


def compose_full_size(task: Task) -> Document | None:
    """One document of the job's drawings at 1:1, a sheet each; None where none of them is.

    The job must have document control; ValueError otherwise.
    """
    job = task.job
    if job is None or job.document is None:
        raise ValueError("full-size drawings take a job with its document control")
    figures = tuple(_figure(task, one) for one in _shared(task.ledger))
    shown = tuple(figure for figure in figures if figure.scale == _FULL_SIZE)
    if not shown:
        return None
    say, control = task.language.say, job.document
    return Document(
        kind="full-size",
        lang=task.language.tag,
        number=control.number.value,
        title=say("Full-size drawings: %(title)s", title=task.method.title.value),
        description=say("Full-size drawings of %(job)s.", job=job.job.value),
        job=job.job.value,
        company=task.company,
        issue=issue_of(control, task.language),
        footer=(say("Lay a drawing on the work only if the rule measures 100 mm."),),
        blocks=shown,
    )


def _shared(ledger: Ledger) -> tuple[_Shared, ...]:
    """The drawings asked for, those that differ in nothing but their opening drawn once for all of these."""
    marks: dict[tuple[int, Order], list[str]] = {}
    for one in wanted(ledger, ProblemLog()):
        order = replace(one.order, values=tuple(pair for pair in one.order.values if pair[0] != PLACE))
        marks.setdefault((one.step, order), []).append(one.opening.mark if one.opening.row else "")
    return tuple(
        _Shared(step=step, order=order, marks=tuple(filter(None, found)))
        for (step, order), found in marks.items()
    )


def _figure(task: Task, one: _Shared) -> Figure:
    picture = task.pictures[one.order]
    return Figure(
        key="-".join(("full-size", str(one.step), *map(plain, one.marks))),
        number=", ".join(one.marks),
        caption=picture.title,
        picture=picture,
        scale=picture.scale or "",
    )
