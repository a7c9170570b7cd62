"""A result of the ledger as it stands in a sentence."""

from __future__ import annotations

import re
from dataclasses import replace

from generator.quantities.calculator import Result
from generator.quantities.functions import greatest, least
from generator.quantities.readings import Readings
from generator.quantities.worked import Judged, Worked
from generator.quantities.workings import THIN, print_worked
from generator.units import LENGTH, UNITS, Unit
from generator.wording import ENGLISH, Language

_MARKDOWN = re.compile(r"([\\`*_{}\[\]<>#|])")
_TYPED_UNIT = re.compile(
    rf"(?<=\d) ({'|'.join(re.escape(symbol) for symbol in sorted(UNITS, key=len, reverse=True))})(?!\w)"
)


def print_result(
    result: Result, unit: Unit | None = None, language: Language = ENGLISH, *, space: str = THIN
) -> str | None:
    """The result in words a sentence can hold; None for a record, which has no single value.

    Readings are given from least to greatest, several values one after another.
    """
    if isinstance(result, Worked):
        return _figure(result, unit, language, space)
    if isinstance(result, Readings):
        return _range(result, unit, language, space)
    if isinstance(result, Judged):
        return language.say("yes") if result.holds else language.say("no")
    if isinstance(result, str):
        return plain_text(result)
    if isinstance(result, tuple) and result and all(isinstance(item, Worked) for item in result):
        return ", ".join(_figure(item, unit, language, space) for item in result)
    return None


def _figure(item: Worked, unit: Unit | None, language: Language, space: str) -> str:
    """A value as the language writes it; a length with a point in every language (see `Language.figures`)."""
    printed = print_worked(item, unit)
    if item.value.dimension == LENGTH:
        return printed.text(space)
    return replace(printed, number=language.figures(printed.number)).text(space)


def _range(readings: Readings, unit: Unit | None, language: Language, space: str) -> str:
    low, high = print_worked(least(readings.values), unit), print_worked(greatest(readings.values), unit)
    if low == high:
        return low.text(space)
    return language.say("%(least)s to %(most)s", least=low.number, most=high.text(space))


def plain_text(words: str) -> str:
    """Words of a file set so that markdown takes them as they are."""
    return _MARKDOWN.sub(r"\\\1", words)


def kept_text(figure: str) -> str:
    """A figure typed on purpose, with a thin space before its unit."""
    return _TYPED_UNIT.sub(rf"{THIN}\1", figure)
