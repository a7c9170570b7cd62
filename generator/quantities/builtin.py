"""The functions of formulas that take their inputs by place."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from generator.quantities import functions
from generator.quantities.worked import Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class Builtin:
    """A function by name. `count` is how many inputs it takes, None for any number above nought.

    One that gathers takes readings as well, and `lifts` where it gathers a value over all openings.
    """

    work: Callable[[Sequence[Worked]], Worked]
    count: int | None = None
    lifts: bool = False

    @property
    def gathers(self) -> bool:
        """True when it takes any number of inputs."""
        return self.count is None


def _one(function: Callable[[Worked], Worked]) -> Builtin:
    return Builtin(work=lambda items: function(items[0]), count=1)


def _two(function: Callable[[Worked, Worked], Worked]) -> Builtin:
    return Builtin(work=lambda items: function(items[0], items[1]), count=2)


BUILTINS: Mapping[str, Builtin] = {
    "round_up": _two(functions.round_up),
    "round_down": _two(functions.round_down),
    "least": Builtin(work=functions.least, lifts=True),
    "greatest": Builtin(work=functions.greatest, lifts=True),
    "total": Builtin(work=functions.total, lifts=True),
    "count": Builtin(work=functions.count, lifts=True),
    "mean": Builtin(work=functions.mean),
    "sqrt": _one(functions.sqrt),
    "atan": _one(functions.atan),
    "tan": _one(functions.tan),
    "sin": _one(functions.sin),
    "cos": _one(functions.cos),
}
