"""Tools and hazards over all methods of an index: in which method each is met, and at which steps."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from generator.documents.blocks import Use, Used, UseList
from generator.documents.hazards import name_of
from generator.documents.task import Task, sentence


class _Met(NamedTuple):
    key: str
    name: str
    use: Use


def keys_met(task: Task) -> tuple[str, ...]:
    """The keys of the lists under which a method stands."""
    return tuple(dict.fromkeys(met.key for met in (*_tools(task, ""), *_hazards(task, ""))))


def use_lists(listed: Iterable[tuple[Task, str]]) -> tuple[UseList, ...]:
    """The list of tools and that of hazards, over guides each with the way to its page."""
    listed = tuple(listed)
    say = listed[0][0].language.say
    tools = [met for task, href in listed for met in _tools(task, href)]
    hazards = [met for task, href in listed for met in _hazards(task, href)]
    return (
        UseList(key="by-tool", title=say("By tool"), used=_gathered(tools)),
        UseList(
            key="by-hazard",
            title=say("By hazard"),
            intro=say("Each leads to the hazard in the guide, where its controls stand."),
            used=_gathered(hazards),
        ),
    )


def _gathered(found: Iterable[_Met]) -> tuple[Used, ...]:
    """What was met under each key, by name; the first name met holds."""
    names: dict[str, str] = {}
    uses: dict[str, list[Use]] = {}
    for met in found:
        names.setdefault(met.key, met.name)
        uses.setdefault(met.key, []).append(met.use)
    used = (Used(key=key, name=names[key], uses=tuple(uses[key])) for key in names)
    return tuple(sorted(used, key=lambda each: (each.name.casefold(), each.key)))


def _tools(task: Task, href: str) -> Iterator[_Met]:
    tools = task.project.catalogue.tools
    for key in task.method.tools:
        steps = enumerate(task.method.steps, 1)
        used_at = tuple(n for n, step in steps if any(used.value == key.value for used in step.uses))
        use = _use(task, href, "", used_at)
        yield _Met(f"tool-{key.value}", sentence(tools[key.value].label.value), use)


def _hazards(task: Task, href: str) -> Iterator[_Met]:
    for number, rule in enumerate(task.method.hazards, 1):
        key = rule.hazard.value
        use = _use(task, href, f"#hazard-{number}", task.method.steps_of(key))
        yield _Met(f"hazard-{key}", sentence(name_of(task, rule)), use)


def _use(task: Task, href: str, anchor: str, steps: tuple[int, ...]) -> Use:
    return Use(number=task.method.method.value, href=f"{href}{anchor}", steps=steps)
