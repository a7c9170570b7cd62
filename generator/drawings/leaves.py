"""A door leaf being hung: its hinges and latch set out, its leading edge on plan, its swing on plan."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from generator.drawings.clipping import Box, Point, Points, arc, rectangle
from generator.drawings.dimensions import Mark, angle_arc, dimension, running
from generator.drawings.figures import SIDES, Angle, Side, Size
from generator.drawings.keys import Entry, key, margin, notes, plain_list, rule_bar, title
from generator.drawings.lettering import extent
from generator.drawings.pens import (
    AXIS,
    HIDDEN,
    PHANTOM,
    SQUARE_LINE,
    SWING,
    VISIBLE_STANDING,
)
from generator.drawings.registry import Drawn, drawing
from generator.drawings.sheet import Sheet, Zone, arrow
from generator.drawings.views import View, dimension_layer
from generator.drawings.words import say

_ELEVATIONS = ((0.1, "1:10"), (0.05, "1:20"), (0.04, "1:25"), (0.02, "1:50"), (0.01, "1:100"))
_EDGES = ((2.0, "2:1"), (1.0, "1:1"), (0.5, "1:2"))
_TALLEST = 250.0
_BARREL = 10.0
_STUB = 60.0
_LINING = 22.0
_STOP_GAP = 2.0
_STEPS = 24
_PAST = 3.0


def _check_side(hinge_side: str) -> None:
    if hinge_side not in SIDES:
        raise ValueError(f"hinges stand left or right, not {hinge_side!r}")


def _finish(sheet: Sheet, entries: Sequence[Entry], lines: Sequence[str], top: float) -> float:
    """Set key and notes under the views; return the y below them. A thumbnail ends under its views."""
    if sheet.thumbnail:
        sheet.height = math.ceil(top + 1.0)
        return top
    bottom = key(sheet, entries, top)
    bottom = notes(sheet, (*sheet.unplaced, *lines), bottom + 1.0)
    sheet.height = math.ceil(max(bottom, sheet.bottom()) + 3.0)
    return bottom


@dataclass(frozen=True, slots=True, kw_only=True)
class _Hung:
    """A leaf in its opening, seen from the side it opens towards; x from the left, y down from the head."""

    opening_width: Size
    opening_height: Size
    leaf_width: Size
    leaf_height: Size
    hinge_gap: Size
    latch_gap: Size
    head_gap: Size
    foot_gap: Size
    hinge_height: Size
    on_leaf: tuple[Size, ...]
    on_frame: tuple[Size, ...]
    latch_on_leaf: Size
    latch_on_frame: Size
    hinge_side: str

    @property
    def left(self) -> float:
        """The x of the leaf's left edge."""
        return (self.hinge_gap if self.hinge_side == "left" else self.latch_gap).mm

    def leaf(self) -> Points:
        top = self.head_gap.mm
        return rectangle(self.left, top, self.left + self.leaf_width.mm, top + self.leaf_height.mm)

    def barrel(self, centre: Size) -> Points:
        """A hinge's knuckle, in the gap."""
        middle = self.hinge_gap.mm / 2
        x = middle if self.hinge_side == "left" else self.opening_width.mm - middle
        half, half_high = _BARREL / 2, self.hinge_height.mm / 2
        y = self.head_gap.mm + centre.mm
        return rectangle(x - half, y - half_high, x + half, y + half_high)

    @property
    def latch(self) -> Point:
        """Where the latch meets the leaf's edge."""
        x = self.left + self.leaf_width.mm if self.hinge_side == "left" else self.left
        return x, self.head_gap.mm + self.latch_on_leaf.mm


_LINING_SHOWN = 40.0
_KEY_AT = 0.62
_LEAST_KEY = 74.0


def _elevation_scale(hung: _Hung, width: float) -> tuple[float, str]:
    thumb, narrow = width < 60, width < 120
    beside = 4.0 if thumb else 28.0 if narrow else 66.0
    room = width - beside
    wide, high = hung.opening_width.mm + 2 * _LINING_SHOWN, hung.opening_height.mm
    for scale, named in _ELEVATIONS:
        inside = not narrow and hung.leaf_width.mm * scale >= _LEAST_KEY
        above = 6.0 if thumb else 42.0 if inside else 62.0
        if wide * scale <= room and high * scale <= _TALLEST - above:
            return scale, named
    return _ELEVATIONS[-1]


def _lining(hung: _Hung) -> Points:
    wide, high, edge = hung.opening_width.mm, hung.opening_height.mm, _LINING_SHOWN
    return (
        (-edge, high), (-edge, -edge), (wide + edge, -edge), (wide + edge, high), (wide, high), (wide, 0.0),
        (0.0, 0.0), (0.0, high),
    )  # fmt: skip


def _draw_hung(view: View, hung: _Hung) -> None:
    view.part("lining", _lining(hung), "beyond")
    view.part("leaf", hung.leaf(), "new work in elevation")
    for number, centre in enumerate(hung.on_leaf, 1):
        view.part(f"hinge {number}", hung.barrel(centre), "steel")
    x, y = hung.latch
    inwards = -60.0 if hung.hinge_side == "left" else 60.0
    view.line(((x, y), (x + inwards, y)), HIDDEN, "latch")
    half = hung.opening_width.mm / 2 + _LINING_SHOWN + 30.0
    middle, floor = hung.opening_width.mm / 2, hung.opening_height.mm
    view.line(((middle - half, floor), (middle + half, floor)), VISIBLE_STANDING, "floor")


def _letters(view: View, hung: _Hung) -> None:
    view.letter("D", say("leaf"), hung.leaf())
    view.letter("F", say("lining"), rectangle(0.0, -_LINING_SHOWN, hung.opening_width.mm, 0.0))
    x, y = hung.barrel(hung.on_leaf[0])[0]
    turns = (20, -20, 35, -35) if hung.hinge_side == "left" else (160, 200, 145, -145)
    view.pointer("H", (x + _BARREL / 2, y + hung.hinge_height.mm / 2), say("hinge"), turns)
    at, side = hung.latch, hung.hinge_side
    view.pointer("K", (at[0] + (-30 if side == "left" else 30), at[1]), say("latch"), (-110, -70, 110, 70))


def _running_lines(view: View, hung: _Hung) -> None:
    wide = hung.opening_width.mm + _LINING_SHOWN
    edge = view.at(wide, 0.0)[0]
    leaf = [*hung.on_leaf, hung.latch_on_leaf, hung.leaf_height]
    figure = max(extent(size.text, view.sheet.em("figure"))[0] for size in leaf)
    steps = (edge + 5.0, edge + 5.0 + figure + 14.0)
    frame = [*hung.on_frame, hung.latch_on_frame, hung.opening_height]
    columns = ((steps[0], hung.head_gap.mm, leaf), (steps[1], 0.0, frame))
    for line, origin, sizes in columns[:1] if view.sheet.narrow else columns:
        marks = [Mark(at=view.at(0, origin + size.mm)[1], text=size.text) for size in sizes]
        start = edge if line == steps[0] else steps[0] + figure + 7.0
        running(view, line, view.at(0, origin)[1], marks, start)
    for line, name in zip(steps, _names(view), strict=False):
        view.sheet.text(name, line - 1.0, view.at(0, -_LINING_SHOWN)[1] - 4.0, "note", weight="bold")


def _names(view: View) -> tuple[str, ...]:
    """What the columns of figures beside the leaf are for."""
    return (say("leaf"),) if view.sheet.narrow else (say("leaf"), say("frame"))


def _across(view: View, hung: _Hung) -> None:
    floor = view.at(0, hung.opening_height.mm)[1]
    leaf = (view.at(hung.left, 0)[0], view.at(hung.left + hung.leaf_width.mm, 0)[0])
    words = say("leaf %(leaf_width)s wide", leaf_width=hung.leaf_width.text)
    dimension(view, (leaf[0], floor), (leaf[1], floor), floor + 7.0, hung.leaf_width.text, words)


def _hung_entries(hung: _Hung) -> tuple[Entry, ...]:
    frame = ", ".join(size.text for size in hung.on_frame)
    return (
        Entry(
            letter="D",
            text=say(
                "leaf, %(leaf_width)s × %(leaf_height)s",
                leaf_width=hung.leaf_width.text,
                leaf_height=hung.leaf_height.text,
            ),
        ),
        Entry(
            letter="F",
            text=say(
                "lining, %(opening_width)s × %(opening_height)s clear",
                opening_width=hung.opening_width.text,
                opening_height=hung.opening_height.text,
            ),
        ),
        Entry(
            letter="H",
            text=say(
                "hinges, %(hinge_height)s high; on the frame at %(frame)s",
                hinge_height=hung.hinge_height.text,
                frame=frame,
            ),
        ),
        Entry(
            letter="K",
            text=say("latch; on the frame at %(latch_on_frame)s", latch_on_frame=hung.latch_on_frame.text),
        ),
    )


def _gaps(hung: _Hung) -> str:
    return say(
        "Gaps: hinge %(hinge_gap)s, latch %(latch_gap)s, head %(head_gap)s, foot %(foot_gap)s. Centres run "
        "down from nought. All in mm.",
        hinge_gap=hung.hinge_gap.text,
        latch_gap=hung.latch_gap.text,
        head_gap=hung.head_gap.text,
        foot_gap=hung.foot_gap.text,
    )


def _hung_alt(hung: _Hung, named: str) -> str:
    def listed(sizes: Sequence[Size]) -> str:
        return ", ".join(size.text for size in sizes)

    return say(
        "Elevation of the leaf in its lining at %(named)s, seen from the side it opens towards, hinges on "
        "the %(hinge_side)s. Leaf %(leaf_width)s by %(leaf_height)s mm in an opening %(opening_width)s by "
        "%(opening_height)s mm; gaps %(hinge_gap)s mm at the hinges, %(latch_gap)s at the latch, "
        "%(head_gap)s at the head and %(foot_gap)s at the foot. %(on_leaf)s hinges %(hinge_height)s mm high:"
        " centres %(listed)s mm from the leaf's top, %(listed_2)s mm from the frame's head. Latch "
        "%(latch_on_leaf)s mm from the leaf's top, %(latch_on_frame)s mm from the frame's head.",
        named=named,
        hinge_side=hung.hinge_side,
        leaf_width=hung.leaf_width.text,
        leaf_height=hung.leaf_height.text,
        opening_width=hung.opening_width.text,
        opening_height=hung.opening_height.text,
        hinge_gap=hung.hinge_gap.text,
        latch_gap=hung.latch_gap.text,
        head_gap=hung.head_gap.text,
        foot_gap=hung.foot_gap.text,
        on_leaf=len(hung.on_leaf),
        hinge_height=hung.hinge_height.text,
        listed=listed(hung.on_leaf),
        listed_2=listed(hung.on_frame),
        latch_on_leaf=hung.latch_on_leaf.text,
        latch_on_frame=hung.latch_on_frame.text,
    )


@drawing
def hinge_elevation(
    width: float,
    *,
    opening_width: Size,
    opening_height: Size,
    leaf_width: Size,
    leaf_height: Size,
    hinge_gap: Size,
    latch_gap: Size,
    head_gap: Size,
    foot_gap: Size,
    hinge_height: Size,
    on_leaf: tuple[Size, ...],
    on_frame: tuple[Size, ...],
    latch_on_leaf: Size,
    latch_on_frame: Size,
    hinge_side: Side,
    place: str = "",
) -> Drawn:
    """Hinges and latch set out on leaf and frame.

    Sizes in mm; `on_leaf` are hinge centres from the leaf's top and `on_frame` from the frame's head, in
    order from above; `hinge_side` is left or right as seen from the side the leaf opens towards. The scale is
    the largest of 1:10 to 1:100 that fits. Raises ValueError for another side or lists of unlike length.
    """
    _check_side(hinge_side)
    if not on_leaf or len(on_leaf) != len(on_frame):
        raise ValueError(f"{len(on_leaf)} hinges on the leaf and {len(on_frame)} on the frame")
    hung = _Hung(
        opening_width=opening_width, opening_height=opening_height, leaf_width=leaf_width,
        leaf_height=leaf_height, hinge_gap=hinge_gap, latch_gap=latch_gap, head_gap=head_gap,
        foot_gap=foot_gap, hinge_height=hinge_height, on_leaf=on_leaf, on_frame=on_frame,
        latch_on_leaf=latch_on_leaf, latch_on_frame=latch_on_frame, hinge_side=hinge_side,
    )  # fmt: skip
    sheet, (scale, named) = Sheet(width=width), _elevation_scale(hung, width)
    where = f", {place}" if place else ""
    words = say("Hinges and latch%(where)s, %(named)s", where=where, named=named)
    _lay_hung(sheet, hung, scale, title(sheet, words))
    return Drawn(sheet=sheet, title=words, alt=_hung_alt(hung, named), scale=named, key=_hung_entries(hung))


def _lay_hung(sheet: Sheet, hung: _Hung, scale: float, top: float) -> None:
    left = 2.0 if sheet.thumbnail else margin(sheet) + 2.0
    over = 1.0 if sheet.thumbnail else 9.0
    origin = (left + _LINING_SHOWN * scale, top + over + _LINING_SHOWN * scale)
    low = origin[1] + hung.opening_height.mm * scale
    zone = Zone(box=Box(0.5, top, sheet.width - 0.5, low + 20.0))
    view = View(sheet=sheet, scale=scale, origin=origin, zone=zone)
    _draw_hung(view, hung)
    if not sheet.thumbnail:
        _running_lines(view, hung)
        _across(view, hung)
        _letters(view, hung)
        sheet.settle()
    under = low if sheet.thumbnail else max(sheet.bottom(), low) + 4.0
    inside = [] if sheet.narrow or hung.leaf_width.mm * scale < _LEAST_KEY else list(_hung_entries(hung))
    if inside:
        start = view.at(hung.left, 0)[0] + 8.0
        plain_list(sheet, inside, start, origin[1] + _KEY_AT * (low - origin[1]), _room(view, hung))
    _finish(sheet, () if inside else _hung_entries(hung), (_gaps(hung),), under)


def _room(view: View, hung: _Hung) -> float:
    """The width of a key that stands on the leaf."""
    return hung.leaf_width.mm * view.scale - 16.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Edge:
    """The latch edge on plan; x from the frame's face, the leaf left of it, y down from the near face."""

    leaf_width: Size
    leaf_thickness: Size
    latch_gap: Size
    pin_inset: Size
    pin_projection: Size
    gap_needed: Size
    bevel: Size
    bevel_angle: Angle
    stop_width: Size
    stop_thickness: Size

    @property
    def near(self) -> float:
        """The x of the leaf's near arris."""
        return -self.latch_gap.mm

    @property
    def thick(self) -> float:
        return self.leaf_thickness.mm

    @property
    def deepest(self) -> float:
        return self.thick + _STOP_GAP + self.stop_width.mm + 4.0

    @property
    def pin(self) -> Point:
        return self.near - self.leaf_width.mm - self.pin_inset.mm, -self.pin_projection.mm

    def leaf(self, back: float) -> Points:
        return ((back, 0.0), (self.near, 0.0), (self.near - self.bevel.mm, self.thick), (back, self.thick))

    def stop(self) -> Points:
        top = self.thick + _STOP_GAP
        return rectangle(-self.stop_thickness.mm, top, 0.0, top + self.stop_width.mm)

    def path(self, past: float) -> Points:
        """The way of a square edge's far corner, from shut until it is `past` mm out of the frame."""
        x, y = self.pin
        radius = math.hypot(self.near - x, self.thick - y)
        heights = (self.thick - (self.thick + past) * step / _STEPS for step in range(_STEPS + 1))
        return tuple((x + math.sqrt(radius**2 - (v - y) ** 2), v) for v in heights)


def _edge_scale(edge: _Edge, width: float) -> tuple[float, str, float]:
    """Scale, its name, and how much of the leaf is shown, in real mm."""
    room = width - (6.0 if width < 60 else 22.0 if width < 120 else 50.0)
    for scale, named in _EDGES:
        shown = min(60.0, room / scale - _LINING)
        least = edge.latch_gap.mm + edge.stop_thickness.mm + edge.bevel.mm + (16.0 / max(scale, 0.5))
        if shown >= least and (edge.deepest + 10) * scale <= _TALLEST - 50:
            return scale, named, shown
    scale, named = _EDGES[-1]
    return scale, named, room / scale - _LINING


def _draw_edge(view: View, edge: _Edge, shown: float) -> None:
    lining = rectangle(0.0, 0.0, _LINING, edge.deepest)
    view.open_part("frame", lining, "standing timber", (2,))
    if edge.stop_width.mm > 0:
        view.part("stop", edge.stop(), "standing timber, other hand")
    view.open_part("leaf", edge.leaf(-shown), "new timber", (3,))
    if view.sheet.thumbnail:
        return
    view.line(edge.path(_PAST / view.scale), SWING, "way of a square corner")


def _edge_dimensions(view: View, edge: _Edge) -> None:
    x, near, top = view.at(0, 0)[0], view.at(edge.near, 0)[0], view.at(0, 0)[1]
    dimension(
        view,
        (near, top),
        (x, top),
        top - 8.0,
        edge.latch_gap.text,
        say("latch gap %(latch_gap)s", latch_gap=edge.latch_gap.text),
    )
    start = math.radians(90)
    swung = view.at(edge.near, 0)
    turned = start + math.radians(edge.bevel_angle.degrees)
    text = f"{edge.bevel_angle.text}°"
    reach = 0.55 * edge.thick * view.scale
    dimension_layer(view, (swung, (swung[0], swung[1] + reach)), SQUARE_LINE)
    angle_arc(view, swung, reach, start, turned, text, say("bevel %(text)s", text=text))


def _edge_letters(view: View, edge: _Edge, shown: float) -> None:
    view.letter("D", say("leaf"), edge.leaf(-shown), near=(edge.near - shown * 0.6, edge.thick / 2))
    view.letter("F", say("frame"), rectangle(0.0, 0.0, _LINING, edge.deepest))
    if edge.stop_width.mm > 0:
        view.letter("S", say("stop"), edge.stop())
    peak = edge.path(_PAST / view.scale)[-1]
    far = (edge.near - edge.bevel.mm, edge.thick)
    view.pointer("b", far, say("bevel %(bevel)s", bevel=edge.bevel.text), (120, 135, 150, 105))
    view.pointer(
        "a",
        peak,
        say("square corner passes %(gap_needed)s out", gap_needed=edge.gap_needed.text),
        (-50, -35, -65, -20),
    )


def _edge_entries(edge: _Edge) -> tuple[Entry, ...]:
    stop = say(
        "stop, %(stop_width)s × %(stop_thickness)s",
        stop_width=edge.stop_width.text,
        stop_thickness=edge.stop_thickness.text,
    )
    words = say(
        "way of a square corner: it needs %(gap_needed)s of the %(latch_gap)s gap",
        gap_needed=edge.gap_needed.text,
        latch_gap=edge.latch_gap.text,
    )
    found = [
        Entry(
            letter="D",
            text=say("leaf, %(leaf_thickness)s thick", leaf_thickness=edge.leaf_thickness.text),
            material="new timber",
        ),
        Entry(letter="F", text=say("lining, latch side"), material="standing timber"),
        Entry(letter="S", text=stop, material="standing timber, other hand"),
        Entry(letter="a", text=words),
        Entry(
            letter="b",
            text=say(
                "bevel, %(bevel)s back at the far face, %(bevel_angle)s°",
                bevel=edge.bevel.text,
                bevel_angle=edge.bevel_angle.text,
            ),
        ),
    ]
    return tuple(entry for entry in found if entry.letter != "S" or edge.stop_width.mm > 0)


def _edge_alt(edge: _Edge, named: str) -> str:
    return say(
        "Plan section through the latch edge at %(named)s. The leaf is %(leaf_thickness)s mm thick and "
        "stands %(latch_gap)s mm off the lining. A square edge would need %(gap_needed)s mm of that to swing"
        " past. Bevelled %(bevel)s mm back at the far face, %(bevel_angle)s degrees from square, it needs no"
        " more than its near arris does. The hinge pin stands %(pin_projection)s mm in front of the leaf and"
        " %(pin_inset)s mm beyond its hinge edge.",
        named=named,
        leaf_thickness=edge.leaf_thickness.text,
        latch_gap=edge.latch_gap.text,
        gap_needed=edge.gap_needed.text,
        bevel=edge.bevel.text,
        bevel_angle=edge.bevel_angle.text,
        pin_projection=edge.pin_projection.text,
        pin_inset=edge.pin_inset.text,
    )


@drawing
def leading_edge_plan(
    width: float,
    *,
    leaf_width: Size,
    leaf_thickness: Size,
    latch_gap: Size,
    pin_inset: Size,
    pin_projection: Size,
    gap_needed: Size,
    bevel: Size,
    bevel_angle: Angle,
    stop_width: Size,
    stop_thickness: Size,
    place: str = "",
) -> Drawn:
    """Leading edge of a leaf with its bevel, on plan.

    Sizes in mm. The way of a square edge's far corner is drawn about the pin; `gap_needed`, `bevel` and
    `bevel_angle` are printed as given. A stop 0 wide is left out. At 2:1 where the sheet has room.
    """
    edge = _Edge(
        leaf_width=leaf_width, leaf_thickness=leaf_thickness, latch_gap=latch_gap, pin_inset=pin_inset,
        pin_projection=pin_projection, gap_needed=gap_needed, bevel=bevel, bevel_angle=bevel_angle,
        stop_width=stop_width, stop_thickness=stop_thickness,
    )  # fmt: skip
    sheet, (scale, named, shown) = Sheet(width=width), _edge_scale(edge, width)
    where = f", {place}" if place else ""
    words = say("Leading edge%(where)s, plan %(named)s", where=where, named=named)
    _lay_edge(sheet, edge, (scale, shown), title(sheet, words))
    return Drawn(sheet=sheet, title=words, alt=_edge_alt(edge, named), scale=named, key=_edge_entries(edge))


def _lay_edge(sheet: Sheet, edge: _Edge, fit: tuple[float, float], top: float) -> None:
    scale, shown = fit
    left = 3.0 if sheet.thumbnail else margin(sheet) + 2.0
    over = 2.0 if sheet.thumbnail else 16.0
    origin = (left + shown * scale, top + over)
    low = origin[1] + edge.deepest * scale
    zone = Zone(box=Box(0.5, top, sheet.width - 0.5, low + 1.0))
    view = View(sheet=sheet, scale=scale, origin=origin, zone=zone)
    _draw_edge(view, edge, shown)
    if not sheet.thumbnail:
        _edge_dimensions(view, edge)
        _edge_letters(view, edge, shown)
        sheet.settle()
    line = say("The side it opens towards is above. All in mm.")
    bottom = _finish(sheet, _edge_entries(edge), (line,), low + (0.0 if sheet.thumbnail else 4.0))
    if scale == 1.0 and not sheet.thumbnail:
        rule_bar(sheet, say("full size"), bottom + 1.0)
        sheet.height = math.ceil(sheet.bottom() + 3.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Swing:
    """The leaf's swing on plan; x from the frame's hinge face, y down from the side it opens to."""

    opening_width: Size
    leaf_width: Size
    leaf_thickness: Size
    hinge_gap: Size
    pin_inset: Size
    pin_projection: Size
    radius: Size
    way_through: Size
    hinge_side: str

    @property
    def pin(self) -> Point:
        return self.hinge_gap.mm - self.pin_inset.mm, -self.pin_projection.mm

    def shut(self) -> Points:
        start = self.hinge_gap.mm
        return rectangle(start, 0.0, start + self.leaf_width.mm, self.leaf_thickness.mm)

    def open(self, degrees: float) -> Points:
        return tuple(self._turned(point, degrees) for point in self.shut())

    def _turned(self, point: Point, degrees: float) -> Point:
        (x, y), (u, v) = self.pin, point
        c, s = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
        return x + (u - x) * c + (v - y) * s, y - (u - x) * s + (v - y) * c

    def mirrored(self, points: Points) -> Points:
        if self.hinge_side == "left":
            return points
        return tuple((self.opening_width.mm - x, y) for x, y in points)


def _swing_parts(view: View, swing: _Swing) -> None:
    wide, deep = swing.opening_width.mm, swing.leaf_thickness.mm + 60.0
    for name, left, right in (("frame, hinge side", -_STUB, 0.0), ("frame, latch side", wide, wide + _STUB)):
        box = swing.mirrored(rectangle(left, 0.0, right, deep))
        view.open_part(name, _from_left(box), "standing timber", (3,) if _broken_left(box, swing) else (1,))
    view.part("leaf shut", swing.mirrored(swing.shut()), "new timber")
    view.line(swing.mirrored((*swing.open(90), swing.open(90)[0])), PHANTOM, "leaf open")
    x, y = swing.pin
    far = max(swing.shut(), key=lambda point: math.dist(point, swing.pin))
    reach, start = math.dist(far, swing.pin), math.atan2(far[1] - y, far[0] - x)
    view.line(swing.mirrored(arc((x, y), reach, start, start - math.radians(90))), SWING, "swing")


def _from_left(box: Points) -> Points:
    xs, ys = [x for x, _ in box], [y for _, y in box]
    return rectangle(min(xs), min(ys), max(xs), max(ys))


def _broken_left(box: Points, swing: _Swing) -> bool:
    return max(x for x, _ in box) <= swing.opening_width.mm / 2


def _swing_dimensions(view: View, swing: _Swing) -> None:
    low = view.at(0, swing.leaf_thickness.mm + 60.0)[1]
    ends = sorted(x for x, _ in view.all_at(swing.mirrored(((0, 0), (swing.opening_width.mm, 0)))))
    words = say("opening %(opening_width)s", opening_width=swing.opening_width.text)
    dimension(view, (ends[0], low), (ends[1], low), low + 8.0, swing.opening_width.text, words)
    tip = max(swing.open(90), key=lambda point: math.dist(point, swing.pin))
    pin, end = view.all_at(swing.mirrored((swing.pin, _diagonal(swing))))
    dimension_layer(view, (pin, end), AXIS)
    heading = math.atan2(end[1] - pin[1], end[0] - pin[0])
    view.sheet.stroke(arrow(end, heading, AXIS.colour))
    middle = swing.mirrored(((swing.pin[0] + (_diagonal(swing)[0] - swing.pin[0]) * 0.6,
                              swing.pin[1] + (_diagonal(swing)[1] - swing.pin[1]) * 0.6),))[0]  # fmt: skip
    turns = (-20, 20, 160, -160, 60, -60)
    view.pointer("r", middle, say("radius %(radius)s", radius=swing.radius.text), turns, dotted=True)
    view.pointer("o", swing.mirrored((tip,))[0], say("leaf open square"), (-120, -60, 120, 60))


def _diagonal(swing: _Swing) -> Point:
    return max(swing.open(50), key=lambda point: math.dist(point, swing.pin))


def _swing_entries(swing: _Swing) -> tuple[Entry, ...]:
    way = say("leaf open square; way through to the stop %(way_through)s", way_through=swing.way_through.text)
    return (
        Entry(
            letter="D",
            text=say(
                "leaf, %(leaf_width)s × %(leaf_thickness)s",
                leaf_width=swing.leaf_width.text,
                leaf_thickness=swing.leaf_thickness.text,
            ),
        ),
        Entry(letter="o", text=way),
        Entry(letter="r", text=say("radius swept from the hinge pin, %(radius)s", radius=swing.radius.text)),
    )


@drawing
def leaf_swing_plan(
    width: float,
    *,
    opening_width: Size,
    leaf_width: Size,
    leaf_thickness: Size,
    hinge_gap: Size,
    pin_inset: Size,
    pin_projection: Size,
    radius: Size,
    way_through: Size,
    hinge_side: Side,
    place: str = "",
) -> Drawn:
    """Swing of a leaf, on plan.

    Sizes in mm; the leaf is drawn shut and open square, its far corner's way about the pin; radius and way
    through are printed as given. `hinge_side` is left or right from the side it opens towards, which is
    above. Raises ValueError for another side.
    """
    _check_side(hinge_side)
    swing = _Swing(
        opening_width=opening_width, leaf_width=leaf_width, leaf_thickness=leaf_thickness,
        hinge_gap=hinge_gap, pin_inset=pin_inset, pin_projection=pin_projection, radius=radius,
        way_through=way_through, hinge_side=hinge_side,
    )  # fmt: skip
    sheet = Sheet(width=width)
    room = width - (4.0 if sheet.thumbnail else 2 * margin(sheet) + 12.0)
    fits = (s for s in _ELEVATIONS if (opening_width.mm + 2 * _STUB + 10.0) * s[0] <= room)
    scale, named = next(fits, _ELEVATIONS[-1])
    words = say(
        "Swing of the leaf%(place)s, plan %(named)s", place=f", {place}" if place else "", named=named
    )
    _lay_swing(sheet, swing, scale, title(sheet, words))
    alt = say(
        "Plan of the leaf's swing at %(named)s, hinges on the %(hinge_side)s seen from the side it opens to."
        " The leaf, %(leaf_width)s by %(leaf_thickness)s mm, sweeps %(radius)s mm about the hinge pin in an "
        "opening %(opening_width)s mm wide; open square it leaves %(way_through)s mm clear to the stop.",
        named=named,
        hinge_side=hinge_side,
        leaf_width=leaf_width.text,
        leaf_thickness=leaf_thickness.text,
        radius=radius.text,
        opening_width=opening_width.text,
        way_through=way_through.text,
    )
    return Drawn(sheet=sheet, title=words, alt=alt, scale=named, key=_swing_entries(swing))


def _lay_swing(sheet: Sheet, swing: _Swing, scale: float, top: float) -> None:
    wide = (swing.opening_width.mm + 2 * _STUB) * scale
    left = (sheet.width - wide) / 2 + _STUB * scale
    rise = (swing.leaf_width.mm + swing.pin_inset.mm + swing.pin_projection.mm) * scale
    over = 2.0 if sheet.thumbnail else 12.0
    origin = (left, top + over + rise)
    low = origin[1] + (swing.leaf_thickness.mm + 60.0) * scale
    zone = Zone(box=Box(0.5, top, sheet.width - 0.5, low + 12.0))
    view = View(sheet=sheet, scale=scale, origin=origin, zone=zone)
    _swing_parts(view, swing)
    if not sheet.thumbnail:
        _swing_dimensions(view, swing)
        view.letter("D", say("leaf"), swing.mirrored(swing.shut()), near=(swing.opening_width.mm / 2, 0.0))
        sheet.settle()
    under = low if sheet.thumbnail else low + 13.0
    _finish(sheet, _swing_entries(swing), (say("It opens towards the top of the sheet. All in mm."),), under)
