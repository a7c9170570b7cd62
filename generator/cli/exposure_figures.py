"""The exposures of a ledger as figures beside its sizes and quantities."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from generator.cli.figures import Figure
from generator.model.catalogue import Tool
from generator.quantities.exposure_days import ExposureDay, exposure_days, weeks_of
from generator.quantities.exposure_workings import (
    cautious_reading,
    noise_lines,
    noise_result,
    vibration_lines,
    vibration_result,
)
from generator.quantities.ledger import Ledger


def exposure_figures(ledger: Ledger, tools: Mapping[str, Tool]) -> tuple[Figure, ...]:
    """Noise and vibration of each day of the programme, then noise of each week, all of the whole job."""
    days = exposure_days(ledger, tools)
    return (*(figure for day in days for figure in _of_day(day)), *_of_weeks(days))


def _of_day(day: ExposureDay) -> Iterator[Figure]:
    yield _figure(
        f"noise_day_{day.number}",
        f"Noise of day {day.number}",
        noise_result(day),
        day.daily_noise,
        "dB",
        noise_lines(day),
    )
    yield _figure(
        f"vibration_day_{day.number}",
        f"Hand-arm vibration of day {day.number}",
        vibration_result(day),
        day.daily_vibration,
        "m/s²",
        vibration_lines(day),
    )


def _of_weeks(days: tuple[ExposureDay, ...]) -> Iterator[Figure]:
    for week, level in weeks_of(days).items():
        yield Figure(
            opening="",
            name=f"noise_week_{week}",
            label=f"Noise of week {week}",
            value=f"LEP,w {level:.1f} dB(A)",
            number=f"{level:.1f}",
            unit="dB",
            working=("the energy of its days, divided by five days however many are worked",),
        )


def _figure(
    name: str, label: str, value: str, number: float | None, unit: str, working: tuple[str, ...]
) -> Figure:
    known = number is not None
    return Figure(
        opening="",
        name=name,
        label=label,
        value=value,
        number=f"{number:.1f}" if known else "",
        unit=unit if known else "",
        working=(*working, cautious_reading()),
    )
