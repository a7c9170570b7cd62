"""Balusters at equal gaps, on the level and up a rake, with the cuts of balusters and fillets."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from generator.quantities.calculator import Angle, Example, Length, Margin, calculator
from generator.quantities.cut_pieces import SQUARE, Piece
from generator.quantities.functions import cos, greatest, round_down, round_up, tan
from generator.quantities.results import Finding, Findings, InputRefused, found
from generator.quantities.worked import Worked, literal, millimetres, named, plain
from generator.units import ANGLE, Value

MOST_BALUSTERS = 500
_STEEPEST = 60
_LEVEL = literal(Value(Decimal(0), ANGLE))


@dataclass(frozen=True, slots=True, kw_only=True)
class Balusters:
    """Balusters between two newel faces, gaps all equal but for what cutting fillets to a step leaves.

    Level sizes: `run`, `equal_gap` as divided, `gap` between balusters as cut, `end_gap` at either newel,
    `centres` from the first newel's face. Along the rake: `rake` of the handrail between newels, `fillet`
    between balusters in each rail, `end_fillet` at either newel, `pitch_along` from centre to centre. On the
    level the two agree, and `pitch` is nought. `rise` is how much the rail rises over the run, `widest` the
    greater of the gaps.
    """

    run: Worked
    count: Worked
    pitch: Worked
    equal_gap: Worked
    gap: Worked
    end_gap: Worked
    widest: Worked
    centres: tuple[Worked, ...]
    rake: Worked
    rise: Worked
    fillet: Worked
    end_fillet: Worked
    fillets: Worked
    pitch_along: Worked
    refused: Findings


@calculator(
    example=Example(
        inputs={
            "run": "2400 mm",
            "baluster": "41 mm",
            "most_gap": "99 mm",
            "pitch": "42 deg",
            "fillet_step": "0.5 mm",
        },
        gives={
            "count": "17",
            "gap": "94.8 mm",
            "end_gap": "93.5 mm",
            "rake": "3229.5 mm",
            "fillet": "127.5 mm",
            "end_fillet": "125.8 mm",
        },
    )
)
def balusters(
    *,
    run: Length,
    baluster: Length,
    most_gap: Length,
    pitch: Angle | None = None,
    sphere: Length | None = None,
    fillet_step: Length | None = None,
) -> Balusters:
    """The fewest balusters between two newels that keep equal gaps no wider than a limit.

    Lengths and an angle in; lengths and a count out. `run` is level, from newel face to newel face; the gap
    that a sphere meets is level too, whatever the pitch, since balusters stand upright. A fillet in the raked
    rail is the gap divided by the cosine of the pitch. With `fillet_step` fillets are cut to the nearest
    whole step, none wider than the limit, and both gaps at the newels take what that leaves; there a gap
    wider than the limit, or none, is refused.
    `sphere`, 100 mm in guidance, must not pass: a gap as wide as it is refused. Own derivation.
    """
    if pitch is not None and pitch.number > _STEEPEST:
        raise InputRefused("rake-too-steep", "pitch", found=f"{pitch.number:g}°")
    if run.number / (baluster.number + most_gap.number) > MOST_BALUSTERS:
        raise InputRefused("too-many-marks", "most_gap", most=str(MOST_BALUSTERS))
    number = named(_fewest(run, baluster, most_gap), "count", "Balusters")
    along = cos(pitch) if pitch else None
    whole = (run - number * baluster) / (number + 1) if number.magnitude else run
    equal = named(whole, "equal_gap", "All gaps alike")
    step = fillet_step if number.magnitude > 1 else None
    fillet = named(_cut_fillet(equal, most_gap, along, step), "fillet", "Fillet")
    gap = named(_level(fillet, along) if step else equal, "gap", "Gap")
    left = (run - number * baluster - (number - 1) * gap) / 2 if step else equal
    end_gap = named(left, "end_gap", "Gap at either newel")
    widest = greatest((gap, end_gap))
    return Balusters(
        run=run,
        count=number,
        pitch=pitch or _LEVEL,
        equal_gap=equal,
        gap=gap,
        end_gap=end_gap,
        widest=widest,
        centres=_centres(int(number.magnitude), end_gap, gap, baluster),
        rake=_along(run, along),
        rise=run * tan(pitch) if pitch else 0 * run,
        fillet=fillet,
        end_fillet=_along(end_gap, along),
        fillets=number + 1,
        pitch_along=_along(gap + baluster, along),
        refused=_refused(widest, end_gap, most_gap, sphere),
    )


def _fewest(run: Worked, baluster: Worked, most_gap: Worked) -> Worked:
    if run <= most_gap:
        return plain(0)
    return round_up((run - most_gap) / (baluster + most_gap), plain(1))


def _cut_fillet(equal: Worked, most: Worked, along: Worked | None, step: Worked | None) -> Worked:
    """The fillet between balusters: cut to the nearest step, or to the one below where that is too wide."""
    fillet = _along(equal, along)
    if step is None:
        return fillet
    near = round_down(fillet + step / 2, step)
    return near if _level(near, along) <= most else round_down(fillet, step)


def _along(size: Worked, along: Worked | None) -> Worked:
    """A level size measured along the rake; `along` is the cosine of the pitch, None on the level."""
    return size / along if along else size


def _level(size: Worked, along: Worked | None) -> Worked:
    return size * along if along else size


def _centres(number: int, end_gap: Worked, gap: Worked, baluster: Worked) -> tuple[Worked, ...]:
    first = end_gap + baluster / 2
    return tuple(first + plain(at) * (gap + baluster) if at else first for at in range(number))


def _refused(widest: Worked, end_gap: Worked, most: Worked, sphere: Worked | None) -> Findings:
    return (
        *found(
            (end_gap > most, Finding(code="end-gap-wide", limit=most, actual=end_gap)),
            (end_gap.magnitude < 0, Finding(code="end-gap-none", actual=-end_gap)),
        ),
        *found(
            (
                sphere is not None and widest >= sphere,
                Finding(code="sphere-passes", limit=sphere, actual=widest),
            )
        ),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class BalusterCut:
    """A baluster between two rails, and the fillets between balusters, as they are cut.

    `length` is plumb, along either long edge; `tip_to_tip` from the highest corner to the lowest, and `lean`
    how much further the one edge reaches than the other at each end. `handrail_plumb` and `base_plumb` are
    the rails' depths measured plumb. `fillet_lean` is the same as `lean` for a fillet. Ends that lean the
    same way have saw angles of opposite sign.
    """

    length: Worked
    tip_to_tip: Worked
    lean: Worked
    end: Worked
    fillet_lean: Worked
    handrail_plumb: Worked
    base_plumb: Worked
    pieces: tuple[Piece, ...]
    fillet_pieces: tuple[Piece, ...]
    handrail_pieces: tuple[Piece, ...]
    base_pieces: tuple[Piece, ...]
    refused: Findings


@calculator(
    example=Example(
        inputs={
            "balusters": "balusters",
            "height": "950 mm",
            "base_up": "45 mm",
            "handrail_depth": "59 mm",
            "base_depth": "32 mm",
            "groove": "8 mm",
            "baluster": "41 mm",
            "fillet_thickness": "8 mm",
        },
        gives={
            "length": "804.1 mm",
            "tip_to_tip": "841 mm",
            "lean": "36.9 mm",
            "fillet_lean": "7.2 mm",
            "handrail_plumb": "79.4 mm",
        },
    )
)
def baluster_cut(
    *,
    balusters: Balusters,
    height: Length,
    base_up: Margin,
    handrail_depth: Length,
    base_depth: Length,
    groove: Margin,
    baluster: Length,
    fillet_thickness: Length,
    mark: str | None = None,
) -> BalusterCut:
    """Length of a baluster between handrail and base rail, plumb and from tip to tip, with its fillets.

    Lengths in; lengths, an angle and pieces out. `height` is plumb from the pitch line, or on a landing from
    the floor, to the top of the handrail; `base_up` from there to the seat of the base rail. The depths of
    the rails and of the `groove` in each are square to the rail, so that on a rake each counts its depth
    divided by the cosine of the pitch. A baluster is a parallelogram: both long edges have the plumb length
    and both ends lean the same way; so is each rail, from newel face to newel face. `mark` begins
    the pieces' marks: R on a rake and L on a landing where it is left out. Own derivation.
    """
    pitch = balusters.pitch
    sloping = pitch.magnitude != 0
    along = cos(pitch) if sloping else None
    handrail, base, sunk = (_along(size, along) for size in (handrail_depth, base_depth, groove))
    length = height - base_up - handrail - base + 2 * sunk
    lean, fillet_lean = (
        size * tan(pitch) if sloping else millimetres(0) for size in (baluster, fillet_thickness)
    )
    cut = _Cut(
        end=pitch if sloping else SQUARE,
        width=baluster,
        thickness=fillet_thickness,
        mark=mark or ("R" if sloping else "L"),
    )
    return BalusterCut(
        length=length,
        tip_to_tip=length + lean if sloping else length,
        lean=lean,
        end=pitch,
        fillet_lean=fillet_lean,
        handrail_plumb=handrail,
        base_plumb=base,
        pieces=tuple(cut.baluster(at + 1, length) for at in range(int(balusters.count.magnitude))),
        fillet_pieces=tuple(cut.fillets(balusters)),
        handrail_pieces=(cut.rail("H", "handrail", balusters.rake, handrail_depth),),
        base_pieces=(cut.rail("B", "base rail", balusters.rake, base_depth),),
        refused=found((length.magnitude <= 0, Finding(code="rail-too-low", actual=length))),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Cut:
    """What balusters and fillets share: the angle of their ends, the sections, how marks begin."""

    end: Worked
    width: Worked
    thickness: Worked
    mark: str

    def baluster(self, number: int, length: Worked) -> Piece:
        return self._piece(f"{self.mark}{number}", "baluster", length, self.width, self.width)

    def fillets(self, run: Balusters) -> Iterator[Piece]:
        """Every fillet of both rails: in each, one at either newel and the rest between balusters."""
        between = int(run.count.magnitude) - 1
        ends = [("end fillet", run.end_fillet)] * (4 if between >= 0 else 2)
        inner = [("fillet", run.fillet)] * (2 * max(between, 0))
        for number, (name, length) in enumerate((*inner, *ends), 1):
            yield self._piece(f"{self.mark}F{number}", name, length, self.thickness, self.width)

    def rail(self, letter: str, name: str, length: Worked, depth: Worked) -> Piece:
        """A rail from newel face to newel face, seen from the side; its ends are cut plumb."""
        return self._piece(f"{self.mark}{letter}", name, length, depth, None)

    def _piece(self, mark: str, name: str, length: Worked, width: Worked, thickness: Worked | None) -> Piece:
        return Piece(
            mark=mark,
            name=name,
            role="rake" if self.end.magnitude else "landing",
            hand="",
            long_point=length,
            short_point=length,
            left_end=self.end,
            right_end=-self.end if self.end.magnitude else self.end,
            over=millimetres(0),
            cut_length=length,
            width=width,
            thickness=thickness,
        )
