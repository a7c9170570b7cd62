"""The publication's one font family: whole files for paper, small web subsets for the screen."""

from __future__ import annotations

import base64
import io
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib.resources import files
from pathlib import Path

FAMILY = "Fira Sans"
# What nearly every page needs: English and the trade's signs. The rest is fetched only by a page that has it.
_USUAL = (0x20, 0x7E), (0x2010, 0x2026), *((ord(sign),) * 2 for sign in "\xa0£°±²³·½¼¾×÷é€→←≤≥≠≈−√⁄")
# Latin with its extensions, more quotation marks, superscripts.
_FURTHER = (0xA0, 0x17F), (0x2030, 0x203A), (0x2070, 0x2089)
_FEATURES = ("kern", "liga", "tnum", "ccmp", "locl")


@dataclass(frozen=True, slots=True, kw_only=True)
class Face:
    """One cut of the family: its file, CSS weight and style."""

    name: str
    weight: int
    style: str = "normal"

    @property
    def path(self) -> Path:
        """The font file as installed."""
        return Path(str(files("fontpkg_fira_sans").joinpath("files", f"{self.name}.ttf")))

    @property
    def web_name(self) -> str:
        """The name of its usual web subset."""
        return f"{self.name}.woff2"

    @property
    def further_name(self) -> str:
        """The name of the web subset with the letters that few pages need."""
        return f"{self.name}-further.woff2"


FACES = (
    Face(name="FiraSans-Regular", weight=400),
    Face(name="FiraSans-Italic", weight=400, style="italic"),
    Face(name="FiraSans-Medium", weight=500),
    Face(name="FiraSans-SemiBold", weight=600),
    Face(name="FiraSans-Bold", weight=700),
    Face(name="FiraSans-ExtraBold", weight=800),
)
WEB_FACES = tuple(face for face in FACES if face.weight in {400, 600, 700})


def _rule(face: Face, source: str, characters: str = "") -> str:
    limit = f";unicode-range:{characters}" if characters else ""
    return (
        f'@font-face{{font-family:"{FAMILY}";font-weight:{face.weight};font-style:{face.style};'
        f"font-display:swap;src:{source}{limit}}}"
    )


def paper_font_css() -> str:
    """`@font-face` rules that name the installed files, for print."""
    return "\n".join(_rule(face, f'url("{face.path.as_uri()}")') for face in FACES)


def web_font_css() -> str:
    """`@font-face` rules that name the subsets beside the style sheet, and which characters each is for."""
    subsets = (
        (face, name, characters)
        for face in WEB_FACES
        for name, characters in (
            (face.web_name, usual_characters()),
            (face.further_name, further_characters()),
        )
    )
    return "\n".join(
        _rule(face, f'url("{name}") format("woff2")', _spelled(characters))
        for face, name, characters in subsets
    )


def usual_characters() -> frozenset[int]:
    """The code points of the usual web subsets, where the family has them."""
    return _points(_USUAL)


def further_characters() -> frozenset[int]:
    """The code points of the further web subsets, none of them in the usual ones."""
    return _points(_FURTHER) - usual_characters()


def _points(ranges: Iterable[tuple[int, int]]) -> frozenset[int]:
    return frozenset(point for first, last in ranges for point in range(first, last + 1))


def _spelled(characters: frozenset[int]) -> str:
    """Code points as a style sheet spells them, neighbours as a range."""
    runs: list[list[int]] = []
    for point in sorted(characters):
        if runs and runs[-1][1] == point - 1:
            runs[-1][1] = point
        else:
            runs.append([point, point])
    return ",".join(f"U+{first:X}" + (f"-{last:X}" if last > first else "") for first, last in runs)


@cache
def web_fonts() -> Mapping[str, bytes]:
    """Every web subset as WOFF2 bytes by its name; the same bytes for the same font files."""
    usual = {face.web_name: _subset(face, usual_characters()) for face in WEB_FACES}
    return usual | {face.further_name: _subset(face, further_characters()) for face in WEB_FACES}


@lru_cache(maxsize=64)
def held_font_css(characters: frozenset[int]) -> str:
    """`@font-face` rules that hold regular and bold within them, with no more than these code points."""
    faces = (face for face in WEB_FACES if face.weight in {400, 700} and face.style == "normal")
    return "".join(_rule(face, f"url({_held(_subset(face, characters))})") for face in faces)


def _held(font: bytes) -> str:
    return "data:font/woff2;base64," + base64.b64encode(font).decode("ascii")


def _subset(face: Face, characters: frozenset[int]) -> bytes:
    """The face with no more than these code points, as WOFF2 bytes."""
    web = usual_characters() | further_characters()
    whole = _web_face(face) if characters <= web else face.path.read_bytes()
    return _cut(whole, characters, "woff2")


# Reading the layout tables of all the face's scripts is most of the work, so that it is done once.
@lru_cache(maxsize=8)
def _web_face(face: Face) -> bytes:
    return _cut(face.path.read_bytes(), usual_characters() | further_characters(), None)


def _cut(font_file: bytes, characters: frozenset[int], flavour: str | None) -> bytes:
    from fontTools.subset import Options, Subsetter
    from fontTools.ttLib import TTFont

    font = TTFont(io.BytesIO(font_file), recalcTimestamp=False)
    options = Options(layout_features=list(_FEATURES), hinting=False, name_IDs=[1, 2, 13, 14])
    subsetter = Subsetter(options=options)
    subsetter.populate(unicodes=characters)
    subsetter.subset(font)
    font.flavor = flavour
    out = io.BytesIO()
    font.save(out)
    return out.getvalue()
