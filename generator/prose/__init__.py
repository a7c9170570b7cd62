"""Prose with its values put in, and the checks that keep its figures true."""

from __future__ import annotations

from generator.prose.bare_names import check_bare_names
from generator.prose.printing import print_result
from generator.prose.references import check_prose, resolve
from generator.prose.typed_numbers import check_typed_numbers
from generator.prose.unused import check_unused
from generator.prose.values import lookup

__all__ = [
    "check_bare_names",
    "check_prose",
    "check_typed_numbers",
    "check_unused",
    "lookup",
    "print_result",
    "resolve",
]
