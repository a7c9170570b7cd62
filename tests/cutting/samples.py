"""Orders to plan: a door's architrave, a run of doors, and lengths by chance from a seed."""

from __future__ import annotations

import random
from decimal import Decimal
from typing import Any

from generator.quantities.cutting.orders import CuttingOrder, PieceToCut, StockLength, taken_up


def piece(mark: str, mm: float, left: float = 0.0, right: float = 0.0, **more: Any) -> PieceToCut:
    """A piece by its mark, its length in mm and its saw angles."""
    told = {"opening": "", "name": "packer", "hand": "", "over": 0, **more}
    return PieceToCut(mark=mark, length=taken_up(mm), left_end=left, right_end=right, **told)


def order(*pieces: PieceToCut, **more: Any) -> CuttingOrder:
    """An order of pieces, from lengths of 2.2 and 4.4 m with a 3 mm saw unless told."""
    told: dict[str, Any] = {
        "name": "plan",
        "label": "Torus architrave, MDF, 69 × 18 mm",
        "width": Decimal(69),
        "thickness": Decimal(18),
        "stock": (StockLength(length=4400), StockLength(length=8800)),
        "kerf": Decimal(3),
        "trim": 0,
        "habit": Decimal(10),
        "profile": "torus",
        **more,
    }
    return CuttingOrder(pieces=pieces, **told)


def door(number: str, wide: float, high: float) -> tuple[PieceToCut, ...]:
    """The architrave of one door of a clear width and height: left leg, head, right leg."""
    leg = {"opening": number, "over": taken_up(5)}
    return (
        piece(f"{number}AL", high + 81, 0, 45, hand="left", **{**leg, "name": "architrave, left leg"}),
        piece(f"{number}AH", wide + 156, 45, 45, opening=number, name="architrave, head"),
        piece(f"{number}AR", high + 81, 45, 0, hand="right", **{**leg, "name": "architrave, right leg"}),
    )


def doors(count: int, **more: Any) -> CuttingOrder:
    """The architrave of several doors of usual sizes."""
    widths = (768, 844, 768, 692)
    each = (door(str(n + 1), widths[n % 4], 1989 + n % 4) for n in range(count))
    return order(*(cut for one in each for cut in one), **more)


def chance(seed: int, count: int, least: int, most: int, kinds: int = 0, **more: Any) -> CuttingOrder:
    """Square pieces of lengths by chance, in mm; of so many different lengths where `kinds` is given."""
    random_ = random.Random(seed)
    lengths = [random_.randint(2 * least, 2 * most) / 2 for _ in range(kinds or count)]
    chosen = lengths if not kinds else [random_.choice(lengths) for _ in range(count)]
    told = {"label": "Packer, planed softwood", "width": Decimal(24), "thickness": Decimal("8.5")}
    pieces = (piece(f"P{at}", length) for at, length in enumerate(chosen, 1))
    return order(*pieces, **{**told, "profile": "square", **more})


def built(seed: int, bars: int, length: int) -> tuple[CuttingOrder, int]:
    """An order made by cutting whole bars into three pieces each without waste, and its optimum in halves.

    The saw takes nothing, so that no plan can do with less than the pieces' own length.
    """
    random_ = random.Random(seed)
    pieces: list[PieceToCut] = []
    for _ in range(bars):
        one, two = sorted(random_.sample(range(length // 8, length - length // 8), 2))
        cuts = [cut for cut in (one, two - one, length - two) if cut]
        pieces += [piece("", cut / 2) for cut in cuts]
    random_.shuffle(pieces)
    marked = (piece(f"P{at}", each.length / 2) for at, each in enumerate(pieces, 1))
    stock = (StockLength(length=length),)
    return order(*marked, kerf=Decimal(0), stock=stock, profile="square"), bars * length
