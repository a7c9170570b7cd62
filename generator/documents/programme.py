"""The programme of a job: each step's time, order and crew in a table, and drawn as bars."""

from __future__ import annotations

from collections.abc import Mapping

from generator.documents.blocks import Column, Figure, Part, Table
from generator.documents.drawing_files import in_files
from generator.documents.task import Task, duration
from generator.drawings.orders import PAPER, PHONE, Bound, Order
from generator.drawings.programmes import MOST_BARS
from generator.drawings.timed import Moment, TimedBar, WorkingDay
from generator.quantities.ledger import Ledger
from generator.quantities.programme import CLOCK_DAY, Bar, Programme, programme_of
from generator.wording import ENGLISH, Language

NAME, KEY = "programme", "programme-bars"
_MINUTES = 60


def programme_orders(ledger: Ledger) -> tuple[Order, ...]:
    """The drawings of a job's programme, for paper and for a phone; none where it has too many steps."""
    if len(ledger.method.steps) > MOST_BARS:
        return ()
    values = tuple(sorted(_values(ledger, programme_of(ledger), ENGLISH).items()))
    return tuple(Order(name=NAME, width=width, values=values) for width in (PAPER, PHONE))


def programme_part(task: Task) -> Part:
    """The job's programme in a sentence, a table and a drawing."""
    say, made = task.language.say, programme_of(task.ledger)
    return Part(
        key="annex-programme",
        title=say("Annex: programme"),
        intro=_intro(task, made),
        blocks=(_table(task, made), *_figure(task)),
    )


def _values(ledger: Ledger, made: Programme, language: Language) -> Mapping[str, Bound]:
    steps = ledger.method.steps
    bars = tuple(_timed(bar, steps[bar.task.number - 1].title.value, made, language) for bar in made.bars)
    values: dict[str, Bound] = {"bars": bars, "outcome": outcome(made, language)}
    if made.day:
        values["day"] = WorkingDay(minutes=made.day, text=duration(made.day, language))
    return values


def _timed(bar: Bar, title: str, made: Programme, language: Language) -> TimedBar:
    return TimedBar(
        number=str(bar.task.number),
        title=title,
        start=_moment(bar.start, made, language),
        finish=_moment(bar.finish, made, language),
        ready=_moment(bar.ready, made, language),
        work=duration(bar.task.work, language),
        critical=bar.critical,
    )


def _moment(clock: int, made: Programme, language: Language) -> Moment:
    return Moment(minutes=clock, text=moment_words(clock, made.day, language))


def moment_words(clock: int, day: int | None, language: Language) -> str:
    """A time of the programme: hours from the start, or from the start of a numbered working day."""
    if day is None:
        return _clock(clock)
    days, rest = divmod(clock, CLOCK_DAY)
    if rest > day:
        return language.say("night after day %(day)s", day=str(days + 1))
    return language.say("day %(day)s, %(time)s", day=str(days + 1), time=_clock(rest))


def _clock(minutes: int) -> str:
    hours, rest = divmod(minutes, _MINUTES)
    return f"{hours}:{rest:02d}"


def outcome(made: Programme, language: Language) -> str:
    """When all is ready, and how much work it takes."""
    work = duration(made.person_minutes, language)
    if made.day is None:
        end = duration(made.end, language)
        return language.say(
            "All is ready after %(end)s; %(work)s of work, all hands added up.", end=end, work=work
        )
    days, rest = divmod(made.end, CLOCK_DAY)
    if rest > made.day:
        return language.say(
            "All is ready in the night after day %(day)s; %(work)s of work, all hands added up.",
            day=str(days + 1),
            work=work,
        )
    return language.say(
        "All is ready %(into)s into day %(day)s; %(work)s of work, all hands added up.",
        into=duration(rest, language),
        day=str(days + 1),
        work=work,
    )


def _intro(task: Task, made: Programme) -> str:
    say, openings = task.language.say, len(task.ledger.openings)
    hands = task.language.say_count(
        "%(count)s person at work at most.", "%(count)s people at work at most.", made.most_at_once
    )
    day = (
        say(
            "A working day is %(day)s; a wait runs on through the night.",
            day=duration(made.day, task.language),
        )
        if made.day
        else say("Times run on without breaks, since the job gives no working day.")
    )
    each = task.language.say_count(
        "Each step is done at %(count)s opening before the next begins.",
        "Each step is done at all %(count)s openings before the next begins.",
        openings,
    )
    kept = say("Times are the method's own and no promise: the hold points decide when work goes on.")
    return " ".join((outcome(made, task.language), hands, day, each, kept))


def _table(task: Task, made: Programme) -> Table:
    say, overlapping = task.language.say, any(bar.beside for bar in made.bars)
    return Table(
        key="programme-steps",
        columns=(
            Column(head=say("Step"), width=30.0),
            Column(head=say("Comes after"), width=9.0),
            Column(head=say("People"), width=8.0),
            Column(head=say("Work"), width=17.0),
            Column(head=say("Starts"), width=12.0),
            Column(head=say("Ready"), width=12.0),
            Column(head=say("May slip")),
            *((Column(head=say("May overlap")),) if overlapping else ()),
        ),
        rows=tuple(_row(task, made, bar, overlapping) for bar in made.bars),
        note=say(
            "Hours and minutes of work, from the start of the day named; ready means done and waited for. "
            "“May slip” is working time: a step that may not slip decides the end."
        ),
    )


def _row(task: Task, made: Programme, bar: Bar, overlapping: bool) -> tuple[str, ...]:
    step, openings = task.method.steps[bar.task.number - 1], len(task.ledger.openings)
    times = f"{_clock(int(step.minutes))} × {openings} = " if openings > 1 else ""
    return (
        f"{bar.task.number}. {step.title.value}",
        ", ".join(str(number) for number in bar.task.after) or "–",
        str(bar.task.crew),
        f"{times}{_clock(bar.task.work)}",
        moment_words(bar.start, made.day, task.language),
        moment_words(bar.ready, made.day, task.language),
        _clock(bar.slack) if bar.slack else task.language.say("no"),
        *((", ".join(str(number) for number in bar.beside),) if overlapping else ()),
    )


def _figure(task: Task) -> tuple[Figure, ...]:
    orders = programme_orders(task.ledger)
    if not orders:
        return ()
    paper, phone = (task.pictures[order] for order in orders)
    return (in_files(task, Figure(key=KEY, caption=paper.title, picture=paper, phone=phone), KEY),)
