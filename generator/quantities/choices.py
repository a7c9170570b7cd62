"""What was chosen where ways are compared, and which refusals are therefore faults."""

from __future__ import annotations

from collections.abc import Iterable

from generator.model.jobs import Job
from generator.model.method import Method
from generator.model.scalars import Word
from generator.problems import ProblemLog, Span, nearest
from generator.quantities.calculator import Result
from generator.quantities.families.ways import Comparison, Way
from generator.quantities.order import needs
from generator.quantities.plan import Plan
from generator.quantities.results import Findings, finding_words
from generator.wording import ENGLISH
from generator.wording.results import WAYS


def chosen_way(name: str, method: Method, job: Job | None) -> Word | None:
    """The way chosen for a comparison: the job's choice before the method's."""
    own = job.choices.get(name) if job else None
    return own or method.choices.get(name)


def check_choices(method: Method, job: Job, log: ProblemLog) -> None:
    """Warn of each choice of a job that is not the method's own, since the steps were written for that."""
    for name, chosen in job.choices.items():
        own = method.choices.get(name)
        if own and own.value != chosen.value and {own.value, chosen.value} <= WAYS.keys():
            ways = {"chosen": ENGLISH.say(WAYS[chosen.value]), "own": ENGLISH.say(WAYS[own.value])}
            log.add("choice-beside-steps", chosen.span, warning=True, **ways)


def choose(name: str, result: Result, choice: Word, where: str, log: ProblemLog) -> Result:
    """The comparison with its chosen way marked; a way that is not offered, or is refused, is logged."""
    if not isinstance(result, Comparison):
        log.add("choice-not-comparison", choice.span, name=name)
        return result
    codes = [way.code for way in result.ways]
    if choice.value not in codes:
        near, known = nearest(choice.value, codes), ", ".join(codes)
        log.add("choice-way-unknown", choice.span, name=name, way=choice.value, known=known, nearest=near)
        return result
    chosen = result.choosing(choice.value)
    _tell_refusals(chosen, choice, where, log)
    return chosen


def _tell_refusals(chosen: Comparison, choice: Word, where: str, log: ProblemLog) -> None:
    """Log each refusal of the chosen way with the ways that remain at the same place."""
    way = ENGLISH.say(WAYS[choice.value])
    left = ", ".join(ENGLISH.say(WAYS[one.code]) for one in chosen.ways if not one.refused)
    for finding in chosen.refused:
        because = finding_words(finding, space=" ")
        if left:
            log.add("way-refused", choice.span, where=where, way=way, because=because, left=left)
        else:
            log.add("no-way-left", choice.span, where=where, way=way, because=because)


def options(plan: Plan, job: Job | None) -> frozenset[str]:
    """Quantities whose refusals a choice decides on: all that a comparison with a choice rests on."""
    compared = (name for name in plan.formulas if chosen_way(name, plan.method, job))
    return frozenset(used for name in compared for used in needs(plan.formulas, name))


def report(result: Result, label: str, where: str, span: Span, log: ProblemLog, *, optional: bool) -> None:
    """Log a record's refusals, unless a choice decides on them, and its remarks as warnings."""
    if isinstance(result, Way | Comparison):
        return
    for finding in _findings(result, "refused") if not optional else ():
        log.add("result-refused", span, where=where, label=label, because=finding_words(finding, space=" "))
    for finding in _findings(result, "remarks"):
        remark = finding_words(finding, space=" ")
        log.add("result-remark", span, warning=True, where=where, label=label, remark=remark)


def _findings(result: Result, name: str) -> Findings:
    found: Iterable[object] = getattr(result, name, ())
    return tuple(found)  # type: ignore[arg-type]
