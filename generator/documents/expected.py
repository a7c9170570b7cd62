"""The figure a check expects at one opening."""

from __future__ import annotations

from generator.documents.task import Task
from generator.model.steps import Check
from generator.prose import lookup, print_result
from generator.quantities.families.packers import Remainder
from generator.quantities.ledger import OpeningLedger
from generator.quantities.worked import Worked
from generator.quantities.workings import print_worked


def expected_at(task: Task, rule: Check, opening: OpeningLedger) -> str:
    """The worked value, or of what a packer leaves the least and greatest; empty for none."""
    if rule.expect is None:
        return ""
    found = lookup(rule.expect.value, task.ledger, opening)
    if isinstance(found, tuple):
        return _left_over(task, [one for one in found if isinstance(one, Remainder)])
    return (print_result(found, language=task.language) or "") if found is not None else ""


def _left_over(task: Task, found: list[Remainder]) -> str:
    if not found:
        return ""
    remainders = sorted((item.remainder for item in found), key=lambda item: item.magnitude)
    least, most = signed(remainders[0]), signed(remainders[-1])
    return least if least == most else task.language.say("%(least)s to %(most)s", least=least, most=most)


def signed(item: Worked) -> str:
    """A remainder with its sign: + left at the wall side, − plaster proud, a bare 0 for neither."""
    number = print_worked(item).number
    return number if number.startswith("−") or number == "0" else f"+{number}"
