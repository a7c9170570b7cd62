"""Where the values of one working were written down, each said once."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from generator.documents.blocks import Origin as Place
from generator.documents.task import Task
from generator.quantities.worked import Given, Named, Origin, Working, parts_of
from generator.quantities.workings import THIN
from generator.units import print_value
from generator.wording import Language

READING = "@"
ORIGINS: Mapping[Origin, str] = {
    Origin.ROW: "survey row",
    Origin.JOB: "job",
    Origin.HOUSE: "house rules",
    Origin.DEFAULT: "default",
    Origin.EXAMPLE: "example",
    Origin.CATALOGUE: "catalogue",
    Origin.POLICY: "policy",
}


def origins(task: Task, tree: Working) -> tuple[Place, ...]:
    """The written values of a working, not those of a quantity it names; readings of one size together."""
    by_name: dict[tuple[str, str], list[Given]] = {}
    while isinstance(tree, Named):
        tree = tree.of
    for given in _own(tree):
        by_name.setdefault((given.name.partition(READING)[0], task.place(given.span)), []).append(given)
    return tuple(
        Place(
            name=name, value=_values(given), place=f"{origin_told(given[0].origin, task.language)}, {place}"
        )
        for (name, place), given in by_name.items()
    )


def origin_told(origin: Origin, language: Language) -> str:
    """Where a value comes from, in words."""
    return language.say(ORIGINS[origin])


def _own(tree: Working) -> Iterator[Given]:
    if isinstance(tree, Given):
        yield tree
    elif not isinstance(tree, Named):
        for part in parts_of(tree):
            yield from _own(part)


def _values(given: list[Given]) -> str:
    low, high = (pick(given, key=lambda one: one.value.magnitude) for pick in (min, max))
    least, most = print_value(low.value), print_value(high.value)
    shown = most.text(THIN) if least == most else f"{least.number} to {most.text(THIN)}"
    within = max((one.within for one in given if one.within), key=lambda one: one.magnitude, default=None)
    return f"{shown} ± {print_value(within).text(THIN)}" if within else shown
