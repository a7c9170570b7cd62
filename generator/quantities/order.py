"""The order in which quantities are worked out: each after those it uses, no one resting on itself."""

from __future__ import annotations

from collections.abc import Mapping

from generator.formulas import Formula, Name, names_in
from generator.problems import ProblemLog


def order_of(formulas: Mapping[str, Formula], log: ProblemLog) -> tuple[str, ...]:
    """The names of `formulas` in dependency order; one that rests on itself is left out and logged.

    A cycle is reported once, at the reference that closes it, as a path.
    """
    walk = _Walk(formulas, log)
    for name in formulas:
        walk.visit(name, ())
    return tuple(walk.done)


class _Walk:
    def __init__(self, formulas: Mapping[str, Formula], log: ProblemLog) -> None:
        self._formulas, self._log = formulas, log
        self._circular: set[str] = set()
        self.done: dict[str, None] = {}

    def visit(self, name: str, path: tuple[str, ...]) -> None:
        """Put `name` after everything it uses."""
        if name in self.done or name in self._circular or name not in self._formulas:
            return
        for reference in names_in(self._formulas[name]):
            self._follow(reference, (*path, name))
        if name not in self._circular:
            self.done[name] = None

    def _follow(self, reference: Name, path: tuple[str, ...]) -> None:
        if reference.name not in path:
            self.visit(reference.name, path)
            return
        ring = path[path.index(reference.name) :]
        self._circular.update(ring)
        shown = " → ".join((*ring, reference.name))
        self._log.add("quantity-cycle", reference.span, name=reference.name, path=shown)


def needs(formulas: Mapping[str, Formula], name: str) -> frozenset[str]:
    """Every name a quantity rests on, directly or through others."""
    found: set[str] = set()
    waiting = [name]
    while waiting:
        tree = formulas.get(waiting.pop())
        used = {each.name for each in names_in(tree)} - found if tree else set()
        found |= used
        waiting.extend(used)
    return frozenset(found)
