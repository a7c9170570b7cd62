"""What a programme's drawing is given: each step as a bar in time, and the working day."""

from __future__ import annotations

from dataclasses import dataclass

from generator.drawings.figures import Part


@dataclass(frozen=True, slots=True, kw_only=True)
class Moment(Part):
    """A time in clock minutes from the start of the first day, and the text to print for it."""

    minutes: float
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TimedBar(Part):
    """One step: its number and title, when it starts, is finished and is ready, and what is said of it.

    `work` is its time in words; `critical` is true where the end slips as soon as this step does.
    """

    number: str
    title: str
    start: Moment
    finish: Moment
    ready: Moment
    work: str
    critical: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkingDay(Part):
    """The working minutes at the start of each day of twenty-four hours, and the text to print for them."""

    minutes: float
    text: str
