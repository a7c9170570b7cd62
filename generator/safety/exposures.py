"""What the exposures worked out come to, in the names that rules go by, and where each comes from."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Final

from generator.model.catalogue import Tool
from generator.problems import Span
from generator.quantities.exposure import NOISE_VALUES, VIBRATION_VALUES
from generator.quantities.exposure_days import Dose, ExposureDay, exposure_days, loudest, most_shaken
from generator.quantities.ledger import Ledger
from generator.quantities.lifts import lifts_of

LIFT: Final = "lift-over-filter"


def exposures_reached(ledger: Ledger, tools: Mapping[str, Tool]) -> Mapping[str, Span]:
    """What a ledger's work comes to that a rule asks about, each with the place it comes from.

    `tools` are the catalogue's. Of noise and of vibration it is the highest value reached on any day of a
    job; a method alone has no days. A lift counts for both.
    """
    days = exposure_days(ledger, tools) if ledger.job else ()
    return dict((*_noise(days, ledger), *_vibration(days, ledger), *_lifts(ledger)))


def noise_reached(level: float) -> str:
    """The name of the highest value a daily noise reaches, "" for none: the limit is reached above it."""
    if level > NOISE_VALUES["limit"]:
        return "noise-limit"
    if level >= NOISE_VALUES["upper action"]:
        return "noise-upper-action"
    return "noise-lower-action" if level >= NOISE_VALUES["lower action"] else ""


def vibration_reached(level: float) -> str:
    """The name of the highest value an A(8) reaches, "" for none."""
    if level >= VIBRATION_VALUES["limit"]:
        return "vibration-limit"
    return "vibration-action" if level >= VIBRATION_VALUES["action"] else ""


def _noise(days: tuple[ExposureDay, ...], ledger: Ledger) -> Iterator[tuple[str, Span]]:
    worst = loudest(days)
    if worst and (name := noise_reached(worst.daily_noise or 0.0)):
        yield name, _place(worst.noise, ledger)


def _vibration(days: tuple[ExposureDay, ...], ledger: Ledger) -> Iterator[tuple[str, Span]]:
    worst = most_shaken(days)
    if worst and (name := vibration_reached(worst.daily_vibration or 0.0)):
        yield name, _place(worst.vibration, ledger)


def _place(doses: tuple[Dose, ...], ledger: Ledger) -> Span:
    """Where the method first uses the tool that adds most."""
    most = max(doses, key=lambda dose: dose.points).tool.name.value
    return next(key.span for step in ledger.method.steps for key in step.uses if key.value == most)


def _lifts(ledger: Ledger) -> Iterator[tuple[str, Span]]:
    over = [lifted for lifted in lifts_of(ledger) if lifted.over]
    if over:
        yield LIFT, over[0].lift.what.span
