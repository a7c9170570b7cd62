"""The floor of a room within its gap: each side's place as arithmetic on the walls, and the ring of corners.

Places are told from the floor's own edges: x from its leftmost, as one faces the wall that row 1 lies along,
and y from that wall. A wall on the far side loses both gaps, one on the near side none.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

from generator.quantities.families.rooms import Room
from generator.quantities.functions import total
from generator.quantities.rectilinear import Ring, levels, moved_in, pinched, spans
from generator.quantities.results import InputRefused
from generator.quantities.worked import Worked, millimetres
from generator.quantities.workings import print_worked

_SQUARE, _STANDS_OUT = 90, 270
_QUARTERS = 4
_EAST, _SOUTH, _WEST, _NORTH = range(_QUARTERS)
_FAR = frozenset({_SOUTH, _WEST})
_NEAR = 1e-6


@dataclass(frozen=True, kw_only=True)
class FloorOutline:
    """A floor's corners in mm, with the place of each side as it was worked; `room` are the walls' corners.

    `walls` are the walls along the ring's sides, counted from nought as they were given; `origin` is how far
    right of the leftmost wall the starting wall begins.
    """

    ring: Ring
    room: Ring
    walls: tuple[int, ...]
    xs: Mapping[float, Worked]
    ys: Mapping[float, Worked]
    origin: Worked

    @cached_property
    def along(self) -> Worked:
        """Its whole reach along the boards."""
        return self.xs[max(self.xs)]

    @cached_property
    def across(self) -> Worked:
        """Its whole reach across the boards."""
        return self.ys[max(self.ys)]

    def x(self, at: float) -> Worked:
        """The place of the upright side at `at`."""
        return _nearest(self.xs, at)

    def y(self, at: float) -> Worked:
        """The place of the level side at `at`."""
        return _nearest(self.ys, at)

    def area(self) -> Worked:
        """The floor's area, as rectangles between the heights at which walls lie."""
        heights = levels(self.ring)
        parts = [
            between(self.x(left), self.x(right)) * between(self.y(top), self.y(bottom))
            for top, bottom in pairwise(heights)
            for left, right in spans(self.ring, (top + bottom) / 2)
        ]
        return parts[0] if len(parts) == 1 else total(parts)


def _nearest(places: Mapping[float, Worked], at: float) -> Worked:
    return places[min(places, key=lambda place: abs(place - at))]


def between(start: Worked, end: Worked) -> Worked:
    """From one place to another, the first left out where it is nought."""
    return end - start if abs(start.number) > _NEAR else end


def floor_outline(room: Room, gap: Worked, least: Worked, start_wall: Worked | None = None) -> FloorOutline:
    """The floor of a room whose corners are square, row 1 along `start_wall`, wall 1 where none is named.

    InputRefused for corners that are not square, walls that do not close within the gap, a starting wall that
    has floor behind it, and a place where less than `least` of floor lies between two walls.
    """
    first = _first(room, start_wall)
    walls, headings = _turned(room, first)
    _refuse_open(room, gap)
    raw = tuple(_place(walls, headings, at) for at in range(len(walls)))
    whole = _ring([place.number for place in raw])
    _refuse_behind(whole, first)
    _refuse_narrow(whole, first, gap, least)
    moved = [
        place - 2 * gap if heading in _FAR else place for place, heading in zip(raw, headings, strict=True)
    ]
    ring = _ring([place.number for place in moved])
    return FloorOutline(
        ring=ring,
        room=moved_in(ring, -gap.number),
        walls=tuple((first + at) % len(walls) for at in range(len(walls))),
        xs=_by_number(moved[1::2]),
        ys=_by_number(moved[::2]),
        origin=raw[-1],
    )


def reach(room: Room, start_wall: Worked | None) -> tuple[Worked, Worked]:
    """How far the room itself reaches along and across the starting wall."""
    walls, headings = _turned(room, _first(room, start_wall))
    raw = [_place(walls, headings, at) for at in range(len(walls))]
    along, across = _by_number(raw[1::2]), _by_number(raw[::2])
    return along[max(along)], across[max(across)]


def _first(room: Room, start_wall: Worked | None) -> int:
    """The starting wall, counted from nought."""
    at = start_wall.number if start_wall else 1.0
    if at != int(at) or not 1 <= at <= len(room.walls):
        raise InputRefused("no-such-wall", "start_wall", found=f"{at:g}", most=str(len(room.walls)))
    return int(at) - 1


def _turned(room: Room, first: int) -> tuple[tuple[Worked, ...], tuple[int, ...]]:
    """Walls and the ways they run, from the starting wall, which runs east with the room south of it."""
    for number, corner in enumerate(room.corners, 1):
        if corner.number not in (_SQUARE, _STANDS_OUT):
            raise InputRefused(
                "corner-not-square", "room", number=str(number), found=print_worked(corner).text()
            )
    if room.angles_over.number:
        raise InputRefused("corners-do-not-add-up", "room", over=print_worked(room.angles_over).text())
    headings = [_EAST]
    corners = (*room.corners[first:], *room.corners[:first])
    for corner in corners[:-1]:
        turn = 1 if corner.number == _SQUARE else -1
        headings.append((headings[-1] + turn) % _QUARTERS)
    return (*room.lengths[first:], *room.lengths[:first]), tuple(headings)


def _refuse_open(room: Room, gap: Worked) -> None:
    """What the measurements leave open must at least fall within the gap, or a wall may be met."""
    if room.apart.number > gap.number + _NEAR:
        raise InputRefused(
            "floor-open", "room", apart=print_worked(room.apart).text(), gap=print_worked(gap).text()
        )


def _place(walls: Sequence[Worked], headings: Sequence[int], at: int) -> Worked:
    """How far a wall lies from the least of those parallel to it, by as few other walls as lead there."""
    ahead = _EAST if headings[at] in (_SOUTH, _NORTH) else _SOUTH
    parallel = [wall for wall, heading in enumerate(headings) if heading % 2 == headings[at] % 2]
    numbers = {wall: _sum(_steps(walls, headings, parallel[0], wall, ahead)).number for wall in parallel}
    least = min(numbers.values())
    routes = (
        _steps(walls, headings, start, at, ahead) for start in parallel if abs(numbers[start] - least) < _NEAR
    )
    return _sum(min(routes, key=len))


Step = tuple[bool, Worked]


def _steps(
    walls: Sequence[Worked], headings: Sequence[int], start: int, end: int, ahead: int
) -> tuple[Step, ...]:
    """The walls that lead from one wall to another, the shorter way round, and whether they lead on."""
    if start == end:
        return ()
    count = len(walls)
    onward = tuple(at % count for at in range(start + 1, start + (end - start) % count))
    back = tuple(at % count for at in range(end + 1, end + (start - end) % count))
    forth = tuple((headings[at] == ahead, walls[at]) for at in onward if headings[at] % 2 == ahead % 2)
    behind = tuple((headings[at] != ahead, walls[at]) for at in back if headings[at] % 2 == ahead % 2)
    return behind if len(behind) < len(forth) else forth


def _sum(steps: Sequence[Step]) -> Worked:
    added = [wall for on, wall in steps if on]
    taken = [wall for on, wall in steps if not on]
    whole = added[0] if added else millimetres(0)
    for wall in added[1:]:
        whole = whole + wall
    for wall in taken:
        whole = whole - wall
    return whole


def _ring(places: Sequence[float]) -> Ring:
    """The corner at which each side begins, level sides first."""
    pairs = ((places[at - 1], places[at]) for at in range(len(places)))
    return tuple(pair if at % 2 == 0 else pair[::-1] for at, pair in enumerate(pairs))


def _by_number(places: Sequence[Worked]) -> Mapping[float, Worked]:
    found: dict[float, Worked] = {}
    for place in places:
        found.setdefault(place.number, place)
    return found


def _refuse_behind(ring: Ring, first: int) -> None:
    if ring[0][1] > min(y for _, y in ring) + _NEAR:
        raise InputRefused("floor-behind-start", "start_wall", number=str(first + 1))


def _refuse_narrow(ring: Ring, first: int, gap: Worked, least: Worked) -> None:
    reaches = [max(part) - min(part) for part in zip(*ring, strict=True)]
    if min(reaches) <= 2 * gap.number:
        raise InputRefused("gap-takes-room", "gap")
    close = pinched(ring, 2 * gap.number + least.number)
    if close:
        one, two = sorted((wall + first) % len(ring) + 1 for wall in close)
        raise InputRefused(
            "floor-too-narrow", "room", one=str(one), two=str(two), least=print_worked(least).text()
        )
