"""Faults the prose room finds."""

from __future__ import annotations

from collections.abc import Mapping

from generator.wording.faults.fault import Fault

FAULTS: Mapping[str, Fault] = {
    "prose-name-unknown": Fault(
        "There is no size, quantity or material called “%(name)s”.",
        "Expected a name of this method between the braces. A literal brace is written twice: {{ or }}.",
    ),
    "prose-unit-unknown": Fault(
        "There is no unit called “%(unit)s”.", "Expected a unit such as mm, m or ml."
    ),
    "prose-unit-kind": Fault(
        "“%(name)s” is %(found)s and cannot be said in %(unit)s.", "Expected a unit of the same kind."
    ),
    "prose-no-single-value": Fault(
        "“%(name)s” is %(kind)s, which a sentence cannot say.", "A sentence can say: %(known)s."
    ),
    "prose-differs": Fault(
        "“%(name)s” differs between openings (%(shown)s) and no column of the schedule shows it.",
        "Write “- show: %(name)s” under “schedule:” in the method, and the sentence points to that column.",
    ),
    "typed-number": Fault(
        "%(figure)s is typed here and is also worked out or given.",
        "Write %(names)s so that it changes with the sizes, or {= %(figure)s} where it is meant so.",
    ),
    "bare-name": Fault(
        "“%(name)s” is the name of a value and is printed as it stands.",
        "Write {%(name)s} where the value is meant.",
    ),
    "size-unused": Fault(
        "The size “%(name)s” is used by no formula, sentence, table or drawing.",
        "Use it, or take it out so that nobody measures it for nothing.",
    ),
}
