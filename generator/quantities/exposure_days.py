"""The noise and vibration of each day of a programme, for the person nearest to every tool.

The minutes a tool runs are not the minutes of its step. Where a step says how long each runs, those count.
For the rest of its minutes the loudest of its other tools is taken to run, and likewise the one that shakes
most: a cautious reading, which is said wherever it is shown. A powered tool without a figure is left open and
named, never taken as quiet.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Final, TypeAlias

from generator.model.amounts import Amount
from generator.model.catalogue import Tool
from generator.model.steps import Step
from generator.quantities.exposure import (
    daily_noise,
    daily_vibration,
    noise_points,
    vibration_points,
    weekly_noise,
)
from generator.quantities.ledger import Ledger
from generator.quantities.programme import CLOCK_DAY, Bar, programme_of
from generator.units import TRADE_UNITS

_POWERED: Final = ("power tool", "machine", "extraction")
_WORKING_WEEK = 5
Points: TypeAlias = Callable[[float, float], float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Dose:
    """What one tool adds in one day: `level` in dB(A) or m/s², and whether somebody measured it."""

    tool: Tool
    level: float
    minutes: float
    assumed: bool
    points: float


@dataclass(frozen=True, slots=True, kw_only=True)
class ExposureDay:
    """One working day of the programme, from 1, with what each tool adds and the tools without a figure."""

    number: int
    noise: tuple[Dose, ...]
    vibration: tuple[Dose, ...]
    noise_open: tuple[Tool, ...]
    vibration_open: tuple[Tool, ...]

    @property
    def noise_points(self) -> float:
        """The points of all tools; 100 make the upper action value."""
        return sum(dose.points for dose in self.noise)

    @property
    def vibration_points(self) -> float:
        """The points of all tools; 100 make the action value."""
        return sum(dose.points for dose in self.vibration)

    @property
    def daily_noise(self) -> float | None:
        """LEP,d in dB(A) of the tools that have a figure; None where none has."""
        return daily_noise(self.noise_points) if self.noise else None

    @property
    def daily_vibration(self) -> float | None:
        """A(8) in m/s² of the tools that have a figure; None where none has."""
        return daily_vibration(self.vibration_points) if self.vibration else None


def exposure_days(ledger: Ledger, tools: Mapping[str, Tool]) -> tuple[ExposureDay, ...]:
    """The days of a ledger's programme on which a powered tool is used, by the catalogue's tools."""
    shares: dict[int, list[tuple[Step, int]]] = {}
    made = programme_of(ledger)
    for bar, step in zip(made.bars, ledger.method.steps, strict=True):
        for day, minutes in _by_day(bar, made.day or CLOCK_DAY):
            shares.setdefault(day, []).append((step, minutes))
    days = (_day(number, shares[number], tools) for number in sorted(shares))
    return tuple(day for day in days if day.noise or day.vibration or day.noise_open or day.vibration_open)


def loudest(days: Iterable[ExposureDay]) -> ExposureDay | None:
    """The day with most points of noise; None where no level is known."""
    return max((day for day in days if day.noise_points), key=lambda day: day.noise_points, default=None)


def most_shaken(days: Iterable[ExposureDay]) -> ExposureDay | None:
    """The day with most points of vibration; None where no magnitude is known."""
    known = (day for day in days if day.vibration_points)
    return max(known, key=lambda day: day.vibration_points, default=None)


def weeks_of(days: Iterable[ExposureDay]) -> Mapping[int, float]:
    """LEP,w in dB(A) of each week of five days, from 1, in which a day's noise is known."""
    weeks: dict[int, list[float]] = {}
    for day in days:
        if day.daily_noise is not None:
            weeks.setdefault((day.number - 1) // _WORKING_WEEK + 1, []).append(day.daily_noise)
    return {week: weekly_noise(known) for week, known in weeks.items()}


def _by_day(bar: Bar, length: int) -> Iterator[tuple[int, int]]:
    for day in range(bar.start // CLOCK_DAY, bar.finish // CLOCK_DAY + 1):
        begins = day * CLOCK_DAY
        minutes = min(bar.finish, begins + length) - max(bar.start, begins)
        if minutes > 0:
            yield day + 1, minutes


def _day(number: int, shares: list[tuple[Step, int]], tools: Mapping[str, Tool]) -> ExposureDay:
    used = {key.value: tools[key.value] for step, _ in shares for key in step.uses}
    powered = [tool for tool in used.values() if tool.kind.value in _POWERED]
    return ExposureDay(
        number=number,
        noise=_doses("noise", shares, tools, noise_points),
        vibration=_doses("vibration", shares, tools, vibration_points),
        noise_open=tuple(tool for tool in powered if tool.noise is None),
        vibration_open=tuple(
            tool for tool in powered if tool.vibration is None and tool.kind.value == "power tool"
        ),
    )


def _doses(
    fact: str, shares: list[tuple[Step, int]], tools: Mapping[str, Tool], points: Points
) -> tuple[Dose, ...]:
    minutes: dict[str, float] = {}
    for step, share in shares:
        levels = {
            key.value: _level(amount)
            for key in step.uses
            if (amount := getattr(tools[key.value], fact)) is not None
        }
        for key, part in _parts(step, levels).items():
            minutes[key] = minutes.get(key, 0.0) + part * share
    return tuple(_dose(fact, tools[key], ran, points) for key, ran in minutes.items() if ran)


def _parts(step: Step, levels: Mapping[str, float]) -> Mapping[str, float]:
    """The part of the step's minutes that each tool with a figure runs."""
    whole = int(step.minutes) or 1
    parts = {key: int(minutes) / whole for key, minutes in step.runs.items()}
    others = [key for key in levels if key not in parts]
    if others:
        parts[max(others, key=levels.__getitem__)] = max(0.0, 1 - sum(parts.values()))
    return {key: part for key, part in parts.items() if key in levels}


def _dose(fact: str, tool: Tool, minutes: float, points: Points) -> Dose:
    level = _level(getattr(tool, fact))
    return Dose(
        tool=tool,
        level=level,
        minutes=minutes,
        assumed=fact in {word.value for word in tool.assumed},
        points=points(level, minutes),
    )


def _level(amount: Amount) -> float:
    value = amount.value
    return float(value.in_unit(TRADE_UNITS[value.dimension]))
