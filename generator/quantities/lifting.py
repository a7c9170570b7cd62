"""The filter for lifting by hand: up to which mass a lift is looked into no further.

HSE INDG143 and L23 (Manual Handling Operations Regulations 1992): a filter and no limit. The figures for
women other than 7, 3 and 16 kg, and the shares of a team, are from memory.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Final

from generator.model.steps import REACHES, ZONES

# kg by zone: men close and reached, women close and reached.
_FILTER: Final[Mapping[str, tuple[float, float, float, float]]] = dict(
    zip(
        ZONES,
        ((10, 5, 7, 3), (20, 10, 13, 7), (25, 15, 16, 10), (20, 10, 13, 7), (10, 5, 7, 3)),
        strict=True,
    )
)
# Two people together manage two thirds of the sum of what each does alone, three a half.
_TEAM: Final[Mapping[int, float]] = {1: 1.0, 2: 2 * 2 / 3, 3: 3 / 2}
MOST_LIFTING: Final = max(_TEAM)


@dataclass(frozen=True, slots=True, kw_only=True)
class Filter:
    """The filter of one lift, in kg, for a man or men and for a woman or women."""

    men: float
    women: float


def lifting_filter(zones: Iterable[str], reach: str, people: int = 1) -> Filter:
    """The filter of a lift that passes these zones; the smallest of several counts.

    `reach` is "close" or "reached", `people` 1 to 3. Raises ValueError or KeyError for others.
    """
    at, share = REACHES.index(reach), _TEAM[people]
    rows = [_FILTER[zone] for zone in zones]
    return Filter(men=share * min(row[at] for row in rows), women=share * min(row[at + 2] for row in rows))
