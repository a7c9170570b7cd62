"""The plan of a room with its skirting: pieces lettered in the order of fitting, a letter at each joint."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from generator.drawings.clipping import Box, Point, Points, bounds
from generator.drawings.figures import Angle, Part, Size
from generator.drawings.keys import Entry, key, margin, notes, paragraph, title
from generator.drawings.lettering import cap, extent
from generator.drawings.pens import (
    BLUE,
    HIDDEN,
    INK,
    NOTES,
)
from generator.drawings.registry import Drawn, drawing
from generator.drawings.sheet import Label, Sheet, Spot, Zone, arrow
from generator.drawings.views import View
from generator.drawings.words import say
from generator.quantities.rooms import Outline, outline

_SCALES = (
    (0.1, "1:10"), (0.05, "1:20"), (0.04, "1:25"), (0.02, "1:50"), (0.01, "1:100"), (0.005, "1:200"),
    (0.002, "1:500"), (0.001, "1:1000"),
)  # fmt: skip
_STRIP = 2.0
_BAND = 2.6
_OUTSIDE = 11.0
_THUMBNAIL_OUTSIDE = 4.0
_TALLEST = 150.0
_RADIATOR_DEEP = 100.0
_JOINTS = {"scribe": "s", "mitre": "m", "heading": "h"}


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedPiece(Part):
    """A piece of skirting: its wall by number, its ends on it from the left, its joints and its length."""

    mark: str
    wall: Size
    left_joint: str
    right_joint: str
    left_saw: Angle
    right_saw: Angle
    start: Size
    end: Size
    length_to_cut: Size
    behind: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedStretch(Part):
    """A door between its architrave's outer edges, or a radiator: number, wall, and ends from the left."""

    number: Size
    wall: Size
    start: Size
    end: Size


@dataclass(frozen=True, slots=True, kw_only=True)
class RoomPlan:
    """The room with what stands in it; `shape` in real mm."""

    place: str
    shape: Outline
    walls: tuple[Size, ...]
    corners: tuple[Angle, ...]
    pieces: tuple[PlannedPiece, ...]
    doors: tuple[PlannedStretch, ...]
    radiators: tuple[PlannedStretch, ...]

    def point(self, wall: int, at: float, off: float) -> Point:
        """A point `at` along a wall from its left end, `off` mm into the room; below nought in the wall."""
        x, y = self.shape.along(wall, at)
        dx, dy = self.shape.into(wall)
        return x + off * dx, y + off * dy

    def patch(self, wall: int, start: float, end: float, near: float, far: float) -> Points:
        ends = ((start, near), (end, near), (end, far), (start, far))
        return tuple(self.point(wall, at, off) for at, off in ends)

    def clear(self, wall: int) -> Iterator[tuple[float, float]]:
        """The stretches of a wall between doors."""
        own = sorted((d.start.mm, d.end.mm) for d in self.doors if int(d.wall.mm) - 1 == wall)
        at = 0.0
        for start, end in (*own, (self.walls[wall].mm, self.walls[wall].mm)):
            if start > at:
                yield at, start
            at = end


def _strip(plan: RoomPlan, piece: PlannedPiece, broad: float) -> Points:
    """The piece as a strip `broad` real mm wide, each end shaped as its joint is."""
    wall = int(piece.wall.mm) - 1
    left = _shaped(piece.left_joint, piece.left_saw, plan.corners[wall - 1], broad)
    right = _shaped(piece.right_joint, piece.right_saw, plan.corners[wall], broad)
    if piece.left_joint == "heading":
        left = (-left[0], -left[1])
    return (
        plan.point(wall, piece.start.mm - left[0], 0.0),
        plan.point(wall, piece.end.mm + right[0], 0.0),
        plan.point(wall, piece.end.mm + right[1], broad),
        plan.point(wall, piece.start.mm - left[1], broad),
    )


def _shaped(joint: str, saw: Angle, corner: Angle, broad: float) -> tuple[float, float]:
    """How far an end runs past the wall's own end, at the wall and at the face."""
    inside = math.radians(corner.degrees)
    run = broad * math.tan(math.radians(saw.degrees))
    if joint == "scribe":
        return -broad / math.sin(inside), -broad * (1 + math.cos(inside)) / math.sin(inside)
    if joint == "mitre":
        return 0.0, run if corner.degrees > 180 else -run
    if joint == "heading":
        return broad / 2, -broad / 2
    return 0.0, -run


def room_scale(plan: RoomPlan, width: float, beside: float, tallest: float = _TALLEST) -> tuple[float, str]:
    """The largest scale at which a plan fits the sheet's width and, on paper, `tallest` mm."""
    box = bounds(plan.shape.starts)
    wide, high = box.right - box.left, box.bottom - box.top
    fits = (s for s in _SCALES if wide * s[0] <= width - 2 * beside and high * s[0] <= tallest)
    return next(fits, _SCALES[-1])


def room_view(plan: RoomPlan, sheet: Sheet, scale: float, below: float, beside: float) -> View:
    box = bounds(plan.shape.starts)
    wide, high = (box.right - box.left) * scale, (box.bottom - box.top) * scale
    left = (sheet.width - wide) / 2 - box.left * scale
    top = below + beside - box.top * scale
    zone = Zone(box=Box(0.5, below, sheet.width - 0.5, below + high + 2 * beside))
    return View(sheet=sheet, scale=scale, origin=(left, top), zone=zone)


def _paint(view: View, plan: RoomPlan) -> None:
    band = _BAND / view.scale
    for wall in range(len(plan.walls)):
        for at, (start, end) in enumerate(plan.clear(wall)):
            points = plan.patch(wall, start, end, 0.0, -band)
            view.part(f"wall {wall + 1}.{at}", points, "block")
    broad = _STRIP / view.scale
    for piece in plan.pieces:
        view.part(f"piece {piece.mark}", _strip(plan, piece, broad), "new work in elevation")
    for each in plan.radiators:
        wall, near = int(each.wall.mm) - 1, broad + 0.7 / view.scale
        deep = near + max(_RADIATOR_DEEP, 1.6 / view.scale)
        view.part(
            f"radiator {each.number.text}", plan.patch(wall, each.start.mm, each.end.mm, near, deep), "beyond"
        )


def _sight(view: View, plan: RoomPlan) -> None:
    """The line of sight: square into the room from the first door, as far as the wall it meets."""
    if not plan.doors:
        return
    door = plan.doors[0]
    wall, middle = int(door.wall.mm) - 1, (door.start.mm + door.end.mm) / 2
    met = plan.shape.faced(wall, middle)
    if met is None:
        return
    eye = view.at(*plan.point(wall, middle, 0.0))
    end, look = view.at(*plan.point(*met, 0.0)), plan.shape.into(wall)
    facing = plan.shape.into(met[0])
    short = (_STRIP + 1.0) / max(-look[0] * facing[0] - look[1] * facing[1], 0.2)
    tip = (end[0] - short * look[0], end[1] - short * look[1])
    view.sheet.line((eye, tip), HIDDEN)
    towards = math.atan2(look[1], look[0])
    view.sheet.stroke(arrow(tip, towards, INK, length=3.4))


def inward(plan: RoomPlan, wall: int) -> int:
    dx, dy = plan.shape.into(wall)
    return round(math.degrees(math.atan2(dy, dx)))


def _letters(view: View, plan: RoomPlan) -> None:
    broad = _STRIP / view.scale
    for piece in plan.pieces:
        facing = inward(plan, int(piece.wall.mm) - 1)
        turns = tuple(facing + lean for lean in (25, -25, 45, -45, 12, -12, 60, -60))
        words = say(
            "piece %(mark)s, %(length_to_cut)s", mark=piece.mark, length_to_cut=piece.length_to_cut.text
        )
        view.letter(piece.mark, words, _strip(plan, piece, broad), nearest=6.0, turns=turns)


def _joint_letters(view: View, plan: RoomPlan) -> None:
    for piece in plan.pieces:
        wall = int(piece.wall.mm) - 1
        facing = inward(plan, wall)
        for joint, at, along in (
            (piece.left_joint, piece.start.mm, 1),
            (piece.right_joint, piece.end.mm, -1),
        ):
            # A mitre or heading is one joint of two pieces; it is lettered once, at the piece on its left.
            if joint not in _JOINTS or (joint != "scribe" and along == 1):
                continue
            off = _STRIP / view.scale
            place = plan.point(wall, at + (along * off if joint == "scribe" else 0.0), off)
            turns = tuple(facing + along * lean for lean in (-40, -55, -25, -70, -10, 20, 40))
            view.pointer(
                _JOINTS[joint],
                place,
                say("%(joint)s at piece %(mark)s", joint=joint, mark=piece.mark),
                turns=turns,
            )


def wall_labels(view: View, plan: RoomPlan) -> None:
    for at, wall in enumerate(plan.walls):
        text = (
            say("wall %(at)s", at=at + 1)
            if view.sheet.narrow
            else say("wall %(at)s: %(wall)s", at=at + 1, wall=wall.text)
        )
        words = say("wall %(at)s, %(wall)s", at=at + 1, wall=wall.text)
        spots = outside_spots(view, plan, at, text)
        view.sheet.label(
            Label(text=text, kind="figure", colour=BLUE, spots=spots, zone=view.zone, words=words)
        )
    for door in plan.doors:
        middle = (door.start.mm + door.end.mm) / 2
        text = say("door %(door)s", door=door.number.text)
        spots = outside_spots(view, plan, int(door.wall.mm) - 1, text, middle, near=True)
        view.sheet.label(Label(text=text, kind="note", colour=NOTES, spots=spots, zone=view.zone, words=text))


def outside_spots(
    view: View, plan: RoomPlan, wall: int, text: str, at: float | None = None, near: bool = False
) -> Iterator[Spot]:
    """Places outside a wall: along it where it stands level or upright, level beside it otherwise."""
    dx, dy = plan.shape.direction(wall)
    upright = abs(dx) < 0.02
    em = view.sheet.em("figure")
    wide, high = extent(text, em)[0], cap(em)
    length = plan.walls[wall].mm
    for off in (1.2, _BAND + 1.2, _BAND + 5.6) if near else (_BAND + 1.2, _BAND + 2.6, _BAND + 5.6):
        for share in (0.5, 0.35, 0.65, 0.25, 0.75, 0.15, 0.85):
            x, y = view.at(*plan.point(wall, share * length if at is None else at, -off / view.scale))
            ox, oy = (-n for n in plan.shape.into(wall))
            if upright:
                yield Spot(x=x + (high if ox > 0 else 0.0), y=y, upright=True)
                yield Spot(x=x + (wide / 2 + 0.6) * (1 if ox > 0 else -1), y=y + high / 2)
            else:
                shift = wide / 2 * ox if abs(dy) > 0.02 else 0.0
                yield Spot(x=x + shift, y=y + (high if oy > 0 else 0.0))


def _entries(plan: RoomPlan) -> tuple[Entry, ...]:
    return tuple(Entry(letter=piece.mark, text=_said(piece)) for piece in plan.pieces)


def _said(piece: PlannedPiece) -> str:
    behind = say("; behind the radiator") if piece.behind else ""
    left, right = _joint(piece.left_joint, piece.left_saw), _joint(piece.right_joint, piece.right_saw)
    return say(
        "%(length_to_cut)s, wall %(wall)s: %(left)s left, %(right)s right%(behind)s",
        length_to_cut=piece.length_to_cut.text,
        wall=piece.wall.text,
        left=left,
        right=right,
        behind=behind,
    )


def _joint(joint: str, saw: Angle) -> str:
    return (
        f"{joint} {saw.text}°"
        if joint in ("mitre", "heading") or (joint == "square" and saw.degrees)
        else joint
    )


def _legend(plan: RoomPlan) -> tuple[str, ...]:
    used = {joint for piece in plan.pieces for joint in (piece.left_joint, piece.right_joint)}
    said = {
        "scribe": say("s, scribed over the piece it meets"),
        "mitre": say("m, mitred at the angle in the list"),
        "heading": say("h, heading: 45° lap over a fixing"),
    }
    joints = "; ".join(words for joint, words in said.items() if joint in used)
    return (
        say("Letters run in the order of fitting. Left and right are as you face the wall.")
        + (say(" Joints: %(joints)s.", joints=joints) if joints else ""),
        say("The dashed arrow is the look in from door 1.") if plan.doors else "",
        say("Walls and lengths in mm and to scale; the skirting's thickness is drawn larger."),
    )


def _alt(plan: RoomPlan, named: str) -> str:
    doors = "; ".join(
        say(
            "door %(door)s on wall %(wall)s from %(start)s to %(end)s mm",
            door=door.number.text,
            wall=door.wall.text,
            start=door.start.text,
            end=door.end.text,
        )
        for door in plan.doors
    )
    pieces = "; ".join(f"{piece.mark}: {_said(piece)}" for piece in plan.pieces)
    return " ".join(
        (
            say(
                "Plan of the room%(place)s at %(named)s with its skirting.",
                place=f", {plan.place}," if plan.place else "",
                named=named,
            ),
            say(
                "Walls in order, clockwise: %(walls)s mm.",
                walls=", ".join(wall.text for wall in plan.walls),
            ),
            say("Architraves outer edge to outer edge: %(doors)s.", doors=doors)
            if doors
            else say("No door."),
            say("Pieces in the order of fitting, length to cut in mm. %(pieces)s.", pieces=pieces),
        )
    )


@drawing
def skirting_plan(
    width: float,
    *,
    walls: tuple[Size, ...],
    corners: tuple[Angle, ...],
    pieces: tuple[PlannedPiece, ...],
    doors: tuple[PlannedStretch, ...],
    radiators: tuple[PlannedStretch, ...],
    place: str = "",
) -> Drawn:
    """Plan of a room with its skirting in the order of fitting.

    Walls in mm clockwise, the corner at each wall's right-hand end in degrees inside the room. Pieces, doors
    and radiators stand on walls by number, from the left end as one faces the wall. The scale is the largest
    of 1:10 to 1:1000 that fits the sheet; the skirting is drawn 2 mm broad on paper.
    """
    sheet = Sheet(width=width)
    shape = outline([wall.mm for wall in walls], [corner.degrees for corner in corners])
    plan = RoomPlan(
        place=place,
        shape=shape,
        walls=walls,
        corners=corners,
        pieces=pieces,
        doors=doors,
        radiators=radiators,
    )
    beside = _THUMBNAIL_OUTSIDE if sheet.thumbnail else _OUTSIDE
    scale, named = room_scale(plan, width, beside)
    words = say("%(place)s, skirting plan, %(named)s", place=place or say("Room"), named=named)
    view = room_view(plan, sheet, scale, title(sheet, words), beside)
    _paint(view, plan)
    if not sheet.thumbnail:
        _lettering(view, plan)
        top = view.zone.box.bottom + 3.0
        top = key(sheet, _entries(plan), top) + 1.5
        notes(sheet, [line for line in _legend(plan) if line], top)
        left_out(sheet)
    sheet.height = math.ceil(max(sheet.bottom() + 3.0, view.zone.box.bottom if sheet.thumbnail else 0.0))
    return Drawn(sheet=sheet, title=words, alt=_alt(plan, named), scale=named, key=_entries(plan))


def _lettering(view: View, plan: RoomPlan) -> None:
    _sight(view, plan)
    wall_labels(view, plan)
    _letters(view, plan)
    _joint_letters(view, plan)
    view.sheet.settle()


def left_out(sheet: Sheet) -> None:
    if sheet.unplaced:
        words = say("Not lettered on the view: %(unplaced)s.", unplaced="; ".join(sheet.unplaced))
        left = margin(sheet)
        paragraph(sheet, words, left, sheet.bottom() + 3.0, sheet.width - 2 * left, NOTES)
