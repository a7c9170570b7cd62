"""A finished sheet as one SVG: true millimetres, text kept as text, every path as short as it can be written.

The elements are written by the plotting library's vector renderer, without figure or axes, its own root
element, style sheet and metadata left behind; the paths' data is written here, since the library's takes
longer and more than twice the room. Ids are made from the content, so several pictures can stand in one page.
"""

from __future__ import annotations

import hashlib
import io
import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from html import escape
from itertools import groupby
from typing import Any

from generator.drawings.clipping import Points
from generator.drawings.hatches import hatch_path
from generator.drawings.lettering import FALLBACK, FAMILY
from generator.drawings.path_data import PARTS, dot_data, line_data, piece_data
from generator.drawings.pens import SCREEN_NAMES, Pen
from generator.drawings.sheet import Sheet, Stroke, Text
from generator.wording import ENGLISH

_COLOUR = re.compile(r"#[0-9a-f]{6}(?=[;\"])")


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """One drawing, finished: a standalone SVG of plain colours in true millimetres, and what it says in
    words.

    `scale` is the main view's ("1:1") or None where there is none; `key` pairs each letter with its words;
    `tag` is the language it speaks.
    """

    name: str
    title: str
    svg: str
    width_mm: float
    height_mm: float
    alt: str
    scale: str | None
    key: tuple[tuple[str, str], ...]
    tag: str = ENGLISH.tag

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
        f'<desc id="d{mark}-d">{escape(alt)}</desc>{body}</svg>\n'
    )


def _short(number: float) -> str:
    return f"{number:.2f}".rstrip("0").rstrip(".")


def _body(sheet: Sheet) -> str:
    from matplotlib.backends.backend_svg import RendererSVG

    page = io.StringIO()
    make: Any = RendererSVG
    renderer = make(sheet.width, sheet.height, page, metadata=_NO_METADATA)
    head = page.tell()
    press = _Press(renderer.writer)
    press.fills(sheet.fills)
    _hatches(press, sheet)
    for layer in ("outline", "dimension"):
        press.strokes(stroke for stroke in sheet.strokes if stroke.layer == layer)
    press.texts(sheet.texts)
    press.writer.flush()
    return _BETWEEN.sub("><", page.getvalue()[head:].strip())


_NO_METADATA = {"Date": None, "Creator": None, "Format": None, "Type": None}
_BETWEEN = re.compile(r">\s+<")


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
    """Sets fills, lines and text by the library's writer; one path an area or a run of like lines."""

    __slots__ = ("writer",)

    def __init__(self, writer: Any) -> None:
        self.writer = writer

    def hatch(self, paths: Sequence[Any], pen: Pen) -> None:
        """Set patterns of one pen as one path, drawn to a hundredth so that its numbers are whole."""
        whole, write = _together(paths), dot_data if pen.cap == "round" else piece_data
        scale = {"transform": f"scale({_number(1 / PARTS)})"}
        cap = {"stroke-linecap": pen.cap} if pen.cap != "butt" else {}
        style = f"fill:none;stroke:{pen.colour};stroke-width:{_number(pen.width * PARTS)}"
        self.writer.element("path", attrib={"d": write(whole), **scale, **cap, "style": style})

    def fills(self, fills: Iterable[tuple[Points, str]]) -> None:
        """Set flat fills without outline, neighbours of one colour as one path."""
        for colour, run in groupby(fills, key=lambda fill: fill[1]):
            data = line_data((points, True) for points, _ in run)
            self.writer.element("path", attrib={"d": data, "style": f"fill:{colour}"})

    def strokes(self, strokes: Iterable[Stroke]) -> None:
        """Set lines in the order laid, neighbours of one pen and fill as one path."""
        for (pen, filled), run in groupby(_by_pen(strokes), key=lambda stroke: (stroke.pen, stroke.filled)):
            data = line_data((stroke.points, stroke.closed) for stroke in run)
            self.writer.element("path", attrib={"d": data, "style": _pen_style(pen, filled)})

    def texts(self, texts: Iterable[Text]) -> None:
        """Set lines of text, as text, in the order laid; neighbours of a kind share what sets them."""
        for setting, run in groupby(texts, key=_setting):
            self.writer.start("g", attrib=dict(setting))
            for text in run:
                self.writer.element("text", text.text, attrib=_place(text))
            self.writer.end("g")


def _together(paths: Sequence[Any]) -> Any:
    from matplotlib.path import Path

    return paths[0] if len(paths) == 1 else Path.make_compound_path(*paths)


def _pen_style(pen: Pen, filled: str | None) -> str:
    parts = (
        f"fill:{filled or 'none'};stroke:{pen.colour};stroke-width:{_number(pen.width)}",
        f"stroke-dasharray:{' '.join(map(_number, pen.dash))}" if pen.dash else "",
        f"stroke-linecap:{pen.cap}" if pen.cap != "butt" else "",
        f"stroke-linejoin:{pen.join}" if pen.join != "round" else "",
    )
    return ";".join(filter(None, parts))


def _setting(text: Text) -> tuple[tuple[str, str], ...]:
    """What a line of text is set in: its size, anchor, weight and colour."""
    size = ("font-size", _number(text.em))
    anchor = (("text-anchor", text.anchor),) if text.anchor != "start" else ()
    weight = (("font-weight", "700"),) if text.weight == "bold" else ()
    return (size, *anchor, *weight, ("style", f"fill:{text.colour}"))


def _place(text: Text) -> dict[str, str]:
    x, y = _short(text.x), _short(text.y)
    return {"x": x, "y": y, **({"transform": f"rotate(-90 {x} {y})"} if text.upright else {})}


def _number(number: float) -> str:
    """A number in style, without a nought before its point."""
    return re.sub(r"^0\.", ".", _short(number))


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
