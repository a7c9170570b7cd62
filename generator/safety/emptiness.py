"""Words that are not controls, controls that say too little, and protective equipment standing alone."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from pydantic import BaseModel, ConfigDict, Field

from generator.model.hazards import Control, Hazard
from generator.model.house import HouseRules
from generator.model.prose import Prose
from generator.problems import ProblemLog
from generator.safety.phrases import one_line, phrase
from generator.safety.subject import Subject
from generator.safety.tables import table

STRONGEST = ("eliminate", "substitute", "engineer")
WORN = re.compile(
    r"(?<!\w)(gloves?|goggles|masks?|FFP[123]|ear (defenders|plugs)|hard hats?|boots)(?!\w)", re.I
)
PUT_ON = re.compile(r"\b(wear|wears|worn|wearing|put on)\b", re.IGNORECASE)


class Avoided(BaseModel):
    """Words to avoid, and a pattern of what to write."""

    model_config = ConfigDict(frozen=True, extra="forbid")
    words: tuple[str, ...] = Field(min_length=1)
    write: str = Field(min_length=1)


class Empty(BaseModel):
    """The table of words that are not controls; `least_words` is what a control needs beside them."""

    model_config = ConfigDict(frozen=True, extra="forbid")
    least_words: int = Field(gt=0)
    better: str = Field(min_length=1)
    avoid: tuple[Avoided, ...] = Field(min_length=1)


@cache
def empty_words() -> Empty:
    """The shipped table."""
    return Empty.model_validate(table("words"))


def check_controls(subject: Subject, log: ProblemLog) -> None:
    """Report controls that are none, what is worn standing alone, and empty words anywhere in the files."""
    for hazard in subject.method.hazards:
        _check_worn_alone(hazard, log)
        for control in hazard.controls:
            _check_control(control, subject.house, log)
    for prose in _told(subject):
        _check_words(prose, subject.house, log)


def _check_worn_alone(hazard: Hazard, log: ProblemLog) -> None:
    ranks = {control.rank for control in hazard.controls}
    if ranks == {"ppe"} and hazard.knows("controls"):
        log.add("hazard-ppe-alone", hazard.hazard.span, hazard=hazard.hazard.value)


def _check_control(control: Control, house: HouseRules, log: ProblemLog) -> None:
    told = control.what.typed
    avoided = list(_avoided(told, house))
    rest = _without(told, [words for words, _ in avoided])
    least, better = empty_words().least_words, empty_words().better
    if avoided and len(rest) < least:
        words, write = avoided[0]
        log.add("control-empty", control.what.span, words=words, write=write, better=better)
    elif avoided:
        words, write = avoided[0]
        log.add("words-vague", control.what.span, warning=True, words=words, write=write)
    elif len(rest) < least:
        log.add("control-bare", control.what.span, text=told, better=better)
    if control.rank in STRONGEST and WORN.search(told) and PUT_ON.search(told):
        worn = WORN.search(told)
        name = worn.group() if worn else ""
        log.add("control-worn", control.what.span, warning=True, rank=control.rank, name=name)


def _check_words(prose: Prose, house: HouseRules, log: ProblemLog) -> None:
    for words, write in _avoided(prose.typed, house):
        log.add("words-vague", prose.span, warning=True, words=words, write=write)
        return


def _told(subject: Subject) -> Iterator[Prose]:
    """What tells people what to do outside the table of hazards."""
    for step in subject.method.steps:
        yield from (*step.do, *step.warn)
    for _, file in subject.files:
        yield from file.stop_if
        for answer in file.sections.values():
            yield from (prose for prose in (answer.text, answer.because) if prose)


def _avoided(told: str, house: HouseRules) -> Iterator[tuple[str, str]]:
    """The words found, as they stand, each with what to write."""
    line = one_line(told)
    for words, write in _table(house):
        found = phrase(words).parts[0].search(line)
        if found:
            yield found.group(), write


def _table(house: HouseRules) -> Iterator[tuple[str, str]]:
    yield from ((own.avoid.value, own.write.typed) for own in house.words)
    yield from ((words, each.write) for each in empty_words().avoid for words in each.words)


def _without(told: str, avoided: list[str]) -> list[str]:
    """The words that are left, values put in counting as one."""
    rest = re.sub(r"\{[^}]*\}", "value", told)
    for words in avoided:
        rest = rest.replace(words, " ")
    return re.findall(r"[A-Za-z0-9][\w'-]*", rest)
