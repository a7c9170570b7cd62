"""The shape of one fault's wording."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Fault:
    """Sentences with `%(name)s` placeholders: what is wrong, what was expected, and the nearest right name.

    `nearest` is said only when the problem carries a value of that name that is not empty.
    """

    says: str
    expected: str = ""
    nearest: str = "Did you mean “%(nearest)s”?"
