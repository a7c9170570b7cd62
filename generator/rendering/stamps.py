"""A word laid across every page of a finished PDF, as outlines, so that the copy needs no further font."""

from __future__ import annotations

import io
import math
from functools import lru_cache
from typing import Any

from generator.rendering.fonts import FACES

_HEAVIEST = FACES[-1]
_TURN = math.radians(54)
_SHARE = 0.9
"""How much of a page's diagonal the word takes."""
_MOST_HIGH = 150.0
_GREY = 0.86
MISSING = ".notdef"
"""What stands for a letter that the face does not have."""


# A preview shows the same copies again after every save.
@lru_cache(maxsize=16)
def stamped(pdf: bytes, word: str) -> bytes:
    """A copy of a PDF with `word` across each page in grey; the text beneath stays as it is.

    The word is marked as an artefact, so that a reader's voice does not read it on each page. Raises
    pikepdf.PdfError for bytes that are no PDF.
    """
    import pikepdf

    drawn, width = _outlines(word)
    with pikepdf.open(filename_or_stream=io.BytesIO(pdf)) as opened:
        for page in opened.pages:
            left, bottom, right, top = (float(side) for side in page.mediabox)
            scale = _scale(width, right - left, top - bottom)
            ahead = _placed(scale, width, (left + right) / 2, (bottom + top) / 2)
            content = b"/Artifact BMC q %.2f g %s %s f Q EMC" % (_GREY, ahead, drawn)
            page.contents_add(opened.make_stream(content), prepend=True)
        written = io.BytesIO()
        opened.save(written, deterministic_id=True)
    return written.getvalue()


def _scale(width: float, page_width: float, page_height: float) -> float:
    """Points a font unit."""
    return min(_SHARE * math.hypot(page_width, page_height) / width, _MOST_HIGH / 1000)


def _placed(scale: float, width: float, x: float, y: float) -> bytes:
    """The matrix that turns the word about its middle and sets it on the middle of the page."""
    cos, sin = scale * math.cos(_TURN), scale * math.sin(_TURN)
    middle_x, middle_y = width / 2, 350.0
    at_x, at_y = x - cos * middle_x + sin * middle_y, y - sin * middle_x - cos * middle_y
    return b"%.5f %.5f %.5f %.5f %.3f %.3f cm" % (cos, sin, -sin, cos, at_x, at_y)


def _outlines(word: str) -> tuple[bytes, float]:
    """The word as PDF path operators in thousandths of an em, and how wide it is."""
    from fontTools.ttLib import TTFont

    font = TTFont(_HEAVIEST.path, lazy=True)
    glyphs, names = font.getGlyphSet(), font.getBestCmap()
    thousandths = 1000 / font["head"].unitsPerEm
    pen, at = _path_pen(glyphs), 0.0
    for letter in word:
        glyph = glyphs[names.get(ord(letter), MISSING)]
        pen.move_to(at, thousandths)
        glyph.draw(pen)
        at += glyph.width * thousandths
    return b" ".join(pen.operators), at


def _path_pen(glyphs: Any) -> Any:
    from fontTools.pens.basePen import BasePen

    class PathPen(BasePen):  # type: ignore[misc]
        """Writes outlines as path operators, shifted and scaled."""

        def __init__(self) -> None:
            super().__init__(glyphs)
            self.operators: list[bytes] = []
            self.shift, self.scale = 0.0, 1.0

        def move_to(self, shift: float, scale: float) -> None:
            self.shift, self.scale = shift, scale

        def _points(self, *points: tuple[float, float]) -> bytes:
            placed = (number for x, y in points for number in (self.shift + x * self.scale, y * self.scale))
            return b" ".join(b"%.2f" % number for number in placed)

        def _moveTo(self, point: tuple[float, float]) -> None:  # noqa: N802
            self.operators.append(self._points(point) + b" m")

        def _lineTo(self, point: tuple[float, float]) -> None:  # noqa: N802
            self.operators.append(self._points(point) + b" l")

        def _curveToOne(self, *points: tuple[float, float]) -> None:  # noqa: N802
            self.operators.append(self._points(*points) + b" c")

        def _closePath(self) -> None:  # noqa: N802
            self.operators.append(b"h")

    return PathPen()
