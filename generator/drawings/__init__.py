"""Drawings: worked sizes in, vector pictures true to scale out.

`draw(name, values, width)` makes a `Picture`; `DRAWINGS` lists every drawing with its parameters. Importing
this room loads no plotting library; drawing does.
"""

from generator.drawings import (
    balustrades,
    bars,
    corners,
    cornices,
    doorways,
    doses,
    floor_plans,
    heads,
    jambs,
    leaves,
    marks,
    mouldings,
    pairs,
    partitions,
    programmes,
    readings,
    rods,
    scribes,
    skirting_plans,
    stair_flights,
    window_boards,
)
from generator.drawings.figures import Angle, Reading, Size
from generator.drawings.registry import DRAWINGS, Drawing, Parameter, draw
from generator.drawings.svg import Picture

FAMILIES = (
    balustrades,
    bars,
    corners,
    cornices,
    doorways,
    doses,
    floor_plans,
    heads,
    jambs,
    leaves,
    marks,
    mouldings,
    pairs,
    partitions,
    programmes,
    readings,
    rods,
    scribes,
    skirting_plans,
    stair_flights,
    window_boards,
)

__all__ = ["DRAWINGS", "FAMILIES", "Angle", "Drawing", "Parameter", "Picture", "Reading", "Size", "draw"]
