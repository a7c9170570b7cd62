"""What making a PDF needs of the machine, looked for before the work begins."""

from __future__ import annotations

from generator.memory.surroundings import NATIVE, Native, native_version
from generator.problems import MachineLacks


def require_text_engines(needed: tuple[Native, ...] = NATIVE) -> None:
    """Raises MachineLacks naming the first native text library that cannot be loaded."""
    for library in needed:
        if not native_version(library):
            raise MachineLacks("pango-missing", library=library.names[0])
