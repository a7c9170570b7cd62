"""What the drawing of a day's dose is given: the tools that add to it, and the values it is held against."""

from __future__ import annotations

from dataclasses import dataclass

from generator.drawings.figures import Part


@dataclass(frozen=True, slots=True, kw_only=True)
class DosePart(Part):
    """What one tool adds, in points, and the words for it."""

    points: float
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DoseMark(Part):
    """A value the dose is held against, in points, and the words for it."""

    points: float
    text: str
