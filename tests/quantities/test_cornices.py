"""A sprung cornice held against an independent construction: the room set in, and the piece laid on a saw."""

from __future__ import annotations

import math

import pytest
from hypothesis import given as forall
from hypothesis import settings
from hypothesis import strategies as st
from shapely.geometry import LinearRing, Polygon

from generator.quantities.families.cornices import EXTERNAL, INTERNAL, SAWN
from generator.quantities.results import InputRefused
from generator.quantities.rooms import outline
from tests.quantities.examples import printed, run_with, size

L_SHAPED = ("3640 mm", "2410 mm", "1220 mm", "1180 mm", "2420 mm", "3590 mm")
L_CORNERS = ("90 deg", "90 deg", "270 deg", "90 deg", "90 deg", "90 deg")


def cornice(walls: tuple[str, ...] = L_SHAPED, corners: tuple[str, ...] = L_CORNERS, **changed: object):  # type: ignore[no-untyped-def]
    inputs = {"spring": "38 deg", "width": "94 mm", "longest": "4.2 m", **changed}
    room = run_with(
        "room", walls=tuple(size(wall) for wall in walls), corners=tuple(size(corner) for corner in corners)
    )
    return run_with("cornice_run", room=room, **inputs)  # type: ignore[arg-type]


def test_pieces_at_an_external_corner_are_fitted_first() -> None:
    made = cornice()
    assert [
        (piece.mark, piece.wall.number, piece.left_turns, piece.right_turns) for piece in made.pieces
    ] == [
        ("A", 3, INTERNAL, EXTERNAL),
        ("B", 4, EXTERNAL, INTERNAL),
        ("C", 1, INTERNAL, INTERNAL),
        ("D", 2, INTERNAL, INTERNAL),
        ("E", 5, INTERNAL, INTERNAL),
        ("F", 6, INTERNAL, INTERNAL),
    ]


@settings(max_examples=60, deadline=None)
@forall(st.integers(20, 70), st.integers(40, 160), st.integers(80, 100))
def test_the_ceiling_edge_is_the_room_set_in_by_the_projection(spring: int, wide: int, corner: int) -> None:
    walls = (3000.0, 2400.0, 3000.0, 2400.0)
    corners = (corner, 180 - corner, corner, 180 - corner)
    made = cornice(
        tuple(f"{wall:g} mm" for wall in walls),
        tuple(f"{each} deg" for each in corners),
        spring=f"{spring} deg",
        width=f"{wide} mm",
    )
    shape = Polygon(outline(walls, corners).starts)
    projection = wide * math.sin(math.radians(spring))
    inner = shape.buffer(-projection, join_style="mitre", mitre_limit=100)
    assert made.ceiling_line.number == pytest.approx(LinearRing(inner.exterior.coords).length, abs=1e-6)


def _on_the_saw(side: str, turns: str, spring: float, half: float) -> tuple[str, str, str]:
    """Which way handle and blade go and which side is kept, from the plane that halves the corner.

    The piece lies on its back as it is seen from its wall, ceiling edge up the table; its end is the plane
    x = ±cot(half) × how far a point stands off the wall, and the kept side is that of smaller or larger x.
    """
    out = 1 if (side == "right") == (turns == EXTERNAL) else -1
    run, rise = math.sin(spring) * out / math.tan(half), math.cos(spring) * out / math.tan(half)
    keep = 1 if side == "left" else -1
    if SAWN[side, turns].fence == "wall edge":
        # Turned about on the table: along it and across it change sign, off its face does not.
        rise, keep = -rise, -keep
    handle = "right" if run < 0 else "left"
    leans = "right" if rise > 0 else "left"
    return handle, leans, "right" if keep > 0 else "left"


@pytest.mark.parametrize(("side", "turns"), sorted(SAWN))
def test_each_end_lies_so_that_the_blade_leans_to_the_left(side: str, turns: str) -> None:
    handle, leans, keep = _on_the_saw(side, turns, math.radians(38), math.radians(45))
    sawn = SAWN[side, turns]
    assert (handle, leans, keep) == (sawn.table, "left", sawn.keep)


def test_a_piece_that_is_shifted_has_one_end_with_a_minus() -> None:
    made = cornice()
    shifted, closing = made.cuts[0], made.cuts[2]
    assert (printed(shifted, "left_end"), printed(shifted, "right_end")) == ("−31.6°", "31.6°")
    assert (printed(closing, "left_end"), printed(closing, "right_end")) == ("31.6°", "31.6°")
    assert (printed(shifted, "left_tilt"), shifted.hand, closing.hand) == ("33.9°", "out / in", "in / in")


def test_a_piece_lies_with_its_longer_edge_away_and_its_ends_are_told_as_it_lies() -> None:
    made = cornice(corners=("92 deg", "88 deg", "270 deg", "90 deg", "90 deg", "90 deg"))
    first = next(cut for cut in made.cuts if cut.name.startswith("wall 1,"))
    corner = run_with("sprung_mitre", spring="38 deg", corner="92 deg", turns="internal", width="94 mm")
    assert first.name == "wall 1, wall edge away"
    assert printed(first, "left_end") == printed(corner, "mitre")


def test_the_longest_a_piece_is_runs_from_edge_to_edge() -> None:
    made = cornice()
    assert printed(made.pieces[0], "length_to_cut") == "1277.9 mm"
    assert printed(made.cuts[0], "short_point") == "1220 mm"


def test_a_wall_longer_than_the_stock_is_refused() -> None:
    (refused,) = cornice(longest="3.6 m").refused
    assert (refused.code, refused.about) == ("cornice-over-stock", "C")


def test_a_piece_too_short_to_hold_is_told() -> None:
    made = cornice(shortest_held="1200 mm")
    assert [(note.code, note.about) for note in made.notes] == [("cornice-short-at-saw", "B")]


def test_a_corner_nearly_straight_is_refused() -> None:
    walls = ("2000 mm", "2000 mm", "2000 mm", "3000 mm", "2500 mm")
    corners = ("176 deg", "100 deg", "90 deg", "90 deg", "84 deg")
    with pytest.raises(InputRefused) as refused:
        cornice(walls, corners)
    assert (refused.value.code, refused.value.values["number"]) == ("cornice-corner", "1")


def test_a_moulding_wider_than_the_wall_is_refused() -> None:
    with pytest.raises(InputRefused) as refused:
        cornice(("100 mm", "1000 mm", "100 mm", "1000 mm"), ("90 deg",) * 4)
    assert refused.value.code == "cornice-runs-out"


@settings(max_examples=60, deadline=None)
@forall(st.integers(25, 65), st.integers(70, 160), st.integers(10, 24))
def test_the_ground_fills_what_wall_ceiling_and_back_leave(spring: int, wide: int, thick: int) -> None:
    made = run_with(
        "cornice_ground", spring=f"{spring} deg", width=f"{wide} mm", thickness=f"{thick} mm",
        edge="5 mm", clearance="0 mm", least_depth="1 mm",
    )  # fmt: skip
    turned = math.radians(spring)
    along = (math.sin(turned), math.cos(turned))
    face = ((0.0, -wide * math.cos(turned)), (wide * math.sin(turned), 0.0))
    deep = thick - 5 * math.cos(turned)
    back = tuple((x - deep * math.cos(turned), y + deep * math.sin(turned)) for x, y in face)
    (x, y), (u, v) = back[0], along
    up, out = -(y - x / u * v), x - y / v * u
    assert (made.up.number, made.out.number) == pytest.approx((up, out), abs=1e-6)  # type: ignore[union-attr]
    area = made.up.number * made.out.number / 2  # type: ignore[union-attr]
    assert made.face.number * made.depth.number / 2 == pytest.approx(area, rel=1e-9)  # type: ignore[union-attr]


def test_a_ground_that_holds_no_pin_is_refused() -> None:
    made = run_with(
        "cornice_ground", spring="45 deg", width="60 mm", thickness="20 mm", edge="0 mm",
        clearance="2 mm", least_depth="15 mm",
    )  # fmt: skip
    assert [finding.code for finding in made.refused] == ["ground-too-thin"]  # type: ignore[union-attr]


def test_a_moulding_that_fills_the_corner_is_refused() -> None:
    with pytest.raises(InputRefused) as refused:
        run_with(
            "cornice_ground", spring="45 deg", width="40 mm", thickness="22 mm", edge="0 mm",
            clearance="2 mm", least_depth="15 mm",
        )  # fmt: skip
    assert refused.value.code == "no-room-for-ground"
