"""A finished sheet as one SVG, by the plotting library's vector renderer: true millimetres, text kept as
text.

The renderer is used directly, without figure or axes, which is some twenty times quicker. Its own root
element, style sheet and metadata are left behind; ids are made from the content, so several pictures can
stand in one page.
"""

from __future__ import annotations

import hashlib
import io
import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from html import escape
from itertools import groupby
from typing import Any

from generator.drawings.clipping import Points
from generator.drawings.hatches import hatch_path
from generator.drawings.lettering import FALLBACK, FAMILY
from generator.drawings.pens import SCREEN_NAMES, Pen
from generator.drawings.sheet import Sheet, Stroke, Text

_COLOUR = re.compile(r"#[0-9a-f]{6}(?=[;\"])")


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """One drawing, finished: a standalone SVG of plain colours in true millimetres, and what it says in
    words.

    `scale` is the main view's ("1:1") or None where there is none; `key` pairs each letter with its words.
    """

    name: str
    title: str
    svg: str
    width_mm: float
    height_mm: float
    alt: str
    scale: str | None
    key: tuple[tuple[str, str], ...]

    def inline(self) -> str:
        """Return the SVG for a web page, each colour a custom property (`--drawing-ink` ...) with its
        fallback.

        For the page only: WeasyPrint does not read custom properties inside an SVG image.
        """
        return _COLOUR.sub(_screen_colour, self.svg)


def _screen_colour(found: re.Match[str]) -> str:
    colour = found.group(0)
    return f"var({SCREEN_NAMES[colour]},{colour})"


def engrave(sheet: Sheet, title: str, alt: str) -> str:
    """Return the sheet as a standalone SVG of the sheet's size in mm, with its title and description."""
    body = _body(sheet)
    mark = hashlib.sha256(f"{title}\0{alt}\0{body}".encode()).hexdigest()[:10]
    size = f"{_short(sheet.width)} {_short(sheet.height)}"
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{_short(sheet.width)}mm"'
        f' height="{_short(sheet.height)}mm" viewBox="0 0 {size}" role="img"'
        f" aria-labelledby=\"d{mark}-t d{mark}-d\" font-family=\"'{FAMILY}', '{FALLBACK}', sans-serif\""
        f' stroke-linejoin="round"><title id="d{mark}-t">{escape(title)}</title>'
        f'<desc id="d{mark}-d">{escape(alt)}</desc>\n{body}</svg>\n'
    )


def _short(number: float) -> str:
    return f"{number:.3f}".rstrip("0").rstrip(".")


def _body(sheet: Sheet) -> str:
    from matplotlib.backends.backend_svg import RendererSVG

    page = io.StringIO()
    make: Any = RendererSVG
    renderer = make(sheet.width, sheet.height, page, metadata=_NO_METADATA)
    head = page.tell()
    press = _Press(renderer, sheet.height)
    press.fills(sheet.fills)
    _hatches(press, sheet)
    for layer in ("outline", "dimension"):
        press.strokes(stroke for stroke in sheet.strokes if stroke.layer == layer)
    for text in sheet.texts:
        press.text(text)
    renderer.writer.flush()
    return page.getvalue()[head:].lstrip()


_NO_PEN = Pen(width=0)
_NO_METADATA = {"Date": None, "Creator": None, "Format": None, "Type": None}


def _hatches(press: _Press, sheet: Sheet) -> None:
    holes = [text.box.grown(text.hatch_gap) for text in sheet.texts]
    by_pen: dict[Pen, list[Any]] = {}
    for place in sheet.hatches:
        path = hatch_path(place.hatch, place.polygon, holes)
        if path is not None:
            by_pen.setdefault(place.hatch.pen, []).append(path)
    for pen, paths in by_pen.items():
        press.hatch(paths, pen)


class _Press:
    """Sets fills, lines and text on the renderer; one path an area or a run of like lines."""

    __slots__ = ("_flip", "_renderer")

    def __init__(self, renderer: Any, height: float) -> None:
        from matplotlib.transforms import Affine2D

        self._renderer = renderer
        # The renderer counts y upward and turns it over as it writes; sheets already count it downward.
        self._flip = Affine2D.from_values(1, 0, 0, -1, 0, height)

    def path(self, path: Any, pen: Pen | None, fill: str | None = None) -> None:
        """Set one path with a pen, a fill, or both."""
        gc = self._renderer.new_gc()
        gc.set_linewidth(0 if pen is None else pen.width)
        if pen is not None:
            gc.set_foreground(pen.colour)
            gc.set_capstyle("round" if pen.cap == "round" else "butt")
            gc.set_joinstyle(pen.join)
            if pen.dash:
                gc.set_dashes(0, pen.dash)
        self._renderer.draw_path(gc, path, self._flip, _rgb(fill))

    def hatch(self, paths: Iterable[Any], pen: Pen) -> None:
        """Set patterns of one pen as one path.

        Their data is written here at two decimals: the renderer's own six take most of a drawing's time.
        """
        data = "".join(_dotted(path) if pen.cap == "round" else _data(path) for path in paths)
        style = f"fill: none; stroke: {pen.colour}; stroke-width: {_short(pen.width)}"
        cap = {"stroke-linecap": pen.cap} if pen.cap != "butt" else {}
        self._renderer.writer.element("path", attrib={"d": data, **cap, "style": f"{style};"})

    def fills(self, fills: Iterable[tuple[Points, str]]) -> None:
        """Set flat fills without outline, neighbours of one colour as one path."""
        for colour, run in groupby(fills, key=lambda fill: fill[1]):
            areas = [Stroke(points=points, pen=_NO_PEN, closed=True) for points, _ in run]
            self.path(_compound(areas), None, colour)

    def strokes(self, strokes: Iterable[Stroke]) -> None:
        """Set lines in the order laid, neighbours of one pen and fill as one path."""
        for (pen, filled), run in groupby(_by_pen(strokes), key=lambda stroke: (stroke.pen, stroke.filled)):
            self.path(_compound(list(run)), pen, filled)

    def text(self, text: Text) -> None:
        """Set one line of text, as text."""
        place = {"x": _short(text.x), "y": _short(text.y), "font-size": _short(text.em)}
        if text.anchor != "start":
            place["text-anchor"] = text.anchor
        if text.weight == "bold":
            place["font-weight"] = "700"
        if text.upright:
            place["transform"] = f"rotate(-90 {place['x']} {place['y']})"
        self._renderer.writer.element("text", text.text, attrib={**place, "style": f"fill: {text.colour};"})


def _by_pen(strokes: Iterable[Stroke]) -> Iterator[Stroke]:
    """Bring unfilled lines of one pen together; filled ones keep their turn, for they cover what lies
    below.
    """
    plain: dict[Pen, list[Stroke]] = {}
    filled: list[Stroke] = []
    for stroke in strokes:
        if stroke.filled:
            filled.append(stroke)
        else:
            plain.setdefault(stroke.pen, []).append(stroke)
    for run in plain.values():
        yield from run
    yield from filled


def _compound(strokes: list[Stroke]) -> Any:
    import numpy as np
    from matplotlib.path import Path

    vertices: list[tuple[float, float]] = []
    codes: list[int] = []
    for stroke in strokes:
        vertices.extend(stroke.points)
        codes.extend([int(Path.MOVETO), *[int(Path.LINETO)] * (len(stroke.points) - 1)])
        if stroke.closed:
            vertices.append(stroke.points[0])
            codes.append(int(Path.CLOSEPOLY))
    return Path(np.round(np.array(vertices), 3), np.array(codes, dtype=Path.code_type))


def _dotted(path: Any) -> str:
    """Write a path of hair-short pieces as dots."""
    starts = path.vertices[::2]
    return ("M%.2f %.2fh.01" * len(starts)) % tuple(starts.ravel().tolist())


def _data(path: Any) -> str:
    """Write a path of straight pieces or of quadratic curves."""
    numbers = tuple(path.vertices.ravel().tolist())
    codes = path.codes.tolist()
    if _CURVE not in codes:
        return "".join(_TOKENS[code] for code in codes) % numbers
    tokens, inside_curve = [], False
    for code in codes:
        tokens.append(" %.2f %.2f" if inside_curve else _TOKENS[code])
        inside_curve = code == _CURVE and not inside_curve
    return "".join(tokens) % numbers


_CURVE = 3
_TOKENS = {1: "M%.2f %.2f", 2: "L%.2f %.2f", _CURVE: "Q%.2f %.2f"}


def _rgb(colour: str | None) -> tuple[float, ...] | None:
    if colour is None:
        return None
    return tuple(int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5))
