"""A stud partition: studs on their centres, openings, plates, noggins, and what is cut for them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from itertools import pairwise
from typing import Annotated, TypeAlias

from generator.quantities.calculator import (
    Example,
    Length,
    Lengths,
    Margin,
    Margins,
    Takes,
    calculator,
)
from generator.quantities.cut_pieces import Piece, square_piece
from generator.quantities.functions import total
from generator.quantities.results import Finding, Findings, InputRefused
from generator.quantities.worked import Worked, millimetres, plain
from generator.quantities.workings import print_worked
from generator.units import NUMBER

Whole: TypeAlias = Annotated[Worked, Takes(dimension=NUMBER, least=Decimal(0))]
MOST_STUDS = 200
_LEAST_NOGGIN = Decimal(60)
_NONE: tuple[Worked, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Member:
    """One piece of the frame where it stands: left edge from the left wall, underside from the floor.

    `kind` is stud, trimmer, cripple, head, noggin, sole plate or head plate; `centre` is set for uprights.
    """

    kind: str
    mark: str
    left: Worked
    bottom: Worked
    width: Worked
    height: Worked
    centre: Worked | None

    @property
    def right(self) -> Worked:
        """Its right edge."""
        return self.left + self.width


@dataclass(frozen=True, slots=True, kw_only=True)
class Opening:
    """A door's clear opening in the frame, between trimmers and under its head, from the floor."""

    number: Worked
    start: Worked
    width: Worked
    height: Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class PartitionFrame:
    """A partition's frame. `studs` counts all of full height, trimmers among them.

    `sole_left` is the sole plate once the openings are cut out of it; `centres` are of all full-height studs.
    """

    length: Worked
    height: Worked
    stud_length: Worked
    studs: Worked
    trimmers: Worked
    cripples: Worked
    noggins: Worked
    noggin_length: Worked
    plates: Worked
    sole_left: Worked
    timber: Worked
    centres: tuple[Worked, ...]
    members: tuple[Member, ...]
    openings: tuple[Opening, ...]
    pieces: tuple[Piece, ...]
    notes: Findings
    refused: Findings


@dataclass(frozen=True, slots=True, kw_only=True)
class _Frame:
    """What the whole frame shares."""

    length: Worked
    height: Worked
    spacing: Worked
    stud: Worked
    plate: Worked
    depth: Worked | None
    housing: Worked

    @property
    def upright(self) -> Worked:
        return self.height - 2 * self.plate


@calculator(
    example=Example(
        inputs={
            "length": "4300 mm",
            "height": "2400 mm",
            "spacing": "600 mm",
            "stud_thickness": "47 mm",
            "plate_thickness": "47 mm",
            "opening_starts": ("1900 mm",),
            "opening_widths": ("826 mm",),
            "opening_heights": ("2060 mm",),
            "noggin_rows": "2",
        },
        gives={
            "stud_length": "2306 mm",
            "studs": "10",
            "cripples": "1",
            "noggins": "12",
            "plates": "8600 mm",
            "sole_left": "3474 mm",
        },
    )
)
def partition_frame(
    *,
    length: Length,
    height: Length,
    spacing: Length,
    stud_thickness: Length,
    plate_thickness: Length,
    noggin_rows: Whole,
    opening_starts: Margins | None = None,
    opening_widths: Lengths | None = None,
    opening_heights: Lengths | None = None,
    stud_depth: Length | None = None,
    housing: Margin | None = None,
    longest: Length | None = None,
) -> PartitionFrame:
    """Studs, trimmers, cripples, heads, noggins and plates of a partition between two walls.

    Lengths and a number of noggin rows in; lengths and counts out. Studs stand on the spacing measured from
    the wall's face, so that board edges fall on their centres. An opening's studs go out, a full-height
    trimmer stands at each side and a head between them, housed by `housing` at each end. A stud that would
    overlap another is fixed tight beside it. A bay under 60 mm takes no noggin. Own derivation.
    """
    frame = _Frame(
        length=length,
        height=height,
        spacing=spacing,
        stud=stud_thickness,
        plate=plate_thickness,
        depth=stud_depth,
        housing=housing or millimetres(0),
    )
    _refuse_frame(frame, noggin_rows)
    openings = _openings(frame, opening_starts or _NONE, opening_widths or _NONE, opening_heights or _NONE)
    grid = _grid(frame)
    uprights = _uprights(frame, grid, openings)
    members = (
        *uprights,
        *_over_openings(frame, grid, openings),
        *_noggins(frame, uprights, openings, int(noggin_rows.number)),
        *_plates(frame, grid, longest),
    )
    return _frame_of(frame, members, openings, longest)


def _refuse_frame(frame: _Frame, rows: Worked) -> None:
    if frame.spacing <= frame.stud:
        raise InputRefused("spacing-within-stud", "spacing", stud=print_worked(frame.stud).text())
    if frame.length < 2 * frame.stud or frame.upright.magnitude <= 0:
        raise InputRefused("partition-too-small", "length")
    if frame.length.number / frame.spacing.number > MOST_STUDS:
        raise InputRefused("too-many-marks", "spacing", most=str(MOST_STUDS))
    if rows.number != int(rows.number) or not 0 <= rows.number <= MOST_STUDS // 10:
        raise InputRefused("rows-not-whole", "noggin_rows", found=f"{rows.number:g}")


def _openings(
    frame: _Frame, starts: Sequence[Worked], widths: Sequence[Worked], heights: Sequence[Worked]
) -> tuple[Opening, ...]:
    for name, items in (("opening_widths", widths), ("opening_heights", heights)):
        if len(items) != len(starts):
            raise InputRefused("lists-differ", name, found=str(len(items)), wanted=str(len(starts)))
    sizes = sorted(zip(starts, widths, heights, strict=True), key=lambda sides: sides[0].number)
    openings = tuple(
        Opening(number=plain(at), start=start, width=width, height=height)
        for at, (start, width, height) in enumerate(sizes, 1)
    )
    for opening in openings:
        _refuse_opening(frame, opening)
    for one, two in pairwise(openings):
        if two.start - (one.start + one.width) < 2 * frame.stud:
            raise InputRefused("openings-too-near", "opening_starts", one=f"{one.number.number:g}")
    return openings


def _refuse_opening(frame: _Frame, opening: Opening) -> None:
    number = f"{opening.number.number:g}"
    ends = opening.start + opening.width
    if opening.start < 2 * frame.stud or ends > frame.length - 2 * frame.stud:
        raise InputRefused("opening-off-partition", "opening_starts", number=number)
    if opening.height >= frame.height - 2 * frame.plate:
        raise InputRefused("opening-too-high", "opening_heights", number=number)


def _grid(frame: _Frame) -> tuple[Worked, ...]:
    """Stud centres from the left wall: the end studs, and one on each multiple of the spacing between."""
    end = frame.length - frame.stud / 2
    last = frame.length - frame.stud
    inner: list[Worked] = []
    number = 1
    while (place := plain(number) * frame.spacing) < last:
        inner.append(place)
        number += 1
    return (frame.stud / 2, *inner, end)


def _tight(frame: _Frame, centre: Worked, fixed: Sequence[Worked]) -> Worked | None:
    """A centre moved off what it would overlap, to stand tight beside it; None where there is no room."""
    over = [other for other in fixed if _overlap(frame, centre, other)]
    if not over:
        return centre
    moved = over[0] - frame.stud if centre <= over[0] else over[0] + frame.stud
    return None if any(_overlap(frame, moved, other) for other in fixed) else moved


def _overlap(frame: _Frame, one: Worked, two: Worked) -> bool:
    return abs((one - two).number) < frame.stud.number - 1e-9


def _uprights(frame: _Frame, grid: tuple[Worked, ...], openings: tuple[Opening, ...]) -> tuple[Member, ...]:
    trimmers = [
        centre
        for opening in openings
        for centre in (
            opening.start - frame.stud / 2,
            opening.start + opening.width + frame.stud / 2,
        )
    ]
    ends = (grid[0], grid[-1])
    commons = (
        _tight(frame, centre, (*ends, *trimmers))
        for centre in grid[1:-1]
        if not any(_within(frame, centre, opening) for opening in openings)
    )
    studs = (*ends, *(centre for centre in commons if centre is not None))
    found = [(centre, "stud") for centre in studs] + [(centre, "trimmer") for centre in trimmers]
    found.sort(key=lambda each: each[0].number)
    return tuple(
        Member(
            kind=kind,
            mark=str(at),
            left=centre - frame.stud / 2,
            bottom=frame.plate,
            width=frame.stud,
            height=frame.upright,
            centre=centre,
        )
        for at, (centre, kind) in enumerate(found, 1)
    )


def _within(frame: _Frame, centre: Worked, opening: Opening) -> bool:
    return opening.start - frame.stud < centre < opening.start + opening.width + frame.stud


def _over_openings(
    frame: _Frame, grid: tuple[Worked, ...], openings: tuple[Opening, ...]
) -> Iterator[Member]:
    """The head of each opening and the cripples that carry on the spacing above it."""
    for opening in openings:
        top = opening.height + frame.plate
        yield Member(
            kind="head",
            mark=f"H{opening.number.number:g}",
            left=opening.start - frame.housing if frame.housing.magnitude else opening.start,
            bottom=opening.height,
            width=opening.width + 2 * frame.housing if frame.housing.magnitude else opening.width,
            height=frame.plate,
            centre=None,
        )
        half = frame.stud / 2
        for centre in grid[1:-1]:
            if opening.start + half <= centre <= opening.start + opening.width - half:
                yield Member(
                    kind="cripple",
                    mark="C",
                    left=centre - half,
                    bottom=top,
                    width=frame.stud,
                    height=frame.height - frame.plate - top,
                    centre=centre,
                )


def _noggins(
    frame: _Frame, uprights: tuple[Member, ...], openings: tuple[Opening, ...], rows: int
) -> Iterator[Member]:
    for one, two in pairwise(uprights):
        clear = two.left - one.right
        if clear.number < float(_LEAST_NOGGIN) or any(_spans(one, two, opening) for opening in openings):
            continue
        for row in range(1, rows + 1):
            yield Member(
                kind="noggin",
                mark="N",
                left=one.right,
                bottom=frame.height * row / (rows + 1) - frame.stud / 2,
                width=clear,
                height=frame.stud,
                centre=None,
            )


def _spans(one: Member, two: Member, opening: Opening) -> bool:
    return one.left < opening.start and two.left >= opening.start + opening.width


def _plates(frame: _Frame, grid: tuple[Worked, ...], longest: Worked | None) -> Iterator[Member]:
    places = _plate_joints(frame, grid, longest)
    for kind, bottom in (("sole plate", millimetres(0)), ("head plate", frame.height - frame.plate)):
        for start, end in pairwise((millimetres(0), *places, frame.length)):
            yield Member(
                kind=kind,
                mark="S" if kind == "sole plate" else "P",
                left=start,
                bottom=bottom,
                width=end - start,
                height=frame.plate,
                centre=None,
            )


def _plate_joints(frame: _Frame, grid: tuple[Worked, ...], longest: Worked | None) -> tuple[Worked, ...]:
    """Joints of a plate longer than the longest length, each over the last stud it reaches."""
    places: list[Worked] = []
    start = millimetres(0)
    while longest is not None and frame.length - start > longest:
        reach = [centre for centre in grid[1:-1] if start < centre <= start + longest]
        if not reach:
            raise InputRefused("plate-has-no-joint", "longest")
        start = reach[-1]
        places.append(start)
    return tuple(places)


def _frame_of(
    frame: _Frame, members: tuple[Member, ...], openings: tuple[Opening, ...], longest: Worked | None
) -> PartitionFrame:
    uprights = [member for member in members if member.kind in ("stud", "trimmer")]
    noggins = [member.width for member in members if member.kind == "noggin"]
    gaps = [opening.width for opening in openings]
    pieces = tuple(_piece(at, member, frame) for at, member in enumerate(members, 1))
    return PartitionFrame(
        length=frame.length,
        height=frame.height,
        stud_length=frame.upright,
        studs=plain(len(uprights)),
        trimmers=plain(sum(member.kind == "trimmer" for member in members)),
        cripples=plain(sum(member.kind == "cripple" for member in members)),
        noggins=plain(len(noggins)),
        noggin_length=frame.spacing - frame.stud,
        plates=2 * frame.length,
        sole_left=frame.length - total(gaps) if gaps else frame.length,
        timber=total([piece.long_point for piece in pieces]),
        centres=tuple(member.centre for member in uprights if member.centre is not None),
        members=members,
        openings=openings,
        pieces=pieces,
        notes=_notes(members),
        refused=_too_long(frame, longest),
    )


def _notes(members: tuple[Member, ...]) -> Findings:
    uprights = [member for member in members if member.kind in ("stud", "trimmer")]
    return tuple(
        Finding(code="bay-closed", about=f"{one.mark} and {two.mark}", actual=two.left - one.right)
        for one, two in pairwise(uprights)
        if 0 <= (two.left - one.right).number < float(_LEAST_NOGGIN)
    )


def _too_long(frame: _Frame, longest: Worked | None) -> Findings:
    if longest is None or frame.upright <= longest:
        return ()
    return (Finding(code="stud-over-stock", limit=longest, actual=frame.upright),)


def _piece(at: int, member: Member, frame: _Frame) -> Piece:
    upright = member.kind in ("stud", "trimmer", "cripple")
    length = member.height if upright else member.width
    made = square_piece("frame", member.kind, length, width=frame.depth or frame.stud, thickness=frame.stud)
    return replace(made, mark=f"{member.kind[0].upper()}{at}")
