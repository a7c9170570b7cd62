"""The rod down the edge of a printed sheet: a rule in true millimetres."""

from __future__ import annotations

from dataclasses import dataclass
from html import escape

LENGTH_MM = 262
WIDTH_MM = 8.0
NOTE_MM = 4.0
# The figures stand left of the box's right edge by this much, and above their tick by the other.
_FIGURE_INSET, _FIGURE_LIFT = 0.6, 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class Tick:
    """Marks every so many millimetres, their length and line width in millimetres."""

    every: int
    length: float
    line: float


TICKS = (
    Tick(every=100, length=WIDTH_MM, line=0.5),
    Tick(every=10, length=4.2, line=0.22),
    Tick(every=5, length=2.8, line=0.15),
    Tick(every=1, length=1.7, line=0.10),
)


def _tick_at(y: int) -> Tick:
    return next(tick for tick in TICKS if y % tick.every == 0)


def _marks(tick: Tick) -> str:
    path = "".join(f"M0 {y}h{tick.length:g}" for y in range(LENGTH_MM + 1) if _tick_at(y) is tick)
    return f'<path d="{path}" stroke-width="{tick.line:g}"/>'


def _figure(y: int) -> str:
    great = y % 100 == 0
    size, weight = (2.29, 700) if great else (1.94, 500)
    rise = _FIGURE_LIFT if y else -size
    return (
        f'<text x="{WIDTH_MM - _FIGURE_INSET:g}" y="{y - rise:g}" font-size="{size}" font-weight="{weight}">'
        f"{'0 mm' if y == 0 else y}</text>"
    )


def paper_rod(note: str) -> str:
    """The rod as an SVG whose user unit is one millimetre; `note` runs beside its first 100, turned down.

    The box's outer corner stands at 0.5 mm across and 1 mm down, so that its frame is not cut off.
    """
    marks = "".join(_marks(tick) for tick in TICKS)
    figures = "".join(_figure(y) for y in range(0, LENGTH_MM + 1, 10))
    width, height = WIDTH_MM + NOTE_MM + 0.5, LENGTH_MM + 2
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width:g}mm" height="{height}mm" '
        f'viewBox="-0.5 -1 {width:g} {height}"><g fill="none" stroke="#111">'
        f'<rect width="{WIDTH_MM:g}" height="{LENGTH_MM}" stroke-width="0.25"/>{marks}</g>'
        f'<g font-family="Fira Sans" fill="#111"><g text-anchor="end">{figures}</g>'
        f'<text transform="translate({WIDTH_MM + 1.9:g} 0) rotate(90)" font-size="2.3">{escape(note)}</text>'
        "</g></svg>"
    )
