"""Sheets on both faces of a partition: how they are set out, how many, and the screws that hold them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from itertools import pairwise

from generator.quantities.calculator import Example, Length, Margin, Share, calculator
from generator.quantities.families.partitions import PartitionFrame, Whole
from generator.quantities.functions import round_up
from generator.quantities.results import Finding, Findings, InputRefused
from generator.quantities.worked import Worked, applied, plain
from generator.units import Value

SIDES = 2
MOST_LAYERS = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetLayout:
    """Sheets of both faces and all layers, with the screws; `by_area` is the usual percentage beside it.

    `near_joints` and `far_joints` are upright joints from the left wall; the far face starts with half a
    sheet, so that no stud carries a joint on both faces.
    """

    columns: Worked
    sheets: Worked
    by_area: Worked
    screws: Worked
    strip_height: Worked | None
    near_joints: tuple[Worked, ...]
    far_joints: tuple[Worked, ...]
    notes: Findings


@dataclass(frozen=True, slots=True, kw_only=True)
class _Sheets:
    frame: PartitionFrame
    width: Worked
    length: Worked
    standing: Worked
    spacing: Worked
    screw_spacing: Worked
    screw_end: Worked


@calculator(
    example=Example(
        inputs={
            "frame": "partition_frame",
            "stud_spacing": "600 mm",
            "sheet_width": "1200 mm",
            "sheet_length": "2400 mm",
            "screw_spacing": "300 mm",
            "screw_end": "10 mm",
            "layers": "1",
            "waste_habit": "10 %",
        },
        gives={"columns": "4", "sheets": "8", "by_area": "8", "screws": "253"},
    )
)
def sheet_layout(
    *,
    frame: PartitionFrame,
    stud_spacing: Length,
    sheet_width: Length,
    sheet_length: Length,
    screw_spacing: Length,
    screw_end: Margin,
    layers: Whole,
    waste_habit: Share,
    floor_lift: Margin | None = None,
) -> SheetLayout:
    """Sheets standing upright on both faces of a partition, with their screws.

    Lengths in, counts and lengths out. A wall higher than a sheet takes strips cut from further sheets.
    Sheets are cut round openings and nothing is taken off for them. Screws stand in a line on each stud under
    a sheet and along both plates. Own derivation; the spacing of screws is the maker's.
    """
    _refuse(layers, sheet_width, stud_spacing)
    sheets = _Sheets(
        frame=frame,
        width=sheet_width,
        length=sheet_length,
        standing=frame.height - floor_lift if floor_lift else frame.height,
        spacing=stud_spacing,
        screw_spacing=screw_spacing,
        screw_end=screw_end,
    )
    columns = round_up(frame.length / sheet_width, plain(1))
    strip = _strip(sheets)
    one_face = columns * _whole(sheets) + _strips(columns, sheets, strip)
    near, far = _joints(sheets, plain(0)), _joints(sheets, plain(1))
    area = SIDES * frame.length * frame.height * (1 + waste_habit) / (sheet_width * sheet_length)
    return SheetLayout(
        columns=columns,
        sheets=SIDES * layers * one_face,
        by_area=layers * round_up(area, plain(1)),
        screws=_screws(sheets, near, far, strip, layers),
        strip_height=strip,
        near_joints=near,
        far_joints=far,
        notes=tuple(_at_doors(frame, (*near, *far))),
    )


def _refuse(layers: Worked, width: Worked, spacing: Worked) -> None:
    if layers.number != int(layers.number) or not 1 <= layers.number <= MOST_LAYERS:
        raise InputRefused("layers-not-whole", "layers", found=f"{layers.number:g}", most=str(MOST_LAYERS))
    bays = width.number / spacing.number
    if abs(bays - round(bays)) > 1e-9 or round(bays) % SIDES:
        raise InputRefused("sheet-off-studs", "sheet_width")


def _whole(sheets: _Sheets) -> int:
    """Whole sheets above one another in a column; at least the one that is cut to height."""
    return max(int(sheets.standing.number // sheets.length.number), 1)


def _strip(sheets: _Sheets) -> Worked | None:
    """What is left to cover above whole sheets."""
    left = sheets.standing - _whole(sheets) * sheets.length
    return left if left.number > 1e-9 else None


def _strips(columns: Worked, sheets: _Sheets, strip: Worked | None) -> Worked:
    """Sheets that the strips of one face are cut from."""
    if strip is None:
        return plain(0)
    from_one = int(sheets.length.number / strip.number + 1e-9)
    return round_up(columns / from_one, plain(1))


def _joints(sheets: _Sheets, half: Worked) -> tuple[Worked, ...]:
    """Upright joints of a face that starts with a whole sheet, or with half of one."""
    first = sheets.width / 2 if half.magnitude else sheets.width
    places: list[Worked] = []
    place = first
    while place < sheets.frame.length:
        places.append(place)
        place = place + sheets.width
    return tuple(places)


def _screws(
    sheets: _Sheets, near: Sequence[Worked], far: Sequence[Worked], strip: Worked | None, layers: Worked
) -> Worked:
    heights = [sheets.length.number] * _whole(sheets) if strip else [sheets.standing.number]
    heights += [strip.number] if strip else []
    faces = [list(_widths(sheets, joints)) for joints in (near, far)]
    each = sum(_on_piece(sheets, width, height) for face in faces for width in face for height in heights)
    rests = (sheets.frame.length, sheets.standing, sheets.screw_spacing)
    return layers * applied("screws_counted", rests, Value(Decimal(each)))


def _widths(sheets: _Sheets, joints: Sequence[Worked]) -> Iterator[float]:
    places = [0.0, *(joint.number for joint in joints), sheets.frame.length.number]
    yield from (right - left for left, right in pairwise(places))


def _on_piece(sheets: _Sheets, width: float, height: float) -> int:
    """Screws of one piece: a line on each stud it covers, and between the lines along two plates."""
    lines = _steps(width, sheets.spacing.number) + 1
    down = _steps(max(height - 2 * sheets.screw_end.number, 0.0), sheets.screw_spacing.number) + 1
    along = max(_steps(width, sheets.screw_spacing.number) + 1 - lines, 0)
    return lines * down + SIDES * along


def _steps(length: float, step: float) -> int:
    return int(-(-(length - 1e-9) // step))


def _at_doors(frame: PartitionFrame, joints: Sequence[Worked]) -> Iterator[Finding]:
    """Joints that fall on the edge of an opening, where a board would crack when the door is slammed."""
    for opening in frame.openings:
        for edge in (opening.start, opening.start + opening.width):
            for joint in joints:
                if abs((joint - edge).number) < frame.members[0].width.number:
                    yield Finding(code="joint-at-door", about=f"{opening.number.number:g}", actual=joint)
