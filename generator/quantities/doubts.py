"""What the limits of the sizes leave open: findings that tell where a result within them would matter."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from generator.quantities.families.out_of_square import Mitre, MitredSet
from generator.quantities.families.packers import EvenPacker, PackerFit
from generator.quantities.families.stairs import FlightSurvey, Guarding, StraightStair
from generator.quantities.families.ways import Comparison, Way
from generator.quantities.ledger import Entry, Ledger, OpeningLedger
from generator.quantities.limits import Limits, limits_of
from generator.quantities.results import Finding
from generator.quantities.worked import Worked, literal
from generator.units import ANGLE, LENGTH, Value

_SEEN = 0.05
"""Less than this, in mm, is not said: it would print as nought."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Doubt:
    """A finding about one entry at one opening, or at none for the whole job."""

    opening: OpeningLedger | None
    entry: Entry
    finding: Finding


def doubts(ledger: Ledger) -> tuple[Doubt, ...]:
    """Everything in a ledger that limits of sizes leave open and that would show in the work."""
    return tuple(
        Doubt(opening=opening, entry=entry, finding=finding)
        for opening, entry in ledger.everything()
        for finding in findings_within(entry.result)
    )


def findings_within(record: object) -> Iterator[Finding]:
    """What limits leave open in one record; nothing where it rests on no limited size."""
    look = _LOOKED_AT.get(type(record))
    if look:
        yield from look(record)


def _range(item: Worked) -> tuple[Limits, Worked, Worked] | None:
    """The limits of a result with both ends as values; None where nothing is open, or nothing is known."""
    found = limits_of(item)
    if found is None or not found.open or found.low is None or found.high is None:
        return None
    return found, literal(found.low), literal(found.high)


def _packer(record: EvenPacker) -> Iterator[Finding]:
    found = _range(record.thickness)
    if found:
        yield Finding(code="packer-may-differ", limit=found[1], actual=found[2])
    walls = [item.wall_gap for item in record.remainders]
    frames = [item.frame_gap for item in record.remainders]
    yield from _wider("packer-may-stand-proud", record.widest_wall_gap, walls)
    yield from _wider("plaster-may-stand-proud", record.widest_frame_gap, frames)


def _wider(code: str, worked: Worked, at_readings: Sequence[Worked]) -> Iterator[Finding]:
    """Followed reading by reading, where each is held against the packer it helped to settle."""
    ends = [found[2] for gap in at_readings if (found := _range(gap))]
    widest = max(ends, key=lambda end: end.number, default=worked)
    if widest.number > worked.number + _SEEN:
        yield Finding(code=code, limit=worked, actual=widest)


def _fit(record: PackerFit) -> Iterator[Finding]:
    found = _range(record.spare)
    if found and found[1].number < 0 <= record.spare.number:
        yield Finding(code="packer-may-not-fit", limit=record.spare, actual=-found[1])


def _mitres(record: MitredSet) -> Iterator[Finding]:
    widths = {piece.hand: piece.width.number for piece in record.pieces}
    for mitre, hand in ((record.left, "left"), (record.right, "right")):
        yield from _mitre(mitre, math.hypot(widths[""], widths[hand]))


def _mitre(mitre: Mitre, length: float) -> Iterator[Finding]:
    """Cut to the angle as worked, the pieces part like a hinge by what the corner is off."""
    found = _range(mitre.angle)
    if not found:
        return
    off = max(found[2].number - mitre.angle.number, mitre.angle.number - found[1].number)
    opens = 2 * length * math.sin(math.radians(off / 2))
    if opens > _SEEN:
        yield Finding(
            code="mitre-may-open",
            limit=literal(Value(off, ANGLE)),
            actual=literal(Value(opens, LENGTH)),
            about=mitre.corner,
        )


def _way(record: Way) -> Iterator[Finding]:
    found = _range(record.skirting_margin) if record.chosen else None
    if found and found[1].number < 0 <= record.skirting_margin.number:
        yield Finding(code="skirting-may-stand-past", limit=record.skirting_margin, actual=-found[1])


def _chosen(record: Comparison) -> Iterator[Finding]:
    for way in record.ways:
        yield from _way(way)


def _held(record: FlightSurvey | StraightStair | Guarding) -> Iterator[Finding]:
    """A figure that stands inside as worked, and may stand outside within the limits of the sizes."""
    for one in record.held:
        found = None if one.outside else _range(one.actual)
        if found:
            yield from (crossed for end in found[1:] for crossed in replace(one, actual=end).may_cross)


_LOOKED_AT: Mapping[type, Callable[[Any], Iterator[Finding]]] = {
    EvenPacker: _packer,
    PackerFit: _fit,
    MitredSet: _mitres,
    Comparison: _chosen,
    FlightSurvey: _held,
    StraightStair: _held,
    Guarding: _held,
}
