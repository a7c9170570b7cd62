"""The steps in order: who does what and what is checked, in a guide also why and what to keep."""

from __future__ import annotations

from generator.documents.blocks import Check, CheckBox, Criterion, Evidence, Sequence, Step
from generator.documents.expected import expected_at
from generator.documents.figures import step_figures
from generator.documents.hazards import touched
from generator.documents.holds import hold_point, numbered
from generator.documents.task import Task, duration
from generator.model.jobs import Permit
from generator.model.steps import Check as CheckRule
from generator.model.steps import Step as StepRule
from generator.units import print_value


def sequence(task: Task) -> Sequence:
    """All steps. With a job they name its openings; without one they are a learner's."""
    say = task.language.say
    return Sequence(
        key="sequence",
        title=say("Sequence of work"),
        intro=task.told(task.method.summary).partition("\n\n")[2] if task.job else "",
        steps=tuple(_step(task, number, rule) for number, rule in enumerate(task.method.steps, 1)),
    )


def _step(task: Task, number: int, rule: StepRule) -> Step:
    held = next((held for held in numbered(task) if held.step == number), None)
    learner = task.job is None
    return Step(
        number=number,
        title=rule.title.value,
        who=task.told(rule.who),
        time=_time(task, rule),
        tools=(*_tools(task, rule), *_materials(task, rule)),
        hazards=touched(task, frozenset(key.value for key in rule.hazards)),
        warnings=(*_permits(task, rule), *task.lines(*rule.warn)),
        actions=task.lines(*rule.do),
        why=task.told(rule.why) if learner else "",
        figures=step_figures(task, number, rule),
        checks=tuple(check(task, f"{number}.{place}", one) for place, one in enumerate(rule.check, 1)),
        hold=hold_point(task, held) if held else None,
        evidence=_evidence(task, rule) if learner else None,
        mistakes=task.lines(*rule.mistakes) if learner else (),
        question=_question(task, number) if learner else "",
    )


def _permits(task: Task, rule: StepRule) -> tuple[str, ...]:
    """Each permit the step waits for, with who gives it here; a guide says to ask."""
    given = {each.permit.value: each for each in (task.job.permits if task.job else ())}
    return tuple(_permit(task, word.value, given.get(word.value)) for word in rule.permits)


def _permit(task: Task, permit: str, given: Permit | None) -> str:
    say = task.language.say
    if given is None:
        return say("Permit for %(permit)s: ask who gives it, and wait for it.", permit=permit)
    return say(
        "Permit for %(permit)s, %(number)s: given and taken back by %(by)s, %(until)s",
        permit=permit,
        number=given.number.value if given.number else say("number not given yet"),
        by=given.given_by.value,
        until=task.told(given.until),
    )


def _time(task: Task, rule: StepRule) -> str:
    say = task.language.say
    work = duration(int(rule.minutes), task.language)
    if rule.wait_minutes:
        return say(
            "%(work)s, then wait %(wait)s", work=work, wait=duration(int(rule.wait_minutes), task.language)
        )
    return work


def _tools(task: Task, rule: StepRule) -> tuple[str, ...]:
    return tuple(task.project.catalogue.tools[key.value].label.value for key in rule.uses)


def _materials(task: Task, rule: StepRule) -> tuple[str, ...]:
    return tuple(task.ledger.materials[role.value].label.value for role in rule.materials)


def check(task: Task, number: str, rule: CheckRule) -> Check:
    """A check with a box for each opening, the expected figure in it where the method names one."""
    within = print_value(rule.within.value).text() if rule.within else ""
    return Check(
        number=number,
        what=task.told(rule.what),
        tolerance=task.language.say("within %(limit)s", limit=within) if within else "",
        how=task.told(rule.how),
        unit=print_value(rule.within.value).unit if rule.within else "",
        boxes=tuple(
            CheckBox(opening=opening.mark, expected=expected_at(task, rule, opening))
            for opening in task.surveyed
        ),
    )


def _evidence(task: Task, rule: StepRule) -> Evidence | None:
    if rule.evidence is None:
        return None
    codes = (code.value for code in rule.evidence.criteria)
    words = task.method.criteria
    return Evidence(
        ask=task.told(rule.evidence.ask),
        criteria=tuple(Criterion(code=code, text=task.told(words.get(code))) for code in codes),
    )


def _question(task: Task, number: int) -> str:
    return next((task.told(one.ask) for one in task.method.questions if one.step == number), "")
