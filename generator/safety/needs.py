"""Whether a document holds what a rule needs: controls of its hazards, sentences of its sections."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import Final

from generator.model.hazards import RANKS, Control, Hazard
from generator.model.jobs import Job
from generator.model.method import Method
from generator.model.prose import Prose
from generator.model.rules import SAY, Need
from generator.model.sections import SectionAnswer
from generator.safety.phrases import any_is_meant_in, any_stands_in, one_line
from generator.safety.sections import SECTION, sections_in_force
from generator.safety.subject import Subject
from generator.safety.triggers import Firing

TOOLS_NAME: Final = "the tool's name"
PPE: Final = "ppe"


def unmet(firing: Firing, subject: Subject) -> Iterator[Need]:
    """What the rule needs and the document does not hold; what cannot be known yet is not asked."""
    for need in firing.rule.rule.needs:
        if not _met(need, firing, subject) and _is_known(need, firing, subject):
            yield need


def _met(need: Need, firing: Firing, subject: Subject) -> bool:
    words = words_of(need, firing)
    if need.form != SAY and any(meets(control, need) for control in controls_at(firing, subject)):
        return True
    said = (text for place in need.in_ for text in text_of(place.value, subject))
    return any(any_stands_in(words, text) for text in said)


def words_of(need: Need, firing: Firing) -> tuple[str, ...]:
    """The phrases that a need is found by, with the tool's name put in."""
    name = (firing.tool or "").replace("-", " ")
    return tuple(name if word.value == TOOLS_NAME else word.value for word in need.words)


def meets(control: Control, need: Need) -> bool:
    """True for a control of the need's rank or a stronger one that says what the need is found by."""
    fits = RANKS.index(control.rank) <= RANKS.index(need.form) and (need.form == PPE) == (control.rank == PPE)
    return fits and any_is_meant_in([word.value for word in need.words], said_by(control))


def said_by(control: Control) -> str:
    """All that a control says, on one line."""
    return one_line(" ".join(prose.typed for prose in (control.what, control.who, control.when) if prose))


def controls_at(firing: Firing, subject: Subject) -> Iterator[Control]:
    """The controls of the hazards that the rule's steps name; of all where it holds for all the work."""
    for hazard in hazards_at(firing, subject):
        yield from hazard.controls


def hazards_at(firing: Firing, subject: Subject) -> tuple[Hazard, ...]:
    """The hazards that the rule's steps name; all of them when it holds for all the work."""
    method = subject.method
    if not firing.steps:
        return method.hazards
    named = {key.value for number in firing.steps for key in method.steps[number - 1].hazards}
    return tuple(hazard for hazard in method.hazards if hazard.hazard.value in named)


def _is_known(need: Need, firing: Firing, subject: Subject) -> bool:
    """False where a part with faults, or a job that is not there, could hold what is missed."""
    if need.form != SAY and not _hazards_are_known(firing, subject):
        return False
    return all(_place_is_known(place.value, subject) for place in need.in_)


def _hazards_are_known(firing: Firing, subject: Subject) -> bool:
    method = subject.method
    steps = [method.steps[number - 1] for number in firing.steps]
    # A method without any hazard is reported once, as that; every rule would only say it again.
    whole = bool(method.hazards) and method.knows("hazards") and all(step.knows("hazards") for step in steps)
    return whole and all(hazard.knows("controls") for hazard in hazards_at(firing, subject))


def _place_is_known(place: str, subject: Subject) -> bool:
    if subject.job is None and _is_the_jobs(place, subject):
        return False
    if place == "people" and subject.job and not subject.job.people:
        return False
    files = [file for _, file in subject.files]
    if place in PLACES:
        return all(place not in file.lost for file in files)
    return all("sections" not in file.lost and place not in file.sections.lost for file in files)


def _is_the_jobs(place: str, subject: Subject) -> bool:
    if place in PLACES:
        return place not in METHODS_PLACES
    rules = sections_in_force(subject.house)
    return any(rule.key == place and SECTION in rule.job for rule in rules)


def text_of(place: str, subject: Subject) -> Iterator[str]:
    """What stands in a section, or in another part of the files, each piece on one line."""
    if place in PLACES:
        proses = (prose for _, file in subject.files for prose in PLACES[place](file))
    else:
        proses = (text for answer in subject.answers(place) for text in _answered(answer))
    yield one_line(" ".join(proses))


def _answered(answer: SectionAnswer) -> Iterator[str]:
    yield from (prose.typed for prose in (answer.text, answer.because) if prose)


def _people(file: Method | Job) -> Iterator[str]:
    for person in file.people if isinstance(file, Job) else ():
        yield f"{person.part};" if person.name and person.phone else ""


def _emergency(file: Method | Job) -> Iterator[str]:
    plan = file.emergency if isinstance(file, Job) else None
    yield from _typed(plan.call, plan.hurt, plan.fire) if plan else ()
    yield from (f"shut off: {prose}." for prose in (_typed(plan.shut_off) if plan else ()))


def _site(file: Method | Job) -> Iterator[str]:
    yield from _typed(file.site.occupied if isinstance(file, Job) and file.site else None)


def _client(file: Method | Job) -> Iterator[str]:
    yield from _typed(*(file.client.does if isinstance(file, Job) and file.client else ()))


def _stop_if(file: Method | Job) -> Iterator[str]:
    yield from (f"stop if {prose.typed}." for prose in file.stop_if)


def _steps(file: Method | Job) -> Iterator[str]:
    for step in file.steps if isinstance(file, Method) else ():
        yield from _typed(*step.do, *step.warn)


def _holds(file: Method | Job) -> Iterator[str]:
    for step in file.steps if isinstance(file, Method) else ():
        yield from _typed(step.hold.before, step.hold.sees) if step.hold else ()


def _typed(*proses: Prose | None) -> Iterator[str]:
    return (prose.typed for prose in proses if prose)


PLACES: Final[Mapping[str, Callable[[Method | Job], Iterator[str]]]] = {
    "people": _people,
    "emergency": _emergency,
    "site": _site,
    "client": _client,
    "stop_if": _stop_if,
    "steps": _steps,
    "holds": _holds,
}
METHODS_PLACES: Final = ("stop_if", "steps", "holds")
