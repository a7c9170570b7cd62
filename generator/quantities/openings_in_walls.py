"""Doors and radiators along the walls of a room, read from lists and held against the walls they stand in."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from generator.quantities.results import InputRefused
from generator.quantities.worked import Worked
from generator.quantities.workings import print_worked


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """What takes up part of a wall: its number in the list, the wall counted from nought, start and end."""

    number: int
    wall: int
    start: Worked
    width: Worked

    @property
    def end(self) -> Worked:
        """Where it ends, from the wall's left end."""
        return self.start + self.width


@dataclass(frozen=True, slots=True, kw_only=True)
class Lists:
    """Three lists that stand side by side, with the name of each and what one of them is called."""

    kind: str
    walls: tuple[Worked, ...]
    starts: tuple[Worked, ...]
    widths: tuple[Worked, ...]


def stretches(lists: Lists, lengths: Sequence[Worked]) -> tuple[Stretch, ...]:
    """Each door or radiator on its wall; InputRefused for one that is not on it, or two that overlap."""
    _refuse_unlike(lists)
    sides = zip(lists.walls, lists.starts, lists.widths, strict=True)
    found = tuple(
        Stretch(number=number, wall=_wall(lists, wall, lengths), start=start, width=width)
        for number, (wall, start, width) in enumerate(sides, 1)
    )
    for each in found:
        _refuse_off(lists, each, lengths[each.wall])
    for wall in {each.wall for each in found}:
        _refuse_overlap(lists, [each for each in found if each.wall == wall])
    return found


def _refuse_unlike(lists: Lists) -> None:
    for name in ("starts", "widths"):
        items = getattr(lists, name)
        if len(items) != len(lists.walls):
            raise InputRefused(
                "lists-differ", f"{lists.kind}_{name}", found=str(len(items)), wanted=str(len(lists.walls))
            )


def _wall(lists: Lists, wall: Worked, lengths: Sequence[Worked]) -> int:
    at = wall.number
    if at != int(at) or not 1 <= at <= len(lengths):
        raise InputRefused("no-such-wall", f"{lists.kind}_walls", found=f"{at:g}", most=str(len(lengths)))
    return int(at) - 1


def _refuse_off(lists: Lists, each: Stretch, length: Worked) -> None:
    if each.end > length:
        raise InputRefused(
            "off-the-wall", f"{lists.kind}_starts", kind=lists.kind, number=str(each.number),
            end=print_worked(each.end).text(), wall=str(each.wall + 1), length=print_worked(length).text(),
        )  # fmt: skip


def _refuse_overlap(lists: Lists, on_wall: list[Stretch]) -> None:
    ordered = sorted(on_wall, key=lambda each: each.start.number)
    for one, two in pairwise(ordered):
        if one.end > two.start:
            raise InputRefused(
                "overlap-on-wall",
                f"{lists.kind}_starts",
                one=_between(one),
                two=_between(two),
                wall=str(one.wall + 1),
            )


def _between(each: Stretch) -> str:
    return f"{print_worked(each.start).number} to {print_worked(each.end).text()}"
