"""A straight stair held against Approved Document K (England, 2013); one that stands, read step by step."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from generator.quantities.calculator import Example, Length, Lengths, Margin, Offset, Times, calculator
from generator.quantities.functions import atan, count, greatest, least, mean, round_up, sqrt, total
from generator.quantities.held import Against, Held, decider, undecided
from generator.quantities.results import Finding, Findings, InputRefused, found
from generator.quantities.worked import Worked, literal, millimetres, plain
from generator.units import ANGLE, Value

# Approved Document K 2013, Table 1.1, rise and going: private stair read in a copy, the others from memory.
TABLE: Mapping[str, tuple[Worked, ...]] = {
    "private": (millimetres(150), millimetres(220), millimetres(220), millimetres(300)),
    "utility": (millimetres(150), millimetres(190), millimetres(250), millimetres(400)),
    "general access": (millimetres(150), millimetres(170), millimetres(250), millimetres(400)),
}
KNOWN: Mapping[str, str] = {"private": "copy", "utility": "memory", "general access": "memory"}
# Approved Document K 2013, paragraph 1.3 and Table 1.1, private stair.
LEAST_STRIDE, MOST_STRIDE = millimetres(550), millimetres(700)
STEEPEST = literal(Value(Decimal(42), ANGLE))
# Approved Document K 2013, paragraph 1.11: from memory.
LEAST_HEADROOM = millimetres(2000)


@dataclass(frozen=True, slots=True, kw_only=True)
class StraightStair:
    """A flight's rise, pitch and stride, with its strings; `stride` is twice the rise and the going.

    `first_rise` is from the floor as it is now to the first tread as fixed, `last_rise` from the last tread
    to the floor above as it is now: finishes still to be laid bring both to `rise`. `held` shows each figure
    beside the document's.
    """

    risers: Worked
    treads: Worked
    rise: Worked
    going: Worked
    total_going: Worked
    pitch: Worked
    stride: Worked
    string: Worked
    first_rise: Worked
    last_rise: Worked
    held: Against
    notes: Findings
    refused: Findings


@calculator(
    example=Example(
        inputs={"total_rise": "2600 mm", "going": "225 mm", "risers": "13"},
        gives={"rise": "200 mm", "pitch": "41.6°", "stride": "625 mm", "total_going": "2700 mm"},
    )
)
def straight_stair(
    *,
    total_rise: Length,
    going: Length,
    risers: Times | None = None,
    headroom: Length | None = None,
    floor_finish: Offset | None = None,
    landing_finish: Offset | None = None,
    tread_finish: Margin | None = None,
    use: str | None = None,
    decided_by: str | None = None,
) -> StraightStair:
    """A straight stair's rise, pitch and stride, held against Approved Document K 2013.

    Lengths and a number of risers in; lengths and angles out. `total_rise` is from finished floor to finished
    floor. Without `risers` the fewest that keep the greatest rise are taken. `use` is private (also where it
    is left out), utility or general access, as the designer or building control names it. Limits by Approved
    Document K 2013 Table 1.1: private stair read in a copy, the others from memory, as is headroom; the pitch
    is limited for a private stair alone. What stands outside is refused until `decided_by` says who decided
    (designer or building control); whether a stair is approved is for building control to say.
    """
    kind, by = _use(use), decider(decided_by)
    number = _number(total_rise, risers, TABLE[kind][1])
    rise = total_rise / number
    treads = number - 1
    pitch = atan(rise / going)
    stride = 2 * rise + going
    tread = tread_finish or millimetres(0)
    held = (
        *_steps(kind, rise, going, by),
        Held(
            code="stride", actual=stride, least=LEAST_STRIDE, most=MOST_STRIDE, against="stride",
            known=KNOWN[kind], decided_by=by,
        ),
        *_pitch(kind, pitch, by),
        *_headroom(headroom, by),
    )  # fmt: skip
    return StraightStair(
        risers=number,
        treads=treads,
        rise=rise,
        going=going,
        total_going=treads * going,
        pitch=pitch,
        stride=stride,
        string=sqrt(total_rise * total_rise + treads * going * (treads * going)),
        first_rise=rise + (floor_finish or millimetres(0)) - tread,
        last_rise=rise + tread - (landing_finish or millimetres(0)),
        held=held,
        notes=() if headroom else (Finding(code="headroom-not-given", limit=LEAST_HEADROOM),),
        refused=undecided(held),
    )


def _use(use: str | None) -> str:
    if use is not None and use not in TABLE:
        raise InputRefused("word-not-offered", "use", found=use, known=", ".join(TABLE))
    return use or "private"


def _number(total_rise: Worked, risers: Worked | None, most: Worked) -> Worked:
    if risers is None:
        return round_up(total_rise / most, plain(1))
    if risers.number != int(risers.number) or risers.number < 2:
        raise InputRefused("risers-not-whole", "risers", found=f"{risers.number:g}")
    return risers


def _steps(kind: str, rise: Worked, going: Worked, by: str) -> Against:
    low, high, short, long = TABLE[kind]
    sides = (("rise", rise, low, high), ("going", going, short, long))
    return tuple(
        Held(
            code=code, actual=actual, least=at_least, most=at_most, against=kind, known=KNOWN[kind],
            decided_by=by,
        )
        for code, actual, at_least, at_most in sides
    )  # fmt: skip


def _pitch(kind: str, pitch: Worked, by: str) -> Against:
    if kind != "private":
        return ()
    return (Held(code="pitch", actual=pitch, most=STEEPEST, against=kind, known=KNOWN[kind], decided_by=by),)


def _headroom(headroom: Worked | None, by: str) -> Against:
    if headroom is None:
        return ()
    return (
        Held(
            code="headroom", actual=headroom, least=LEAST_HEADROOM, against="headroom", known="memory",
            decided_by=by,
        ),
    )  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class FlightSurvey:
    """A flight that stands, by its steps: `rise` and `going` are the mean, `rises_apart` and `goings_apart`
    the greatest less the least. `left_over` is what the rises come to beyond the height read in one, and
    `by_reading` as much as reading to a step explains.
    """

    risers: Worked
    rise: Worked
    going: Worked
    total_going: Worked
    pitch: Worked
    rises_apart: Worked
    goings_apart: Worked
    left_over: Worked
    by_reading: Worked
    held: Against
    refused: Findings


@calculator(
    example=Example(
        inputs={
            "rises": ("168 mm", "170 mm", "169 mm", "170 mm"),
            "goings": ("262 mm", "261 mm", "263 mm"),
            "total_rise": "676 mm",
            "read_to": "1 mm",
            "even_within": "5 mm",
        },
        gives={
            "risers": "4",
            "rise": "169 mm",
            "going": "262 mm",
            "pitch": "32.8°",
            "rises_apart": "2 mm",
            "left_over": "1 mm",
        },
    )
)
def flight_survey(
    *,
    rises: Lengths,
    goings: Lengths,
    total_rise: Length,
    read_to: Length,
    even_within: Margin,
    use: str | None = None,
    decided_by: str | None = None,
) -> FlightSurvey:
    """A flight that stands, read step by step: its mean rise, going and pitch, and how even its steps are.

    Lengths in; lengths and an angle out. `rises` are from floor to floor in order, `goings` from nosing to
    nosing, one fewer. `total_rise` is read in one, so that a step read wrongly shows: reading to the nearest
    `read_to` explains half of it a reading, and more is refused. Steps further apart than `even_within`, and
    with `use` the highest, lowest and shortest step outside Table 1.1 (see straight_stair), are refused until
    `decided_by` says who decided. Own derivation; how even steps must be is the firm's own
    number.
    """
    if len(goings) != len(rises) - 1:
        raise InputRefused(
            "goings-not-one-fewer", "goings", rises=str(len(rises)), found=str(len(goings))
        )  # fmt: skip
    risers, rise, going = count(rises), total_rise / count(rises), mean(goings)
    left_over, by_reading = total(rises) - total_rise, read_to * (risers + 1) / 2
    apart = greatest(rises) - least(rises), greatest(goings) - least(goings)
    by = decider(decided_by)
    held = (*_even(*apart, even_within, by), *(_each_step(_use(use), rises, goings, by) if use else ()))
    off = greatest((left_over, -left_over))
    return FlightSurvey(
        risers=risers,
        rise=rise,
        going=going,
        total_going=total(goings),
        pitch=atan(rise / going),
        rises_apart=apart[0],
        goings_apart=apart[1],
        left_over=left_over,
        by_reading=by_reading,
        held=held,
        refused=(
            *found((off > by_reading, Finding(code="rises-disagree", limit=by_reading, actual=off))),
            *undecided(held),
        ),
    )


def _even(rises: Worked, goings: Worked, within: Worked, by: str) -> Against:
    return tuple(
        Held(code=code, actual=apart, most=within, against="even", known="house", decided_by=by)
        for code, apart in (("rises-apart", rises), ("goings-apart", goings))
    )


def _each_step(kind: str, rises: Sequence[Worked], goings: Sequence[Worked], by: str) -> Against:
    """The odd step out, held against the row of the table for the stair's use."""
    low, high, short, _ = TABLE[kind]
    known = KNOWN[kind]
    return (
        Held(code="highest", actual=greatest(rises), most=high, against=kind, known=known, decided_by=by),
        Held(code="lowest", actual=least(rises), least=low, against=kind, known=known, decided_by=by),
        Held(code="shortest", actual=least(goings), least=short, against=kind, known=known, decided_by=by),
    )


# Approved Document K 2013, Diagram 3.1, read in a copy; the handrail on an official page that cites it.
LEAST_GUARD = millimetres(900)
LANDING: Mapping[str, Worked] = {"dwelling": millimetres(900), "other": millimetres(1100)}
LEAST_HANDRAIL, MOST_HANDRAIL = millimetres(900), millimetres(1000)


@dataclass(frozen=True, slots=True, kw_only=True)
class Guarding:
    """A balustrade's heights and widest gap, each held against the document; nothing said of its strength."""

    flight: Worked
    landing: Worked
    gap: Worked
    held: Against
    refused: Findings


@calculator(
    example=Example(
        inputs={
            "flight": "950 mm",
            "landing": "1100 mm",
            "gap": "96 mm",
            "sphere": "100 mm",
            "building": "other",
        },
        gives={"flight": "950 mm", "landing": "1100 mm", "gap": "96 mm"},
    )
)
def guarding(
    *,
    flight: Length,
    landing: Length,
    gap: Margin,
    sphere: Length,
    building: str,
    decided_by: str | None = None,
) -> Guarding:
    """Heights and gaps of a balustrade, held against Approved Document K 2013.

    Lengths in, lengths out. `flight` is plumb from the pitch line to the top of the handrail, which is the
    top of the guarding there; `landing` from the floor to the top of the rail; `gap` the widest, level.
    `building` is dwelling (a single family's) or other, where the document has more kinds than two: its
    designer says which. Heights and sphere by Diagram 3.1 and section 3, read in a copy; handrail of 900 to
    1000 mm on an official page. What the guarding must carry is no part of this: its designer says that.
    """
    if building not in LANDING:
        raise InputRefused("word-not-offered", "building", found=building, known=", ".join(LANDING))
    by = decider(decided_by)
    held = (
        Held(
            code="guard-flight", actual=flight, least=LEAST_GUARD, against=building, known="copy",
            decided_by=by,
        ),
        Held(
            code="guard-landing", actual=landing, least=LANDING[building], against=building, known="copy",
            decided_by=by,
        ),
        Held(
            code="handrail", actual=flight, least=LEAST_HANDRAIL, most=MOST_HANDRAIL, against="handrail",
            known="official", decided_by=by,
        ),
        Held(code="gap", actual=gap, under=sphere, against="sphere", known="copy", decided_by=by),
    )  # fmt: skip
    return Guarding(flight=flight, landing=landing, gap=gap, held=held, refused=undecided(held))
