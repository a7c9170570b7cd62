"""An order for a drawing: which, at what width, with which values; plain data, to be drawn anywhere."""

from __future__ import annotations

from dataclasses import dataclass

from generator.drawings.figures import Angle, Part, Reading, Size
from generator.drawings.stock import StockBar

Bound = (
    Size
    | Angle
    | str
    | Part
    | tuple[Size, ...]
    | tuple[Angle, ...]
    | tuple[Reading, ...]
    | tuple[Part, ...]
    | tuple[StockBar, ...]
)

PAPER, PHONE, THUMBNAIL = 175.0, 80.0, 40.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Order:
    """One drawing at one width; `values` are sorted by name, so that equal orders compare equal."""

    name: str
    width: float
    values: tuple[tuple[str, Bound], ...]
