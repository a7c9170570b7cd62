"""The cutting plans of a task: what is bought, which bar a piece comes from, whether less would do."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from generator.documents.blocks import Figure, Part, Text
from generator.documents.drawing_files import in_files
from generator.documents.task import Task
from generator.drawings.bar_values import NAME, sheet_values
from generator.drawings.orders import PAPER, PHONE, Order
from generator.quantities.cutting.plan import CuttingPlan
from generator.quantities.cutting.within import PlansWithin, plans_within
from generator.quantities.cutting.wording import outcome_words, within_words


def plan_orders(plans: Sequence[CuttingPlan]) -> tuple[Order, ...]:
    """The drawings of all plans, sheet by sheet, for paper and for a phone."""
    return tuple(order for plan in plans for sheet in _sheets(plan) for order in (sheet, _on_phone(sheet)))


def cutting_part(task: Task) -> Part | None:
    """Each plan in a sentence and drawn; None where nothing is cut."""
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


def _blocks(task: Task, plan: CuttingPlan, within: PlansWithin | None) -> Iterator[Text | Figure]:
    number = task.plans.index(plan) + 1
    outcome = outcome_words(plan, task.language)
    if outcome and within:
        outcome = f"{outcome} {within_words(within, task.language)}"
    if outcome:
        yield Text(text=(f"**{plan.order.label}.** {outcome}",))
    for place, sheet in enumerate(_sheets(plan), 1):
        picture = task.pictures[sheet]
        key, phone = f"bars-{number}-{place}", task.pictures[_on_phone(sheet)]
        yield in_files(task, Figure(key=key, caption=picture.title, picture=picture, phone=phone), key)


def _sheets(plan: CuttingPlan) -> Iterator[Order]:
    for values in sheet_values(plan):
        yield Order(name=NAME, width=PAPER, values=tuple(sorted(values.items())))


def _on_phone(sheet: Order) -> Order:
    return replace(sheet, width=PHONE)
