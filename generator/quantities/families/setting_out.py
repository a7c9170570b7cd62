"""Marks at a spacing, as running dimensions from one end."""

from __future__ import annotations

import math
from dataclasses import dataclass

from generator.quantities.calculator import Example, Length, Margin, calculator
from generator.quantities.functions import round_up
from generator.quantities.results import InputRefused
from generator.quantities.worked import Worked, millimetres, plain

MOST_MARKS = 1000


@dataclass(frozen=True, slots=True, kw_only=True)
class Marks:
    """Running dimensions from nought, both ends among them, and the last bay, which differs from the rest."""

    positions: tuple[Worked, ...]
    count: Worked
    spacing: Worked
    length: Worked
    last_bay: Worked


@calculator(
    example=Example(
        inputs={"length": "1995 mm", "spacing": "300 mm", "least_end": "100 mm"},
        gives={"count": "8", "last_bay": "195 mm"},
    )
)
def marks(*, length: Length, spacing: Length, least_end: Margin | None = None) -> Marks:
    """Marks at a spacing from one end, with a mark at each end.

    Lengths in, lengths out. A mark that would stand closer to the far end than `least_end` is left out. More
    than 1000 marks are refused. A mark every 300 mm or so is common practice, no source.
    """
    if length.number / spacing.number > MOST_MARKS:
        raise InputRefused("too-many-marks", "spacing", most=str(MOST_MARKS))
    nearest_end = length - least_end if least_end else length
    whole = math.ceil(length.number / spacing.number)
    inner = [plain(number) * spacing for number in range(1, whole + 1)]
    kept = tuple(place for place in inner if place <= nearest_end and place < length)
    positions = (millimetres(0), *kept, length)
    left_out = sum(1 for place in inner if place < length) - len(kept)
    bays = round_up(length / spacing, plain(1))
    return Marks(
        positions=positions,
        count=(bays - left_out if left_out else bays) + 1,
        spacing=spacing,
        length=length,
        last_bay=length - positions[-2],
    )
