"""The cutting plans of a task: what is bought, which bar a piece comes from, whether less would do."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from generator.documents.blocks import Figure, Part
from generator.documents.drawing_files import in_files
from generator.documents.figures import said_of
from generator.documents.task import Task
from generator.drawings.bar_values import NAME, sheet_values
from generator.drawings.orders import PAPER, PHONE, Order
from generator.drawings.words import spoken
from generator.quantities.cutting.plan import CuttingPlan
from generator.quantities.cutting.within import PlansWithin, plans_within
from generator.quantities.cutting.wording import outcome_words, within_words
from generator.wording import ENGLISH, Language


def plan_orders(plans: Sequence[CuttingPlan], language: Language = ENGLISH) -> tuple[Order, ...]:
    """The drawings of all plans, sheet by sheet, for paper and a phone, with what their marks stand for."""
    sheets = (sheet for at, plan in enumerate(plans) for sheet in _sheets(plan, at == 0, language))
    return tuple(order for sheet in sheets for order in (sheet, _on_phone(sheet)))


def cutting_part(task: Task) -> Part | None:
    """Each plan drawn, with what it comes to under it; None where nothing is cut."""
    say = task.language.say
    within = plans_within(task.ledger, task.project) or [None] * len(task.plans)
    blocks = tuple(
        block for plan, ends in zip(task.plans, within, strict=True) for block in _blocks(task, plan, ends)
    )
    if not blocks:
        return None
    return Part(
        key="cutting-plans",
        title=say("Cutting plans"),
        intro=say("Which piece comes from which length, saw cuts and trimmed ends counted."),
        blocks=blocks,
    )


def _blocks(task: Task, plan: CuttingPlan, within: PlansWithin | None) -> Iterator[Figure]:
    number = task.plans.index(plan) + 1
    for place, sheet in enumerate(_sheets(plan, number == 1, task.language), 1):
        picture = task.pictures[sheet]
        key, phone = f"bars-{number}-{place}", task.pictures[_on_phone(sheet)]
        caption = (
            _outcome(task, plan, within) if place == 1 else said_of(picture, picture.title, task.language)
        )
        yield in_files(task, Figure(key=key, caption=caption, picture=picture, phone=phone), key)


def _outcome(task: Task, plan: CuttingPlan, within: PlansWithin | None) -> str:
    """What is bought and whether less would do."""
    outcome = outcome_words(plan, task.language)
    return f"{outcome} {within_words(within, task.language)}" if within else outcome


def _sheets(plan: CuttingPlan, first: bool, language: Language) -> Iterator[Order]:
    sheets, _ = spoken(lambda: tuple(sheet_values(plan, explained=not first)), language)
    for values in sheets:
        yield Order(name=NAME, width=PAPER, values=tuple(sorted(values.items())))


def _on_phone(sheet: Order) -> Order:
    return replace(sheet, width=PHONE)
