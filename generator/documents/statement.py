"""The method statement of one job, for the client and for the people who do the work."""

from __future__ import annotations

from generator.documents.blocks import (
    Block,
    BriefingRecord,
    Cautions,
    ChangeRecord,
    Contents,
    Document,
    Link,
    Part,
    Prose,
    Signatory,
    SignOff,
)
from generator.documents.cutting import cutting_part
from generator.documents.doubts import few_readings, left_open
from generator.documents.exposures import exposures
from generator.documents.figures import annex_figures
from generator.documents.front import front_page, issue_of
from generator.documents.hazards import hazard_table
from generator.documents.held import held_figures
from generator.documents.pieces import piece_list
from generator.documents.programme import programme_part
from generator.documents.ripping import ripping_list
from generator.documents.sections import sections
from generator.documents.steps import sequence
from generator.documents.task import Task
from generator.documents.ways import comparisons
from generator.documents.workings import policy_note, workings
from generator.model.jobs import DocumentControl, Job
from generator.safety.cautions import cautions_for
from generator.safety.guidance import guidance_for


def compose_statement(task: Task, *, links: tuple[Link, ...] = ()) -> Document:
    """The statement of the task's job, which must have document control; ValueError otherwise."""
    job = task.job
    if job is None or job.document is None:
        raise ValueError("a statement takes a job with its document control")
    control = job.document
    return Document(
        kind="statement",
        lang=task.language.tag,
        number=control.number.value,
        title=task.method.title.value,
        description=_description(task, job),
        job=_place(job),
        company=task.company,
        issue=issue_of(control, task.language),
        footer=_footer(task, control),
        home=Link(text=task.language.say("All methods"), href="index.html"),
        links=links,
        blocks=(front_page(task, job, control), *_core(task), *_annexes(task)),
    )


def _place(job: Job) -> str:
    return job.site.name.value if job.site and job.site.name else job.job.value


def _description(task: Task, job: Job) -> str:
    return task.language.say(
        "Method statement: %(title)s. %(job)s.", title=task.method.title.value, job=job.job.value
    )


def _footer(task: Task, control: DocumentControl) -> tuple[str, ...]:
    say = task.language.say
    issued = (
        say("Issued %(date)s", date=task.language.day(control.issued.value))
        if control.issued
        else say("Not issued")
    )
    return (say("Method statement"), issued)


def _core(task: Task) -> tuple[Block, ...]:
    say = task.language.say
    return (
        Contents(),
        sequence(task),
        hazard_table(task),
        *held_figures(task),
        Part(key="required-sections", title=say("Required sections"), blocks=sections(task)),
        cautions(task),
        _sign_off(task),
        BriefingRecord(
            key="briefing",
            title=say("Briefing record"),
            intro=say(
                "Each person signs for the revision named at the head of the page, and again for a later one."
            ),
        ),
        _change_record(task),
    )


def _change_record(task: Task) -> ChangeRecord:
    say = task.language.say
    return ChangeRecord(
        key="change",
        title=say("Change during the work"),
        intro=say("Work that cannot go on as written here stops until this is filled in and signed."),
        lines=(
            say("What changed"),
            say("Who stopped the work, when"),
            say("What was agreed"),
            say("New controls"),
            say("Signed by, role, date and time"),
            say("Everyone briefed again: yes or no, by whom"),
        ),
    )


def _annexes(task: Task) -> tuple[Block, ...]:
    say = task.language.say
    ways = Part(key="annex-ways", title=say("Annex: ways compared"), blocks=comparisons(task))
    others = Part(
        key="annex-drawings",
        title=say("Annex: drawings of the other openings"),
        blocks=annex_figures(task),
    )
    figures = Part(
        key="annex-workings",
        title=say("Annex: workings"),
        blocks=(*few_readings(task), *left_open(task), workings(task), policy_note(task)),
        new_page=True,
    )
    exposed = Part(key="annex-exposures", title=say("Annex: exposures worked out"), blocks=exposures(task))
    parts = (_cutting(task), programme_part(task), exposed, ways, others, figures)
    return tuple(part for part in parts if part.blocks)


def _cutting(task: Task) -> Part:
    """What is cut, what is ripped, and which piece comes from which length."""
    plans = cutting_part(task)
    offered = (piece_list(task), ripping_list(task), plans)
    return Part(
        key="annex-cutting",
        title=task.language.say("Annex: cutting"),
        blocks=tuple(block for block in offered if block),
        new_page=True,
    )


def cautions(task: Task) -> Cautions:
    """The usual cautions, and what comes before this document."""
    texts = cautions_for("statement" if task.job else "guide")
    return Cautions(
        key="cautions",
        title=task.language.say("Before you rely on this"),
        lines=(*(task.language.say(text) for text in texts), *_of_nation(task)),
    )


def _of_nation(task: Task) -> tuple[Prose, ...]:
    """The law and guidance of the nation the work is in, or that it must be asked for."""
    site, say = task.job.site if task.job else None, task.language.say
    if site is None or site.nation is None:
        return ()
    known = guidance_for(site.nation.value)
    if not known:
        return (
            say(
                "The law of this place is not known here: ask the competent person which law and guidance "
                "hold."
            ),
        )
    names = "; ".join(f"{say(entry.subject)}: {entry.names}" for entry in known)
    return (say("In %(nation)s the law and guidance are, %(names)s.", nation=site.nation.value, names=names),)


def _sign_off(task: Task) -> SignOff:
    say = task.language.say
    return SignOff(
        key="sign-off",
        title=say("Finished work accepted"),
        signatories=tuple(
            Signatory(act=act, name="", role="") for act in (say("Handed over"), say("Accepted"))
        ),
    )
