"""A day's exposures as arithmetic a person can follow, with what is assumed and what is left open."""

from __future__ import annotations

from collections.abc import Iterator

from generator.model.catalogue import Tool
from generator.quantities.exposure import (
    NOISE_VALUES,
    VIBRATION_VALUES,
    minutes_to_noise,
    minutes_to_vibration,
)
from generator.quantities.exposure_days import Dose, ExposureDay
from generator.wording import ENGLISH, Language


def cautious_reading(language: Language = ENGLISH) -> str:
    """How the minutes were read, to stand beside every exposure."""
    return language.say(
        "Where a step does not say how long each tool runs, the loudest and the one that shakes most are "
        "taken to run for all its minutes, all at one person: the cautious reading."
    )


def noise_lines(day: ExposureDay, language: Language = ENGLISH) -> tuple[str, ...]:
    """The points of each tool, the minutes to each value, and the tools whose noise is still open."""
    return (*_noise_doses(day, language), *_open(day.noise_open, language))


def vibration_lines(day: ExposureDay, language: Language = ENGLISH) -> tuple[str, ...]:
    """The points of each tool, the minutes to each value, and the tools whose vibration is still open."""
    return (*_vibration_doses(day, language), *_open(day.vibration_open, language))


def noise_result(day: ExposureDay, language: Language = ENGLISH) -> str:
    """The daily noise in words, or that it is not known."""
    if day.daily_noise is None:
        return language.say("not known")
    return language.say(
        "LEP,d %(level).1f dB(A), %(points).0f points", level=day.daily_noise, points=day.noise_points
    )


def vibration_result(day: ExposureDay, language: Language = ENGLISH) -> str:
    """The daily vibration in words, or that it is not known."""
    if day.daily_vibration is None:
        return language.say("not known")
    return language.say(
        "A(8) %(level).1f m/s², %(points).0f points", level=day.daily_vibration, points=day.vibration_points
    )


def noise_times(dose: Dose, language: Language = ENGLISH) -> str:
    """After how many minutes one tool alone reaches each noise value."""
    return language.say(
        "80 dB(A) after %(lower).1f min, 85 after %(upper).1f min, 87 after %(limit).1f min",
        lower=minutes_to_noise(dose.level, NOISE_VALUES["lower action"]),
        upper=minutes_to_noise(dose.level, NOISE_VALUES["upper action"]),
        limit=minutes_to_noise(dose.level, NOISE_VALUES["limit"]),
    )


def vibration_times(dose: Dose, language: Language = ENGLISH) -> str:
    """After how many minutes one tool alone reaches each vibration value."""
    return language.say(
        "2.5 m/s² after %(action).0f min, 5 m/s² after %(limit).0f min",
        action=minutes_to_vibration(dose.level, VIBRATION_VALUES["action"]),
        limit=minutes_to_vibration(dose.level, VIBRATION_VALUES["limit"]),
    )


def known_how(dose: Dose, language: Language = ENGLISH) -> str:
    """Whether somebody measured the level of a dose."""
    return language.say("assumed") if dose.assumed else language.say("from the catalogue's source")


def _noise_doses(day: ExposureDay, language: Language) -> Iterator[str]:
    for dose in day.noise:
        yield language.say(
            "%(tool)s: 100 × %(minutes).4g / 480 × 10^((%(level)g − 85) / 10) = %(points).0f points; "
            "level %(known)s",
            tool=dose.tool.label.value,
            minutes=dose.minutes,
            level=dose.level,
            points=dose.points,
            known=known_how(dose, language),
        )
        yield language.say(
            "%(tool)s alone: %(times)s", tool=dose.tool.label.value, times=noise_times(dose, language)
        )


def _vibration_doses(day: ExposureDay, language: Language) -> Iterator[str]:
    for dose in day.vibration:
        yield language.say(
            "%(tool)s: 2 × %(level)g² × %(minutes).4g / 60 = %(points).0f points; level %(known)s",
            tool=dose.tool.label.value,
            level=dose.level,
            minutes=dose.minutes,
            points=dose.points,
            known=known_how(dose, language),
        )
        yield language.say(
            "%(tool)s alone: %(times)s", tool=dose.tool.label.value, times=vibration_times(dose, language)
        )


def _open(tools: tuple[Tool, ...], language: Language) -> Iterator[str]:
    for tool in tools:
        yield language.say("%(tool)s: no figure; ask its maker. Not counted here.", tool=tool.label.value)
