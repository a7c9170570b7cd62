"""What a cutting plan's drawing is given: bars of stock with the pieces cut from them."""

from __future__ import annotations

from dataclasses import dataclass

from generator.drawings.figures import Size


@dataclass(frozen=True, slots=True, kw_only=True)
class StockPiece:
    """One piece on a bar by running lengths from the bar's squared end; ends are saw angles in degrees.

    `next_start` is where the saw leaves off. The long edge lies away from the reader, so an end's angle
    shortens the near edge; one with a minus shortens the far edge instead.
    """

    mark: str
    length: Size
    start: Size
    end: Size
    next_start: Size
    left: float
    right: float


@dataclass(frozen=True, slots=True, kw_only=True)
class StockBar:
    """One bar by its number: length as bought, what is trimmed off each end, pieces and what is left."""

    number: str
    length: Size
    trim: Size
    pieces: tuple[StockPiece, ...]
    offcut: Size
    on_hand: bool = False
