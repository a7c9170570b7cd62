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

PAPER, PHONE, THUMBNAIL, BENCH = 175.0, 80.0, 40.0, 112.0
# The drawing that stands on a bench card for one that is too tall for it.
BENCH_FORMS = {"jamb_section": "jamb_rod"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Order:
    """One drawing at one width; `values` are sorted by name, so that equal orders compare equal."""

    name: str
    width: float
    values: tuple[tuple[str, Bound], ...]
