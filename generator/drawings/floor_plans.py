"""A wood floor in plan: rows from the starting wall, every joint, offcuts tinted, holes for pipes."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from generator.drawings.clipping import Box, circle, rectangle
from generator.drawings.dimensions import dimension
from generator.drawings.figures import Part, Size
from generator.drawings.keys import Entry, key, margin, notes, paragraph, title
from generator.drawings.lettering import cap, extent
from generator.drawings.pens import INK, NOTES, VISIBLE
from generator.drawings.registry import Drawn, drawing
from generator.drawings.sheet import Sheet, Zone, arrow
from generator.drawings.views import View

_SCALES = (
    (0.1, "1:10"), (0.05, "1:20"), (0.04, "1:25"), (0.02, "1:50"), (0.01, "1:100"), (0.005, "1:200"),
    (0.002, "1:500"), (0.001, "1:1000"),
)  # fmt: skip
_TALLEST = 120.0
_BAND = 2.6
_EVERY = (1, 2, 5, 10, 20, 50)
_LEAST_HOLE = 0.9


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedRow(Part):
    """One row from the starting wall: width, the lengths in order, and whether its ends are offcuts."""

    number: Size
    width: Size
    pieces: tuple[Size, ...]
    begins: str
    ends: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedHole(Part):
    """A hole for a pipe, from the row's start and the starting wall's side of the floor."""

    number: Size
    row: Size
    along: Size
    across: Size
    hole: Size


@dataclass(frozen=True, slots=True, kw_only=True)
class _Floor:
    """The floor; x runs along the boards from the start of the rows, y from the starting wall's side."""

    place: str
    along: Size
    across: Size
    gap: Size
    rows: tuple[PlannedRow, ...]
    pipes: tuple[PlannedHole, ...]

    def boards(self) -> Iterator[tuple[str, Box, bool]]:
        """Each board by row and place, with whether it is an offcut."""
        top = 0.0
        for row in self.rows:
            left = 0.0
            for at, piece in enumerate(row.pieces):
                offcut = (at == 0 and row.begins == "offcut") or (
                    at == len(row.pieces) - 1 and row.ends == "offcut"
                )
                name = f"row {row.number.text} board {at + 1}"
                yield name, Box(left, top, left + piece.mm, top + row.width.mm), offcut
                left += piece.mm
            top += row.width.mm

    def tops(self) -> tuple[float, ...]:
        places, top = [], 0.0
        for row in self.rows:
            places.append(top)
            top += row.width.mm
        return tuple(places)


def _scale(floor: _Floor, room: float) -> tuple[float, str]:
    wide, high = floor.along.mm + 2 * floor.gap.mm, floor.across.mm + 2 * floor.gap.mm
    fits = (s for s in _SCALES if wide * s[0] <= room and high * s[0] <= _TALLEST)
    return next(fits, _SCALES[-1])


def _view(floor: _Floor, sheet: Sheet, scale: float, below: float, aside: float) -> View:
    gap = floor.gap.mm * scale
    left = margin(sheet) + aside + gap + _BAND
    if sheet.thumbnail:
        left = (sheet.width - floor.along.mm * scale) / 2
    top = below + (3.0 if sheet.thumbnail else 17.0) + gap + _BAND
    bottom = top + floor.across.mm * scale + gap + _BAND
    zone = Zone(box=Box(0.5, below, sheet.width - 0.5, bottom + 8.0))
    return View(sheet=sheet, scale=scale, origin=(left, top), zone=zone)


def _paint(view: View, floor: _Floor) -> None:
    gap, band = floor.gap.mm, _BAND / view.scale
    long, broad = floor.along.mm + gap, floor.across.mm + gap
    walls = {
        "starting wall": rectangle(-gap - band, -gap - band, long + band, -gap),
        "end wall": rectangle(long, -gap, long + band, broad),
        "last wall": rectangle(-gap - band, broad, long + band, broad + band),
        "first wall": rectangle(-gap - band, -gap, -gap, broad),
    }
    for name, points in walls.items():
        view.part(name, points, "block")
    for name, box, offcut in floor.boards():
        view.part(name, box.corners, "floor offcut" if offcut else "floor board")
    for pipe in floor.pipes:
        radius = max(pipe.hole.mm / 2, _LEAST_HOLE / view.scale)
        view.part(f"pipe {pipe.number.text}", circle((pipe.along.mm, pipe.across.mm), radius, 1.0), "steel")


def _every(floor: _Floor, view: View) -> int:
    """How many rows apart the row numbers stand, so that none touch."""
    pitch = min(row.width.mm for row in floor.rows[: max(len(floor.rows) - 1, 1)]) * view.scale
    need = view.sheet.em("figure") + 0.4
    return next((n for n in _EVERY if n * pitch >= need), len(floor.rows))


def _row_numbers(view: View, floor: _Floor) -> None:
    sheet, step = view.sheet, _every(floor, view)
    x = view.at(-floor.gap.mm, 0)[0] - _BAND - 1.4
    before = -math.inf
    for row, top in list(zip(floor.rows, floor.tops(), strict=True))[::step]:
        y = view.at(0, top + row.width.mm / 2)[1] + cap(sheet.em("figure")) / 2
        if y - before < sheet.em("figure") + 0.4:
            continue
        before = y
        sheet.text(row.number.text, x, y, "figure", anchor="end")


def _dimensions(view: View, floor: _Floor) -> None:
    long, broad = floor.along.mm, floor.across.mm
    left, right = view.at(0, 0), view.at(long, 0)
    at = view.at(0, -floor.gap.mm)[1] - _BAND - 5.0
    dimension(view, left, right, at, floor.along.text, f"floor along the boards {floor.along.text}")
    beside = view.at(long + floor.gap.mm, 0)[0] + _BAND + 5.0
    top, bottom = view.at(long, 0), view.at(long, broad)
    words = f"floor across the boards {floor.across.text}"
    dimension(view, top, bottom, beside, floor.across.text, words, direction="upright")


def _arrow(view: View, floor: _Floor) -> None:
    """Say which wall the rows start from, and which way the boards run."""
    sheet = view.sheet
    y = view.zone.box.bottom - 1.0
    left = view.at(0, 0)[0]
    sheet.line(((left, y - 1.2), (left + 12.0, y - 1.2)), VISIBLE)
    sheet.stroke(arrow((left + 14.0, y - 1.2), 0.0, INK))
    words = "rows start here" if sheet.narrow else "rows start here; row 1 at the top"
    sheet.text(words, left + 16.0, y, "note", colour=NOTES)


def _board_letters(view: View, floor: _Floor) -> None:
    """Letter one board and one offcut, below the middle where the rows are clear of the pipes."""
    boards = list(floor.boards())
    for letter, wanted, turns in (("A", False, (-20, 20, 60, -60)), ("B", True, (160, -160, 120, -120))):
        alike = [(name, box) for name, box, offcut in boards if offcut is wanted]
        if alike:
            name, box = alike[len(alike) // 2]
            view.letter(letter, name, box.corners, turns=turns)


def _pipe_letters(view: View, floor: _Floor) -> None:
    for pipe in floor.pipes:
        words = f"pipe {pipe.number.text}, hole {pipe.hole.text}"
        view.pointer(f"P{pipe.number.text}", (pipe.along.mm, pipe.across.mm), words)


def _row_words(row: PlannedRow) -> str:
    return f"{row.number.text}: {', '.join(piece.text for piece in row.pieces)}"


def _table(sheet: Sheet, rows: Sequence[PlannedRow], top: float) -> float:
    """Set the lengths of every row in as many columns as fit; return the y below them."""
    em = sheet.em("note")
    lines = [_row_words(row) for row in rows]
    wide = max(extent(line, em)[0] for line in lines) + 5.0
    room = sheet.width - 2 * margin(sheet)
    columns = max(int(room // wide), 1)
    share = -(-len(lines) // columns)
    pitch = 5.2 if sheet.narrow else 4.7
    if wide - 5.0 > room:
        return notes(sheet, lines, top)
    for at, line in enumerate(lines):
        y = top + cap(em) + (at % share) * pitch
        sheet.text(line, margin(sheet) + (at // share) * wide, y, "note")
    return top + share * pitch + 1.0


def _entries(floor: _Floor) -> tuple[Entry, ...]:
    entries = [Entry(letter="A", text="board, or cut from a new one", material="floor board")]
    if any(offcut for *_, offcut in floor.boards()):
        entries.append(Entry(letter="B", text="offcut of another row", material="floor offcut"))
    entries += [
        Entry(
            letter=f"P{pipe.number.text}",
            text=(
                f"hole {pipe.hole.text}, row {pipe.row.text}: "
                f"{pipe.along.text} along, {pipe.across.text} across"
            ),
        )
        for pipe in floor.pipes
    ]
    return tuple(entries)


def _closing(floor: _Floor) -> tuple[str, ...]:
    first, last = floor.rows[0], floor.rows[-1]
    return (
        f"Row 1 is {first.width.text} wide, row {last.number.text} is {last.width.text} wide. "
        f"Gap of {floor.gap.text} at every wall and round every pipe. All in mm, from the floor's own edge.",
    )


def _alt(floor: _Floor, named: str) -> str:
    first, last = floor.rows[0], floor.rows[-1]
    return " ".join(
        (
            f"Plan of the floor{f', {floor.place},' if floor.place else ''} at {named}.",
            f"{floor.along.text} mm along the boards and {floor.across.text} mm across them, with a gap of",
            f"{floor.gap.text} mm all round, in {len(floor.rows)} rows.",
            f"Row 1 is {first.width.text} mm wide and the last {last.width.text} mm.",
            f"Lengths in mm, row by row. {'; '.join(_row_words(row) for row in floor.rows)}.",
            *(
                f"Pipe {pipe.number.text} in row {pipe.row.text}, hole {pipe.hole.text} mm."
                for pipe in floor.pipes
            ),
        )
    )


@drawing
def floor_plan(
    width: float,
    *,
    along: Size,
    across: Size,
    gap: Size,
    rows: tuple[PlannedRow, ...],
    pipes: tuple[PlannedHole, ...],
    place: str = "",
) -> Drawn:
    """Plan of a wood floor with every row and joint.

    Sizes in mm; the floor's own size within the gap, rows from the starting wall. The scale is the largest of
    1:10 to 1:1000 that fits the sheet; a pipe's hole is drawn no smaller than can be seen. Raises ValueError
    where there is no row.
    """
    if not rows:
        raise ValueError("a floor without a row cannot be drawn")
    sheet = Sheet(width=width)
    floor = _Floor(place=place, along=along, across=across, gap=gap, rows=rows, pipes=pipes)
    aside = extent(rows[-1].number.text, sheet.em("figure"))[0] + 2.0
    taken = 6.0 if sheet.thumbnail else 2 * margin(sheet) + aside + 2 * _BAND + 11.0
    scale, named = _scale(floor, width - taken)
    words = f"{place or 'Room'}, floor plan, {named}"
    view = _view(floor, sheet, scale, title(sheet, words), aside)
    _paint(view, floor)
    if not sheet.thumbnail:
        _lettering(view, floor)
    sheet.height = math.ceil(
        max(sheet.bottom() + 3.0, view.zone.box.bottom - 6.0 if sheet.thumbnail else 0.0)
    )
    return Drawn(sheet=sheet, title=words, alt=_alt(floor, named), scale=named, key=_entries(floor))


def _lettering(view: View, floor: _Floor) -> None:
    sheet = view.sheet
    _row_numbers(view, floor)
    _arrow(view, floor)
    _dimensions(view, floor)
    _pipe_letters(view, floor)
    _board_letters(view, floor)
    sheet.settle()
    top = key(sheet, _entries(floor), view.zone.box.bottom + 3.0) + 2.0
    top = _table(sheet, floor.rows, top)
    notes(sheet, _closing(floor), top + 1.0)
    if sheet.unplaced:
        words = f"Not figured on the view: {'; '.join(sheet.unplaced)}."
        paragraph(sheet, words, margin(sheet), sheet.bottom() + 3.0, sheet.width - 2 * margin(sheet), NOTES)
