"""What has changed: in one method, and lately in everything that an index lists.

The days stand in the files. Nothing here knows today's date, so that the same files give the same pages.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from datetime import date
from typing import NamedTuple

from generator.documents.blocks import Change, ChangeLog
from generator.documents.task import Task

LATELY = 10
"""How many changes an index shows."""


class _Dated(NamedTuple):
    day: date
    change: Change


def changes_of(task: Task) -> tuple[ChangeLog, ...]:
    """What has changed in a guide's method; none where its file tells of no change."""
    found = tuple(_in_method(task))
    if not found:
        return ()
    say = task.language.say
    return (ChangeLog(key="changes", title=say("What has changed in this guide"), changes=_newest(found)),)


def lately(listed: Iterable[tuple[Task, str, str]]) -> tuple[ChangeLog, ...]:
    """The newest changes of methods and of issued statements, each of these with its title and its page."""
    listed = tuple(listed)
    found = [dated for task, title, href in listed for dated in _told(task, title, href)]
    if not found:
        return ()
    say = listed[0][0].language.say
    newest = _newest(found)[:LATELY]
    return (ChangeLog(key="changes", title=say("What changed lately"), changes=newest),)


def _newest(found: Iterable[_Dated]) -> tuple[Change, ...]:
    """The changes by their days, the newest first; those of one day in the order given."""
    return tuple(each.change for each in sorted(found, key=lambda each: each.day, reverse=True))


def _told(task: Task, title: str, href: str) -> Iterator[_Dated]:
    yield from _in_statement(task, title, href) if task.job else _in_method(task, title, href)


def _in_method(task: Task, title: str = "", href: str = "") -> Iterator[_Dated]:
    for each in task.method.changes:
        day = each.date.value
        told = Change(day=task.language.day(day), text=task.told(each.what), title=title, href=href)
        yield _Dated(day, told)


def _in_statement(task: Task, title: str, href: str) -> Iterator[_Dated]:
    """What the revision in force has changed, from the day it was issued."""
    control = task.job.document if task.job else None
    if control is None or control.issued is None or control.changed is None:
        return
    day, say = control.issued.value, task.language.say
    named = say("%(job)s, revision %(revision)s", job=title, revision=control.revision.value)
    yield _Dated(
        day, Change(day=task.language.day(day), text=task.told(control.changed), title=named, href=href)
    )
