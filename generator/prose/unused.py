"""Sizes that a method asks for and nothing uses."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from generator.formulas import names_in
from generator.model.method import Method
from generator.problems import ProblemLog
from generator.prose.walk import prose_in


def check_unused(method: Method, drawn: Collection[str], log: ProblemLog) -> None:
    """Warn of each size that no formula, sentence, table, check or drawing uses.

    `drawn` are the parameters that the method's drawings bind by name.
    """
    used = {*drawn, *_used(method)}
    for name in method.sizes:
        if name not in used:
            log.add("size-unused", method.sizes.place(name), warning=True, name=name)


def _used(method: Method) -> Iterator[str]:
    for rule in method.quantities.values():
        yield from (name.name for name in names_in(rule.work))
    for prose in prose_in(method):
        yield from (reference.name for reference in prose.references)
    for dotted in _bound(method):
        yield dotted.partition(".")[0]


def _bound(method: Method) -> Iterator[str]:
    yield from (word.value for word in method.shown())
    for plan in method.cutting.values():
        yield from (word.value for word in (plan.pieces, plan.end_trim) if word)
    for step in method.steps:
        yield from (check.expect.value for check in step.check if check.expect)
        yield from (word.value for word in step.drawing.named) if step.drawing else ()
