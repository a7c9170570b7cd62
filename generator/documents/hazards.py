"""The hazards of the work, their controls strongest first, and what remains."""

from __future__ import annotations

from generator.documents.blocks import Control, ControlKind, Hazard, HazardTable, HazardTouched
from generator.documents.task import Task, sentence
from generator.model.hazards import RANKS
from generator.model.hazards import Control as Rule
from generator.model.hazards import Hazard as HazardRule
from generator.model.scalars import Word
from generator.wording.marks import parted, without_end


def hazard_table(task: Task) -> HazardTable:
    """All hazards of the method with the steps that meet them."""
    say = task.language.say
    return HazardTable(
        key="hazards",
        title=say("Hazards and controls"),
        intro=say("Controls stand strongest first. What remains is judged with all of them in place."),
        hazards=tuple(_hazard(task, number, rule) for number, rule in enumerate(task.method.hazards, 1)),
        note=_note(task),
    )


def touched(task: Task, keys: frozenset[str]) -> tuple[HazardTouched, ...]:
    """The hazards a step meets, by their numbers in the table."""
    return tuple(
        HazardTouched(number=number, name=name_of(task, rule))
        for number, rule in enumerate(task.method.hazards, 1)
        if rule.hazard.value in keys
    )


def name_of(task: Task, rule: HazardRule) -> str:
    """The hazard as it is printed."""
    return rule.title.value if rule.title else task.language.quote(rule.hazard.value.replace("-", " "))


def _hazard(task: Task, number: int, rule: HazardRule) -> Hazard:
    remains, reason = parted(task.told(rule.remains).replace("\n", " "), ". ")
    harms = ", ".join(task.lines(*rule.harms))
    how = task.told(rule.how)
    return Hazard(
        number=number,
        name=name_of(task, rule),
        harms=f"{sentence(harms)}. {how}".strip(),
        steps=task.method.steps_of(rule.hazard.value),
        controls=tuple(_control(task, control) for control in sorted(rule.controls, key=_strength)),
        remains=without_end(remains, "."),
        reason=reason,
        rating=_rating(task, rule),
    )


def _rating(task: Task, rule: HazardRule) -> str:
    """The score before and after with its band, where the firm rates."""
    scales, rated = task.project.house.rating, rule.rated
    if scales is None or rated is None:
        return ""
    before, after = rated.before.score, rated.after.score
    return task.language.say(
        "Rated %(before)s (%(was)s) before, %(after)s (%(is)s) after.",
        before=before,
        was=scales.band(before).name.value,
        after=after,
        **{"is": scales.band(after).name.value},
    )


def _note(task: Task) -> str:
    """The firm's scales and bands, and that they are its policy; nothing where no hazard is rated."""
    scales, say = task.project.house.rating, task.language.say
    if scales is None or not any(hazard.rated for hazard in task.method.hazards):
        return ""
    bands = "; ".join(f"{band.name.value} from {band.from_}: {task.told(band.do)}" for band in scales.bands)
    return say(
        "Ratings are likelihood times severity by this firm's policy. Likelihood: %(likelihood)s. Severity: "
        "%(severity)s. Bands: %(bands)s A rating makes no document pass and no work safe.",
        likelihood=_numbered(scales.likelihood),
        severity=_numbered(scales.severity),
        bands=bands,
    )


def _numbered(words: tuple[Word, ...]) -> str:
    return ", ".join(f"{number} {word.value}" for number, word in enumerate(words, 1))


def _strength(rule: Rule) -> int:
    return RANKS.index(rule.rank)


def _control(task: Task, rule: Rule) -> Control:
    who, when = task.told(rule.who), task.told(rule.when)
    return Control(
        kind=ControlKind(rule.rank), text=task.told(rule.what), who=", ".join(filter(None, (who, when)))
    )
