"""Calculators, one family a file; a new file here is found by itself."""

from __future__ import annotations

import importlib
import pkgutil
from functools import cache


def names() -> tuple[str, ...]:
    """The family files, by module name."""
    return tuple(sorted(module.name for module in pkgutil.iter_modules(__path__)))


@cache
def load() -> None:
    """Import every family once, so that its calculators are registered."""
    for name in names():
        importlib.import_module(f"{__name__}.{name}")
