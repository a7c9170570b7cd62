"""Where a run longer than the longest length is jointed: heading joints, chosen among the places offered."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations, pairwise

_NEAR = 1e-9
_SLACK = 2
# The most places tried for so many joints, so that a long wall stays quick.
_PLACES = {1: 2000, 2: 160, 3: 50}
_PLACES_BEYOND = 24


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """A run to be jointed; lengths in mm along the wall.

    `extra` is what the two ends add to their pieces, `lap` the overlap each joint takes, half from either
    side. A joint keeps `clear` of both ends and off each of `shut`; `sight` is the place to be far from.
    """

    start: float
    end: float
    extra: tuple[float, float]
    lap: float
    longest: float
    clear: float
    shut: tuple[tuple[float, float], ...] = ()
    sight: float | None = None

    def fewest(self) -> int:
        """The fewest joints that could do, places aside."""
        whole = self.end - self.start + sum(self.extra)
        return max(math.ceil((whole - self.lap) / (self.longest - self.lap) - _NEAR) - 1, 0)

    def allows(self, place: float) -> bool:
        """Whether a joint may stand at a place."""
        if not self.start + self.clear - _NEAR <= place <= self.end - self.clear + _NEAR:
            return False
        return all(not low < place < high for low, high in self.shut)

    def pieces(self, places: Sequence[float]) -> Iterator[float]:
        """The length of each piece with joints at these places."""
        ends = (self.start - self.extra[0] + self.lap / 2, *places, self.end + self.extra[1] - self.lap / 2)
        return (right - left + self.lap for left, right in pairwise(ends))


def heading_places(run: Run, places: Sequence[float]) -> tuple[float, ...] | None:
    """The places of the joints among those offered, or None where no choice keeps every rule.

    As few joints as will do; of those as far from the sight line as may be, then with the shortest piece as
    long as may be, then the nearest to the left.
    """
    allowed = [place for place in places if run.allows(place)]
    fewest = run.fewest()
    if fewest == 0:
        return ()
    for joints in range(fewest, fewest + _SLACK):
        best = _best(run, _thinned(allowed, joints), joints)
        if best is not None:
            return best
    return None


def _thinned(places: Sequence[float], joints: int) -> Sequence[float]:
    most = _PLACES.get(joints, _PLACES_BEYOND)
    return places[:: max(math.ceil(len(places) / most), 1)]


def _best(run: Run, places: Sequence[float], joints: int) -> tuple[float, ...] | None:
    ways = (way for way in combinations(places, joints) if max(run.pieces(way)) <= run.longest + _NEAR)
    return max(ways, key=lambda way: _worth(run, way), default=None)


def _worth(run: Run, way: tuple[float, ...]) -> tuple[float, float, float]:
    off = min(abs(place - run.sight) for place in way) if run.sight is not None else 0.0
    return off, round(min(run.pieces(way)), 6), -way[0]
