"""The required sections as a document prints them: answered, not applying, or still to be asked."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from generator.documents.blocks import NotApplicable, Prose, Section
from generator.documents.exposures import worst_days
from generator.documents.task import Task
from generator.documents.tools import tool_told
from generator.model.sections import SectionAnswer
from generator.safety.exposures import exposures_reached
from generator.safety.required import rules_applied
from generator.safety.sections import SECTION, SectionRule, sections_for

NOISE, PERMITS = "noise_and_vibration", "permits"


def sections(task: Task) -> tuple[Section, ...]:
    """Every section of the edition, in the order of the table."""
    rules = sections_for("statement" if task.job else "guide", task.project.house)
    return tuple(_section(task, rule) for rule in rules)


def _section(task: Task, rule: SectionRule) -> Section:
    answers = _answers(task, rule.key)
    refused = next((answer for answer in answers if not answer.applies), None)
    asked = task.job is None and bool(rule.job) and bool(rule.question)
    return Section(
        key=f"section-{rule.key.replace('_', '-')}",
        title=f"{rule.id} {task.language.say(rule.title)}",
        text=(*task.lines(*(answer.text for answer in answers)), *_elsewhere(task, rule)),
        not_applicable=_not_applicable(task, refused) if refused else None,
        questions=(task.language.say(rule.question),) if asked else (),
    )


def _answers(task: Task, key: str) -> tuple[SectionAnswer, ...]:
    files = (task.method, task.job) if task.job else (task.method,)
    return tuple(file.sections[key] for file in files if key in file.sections)


def _not_applicable(task: Task, answer: SectionAnswer) -> NotApplicable:
    return NotApplicable(
        reason=task.told(answer.because), decided_by=answer.decided_by.value if answer.decided_by else ""
    )


def _elsewhere(task: Task, rule: SectionRule) -> tuple[Prose, ...]:
    """Where in the document the rest of the answer stands."""
    parts = (*rule.method, *(rule.job if task.job else ()))
    places = dict.fromkeys(part.split(".")[0] for part in parts if part != SECTION)
    said = tuple(_PLACES[place](task) for place in places if place in _PLACES)
    rules = _rules(task) if "hazards" in places else ()
    return (*said, *_of_the_steps(task, rule.key), *rules)


def _of_the_steps(task: Task, key: str) -> tuple[Prose, ...]:
    """What a section says by itself of the steps: the worst day's exposures, and where permits stand."""
    if key == NOISE and task.job:
        return worst_days(task)
    if key == PERMITS and any(step.permits for step in task.method.steps):
        return (task.language.say("Each permit stands at the step that waits for it."),)
    return ()


def _rules(task: Task) -> tuple[Prose, ...]:
    """The numbers of the safety rules applied, and each that is set aside with the firm's reason."""
    say = task.language.say
    reached = exposures_reached(task.ledger, task.project.catalogue.tools)
    applied = rules_applied(task.governing, task.job, task.project, exposures=reached)
    kept = ", ".join(rule.number for rule in applied if rule.set_aside is None)
    aside = (rule for rule in applied if rule.set_aside is not None)
    return (
        say("Safety rules applied: %(rules)s.", rules=kept),
        *(
            say(
                "Safety rule %(rule)s, “%(title)s”, is set aside by the firm: %(reason)s",
                rule=rule.number,
                title=rule.title,
                reason=rule.set_aside,
            )
            for rule in aside
        ),
    )


def _tools(task: Task) -> Prose:
    tools = task.project.catalogue.tools
    names = "; ".join(tool_told(tools[key.value], task.language) for key in task.method.tools)
    return task.language.say("Tools: %(tools)s.", tools=names)


_PLACES: Mapping[str, Callable[[Task], Prose]] = {
    "document": lambda task: task.language.say("Stands at the front, with its signatures and dates."),
    "site": lambda task: task.language.say("Place, dates, hours and limits stand at the front."),
    "people": lambda task: task.language.say("Names and telephone numbers stand at the front."),
    "emergency": lambda task: task.language.say("What to do in an emergency stands at the front."),
    "steps": lambda task: task.language.say(
        "The steps, their checks and hold points: [Sequence of work](#sequence)."
    ),
    "hazards": lambda task: task.language.say(
        "Every hazard with its controls: [Hazards and controls](#hazards)."
    ),
    "tools": _tools,
}
