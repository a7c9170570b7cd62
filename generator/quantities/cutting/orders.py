"""What is to be cut and from what, as plain data: lengths in whole half millimetres, prices in pence."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal

PER_MM = 2
"""Half millimetres in a millimetre: as fine as a joiner marks."""


def taken_up(mm: Decimal | float) -> int:
    """A length in mm as half millimetres, taken up to the next; a hair over one is that one."""
    return int((Decimal(str(mm)) * PER_MM - Decimal("1e-9")).to_integral_value(ROUND_CEILING))


def taken_down(mm: Decimal | float) -> int:
    """A length in mm as half millimetres, taken down."""
    return int((Decimal(str(mm)) * PER_MM + Decimal("1e-9")).to_integral_value(ROUND_FLOOR))


def in_mm(halves: int) -> Decimal:
    """Half millimetres as mm."""
    return Decimal(halves) / PER_MM


def mm_text(halves: int) -> str:
    """Half millimetres as mm, with a decimal only where it says something."""
    whole, half = divmod(halves, PER_MM)
    return f"{whole}.5" if half else str(whole)


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceToCut:
    """One piece of the job: its mark on the job, what it is, and its length along the long edge.

    `length` is the length to cut, `over` what it holds beyond the finished long point. Ends are saw angles
    from a square cut in degrees, seen with the long edge away; `hand` is empty where there is none.
    """

    mark: str
    opening: str
    name: str
    hand: str
    length: int
    over: int
    left_end: float
    right_end: float
    left_tilt: float = 0.0
    right_tilt: float = 0.0

    @property
    def steepest(self) -> float:
        """The greater of the angles in degrees between its cuts and a square one, tilted blade and all."""
        return max(_off_square(self.left_end, self.left_tilt), _off_square(self.right_end, self.right_tilt))


def _off_square(turned: float, tilted: float) -> float:
    """The angle between a cut and a square one, from how far the saw is turned and its blade tilted."""
    if not tilted:
        return abs(turned)
    return math.degrees(math.acos(math.cos(math.radians(turned)) * math.cos(math.radians(tilted))))


@dataclass(frozen=True, slots=True, kw_only=True)
class StockLength:
    """A length of stock: to buy, in any number and at a price where one is known, or `on_hand` by number."""

    length: int
    price: int | None = None
    on_hand: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class CuttingOrder:
    """One material of one section with the pieces wanted of it.

    `kerf` is what the saw takes at a square cut, in mm; `trim` what is cut off each end of a length before it
    is used, the saw included; `habit` the waste that is usually added, in per cent.
    """

    name: str
    label: str
    width: Decimal
    thickness: Decimal | None
    pieces: tuple[PieceToCut, ...]
    stock: tuple[StockLength, ...]
    kerf: Decimal
    trim: int
    habit: Decimal
    profile: str = "square"

    @property
    def priced(self) -> bool:
        """Whether every length to buy has a price, so that the plan is the cheapest and not the shortest."""
        return all(each.price is not None for each in self.stock if each.on_hand is None)

    def saw(self, piece: PieceToCut) -> int:
        """What the saw takes along the length after this piece: its kerf over the cosine of the angle.

        Pieces stand in a bar with the widest cut first, so this covers the next piece's cut too.
        """
        return taken_up(float(self.kerf) / math.cos(math.radians(piece.steepest)))

    def usable(self, stock: StockLength) -> int:
        """What is left of a length when both its ends are trimmed."""
        return stock.length - 2 * self.trim


def longest_usable(order: CuttingOrder) -> int:
    """The longest piece any length of stock could give; nought where there is no stock."""
    return max((order.usable(stock) for stock in order.stock), default=0)


def too_long(order: CuttingOrder) -> tuple[PieceToCut, ...]:
    """The pieces no length of stock is long enough for."""
    most = longest_usable(order)
    return tuple(piece for piece in order.pieces if piece.length > most)


def net_length(pieces: Sequence[PieceToCut]) -> int:
    """The lengths of the pieces together."""
    return sum(piece.length for piece in pieces)
