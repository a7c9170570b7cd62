"""Values for the drawings of rooms, floors, partitions, windows and stairs, bound as documents bind them."""

from __future__ import annotations

from typing import Any

from generator.documents.figures import _as_kind
from generator.drawings import DRAWINGS
from generator.quantities.calculator import Result
from generator.quantities.profile_measures import ProfileMeasures
from tests.quantities.examples import run_with, size

SQUARE = ("90 deg", "90 deg", "90 deg", "90 deg")
L_SHAPED = ("5200 mm", "2600 mm", "1300 mm", "1500 mm", "3900 mm", "4100 mm")
L_CORNERS = ("90 deg", "90 deg", "270 deg", "90 deg", "90 deg", "90 deg")


def bound(drawing: str, **found: Result) -> dict[str, object]:
    """Results in the form each parameter of a drawing takes."""
    kinds = {parameter.name: parameter.kind for parameter in DRAWINGS[drawing].parameters}
    values = {name: _as_kind(kinds[name], result, {}) for name, result in found.items()}
    assert None not in values.values()
    return dict(values)


def several(*texts: str) -> tuple[Any, ...]:
    return tuple(size(text) for text in texts)


def skirting(
    walls: tuple[str, ...] = L_SHAPED,
    corners: tuple[str, ...] = L_CORNERS,
    *,
    doors: tuple[tuple[str, str, str], ...] = (("1", "1000 mm", "923 mm"), ("5", "600 mm", "1003 mm")),
    radiators: tuple[tuple[str, str, str], ...] = (("2", "700 mm", "1200 mm"),),
    longest: str = "4.2 m",
    **rules: Any,
) -> dict[str, object]:
    room = run_with("room", walls=several(*walls), corners=several(*corners))
    lists = {
        f"{kind}_{name}": several(*(each[at] for each in items))
        for kind, items in (("door", doors), ("radiator", radiators))
        for at, name in enumerate(("walls", "starts", "widths"))
    }
    fixed = {"thickness": "15 mm", "joint_clear": "300 mm", "longest": longest, **rules}
    run = run_with("skirting_run", room=room, **lists, **fixed)
    return bound(
        "skirting_plan", walls=room.lengths, corners=room.corners, pieces=run.pieces, doors=run.doors,
        radiators=run.radiators,
    )  # fmt: skip


def floor_room(walls: tuple[str, ...], outs: tuple[int, ...] = ()) -> Any:
    """A room of square corners; `outs` are the numbers of those that stand out into it."""
    corners = [size("270 deg" if at in outs else "90 deg") for at in range(1, len(walls) + 1)]
    return run_with("room", walls=several(*walls), corners=tuple(corners))


def rectangle(long: int, wide: int) -> Any:
    return floor_room((f"{long} mm", f"{wide} mm", f"{long} mm", f"{wide} mm"))


def floor(
    long: int = 4460,
    wide: int = 3570,
    cover: int = 190,
    boards: tuple[str, ...] = ("2200 mm",),
    *,
    gap: int = 10,
    pipes: int = 2,
    room: Any = None,
    doors: tuple[tuple[str, str, str], ...] = (),
    start_wall: str = "1",
) -> dict[str, object]:
    made = run_with(
        "floor_layout", room=room or rectangle(long, wide), gap=f"{gap} mm", start_wall=start_wall,
        cover_width=f"{cover} mm", board_lengths=several(*boards), least_end="200 mm",
        least_stagger="150 mm", least_rip="50 mm", saw_kerf="3 mm",
        pipe_alongs=several(*(f"{300 + 120 * at} mm" for at in range(pipes))),
        pipe_acrosses=several(*("60 mm" for _ in range(pipes))),
        pipe_diameters=several(*("15 mm" for _ in range(pipes))),
        **{
            f"door_{name}": several(*(door[at] for door in doors))
            for at, name in enumerate(("walls", "starts", "widths"))
        },
    )  # fmt: skip
    return bound(
        "floor_plan", along=made.along, across=made.across, gap=size(f"{gap} mm"), edge=made.edge,
        rows=made.laid, pipes=made.pipes, doors=made.thresholds,
    )  # fmt: skip


def partition(
    long: int = 4300,
    high: int = 2400,
    spacing: int = 600,
    *,
    openings: tuple[int, ...] = (1900,),
    rows: int = 2,
    longest: str | None = None,
) -> dict[str, object]:
    stock = {"longest": longest} if longest else {}
    frame = run_with(
        "partition_frame", length=f"{long} mm", height=f"{high} mm", spacing=f"{spacing} mm",
        stud_thickness="47 mm", plate_thickness="47 mm", noggin_rows=str(rows),
        opening_starts=several(*(f"{start} mm" for start in openings)),
        opening_widths=several(*("826 mm" for _ in openings)),
        opening_heights=several(*("2060 mm" for _ in openings)), **stock,
    )  # fmt: skip
    return bound(
        "partition_elevation", length=frame.length, height=frame.height, stud_length=frame.stud_length,
        members=frame.members, openings=frame.openings,
    )  # fmt: skip


def window(
    reveal: int = 1210, left: int = 148, right: int = 152, nose: int = 30, ear: int = 40, thick: int = 25,
    material: str = "mdf",
) -> dict[str, object]:  # fmt: skip
    sizes = {
        "reveal_width": f"{reveal} mm", "left_depth": f"{left} mm", "right_depth": f"{right} mm",
        "projection": f"{nose} mm", "ear": f"{ear} mm", "frame_gap": "2 mm", "packer_end": "75 mm",
    }  # fmt: skip
    made = run_with("window_board", packer_spacing="450 mm", **sizes)
    return bound(
        "window_board_section", **{name: size(text) for name, text in sizes.items()},
        board_width=made.width, board_length=made.length, left_notch=made.left_notch,
        right_notch=made.right_notch, packers=made.packers, board_thickness=size(f"{thick} mm"),
        packer_thickness=size("8 mm"), plaster_thickness=size("13 mm"), board_material=material,
    )  # fmt: skip


def rake(
    run: int = 2400, pitch: float = 41.6, baluster: int = 41, most: int = 99, *, whole: bool = False
) -> dict[str, object]:
    sloping = {"pitch": f"{pitch} deg"} if pitch else {}
    made = run_with("balusters", run=f"{run} mm", baluster=f"{baluster} mm", most_gap=f"{most} mm", **sloping)
    return bound(
        "baluster_rake", run=made.run, rise=made.rise, pitch=size(f"{pitch} deg"), height=size("900 mm"),
        baluster=size(f"{baluster} mm"), gap=made.gap, fillet=made.fillet, rake=made.rake, count=made.count,
        centres=made.centres, **(whole_rails(made, baluster) if whole else {}),
    )  # fmt: skip


def whole_rails(made: Any, baluster: int) -> dict[str, Any]:
    """What draws the rails of a balustrade to size: cut, seated, and with its gaps at the newels."""
    cut = run_with(
        "baluster_cut", balusters=made, height="900 mm", base_up="46 mm", handrail_depth="59 mm",
        base_depth="32 mm", groove="8 mm", baluster=f"{baluster} mm", fillet_thickness="8 mm",
    )  # fmt: skip
    assert not isinstance(cut, str)
    sloping = {"base_up": size("46 mm")} if made.pitch.number else {}
    return {
        "end_gap": made.end_gap, "length": cut.length, "handrail_depth": cut.handrail_plumb,
        "base_depth": cut.base_plumb, **sloping,
    }  # fmt: skip


def stair(rise: int = 2600, going: int = 225, risers: int = 13) -> dict[str, object]:
    made = run_with("straight_stair", total_rise=f"{rise} mm", going=f"{going} mm", risers=str(risers))
    return bound(
        "stair_section", total_rise=size(f"{rise} mm"), total_going=made.total_going, rise=made.rise,
        going=made.going, pitch=made.pitch, risers=made.risers, stride=made.stride,
    )  # fmt: skip


def cornice_room(
    walls: tuple[str, ...] = L_SHAPED, corners: tuple[str, ...] = L_CORNERS, spring: int = 38, wide: int = 94
) -> dict[str, object]:
    room = run_with("room", walls=several(*walls), corners=several(*corners))
    made = run_with("cornice_run", room=room, spring=f"{spring} deg", width=f"{wide} mm", longest="30 m")
    return bound(
        "cornice_plan", walls=room.lengths, corners=room.corners, pieces=made.pieces, settings=made.corners
    )


def sprung(
    spring: int = 38, wide: int = 94, thick: int = 20, edge: int = 6, pin: int = 38, bead: int = 5,
    material: str = "timber", shape: str = "cove", measures: dict[str, str] | None = None,
) -> dict[str, object]:  # fmt: skip
    corner = run_with(
        "sprung_mitre", spring=f"{spring} deg", corner="90 deg", turns="internal", width=f"{wide} mm"
    )
    ground = run_with(
        "cornice_ground", spring=f"{spring} deg", width=f"{wide} mm", thickness=f"{thick} mm",
        edge=f"{edge} mm", clearance="2 mm", least_depth="1 mm",
    )  # fmt: skip
    sizes = measures or {"depth": "8 mm", "fillet_breadth": "7 mm"}
    return bound(
        "sprung_section", spring=size(f"{spring} deg"), moulding_width=size(f"{wide} mm"),
        thickness=size(f"{thick} mm"), edge=size(f"{edge} mm"), drop=corner.drop,
        projection=corner.projection, ground_up=ground.up, ground_out=ground.out,
        pin=size(f"{pin} mm"), pin_line=ground.pin_line,
        bead=size(f"{bead} mm"), shape=shape, material=material,
        measures=ProfileMeasures(**{name: size(text) for name, text in sizes.items()}),
    )  # fmt: skip


def sprung_saw(spring: int = 38, corner: int = 90, wide: int = 94) -> dict[str, object]:
    made = run_with(
        "sprung_mitre", spring=f"{spring} deg", corner=f"{corner} deg", turns="internal", width=f"{wide} mm"
    )
    return bound(
        "sprung_cuts", corner=size(f"{corner} deg"), mitre=made.mitre, bevel=made.bevel,
        moulding_width=size(f"{wide} mm"),
    )  # fmt: skip


USUAL: dict[str, dict[str, object]] = {
    "baluster_rake": rake(),
    "cornice_plan": cornice_room(),
    "floor_plan": floor(),
    "partition_elevation": partition(),
    "skirting_plan": skirting(),
    "sprung_cuts": sprung_saw(),
    "sprung_section": sprung(),
    "stair_section": stair(),
    "window_board_section": window(),
}
