"""A day's noise and hand-arm vibration: levels and minutes to points, daily values, and the time to a limit.

Action and limit values: Control of Noise at Work Regulations 2005 reg 4, Control of Vibration at Work
Regulations 2005 reg 4. Points: HSE L108 appendix 3 and the HSE hand-arm vibration ready reckoner.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from typing import Final

WORKING_DAY = 480.0
"""The eight hours, in minutes, that daily values are told for."""
_WEEK = 5
NOISE_VALUES: Final[Mapping[str, float]] = {"lower action": 80.0, "upper action": 85.0, "limit": 87.0}
"""Daily or weekly, in dB(A); hearing protection counts for the limit alone."""
VIBRATION_VALUES: Final[Mapping[str, float]] = {"action": 2.5, "limit": 5.0}
"""Daily, in m/s² A(8)."""


def noise_points(level: float, minutes: float) -> float:
    """Points of a level in dB(A) over minutes; 100 make the upper action value (HSE L108 app. 3)."""
    return 100 * minutes / WORKING_DAY * 10 ** ((level - NOISE_VALUES["upper action"]) / 10)


def daily_noise(points: float) -> float:
    """LEP,d in dB(A) of a day's points, which must be more than 0 (HSE L108 app. 3)."""
    return NOISE_VALUES["upper action"] + 10 * math.log10(points / 100)


def weekly_noise(days: Iterable[float]) -> float:
    """LEP,w in dB(A) of the days' LEP,d; divided by five however many days (SI 2005/1643 Sch. 1 Pt 2)."""
    return 10 * math.log10(sum(10 ** (day / 10) for day in days) / _WEEK)


def minutes_to_noise(level: float, value: float) -> float:
    """Minutes at a level in dB(A) that alone make up a daily value."""
    return WORKING_DAY * 10 ** ((value - level) / 10)


def vibration_points(vibration: float, minutes: float) -> float:
    """Points of a vibration in m/s² over minutes; 100 make the action value (HSE ready reckoner)."""
    return 2 * vibration**2 * minutes / 60


def daily_vibration(points: float) -> float:
    """A(8) in m/s² of a day's points (SI 2005/1093 Sch. 1)."""
    return math.sqrt(points / 16)


def minutes_to_vibration(vibration: float, value: float) -> float:
    """Minutes at a vibration in m/s² that alone make up a daily value."""
    return WORKING_DAY * (value / vibration) ** 2
