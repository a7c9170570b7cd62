"""The hazards of the work, their controls strongest first, and what remains."""

from __future__ import annotations

from generator.documents.blocks import Control, ControlKind, Hazard, HazardTable, HazardTouched
from generator.documents.task import Task, sentence
from generator.model.hazards import RANKS
from generator.model.hazards import Control as Rule
from generator.model.hazards import Hazard as HazardRule


def hazard_table(task: Task) -> HazardTable:
    """All hazards of the method with the steps that meet them."""
    say = task.language.say
    return HazardTable(
        key="hazards",
        title=say("Hazards and controls"),
        intro=say("Controls stand strongest first. What remains is judged with all of them in place."),
        hazards=tuple(_hazard(task, number, rule) for number, rule in enumerate(task.method.hazards, 1)),
    )


def touched(task: Task, keys: frozenset[str]) -> tuple[HazardTouched, ...]:
    """The hazards a step meets, by their numbers in the table."""
    return tuple(
        HazardTouched(number=number, name=name_of(rule))
        for number, rule in enumerate(task.method.hazards, 1)
        if rule.hazard.value in keys
    )


def name_of(rule: HazardRule) -> str:
    """The hazard as it is printed."""
    return rule.title.value if rule.title else rule.hazard.value.replace("-", " ")


def _hazard(task: Task, number: int, rule: HazardRule) -> Hazard:
    remains, _, reason = task.told(rule.remains).replace("\n", " ").partition(". ")
    harms = ", ".join(task.lines(*rule.harms))
    how = task.told(rule.how)
    return Hazard(
        number=number,
        name=name_of(rule),
        harms=f"{sentence(harms)}. {how}".strip(),
        steps=task.method.steps_of(rule.hazard.value),
        controls=tuple(_control(task, control) for control in sorted(rule.controls, key=_strength)),
        remains=remains.rstrip("."),
        reason=reason,
    )


def _strength(rule: Rule) -> int:
    return RANKS.index(rule.rank)


def _control(task: Task, rule: Rule) -> Control:
    who, when = task.told(rule.who), task.told(rule.when)
    return Control(
        kind=ControlKind(rule.rank), text=task.told(rule.what), who=", ".join(filter(None, (who, when)))
    )
