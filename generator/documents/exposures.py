"""What the tools of a job come to in a day, noise and hand-arm vibration, with what is assumed or open."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from generator.documents.blocks import Block, Column, Figure, Prose, Table, Text
from generator.documents.burdens import burdens
from generator.documents.drawing_files import in_files
from generator.documents.task import Task
from generator.drawings.dosed import DoseMark, DosePart
from generator.drawings.doses import MOST_PARTS
from generator.drawings.orders import PAPER, PHONE, Bound, Order
from generator.model.catalogue import Tool
from generator.quantities.exposure import (
    NOISE_VALUES,
    VIBRATION_VALUES,
    WORKING_DAY,
    noise_points,
    vibration_points,
)
from generator.quantities.exposure_days import (
    Dose,
    ExposureDay,
    exposure_days,
    loudest,
    most_shaken,
    weeks_of,
)
from generator.quantities.exposure_workings import (
    cautious_reading,
    known_how,
    noise_result,
    noise_times,
    vibration_result,
    vibration_times,
)
from generator.quantities.ledger import Ledger
from generator.wording import ENGLISH, Language

NAME, KEY = "day_dose", "day-dose"
Row = tuple[str, ...]


def exposures(task: Task) -> tuple[Block, ...]:
    """What each tool adds each day, the worst day drawn, the lifts and the dust; only what there is."""
    days = exposure_days(task.ledger, task.project.catalogue.tools)
    told = (
        (Text(text=(*_worst_told(days, task.language), *_weeks(task, days), *_left_open(task, days))),)
        if days
        else ()
    )
    table = (_table(task, days),) if any(day.noise or day.vibration for day in days) else ()
    return (*told, *table, *_figure(task), *burdens(task))


def worst_days(task: Task) -> tuple[Prose, ...]:
    """The worst day's noise and vibration in a sentence each; nothing where no figure is known."""
    return tuple(_worst_told(exposure_days(task.ledger, task.project.catalogue.tools), task.language))


def _worst_told(days: tuple[ExposureDay, ...], language: Language) -> Iterator[Prose]:
    if loud := loudest(days):
        yield language.say(
            "**Noise**, worked out for whoever is nearest to every tool, protectors left out: %(result)s on "
            "day %(day)d. Lower action value 80 dB(A), upper 85, limit 87.",
            result=noise_result(loud, language),
            day=loud.number,
        )
    if shaken := most_shaken(days):
        yield language.say(
            "**Hand-arm vibration**, all at one pair of hands: %(result)s on day %(day)d. Action value "
            "2.5 m/s², limit 5.",
            result=vibration_result(shaken, language),
            day=shaken.number,
        )


def dose_orders(ledger: Ledger, tools: Mapping[str, Tool]) -> tuple[Order, ...]:
    """The drawings of the worst day's dose, for paper and for a phone; none where no figure is known."""
    days = exposure_days(ledger, tools)
    worst = loudest(days) or most_shaken(days)
    if worst is None:
        return ()
    values = tuple(sorted(_values(worst, ENGLISH).items()))
    return tuple(Order(name=NAME, width=width, values=values) for width in (PAPER, PHONE))


def _values(day: ExposureDay, language: Language) -> Mapping[str, Bound]:
    say = language.say
    values: dict[str, Bound] = {"day": say("day %(day)d", day=day.number)}
    if day.noise_points:
        values |= {
            "noise": _parts(day.noise, language),
            "noise_marks": _noise_marks(language),
            "noise_total": say("Noise: %(result)s.", result=noise_result(day, language)),
        }
    if day.vibration_points:
        values |= {
            "vibration": _parts(day.vibration, language),
            "vibration_marks": _vibration_marks(language),
            "vibration_total": say("Vibration: %(result)s.", result=vibration_result(day, language)),
        }
    return values


def _parts(doses: tuple[Dose, ...], language: Language) -> tuple[DosePart, ...]:
    """The doses, greatest first; what is more than can be drawn as one part together."""
    ranked = sorted((dose for dose in doses if dose.points), key=lambda dose: -dose.points)
    alone = ranked if len(ranked) <= MOST_PARTS else ranked[: MOST_PARTS - 1]
    parts = [DosePart(points=dose.points, text=_said(dose, language)) for dose in alone]
    rest = sum(dose.points for dose in ranked[len(alone) :])
    if rest:
        parts.append(DosePart(points=rest, text=language.say("all other tools: %(points).0f", points=rest)))
    return tuple(parts)


def _said(dose: Dose, language: Language) -> str:
    return language.say(
        "%(tool)s, %(minutes).4g min: %(points).0f points, %(known)s",
        tool=dose.tool.label.value,
        minutes=dose.minutes,
        points=dose.points,
        known=known_how(dose, language),
    )


def _noise_marks(language: Language) -> tuple[DoseMark, ...]:
    say = language.say
    words = {
        "lower action": say("80 dB(A), lower action value"),
        "upper action": say("85 dB(A), upper action value"),
        "limit": say("87 dB(A), limit"),
    }
    return tuple(
        DoseMark(points=noise_points(value, WORKING_DAY), text=words[name])
        for name, value in NOISE_VALUES.items()
    )


def _vibration_marks(language: Language) -> tuple[DoseMark, ...]:
    say = language.say
    words = {"action": say("2.5 m/s², action value"), "limit": say("5 m/s², limit")}
    return tuple(
        DoseMark(points=vibration_points(value, WORKING_DAY), text=words[name])
        for name, value in VIBRATION_VALUES.items()
    )


def _figure(task: Task) -> tuple[Figure, ...]:
    orders = dose_orders(task.ledger, task.project.catalogue.tools)
    if not orders:
        return ()
    paper, phone = (task.pictures[order] for order in orders)
    return (in_files(task, Figure(key=KEY, caption=paper.title, picture=paper, phone=phone), KEY),)


def _table(task: Task, days: tuple[ExposureDay, ...]) -> Table:
    say = task.language.say
    return Table(
        key="exposures",
        title=say("Noise and hand-arm vibration by day"),
        intro=cautious_reading(task.language),
        columns=(
            Column(head=say("Day"), width=6.0),
            Column(head=say("Tool"), width=24.0),
            Column(head=say("Minutes"), align="right", width=10.0),
            Column(head=say("Level"), width=22.0),
            Column(head=say("Points"), align="right", width=8.0),
            Column(head=say("That tool alone reaches")),
        ),
        rows=tuple(row for day in days for row in (*_noise(task, day), *_vibration(task, day))),
        note=say(
            "100 noise points make 85 dB(A) and 100 vibration points 2.5 m/s², each over eight hours: "
            "100 × minutes ÷ 480 × 10^((level − 85) ÷ 10), and 2 × level² × hours. An estimate and no "
            "measurement; peaks of sound are not in it."
        ),
    )


def _noise(task: Task, day: ExposureDay) -> Iterator[Row]:
    say = task.language.say
    for dose in day.noise:
        level = say("%(level)g dB(A), %(known)s", level=dose.level, known=known_how(dose, task.language))
        yield _row(day, dose, level, noise_times(dose, task.language))
    if day.noise:
        yield str(day.number), say("Noise of all"), "", noise_result(day, task.language), "", ""


def _vibration(task: Task, day: ExposureDay) -> Iterator[Row]:
    say = task.language.say
    for dose in day.vibration:
        level = say("%(level)g m/s², %(known)s", level=dose.level, known=known_how(dose, task.language))
        yield _row(day, dose, level, vibration_times(dose, task.language))
    if day.vibration:
        result = vibration_result(day, task.language)
        yield str(day.number), say("Vibration of all"), "", result, "", ""


def _row(day: ExposureDay, dose: Dose, level: str, times: str) -> Row:
    return str(day.number), dose.tool.label.value, f"{dose.minutes:.4g}", level, f"{dose.points:.0f}", times


def _weeks(task: Task, days: tuple[ExposureDay, ...]) -> Iterator[str]:
    for week, level in weeks_of(days).items():
        yield task.language.say(
            "Noise of week %(week)d: LEP,w %(level).1f dB(A), its days' energy over five days.",
            week=week,
            level=level,
        )


def _left_open(task: Task, days: tuple[ExposureDay, ...]) -> Iterator[str]:
    say = task.language.say
    if noise := _labels(tool for day in days for tool in day.noise_open):
        yield say("Noise not known and not counted; ask the makers before the start: %(tools)s.", tools=noise)
    if shaking := _labels(tool for day in days for tool in day.vibration_open):
        yield say(
            "Vibration not known and not counted; ask the makers before the start: %(tools)s.", tools=shaking
        )


def _labels(tools: Iterator[Tool]) -> str:
    return "; ".join(dict.fromkeys(tool.label.value for tool in tools))
