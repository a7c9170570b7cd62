"""Line weights, dashes and colours of a drawing; every one of them in one table."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

INK = "#1c1c1c"
STANDING = "#6a6a6a"
NOTES = "#454545"
HATCH_NEW = "#4a4a4a"
HATCH_STANDING = "#4f4f4f"
BLUE = "#1d4a86"
TINT = "#f0eadd"
STEEL = "#cfcfcf"
FILLER = "#1c1c1d"
GAP = "#4d4d4d"
PAPER = "#ffffff"

# The page recolours by these names; the colour itself is the fallback.
SCREEN_NAMES: dict[str, str] = {
    INK: "--drawing-ink",
    STANDING: "--drawing-standing",
    NOTES: "--drawing-notes",
    HATCH_NEW: "--drawing-hatch",
    HATCH_STANDING: "--drawing-hatch-standing",
    BLUE: "--drawing-dimension",
    TINT: "--drawing-tint",
    STEEL: "--drawing-steel",
    FILLER: "--drawing-filler",
    GAP: "--drawing-gap",
    PAPER: "--drawing-paper",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Pen:
    """A line's width and dash pattern in paper mm, its colour, ends and corners."""

    width: float
    colour: str = INK
    dash: tuple[float, ...] = ()
    cap: Literal["butt", "round"] = "butt"
    join: Literal["round", "miter"] = "round"

    def narrowed(self, width: float) -> Pen:
        """Return the same pen with another width."""
        return replace(self, width=width)


CUT_NEW = Pen(width=0.5, join="miter")
CUT_STANDING = Pen(width=0.35, colour=STANDING, join="miter")
ELEVATION_NEW = Pen(width=0.35, join="miter")
VISIBLE = Pen(width=0.25)
VISIBLE_STANDING = Pen(width=0.25, colour=STANDING)
HIDDEN = Pen(width=0.25, dash=(2.4, 1.2))
HIDDEN_STANDING = Pen(width=0.25, colour=STANDING, dash=(2.4, 1.2))
ARRIS = Pen(width=0.13)
BREAK = Pen(width=0.13)
DIMENSION = Pen(width=0.15, colour=BLUE)
SQUARE_LINE = Pen(width=0.13, colour=BLUE, dash=(2.4, 0.8))
AXIS = Pen(width=0.13, colour=BLUE, dash=(4, 0.8, 0.6, 0.8))
TICK = Pen(width=0.3, colour=BLUE, cap="round")
LEADER = Pen(width=0.18)
PHANTOM = Pen(width=0.25, colour=STANDING, dash=(5, 1, 0.6, 1, 0.6, 1))
SWING = Pen(width=0.25, dash=(3, 0.9, 0.5, 0.9))
CHOSEN = Pen(width=0.7)
RING = Pen(width=0.25)
RULE = Pen(width=0.25)
RULE_FINE = Pen(width=0.13)
PENCIL = Pen(width=0.35)
THUMBNAIL = Pen(width=0.35)
