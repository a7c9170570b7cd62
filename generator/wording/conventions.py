"""How a language writes days and decimals, and what it calls itself.

The figures stand in `languages/conventions.json`, taken from the Unicode CLDR by Babel when the catalogues
are refreshed, so that publishing needs neither.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any, Final

FILE: Final = Path(__file__).parent / "languages" / "conventions.json"


@dataclass(frozen=True, slots=True, kw_only=True)
class Conventions:
    """A language's own name, its decimal sign, its months, and the patterns of a day (CLDR: long, medium).

    In a pattern `{day}`, `{month}` and `{year}` stand for the parts.
    """

    name: str
    decimal: str
    months: tuple[str, ...]
    short_months: tuple[str, ...]
    long: str
    medium: str

    def day(self, told: date) -> str:
        """A day as it is written in a sentence."""
        return self.long.format(day=told.day, month=self.months[told.month - 1], year=told.year)

    def short_day(self, told: date) -> str:
        """A day as it is written in a box."""
        return self.medium.format(day=told.day, month=self.short_months[told.month - 1], year=told.year)


def conventions(tag: str) -> Conventions:
    """The conventions of a language by its tag; KeyError for one that was never gathered."""
    return _all()[tag]


@cache
def _all() -> Mapping[str, Conventions]:
    told = json.loads(FILE.read_text(encoding="utf-8"))
    return {tag: _read(entry) for tag, entry in told.items()}


def _read(entry: Mapping[str, Any]) -> Conventions:
    lists: dict[str, Any] = {
        name: tuple(value) if isinstance(value, list) else value for name, value in entry.items()
    }
    return Conventions(**lists)
