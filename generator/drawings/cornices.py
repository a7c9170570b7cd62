"""A sprung cornice: in place between wall and ceiling, round its room, and lying on the saw."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from generator.drawings.clipping import Box, Point, Points, clip_to_convex, rectangle, without_doubles
from generator.drawings.dimensions import angle_arc, dimension
from generator.drawings.figures import Angle, Part, Shape, Size, Substance
from generator.drawings.keys import Entry, key, margin, notes, rule_bar, title
from generator.drawings.lettering import cap
from generator.drawings.measures import Measures, section_of
from generator.drawings.pens import AXIS, HIDDEN, NOTES, SQUARE_LINE, VISIBLE, VISIBLE_STANDING
from generator.drawings.registry import Drawn, drawing
from generator.drawings.sheet import Sheet, Zone
from generator.drawings.skirting_plans import (
    RoomPlan,
    inward,
    left_out,
    room_scale,
    room_view,
    wall_labels,
)
from generator.drawings.views import View, dimension_layer
from generator.drawings.words import MADE_OF, say
from generator.quantities.families.cornices import EXTERNAL, INTERNAL, SAWN
from generator.quantities.rooms import outline

_SCALES = ((1.0, "1:1"), (0.5, "1:2"), (0.2, "1:5"), (0.1, "1:10"))
_MATERIALS = {"mdf": "new mdf", "timber": "new timber"}
_TALLEST = 175.0
# A page holds a drawing of this height with its caption; a plan with a long key is drawn smaller for it.
_PAGE, _ROOM_TALLEST = 245.0, (150.0, 110.0, 75.0, 45.0)
_JOIST, _PLASTER, _BOARD, _CORE = 32.0, 13.0, 12.5, 27.0
_BESIDE = 30.0
_BELOW = 40.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Sprung:
    """The moulding in the corner; x from the wall's face into the room, y down from the ceiling."""

    spring: Angle
    width: Size
    thickness: Size
    edge: Size
    drop: Size
    projection: Size
    ground_up: Size
    ground_out: Size
    pin: Size
    pin_line: Size
    bead: Size
    shape: str
    material: str
    measures: Measures | None

    @property
    def turn(self) -> float:
        return math.radians(self.spring.degrees)

    @property
    def along(self) -> Point:
        """From the wall's edge up to the ceiling's."""
        return math.sin(self.turn), -math.cos(self.turn)

    @property
    def off(self) -> Point:
        """From the back out of the face."""
        return math.cos(self.turn), math.sin(self.turn)

    @property
    def lip(self) -> float:
        """How high the edge at the ceiling stands, square to it."""
        return self.edge.mm / math.tan(self.turn)

    @property
    def face_width(self) -> float:
        """The face between both square edges."""
        return self.width.mm - self.edge.mm / math.sin(self.turn)

    def at(self, along: float, above: float) -> Point:
        """A point by its distance up the face from its lower edge, and above its back."""
        (u, v), (p, q) = self.along, self.off
        rise = above - self.thickness.mm
        return (
            self.edge.mm + along * u + rise * p,
            self.drop.mm + along * v + rise * q,
        )

    def moulding(self) -> Points:
        """The section in place: its face as the profile has it, its edges square, its back bevelled."""
        face = Size(mm=self.face_width, text="")
        strip = section_of(self.shape, face, self.thickness, self.measures).points()
        turned = tuple(self.at(u, v) for u, v in strip)
        far = self.width.mm
        lower = (self.at(0.0, 0.0), (0.0, self.drop.mm), (self.edge.mm, self.drop.mm))
        upper = ((self.projection.mm, self.lip), (self.projection.mm, 0.0), self.at(self.face_width, 0.0))
        faced = [point for (_, v), point in zip(strip, turned, strict=True) if v > 1e-9]
        whole = (self.at(-far, 0.0), *lower[1:], *faced, *upper[:2], self.at(self.face_width + far, 0.0))
        clipped = clip_to_convex(whole, rectangle(0.0, 0.0, 2 * far, self.drop.mm))
        return without_doubles([(round(x, 6), round(y, 6)) for x, y in clipped])

    def ground(self) -> Points:
        return ((0.0, 0.0), (self.ground_out.mm, 0.0), (0.0, self.ground_up.mm))

    def nail(self) -> Points:
        """The pin, square through the face opposite the ground's deepest place, with a pointed end."""
        face = Size(mm=self.face_width, text="")
        middle = self.pin_line.mm
        head = section_of(self.shape, face, self.thickness, self.measures).face_at(middle)
        foot = head - self.pin.mm
        half = 0.7
        ways = ((-half, head), (half, head), (half, foot + 1.6), (0.0, foot), (-half, foot + 1.6))
        return tuple(self.at(middle + u, v) for u, v in ways)

    def beads(self) -> tuple[Points, Points]:
        """The three-cornered beads under the lower edge and beside the upper one."""
        wide, low, out = self.bead.mm, self.drop.mm, self.projection.mm
        return (
            ((0.0, low), (wide, low), (0.0, low + wide)),
            ((out, 0.0), (out, wide), (out + wide, 0.0)),
        )


def _sprung_parts(made: _Sprung) -> Iterator[tuple[str, str, Points, str, str, tuple[int, ...]]]:
    """Letter, name, outline, material, words and broken sides of each part."""
    low, far = made.drop.mm + _BELOW, made.projection.mm + _BESIDE
    words, material = say(MADE_OF[made.material]), _MATERIALS[made.material]
    size = f"{made.shape.capitalize()}, {words}, {made.width.text} × {made.thickness.text}"
    wall = rectangle(-_PLASTER - _CORE, -_BOARD, -_PLASTER, low)
    yield "E", "wall", wall, "block", say("Wall"), (2, 3)
    yield "F", "plaster", rectangle(-_PLASTER, 0.0, 0.0, low), "plaster", say("Plaster"), (2,)
    board = rectangle(-_PLASTER, -_BOARD, far, 0.0)
    yield "D", "ceiling", board, "plaster", say("Ceiling board"), (1,)
    joist = rectangle(-_PLASTER, -_BOARD - _JOIST, far, -_BOARD)
    yield "C", "joist", joist, "long grain", say("Joist or noggin, found and marked"), (0, 1)
    ground = say(
        "Ground, %(ground_up)s up the wall and %(ground_out)s out",
        ground_up=made.ground_up.text,
        ground_out=made.ground_out.text,
    )
    yield "B", "ground", made.ground(), "new timber", ground, ()
    yield "A", "moulding", made.moulding(), material, size, ()


def _sprung_view(made: _Sprung, sheet: Sheet, below: float) -> tuple[View, float, str]:
    wide = _PLASTER + _CORE + made.projection.mm + _BESIDE
    high = _BOARD + _JOIST + made.drop.mm + _BELOW
    room = sheet.width - (3.0 if sheet.thumbnail else 2 * margin(sheet) + 8.0)
    fits = (s for s in _SCALES if wide * s[0] <= room and high * s[0] <= _TALLEST)
    scale, named = next(fits, _SCALES[-1])
    left = (sheet.width - wide * scale) / 2 if sheet.narrow else margin(sheet) + 6.0
    top = below + (1.0 if sheet.thumbnail else 5.0)
    origin = (left + (_PLASTER + _CORE) * scale, top + (_BOARD + _JOIST) * scale)
    low = origin[1] + (made.drop.mm + _BELOW) * scale
    zone = Zone(box=Box(0.5, below, sheet.width - 0.5, low + 9.0))
    return View(sheet=sheet, scale=scale, origin=origin, zone=zone), low, named


def _paint_sprung(view: View, made: _Sprung) -> None:
    for _, name, points, material, _, broken in _sprung_parts(made):
        if broken:
            view.open_part(name, points, material, broken)
        else:
            view.part(name, points, material)
    if made.bead.mm > 0:
        for name, points in zip(("lower bead", "upper bead"), made.beads(), strict=True):
            view.part(name, points, "filler")
    view.part("pin", made.nail(), "steel")


def _sprung_sizes(view: View, made: _Sprung) -> None:
    drop, out = made.drop.mm, made.projection.mm
    right = view.at(out, 0)[0] + 11.0
    ends = view.at(out, 0.0), view.at(made.edge.mm, drop)
    dimension(
        view, *ends, right, made.drop.text, say("drop %(drop)s", drop=made.drop.text), direction="upright"
    )
    low = view.at(0, drop + _BELOW)[1] + 4.0
    ends = view.at(0.0, drop), view.at(out, made.lip)
    dimension(
        view,
        *ends,
        low,
        made.projection.text,
        say("projection %(projection)s", projection=made.projection.text),
    )
    _spring_arc(view, made)


def _spring_arc(view: View, made: _Sprung) -> None:
    """The spring angle between the wall and a line along the back, set off into the room to be seen."""
    gap = 0.75 * _BELOW
    foot = view.at(0.0, made.drop.mm + gap)
    u, v = made.along
    reach = min(0.85 * made.width.mm * view.scale, 60.0)
    tip = (foot[0] + reach * u, foot[1] + reach * v)
    dimension_layer(view, (foot, tip), AXIS)
    radius = (gap - made.bead.mm - 3.0) * view.scale
    text = f"{made.spring.text}°"
    start, end = -math.pi / 2, math.atan2(v, u)
    angle_arc(view, foot, radius, start, end, text, say("spring angle %(text)s from the wall", text=text))


def _sprung_letters(view: View, made: _Sprung) -> None:
    for letter, name, points, *_ in _sprung_parts(made):
        view.letter(letter, name, points)
    if made.bead.mm > 0:
        x, y = made.beads()[1][2]
        view.pointer("b", (x - made.bead.mm * 0.6, y + made.bead.mm * 0.2), say("bead"), (60, 45, 75, 30))
    head = made.nail()[0]
    view.pointer("p", head, say("pin %(pin)s", pin=made.pin.text), (35, 20, 50, 60))


def _sprung_entries(made: _Sprung) -> tuple[Entry, ...]:
    parts = sorted(_sprung_parts(made))
    bead = (Entry(letter="b", text=say("filler, both edges, %(bead)s × %(bead)s", bead=made.bead.text)),)
    return (
        *(Entry(letter=letter, text=words, material=made_of) for letter, _, _, made_of, words, _ in parts),
        *(bead if made.bead.mm > 0 else ()),
        Entry(
            letter="p",
            text=say(
                "pin, %(pin)s, %(pin_line)s up the face from its lower edge",
                pin=made.pin.text,
                pin_line=made.pin_line.text,
            ),
        ),
    )


@drawing
def sprung_section(
    width: float,
    *,
    spring: Angle,
    moulding_width: Size,
    thickness: Size,
    edge: Size,
    drop: Size,
    projection: Size,
    ground_up: Size,
    ground_out: Size,
    pin: Size,
    pin_line: Size,
    bead: Size,
    shape: Shape,
    material: Substance,
    measures: Measures | None = None,
    place: str = "",
) -> Drawn:
    """Sprung cornice in place, cut through, with its spring angle.

    Sizes in mm; `spring` from the wall to the moulding's back. The moulding stands with its square edges,
    of breadth `edge` below, on wall and ceiling, `moulding_width` from contact to contact; the pin goes in
    `pin_line` up the face from its lower edge; wall and ceiling are no more than a sketch. Raises
    ValueError for a spring angle outside 5° to 85°.
    """
    if not 5 <= spring.degrees <= 85:
        raise ValueError(f"no moulding is sprung at {spring.text} degrees")
    made = _Sprung(
        spring=spring, width=moulding_width, thickness=thickness, edge=edge, drop=drop,
        projection=projection, ground_up=ground_up, ground_out=ground_out, pin=pin, pin_line=pin_line,
        bead=bead, shape=shape,
        material=material, measures=measures,
    )  # fmt: skip
    sheet = Sheet(width=width)
    head = say("%(place)s, section", place=place or say("Cornice"))
    view, low, named = _sprung_view(made, sheet, title(sheet, head))
    _paint_sprung(view, made)
    if not sheet.thumbnail:
        _sprung_lettering(view, made, low, named)
    sheet.height = math.ceil(max(sheet.bottom(), low) + 3.0)
    return Drawn(
        sheet=sheet,
        title=f"{head} {named}",
        alt=_sprung_alt(made, named),
        scale=named,
        key=_sprung_entries(made),
    )


def _sprung_lettering(view: View, made: _Sprung, low: float, named: str) -> None:
    sheet = view.sheet
    _sprung_sizes(view, made)
    _sprung_letters(view, made)
    sheet.settle()
    bottom = key(sheet, _sprung_entries(made), low + 11.0) + 1.0
    lines = (
        say(
            "At %(named)s. The spring angle lies between wall and back; the dashed line runs along the back.",
            named=named,
        ),
        say("All in mm."),
    )
    bottom = notes(sheet, (*sheet.unplaced, *lines), bottom)
    if view.scale == 1.0:
        rule_bar(sheet, say("full size"), bottom + 1.0)


def _sprung_alt(made: _Sprung, named: str) -> str:
    return say(
        "Section at %(named)s of a %(shape)s cornice of %(material)s sprung between wall and ceiling at "
        "%(spring)s degrees from the wall. It is %(width)s mm from contact to contact and %(thickness)s mm "
        "thick, drops %(drop)s mm down the wall and stands %(projection)s mm out along the ceiling. Behind "
        "it a three-cornered ground, %(ground_up)s mm up the wall and %(ground_out)s mm out; a pin of "
        "%(pin)s mm through the face into it; filler along both edges.",
        named=named,
        shape=made.shape,
        material=say(MADE_OF[made.material]),
        spring=made.spring.text,
        width=made.width.text,
        thickness=made.thickness.text,
        drop=made.drop.text,
        projection=made.projection.text,
        ground_up=made.ground_up.text,
        ground_out=made.ground_out.text,
        pin=made.pin.text,
    )


# The saw

_TABLE_SCALES = (
    (0.5, "1:2"), (1 / 3, "1:3"), (0.25, "1:4"), (0.2, "1:5"), (0.1, "1:10"), (0.05, "1:20"), (0.02, "1:50"),
    (0.01, "1:100"),
)  # fmt: skip
_PAST, _PAST_SMALL = 3.0, 1.0
_ENDS = (("left", INTERNAL), ("right", INTERNAL), ("left", EXTERNAL), ("right", EXTERNAL))
_PLACED = {INTERNAL: "inside corner", EXTERNAL: "outside corner"}


@dataclass(frozen=True, slots=True, kw_only=True)
class _Saw:
    """The settings for one corner, with the moulding they are cut in."""

    corner: Angle
    mitre: Angle
    bevel: Angle
    width: Size

    @property
    def run(self) -> float:
        """How far the cut runs along the piece over its width."""
        return self.width.mm * math.tan(math.radians(self.mitre.degrees))

    @property
    def reach(self) -> float:
        """How much of the piece is shown to either side of the cut's middle."""
        return self.run / 2 + 0.55 * self.width.mm


def _saw_scale(saw: _Saw, room: float) -> tuple[float, str]:
    wide = 2 * saw.reach + 20.0
    return next((s for s in _TABLE_SCALES if wide * s[0] <= room), _TABLE_SCALES[-1])


def _on_table(sheet: Sheet, saw: _Saw, end: tuple[str, str], scale: float, at: Point) -> float:
    """One end on the saw from above, fence up the sheet; return the y below it."""
    sawn = SAWN[end]
    head = say("%(end)s end, %(place)s", end=end[0].capitalize(), place=say(_PLACED[end[1]]))
    left, top = at
    if not sheet.thumbnail:
        sheet.text(head, left, top + cap(sheet.em("note")), "note", weight="bold")
        top += 6.0
    origin = (left + (saw.reach + 8.0) * scale, top + 4.0)
    low = origin[1] + saw.width.mm * scale
    wide = 2 * (saw.reach + 8.0) * scale
    zone = Zone(box=Box(left, top, left + wide, low + 7.0))
    view = View(sheet=sheet, scale=scale, origin=origin, zone=zone)
    _table_parts(view, saw, sawn.table, sawn.keep, " ".join(end))
    if not sheet.thumbnail:
        _table_words(view, saw, sawn.fence, sawn.table)
    return low + (2.0 if sheet.thumbnail else 9.0)


def _table_parts(view: View, saw: _Saw, table: str, keep: str, name: str) -> None:
    far, wide = saw.reach, saw.width.mm
    way = 1 if table == "right" else -1
    back, front = -way * saw.run / 2, way * saw.run / 2
    fence = rectangle(-far - 8.0, -6.0, far + 8.0, 0.0)
    view.part(f"fence, {name}", fence, "beyond")
    kept, gone = (-far, far) if keep == "left" else (far, -far)
    piece = ((kept, 0.0), (back, 0.0), (front, wide), (kept, wide))
    waste = ((gone, 0.0), (back, 0.0), (front, wide), (gone, wide))
    view.open_part(f"piece, {name}", piece, "new work in elevation", (3,))
    if not view.sheet.thumbnail:
        view.line((waste[1], waste[0], waste[3], waste[2]), HIDDEN)
    reach = (_PAST_SMALL if view.sheet.thumbnail else _PAST) / view.scale
    lean = math.radians(saw.mitre.degrees) * way
    tip = (front + reach * math.sin(lean), wide + reach * math.cos(lean))
    view.line(((back, 0.0), tip), VISIBLE, f"cut, {name}")
    if not view.sheet.thumbnail:
        dimension_layer(view, (view.at(back, 0.0), view.at(back, wide + reach)), SQUARE_LINE)


def _table_words(view: View, saw: _Saw, fence: str, table: str) -> None:
    way = 1 if table == "right" else -1
    pivot = view.at(-way * saw.run / 2, 0.0)
    square, cut = math.pi / 2, math.pi / 2 - way * math.radians(saw.mitre.degrees)
    text = f"{saw.mitre.text}°"
    words = say("saw turned %(text)s to the %(table)s", text=text, table=table)
    radius = 0.8 * saw.width.mm * view.scale
    angle_arc(view, pivot, radius, min(square, cut), max(square, cut), text, words)
    view.sheet.settle()
    below = view.at(0.0, saw.width.mm)[1]
    em = view.sheet.em("note")
    view.sheet.text(
        say("%(fence)s to the fence", fence=fence),
        view.zone.box.left,
        below + _PAST + 1.5 + cap(em),
        "note",
        colour=NOTES,
    )


def _tilted(sheet: Sheet, saw: _Saw, at: Point, wide: float) -> float:
    """The blade from the front, leaning to the left; return the y below it."""
    left, top = at
    sheet.text(say("Blade from the front"), left, top + cap(sheet.em("note")), "note", weight="bold")
    tall = 24.0
    foot = (left + min(0.5 * wide, 30.0), top + 10.0 + tall)
    lean = math.radians(saw.bevel.degrees)
    zone = Zone(box=Box(left, top + 5.0, left + wide, foot[1] + 6.0))
    view = View(sheet=sheet, scale=1.0, origin=foot, zone=zone)
    view.line(((-26.0, 0.0), (26.0, 0.0)), VISIBLE_STANDING, "table")
    view.line(((0.0, 0.0), (-tall * math.sin(lean), -tall * math.cos(lean))), VISIBLE, "blade")
    dimension_layer(view, (foot, (foot[0], foot[1] - tall)), SQUARE_LINE)
    text, up = f"{saw.bevel.text}°", -math.pi / 2
    angle_arc(view, foot, 0.72 * tall, up - lean, up, text, say("blade tilted %(text)s", text=text))
    sheet.settle()
    return foot[1] + 4.0


@drawing
def sprung_cuts(
    width: float,
    *,
    corner: Angle,
    mitre: Angle,
    bevel: Angle,
    moulding_width: Size,
    place: str = "",
) -> Drawn:
    """A sprung moulding lying on the saw: how each of its ends is cut at one corner.

    Angles in degrees, the width in mm from contact to contact; the four ends are seen from above, the piece
    flat on its back, on a saw whose blade leans to the left. Which edge lies to the fence, and to which side
    the saw is turned, is as `quantities.families.cornices` has it.
    """
    saw = _Saw(corner=corner, mitre=mitre, bevel=bevel, width=moulding_width)
    sheet = Sheet(width=width)
    head = say(
        "%(place)s on the saw, corner of %(corner)s°", place=place or say("Cornice"), corner=corner.text
    )
    low, named = _saw_views(sheet, saw, title(sheet, head))
    if not sheet.thumbnail:
        notes(sheet, (*sheet.unplaced, *_saw_lines(named)), low + 1.0)
    sheet.height = math.ceil(max(sheet.bottom(), low) + 3.0)
    return Drawn(sheet=sheet, title=f"{head}, {named}", alt=_saw_alt(saw, named), scale=named)


def _saw_views(sheet: Sheet, saw: _Saw, top: float) -> tuple[float, str]:
    across = 1 if sheet.narrow and not sheet.thumbnail else 2
    edge = 2.0 if sheet.thumbnail else margin(sheet)
    wide = (sheet.width - 2 * edge) / across
    scale, named = _saw_scale(saw, wide - 4.0)
    low = top + (0.0 if sheet.thumbnail else 2.0)
    for row in range(0, len(_ENDS), across):
        ends = _ENDS[row : row + across]
        tops = [_on_table(sheet, saw, end, scale, (edge + at * wide, low)) for at, end in enumerate(ends)]
        low = max(tops) + (1.0 if sheet.thumbnail else 5.0)
    return (low, named) if sheet.thumbnail else (_tilted(sheet, saw, (edge, low), wide), named)


def _saw_lines(named: str) -> tuple[str, ...]:
    return (
        say(
            "From above at %(named)s, the piece flat on its back, face up; dashed, what falls off. Left and "
            "right are as you face the wall.",
            named=named,
        ),
        say(
            "For a blade that leans to the left. Where it leans to the right, turn each piece about and the "
            "saw the other way."
        ),
    )


def _saw_alt(saw: _Saw, named: str) -> str:
    ends = " ".join(
        say(
            "%(end)s end at an %(place)s: %(fence)s to the fence, saw turned to the %(table)s, the piece on "
            "the %(keep)s of the blade.",
            end=end[0].capitalize(),
            place=say(_PLACED[end[1]]),
            fence=SAWN[end].fence,
            table=SAWN[end].table,
            keep=SAWN[end].keep,
        )
        for end in _ENDS
    )
    return say(
        "A sprung moulding %(width)s mm wide lying on its back on the saw at %(named)s, for a corner of "
        "%(corner)s degrees: the saw is turned %(mitre)s degrees from square and its blade tilted %(bevel)s "
        "degrees from upright, to the left. %(ends)s",
        width=saw.width.text,
        named=named,
        corner=saw.corner.text,
        mitre=saw.mitre.text,
        bevel=saw.bevel.text,
        ends=ends,
    )


# The room


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedLength(Part):
    """A length of cornice: its wall, both edges and what it is cut to."""

    mark: str
    wall: Size
    left_turns: str
    right_turns: str
    wall_edge: Size
    ceiling_edge: Size
    length_to_cut: Size


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedCorner(Part):
    """The corner at the right-hand end of a wall, with both settings of the saw."""

    number: Size
    angle: Angle
    turns: str
    mitre: Angle
    bevel: Angle


_STRIP = 2.4


def _strip(plan: RoomPlan, corners: tuple[PlannedCorner, ...], piece: PlannedLength, broad: float) -> Points:
    """The piece as a strip, each end mitred on the line that halves its corner."""
    wall = int(piece.wall.mm) - 1
    left, right = (_run(corners[at], broad) for at in (wall - 1, wall))
    end = plan.walls[wall].mm
    return (
        plan.point(wall, 0.0, 0.0),
        plan.point(wall, end, 0.0),
        plan.point(wall, end + right, broad),
        plan.point(wall, -left, broad),
    )


def _run(corner: PlannedCorner, broad: float) -> float:
    run = broad / math.tan(math.radians(corner.angle.degrees) / 2)
    return run if corner.turns == EXTERNAL else -run


def _corner_at(plan: RoomPlan, corner: PlannedCorner, off: float) -> Point:
    """A point on the line that halves a corner, `off` from it into the room."""
    wall = int(corner.number.mm) - 1
    return plan.point(wall, plan.walls[wall].mm + _run(corner, off), off)


def _room_letters(
    view: View, plan: RoomPlan, pieces: tuple[PlannedLength, ...], corners: tuple[PlannedCorner, ...]
) -> None:
    broad = _STRIP / view.scale
    for piece in pieces:
        way = inward(plan, int(piece.wall.mm) - 1)
        turns = tuple(way + lean for lean in (25, -25, 45, -45, 12, -12, 60, -60))
        words = say(
            "piece %(mark)s, %(length_to_cut)s", mark=piece.mark, length_to_cut=piece.length_to_cut.text
        )
        view.letter(piece.mark, words, _strip(plan, corners, piece, broad), nearest=6.0, turns=turns)
    for corner in corners:
        into = _corner_at(plan, corner, 1.0 / view.scale)
        x, y = plan.point(int(corner.number.mm) - 1, plan.walls[int(corner.number.mm) - 1].mm, 0.0)
        way = round(math.degrees(math.atan2(into[1] - y, into[0] - x)))
        turns = tuple(way + lean for lean in (0, 15, -15, 30, -30))
        place = _corner_at(plan, corner, broad)
        view.pointer(
            corner.number.text, place, say("corner %(corner)s", corner=corner.number.text), turns=turns
        )


def _room_entries(pieces: tuple[PlannedLength, ...], corners: tuple[PlannedCorner, ...]) -> tuple[Entry, ...]:
    return (
        *(Entry(letter=piece.mark, text=_length_said(piece)) for piece in pieces),
        *(Entry(letter=corner.number.text, text=_corner_said(corner)) for corner in corners),
    )


def _length_said(piece: PlannedLength) -> str:
    return say(
        "%(length_to_cut)s, wall %(wall)s: wall edge %(wall_edge)s, ceiling edge %(ceiling_edge)s",
        length_to_cut=piece.length_to_cut.text,
        wall=piece.wall.text,
        wall_edge=piece.wall_edge.text,
        ceiling_edge=piece.ceiling_edge.text,
    )


def _corner_said(corner: PlannedCorner) -> str:
    inside = "inside" if corner.turns == INTERNAL else "outside"
    return say(
        "%(inside)s, %(angle)s°: saw %(mitre)s°, tilt %(bevel)s°",
        inside=inside,
        angle=corner.angle.text,
        mitre=corner.mitre.text,
        bevel=corner.bevel.text,
    )


@drawing
def cornice_plan(
    width: float,
    *,
    walls: tuple[Size, ...],
    corners: tuple[Angle, ...],
    pieces: tuple[PlannedLength, ...],
    settings: tuple[PlannedCorner, ...],
    place: str = "",
) -> Drawn:
    """Plan of a room with its sprung cornice, and the saw's settings at every corner.

    Walls in mm clockwise, the corner at each wall's right-hand end in degrees inside the room; `settings` are
    those corners with the angle between the walls and how the saw is set. The scale is the largest of 1:10 to
    1:1000 that fits the sheet and, with its key, a page; the cornice is drawn 2.4 mm broad on paper.
    """
    shape = outline([wall.mm for wall in walls], [corner.degrees for corner in corners])
    plan = RoomPlan(place=place, shape=shape, walls=walls, corners=corners, pieces=(), doors=(), radiators=())
    *higher, least = _ROOM_TALLEST
    laid = (_room_laid(plan, width, pieces, settings, tallest) for tallest in higher)
    fits = (drawn for drawn in laid if drawn.sheet.narrow or drawn.sheet.height <= _PAGE)
    return next(fits, None) or _room_laid(plan, width, pieces, settings, least)


def _room_laid(
    plan: RoomPlan,
    width: float,
    pieces: tuple[PlannedLength, ...],
    settings: tuple[PlannedCorner, ...],
    tallest: float,
) -> Drawn:
    """The plan no higher on paper than `tallest` mm, with what stands under it."""
    sheet, place = Sheet(width=width), plan.place
    beside = 4.0 if sheet.thumbnail else 11.0
    scale, named = room_scale(plan, width, beside, tallest)
    words = say("%(place)s, cornice plan, %(named)s", place=place or say("Room"), named=named)
    view = room_view(plan, sheet, scale, title(sheet, words), beside)
    _room_parts(view, plan, pieces, settings)
    entries = _room_entries(pieces, settings)
    if not sheet.thumbnail:
        wall_labels(view, plan)
        _room_letters(view, plan, pieces, settings)
        sheet.settle()
        low = key(sheet, entries, view.zone.box.bottom + 3.0) + 1.5
        notes(sheet, _room_lines(), low)
        left_out(sheet)
    sheet.height = math.ceil(max(sheet.bottom() + 3.0, view.zone.box.bottom if sheet.thumbnail else 0.0))
    alt = _room_alt(plan, named, pieces, settings)
    return Drawn(sheet=sheet, title=words, alt=alt, scale=named, key=entries)


def _room_lines() -> tuple[str, ...]:
    return (
        say(
            "Letters run in the order of fitting; figures are the corners, each at the right-hand end of its "
            "wall. The saw is turned from a square cut and its blade tilted from upright, the piece on its "
            "back."
        ),
        say("Walls and lengths in mm and to scale; the breadth of the cornice is not."),
    )


def _room_parts(
    view: View, plan: RoomPlan, pieces: tuple[PlannedLength, ...], corners: tuple[PlannedCorner, ...]
) -> None:
    band, broad = 2.6 / view.scale, _STRIP / view.scale
    for wall in range(len(plan.walls)):
        points = plan.patch(wall, 0.0, plan.walls[wall].mm, 0.0, -band)
        view.part(f"wall {wall + 1}", points, "block")
    for piece in pieces:
        view.part(f"piece {piece.mark}", _strip(plan, corners, piece, broad), "new work in elevation")


def _room_alt(
    plan: RoomPlan, named: str, pieces: tuple[PlannedLength, ...], corners: tuple[PlannedCorner, ...]
) -> str:
    lengths = "; ".join(f"{piece.mark}: {_length_said(piece)}" for piece in pieces)
    settings = "; ".join(
        say("corner %(corner)s: %(corner_said)s", corner=corner.number.text, corner_said=_corner_said(corner))
        for corner in corners
    )
    return say(
        "Plan of the room%(place)s at %(named)s with its cornice. Pieces in the order of fitting, length to "
        "cut in mm. %(lengths)s. Settings of the saw. %(settings)s.",
        place=f", {plan.place}," if plan.place else "",
        named=named,
        lengths=lengths,
        settings=settings,
    )
