"""Values for the drawings of corners, leaves and mouldings, as the quantities would hand them over."""

from __future__ import annotations

import math

from generator.drawings import Angle, Size


def size(mm: float, places: int = 1) -> Size:
    return Size(mm=mm, text=f"{round(mm, places):g}")


def angle(degrees: float) -> Angle:
    return Angle(degrees=degrees, text=f"{round(degrees, 1):g}")


def mitre(
    *, corner: float = 89.36, head: float = 69.0, leg: float | None = None, quirk: float = 6.0,
    side: str = "left",
) -> dict[str, object]:  # fmt: skip
    leg = head if leg is None else leg
    turn = math.radians(corner)
    head_run = (leg + head * math.cos(turn)) / math.sin(turn)
    leg_run = (head + leg * math.cos(turn)) / math.sin(turn)
    gap = 2 * math.hypot(head, leg) * math.sin(abs(turn - math.pi / 2) / 2)
    return {
        "corner": angle(corner),
        "head_saw": angle(math.degrees(math.atan2(head_run, head))),
        "leg_saw": angle(math.degrees(math.atan2(leg_run, leg))),
        "head_width": size(head),
        "leg_width": size(leg),
        "quirk": size(quirk),
        "plain_gap": size(gap),
        "opens_at": "" if corner == 90 else "toe" if corner < 90 else "heel",
        "side": side,
    }


def hinges(
    *, wide: float = 766.0, high: float = 1990.0, count: int = 3, side: str = "left", handle: float = 1000.0,
    gap: float = 3.0, foot: float = 8.0,
) -> dict[str, object]:  # fmt: skip
    leaf = high - gap - foot
    first, last = 200.0, leaf - 275.0
    centres = [first + (last - first) * bay / (count - 1) for bay in range(count)]
    latch = leaf - (handle - foot)
    return {
        "opening_width": size(wide),
        "opening_height": size(high),
        "leaf_width": size(wide - 2 * gap),
        "leaf_height": size(leaf),
        "hinge_gap": size(gap),
        "latch_gap": size(gap),
        "head_gap": size(gap),
        "foot_gap": size(foot),
        "hinge_height": size(100),
        "on_leaf": tuple(size(each) for each in centres),
        "on_frame": tuple(size(each + gap) for each in centres),
        "latch_on_leaf": size(latch),
        "latch_on_frame": size(latch + gap),
        "hinge_side": side,
    }


def edge(
    *, wide: float = 760.5, thick: float = 44.0, gap: float = 3.0, inset: float = 1.25, out: float = 6.0,
    stop: float = 32.0,
) -> dict[str, object]:  # fmt: skip
    reach, back = wide + inset, out + thick
    bevel = reach - math.sqrt(reach**2 + out**2 - back**2)
    return {
        "leaf_width": size(wide),
        "leaf_thickness": size(thick),
        "latch_gap": size(gap),
        "pin_inset": size(inset, 2),
        "pin_projection": size(out),
        "gap_needed": size(math.hypot(reach, back) - reach),
        "bevel": size(bevel),
        "bevel_angle": angle(math.degrees(math.atan(bevel / thick))),
        "stop_width": size(stop),
        "stop_thickness": size(12),
    }


def swing(
    *, wide: float = 766.0, thick: float = 44.0, side: str = "left", out: float = 6.0
) -> dict[str, object]:
    leaf = wide - 5.5
    return {
        "opening_width": size(wide),
        "leaf_width": size(leaf),
        "leaf_thickness": size(thick),
        "hinge_gap": size(2.5),
        "pin_inset": size(1.25, 2),
        "pin_projection": size(out),
        "radius": size(math.hypot(leaf + 1.25, out + thick)),
        "way_through": size(wide - 1.25 - out - thick - 12),
        "hinge_side": side,
    }  # fmt: skip


def pair(
    *, wide: float = 1524.0, high: float = 1990.0, count: int = 3, first: str = "left", rebate: float = 12.0,
    gap: float = 3.0, foot: float = 8.0, thick: float = 44.0,
) -> dict[str, object]:  # fmt: skip
    leaf = high - gap - foot
    first_hinge, last = 200.0, leaf - 275.0
    centres = [first_hinge + (last - first_hinge) * bay / (count - 1) for bay in range(count)]
    return {
        "opening_width": size(wide),
        "opening_height": size(high),
        "leaf_width": size((wide - 3 * gap + rebate) / 2),
        "leaf_height": size(leaf),
        "leaf_thickness": size(thick),
        "hinge_gap": size(gap),
        "meeting_gap": size(gap),
        "head_gap": size(gap),
        "foot_gap": size(foot),
        "rebate": size(rebate),
        "hinge_height": size(100),
        "on_leaf": tuple(size(each) for each in centres),
        "latch_on_leaf": size(leaf - 1000.0 + foot),
        "bolt_length": size(200),
        "first": first,
    }


MEASURES: dict[str, dict[str, float]] = {
    "square": {},
    "pencil round": {"radius": 4.0},
    "chamfer": {"depth": 4.0, "breadth": 6.0},
    "ovolo": {"radius": 5.0, "fillet_depth": 2.0, "fillet_breadth": 3.0},
    "ogee": {"depth": 7.0, "breadth": 16.0, "arris": 1.0},
    "torus": {"radius": 5.0, "inner_fillet": 3.0, "outer_fillet": 2.0, "arris": 1.0},
    "bullnose": {"arris": 1.0},
    "cove": {"depth": 5.0, "fillet_breadth": 7.0},
}


def moulding(
    *, shape: str = "torus", wide: float = 69.0, thick: float = 18.0, material: str = "mdf"
) -> dict[str, object]:
    return {
        "shape": shape,
        "moulding_width": size(wide),
        "thickness": size(thick),
        "girth": size(wide + 2 * thick + 7.6),
        "material": material,
        **{name: size(mm) for name, mm in MEASURES[shape].items()},
    }


USUAL: dict[str, dict[str, object]] = {
    "mitre_detail": mitre(),
    "hinge_elevation": hinges(),
    "leading_edge_plan": edge(),
    "leaf_swing_plan": swing(),
    "moulding_profile": moulding(),
    "pair_elevation": pair(),
}
