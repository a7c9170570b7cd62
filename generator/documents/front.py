"""The first page of a statement: what, where, who, what stops the job, what to do in an emergency."""

from __future__ import annotations

from generator.documents.blocks import (
    DocumentControl,
    EmergencyColumn,
    FrontPage,
    Issue,
    Person,
    Prose,
    Signatory,
    Status,
    StopBox,
)
from generator.documents.holds import deputy, hold_line, numbered, releaser
from generator.documents.openings import schedule
from generator.documents.task import Task, first_paragraph, sentence, short_day
from generator.model.jobs import DocumentControl as Control
from generator.model.jobs import Job, Signed
from generator.model.jobs import Person as Named
from generator.wording import Language

EMERGENCY = ("call", "hurt", "fire", "shut_off")


def issue_of(control: Control, language: Language) -> Issue:
    """The revision and where it stands."""
    return Issue(
        revision=control.revision.value,
        status=Status(control.status.value.replace(" ", "-")),
        issued=short_day(control.issued.value if control.issued else None, language),
        review_by=short_day(control.review_by.value if control.review_by else None, language),
        replaces=control.replaces.typed if control.replaces else "",
    )


def front_page(task: Task, job: Job, control: Control) -> FrontPage:
    """The first page from the job's own answers."""
    return FrontPage(
        title_lines=(task.method.title.value,),
        under=_under(task, job),
        issue=issue_of(control, task.language),
        what=_what(task, job),
        where=_where(task, job),
        places=schedule(task),
        who=tuple(_person(person) for person in job.people),
        client=task.lines(*job.client.does) if job.client else (),
        stop=_stop(task, job),
        emergency=_emergency(task, job),
        control=_control(task, control),
    )


def _under(task: Task, job: Job) -> tuple[Prose, ...]:
    say = task.language.say
    client = (say("Client: %(name)s", name=job.client.name.value),) if job.client else ()
    place = (job.site.name.value,) if job.site and job.site.name else ()
    return (", ".join((*place, job.job.value)), *client)


def _what(task: Task, job: Job) -> tuple[Prose, ...]:
    excluded = task.told(job.not_included)
    lead = task.language.say("**Not included:** %(what)s", what=excluded)
    return (first_paragraph(task.told(task.method.summary)), *((lead,) if excluded else ()))


def _where(task: Task, job: Job) -> tuple[Prose, ...]:
    say, site = task.language.say, job.site
    built = site.building_begun if site else None
    age = say("Oldest part of the building begun in %(year)s.", year=int(built)) if built else ""
    address = f"{task.told(site.address)}. {age}" if site and site.address else age
    return tuple(filter(None, (address.strip(), task.told(site.occupied) if site else "", _when(task, job))))


def _when(task: Task, job: Job) -> Prose:
    if job.when is None:
        return ""
    say, when = task.language.say, job.when
    days = say(
        "%(first)s to %(last)s",
        first=task.language.day(when.from_.value),
        last=task.language.day(when.to.value),
    )
    hours = task.told(when.hours)
    return say("%(days)s, %(hours)s.", days=days, hours=hours) if hours else f"{days}."


def _person(person: Named) -> Person:
    return Person(
        role=sentence(person.part.value),
        name=person.name.value if person.name else "",
        firm=person.firm.value if person.firm else "",
        phone=person.phone.value if person.phone else "",
    )


def _stop(task: Task, job: Job) -> StopBox:
    say, first, second = task.language.say, releaser(task), deputy(task)
    name = first.name.value if first and first.name else say("the supervisor")
    restart = (
        say(
            "Anyone may stop the work. Make it safe and tell %(name)s; only %(name)s, or "
            "%(deputy)s as deputy, starts it again.",
            name=name,
            deputy=second.name,
        )
        if second
        else say(
            "Anyone may stop the work. Make it safe and tell %(name)s, who alone starts it again.", name=name
        )
    )
    return StopBox(
        holds=tuple(hold_line(task, held) for held in numbered(task)),
        stop_if=task.lines(*task.method.stop_if, *job.stop_if),
        restart=restart,
    )


def _emergency(task: Task, job: Job) -> tuple[EmergencyColumn, ...]:
    say = task.language.say
    titles = {"call": say("Call"), "hurt": say("Hurt"), "fire": say("Fire"), "shut_off": say("Shut off")}
    told = {key: task.told(getattr(job.emergency, key)) for key in EMERGENCY} if job.emergency else {}
    return tuple(EmergencyColumn(title=titles[key], lines=(text,)) for key, text in told.items() if text)


def _control(task: Task, control: Control) -> DocumentControl:
    say = task.language.say
    acts = (
        (say("Written"), control.written),
        (say("Checked"), control.checked),
        (say("Approved"), control.approved),
    )
    changed, basis, copies = (
        task.told(control.changed),
        task.lines(*control.based_on),
        task.lines(*control.distribution),
    )
    notes = (
        _changed(task, control.replaces.typed if control.replaces else "", changed),
        say("Based on: %(documents)s.", documents="; ".join(basis)) if basis else "",
        say("Copies: %(holders)s.", holders="; ".join(copies)) if copies else "",
    )
    return DocumentControl(
        signatories=tuple(_signatory(act, signed, task.language) for act, signed in acts),
        notes=tuple(filter(None, notes)),
    )


def _changed(task: Task, replaced: str, changed: str) -> str:
    """What is new in this revision, against the one it replaces where there is one."""
    if not changed:
        return ""
    if not replaced:
        return task.language.say("Changed: %(what)s", what=changed)
    return task.language.say("Changed since %(revision)s: %(what)s", revision=replaced, what=changed)


def _signatory(act: str, signed: Signed | None, language: Language) -> Signatory:
    if signed is None:
        return Signatory(act=act, name="", role="")
    date = short_day(signed.date.value, language)
    return Signatory(act=act, name=signed.by.value, role=signed.role.value, date=date)
