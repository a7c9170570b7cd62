"""The jamb cut through: wall, plaster, lining, packer, architrave, hinge and leaf, at true scale."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from typing import Any

from generator.drawings.clipping import Box, Point, Points, arc, circle
from generator.drawings.dimensions import dimension
from generator.drawings.figures import Angle, Core, Shape, Size, Substance
from generator.drawings.jamb_parts import BARREL, Jamb, Part, lettered, paint, parts_of
from generator.drawings.keys import Entry, key, notes, rule_bar, title
from generator.drawings.lettering import extent
from generator.drawings.measures import Measures
from generator.drawings.pens import AXIS, PHANTOM, SWING, VISIBLE_STANDING
from generator.drawings.registry import Drawn, drawing
from generator.drawings.sheet import Sheet, Zone, arrow
from generator.drawings.views import View, break_line, detail_view, ring_letter
from generator.drawings.words import say

_SCALES = ((1.0, "1:1"), (0.5, "1:2"), (0.2, "1:5"), (0.1, "1:10"))
_PHONE_SCALES = ((1.0, "1:1"), (0.5, "1:2"), (1 / 3, "1:3"), (0.25, "1:4"), (0.2, "1:5"), (0.1, "1:10"))
_DETAILS = ((0.5, "1:2"), (1.0, "1:1"), (2.0, "2:1"), (4.0, "4:1"), (8.0, "8:1"))
_TALLEST = 252.0
_EDGE = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class _Plan:
    """Where the view falls on the sheet: scale, its name, the lining face's x, and the real x of both
    breaks.
    """

    scale: float
    named: str
    face: float
    left: float
    right: float


def _plan(jamb: Jamb, width: float, scale: float, named: str) -> _Plan | None:
    """Fit the view across the sheet, or say that it does not fit."""
    narrow = width < 120
    column, beyond, after = (10.0, 5.0, 9.0) if narrow else (13.0, 11.0, 12.0)
    if width < 60:
        column, beyond, after = 1.0, 2.0, 1.0
    behind = max(-jamb.outer, jamb.frame_edge.mm + jamb.packing_gap.mm + 6.0)
    face = column + beyond + behind * scale
    leaf_end = width - after
    least = max((6.0 if width < 60 else 14.0) if narrow else 26.0, (jamb.stop_thickness.mm + 4.0) * scale)
    if leaf_end - face < least or face + (jamb.hinge_gap.mm / 2 + _rear(jamb)) * scale > width - _EDGE:
        return None
    longest = 62.0 if scale >= 1 else 100.0 * scale + 20
    right = min(leaf_end - face, longest) / scale
    return _Plan(scale=scale, named=named, face=face, left=(column - face) / scale, right=right)


def _rear(jamb: Jamb) -> float:
    """How far from the pin the leaf's rear corner swings."""
    return math.hypot(jamb.leaf_thickness.mm + jamb.pin_projection.mm, jamb.hinge_gap.mm / 2)


@dataclass(slots=True, kw_only=True)
class _Layout:
    """One attempt at the sheet, at one scale."""

    jamb: Jamb
    plan: _Plan
    sheet: Sheet
    view: View
    parts: tuple[Part, ...]
    said: list[str] = field(default_factory=list)

    @property
    def outer_right(self) -> float:
        return self.view.at(self.plan.right, 0)[0]


def _begin(jamb: Jamb, width: float, plan: _Plan, words: str) -> _Layout:
    sheet = Sheet(width=width)
    below = title(sheet, words)
    crest = (jamb.pin_projection.mm + _rear(jamb)) * plan.scale + 2.5
    front = max(
        jamb.packer_thickness.mm + jamb.architrave_thickness.mm, jamb.set_back.mm + jamb.skirting_thickness.mm
    )
    dims = 17.0 if not sheet.thumbnail else 2.0
    zero = below + max(crest, front * plan.scale + dims)
    box = Box(0.5, below + 0.5, width - 0.5, zero + jamb.deepest * plan.scale + 12)
    view = View(sheet=sheet, scale=plan.scale, origin=(plan.face, zero), zone=Zone(box=box))
    return _Layout(jamb=jamb, plan=plan, sheet=sheet, view=view, parts=parts_of(jamb, plan.left, plan.right))


def _paint(view: View, parts: tuple[Part, ...]) -> None:
    paint(view, parts)
    pin = next(part for part in parts if part.name == "hinge").points
    x, y = (pin[0][0] - BARREL, pin[0][1])
    view.line(_closed(circle((x, y), 2.0)), VISIBLE_STANDING)


def _closed(points: Points) -> Points:
    return (*points, points[0])


def _turned(point: Point, pin: Point, degrees: float) -> Point:
    """Return a point of the leaf after it has swung towards the viewer about the hinge pin."""
    turn = math.radians(degrees)
    x, y = point[0] - pin[0], point[1] - pin[1]
    return pin[0] + x * math.cos(turn) + y * math.sin(turn), pin[1] - x * math.sin(turn) + y * math.cos(turn)


def _swing(laid: _Layout) -> None:
    """Draw the leaf open, the way its rear corner goes, and say how far it opens."""
    jamb, view = laid.jamb, laid.view
    pin, shown = jamb.hinge_pin, min(90.0, jamb.opening_angle.degrees)
    gap, thick = jamb.hinge_gap.mm, jamb.leaf_thickness.mm
    long = gap + min(laid.plan.right - gap, (view.origin[1] - view.zone.box.top - 1.0) / view.scale - 8)
    corners = [_turned(p, pin, shown) for p in ((long, 0.0), (gap, 0.0), (gap, thick), (long, thick))]
    view.line(tuple(corners), PHANTOM, "leaf open")
    far = view.all_at((corners[0], corners[3]))
    view.sheet.line(break_line(*far), PHANTOM.narrowed(0.13))
    _swing_arc(view, pin, (gap, thick), jamb.opening_angle.degrees)
    _swing_words(laid, corners[3])


def _swing_arc(view: View, pin: Point, corner: Point, degrees: float) -> None:
    radius = math.dist(pin, corner)
    start = math.atan2(corner[1] - pin[1], corner[0] - pin[0])
    path = arc(pin, radius, start, start - math.radians(degrees), 0.02)
    view.line(path, SWING, "swing")
    if not view.sheet.thumbnail:
        tip = view.at(*path[-1])
        view.sheet.stroke(arrow(tip, start - math.radians(degrees) - math.pi / 2 + 0.04, "#1c1c1c", 3.4))


def _swing_words(laid: _Layout, near: Point) -> None:
    jamb, view, sheet = laid.jamb, laid.view, laid.sheet
    letters = {part.name: letter for letter, part in lettered(laid.parts)}
    shown = "90" if jamb.opening_angle.degrees >= 90 else jamb.opening_angle.text
    meets = (
        say("then meets %(architrave)s", architrave=letters["architrave"])
        if jamb.opening_angle.degrees < 180
        else say("flat to the wall")
    )
    lines = (
        say("leaf open at %(shown)s°", shown=shown),
        say("opens to %(opening_angle)s°,", opening_angle=jamb.opening_angle.text),
        meets,
    )
    em = sheet.em("note")
    x = view.at(*near)[0] + 2.5
    wide = max(extent(line, em)[0] for line in lines)
    if x + wide > sheet.width - 1:
        laid.said.append(
            say(
                "Leaf drawn open at %(shown)s°; it %(lines)s %(meets)s.",
                shown=shown,
                lines=lines[1],
                meets=meets,
            )
        )
        return
    top = laid.view.zone.box.top + 7.0
    for i, line in enumerate(lines):
        sheet.text(line, x, top + i * 4.6, "note", colour="#454545")


def _main_dimensions(laid: _Layout) -> None:
    for dimensions in (_top_dimensions, _left_dimensions, _frame_dimensions, _leaf_dimensions):
        dimensions(laid)


def _top_dimensions(laid: _Layout) -> None:
    jamb, view = laid.jamb, laid.view
    face = jamb.back - jamb.architrave_thickness.mm
    inner_face = jamb.back - jamb.section().face_at(0.0)
    at = view.at(0, min(face, -jamb.set_back.mm - jamb.skirting_thickness.mm))[1] - 9.5
    outer, inner = view.at(jamb.outer, face), view.at(-jamb.quirk, inner_face)
    dimension(
        view,
        outer,
        inner,
        at,
        jamb.architrave_width.text,
        say("architrave width %(architrave_width)s", architrave_width=jamb.architrave_width.text),
    )
    dimension(
        view,
        inner,
        view.at(0, 0),
        at,
        jamb.total_quirk.text,
        say("both quirks %(total_quirk)s", total_quirk=jamb.total_quirk.text),
        ends=(False, True),
    )


def _left_dimensions(laid: _Layout) -> None:
    """Chain the wall's layers down the left, and the skirting's shadow above them."""
    jamb, view = laid.jamb, laid.view
    edge = laid.plan.left
    at = view.at(edge, 0)[0] - (5.5 if laid.sheet.narrow else 6.5)
    levels = [
        (-jamb.set_back.mm, jamb.core_top, jamb.plaster_thickness, say("plaster thickness")),
        (jamb.core_top, jamb.core_bottom, jamb.wall_thickness, say("wall core")),
        (jamb.core_bottom, jamb.wall_bottom, jamb.plaster_thickness, say("plaster on the far face")),
    ]
    if jamb.skirting_thickness.mm > 0:
        front = -jamb.set_back.mm - jamb.skirting_thickness.mm
        levels.append((front, -jamb.set_back.mm, jamb.skirting_thickness, say("skirting thickness")))
    for top, bottom, size, words in levels:
        dimension(
            view,
            view.at(edge, top),
            view.at(edge, bottom),
            at,
            size.text,
            f"{words} {size.text}",
            direction="upright",
            ends=(bottom >= jamb.wall_bottom, False),
        )
    _shadow_dimension(laid, at)


def _shadow_dimension(laid: _Layout, at: float) -> None:
    jamb, view = laid.jamb, laid.view
    front = -jamb.set_back.mm - jamb.skirting_thickness.mm
    face = jamb.back - jamb.section().outer_thickness()
    if jamb.skirting_thickness.mm <= 0 or abs(front - face) * view.scale < 0.8:
        return
    dimension(
        view,
        view.at(laid.plan.left, front),
        view.at(jamb.outer, face),
        at,
        jamb.skirting_shadow.text,
        say(
            "architrave in front of the skirting %(skirting_shadow)s",
            skirting_shadow=jamb.skirting_shadow.text,
        ),
        direction="upright",
        ends=(False, True) if face < front else (False, False),
    )


def _frame_dimensions(laid: _Layout) -> None:
    """Chain packer and first quirk inside the lining, with its whole edge below them."""
    jamb, view = laid.jamb, laid.view
    first = view.at(0, 0)[1] + (10.0 if laid.sheet.narrow else 13.0)
    start = -jamb.first_quirk.mm
    if jamb.packed:
        packer = view.at(start - jamb.packer_width.mm, 0), view.at(start, 0)
        dimension(
            view,
            *packer,
            first,
            jamb.packer_width.text,
            say("packer width %(packer_width)s", packer_width=jamb.packer_width.text),
            ends=(True, False),
            overrun=0,
        )
    if jamb.packed and jamb.first_quirk.mm > 0:
        quirk = view.at(start, 0), view.at(0, 0)
        words = say("first quirk %(first_quirk)s", first_quirk=jamb.first_quirk.text)
        dimension(view, *quirk, first, jamb.first_quirk.text, words, ends=(False, False), overrun=0)
    edge = view.at(-jamb.frame_edge.mm, first + 7), view.at(0, first + 7)
    level = (edge[0][0], first + 7), (edge[1][0], first + 7)
    dimension(
        view,
        *level,
        first + 7,
        jamb.frame_edge.text,
        say("lining edge %(frame_edge)s", frame_edge=jamb.frame_edge.text),
        overrun=0,
    )
    if jamb.set_back.mm * view.scale >= 1.5:
        _set_back_dimension(laid)


def _set_back_dimension(laid: _Layout) -> None:
    jamb, view = laid.jamb, laid.view
    plaster, packer = -jamb.frame_edge.mm, -jamb.first_quirk.mm - jamb.packer_width.mm
    free = (packer - plaster) * view.scale if jamb.packed else 12.0
    at = view.at(plaster, 0)[0] + min(max(free * 0.55, 1.2), 6.0)
    dimension(
        view,
        view.at(plaster, -jamb.set_back.mm),
        (at, view.at(0, 0)[1]),
        at,
        jamb.set_back.text,
        say("plaster proud of the frame %(set_back)s", set_back=jamb.set_back.text),
        direction="upright",
        ends=(True, False),
        overrun=0,
    )


def _leaf_dimensions(laid: _Layout) -> None:
    jamb, view = laid.jamb, laid.view
    right, at = laid.outer_right, laid.outer_right + (5.0 if laid.sheet.narrow else 7.0)
    top, bottom = view.at(0, 0)[1], view.at(0, jamb.leaf_thickness.mm)[1]
    thick = jamb.leaf_thickness.text
    dimension(
        view,
        (right, top),
        (right, bottom),
        at,
        thick,
        say("leaf thickness %(thick)s", thick=thick),
        direction="upright",
    )
    x, y = view.at(*jamb.hinge_pin)
    near = right - 0.12 * (right - x)
    if not laid.sheet.thumbnail:
        view.sheet.line(((x - 6.5, y), (near + 1.6, y)), AXIS, "dimension")
        view.sheet.line(((x, y - 6.5), (x, y + 6.5)), AXIS, "dimension")
    dimension(
        view,
        (near, y),
        (near, top),
        near,
        jamb.pin_projection.text,
        say("hinge pin in front of the leaf %(pin_projection)s", pin_projection=jamb.pin_projection.text),
        direction="upright",
        ends=(False, True),
    )


def _detail_scale(jamb: Jamb, scale: float, radius: float) -> tuple[float, str] | None:
    """Return the least enlargement that shows both quirks 6 mm wide, as far as the ring holds; None if
    not needed.
    """
    named = [size.mm for size in (jamb.first_quirk, jamb.second_quirk, jamb.packer_thickness) if size.mm > 0]
    if not named or min(named) * scale >= 6:
        return None
    reach = max(jamb.first_quirk.mm, jamb.second_quirk.mm) + 1.5
    fits = [d for d in _DETAILS if d[0] > scale and reach * d[0] < radius - 5]
    return next((d for d in fits if min(named) * d[0] >= 6), fits[-1] if fits else None)


def _ring_place(laid: _Layout) -> tuple[Point, float]:
    """Return the detail's centre and radius: beside the lining under the leaf, or under the view."""
    jamb, view, sheet = laid.jamb, laid.view, laid.sheet
    start = view.at(max(jamb.stop_thickness.mm, 0), 0)[0] + 4.0
    radius = min(35.0, (sheet.width - 2.0 - start) / 2)
    if radius >= 27.0:
        top = view.at(0, jamb.leaf_thickness.mm)[1] + 20.0
        return (sheet.width - 2.0 - radius, top + radius), radius
    radius = 35.0
    return (sheet.width / 2, view.at(0, jamb.deepest)[1] + 22.0 + radius), radius


def _detail(laid: _Layout) -> None:
    centre, radius = _ring_place(laid)
    found = _detail_scale(laid.jamb, laid.plan.scale, radius)
    if found is None or laid.sheet.thumbnail:
        _second_quirk(laid.view, laid.jamb)
        return
    scale, named = found
    jamb, sheet = laid.jamb, laid.sheet
    centre, radius = _drawn_in(jamb, scale, centre, radius)
    tall = _tall_packer(jamb, scale, radius)
    about = (-jamb.first_quirk.mm, jamb.back if tall else jamb.back / 2)
    shown = (("first", jamb.first_quirk, not tall), ("second", jamb.second_quirk, jamb.packed))
    words = ", ".join(
        say("%(name)s quirk %(size)s", name=name, size=size.text)
        for name, size, there in shown
        if there and size.mm > 0
    )
    sheet.text(
        say("Detail X, %(named)s", named=named),
        centre[0],
        centre[1] - radius - 7.5,
        "title",
        anchor="middle",
        weight="bold",
    )
    sheet.text(words, centre[0], centre[1] - radius - 2.6, "note", anchor="middle")
    ring = detail_view(laid.view, about, scale, centre, radius)
    _paint(ring, laid.parts)
    _detail_dimensions(ring, jamb)
    ring_letter(laid.view, "X", about, radius * laid.plan.scale / scale)
    _detail_letters(ring, laid)


def _drawn_in(jamb: Jamb, scale: float, centre: Point, most: float) -> tuple[Point, float]:
    """Draw the ring in round what it is for, its top staying where the title needs it."""
    reach = max(jamb.first_quirk.mm, jamb.second_quirk.mm) * scale + 20.0
    radius = min(most, max(26.0, reach, jamb.packer_thickness.mm * scale / 2 + 16.0))
    return (centre[0], centre[1] - most + radius), radius


def _tall_packer(jamb: Jamb, scale: float, radius: float) -> bool:
    """Whether the packer is too thick for the ring to show both its top corner and its foot."""
    return jamb.packer_thickness.mm * scale > radius


def _second_quirk(view: View, jamb: Jamb) -> None:
    if jamb.second_quirk.mm * view.scale < 2 or not jamb.packed:
        return
    top = view.at(0, jamb.back)[1]
    edge = view.at(-jamb.quirk, jamb.back)[0], view.at(-jamb.first_quirk.mm, jamb.back)[0]
    at = top - min(9.0, jamb.architrave_thickness.mm * view.scale * 0.5)
    words = say("second quirk %(second_quirk)s", second_quirk=jamb.second_quirk.text)
    dimension(
        view, (edge[0], at), (edge[1], top), at, jamb.second_quirk.text, words, ends=(False, True), overrun=0
    )


def _detail_dimensions(ring: View, jamb: Jamb) -> None:
    _second_quirk(ring, jamb)
    disc = ring.disc
    assert disc is not None
    if _tall_packer(jamb, ring.scale, disc.radius):
        return
    frame = ring.at(0, 0)[1]
    quirk = ring.at(-jamb.first_quirk.mm, 0), ring.at(0, 0)
    words = say("first quirk %(first_quirk)s", first_quirk=jamb.first_quirk.text)
    low = min(frame + 7.5, disc.y + disc.radius - 6)
    dimension(ring, *quirk, low, jamb.first_quirk.text, words, ends=(True, True), overrun=0)
    if jamb.packed:
        at = ring.at(-jamb.first_quirk.mm, 0)[0] - 0.55 * disc.radius
        at = max(at, ring.at(-jamb.first_quirk.mm - jamb.packer_width.mm, 0)[0] + 4)
        ends = (at, ring.at(0, jamb.back)[1]), (at, frame)
        text = jamb.packer_thickness.text
        dimension(
            ring, *ends, at, text, say("packer thickness %(text)s", text=text), direction="upright", overrun=0
        )


def _detail_letters(ring: View, laid: _Layout) -> None:
    for letter, part in lettered(laid.parts):
        if part.name in {"packer", "architrave", "frame", "hinge"}:
            ring.letter(letter, part.name, part.points, "small letter")


def _letters(laid: _Layout) -> None:
    order = {"filler": 2, "pin": 2, "packing gap": 1}
    for letter, part in sorted(lettered(laid.parts), key=lambda lp: order.get(lp[1].name, 0)):
        if part.name == "filler":
            # Its letter goes down into the wall, for the architrave above carries its own.
            laid.view.letter(letter, part.name, part.points, nearest=20.0, turns=(75, 105, 60, 120))
        else:
            laid.view.letter(letter, part.name, part.points)


def _finish(laid: _Layout) -> tuple[Entry, ...]:
    sheet = laid.sheet
    entries = tuple(
        Entry(letter=letter, text=part.words, material=part.material) for letter, part in lettered(laid.parts)
    )
    sheet.settle()
    if not sheet.thumbnail:
        below = rule_bar(sheet, laid.plan.named, sheet.bottom() + 3.5)
        below = key(sheet, entries, max(below, sheet.bottom()) + 4.0)
        closing = say("Grey line: standing already. Black line on tint: new work. All sizes in mm.")
        notes(sheet, (*laid.said, *_left_out(sheet), closing), below + 2.5)
    sheet.height = math.ceil(sheet.bottom() + 3.0)
    return entries


def _left_out(sheet: Sheet) -> tuple[str, ...]:
    return (
        (say("Not figured on the view: %(unplaced)s.", unplaced="; ".join(sheet.unplaced)),)
        if sheet.unplaced
        else ()
    )


def _attempt(jamb: Jamb, width: float, plan: _Plan) -> Drawn:
    words = say(
        "Jamb%(place)s, plan section %(named)s",
        place=say(" of doorway %(place)s", place=jamb.place) if jamb.place else "",
        named=plan.named,
    )
    laid = _begin(jamb, width, plan, words)
    if not laid.sheet.thumbnail:
        _swing(laid)
    _paint(laid.view, laid.parts)
    _main_dimensions(laid)
    _detail(laid)
    _letters(laid)
    entries = _finish(laid)
    return Drawn(sheet=laid.sheet, title=words, alt=_alt(jamb, plan.named), scale=plan.named, key=entries)


def _alt(jamb: Jamb, named: str) -> str:
    return " ".join(
        (
            say(
                "Plan section through the jamb%(place)s at %(named)s.",
                place=say(" of doorway %(place)s,", place=jamb.place) if jamb.place else "",
                named=named,
            ),
            *_alt_packer(jamb),
            say(
                "%(architrave_profile)s architrave %(architrave_width)s by %(architrave_thickness)s mm, its "
                "inner edge %(total_quirk)s mm back from the lining's face.",
                architrave_profile=jamb.architrave_profile.capitalize(),
                architrave_width=jamb.architrave_width.text,
                architrave_thickness=jamb.architrave_thickness.text,
                total_quirk=jamb.total_quirk.text,
            ),
            *_alt_left_over(jamb),
            say(
                "The hinge pin stands %(pin_projection)s mm in front of the leaf, which opens to "
                "%(opening_angle)s degrees.",
                pin_projection=jamb.pin_projection.text,
                opening_angle=jamb.opening_angle.text,
            ),
            say("Pins %(architrave_pin)s mm long.", architrave_pin=jamb.architrave_pin.text),
        )
    )


def _alt_packer(jamb: Jamb) -> tuple[str, ...]:
    proud = say("Plaster stands %(set_back)s mm proud of the lining", set_back=jamb.set_back.text)
    proud = proud if jamb.set_back.mm > 0 else say("Plaster does not stand proud of the lining")
    if not jamb.packed:
        return (say("%(proud)s; there is no packer.", proud=proud),)
    size = say(
        "%(packer_width)s by %(packer_thickness)s mm",
        packer_width=jamb.packer_width.text,
        packer_thickness=jamb.packer_thickness.text,
    )
    return (
        say("%(proud)s; the packer is %(size)s.", proud=proud, size=size),
        say(
            "First quirk %(first_quirk)s mm on the lining edge, second quirk %(second_quirk)s mm on the "
            "packer.",
            first_quirk=jamb.first_quirk.text,
            second_quirk=jamb.second_quirk.text,
        ),
    )


def _alt_left_over(jamb: Jamb) -> tuple[str, ...]:
    if jamb.left_over.mm > 0:
        return (
            say(
                "%(left_over)s mm is left at the wall side and takes flexible filler.",
                left_over=jamb.left_over.text,
            ),
        )
    if jamb.eased:
        return (say("Plaster stands proud of the packer here and is to be eased."),)
    return ()


@drawing
def jamb_section(
    width: float,
    *,
    wall_core: Core,
    wall_thickness: Size,
    plaster_thickness: Size,
    packing_gap: Size,
    set_back: Size,
    frame_edge: Size,
    frame_depth: Size,
    first_quirk: Size,
    second_quirk: Size,
    total_quirk: Size,
    packer_width: Size,
    packer_thickness: Size,
    left_over: Size,
    architrave_width: Size,
    architrave_thickness: Size,
    architrave_profile: Shape,
    architrave_material: Substance,
    architrave_pin: Size,
    skirting_thickness: Size,
    skirting_shadow: Size,
    leaf_thickness: Size,
    hinge_gap: Size,
    pin_projection: Size,
    opening_angle: Angle,
    stop_width: Size,
    stop_thickness: Size,
    architrave_measures: Measures | None = None,
    place: str = "",
) -> Drawn:
    """Plan section through the jamb.

    Sizes in mm. `wall_core` is "block" or "stud", `architrave_material` "mdf" or "timber",
    `architrave_profile` a name in `profiles.PROFILES`, drawn to `architrave_measures` or, without them, in
    its usual proportions. `left_over` is packer less set-back (+ at the
    wall), `skirting_shadow` how far the architrave stands in front of the skirting. A packer, skirting,
    stop or gap of 0 is not drawn. The scale is the largest of 1:1, 1:2, 1:5 and 1:10 that fits the sheet.
    Raises KeyError for an unknown core or material and UnknownProfile for an unknown moulding.
    """
    return _laid({name: value for name, value in locals().items() if name != "width"}, width)


def _laid(sizes: dict[str, Any], width: float) -> Drawn:
    """Lay the section at the largest scale that keeps the sheet within a page."""
    jamb = Jamb(**sizes)
    scales = _PHONE_SCALES if width < 120 else _SCALES
    plans = [plan for plan in (_plan(jamb, width, s, n) for s, n in scales) if plan is not None]
    for plan in plans[:-1]:
        drawn = _attempt(jamb, width, plan)
        if width < 120 or drawn.sheet.height <= _TALLEST:
            return drawn
    return _attempt(jamb, width, plans[-1])
