"""The publication's one font family: whole files for paper, small web subsets for the screen."""

from __future__ import annotations

import io
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from pathlib import Path

FAMILY = "Fira Sans"
# Latin with its extensions, general punctuation, superscripts, the pound and euro, and the trade's signs.
_RANGES = ((0x20, 0x7E), (0xA0, 0x17F), (0x2010, 0x2026), (0x2030, 0x203A), (0x2070, 0x2089))
_SINGLES = "€→←≤≥≠≈−√⁄½¼¾×÷°"
_FEATURES = ("kern", "liga", "tnum", "mark", "mkmk", "ccmp", "locl", "frac")


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
        """The name of its web subset."""
        return f"{self.name}.woff2"


FACES = (
    Face(name="FiraSans-Regular", weight=400),
    Face(name="FiraSans-Italic", weight=400, style="italic"),
    Face(name="FiraSans-Medium", weight=500),
    Face(name="FiraSans-SemiBold", weight=600),
    Face(name="FiraSans-Bold", weight=700),
    Face(name="FiraSans-ExtraBold", weight=800),
)
WEB_FACES = tuple(face for face in FACES if face.weight in {400, 600, 700})


def _rule(face: Face, source: str) -> str:
    return (
        f'@font-face{{font-family:"{FAMILY}";font-weight:{face.weight};font-style:{face.style};'
        f"font-display:swap;src:{source}}}"
    )


def paper_font_css() -> str:
    """`@font-face` rules that name the installed files, for print."""
    return "\n".join(_rule(face, f'url("{face.path.as_uri()}")') for face in FACES)


def web_font_css() -> str:
    """`@font-face` rules that name the subsets beside the style sheet."""
    return "\n".join(_rule(face, f'url("{face.web_name}") format("woff2")') for face in WEB_FACES)


def web_characters() -> frozenset[int]:
    """The code points that the web subsets hold, where the family has them."""
    ranges = (point for first, last in _RANGES for point in range(first, last + 1))
    return frozenset(ranges) | frozenset(map(ord, _SINGLES))


@cache
def web_font(face: Face) -> bytes:
    """The web subset of one face as WOFF2 bytes; the same bytes for the same font file."""
    from fontTools.subset import Options, Subsetter
    from fontTools.ttLib import TTFont

    font = TTFont(str(face.path), recalcTimestamp=False)
    options = Options(layout_features=list(_FEATURES), hinting=False, name_IDs=[1, 2, 13, 14])
    subsetter = Subsetter(options=options)
    subsetter.populate(unicodes=web_characters())
    subsetter.subset(font)
    font.flavor = "woff2"
    out = io.BytesIO()
    font.save(out)
    return out.getvalue()
