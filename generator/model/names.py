"""A method held against itself and the catalogue: every name it uses must exist."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from typing import Final, TypeAlias

from generator.model.catalogue import Catalogue
from generator.model.method import Method
from generator.model.scalars import Word
from generator.model.steps import Step
from generator.model.tables import Table
from generator.problems import ProblemLog, nearest

Check: TypeAlias = Callable[[Method, Catalogue, ProblemLog], None]


def check_known(words: Iterable[Word], known: Collection[str], code: str, log: ProblemLog) -> None:
    """Log each word that is not among the known names, with the nearest that is."""
    for word in words:
        if word.value not in known:
            log.add(code, word.span, name=word.value, nearest=nearest(word.value, known))


def check_method(method: Method, catalogue: Catalogue, log: ProblemLog) -> None:
    """Log every name in a method that nothing answers to."""
    for check in CHECKS:
        check(method, catalogue, log)


def _materials(method: Method, catalogue: Catalogue, log: ProblemLog) -> None:
    check_known(method.materials.values(), catalogue.material_keys, "material-unknown", log)


def _tools(method: Method, catalogue: Catalogue, log: ProblemLog) -> None:
    check_known(method.tools, catalogue.tool_keys, "tool-unknown", log)


def _tools_used(method: Method, catalogue: Catalogue, log: ProblemLog) -> None:
    listed = {tool.value for tool in method.tools}
    # A tool used by its right name is not missing where the list has it misspelt, which is told there.
    listed |= {nearest(name, catalogue.tool_keys) for name in listed - catalogue.tool_keys}
    if method.knows("tools"):
        check_known((tool for step in method.steps for tool in step.uses), listed, "step-tool", log)


def _materials_used(method: Method, catalogue: Catalogue, log: ProblemLog) -> None:
    if method.knows("materials"):
        roles = [role for step in method.steps for role in step.materials]
        cut = [plan.of for plan in method.cutting.values()]
        check_known(roles + cut, method.materials.names, "role-unknown", log)


def _hazards_met(method: Method, catalogue: Catalogue, log: ProblemLog) -> None:
    declared = {hazard.hazard.value for hazard in method.hazards}
    if method.hazards and method.knows("hazards"):
        met = (hazard for step in method.steps for hazard in step.hazards)
        check_known(met, declared, "hazard-unknown", log)


def _activities(method: Method, catalogue: Catalogue, log: ProblemLog) -> None:
    named = (activity for step in method.steps for activity in step.activities)
    check_known(named, catalogue.activity_keys, "activity-unknown", log)


def _places(method: Method, catalogue: Catalogue, log: ProblemLog) -> None:
    named = (place for step in method.steps for place in step.where)
    check_known(named, catalogue.place_keys, "place-unknown", log)


def _hazards_once(method: Method, catalogue: Catalogue, log: ProblemLog) -> None:
    seen: dict[str, int] = {}
    for hazard in method.hazards:
        key = hazard.hazard
        if key.value in seen:
            log.add("hazard-doubled", key.span, name=key.value, first=seen[key.value])
        seen.setdefault(key.value, key.span.line)


def _criteria(method: Method, catalogue: Catalogue, log: ProblemLog) -> None:
    if method.knows("criteria"):
        check_known(_criteria_named(method), method.criteria.names, "criterion-unknown", log)


def _criteria_named(method: Method) -> Iterator[Word]:
    for step in method.steps:
        yield from step.evidence.criteria if step.evidence else ()
    for question in method.questions:
        yield from question.criteria


def _steps_named(method: Method, catalogue: Catalogue, log: ProblemLog) -> None:
    asked = [question.step for question in method.questions if question.step is not None]
    carded = method.card.steps if method.card else ()
    for step in (*asked, *carded) if method.knows("steps") else ():
        if not 1 <= step <= len(method.steps):
            log.add("step-unknown", step.span, step=step, count=len(method.steps))


def _programme(method: Method, catalogue: Catalogue, log: ProblemLog) -> None:
    """A step comes after earlier ones only, so that the order of the page is an order of work."""
    for number, step in enumerate(method.steps, 1) if method.knows("steps") else ():
        for before in step.after or ():
            if not 1 <= before < number:
                log.add("step-after", before.span, step=before, number=number)
        if step.crew == 0:
            log.add("step-no-crew", step.crew.span)
        _tools_run(step, log)


def _tools_run(step: Step, log: ProblemLog) -> None:
    """One pair of hands: the tools of a step run no longer, all told, than the step takes."""
    for name in step.runs:
        if name not in {key.value for key in step.uses}:
            log.add("step-runs-tool", step.runs.place(name), name=name)
    ran = sum(int(minutes) for minutes in step.runs.values())
    if ran > step.minutes * int(step.crew or 1):
        log.add("step-runs-long", step.places.get("runs", step.span), ran=ran, minutes=step.minutes)


def _choices(method: Method, catalogue: Catalogue, log: ProblemLog) -> None:
    check_choices(method.choices, method, log)


def check_choices(choices: Table[Word], method: Method, log: ProblemLog) -> None:
    """Log each choice of a way for a quantity that the method does not have."""
    for name in choices if method.knows("quantities") else ():
        if name not in method.quantities.names:
            near = nearest(name, method.quantities.names)
            log.add("choice-quantity", choices.place(name), name=name, nearest=near)


def _values_used(method: Method, catalogue: Catalogue, log: ProblemLog) -> None:
    plans = method.cutting.values()
    pieces = [*(plan.pieces for plan in plans), *(plan.end_trim for plan in plans if plan.end_trim)]
    expected = (check.expect for step in method.steps for check in step.check if check.expect)
    drawings = (step.drawing for step in method.steps if step.drawing)
    bound = (value for drawing in drawings for value in drawing.named)
    _check_values((*pieces, *expected), ("sizes", "quantities"), method, log)
    _check_values((*bound, *method.shown()), ("sizes", "quantities", "materials"), method, log)


def _check_values(words: Iterable[Word], tables: Sequence[str], method: Method, log: ProblemLog) -> None:
    if all(method.knows(table) for table in tables):
        names = {name for table in tables for name in getattr(method, table).names}
        heads = (Word(value=word.value.partition(".")[0], span=word.span) for word in words)
        check_known(heads, names, "value-unknown", log)


def _names_once(method: Method, catalogue: Catalogue, log: ProblemLog) -> None:
    for name in method.sizes.names & method.quantities.names:
        first = method.sizes.place(name).line
        log.add("name-doubled", method.quantities.place(name), name=name, first=first)


CHECKS: Final[tuple[Check, ...]] = (
    _materials,
    _tools,
    _tools_used,
    _materials_used,
    _hazards_met,
    _activities,
    _places,
    _hazards_once,
    _criteria,
    _steps_named,
    _programme,
    _choices,
    _values_used,
    _names_once,
)
