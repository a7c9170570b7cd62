"""What is lifted by hand, beside the filter for it, and what is known of the wood dust in the air."""

from __future__ import annotations

from collections.abc import Iterator

from generator.documents.blocks import Block, Column, Prose, Table, Text
from generator.documents.task import Task
from generator.model.catalogue import DUSTS
from generator.model.steps import REACHES, ZONES
from generator.quantities.lifts import Lifted, lifts_of
from generator.quantities.wood_dust import WoodDust, wood_dust
from generator.wording import Language, among


def burdens(task: Task) -> tuple[Block, ...]:
    """The lifts in a table and the dust in sentences; nothing where there is neither."""
    lifted, dust = lifts_of(task.ledger), wood_dust(task.ledger, task.project.catalogue.tools)
    table = (_lifts(task, lifted),) if lifted else ()
    return (*table, *((Text(text=tuple(_dust(task, dust))),) if dust else ()))


def _lifts(task: Task, lifted: tuple[Lifted, ...]) -> Table:
    say = task.language.say
    return Table(
        key="lifts",
        title=say("Lifts by hand"),
        columns=(
            Column(head=say("Step"), width=7.0),
            Column(head=say("What"), width=24.0),
            Column(head=say("At most, kg"), align="right", width=10.0, bold=True),
            Column(head=say("People"), align="right", width=8.0),
            Column(head=say("Hands pass")),
            Column(head=say("Filter, kg: men, women"), align="right", width=15.0),
            Column(head=say("Comes to"), width=15.0),
        ),
        rows=tuple(_row(one, task.language) for one in lifted),
        note=say(
            "The filter of HSE INDG143 is no limit: over it the lift is looked into, under it too where the "
            "way is bad or the person is young, pregnant or hurt. What two or three manage together is from "
            "memory."
        ),
    )


def _row(lifted: Lifted, language: Language) -> tuple[str, ...]:
    say = language.say
    zones = ", ".join(say(among(ZONES, zone.value)) for zone in lifted.lift.zones)
    held = lifted.filter
    return (
        str(lifted.step),
        lifted.label,
        f"{lifted.mass:.1f}",
        str(lifted.people),
        say("%(zones)s; %(reach)s", zones=zones, reach=say(among(REACHES, lifted.lift.reach.value))),
        f"{held.men:.0f}, {held.women:.0f}",
        _verdict(lifted, language),
    )


def _verdict(lifted: Lifted, language: Language) -> str:
    if lifted.mass > lifted.filter.men:
        return language.say("over it")
    return language.say("over it for women") if lifted.over else language.say("under it")


def _dust(task: Task, dust: WoodDust) -> Iterator[Prose]:
    say = task.language.say
    kinds = ", ".join(say(among(DUSTS, kind)) for kind in dust.kinds)
    yield say(
        "**Wood dust** (%(kinds)s): at most %(limit)g mg/m³ over eight hours, inhalable; any hardwood or "
        "mixed board in it makes that 3 (EH40/2005). A limit is no aim: it is kept as far below as can be.",
        kinds=kinds,
        limit=dust.limit,
    )
    if dust.measured is None or task.job is None or task.job.wood_dust is None:
        yield say(
            "Nobody has measured it for this work. Until it is, extraction runs and the mask of the hazard "
            "table is worn; whoever doubts it asks for air sampling."
        )
        return
    yield say(
        "Measured: %(level)g mg/m³. %(source)s %(mask)s",
        level=dust.measured,
        source=task.told(task.job.wood_dust.from_),
        mask=_mask(dust, task.language),
    )


def _mask(dust: WoodDust, language: Language) -> str:
    if dust.mask is None:
        return language.say("No mask brings that within the limit: the work waits until the air is better.")
    if not dust.mask:
        return language.say("That is within the limit; the mask of the hazard table is worn all the same.")
    factor = (dust.measured or 0.0) / dust.limit
    return language.say(
        "A factor of %(factor).1f is needed: %(mask)s or stronger, face-fit tested.",
        factor=factor,
        mask=dust.mask,
    )
