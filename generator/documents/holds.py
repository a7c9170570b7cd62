"""Hold points: where work waits for a signature, numbered through the method."""

from __future__ import annotations

from dataclasses import dataclass

from generator.documents.blocks import HoldLine, HoldPoint, Person
from generator.documents.task import Task, sentence
from generator.model.jobs import Person as Named
from generator.model.steps import Hold


@dataclass(frozen=True, slots=True, kw_only=True)
class NumberedHold:
    """A hold point with its number and the number of the step it ends."""

    number: str
    step: int
    hold: Hold


def numbered(task: Task) -> tuple[NumberedHold, ...]:
    """The hold points in order: H1, H2 and so on."""
    held = [(step, rule.hold) for step, rule in enumerate(task.method.steps, 1) if rule.hold]
    return tuple(
        NumberedHold(number=f"H{number}", step=step, hold=hold) for number, (step, hold) in enumerate(held, 1)
    )


def releaser(task: Task) -> Named | None:
    """The first person of the job who may release hold points."""
    people = task.job.people if task.job else ()
    return next((person for person in people if person.holds), None)


def deputy(task: Task) -> Person | None:
    """Who stands in for the releaser, with the role the job gives that name."""
    first = releaser(task)
    if first is None or first.deputy is None or task.job is None:
        return None
    name = first.deputy.value
    role = next((p.part.value for p in task.job.people if p.name and p.name.value == name), "")
    return Person(role=role, name=name)


def hold_point(task: Task, held: NumberedHold) -> HoldPoint:
    """The bar across the step; a guide names the role that releases it, a statement the person."""
    first = releaser(task)
    role = task.told(held.hold.who)
    return HoldPoint(
        number=held.number,
        waits=_waits(task, held.hold),
        releaser=Person(
            role=first.part.value if first else role, name=first.name.value if first and first.name else ""
        ),
        deputy=deputy(task),
        openings=tuple(opening.mark for opening in task.surveyed),
    )


def _waits(task: Task, hold: Hold) -> str:
    before, sees = task.told(hold.before), task.told(hold.sees)
    waits = task.language.say("Released before %(before)s.", before=before)
    return f"{waits} {sentence(sees)}".strip()


def hold_line(task: Task, held: NumberedHold) -> HoldLine:
    """The hold point as a line of the list of all that stops the job."""
    say = task.language.say
    return HoldLine(
        number=held.number,
        what=say("Released before %(before)s", before=task.told(held.hold.before)),
        when=say("after step %(step)s", step=held.step),
    )
