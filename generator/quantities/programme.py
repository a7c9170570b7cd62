"""The programme of a method or job: how long each step takes, what may overlap, what decides the end.

A step takes its minutes at every opening with its own crew, and begins when the steps it comes after are done
and what they wait for (curing, drying) is over. Times are clock minutes from the start of the first working
day. Where the working day is given, work stops at its end and goes on at the next one's start, while a wait
runs on through the night; without it the work runs on.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from generator.model.steps import Step
from generator.quantities.ledger import Ledger

CLOCK_DAY = 24 * 60
_SECONDS = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """One step to be timed: minutes of work at all openings, minutes to wait afterwards, and its crew."""

    number: int
    work: int
    wait: int = 0
    crew: int = 1
    after: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """One step in the programme, in clock minutes.

    It starts as early as it may; `ready` is its finish with the wait. `slack` is how many working minutes it
    may slip before the end does, nought on the critical path. `beside` are the steps it may overlap.
    """

    task: Task
    start: int
    finish: int
    ready: int
    slack: int
    beside: tuple[int, ...]

    @property
    def critical(self) -> bool:
        """Whether the end slips as soon as this step does."""
        return self.slack == 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Programme:
    """The bars in the order of the steps, and when all is ready; `day` is the working day in minutes.

    `person_minutes` is the work of all hands, `most_at_once` the most hands at work at one time.
    """

    bars: tuple[Bar, ...]
    end: int
    day: int | None
    person_minutes: int
    most_at_once: int

    @property
    def critical(self) -> tuple[int, ...]:
        """The numbers of the steps that decide the end."""
        return tuple(bar.task.number for bar in self.bars if bar.critical)


def programme_of(ledger: Ledger) -> Programme:
    """The programme of a ledger's method at all its openings, in the job's working day where it has one."""
    openings = len(ledger.openings)
    tasks = tuple(_task(number, step, openings) for number, step in enumerate(ledger.method.steps, 1))
    when = ledger.job.when if ledger.job else None
    day = int(when.day.value.magnitude / _SECONDS) if when and when.day else None
    return programme(tasks, day)


def _task(number: int, step: Step, openings: int) -> Task:
    before = (number - 1,) if number > 1 else ()
    return Task(
        number=number,
        work=int(step.minutes) * openings,
        wait=int(step.wait_minutes or 0),
        crew=int(step.crew or 1),
        after=before if step.after is None else tuple(int(n) for n in step.after if 0 < n < number),
    )


def programme(tasks: Sequence[Task], day: int | None = None) -> Programme:
    """Time tasks by the critical path method; each may come after earlier ones only. `day` in minutes."""
    calendar = Calendar(day=day or CLOCK_DAY)
    spans = _earliest(tasks, calendar)
    end = max((spans[task.number][1] + task.wait for task in tasks), default=0)
    latest = _latest(tasks, end, calendar)
    linked = _linked(tasks)
    bars = tuple(
        Bar(
            task=task,
            start=spans[task.number][0],
            finish=spans[task.number][1],
            ready=spans[task.number][1] + task.wait,
            slack=calendar.worked(latest[task.number]) - calendar.worked(spans[task.number][0]),
            beside=_beside(task, tasks, linked),
        )
        for task in tasks
    )
    return Programme(
        bars=bars,
        end=end,
        day=day,
        person_minutes=sum(task.work * task.crew for task in tasks),
        most_at_once=_most_at_once(bars),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Calendar:
    """A working day of so many minutes at the start of each clock day."""

    day: int

    def worked(self, clock: int) -> int:
        """The working minutes up to a clock time."""
        days, rest = divmod(clock, CLOCK_DAY)
        return days * self.day + min(rest, self.day)

    def start(self, clock: int) -> int:
        """The first clock time, from this one on, at which work can begin."""
        days, rest = divmod(clock, CLOCK_DAY)
        return clock if rest < self.day else (days + 1) * CLOCK_DAY

    def finish(self, start: int, work: int) -> int:
        """When work begun at a working time is done."""
        if work == 0:
            return start
        days, rest = divmod(self.worked(start) + work - 1, self.day)
        return days * CLOCK_DAY + rest + 1

    def latest_start(self, finish: int, work: int) -> int:
        """The last clock time at which work can begin that is to be done by `finish`."""
        if work == 0:
            return finish
        days, rest = divmod(self.worked(finish) - work, self.day)
        return days * CLOCK_DAY + rest


def _earliest(tasks: Sequence[Task], calendar: Calendar) -> Mapping[int, tuple[int, int]]:
    spans: dict[int, tuple[int, int]] = {}
    waits = {task.number: task.wait for task in tasks}
    for task in tasks:
        free = max((spans[each][1] + waits[each] for each in task.after), default=0)
        start = calendar.start(free) if task.work else free
        spans[task.number] = start, calendar.finish(start, task.work)
    return spans


def _latest(tasks: Sequence[Task], end: int, calendar: Calendar) -> Mapping[int, int]:
    """The latest start of each task that keeps the end."""
    starts: dict[int, int] = {}
    for task in reversed(tasks):
        followed = [starts[other.number] for other in tasks if task.number in other.after]
        finish = min(followed, default=end) - task.wait
        starts[task.number] = calendar.latest_start(finish, task.work)
    return starts


def _linked(tasks: Sequence[Task]) -> Mapping[int, frozenset[int]]:
    """All that each task comes after, directly or through others."""
    linked: dict[int, frozenset[int]] = {}
    for task in tasks:
        linked[task.number] = frozenset(task.after).union(*(linked[each] for each in task.after))
    return linked


def _beside(task: Task, tasks: Sequence[Task], linked: Mapping[int, frozenset[int]]) -> tuple[int, ...]:
    return tuple(
        other.number
        for other in tasks
        if other is not task
        and other.number not in linked[task.number]
        and task.number not in linked[other.number]
    )


def _most_at_once(bars: Iterable[Bar]) -> int:
    """A finish frees its hands before a start at the same minute asks for them."""
    changes = sorted(
        change
        for bar in bars
        if bar.task.work
        for change in ((bar.start, 1, bar.task.crew), (bar.finish, 0, -bar.task.crew))
    )
    at_work = most = 0
    for _, _, hands in changes:
        at_work += hands
        most = max(most, at_work)
    return most
