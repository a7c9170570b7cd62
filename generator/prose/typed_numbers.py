"""Figures typed in prose that repeat a worked or given value and would go stale when it changes."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from generator.model.prose import Prose
from generator.problems import ProblemLog
from generator.prose.walk import prose_in
from generator.quantities.ledger import Ledger
from generator.quantities.listing import lines
from generator.quantities.workings import print_worked
from generator.units import UNITS, NotAValue, Value, parse_value, print_value

_UNITS = "|".join(re.escape(symbol) for symbol in sorted(UNITS, key=len, reverse=True))
_FIGURE = re.compile(rf"(?<![\w.,/–-])\d+(?:\.\d+)?[ \u00a0\u2009\u202f]?(?:{_UNITS})(?![\w²³/])")
_BRACED = re.compile(r"\{[^{}\n]*\}")


def check_typed_numbers(ledger: Ledger, log: ProblemLog) -> None:
    """Warn of each figure with a unit that equals a value: a method's prose against the method's own example
    and default values, a job's prose against the job's.
    """
    values = _values(ledger)
    for prose in prose_in(ledger.job or ledger.method):
        for offset, figure, value in _figures(prose):
            names = values.get((value.dimension, print_value(value).text()), ())
            if names:
                span = prose.source.place(offset, len(figure))
                log.add("typed-number", span, warning=True, figure=figure, names=_told(names))


def _values(ledger: Ledger) -> Mapping[tuple[object, str], tuple[str, ...]]:
    """Names by the value they print; the plainest names first, nought left out."""
    found: dict[tuple[object, str], dict[str, None]] = {}
    for line in sorted(lines(ledger), key=lambda line: "." in line.name):
        if line.value.magnitude and "[" not in line.name:
            key = (line.value.dimension, print_worked(line.value).text())
            found.setdefault(key, {})[line.name] = None
    return {key: tuple(names) for key, names in found.items()}


def _figures(prose: Prose) -> Iterator[tuple[int, str, Value]]:
    """Each figure with its place, what stands in braces left out."""
    text = _BRACED.sub(lambda braced: " " * len(braced.group()), prose.source.value)
    for found in _FIGURE.finditer(text):
        try:
            yield found.start(), found.group(), parse_value(found.group())
        except NotAValue:
            continue


def _told(names: tuple[str, ...]) -> str:
    return " or ".join(f"{{{name}}}" for name in names[:2])
