"""What a jamb is made of: each part's outline in real millimetres, its material and its words in the key."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from typing import Any

from generator.drawings.clipping import Point, Points, circle, rectangle
from generator.drawings.figures import Angle, Size
from generator.drawings.keys import LETTERS
from generator.drawings.measures import Measures, section_of
from generator.drawings.views import View
from generator.drawings.words import MADE_OF, say
from generator.quantities.profiles import Profile

BARREL = 5.0
_FLAP = 2.0
_CORES = {"block": "Blockwork", "stud": "Stud"}
_ARCHITRAVES = {"mdf": "new mdf", "timber": "new timber"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Jamb:
    """The jamb's sizes; x runs from the lining's face towards the opening, y from the frame edge into the
    wall.
    """

    place: str
    wall_core: str
    wall_thickness: Size
    plaster_thickness: Size
    packing_gap: Size
    set_back: Size
    frame_edge: Size
    frame_depth: Size
    first_quirk: Size
    second_quirk: Size
    total_quirk: Size
    packer_width: Size
    packer_thickness: Size
    left_over: Size
    architrave_width: Size
    architrave_thickness: Size
    architrave_profile: str
    architrave_material: str
    architrave_pin: Size
    skirting_thickness: Size
    skirting_shadow: Size
    leaf_thickness: Size
    hinge_gap: Size
    pin_projection: Size
    opening_angle: Angle
    stop_width: Size
    stop_thickness: Size
    architrave_measures: Measures | None = None

    @property
    def quirk(self) -> float:
        return self.first_quirk.mm + self.second_quirk.mm

    @property
    def packed(self) -> bool:
        return self.packer_thickness.mm > 0

    @property
    def back(self) -> float:
        """The y of the architrave's back."""
        return -self.packer_thickness.mm

    @property
    def outer(self) -> float:
        """The x of the architrave's outer edge."""
        return -self.quirk - self.architrave_width.mm

    @property
    def core_top(self) -> float:
        return self.plaster_thickness.mm - self.set_back.mm

    @property
    def core_bottom(self) -> float:
        return self.core_top + self.wall_thickness.mm

    @property
    def wall_bottom(self) -> float:
        return self.core_bottom + self.plaster_thickness.mm

    @property
    def deepest(self) -> float:
        return max(self.wall_bottom, self.frame_depth.mm)

    @property
    def hinge_pin(self) -> Point:
        return self.hinge_gap.mm / 2, -self.pin_projection.mm

    @property
    def eased(self) -> bool:
        """Whether the plaster stands in front of the architrave's back and is to be eased there."""
        return self.set_back.mm > self.packer_thickness.mm + 1e-9 and self.packed

    @property
    def reach(self) -> float:
        """How far the work goes from the lining's face away from the opening, wall beside it included."""
        return max(-self.outer, self.frame_edge.mm + self.packing_gap.mm)

    @property
    def front(self) -> float:
        """How far the work stands in front of the frame's edge."""
        return max(self.packer_thickness.mm + self.architrave_thickness.mm, self.set_back.mm)

    def section(self) -> Profile:
        return section_of(
            self.architrave_profile,
            self.architrave_width,
            self.architrave_thickness,
            self.architrave_measures,
        )

    def architrave(self) -> Points:
        """The moulding's outline, laid on the packer with its inner edge at the quirks."""
        return tuple((-self.quirk - u, self.back - v) for u, v in self.section().points())

    def front_plaster(self, left: float) -> Points:
        """The plaster on the near face, cut back behind the architrave where it is to be eased."""
        end, face = -self.frame_edge.mm, -self.set_back.mm
        if not self.eased or self.outer - 2 > end:
            return rectangle(left, face, end, self.core_top)
        step = self.outer - 2
        if step <= left:
            return rectangle(left, self.back, end, self.core_top)
        return (
            (left, face),
            (step, face),
            (step, self.back),
            (end, self.back),
            (end, self.core_top),
            (left, self.core_top),
        )

    def pin(self) -> Points:
        """The pin through the architrave's bearing, at its stated length, with a pointed end."""
        bearing = (self.packer_width.mm if self.packed else self.frame_edge.mm - self.first_quirk.mm) - (
            self.second_quirk.mm
        )
        u = max(3.0, min(bearing / 2, self.architrave_width.mm / 2))
        x, head = -self.quirk - u, self.back - self.section().face_at(u)
        foot = head + self.architrave_pin.mm
        return ((x - 0.7, head), (x + 0.7, head), (x + 0.7, foot - 1.6), (x, foot), (x - 0.7, foot - 1.6))


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """One part of the section: name, outline in real mm, material, its key words and its broken sides."""

    name: str
    points: Points
    material: str
    words: str
    broken: tuple[int, ...] = ()


def paint(view: View, parts: tuple[Part, ...]) -> None:
    """Draw the parts in their order, those that run on beyond the view with break lines."""
    for part in parts:
        if part.broken:
            view.open_part(part.name, part.points, part.material, part.broken)
        else:
            view.part(part.name, part.points, part.material)


def parts_of(jamb: Jamb, left: float, right: float) -> tuple[Part, ...]:
    """List the parts in key order, `left` and `right` being the real x at which the view breaks off."""
    return tuple(part for family in _FAMILIES for part in family(jamb, left, right))


def _wall(jamb: Jamb, left: float, right: float) -> Iterator[Part]:
    words, material = say(_CORES[jamb.wall_core]), jamb.wall_core
    inner = -jamb.frame_edge.mm - jamb.packing_gap.mm
    yield Part(
        name="wall",
        points=rectangle(left, jamb.core_top, inner, jamb.core_bottom),
        material=material,
        words=f"{words}, {jamb.wall_thickness.text}",
        broken=(3,),
    )
    proud = (
        say("%(set_back)s proud of the lining", set_back=jamb.set_back.text)
        if jamb.set_back.mm > 0
        else say("not proud")
    )
    ease = say("; ease it behind the architrave") if jamb.eased else ""
    front = jamb.front_plaster(left)
    yield Part(
        name="plaster",
        points=front,
        material="plaster",
        words=say(
            "Plaster, %(plaster_thickness)s; %(proud)s%(ease)s",
            plaster_thickness=jamb.plaster_thickness.text,
            proud=proud,
            ease=ease,
        ),
        broken=(len(front) - 1,),
    )
    yield Part(
        name="plaster, far face",
        points=rectangle(left, jamb.core_bottom, -jamb.frame_edge.mm, jamb.wall_bottom),
        material="plaster",
        words="",
        broken=(3,),
    )


def _frame(jamb: Jamb, left: float, right: float) -> Iterator[Part]:
    yield Part(
        name="frame",
        points=rectangle(-jamb.frame_edge.mm, 0.0, 0.0, jamb.frame_depth.mm),
        material="standing timber",
        words=say(
            "Lining; edge %(frame_edge)s, %(frame_depth)s deep",
            frame_edge=jamb.frame_edge.text,
            frame_depth=jamb.frame_depth.text,
        ),
    )


def _packer(jamb: Jamb, left: float, right: float) -> Iterator[Part]:
    if jamb.packed:
        start = -jamb.first_quirk.mm
        yield Part(
            name="packer",
            points=rectangle(start - jamb.packer_width.mm, jamb.back, start, 0.0),
            material="new timber",
            words=say(
                "Packer, %(packer_width)s × %(packer_thickness)s",
                packer_width=jamb.packer_width.text,
                packer_thickness=jamb.packer_thickness.text,
            ),
        )


def _architrave(jamb: Jamb, left: float, right: float) -> Iterator[Part]:
    made_of, material = say(MADE_OF[jamb.architrave_material]), _ARCHITRAVES[jamb.architrave_material]
    size = f"{jamb.architrave_width.text} × {jamb.architrave_thickness.text}"
    name = jamb.architrave_profile.capitalize()
    yield Part(
        name="architrave",
        points=jamb.architrave(),
        material=material,
        words=say("%(name)s architrave, %(made_of)s, %(size)s", name=name, made_of=made_of, size=size),
    )


def _filler(jamb: Jamb, left: float, right: float) -> Iterator[Part]:
    if jamb.left_over.mm > 0:
        deep = min(5.0, jamb.architrave_width.mm / 4)
        yield Part(
            name="filler",
            points=rectangle(
                jamb.outer, -jamb.set_back.mm - jamb.left_over.mm, jamb.outer + deep, -jamb.set_back.mm
            ),
            material="filler",
            words=say("Flexible filler; %(left_over)s left at the wall side", left_over=jamb.left_over.text),
        )


def _skirting(jamb: Jamb, left: float, right: float) -> Iterator[Part]:
    if jamb.skirting_thickness.mm > 0:
        yield Part(
            name="skirting",
            points=rectangle(
                left, -jamb.set_back.mm - jamb.skirting_thickness.mm, jamb.outer, -jamb.set_back.mm
            ),
            material="beyond",
            words=say(
                "Skirting, %(skirting_thickness)s (beyond; fixed after)",
                skirting_thickness=jamb.skirting_thickness.text,
            ),
            broken=(3,),
        )


def _leaf(jamb: Jamb, left: float, right: float) -> Iterator[Part]:
    yield Part(
        name="leaf",
        points=rectangle(jamb.hinge_gap.mm, 0.0, right, jamb.leaf_thickness.mm),
        material="standing timber, other hand",
        words=say(
            "Door leaf, %(leaf_thickness)s; gap at hinge %(hinge_gap)s",
            leaf_thickness=jamb.leaf_thickness.text,
            hinge_gap=jamb.hinge_gap.text,
        ),
        broken=(1,),
    )


def _hinge(jamb: Jamb, left: float, right: float) -> Iterator[Part]:
    x, y = jamb.hinge_pin
    deep = min(30.0, jamb.leaf_thickness.mm - 5.0)
    for name, near, far in (
        ("hinge flap on the frame", x - 0.35, x - 0.35 - _FLAP),
        ("hinge flap on the leaf", x + 0.35, x + 0.35 + _FLAP),
    ):
        rim = tuple((u, y + math.sqrt(BARREL**2 - (u - x) ** 2)) for u in (near, (near + far) / 2, far))
        yield Part(name=name, points=(*rim, (far, deep), (near, deep)), material="steel", words="")
    yield Part(
        name="hinge",
        points=circle((x, y), BARREL),
        material="hinge",
        words=say(
            "Hinge; pin %(pin_projection)s in front of the leaf", pin_projection=jamb.pin_projection.text
        ),
    )


def _stop(jamb: Jamb, left: float, right: float) -> Iterator[Part]:
    top = jamb.leaf_thickness.mm + 2.0
    if jamb.stop_width.mm > 0:
        yield Part(
            name="stop",
            points=rectangle(0.0, top, jamb.stop_thickness.mm, top + jamb.stop_width.mm),
            material="standing timber, other hand",
            words=say(
                "Door stop, planted, %(stop_width)s × %(stop_thickness)s",
                stop_width=jamb.stop_width.text,
                stop_thickness=jamb.stop_thickness.text,
            ),
        )


def _packing(jamb: Jamb, left: float, right: float) -> Iterator[Part]:
    edge = -jamb.frame_edge.mm
    if jamb.packing_gap.mm > 0:
        yield Part(
            name="packing gap",
            points=rectangle(edge - jamb.packing_gap.mm, jamb.core_top, edge, jamb.core_bottom),
            material="empty",
            words=say("Packing gap, %(packing_gap)s; packed at fixings", packing_gap=jamb.packing_gap.text),
        )


def _nail(jamb: Jamb, left: float, right: float) -> Iterator[Part]:
    pin = jamb.pin()
    foot = max(y for _, y in pin)
    holds = [name for name, face in (("packer", jamb.back), ("lining", 0.0)) if foot > face]
    holds = holds if jamb.packed else holds[1:]
    short = say(" only: short of the lining") if "lining" not in holds else ""
    yield Part(
        name="pin",
        points=pin,
        material="steel",
        words=say(
            "Pin, %(architrave_pin)s long, in %(architrave)s%(short)s",
            architrave_pin=jamb.architrave_pin.text,
            architrave=" and ".join(holds or ["architrave"]),
            short=short,
        ),
    )


_FAMILIES: tuple[Callable[[Jamb, float, float], Iterator[Part]], ...] = (
    _wall,
    _frame,
    _packer,
    _architrave,
    _filler,
    _skirting,
    _leaf,
    _hinge,
    _stop,
    _packing,
    _nail,
)


_NOTHING = Size(mm=0.0, text="0")
_UNSEEN: dict[str, Any] = {
    "opening_angle": Angle(degrees=0.0, text="0"),
    **dict.fromkeys(("wall_thickness", "frame_depth", "leaf_thickness", "hinge_gap"), _NOTHING),
    **dict.fromkeys(("skirting_thickness", "skirting_shadow", "pin_projection"), _NOTHING),
    **dict.fromkeys(("stop_width", "stop_thickness"), _NOTHING),
}


def front_jamb(**given: Any) -> Jamb:
    """A jamb by the sizes of its front alone; those of leaf, hinge, stop and skirting are 0."""
    return Jamb(**(_UNSEEN | given))


_DEEP, _DEEPEST = 17.0, 32.0


def front_parts(jamb: Jamb) -> tuple[Part, ...]:
    """What stands at the frame's edge and in front of it, from the back forward; cut off below and beside."""
    left, deep = -jamb.reach - 5.0, _depth(jamb)
    inner = -jamb.frame_edge.mm - jamb.packing_gap.mm
    by_name = {part.name: part for part in parts_of(jamb, left, 0.0)}
    wall = replace(by_name["wall"], points=rectangle(left, jamb.core_top, inner, deep), broken=(2, 3))
    frame = replace(
        by_name["frame"], points=rectangle(-jamb.frame_edge.mm, 0.0, 0.0, deep), name="lining", broken=(2,)
    )
    before = (by_name[name] for name in ("plaster", "packer", "architrave", "filler") if name in by_name)
    pin = (by_name["pin"],) if _foot(jamb) < deep else ()
    return (wall, frame, *before, *pin)


def _foot(jamb: Jamb) -> float:
    return max(y for _, y in jamb.pin())


def _depth(jamb: Jamb) -> float:
    """How deep to show the lining: the plaster's back and the pin's point, where they are not too deep."""
    return min(max(_DEEP, jamb.core_top + 8.0, _foot(jamb) + 1.5), _DEEPEST)


def lettered(parts: tuple[Part, ...]) -> tuple[tuple[str, Part], ...]:
    keyed = [part for part in parts if part.words]
    return tuple(zip(LETTERS, keyed, strict=False))
