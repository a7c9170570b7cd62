"""Pins along a piece, and a pin length that holds and does not come through."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from generator.quantities.calculator import Example, Length, Lengths, Margin, Times, calculator
from generator.quantities.functions import round_up
from generator.quantities.results import Finding, Findings, InputRefused
from generator.quantities.worked import Worked, applied, millimetres, plain

MOST_FIXINGS = 1000


@dataclass(frozen=True, slots=True, kw_only=True)
class Pins:
    """Pins in one line along a piece: how many, the actual pitch (0 for one pin), and where each stands."""

    count: Worked
    pitch: Worked
    positions: tuple[Worked, ...]


@calculator(
    example=Example(
        inputs={"length": "2065 mm", "spacing": "300 mm", "end": "50 mm"},
        gives={"count": "8", "pitch": "280.7 mm"},
    )
)
def pins(*, length: Length, spacing: Length, end: Margin) -> Pins:
    """Pins evenly along a piece, no further apart than a spacing.

    Lengths in, a count and lengths out. The first and last stand `end` from the ends; a piece no longer than
    both ends together takes one pin in its middle. Own derivation.
    """
    usable = length - 2 * end
    if usable.magnitude <= 0:
        return Pins(count=plain(1), pitch=millimetres(0), positions=(length / 2,))
    if usable.number / spacing.number > MOST_FIXINGS:
        raise InputRefused("too-many-marks", "spacing", most=str(MOST_FIXINGS))
    bays = round_up(usable / spacing, plain(1))
    pitch = usable / bays
    positions = tuple(end + plain(number) * pitch for number in range(int(bays.magnitude) + 1))
    return Pins(count=bays + 1, pitch=pitch, positions=positions)


@dataclass(frozen=True, slots=True, kw_only=True)
class PinLength:
    """A pin from stock: `least` to hold, `most` not to come through, `holds` what is in the ground behind.

    `length` and `holds` are None where no stock length serves, and the record is refused.
    """

    length: Worked | None
    least: Worked
    most: Worked
    holds: Worked | None
    refused: Findings


@calculator(
    example=Example(
        inputs={
            "stock": ("25 mm", "32 mm", "38 mm", "50 mm"),
            "held": "18 mm",
            "ground": "40 mm",
            "times": "2",
            "cover": "5 mm",
        },
        gives={"length": "38 mm", "least": "36 mm", "most": "53 mm", "holds": "20 mm"},
    )
)
def pin_length(
    *, stock: Lengths, held: Length, ground: Length, times: Times, cover: Margin | None = None
) -> PinLength:
    """The shortest stock pin that holds a piece and does not come through the ground behind it.

    Lengths in, lengths out. `held` is the thickness at the pin, `ground` the sound depth behind it, `cover`
    what must stay unpierced. `times` is how often the thickness held goes into the pin; twice is common
    practice, no source.
    """
    most = held + ground - cover if cover else held + ground
    return shortest_between(stock, held, held * times, most, "no-pin")


def shortest_between(
    stock: Sequence[Worked], held: Worked, least: Worked, most: Worked, none: str
) -> PinLength:
    """The shortest length of stock from `least` to `most`; refused by the code `none` where there is none."""
    serving = [size for size in stock if least <= size <= most]
    shortest = min((size.value for size in serving), key=lambda value: value.magnitude, default=None)
    chosen = applied("shortest_in_stock", (least, most, *stock), shortest, _shortest) if shortest else None
    return PinLength(
        length=chosen,
        least=least,
        most=most,
        holds=chosen - held if chosen else None,
        refused=() if chosen else (Finding(code=none, limit=most, actual=least),),
    )


def _shortest(numbers: tuple[float, ...]) -> float | None:
    low, high, *stock = numbers
    return min((size for size in stock if low <= size <= high), default=None)
