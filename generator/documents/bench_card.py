"""The bench card: one side of paper with the sizes to cut by, the hold points and what stops the job."""

from __future__ import annotations

from collections.abc import Iterator

from generator.documents.blocks import (
    BenchCard,
    CardCheck,
    CardColumn,
    Document,
    Fact,
    Figure,
    HoldLine,
    KeyItem,
    Picture,
    Status,
)
from generator.documents.card_room import fitted
from generator.documents.card_rows import card_rows, has_card
from generator.documents.drawing_files import plain
from generator.documents.figures import bench_order
from generator.documents.front import issue_of
from generator.documents.holds import numbered, releaser
from generator.documents.task import Task, sentence
from generator.drawings.orders import BENCH_FORMS, Order
from generator.model.card import Card
from generator.model.folder import Project
from generator.model.jobs import DocumentControl, Job
from generator.model.steps import Step
from generator.problems import ProblemLog, Span
from generator.quantities.ledger import Ledger, OpeningLedger
from generator.units import print_value
from generator.wording import ENGLISH

MOST_COLUMNS = 4
_EMERGENCY = ("hurt", "call", "shut_off")


def compose_cards(task: Task) -> Document:
    """One document of all cards of a job whose method has a card.

    Up to four openings have a card together; where there are several, each has one of its own as well. The
    job must have document control; ValueError otherwise.
    """
    job = task.job
    if job is None or job.document is None:
        raise ValueError("a bench card takes a job with its document control")
    made = (compose_card(task, openings) for openings in groups(task.ledger))
    cards = tuple(card for card in made if card)
    say, control = task.language.say, job.document
    return Document(
        kind="card",
        lang=task.language.tag,
        number=control.number.value,
        title=say("Bench card: %(title)s", title=task.method.title.value),
        description=say("Bench card of %(job)s.", job=job.job.value),
        job=_place(job),
        company=task.company,
        issue=issue_of(control, task.language),
        footer=_footer(task, control),
        blocks=cards,
    )


def check_cards(ledger: Ledger, project: Project, log: ProblemLog) -> None:
    """A fault where one side of paper cannot hold a card's words, however close they are set."""
    method, job = ledger.method, ledger.job
    if job is None or job.document is None or not has_card(method) or ledger.broken:
        return
    task = Task(project=project, ledger=ledger, pictures={}, language=ENGLISH)
    for openings in groups(ledger):
        if compose_card(task, openings) is None:
            place = method.card.span if method.card else method.title.span
            _log_too_long(openings, job, place, log)


def _log_too_long(openings: tuple[OpeningLedger, ...], job: Job, place: Span, log: ProblemLog) -> None:
    """A job without a survey has one place and no opening to name."""
    if all(one.row is None for one in openings):
        log.add("card-too-long", place, job=job.job.value)
        return
    marks = ", ".join(one.mark for one in openings)
    log.add("card-of-openings-too-long", place, openings=marks, job=job.job.value)


def groups(ledger: Ledger) -> tuple[tuple[OpeningLedger, ...], ...]:
    """The openings of each card: all of them where there is room for their columns, then each by itself."""
    openings = ledger.openings
    together = (openings,) if len(openings) <= MOST_COLUMNS else ()
    alone = tuple((opening,) for opening in openings)
    return (*together, *alone) if len(openings) > 1 else alone


def card_orders(ledger: Ledger) -> tuple[Order, ...]:
    """The drawings that the cards may show."""
    found = (bench_order(ledger, openings[0]) for openings in groups(ledger))
    return tuple(dict.fromkeys(order for order in found if order))


def compose_card(task: Task, openings: tuple[OpeningLedger, ...]) -> BenchCard | None:
    """The card of these openings, four at most (ValueError for more); None where one side cannot hold it."""
    job = task.job
    if job is None or job.document is None or not 1 <= len(openings) <= MOST_COLUMNS:
        raise ValueError(f"a bench card takes a job and 1 to {MOST_COLUMNS} openings")
    card = BenchCard(
        key="-".join(("card", *(plain(opening.mark) for opening in openings))),
        under=task.language.say(
            "Bench card %(number)s, %(place)s", number=job.document.number.value, place=_place(job)
        ),
        title=task.method.title.value,
        revision=job.document.revision.value,
        columns=tuple(_column(opening) for opening in openings),
        rows=card_rows(task, openings),
        checks=tuple(_checks(task)),
        order=tuple(_order(task)),
        holds=tuple(_holds(task)),
        releaser=_releaser(task),
        stop_if=task.lines(*task.method.stop_if, *job.stop_if),
        emergency=tuple(_emergency(task, job)),
    )
    return fitted(card, _figure(task, openings))


def _place(job: Job) -> str:
    return job.site.name.value if job.site and job.site.name else job.job.value


def _footer(task: Task, control: DocumentControl) -> tuple[str, ...]:
    say = task.language.say
    words = {
        Status.DRAFT: say("Draft"),
        Status.FOR_COMMENT: say("For comment"),
        Status.FOR_CONSTRUCTION: say("For construction"),
        Status.SUPERSEDED: say("Superseded"),
        Status.WITHDRAWN: say("Withdrawn"),
    }
    issued = (
        say("Issued %(date)s", date=task.language.day(control.issued.value))
        if control.issued
        else say("Not issued")
    )
    return (words[issue_of(control, task.language).status], issued)


def _column(opening: OpeningLedger) -> CardColumn:
    name = opening.row.name if opening.row else None
    return CardColumn(mark=opening.mark if opening.row else "", name=name or "")


def _steps(task: Task) -> Iterator[tuple[int, Step]]:
    card: Card | None = task.method.card
    chosen = {int(step) for step in card.steps} if card else set()
    for number, step in enumerate(task.method.steps, 1):
        if not chosen or number in chosen:
            yield number, step


def _order(task: Task) -> Iterator[str]:
    holds = {held.step: held.number for held in numbered(task)}
    for number, step in _steps(task):
        then = task.language.say(", **%(hold)s**.", hold=holds[number]) if number in holds else ""
        yield f"**{number}** {step.title.value}{then}"


def _checks(task: Task) -> Iterator[CardCheck]:
    """The closest check of each step, since it holds the others."""
    for _, step in _steps(task):
        limited = [check for check in step.check if check.within]
        if limited:
            closest = min(limited, key=lambda check: check.within.value.magnitude if check.within else 0)
            limit = print_value(closest.within.value).text("\u2009") if closest.within else ""
            yield CardCheck(what=task.told(closest.what), limit=limit)


def _holds(task: Task) -> Iterator[HoldLine]:
    say = task.language.say
    for held in numbered(task):
        before = task.told(held.hold.before)
        yield HoldLine(
            number=held.number,
            what=say("Before %(before)s", before=before),
            when=say("after step %(step)s", step=held.step),
        )


def _releaser(task: Task) -> str:
    first = releaser(task)
    if first is None or first.name is None:
        return task.language.say("the supervisor")
    return ", ".join(filter(None, (first.name.value, first.phone.value if first.phone else "")))


def _emergency(task: Task, job: Job) -> Iterator[Fact]:
    say = task.language.say
    titles = {"hurt": say("Hurt"), "call": say("Call"), "shut_off": say("Shut off")}
    for key in _EMERGENCY:
        told = task.told(getattr(job.emergency, key)) if job.emergency else ""
        if told:
            yield Fact(label=titles[key], text=sentence(told))


def _figure(task: Task, openings: tuple[OpeningLedger, ...]) -> Figure | None:
    order = bench_order(task.ledger, openings[0])
    if order is None or order not in task.pictures:
        return None
    picture = task.pictures[order]
    return Figure(
        key=f"section-{plain(openings[0].mark)}-of-{len(openings)}",
        number=openings[0].mark if len(openings) > 1 else "",
        caption=picture.title,
        picture=picture,
        scale=picture.scale or "",
        items=_key(order, picture),
    )


def _key(order: Order, picture: Picture) -> tuple[KeyItem, ...]:
    """The letters of a drawing that leaves its key to the card."""
    if order.name not in BENCH_FORMS.values():
        return ()
    return tuple(KeyItem(letter=letter, text=text) for letter, text in picture.key)
