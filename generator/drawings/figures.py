"""What a drawing is given: sizes, angles and readings with the figure the trade prints."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Final, Literal

from generator.quantities.profiles import PROFILES

Member = Literal["left", "head", "right"]
MEMBERS: tuple[Member, ...] = ("left", "head", "right")


@dataclass(frozen=True, slots=True)
class OneOf:
    """What a word given to a drawing may be; it stands in the parameter's annotation."""

    words: tuple[str, ...]


SIDES: Final = ("left", "right")
Side = Annotated[str, OneOf(SIDES)]
Core = Annotated[str, OneOf(("block", "stud"))]
Substance = Annotated[str, OneOf(("mdf", "timber"))]
Shape = Annotated[str, OneOf(tuple(PROFILES))]


@dataclass(frozen=True, slots=True, kw_only=True)
class Size:
    """A length in mm to draw with, and the text to print for it."""

    mm: float
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Angle:
    """An angle in degrees to draw with, and the text to print for it (no degree sign)."""

    degrees: float
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """Something drawn from a record; a family derives its own, whose fields take those of one name."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One set-back reading on a member of the frame.

    `at` is mm from the member's start on the way round: the left leg from the foot up, the head from the
    left, the right leg from the top down. `value` is the plaster proud of the frame edge; `left_over` is
    the packer less the reading: positive leaves a gap at the wall side, negative leaves plaster proud of
    the packer; `label` names the station ("foot", "middle").
    """

    member: Member
    at: float
    value: Size
    left_over: Size
    label: str
