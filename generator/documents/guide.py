"""The task guide: one method for a learner, on the method's example sizes."""

from __future__ import annotations

from generator.documents.blocks import (
    Block,
    Contents,
    Document,
    Fact,
    Glossary,
    LearnerRecord,
    Link,
    MeasurementTable,
    Part,
    Question,
    QuestionList,
    StopList,
    TaskSummary,
    Term,
)
from generator.documents.changes import changes_of
from generator.documents.cutting import cutting_part
from generator.documents.hazards import hazard_table
from generator.documents.held import held_figures
from generator.documents.index import stage_told
from generator.documents.pieces import piece_list
from generator.documents.sections import sections
from generator.documents.statement import cautions
from generator.documents.steps import sequence
from generator.documents.task import Task, duration
from generator.documents.ways import comparisons
from generator.documents.workings import policy_note, workings
from generator.model.sizes import Size

OPENINGS_TO_MEASURE = 4


def compose_guide(task: Task, *, links: tuple[Link, ...] = ()) -> Document:
    """The guide of the task's method; answers to its questions stand nowhere in it."""
    say, method = task.language.say, task.method
    return Document(
        kind="guide",
        lang=task.language.tag,
        number=method.method.value,
        title=method.title.value,
        description=say("Task guide: %(title)s.", title=method.title.value),
        company=task.company,
        footer=(say("Task guide"), say("Sizes are examples: measure your own opening")),
        home=Link(text=say("All methods"), href="index.html"),
        links=links,
        blocks=_blocks(task),
    )


def _blocks(task: Task) -> tuple[Block, ...]:
    say = task.language.say
    pieces, plans = piece_list(task), cutting_part(task)
    return (
        _summary(task),
        Contents(),
        cautions(task),
        _measurements(task),
        *((_stop_list(task),) if task.method.stop_if else ()),
        sequence(task),
        hazard_table(task),
        *held_figures(task),
        *((pieces,) if pieces else ()),
        *((plans,) if plans else ()),
        *comparisons(task),
        Part(
            key="required-sections",
            title=say("What the work has to provide for"),
            intro=say("What this method answers, and what you must ask on site before you begin."),
            blocks=sections(task),
        ),
        *((_questions(task),) if task.method.questions else ()),
        *((_glossary(task),) if task.method.glossary else ()),
        _record(task),
        *changes_of(task),
        Part(key="annex-workings", title=say("Annex: workings"), blocks=(workings(task), policy_note(task))),
    )


def _summary(task: Task) -> TaskSummary:
    say, method = task.language.say, task.method
    minutes = sum(int(step.minutes) for step in method.steps)
    holds = sum(1 for step in method.steps if step.hold)
    tools = task.project.catalogue.tools
    return TaskSummary(
        stage=stage_told(method.stage.value, task.language),
        title_lines=(method.title.value,),
        summary=(task.told(method.summary),),
        facts=(
            Fact(label=say("Steps"), text=str(len(method.steps))),
            Fact(label=say("Hold points"), text=str(holds)),
            Fact(label=say("Time"), text=say("about %(time)s", time=duration(minutes, task.language))),
            Fact(label=say("Tools"), text="; ".join(tools[key.value].label.value for key in method.tools)),
            Fact(
                label=say("Materials"),
                text="; ".join(material.label.value for material in task.ledger.materials.values()),
            ),
        ),
    )


def _stop_list(task: Task) -> StopList:
    say = task.language.say
    return StopList(
        key="stop",
        title=say("Stop at once if"),
        lines=task.lines(*task.method.stop_if),
        restart=say(
            "Anyone may stop the work. Make it safe, tell the supervisor, and wait until the supervisor "
            "starts it again."
        ),
    )


def _measurements(task: Task) -> MeasurementTable:
    say = task.language.say
    measured = [size for size in task.method.sizes.values() if size.measured]
    return MeasurementTable(
        key="measure",
        title=say("What to measure"),
        intro=say(
            "Take each size at your own opening and write it here. A size not taken is unknown, never nought."
        ),
        row_head=say("Size, and how to take it"),
        columns=tuple(
            say("Opening %(number)s", number=number) for number in range(1, OPENINGS_TO_MEASURE + 1)
        ),
        rows=tuple(_measured(task, size) for size in measured),
    )


def _measured(task: Task, size: Size) -> str:
    take = task.told(size.take)
    return f"{size.label.value}. {take}" if take else size.label.value


def _questions(task: Task) -> QuestionList:
    say = task.language.say
    return QuestionList(
        key="questions",
        title=say("Questions"),
        intro=say("Answer in your own words. Your tutor keeps the answers."),
        questions=tuple(
            Question(text=task.told(one.ask), step=int(one.step) if one.step else 0)
            for one in task.method.questions
        ),
    )


def _glossary(task: Task) -> Glossary:
    terms = sorted(task.method.glossary.items())
    return Glossary(
        key="words",
        title=task.language.say("Words of the trade"),
        terms=tuple(
            Term(word=task.language.quote(word), meaning=task.told(meaning)) for word, meaning in terms
        ),
    )


def _record(task: Task) -> LearnerRecord:
    say = task.language.say
    return LearnerRecord(
        key="record",
        title=say("Your record"),
        lines=(say("Name"), say("Unit"), say("Where the work was done"), say("Dates"), say("Tutor")),
    )
