"""Sizes at random for every drawing there is, within what its method or its calculator allows."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from decimal import Decimal
from typing import Any

from hypothesis import strategies as st

from generator.drawings.bar_values import sheet_values
from generator.drawings.figures import Angle
from generator.quantities.cutting.orders import StockLength
from generator.quantities.cutting.task import plan_of
from tests.cutting.samples import chance, doors
from tests.drawings import door_samples, room_samples, samples, test_doses, test_programmes
from tests.quantities.square_rooms import rings, surveyed

Values = dict[str, object]
SIDES = st.sampled_from(("left", "right"))
SUBSTANCES = st.sampled_from(("mdf", "timber"))
SHAPES = st.sampled_from(tuple(door_samples.MEASURES))
STOCK = (StockLength(length=3600, on_hand=1), StockLength(length=4200), StockLength(length=8400))


def tenths(least: float, most: float) -> st.SearchStrategy[float]:
    return st.integers(round(least * 10), round(most * 10)).map(lambda each: each / 10)


def sizes(least: int, most: int) -> st.SearchStrategy[float]:
    return st.integers(least, most).map(float)


@st.composite
def jambs(draw: st.DrawFn, make: Callable[..., Values]) -> Values:
    """A set-back with its packer, eased by a little; a moulding on one face, on block or stud."""
    set_back = draw(tenths(0, 40))
    return make(
        set_back=set_back,
        packer=samples.packer_for(max(set_back - draw(tenths(0, 1.5)), 0.0)),
        first=draw(tenths(2, 15)),
        second=draw(tenths(2, 15)),
        width=draw(sizes(44, 145)),
        architrave_profile=draw(SHAPES),
        wall_core=draw(st.sampled_from(("block", "stud"))),
    )


@st.composite
def read(draw: st.DrawFn) -> Values:
    """Readings of one frame, of any number, about a set-back."""
    about = draw(tenths(0.2, 40))
    packer, wide, high = samples.packer_for(about), draw(sizes(600, 2400)), draw(sizes(1800, 2700))
    found = samples.rounds(draw(st.integers(1, 24)), about, packer)
    return samples.readings(found, packer, max(wide, 768.0), max(high, 1990.0))


@st.composite
def skirted(draw: st.DrawFn) -> Values:
    """A square or an L-shaped room with doors and a radiator."""
    long, deep = draw(st.integers(2600, 12000)), draw(st.integers(2400, 9000))
    cut, back = draw(st.integers(300, long - 1500)), draw(st.integers(300, deep - 1500))
    square = draw(st.booleans())
    walls = (long, deep, long, deep) if square else (long, deep - back, cut, back, long - cut, deep)
    doors = [("1", f"{draw(st.integers(0, 1000))} mm", "900 mm")]
    doors += [(str(len(walls)), f"{draw(st.integers(0, 1400))} mm", "800 mm")] if draw(st.booleans()) else []
    return room_samples.skirting(
        tuple(f"{wall} mm" for wall in walls),
        room_samples.SQUARE if square else room_samples.L_CORNERS,
        doors=tuple(doors),
        radiators=(("2", "100 mm", "900 mm"),) if draw(st.booleans()) else (),
    )


@st.composite
def corniced(draw: st.DrawFn) -> Values:
    long, deep = draw(st.integers(600, 9000)), draw(st.integers(600, 7000))
    walls = tuple(f"{wall} mm" for wall in (long, deep, long, deep))
    return room_samples.cornice_room(walls, room_samples.SQUARE, draw(st.integers(25, 65)))


@st.composite
def floored(draw: st.DrawFn) -> Values:
    """A rectangle, or a room that steps in and out, with pipes and a door."""
    ring = draw(st.one_of(rings(most=1), rings(most=4)))
    beside = abs(ring[2][1] - ring[1][1]) - 20
    boards = st.sampled_from((("2200 mm",), ("1200 mm", "1800 mm", "1500 mm")))
    return room_samples.floor(
        cover=draw(st.integers(110, 240)),
        boards=draw(boards),
        room=surveyed(ring),
        pipes=draw(st.integers(0, 3)),
        doors=(("2", "10 mm", f"{beside:g} mm"),) if draw(st.booleans()) else (),
    )


@st.composite
def framed(draw: st.DrawFn) -> Values:
    long = draw(st.integers(2400, 12000))
    return room_samples.partition(
        long,
        draw(st.integers(2300, 3600)),
        draw(st.sampled_from((400, 450, 600))),
        openings=(long // 3,) if draw(st.booleans()) else (),
        rows=draw(st.integers(0, 4)),
        longest="4.8 m",
    )


@st.composite
def boarded(draw: st.DrawFn) -> Values:
    deep = draw(st.integers(60, 400))
    return room_samples.window(
        draw(st.integers(400, 3000)),
        deep,
        deep + draw(st.integers(-8, 8)),
        draw(st.integers(5, 60)),
        draw(st.integers(10, 80)),
        draw(st.integers(15, 40)),
        draw(SUBSTANCES),
    )


@st.composite
def flights(draw: st.DrawFn) -> Values:
    risers = draw(st.integers(2, 20))
    return room_samples.stair(risers * draw(st.integers(150, 220)), draw(st.integers(220, 300)), risers)


@st.composite
def barred(draw: st.DrawFn) -> Values:
    """One sheet of a cutting plan, of pieces by chance or of the architraves of some doors."""
    if draw(st.booleans()):
        order = doors(
            draw(st.integers(1, 3)),
            kerf=Decimal(draw(st.sampled_from(("0", "1.2", "3", "4")))),
            width=Decimal(draw(st.sampled_from(("44", "69", "120", "145")))),
        )
    else:
        least, face = draw(st.sampled_from((40, 150, 600))), draw(st.sampled_from((12, 24, 69, 145, 220)))
        count, seed = draw(st.integers(1, 16)), draw(st.integers(0, 999))
        order = chance(seed, count, least, 1700, stock=STOCK, trim=20, width=Decimal(face))
    sheets = sheet_values(plan_of(order))
    return dict(sheets[draw(st.integers(0, len(sheets) - 1))])


@st.composite
def scribed(draw: st.DrawFn) -> Values:
    """Skirting of any height scribed on either hand, its cut leaned back a little or not at all."""
    lean = draw(tenths(0, 10))
    return samples.scribe(
        height=draw(sizes(44, 220)),
        thick=draw(sizes(12, 32)),
        shape=draw(SHAPES),
        back_cut=Angle(degrees=lean, text=f"{lean:g}"),
        side=draw(SIDES),
        material=draw(SUBSTANCES),
    )


SWEEPS: Mapping[str, st.SearchStrategy[Any]] = {
    "baluster_rake": st.builds(
        room_samples.rake, st.integers(150, 5000), st.sampled_from((0.0, 20.0, 35.5, 41.6, 55.0)),
        st.integers(20, 90), st.integers(60, 99), whole=st.booleans(),
    ),
    "cornice_plan": corniced(),
    "cutting_plan": barred(),
    "day_dose": st.builds(test_doses.values, test_doses.POINTS, test_doses.POINTS | st.just(())),
    "doorway_elevation": st.builds(
        samples.doorway, wide=sizes(500, 2400), high=sizes(1800, 2700), first=sizes(2, 15),
        second=sizes(0, 15), width=sizes(44, 145),
    ),
    "floor_plan": floored(),
    "hinge_elevation": st.builds(
        door_samples.hinges, wide=st.integers(500, 1200), high=st.integers(1700, 2700),
        count=st.integers(2, 5), side=SIDES, handle=st.integers(850, 1150), gap=st.integers(1, 6),
        foot=st.integers(2, 25),
    ),
    "head_section": jambs(samples.head),
    "jamb_rod": jambs(samples.rod),
    "jamb_section": jambs(samples.jamb),
    "leading_edge_plan": st.builds(
        door_samples.edge, wide=st.integers(500, 1200), thick=st.integers(30, 60), gap=tenths(1, 6),
        out=st.integers(0, 15), stop=st.sampled_from((0.0, 20.0, 32.0, 50.0)),
    ),
    "leaf_swing_plan": st.builds(
        door_samples.swing, wide=st.integers(500, 1200), thick=st.integers(30, 60), side=SIDES,
        out=st.integers(0, 15),
    ),
    "mitre_detail": st.builds(
        door_samples.mitre, corner=tenths(80, 100), head=sizes(32, 160),
        leg=st.one_of(st.none(), sizes(32, 160)), quirk=sizes(0, 15), side=SIDES,
    ),
    "moulding_profile": st.builds(
        door_samples.moulding, shape=SHAPES, wide=sizes(30, 220), thick=sizes(12, 28), material=SUBSTANCES
    ),
    "pair_elevation": st.builds(
        door_samples.pair, wide=st.integers(900, 2600), high=st.integers(1700, 2700), count=st.integers(2, 5),
        first=SIDES, rebate=st.sampled_from((0, 8, 12, 30)), gap=st.integers(2, 5), thick=st.integers(35, 60),
    ),
    "partition_elevation": framed(),
    "programme": st.builds(
        test_programmes.values, test_programmes.TASKS, st.sampled_from((None, 240, 450, 480))
    ),
    "quirk_marks": st.builds(
        samples.marks, wide=sizes(500, 2400), high=sizes(1800, 2700), every=sizes(150, 600),
        first=sizes(2, 15), second=sizes(0, 15),
    ),
    "scribe_detail": scribed(),
    "set_back_readings": read(),
    "skirting_plan": skirted(),
    "sprung_cuts": st.builds(
        room_samples.sprung_saw, st.integers(10, 80), st.integers(30, 170), st.integers(40, 180)
    ),
    "sprung_section": st.builds(
        room_samples.sprung, st.integers(25, 65), st.integers(70, 180), st.integers(16, 24), st.just(5),
        st.just(35), st.integers(0, 8),
    ),
    "stair_section": flights(),
    "window_board_section": boarded(),
}  # fmt: skip
