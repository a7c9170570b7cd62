"""Values for each drawing as the quantities would hand them over, made from a few sizes."""

from __future__ import annotations

import math

from generator.drawings import DRAWINGS, Angle, Reading, Size
from generator.drawings.figures import MEMBERS, Member
from tests.drawings import door_samples, room_samples

PAPER, PHONE, THUMBNAIL = 175.0, 80.0, 40.0
WIDTHS = (PAPER, PHONE)


def size(mm: float) -> Size:
    return Size(mm=mm, text=f"{mm:g}".replace("-", "−"))


def packer_for(set_back: float) -> float:
    """An even packer: the set-back taken up to the next half millimetre; none where nothing stands proud."""
    return math.ceil(set_back * 2 - 1e-9) / 2 if set_back > 0 else 0.0


def jamb(
    *,
    set_back: float = 7.5,
    packer: float | None = None,
    first: float = 5.0,
    second: float = 4.0,
    width: float = 69.0,
    **changed: object,
) -> dict[str, object]:
    thick = packer_for(set_back) if packer is None else packer
    second = second if thick > 0 else 0.0
    values: dict[str, object] = {
        "wall_core": "block",
        "wall_thickness": size(100),
        "plaster_thickness": size(13),
        "packing_gap": size(8),
        "set_back": size(set_back),
        "frame_edge": size(34),
        "frame_depth": size(118),
        "first_quirk": size(first),
        "second_quirk": size(second),
        "total_quirk": size(first + second),
        "packer_width": size(max(32 - first, 10.0)),
        "packer_thickness": size(thick),
        "left_over": size(round(thick - set_back, 3)),
        "architrave_width": size(width),
        "architrave_thickness": size(18),
        "architrave_profile": "torus",
        "architrave_material": "mdf",
        "architrave_pin": size(50),
        "skirting_thickness": size(15),
        "skirting_shadow": size(round(thick + 18 - set_back - 15, 3)),
        "leaf_thickness": size(35),
        "hinge_gap": size(3),
        "pin_projection": size(6),
        "opening_angle": Angle(degrees=144.0, text="144"),
        "stop_width": size(25),
        "stop_thickness": size(12),
    }
    return {**values, **changed}


def rod(**changed: object) -> dict[str, object]:
    """The jamb's own sizes, as far as its rod takes them."""
    whole = jamb(**changed)  # type: ignore[arg-type]
    edge = whole["total_quirk"].mm + whole["architrave_width"].mm  # type: ignore[attr-defined]
    taken = {parameter.name for parameter in DRAWINGS["jamb_rod"].parameters}
    return {name: value for name, value in whole.items() if name in taken} | {"outer_mark": size(edge)}


def head(**changed: object) -> dict[str, object]:
    """The jamb's own sizes, as far as the head takes them."""
    taken = {parameter.name for parameter in DRAWINGS["head_section"].parameters}
    return {name: value for name, value in jamb(**changed).items() if name in taken}  # type: ignore[arg-type]


def scribe(*, height: float = 119.0, thick: float = 15.0, **changed: object) -> dict[str, object]:
    values: dict[str, object] = {
        "shape": "torus",
        "height": size(height),
        "thickness": size(thick),
        "material": "timber",
        "back_cut": Angle(degrees=3.0, text="3"),
    }
    return {**values, **changed}


def doorway(
    *,
    wide: float = 768.0,
    high: float = 1990.0,
    first: float = 5.0,
    second: float = 4.0,
    width: float = 69.0,
    **changed: object,
) -> dict[str, object]:
    quirk = first + second
    values: dict[str, object] = {
        "opening_width": size(wide),
        "opening_height": size(high),
        "first_quirk": size(first),
        "second_quirk": size(second),
        "total_quirk": size(quirk),
        "architrave_width": size(width),
        "architrave_thickness": size(18),
        "architrave_profile": "torus",
        "head_long": size(wide + 2 * quirk + 2 * width),
        "head_short": size(wide + 2 * quirk),
        "leg_long": size(high + quirk + width),
        "leg_short": size(high + quirk),
        "saw_angle": Angle(degrees=45.0, text="45"),
    }
    return {**values, **changed}


def reading(member: Member, at: float, value: float, label: str, packer: float = 8.5) -> Reading:
    left = round(packer - value, 3)
    return Reading(
        member=member,
        at=at,
        value=Size(mm=value, text=f"{value:.1f}"),
        left_over=Size(mm=left, text=f"{left:.1f}" if left else "0"),
        label=label,
    )


NINE = (
    reading("left", 100, 7.5, "foot"),
    reading("left", 995, 8.0, "middle"),
    reading("left", 1890, 8.5, "top"),
    reading("head", 80, 8.0, "left"),
    reading("head", 384, 8.5, "mid"),
    reading("head", 690, 8.0, "right"),
    reading("right", 100, 9.0, "top"),
    reading("right", 995, 8.5, "middle"),
    reading("right", 1890, 8.0, "foot"),
)


def rounds(count: int, about: float = 8.0, packer: float = 8.5) -> tuple[Reading, ...]:
    """`count` readings shared out over the members in order, waving about a value."""
    members = [MEMBERS[i * 3 // count] for i in range(count)]
    found = []
    for i, member in enumerate(members):
        of = members.count(member)
        nth = i - members.index(member)
        long = 768.0 if member == "head" else 1990.0
        at = 40 + nth * (long - 80) / max(of - 1, 1)
        wave = about * (1 + 0.15 * math.sin(i * 1.7))
        found.append(reading(member, at, round(wave, 1), f"at {at:.0f}", packer))
    return tuple(found)


def readings(
    of: tuple[Reading, ...] = NINE, packer: float = 8.5, wide: float = 768.0, high: float = 1990.0
) -> dict[str, object]:
    found = [r.value.mm for r in of]
    return {
        "readings": of,
        "packer_thickness": size(packer),
        "opening_width": size(wide),
        "opening_height": size(high),
        "mean": size(round(sum(found) / len(found), 1)),
        "least": size(min(found)),
        "most": size(max(found)),
        "step": size(0.5),
    }


def marks(
    *,
    high: float = 1990.0,
    wide: float = 768.0,
    every: float = 300.0,
    first: float = 5.0,
    second: float = 4.0,
) -> dict[str, object]:
    return {
        "leg_length": size(high),
        "leg_marks": _places(high, every),
        "head_length": size(wide),
        "head_marks": _places(wide, every),
        "spacing": size(every),
        "first_quirk": size(first),
        "second_quirk": size(second),
    }


def _places(length: float, every: float) -> tuple[Size, ...]:
    inner = [n * every for n in range(int(length // every) + 1) if n * every < length]
    return tuple(size(place) for place in (*inner, length))


USUAL: dict[str, dict[str, object]] = {
    **door_samples.USUAL,
    **room_samples.USUAL,
    "doorway_elevation": doorway(),
    "jamb_section": jamb(),
    "jamb_rod": rod(),
    "head_section": head(),
    "scribe_detail": scribe(),
    "quirk_marks": marks(),
    "set_back_readings": readings(),
}
