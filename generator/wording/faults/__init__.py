"""What each fault says, what was expected, and how to mend it: one table a room, gathered here."""

from __future__ import annotations

from collections.abc import Mapping

from generator.problems import Problem
from generator.wording import ENGLISH, Language
from generator.wording.faults import (
    documents,
    drawings,
    formulas,
    model,
    prose,
    publishing,
    quantities,
    reading,
    register,
    rendering,
    safety,
)
from generator.wording.faults.fault import Fault

ROOMS: Mapping[str, Mapping[str, Fault]] = {
    "reading": reading.FAULTS,
    "formulas": formulas.FAULTS,
    "model": model.FAULTS,
    "quantities": quantities.FAULTS,
    "prose": prose.FAULTS,
    "safety": safety.FAULTS,
    "drawings": drawings.FAULTS,
    "documents": documents.FAULTS,
    "rendering": rendering.FAULTS,
    "publishing": publishing.FAULTS,
    "register": register.FAULTS,
}


def _gather() -> dict[str, Fault]:
    gathered: dict[str, Fault] = {}
    for room, faults in ROOMS.items():
        doubled = gathered.keys() & faults.keys()
        if doubled:
            raise ValueError(f"{room} words these faults a second time: {', '.join(sorted(doubled))}")
        gathered.update(faults)
    return gathered


FAULTS = _gather()


def words(problem: Problem, language: Language = ENGLISH) -> tuple[str, str]:
    """What is wrong, and what was expected with the way to mend it (empty when there is nothing to add)."""
    fault = FAULTS[problem.code]
    says = language.say(fault.says, **problem.values)
    near = problem.values.get("nearest", "")
    mend = language.say(fault.nearest, **problem.values) if near and fault.nearest else ""
    expected = language.say(fault.expected, **problem.values) if fault.expected else ""
    return says, " ".join(part for part in (expected, mend) if part)
