"""The straight line that fits stations best by least squares."""

from __future__ import annotations

import math
from dataclasses import dataclass

from generator.quantities.readings import Station
from generator.quantities.worked import Worked, applied
from generator.units import LENGTH, Value


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit:
    """A fitted line: its mean point, its slope, and the stations it was fitted to."""

    middle: float
    level: float
    slope: float
    stations: tuple[Station, ...]

    def value_at(self, at: Worked) -> Worked:
        """The line's value at a place."""
        value = self.level + self.slope * (at.number - self.middle)
        return applied("line_at", (at, self._last_place(), *self._values()), Value(value, LENGTH))

    def rms(self) -> Worked:
        """The root of the mean square distance of the stations from the line, over all of them."""
        distances = [item.value.number - self.value_at(item.at).number for item in self.stations]
        value = math.sqrt(math.fsum(each * each for each in distances) / len(distances))
        return applied("line_rms", self._values(), Value(value, LENGTH))

    def _last_place(self) -> Worked:
        return self.stations[-1].at

    def _values(self) -> tuple[Worked, ...]:
        return tuple(item.value for item in self.stations)


def fit_line(items: tuple[Station, ...]) -> Fit:
    """The least squares line through two or more stations at different places; level where they coincide."""
    places = [item.at.number for item in items]
    values = [item.value.number for item in items]
    middle, level = math.fsum(places) / len(places), math.fsum(values) / len(values)
    spread = math.fsum((place - middle) ** 2 for place in places)
    lean = math.fsum((p - middle) * (v - level) for p, v in zip(places, values, strict=True))
    return Fit(middle=middle, level=level, slope=lean / spread if spread else 0.0, stations=items)
