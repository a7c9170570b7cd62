"""How much room a line of text takes, read from the font file it will be printed in."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache, lru_cache
from importlib.resources import files
from pathlib import Path
from typing import Any, Literal

Weight = Literal["regular", "bold"]
FAMILY = "Fira Sans"
FALLBACK = "DejaVu Sans"
_FACES: dict[Weight, str] = {"regular": "FiraSans-Regular.ttf", "bold": "FiraSans-Bold.ttf"}
_FALLBACKS: dict[Weight, str] = {"regular": "DejaVuSans.ttf", "bold": "DejaVuSans-Bold.ttf"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Glyph:
    """One character's advance, height above and depth below the baseline, in ems."""

    advance: float
    rise: float
    drop: float


class MissingGlyph(ValueError):
    """A character that neither the drawing font nor its fallback can print."""


class Face:
    """One font file, read once, answering for its characters in ems."""

    __slots__ = ("_cmap", "_font", "_known", "_tabular")

    def __init__(self, path: Path) -> None:
        from fontTools.ttLib import TTFont

        self._font: Any = TTFont(str(path), lazy=True)
        self._cmap: dict[int, str] = self._font.getBestCmap()
        self._tabular = _tabular_figures(self._font)
        self._known: dict[str, Glyph] = {}

    def has(self, character: str) -> bool:
        """Whether the font can print the character."""
        return ord(character) in self._cmap

    def glyph(self, character: str) -> Glyph:
        """Return the character's extents; figures answer with their tabular width."""
        if character not in self._known:
            self._known[character] = self._measure(character)
        return self._known[character]

    def _measure(self, character: str) -> Glyph:
        name = self._cmap[ord(character)]
        em = self._font["head"].unitsPerEm
        outline = self._font["glyf"][name]
        advance = max(self._font["hmtx"][n][0] for n in (name, self._tabular.get(name, name)))
        return Glyph(
            advance=advance / em,
            rise=max(0, getattr(outline, "yMax", 0)) / em,
            drop=max(0, -getattr(outline, "yMin", 0)) / em,
        )


def _tabular_figures(font: Any) -> dict[str, str]:
    """Map each figure's glyph to its tabular form, as the font's `tnum` feature has it."""
    if "GSUB" not in font:
        return {}
    table = font["GSUB"].table
    chosen = {
        index
        for record in table.FeatureList.FeatureRecord
        if record.FeatureTag == "tnum"
        for index in record.Feature.LookupListIndex
    }
    swaps: dict[str, str] = {}
    for index in sorted(chosen):
        for subtable in table.LookupList.Lookup[index].SubTable:
            swaps.update(getattr(getattr(subtable, "ExtSubTable", subtable), "mapping", {}))
    return swaps


@cache
def face(weight: Weight) -> Face:
    """Return the drawing font in one weight."""
    return Face(Path(str(files("fontpkg_fira_sans").joinpath("files", _FACES[weight]))))


@cache
def _fallback(weight: Weight) -> Face:
    import matplotlib

    return Face(Path(matplotlib.get_data_path()) / "fonts" / "ttf" / _FALLBACKS[weight])


@lru_cache(maxsize=4096)
def _glyph(character: str, weight: Weight) -> Glyph:
    for face_of in (face, _fallback):
        if face_of(weight).has(character):
            return face_of(weight).glyph(character)
    raise MissingGlyph(f"no glyph for {character!r} (U+{ord(character):04X}) in {FAMILY} or {FALLBACK}")


@lru_cache(maxsize=4096)
def extent(text: str, em: float, weight: Weight = "regular") -> tuple[float, float, float]:
    """Return width, height above and depth below the baseline of one line, in mm for an em in mm."""
    glyphs = [_glyph(character, weight) for character in text]
    width = sum(g.advance for g in glyphs)
    rise = max((g.rise for g in glyphs), default=0.0)
    drop = max((g.drop for g in glyphs), default=0.0)
    return width * em, rise * em, drop * em


def cap(em: float, weight: Weight = "regular") -> float:
    """Return the height of a capital in mm for an em in mm."""
    return _glyph("H", weight).rise * em


def wrapped(text: str, em: float, width: float, weight: Weight = "regular") -> tuple[str, ...]:
    """Break text into lines no wider than `width` mm; a word wider than that is broken where it must be."""
    lines: list[str] = []
    line = ""
    for word in (part for whole in text.split() for part in _parts(whole, em, width, weight)):
        longer = f"{line} {word}" if line else word
        if line and extent(longer, em, weight)[0] > width:
            lines.append(line)
            line = word
        else:
            line = longer
    return (*lines, line) if line else tuple(lines)


def _parts(word: str, em: float, width: float, weight: Weight) -> list[str]:
    parts = [""]
    for character in word:
        if parts[-1] and extent(parts[-1] + character, em, weight)[0] > width:
            parts.append("")
        parts[-1] += character
    return parts
