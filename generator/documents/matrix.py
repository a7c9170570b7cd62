"""Criteria set against steps, and against methods: what evidences what, and what nothing evidences yet."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from generator.documents.blocks import Column, Part, Table, Text
from generator.documents.task import Task

_NAME_SHARE = 46.0
_EVIDENCE, _QUESTION = "E", "Q"


def task_matrix(task: Task) -> Table:
    """A row a step or question, a column a criterion; the last row counts what evidences each."""
    say = task.language.say
    codes = tuple(task.method.criteria)
    rows = tuple(_rows(task, codes))
    counts = (sum(1 for row in rows if row[place]) for place in range(1, len(codes) + 1))
    total = (say("Times evidenced"), *(str(count) if count else say("none") for count in counts))
    return Table(
        key="matrix",
        title=say("Criteria by step"),
        columns=(Column(head=say("Step or question"), width=_NAME_SHARE), *_heads(codes)),
        rows=(*rows, total),
        note=say("E: evidence is asked for. Q: a question. %(criteria)s", criteria=_words(task, codes)),
    )


def _rows(task: Task, codes: Sequence[str]) -> Iterator[tuple[str, ...]]:
    say = task.language.say
    for number, step in enumerate(task.method.steps, 1):
        served = {code.value for code in step.evidence.criteria} if step.evidence else set()
        name = say("Step %(number)s: %(title)s", number=number, title=step.title.value)
        yield (name, *(_EVIDENCE if code in served else "" for code in codes))
    for number, question in enumerate(task.method.questions, 1):
        served = {code.value for code in question.criteria}
        name = say("Question %(number)s", number=number)
        yield (name, *(_QUESTION if code in served else "" for code in codes))


def _heads(codes: Sequence[str]) -> Iterator[Column]:
    return (Column(head=code, align="centre") for code in codes)


def _words(task: Task, codes: Sequence[str]) -> str:
    return " ".join(f"**{code}** {task.told(task.method.criteria.get(code))}" for code in codes)


def library_matrix(tasks: Sequence[Task]) -> Table:
    """A row a method, a column a criterion of any: the steps and questions that evidence it."""
    say, codes = tasks[0].language.say, _codes(tasks)
    return Table(
        key="library",
        title=say("Criteria by method"),
        columns=(Column(head=say("Method"), width=_NAME_SHARE), *_heads(codes)),
        rows=tuple(
            (f"{task.method.method.value} {task.method.title.value}", *(_cell(task, code) for code in codes))
            for task in tasks
        ),
        note=" ".join(
            (
                say("Numbers are steps; Q and a number is a question; – a criterion not of that method."),
                *_twice(tasks),
            )
        ),
    )


def _codes(tasks: Sequence[Task]) -> tuple[str, ...]:
    return tuple(sorted({code for task in tasks for code in task.method.criteria}))


def _cell(task: Task, code: str) -> str:
    if code not in task.method.criteria.names:
        return "–"
    return ", ".join(_evidencing(task, code))


def _evidencing(task: Task, code: str) -> Iterator[str]:
    for number, step in enumerate(task.method.steps, 1):
        if step.evidence and code in {one.value for one in step.evidence.criteria}:
            yield str(number)
    for number, question in enumerate(task.method.questions, 1):
        if code in {one.value for one in question.criteria}:
            yield f"Q{number}"


def _twice(tasks: Sequence[Task]) -> Iterator[str]:
    """A sentence for each code that two methods word differently, since they may not mean one criterion."""
    for code in _codes(tasks):
        worded = _wordings(tasks, code)
        if len(worded) > 1:
            methods = ", ".join(name for names in worded.values() for name in names)
            yield tasks[0].language.say(
                "%(code)s is worded differently in %(methods)s.", code=code, methods=methods
            )


def _wordings(tasks: Sequence[Task], code: str) -> Mapping[str, list[str]]:
    worded: dict[str, list[str]] = {}
    for task in tasks:
        if code in task.method.criteria.names:
            worded.setdefault(task.told(task.method.criteria[code]), []).append(task.method.method.value)
    return worded


def unevidenced(tasks: Sequence[Task]) -> Part:
    """The criteria that are listed somewhere and evidenced by no step and no question of any method."""
    say = tasks[0].language.say
    rows = tuple(
        (code, " / ".join(_wordings(tasks, code)), ", ".join(_listing(tasks, code)))
        for code in _codes(tasks)
        if not any(True for task in tasks for _ in _evidencing(task, code))
    )
    table = Table(
        key="without-evidence",
        columns=(
            Column(head=say("Code"), width=12),
            Column(head=say("Criterion")),
            Column(head=say("Listed in"), width=24),
        ),
        rows=rows,
    )
    none = Text(text=(say("Every criterion is evidenced by at least one step or question."),))
    title = say("Criteria that nothing evidences yet")
    return Part(key="not-evidenced", title=title, blocks=(table if rows else none,))


def _listing(tasks: Sequence[Task], code: str) -> Iterator[str]:
    return (task.method.method.value for task in tasks if code in task.method.criteria.names)
