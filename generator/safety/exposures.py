"""What the exposures worked out come to, in the names that rules go by, and where each comes from."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Final

from generator.problems import Span
from generator.quantities.ledger import Ledger
from generator.quantities.lifts import lifts_of

LIFT: Final = "lift-over-filter"


def exposures_reached(ledger: Ledger) -> Mapping[str, Span]:
    """What a ledger's work comes to that a rule asks about, each with the place it comes from."""
    return dict(_lifts(ledger))


def _lifts(ledger: Ledger) -> Iterator[tuple[str, Span]]:
    over = [lifted for lifted in lifts_of(ledger) if lifted.over]
    if over:
        yield LIFT, over[0].lift.what.span
