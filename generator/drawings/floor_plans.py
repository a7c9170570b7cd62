"""A wood floor in plan: rows from the starting wall, every joint, offcuts tinted, holes for pipes."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from generator.drawings.clipping import Box, Point, Points, circle
from generator.drawings.dimensions import dimension
from generator.drawings.figures import Part, Size
from generator.drawings.keys import Entry, key, margin, notes, paragraph, title
from generator.drawings.lettering import cap, extent
from generator.drawings.pens import INK, NOTES, VISIBLE
from generator.drawings.registry import Drawn, drawing
from generator.drawings.sheet import Sheet, Zone, arrow
from generator.drawings.views import View
from generator.drawings.words import say
from generator.quantities.rectilinear import Cell, Patch, Ring, moved_in, outlines, patches
from generator.quantities.rooms import Outline

_SCALES = (
    (0.1, "1:10"), (0.05, "1:20"), (0.04, "1:25"), (0.02, "1:50"), (0.01, "1:100"), (0.005, "1:200"),
    (0.002, "1:500"), (0.001, "1:1000"),
)  # fmt: skip
_TALLEST = 120.0
_BAND = 2.6
_EVERY = (1, 2, 5, 10, 20, 50)
_LEAST_HOLE = 0.9
_NEAR = 1e-6
# How much of a wall's band a threshold strip covers.
_STRIP = 0.55


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedCorner(Part):
    """A corner of the floor, from its leftmost edge and row 1's, where its side along a wall begins."""

    wall: Size
    x: Size
    y: Size
    side: Size


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedRow(Part):
    """One row from wall to wall: its place and width, the lengths in order, whether its ends are offcuts."""

    number: Size
    mark: str
    start: Size
    top: Size
    width: Size
    pieces: tuple[Size, ...]
    begins: str
    ends: str
    fitted: str

    @property
    def box(self) -> Cell:
        """The least rectangle round it."""
        long = sum(piece.mm for piece in self.pieces)
        left, top = self.start.mm, self.top.mm
        return Cell(left, top, left + long, top + self.width.mm)


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedHole(Part):
    """A hole for a pipe, from its row's start and the starting wall's side of the floor."""

    number: Size
    mark: str
    along: Size
    across: Size
    hole: Size


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedDoor(Part):
    """A door on a wall by number, its ends from the wall's left end, and the strip that covers the gap."""

    number: Size
    wall: Size
    start: Size
    end: Size
    strip: Size


@dataclass(frozen=True, slots=True, kw_only=True)
class _Floor:
    """The floor; x runs along the boards from its leftmost edge, y from the starting wall's side."""

    place: str
    along: Size
    across: Size
    gap: Size
    edge: tuple[PlannedCorner, ...]
    rows: tuple[PlannedRow, ...]
    pipes: tuple[PlannedHole, ...]
    doors: tuple[PlannedDoor, ...]

    @property
    def ring(self) -> Ring:
        """The floor's corners."""
        return tuple((corner.x.mm, corner.y.mm) for corner in self.edge)

    @property
    def room(self) -> Outline:
        """The walls."""
        ring = moved_in(self.ring, -self.gap.mm)
        return Outline(starts=ring, end=ring[0])

    def boards(self) -> Iterator[tuple[str, Points, bool]]:
        """Each board by row and place, cut to the walls, with whether it is an offcut."""
        for row in self.rows:
            shape, left = self._shape(row), row.box.left
            for at, piece in enumerate(row.pieces):
                offcut = (at == 0 and row.begins == "offcut") or (
                    at == len(row.pieces) - 1 and row.ends == "offcut"
                )
                cells = shape.within(replace(row.box, left=left, right=left + piece.mm))
                for part, points in enumerate(outlines(cells)):
                    more = say(" part %(part)s", part=part + 1) if part else ""
                    yield f"row {row.mark} board {at + 1}{more}", points, offcut
                left += piece.mm

    def _shape(self, row: PlannedRow) -> Patch:
        """The piece of floor that a row covers."""
        box = row.box
        found = patches(self.ring, box.top, box.bottom)
        return min(found, key=lambda each: abs(each.hull.left - box.left) + abs(each.hull.right - box.right))

    def middle(self, pipe: PlannedHole) -> Point:
        """Where a pipe stands."""
        row = next(row for row in self.rows if row.mark == pipe.mark)
        return row.start.mm + pipe.along.mm, pipe.across.mm

    def side(self, door: PlannedDoor) -> int:
        """The side of the floor that a door stands at."""
        return next(at for at, corner in enumerate(self.edge) if corner.wall.mm == door.wall.mm)


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
    _walls(view, floor)
    for name, points, offcut in floor.boards():
        view.part(name, points, "floor offcut" if offcut else "floor board")
    for pipe in floor.pipes:
        radius = max(pipe.hole.mm / 2, _LEAST_HOLE / view.scale)
        view.part(f"pipe {pipe.number.text}", circle(floor.middle(pipe), radius, 1.0), "steel")


def _walls(view: View, floor: _Floor) -> None:
    """Each wall as a band outside the room, open at its doors, with a strip over the gap there."""
    room, band = floor.room, _BAND / view.scale
    bands = [min(band, _thickness(room, at) / 2) for at in range(len(floor.edge))]
    for at, corner in enumerate(floor.edge):
        doors = sorted((door.start.mm, door.end.mm, door) for door in floor.doors if floor.side(door) == at)
        ends = [_end(room, at, bands, first=True), *(edge for door in doors for edge in door[:2])]
        ends.append(_end(room, at, bands, first=False))
        for part, (start, end) in enumerate(zip(ends[::2], ends[1::2], strict=True)):
            if end - start > _NEAR:
                points = _along(room, at, start, end, 0.0, -bands[at])
                view.part(f"wall {corner.wall.text}.{part}", points, "block")
        for start, end, door in doors:
            strip = _along(room, at, start, end, floor.gap.mm, -bands[at] * _STRIP)
            view.part(f"threshold {door.number.text}", strip, "new work, small")


def _thickness(room: Outline, at: int) -> float:
    """How far behind a wall the room goes on, as behind a nib; without end where it does not."""
    (x, y), length = room.walls[at][0], math.dist(*room.walls[at])
    (dx, dy), (out_x, out_y) = room.direction(at), (-n for n in room.into(at))
    behind = math.inf
    for (x1, y1), (x2, y2) in room.walls:
        starts, ends = sorted(((x1 - x) * dx + (y1 - y) * dy, (x2 - x) * dx + (y2 - y) * dy))
        far = (x1 - x) * out_x + (y1 - y) * out_y
        beside = min(ends, length) - max(starts, 0.0) > _NEAR
        behind = min(behind, far) if beside and far > _NEAR else behind
    return behind


def _end(room: Outline, at: int, bands: Sequence[float], *, first: bool) -> float:
    """How far along a wall its band begins or ends; of two that meet, the level one takes the corner."""
    dx, dy = room.direction(at)
    level = abs(dx) > abs(dy)
    beside = (at - 1 if first else at + 1) % len(bands)
    other = room.direction(beside)
    before, after = (other, (dx, dy)) if first else ((dx, dy), other)
    stands_out = before[0] * after[1] - before[1] * after[0] < 0
    past = {(True, False): bands[beside], (False, True): -bands[beside]}.get((level, stands_out), 0.0)
    return -past if first else math.dist(*room.walls[at]) + past


def _along(room: Outline, at: int, start: float, end: float, near: float, far: float) -> Points:
    """A rectangle along a wall between two places on it, `near` and `far` mm into the room."""
    dx, dy = room.into(at)
    ends = ((start, near), (end, near), (end, far), (start, far))
    spots = ((room.along(at, place), off) for place, off in ends)
    return tuple((x + off * dx, y + off * dy) for (x, y), off in spots)


def _every(floor: _Floor, view: View) -> int:
    """How many rows apart the row numbers stand, so that none touch."""
    pitch = max(row.width.mm for row in floor.rows) * view.scale
    need = view.sheet.em("figure") + 0.4
    return next((n for n in _EVERY if n * pitch >= need), len(floor.rows))


def _row_numbers(view: View, floor: _Floor) -> None:
    sheet, step = view.sheet, _every(floor, view)
    x = view.at(-floor.gap.mm, 0)[0] - _BAND - 1.4
    before = -math.inf
    firsts = {row.number.mm: row for row in reversed(floor.rows)}
    for _, row in sorted(firsts.items())[::step]:
        y = view.at(0, row.top.mm + row.width.mm / 2)[1] + cap(sheet.em("figure")) / 2
        if y - before < sheet.em("figure") + 0.4:
            continue
        before = y
        sheet.text(row.number.text, x, y, "figure", anchor="end")


def _dimensions(view: View, floor: _Floor) -> None:
    long, broad = floor.along.mm, floor.across.mm
    left, right = view.at(0, 0), view.at(long, 0)
    at = view.at(0, -floor.gap.mm)[1] - _BAND - 5.0
    dimension(
        view,
        left,
        right,
        at,
        floor.along.text,
        say("floor along the boards %(along)s", along=floor.along.text),
    )
    beside = view.at(long + floor.gap.mm, 0)[0] + _BAND + 5.0
    top, bottom = view.at(long, 0), view.at(long, broad)
    words = say("floor across the boards %(across)s", across=floor.across.text)
    dimension(view, top, bottom, beside, floor.across.text, words, direction="upright")


def _arrow(view: View, floor: _Floor) -> None:
    """Say which wall the rows start from, and which way the boards run."""
    sheet = view.sheet
    y = view.zone.box.bottom - 1.0
    left = view.at(0, 0)[0]
    sheet.line(((left, y - 1.2), (left + 12.0, y - 1.2)), VISIBLE)
    sheet.stroke(arrow((left + 14.0, y - 1.2), 0.0, INK))
    words = say("rows start here") if sheet.narrow else say("rows start here; row 1 at the top")
    sheet.text(words, left + 16.0, y, "note", colour=NOTES)


def _board_letters(view: View, floor: _Floor) -> None:
    """Letter one board and one offcut, below the middle where the rows are clear of the pipes."""
    boards = list(floor.boards())
    for letter, wanted, turns in (("A", False, (-20, 20, 60, -60)), ("B", True, (160, -160, 120, -120))):
        alike = [(name, points) for name, points, offcut in boards if offcut is wanted]
        if alike:
            name, points = alike[len(alike) // 2]
            view.letter(letter, name, points, turns=turns)


def _pipe_letters(view: View, floor: _Floor) -> None:
    for pipe in floor.pipes:
        words = say("pipe %(pipe)s, hole %(hole)s", pipe=pipe.number.text, hole=pipe.hole.text)
        view.pointer(f"P{pipe.number.text}", floor.middle(pipe), words)


def _door_letters(view: View, floor: _Floor) -> None:
    for door in floor.doors:
        middle, side = (door.start.mm + door.end.mm) / 2, floor.side(door)
        (at, *_) = _along(floor.room, side, middle, middle, -_BAND * _STRIP / view.scale, 0.0)
        words = say("strip %(door)s, %(strip)s long", door=door.number.text, strip=door.strip.text)
        view.pointer(f"T{door.number.text}", at, words)


def _row_words(floor: _Floor, row: PlannedRow) -> str:
    """A row's lengths, after what is ripped or notched of it where walls step in."""
    lengths = ", ".join(piece.text for piece in row.pieces)
    outer = (floor.rows[0].number.mm, floor.rows[-1].number.mm)
    usual = max(each.width.mm for each in floor.rows)
    narrow = row.number.mm not in outer and row.width.mm < usual
    said = [say("%(width)s wide", width=row.width.text)] if narrow else []
    said += [say("notched")] if row.fitted else []
    return f"{row.mark} ({', '.join(said)}): {lengths}" if said else f"{row.mark}: {lengths}"


def _table(sheet: Sheet, lines: Sequence[str], top: float) -> float:
    """Set the lengths of every row in as many columns as fit; return the y below them."""
    em = sheet.em("note")
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
    entries = [Entry(letter="A", text=say("board, or cut from a new one"), material="floor board")]
    if any(offcut for *_, offcut in floor.boards()):
        entries.append(Entry(letter="B", text=say("offcut of another row"), material="floor offcut"))
    entries += [
        Entry(
            letter=f"P{pipe.number.text}",
            text=(
                say(
                    "hole %(hole)s, row %(mark)s: %(along)s along, %(across)s across",
                    hole=pipe.hole.text,
                    mark=pipe.mark,
                    along=pipe.along.text,
                    across=pipe.across.text,
                )
            ),
        )
        for pipe in floor.pipes
    ]
    entries += [
        Entry(
            letter=f"T{door.number.text}",
            text=say("threshold strip %(strip)s, wall %(wall)s", strip=door.strip.text, wall=door.wall.text),
        )
        for door in floor.doors
    ]
    return tuple(entries)


def _closing(floor: _Floor) -> tuple[str, ...]:
    first, last = floor.rows[0], floor.rows[-1]
    return (
        say(
            "Row 1 is %(width)s wide, row %(last)s is %(width_2)s wide. Gap of %(gap)s at every wall and "
            "round every pipe. All in mm, from the floor's own edge.",
            width=first.width.text,
            last=last.number.text,
            width_2=last.width.text,
            gap=floor.gap.text,
        ),
        *_edge_words(floor),
    )


def _edge_words(floor: _Floor) -> tuple[str, ...]:
    """The sides of a floor with more than four corners, so that its shape can be set out."""
    if len(floor.edge) == 4:
        return ()
    sides = ", ".join(corner.side.text for corner in floor.edge)
    return (say("The floor's sides, clockwise from the left end of row 1's wall: %(sides)s.", sides=sides),)


def _alt(floor: _Floor, named: str) -> str:
    first, last = floor.rows[0], floor.rows[-1]
    return " ".join(
        (
            say(
                "Plan of the floor%(place)s at %(named)s.",
                place=f", {floor.place}," if floor.place else "",
                named=named,
            ),
            say(
                "%(along)s mm along the boards and %(across)s mm across them, with a gap of %(gap)s mm all "
                "round, in %(rows)s rows.",
                along=floor.along.text,
                across=floor.across.text,
                gap=floor.gap.text,
                rows=last.number.text,
            ),
            say(
                "Row 1 is %(width)s mm wide and the last %(width_2)s mm.",
                width=first.width.text,
                width_2=last.width.text,
            ),
            *_edge_words(floor),
            say(
                "Lengths in mm, row by row. %(rows)s.",
                rows="; ".join(_row_words(floor, row) for row in floor.rows),
            ),
            *_pipe_words(floor),
            *_strip_words(floor),
        )
    )


def _pipe_words(floor: _Floor) -> tuple[str, ...]:
    return tuple(
        say(
            "Pipe %(pipe)s in row %(mark)s, hole %(hole)s mm.",
            pipe=pipe.number.text,
            mark=pipe.mark,
            hole=pipe.hole.text,
        )
        for pipe in floor.pipes
    )


def _strip_words(floor: _Floor) -> tuple[str, ...]:
    return tuple(
        say(
            "Threshold strip %(door)s on wall %(wall)s, %(strip)s mm.",
            door=door.number.text,
            wall=door.wall.text,
            strip=door.strip.text,
        )
        for door in floor.doors
    )


@drawing
def floor_plan(
    width: float,
    *,
    along: Size,
    across: Size,
    gap: Size,
    edge: tuple[PlannedCorner, ...],
    rows: tuple[PlannedRow, ...],
    pipes: tuple[PlannedHole, ...],
    doors: tuple[PlannedDoor, ...],
    place: str = "",
) -> Drawn:
    """Plan of a wood floor with every row and joint.

    Sizes in mm; the floor's own size and edge within the gap, rows from the starting wall, whose strip of the
    floor each board is cut to. Doors stand on walls by number. The scale is the largest of
    1:10 to 1:1000 that fits the sheet; a pipe's hole is drawn no smaller than can be seen. Raises ValueError
    where there is no row.
    """
    if not rows:
        raise ValueError("a floor without a row cannot be drawn")
    sheet = Sheet(width=width)
    floor = _Floor(
        place=place, along=along, across=across, gap=gap, edge=edge, rows=rows, pipes=pipes, doors=doors
    )
    aside = extent(rows[-1].number.text, sheet.em("figure"))[0] + 2.0
    taken = 6.0 if sheet.thumbnail else 2 * margin(sheet) + aside + 2 * _BAND + 11.0
    scale, named = _scale(floor, width - taken)
    words = say("%(place)s, floor plan, %(named)s", place=place or say("Room"), named=named)
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
    _door_letters(view, floor)
    _board_letters(view, floor)
    sheet.settle()
    top = key(sheet, _entries(floor), view.zone.box.bottom + 3.0) + 2.0
    top = _table(sheet, [_row_words(floor, row) for row in floor.rows], top)
    notes(sheet, _closing(floor), top + 1.0)
    if sheet.unplaced:
        words = say("Not figured on the view: %(unplaced)s.", unplaced="; ".join(sheet.unplaced))
        paragraph(sheet, words, margin(sheet), sheet.bottom() + 3.0, sheet.width - 2 * margin(sheet), NOTES)
