"""Balusters at equal gaps, on the level and up a rake."""

from __future__ import annotations

from dataclasses import dataclass

from generator.quantities.calculator import Angle, Example, Length, calculator
from generator.quantities.functions import cos, round_up, tan
from generator.quantities.results import Finding, Findings, InputRefused
from generator.quantities.worked import Worked, plain

MOST_BALUSTERS = 500
_STEEPEST = 60


@dataclass(frozen=True, slots=True, kw_only=True)
class Balusters:
    """Balusters between two newel faces, gaps all equal.

    Level sizes: `run`, `gap`, `centres` from the first newel's face. Along the rake: `rake` of the handrail
    between newels, `fillet` between balusters in the rail, `pitch_along` from centre to centre. On the level
    the two agree. `rise` is how much the rail rises over the run.
    """

    run: Worked
    count: Worked
    gap: Worked
    widest: Worked
    centres: tuple[Worked, ...]
    rake: Worked
    rise: Worked
    fillet: Worked
    fillets: Worked
    pitch_along: Worked
    refused: Findings


@calculator(
    example=Example(
        inputs={"run": "2400 mm", "baluster": "41 mm", "most_gap": "99 mm", "pitch": "42 deg"},
        gives={"count": "17", "gap": "94.6 mm", "rake": "3229.5 mm", "fillet": "127.3 mm"},
    )
)
def balusters(
    *,
    run: Length,
    baluster: Length,
    most_gap: Length,
    pitch: Angle | None = None,
    sphere: Length | None = None,
) -> Balusters:
    """The fewest balusters between two newels that keep equal gaps no wider than a limit.

    Lengths and an angle in; lengths and a count out. `run` is level, from newel face to newel face; the gap
    that a sphere meets is level too, whatever the pitch, since balusters stand upright. A fillet in the raked
    rail is the gap divided by the cosine of the pitch. `sphere`, 100 mm in guidance, must not pass: a gap as
    wide as it is refused. Own derivation.
    """
    if pitch is not None and pitch.number > _STEEPEST:
        raise InputRefused("rake-too-steep", "pitch", found=f"{pitch.number:g}°")
    if run.number / (baluster.number + most_gap.number) > MOST_BALUSTERS:
        raise InputRefused("too-many-marks", "most_gap", most=str(MOST_BALUSTERS))
    number = _fewest(run, baluster, most_gap)
    gap = (run - number * baluster) / (number + 1) if number.magnitude else run
    along = cos(pitch) if pitch else plain(1)
    return Balusters(
        run=run,
        count=number,
        gap=gap,
        widest=most_gap,
        centres=_centres(int(number.magnitude), gap, baluster),
        rake=run / along if pitch else run,
        rise=run * tan(pitch) if pitch else 0 * run,
        fillet=gap / along if pitch else gap,
        fillets=number + 1,
        pitch_along=(gap + baluster) / along if pitch else gap + baluster,
        refused=_refused(gap, sphere),
    )


def _fewest(run: Worked, baluster: Worked, most_gap: Worked) -> Worked:
    if run <= most_gap:
        return plain(0)
    return round_up((run - most_gap) / (baluster + most_gap), plain(1))


def _centres(number: int, gap: Worked, baluster: Worked) -> tuple[Worked, ...]:
    first = gap + baluster / 2
    return tuple(first + plain(at) * (gap + baluster) if at else first for at in range(number))


def _refused(gap: Worked, sphere: Worked | None) -> Findings:
    if sphere is None or gap < sphere:
        return ()
    return (Finding(code="sphere-passes", limit=sphere, actual=gap),)
