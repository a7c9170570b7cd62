"""What remains once the controls are in place: given, with a reason, and not the same of every hazard."""

from __future__ import annotations

from generator.model.hazards import Hazard
from generator.model.method import Method
from generator.problems import ProblemLog
from generator.safety.reasons import plain, says_nothing

FEWEST_ALIKE = 3


def check_remains(method: Method, log: ProblemLog) -> None:
    """Report hazards whose remaining risk is not given, or given without a reason or in words copied."""
    for hazard in method.hazards:
        _check_one(hazard, log)
    given = [plain(hazard.remains.typed) for hazard in method.hazards if hazard.remains]
    if len(given) >= FEWEST_ALIKE and len(set(given)) == 1:
        log.add("remains-all-alike", method.places["hazards"], warning=True, count=len(given))


def _check_one(hazard: Hazard, log: ProblemLog) -> None:
    if hazard.remains is None and hazard.knows("remains"):
        log.add("remains-missing", hazard.hazard.span, hazard=hazard.hazard.value)
    elif hazard.remains and says_nothing(hazard.remains):
        log.add(
            "remains-without-reason",
            hazard.remains.span,
            hazard=hazard.hazard.value,
            text=hazard.remains.typed,
        )
