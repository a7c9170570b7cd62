"""The tutor pack: answers, what to look for, and which criteria each task evidences. Never for learners."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from generator.documents.blocks import Answer, AnswerKey, Document, Link, Mark, MarkingPoints
from generator.documents.matrix import library_matrix, task_matrix, unevidenced
from generator.documents.task import Task
from generator.model.steps import Step
from generator.units import print_value

THIN = "\u2009"


def compose_tutor(task: Task, *, links: tuple[Link, ...] = ()) -> Document:
    """The pack of one method, on the method's example sizes."""
    say, method = task.language.say, task.method
    return _document(
        task,
        number=method.method.value,
        title=method.title.value,
        description=say("Tutor pack: %(title)s.", title=method.title.value),
        links=links,
        blocks=(task_matrix(task), _marking(task), _answers(task)),
    )


def compose_library(tasks: Sequence[Task], *, links: tuple[Link, ...] = ()) -> Document:
    """The criteria of all methods over one another, and those that nothing evidences yet."""
    first = tasks[0]
    say = first.language.say
    return _document(
        first,
        number="",
        title=say("Criteria over all methods"),
        description=say("Tutor pack: which method evidences which criterion."),
        links=links,
        blocks=(library_matrix(tasks), unevidenced(tasks)),
    )


def _document(task: Task, **parts: object) -> Document:
    say = task.language.say
    return Document(
        kind="tutor",
        lang=task.language.tag,
        company=task.company,
        footer=(say("Tutor pack"), say("Not for learners")),
        **parts,  # type: ignore[arg-type]
    )


def _marking(task: Task) -> MarkingPoints:
    say = task.language.say
    return MarkingPoints(
        key="marking",
        title=say("What to look for"),
        intro=say("A step that asks for no evidence is left out. Figures are those of the example sizes."),
        marks=tuple(_marks(task)),
    )


def _marks(task: Task) -> Iterator[Mark]:
    for number, step in enumerate(task.method.steps, 1):
        if step.evidence:
            yield Mark(
                step=number,
                title=step.title.value,
                ask=task.told(step.evidence.ask),
                criteria=tuple(code.value for code in step.evidence.criteria),
                points=tuple(_points(task, step)),
                mistakes=task.lines(*step.mistakes),
            )


def _points(task: Task, step: Step) -> Iterator[str]:
    say = task.language.say
    for check in step.check:
        what, how = task.told(check.what), task.told(check.how)
        if check.within:
            limit = print_value(check.within.value).text(THIN)
            yield say("**%(what)s:** within %(limit)s. %(how)s", what=what, limit=limit, how=how)
        else:
            yield say("**%(what)s.** %(how)s", what=what, how=how)
    if step.hold:
        before, sees = task.told(step.hold.before), task.told(step.hold.sees)
        yield say("**The learner waited** before %(before)s. %(sees)s", before=before, sees=sees).strip()


def _answers(task: Task) -> AnswerKey:
    return AnswerKey(
        key="answers",
        title=task.language.say("Answers"),
        answers=tuple(
            Answer(
                question=task.told(one.ask),
                answer=task.told(one.answer),
                step=int(one.step) if one.step else 0,
                criteria=tuple(code.value for code in one.criteria),
            )
            for one in task.method.questions
        ),
    )
