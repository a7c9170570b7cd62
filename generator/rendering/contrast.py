"""How far two colours stand apart, by WCAG 2.2: relative luminance and contrast ratio."""

from __future__ import annotations

from math import floor

_WEIGHTS = (0.2126, 0.7152, 0.0722)


def luminance(colour: str) -> float:
    """The relative luminance of “#rrggbb”, 0 to 1 (WCAG 2.2, definition of relative luminance)."""
    parts = (int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5))
    return sum(weight * _linear(part) for weight, part in zip(_WEIGHTS, parts, strict=True))


def _linear(part: float) -> float:
    return part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4


def contrast(first: str, second: str) -> float:
    """The contrast ratio of two colours, 1 to 21 (WCAG 2.2, definition of contrast ratio)."""
    dark, light = sorted((luminance(first), luminance(second)))
    return (light + 0.05) / (dark + 0.05)


def ratio_words(ratio: float) -> str:
    """The ratio rounded down, so that one just too low never reads as enough."""
    return f"{floor(ratio * 100) / 100:.2f}"
