"""The index of a publication: every method under the stage of the job it belongs to, with its jobs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from generator.documents.blocks import Document, JobEntry, Link, MethodEntry, MethodList, Stage
from generator.documents.changes import lately
from generator.documents.figures import thumbnail
from generator.documents.front import issue_of
from generator.documents.task import Task, duration, first_paragraph, sentence
from generator.documents.uses import keys_met, use_lists
from generator.wording import Language, among

STAGES = ("survey", "demolition", "structure", "first fixing", "second fixing", "finishing", "repairs")


@dataclass(frozen=True, slots=True, kw_only=True)
class Listed:
    """A method's guide with the statements of its jobs, each with the ways to it."""

    guide: Task
    links: tuple[Link, ...]
    statements: tuple[tuple[Task, tuple[Link, ...]], ...]


def compose_index(listed: Sequence[Listed]) -> Document:
    """All methods in the order of the work; a stage of the user's own comes after the usual ones."""
    first = listed[0].guide
    say = first.language.say
    stages = sorted({one.guide.method.stage.value for one in listed}, key=_place)
    return Document(
        kind="index",
        lang=first.language.tag,
        title=say("Methods"),
        description=say("Task guides and method statements of %(company)s.", company=first.company),
        company=first.company,
        blocks=(
            MethodList(stages=tuple(_stage(stage, listed, first.language) for stage in stages)),
            *lately(_paged(listed)),
            *use_lists((one.guide, _page(one.links)) for one in listed),
        ),
    )


def _paged(listed: Sequence[Listed]) -> Iterator[tuple[Task, str, str]]:
    """Each guide and each statement with its title and its page."""
    for one in listed:
        method = one.guide.method
        yield one.guide, f"{method.method.value} {method.title.value}", _page(one.links)
        for task, links in one.statements:
            if task.job:
                yield task, task.job.job.value, _page(links)


def _page(links: tuple[Link, ...]) -> str:
    """The page itself, which stands first among the ways to it."""
    return links[0].href if links else ""


def stage_told(stage: str, language: Language) -> str:
    """A usual stage in the words of the language; one of the user's own as it was written."""
    return language.say(among(STAGES, stage)) if stage in STAGES else language.quote(stage)


def _place(stage: str) -> tuple[int, str]:
    return (STAGES.index(stage) if stage in STAGES else len(STAGES), stage)


def _stage(stage: str, listed: Sequence[Listed], language: Language) -> Stage:
    inside = [one for one in listed if one.guide.method.stage.value == stage]
    return Stage(
        key=f"stage-{stage.replace(' ', '-')}",
        title=sentence(stage_told(stage, language)),
        methods=tuple(_entry(one) for one in sorted(inside, key=lambda one: one.guide.method.method.value)),
    )


def _entry(one: Listed) -> MethodEntry:
    task = one.guide
    method = task.method
    return MethodEntry(
        number=method.method.value,
        title=method.title.value,
        summary=first_paragraph(task.told(method.summary)),
        facts=_facts(task),
        picture=thumbnail(task),
        links=one.links,
        jobs=tuple(_job(task, links) for task, links in one.statements),
        met=keys_met(task),
    )


def _facts(task: Task) -> tuple[str, ...]:
    language, steps = task.language, task.method.steps
    holds = sum(1 for step in steps if step.hold)
    return (
        language.say_count("%(count)s step", "%(count)s steps", len(steps)),
        language.say_count("%(count)s hold point", "%(count)s hold points", holds),
        duration(sum(int(step.minutes) for step in steps), language),
    )


def _job(task: Task, links: tuple[Link, ...]) -> JobEntry:
    job = task.job
    if job is None or job.document is None:
        raise ValueError("a statement takes a job with its document control")
    return JobEntry(title=job.job.value, issue=issue_of(job.document, task.language), links=links)
