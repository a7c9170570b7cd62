"""A method held against itself and the catalogue: every name it uses must exist."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator
from typing import Final, TypeAlias

from generator.model.border import Listed
from generator.model.catalogue import Catalogue
from generator.model.method import Method
from generator.model.scalars import Word
from generator.problems import ProblemLog, nearest

Check: TypeAlias = Callable[[Method, Catalogue, ProblemLog], None]


def check_known(words: Iterable[Word], known: Collection[str], code: str, log: ProblemLog) -> None:
    """Log each word that is not among the known names, with the nearest that is."""
    for word in words:
        if word.value not in known:
            log.add(code, word.span, name=word.value, nearest=nearest(word.value, known))


def is_whole(parts: object) -> bool:
    """False when a list lost a part to a fault, so that the absence of a name in it proves nothing."""
    return not isinstance(parts, Listed) or parts.whole


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
    used = (tool for step in method.steps for tool in step.uses)
    if is_whole(method.tools):
        check_known(used, listed, "step-tool", log)


def _materials_used(method: Method, catalogue: Catalogue, log: ProblemLog) -> None:
    roles = (role for step in method.steps for role in step.materials)
    check_known(roles, method.materials.names, "role-unknown", log)


def _hazards_met(method: Method, catalogue: Catalogue, log: ProblemLog) -> None:
    declared = {hazard.hazard.value for hazard in method.hazards}
    if is_whole(method.hazards):
        met = (hazard for step in method.steps for hazard in step.hazards)
        check_known(met, declared, "hazard-unknown", log)


def _hazards_once(method: Method, catalogue: Catalogue, log: ProblemLog) -> None:
    seen: dict[str, int] = {}
    for hazard in method.hazards:
        key = hazard.hazard
        if key.value in seen:
            log.add("hazard-doubled", key.span, name=key.value, first=seen[key.value])
        seen.setdefault(key.value, key.span.line)


def _criteria(method: Method, catalogue: Catalogue, log: ProblemLog) -> None:
    check_known(_criteria_named(method), method.criteria.names, "criterion-unknown", log)


def _criteria_named(method: Method) -> Iterator[Word]:
    for step in method.steps:
        yield from step.evidence.criteria if step.evidence else ()
    for question in method.questions:
        yield from question.criteria


def _question_steps(method: Method, catalogue: Catalogue, log: ProblemLog) -> None:
    for question in method.questions if is_whole(method.steps) else ():
        if question.step is not None and not 1 <= question.step <= len(method.steps):
            log.add("question-step", question.step.span, step=question.step, count=len(method.steps))


def _choices(method: Method, catalogue: Catalogue, log: ProblemLog) -> None:
    for name in method.choices:
        if name not in method.quantities.names:
            near = nearest(name, method.quantities.names)
            log.add("choice-quantity", method.choices.place(name), name=name, nearest=near)


def _cutting(method: Method, catalogue: Catalogue, log: ProblemLog) -> None:
    plans = method.cutting.values()
    check_known((plan.of for plan in plans), method.materials.names, "role-unknown", log)
    _check_values((plan.pieces for plan in plans), method.quantities.names, log)


def _values_shown(method: Method, catalogue: Catalogue, log: ProblemLog) -> None:
    names = method.sizes.names | method.quantities.names
    expected = (check.expect for step in method.steps for check in step.check if check.expect)
    _check_values(expected, names, log)
    _check_values((column.show for column in method.schedule), names | method.materials.names, log)
    drawings = (step.drawing for step in method.steps if step.drawing)
    bound = (value for drawing in drawings for value in drawing.with_.values())
    _check_values(bound, names | method.materials.names, log)


def _check_values(words: Iterable[Word], names: Collection[str], log: ProblemLog) -> None:
    for word in words:
        name = word.value.partition(".")[0]
        if name not in names:
            log.add("value-unknown", word.span, name=name, nearest=nearest(name, names))


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
    _hazards_once,
    _criteria,
    _question_steps,
    _choices,
    _cutting,
    _values_shown,
    _names_once,
)
