"""Packers that bring the edge of a set-back frame out to the plaster."""

from __future__ import annotations

from dataclasses import dataclass

from generator.quantities.calculator import Example, Length, Margin, Offset, calculator
from generator.quantities.cut_pieces import Piece, round_the_opening, square_piece
from generator.quantities.functions import floor_at_nought, greatest, least, mean, round_up
from generator.quantities.line_fit import Fit, fit_line
from generator.quantities.readings import MEMBERS, Readings, Station, member_lengths, read_on, stations
from generator.quantities.results import Finding, Findings, found
from generator.quantities.worked import Worked, millimetres, named


@dataclass(frozen=True, slots=True, kw_only=True)
class Remainder:
    """One reading against the packer: a gap at the wall takes filler, at the frame plaster is eased.

    `remainder` is packer less reading; `wall_gap` is its positive part, `frame_gap` the size of its negative
    part.
    """

    number: int
    member: str
    at: Worked | None
    reading: Worked
    remainder: Worked
    wall_gap: Worked
    frame_gap: Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class Taper:
    """A packer planed to the straight line that fits one member's readings best; rms is the distance left."""

    member: str
    start: Worked
    end: Worked
    rms: Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class MemberPacker:
    """A packer of its own thickness for one member."""

    member: str
    mean: Worked
    thickness: Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class EvenPacker:
    """One packer thickness for the whole opening, and what it leaves at each reading.

    `tapers` and `by_member` are offered only where the spread is more than the filler takes.
    """

    thickness: Worked
    mean: Worked
    least: Worked
    greatest: Worked
    spread: Worked
    widest_wall_gap: Worked
    widest_frame_gap: Worked
    never_proud: Worked
    remainders: tuple[Remainder, ...]
    tapers: tuple[Taper, ...]
    by_member: tuple[MemberPacker, ...]
    readings: Readings
    remarks: Findings
    refused: Findings


@calculator(
    example=Example(
        inputs={"readings": ("3.1 mm", "3.6 mm", "4.4 mm", "4 mm", "2.7 mm", "3.4 mm"), "step": "0.5 mm"},
        gives={
            "thickness": "4 mm",
            "spread": "1.7 mm",
            "widest_wall_gap": "1.3 mm",
            "widest_frame_gap": "0.4 mm",
        },
    )
)
def even_packer(
    *,
    readings: Readings,
    step: Length,
    thinnest_rip: Margin | None = None,
    thickest: Length | None = None,
    filler_takes: Margin | None = None,
    twist: Margin | None = None,
    opening_width: Length | None = None,
    opening_height: Length | None = None,
) -> EvenPacker:
    """One even packer: the mean of all readings taken up to the next ripping step.

    Lengths in, lengths out. A mean of nought or less gives no packer (thickness 0). Readings behind the frame
    beside others in front of it by more than `twist` are refused. With the opening's sizes tapers run the
    length of each member. The mean taken slightly up is common practice, no source.
    """
    depths = readings.values
    average = mean(depths)
    thickness = named(floor_at_nought(round_up(average, step)), "packer_thickness", "Packer thickness")
    low = named(least(depths), "least_reading", "Least reading")
    high = named(greatest(depths), "greatest_reading", "Greatest reading")
    offered = filler_takes is not None and high - low > filler_takes
    by_member = _by_place(readings, opening_width, opening_height) if offered else {}
    return EvenPacker(
        thickness=thickness,
        mean=average,
        least=low,
        greatest=high,
        spread=high - low,
        widest_wall_gap=floor_at_nought(thickness - low),
        widest_frame_gap=floor_at_nought(high - thickness),
        never_proud=floor_at_nought(round_up(high, step)),
        remainders=_remainders(readings, thickness),
        tapers=_tapers(by_member, opening_width, opening_height),
        by_member=_member_packers(by_member, step),
        readings=readings,
        remarks=_remarks(readings, average, thickness - low, filler_takes),
        refused=_refusals(thickness, low, high, thinnest_rip, thickest, twist),
    )


def _remainders(readings: Readings, thickness: Worked) -> tuple[Remainder, ...]:
    return tuple(
        Remainder(
            number=number,
            member=reading.member,
            at=reading.at,
            reading=reading.value,
            remainder=thickness - reading.value,
            wall_gap=floor_at_nought(thickness - reading.value),
            frame_gap=floor_at_nought(reading.value - thickness),
        )
        for number, reading in enumerate(readings.items, 1)
    )


def _remarks(readings: Readings, average: Worked, gap: Worked, takes: Worked | None) -> Findings:
    members = {reading.member for reading in readings.items}
    unread = [member for member in MEMBERS if member not in members] if readings.placed else []
    return (
        *found(
            (len(readings.items) == 1, Finding(code="one-reading", actual=average)),
            (average.magnitude <= 0, Finding(code="no-packer", actual=average)),
            (takes is not None and gap > takes, Finding(code="gap-over-filler", limit=takes, actual=gap)),
        ),
        *(Finding(code="member-unread", about=member) for member in unread),
    )


def _refusals(
    thickness: Worked,
    low: Worked,
    high: Worked,
    thinnest: Worked | None,
    thickest: Worked | None,
    twist: Worked | None,
) -> Findings:
    slack = twist or millimetres(0)
    packed = thickness.magnitude > 0
    return found(
        (low < -slack and high > slack, Finding(code="twisted", limit=slack, actual=high - low)),
        (
            packed and thinnest is not None and thickness < thinnest,
            Finding(code="packer-too-thin", limit=thinnest, actual=thickness),
        ),
        (
            thickest is not None and thickness > thickest,
            Finding(code="packer-too-thick", limit=thickest, actual=thickness),
        ),
    )


def _by_place(
    readings: Readings, width: Worked | None, height: Worked | None
) -> dict[str, tuple[Station, ...]]:
    if width and height:
        return dict(stations(readings, member_lengths(width, height)))
    return {member: read_on(readings, member) for member in MEMBERS}


def _tapers(
    by_member: dict[str, tuple[Station, ...]], width: Worked | None, height: Worked | None
) -> tuple[Taper, ...]:
    lengths = member_lengths(width, height) if width and height else {}
    return tuple(
        _taper(member, fit_line(items), items, lengths.get(member))
        for member, items in by_member.items()
        if len(items) > 1
    )


def _taper(member: str, fit: Fit, items: tuple[Station, ...], length: Worked | None) -> Taper:
    start = millimetres(0) if length else items[0].at
    return Taper(
        member=member, start=fit.value_at(start), end=fit.value_at(length or items[-1].at), rms=fit.rms()
    )


def _member_packers(by_member: dict[str, tuple[Station, ...]], step: Worked) -> tuple[MemberPacker, ...]:
    return tuple(
        _member_packer(member, mean([item.value for item in items]), step)
        for member, items in by_member.items()
        if items
    )


def _member_packer(member: str, average: Worked, step: Worked) -> MemberPacker:
    return MemberPacker(member=member, mean=average, thickness=floor_at_nought(round_up(average, step)))


@dataclass(frozen=True, slots=True, kw_only=True)
class PackerFit:
    """How a packer of full width `width` sits on the frame's edge.

    `room` is the edge clear of plaster, `needed` the first quirk and the packer, `largest` the widest packer
    that fits, `spare` what is left beside it, `bearing` the packer covered by the architrave.
    """

    width: Worked
    room: Worked
    needed: Worked
    largest: Worked
    spare: Worked
    bearing: Worked
    refused: Findings


@calculator(
    example=Example(
        inputs={
            "frame_edge": "34 mm",
            "first_quirk": "5 mm",
            "second_quirk": "4 mm",
            "packer_width": "26 mm",
            "overlap": "0 mm",
            "clearance": "1 mm",
            "least_bearing": "10 mm",
        },
        gives={"room": "33 mm", "needed": "31 mm", "largest": "28 mm", "bearing": "22 mm", "spare": "2 mm"},
    )
)
def packer_fit(
    *,
    frame_edge: Length,
    first_quirk: Margin,
    second_quirk: Margin,
    packer_width: Length,
    overlap: Margin,
    clearance: Margin,
    least_bearing: Margin,
) -> PackerFit:
    """Whether a packer fits the frame's edge and how far the architrave bears on it.

    Lengths in, lengths out. The second quirk lies on the packer, so it takes no part in the fit. Own
    derivation; the least bearing is policy.
    """
    room = frame_edge - overlap - clearance
    needed = first_quirk + packer_width
    largest = room - first_quirk
    bearing = packer_width - second_quirk
    return PackerFit(
        width=packer_width,
        room=room,
        needed=needed,
        largest=largest,
        spare=room - needed,
        bearing=bearing,
        refused=found(
            (needed > room, Finding(code="packer-too-wide", limit=largest, actual=packer_width)),
            (bearing < least_bearing, Finding(code="bearing-too-small", limit=least_bearing, actual=bearing)),
        ),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class PackerSet:
    """The packers of one opening, the head lying over both legs: lengths, their sum, and the pieces."""

    head: Worked
    leg: Worked
    right_leg: Worked
    metres: Worked
    pieces: tuple[Piece, ...]


@calculator(
    example=Example(
        inputs={
            "opening_width": "768 mm",
            "opening_height": "1990 mm",
            "first_quirk": "5 mm",
            "packer_width": "24 mm",
            "floor_gap": "2 mm",
        },
        gives={"head": "826 mm", "leg": "1993 mm", "metres": "4812 mm"},
    )
)
def packer_set(
    *,
    opening_width: Length,
    opening_height: Length,
    first_quirk: Margin,
    packer_width: Length,
    floor_gap: Offset | None = None,
    right_floor_gap: Offset | None = None,
    thickness: Margin | None = None,
) -> PackerSet:
    """Packer lengths, the head square over the legs.

    Lengths in, lengths out; `floor_gap` is taken off the legs, the right leg may have its own. A thickness of
    nought gives no pieces. Own derivation.
    """
    head = opening_width + 2 * first_quirk + 2 * packer_width
    standing = opening_height + first_quirk
    leg = standing - floor_gap if floor_gap else standing
    right = standing - right_floor_gap if right_floor_gap else leg
    none = thickness is not None and thickness.magnitude == 0
    lengths = (("left leg", leg), ("head", head), ("right leg", right))
    pieces = tuple(square_piece("packer", *each, width=packer_width, thickness=thickness) for each in lengths)
    return PackerSet(
        head=head,
        leg=leg,
        right_leg=right,
        metres=millimetres(0) if none else round_the_opening(head, leg, right),
        pieces=() if none else pieces,
    )
