"""Marking out the quirk: marks along leg and head as a running dimension from one end, and the square's
setting.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from generator.drawings.clipping import Box, Point, rectangle
from generator.drawings.dimensions import dimension, origin_ring, spread
from generator.drawings.figures import Size
from generator.drawings.hatches import LONG_GRAIN
from generator.drawings.keys import Entry, margin, notes, plain_list, title
from generator.drawings.lettering import cap, extent
from generator.drawings.pens import BLUE, DIMENSION, INK, PENCIL, STEEL, TINT, VISIBLE, VISIBLE_STANDING
from generator.drawings.registry import Drawn, drawing
from generator.drawings.sheet import Outline, Sheet, Stroke, Zone, arrow
from generator.drawings.views import View, break_line
from generator.drawings.words import say

_SCALES = ((0.1, "1:10"), (0.05, "1:20"), (1 / 30, "1:30"), (0.02, "1:50"), (0.01, "1:100"))
_DETAILS = ((2.0, "2:1"), (1.0, "1:1"), (0.5, "1:2"))
_BOARD = 9.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Rod:
    """One member laid level to be marked: its name, length, marks and the end they are measured from."""

    name: str
    words: str
    start: str
    length: Size
    marks: tuple[Size, ...]


def _scale(rods: Sequence[_Rod], room: float) -> tuple[float, str]:
    longest = max(rod.length.mm for rod in rods)
    return next((s for s in _SCALES if longest * s[0] <= room), _SCALES[-1])


def _draw_rod(sheet: Sheet, rod: _Rod, scale: float, top: float) -> float:
    """Draw one member with its marks and their running dimension; return the y below it."""
    left = margin(sheet) + (2.0 if not sheet.thumbnail else 0.0)
    high = _BOARD if not sheet.thumbnail else 4.0
    board = rectangle(left, top, left + rod.length.mm * scale, top + high)
    sheet.line(board, VISIBLE_STANDING.narrowed(0.35), closed=True)
    sheet.outlines[rod.name] = Outline(
        name=rod.name, real=rectangle(0, 0, rod.length.mm, high / scale), paper=board, scale=scale
    )
    quirk = top + high * 0.68
    ends = [left + mark.mm * scale for mark in rod.marks]
    for i, x in enumerate(ends):
        sheet.line(((x, quirk - 1.6), (x, quirk + 1.6)), PENCIL)
        sheet.outlines[f"{rod.name} mark {i + 1}"] = Outline(
            name=f"{rod.name} mark", real=((rod.marks[i].mm, 0.0),), paper=((x, quirk),), scale=scale
        )
    if sheet.thumbnail:
        return top + high + 4.0
    sheet.hatch(rectangle(left, top, left + rod.length.mm * scale, top + high * 0.42), LONG_GRAIN)
    return _running(sheet, rod, left, scale, top + high)


def _running(sheet: Sheet, rod: _Rod, left: float, scale: float, board: float) -> float:
    """Dimension the marks and the member's end from nought, which needs no figure of its own twice."""
    line = board + 6.0
    whole = [mark for mark in rod.marks if mark.mm * scale > 0.05]
    if not whole or (rod.length.mm - whole[-1].mm) * scale > 0.05:
        whole.append(rod.length)
    places = [left + size.mm * scale for size in whole]
    _line(sheet, ((left, line), (places[-1], line)))
    _line(sheet, ((left, board + 1.0), (left, line - 1.05)))
    before = left
    for x in places:
        _line(sheet, ((x, board + 1.0), (x, line)))
        _head(sheet, (x, line), x - before)
        before = x
    view = View(sheet=sheet, scale=1.0, origin=(0.0, 0.0), zone=Zone(box=Box(0, 0, sheet.width, 1e6)))
    origin_ring(view, (left, line))
    return _figures(sheet, [left, *places], ["0", *(size.text for size in whole)], line)


def _line(sheet: Sheet, points: tuple[Point, ...]) -> None:
    sheet.line(points, DIMENSION, "dimension")


def _head(sheet: Sheet, tip: Point, run: float) -> None:
    if run >= 3.0:
        sheet.stroke(arrow(tip, 0.0, BLUE))
        return
    x, y = tip
    pen = DIMENSION.narrowed(0.3)
    ends = ((x - 0.92, y + 0.92), (x + 0.92, y - 0.92))
    sheet.stroke(Stroke(points=ends, pen=pen, layer="dimension", exempt=True))


def _figures(sheet: Sheet, places: Sequence[float], texts: Sequence[str], line: float) -> float:
    em = sheet.em("figure")
    widths = [extent(text, em)[0] + 1.2 for text in texts]
    low, high = margin(sheet) - 1.0, sheet.width - 3.5
    level = _shift(places, spread(places, widths, low, high)) <= 3.0
    need = widths if level else [cap(em) + 1.0] * len(texts)
    below = line + 2.6
    deepest = below
    for x, place, text in zip(places, spread(places, need, low, high), texts, strict=True):
        start = below
        if abs(place - x) > 0.3:
            _line(sheet, ((x, line), (x, line + 1.2), (place, line + 3.2), (place, line + 4.0)))
            start = line + 4.8
        deepest = max(deepest, _figure(sheet, text, place, start, level))
    return deepest


def _shift(wanted: Sequence[float], places: Sequence[float]) -> float:
    return max(abs(a - b) for a, b in zip(wanted, places, strict=True))


def _figure(sheet: Sheet, text: str, x: float, top: float, level: bool) -> float:
    em = sheet.em("figure")
    if level:
        return sheet.text(text, x, top + cap(em), "figure", anchor="middle", colour=BLUE).box.bottom
    return sheet.text(
        text, x + cap(em) / 2, top, "figure", anchor="end", colour=BLUE, upright=True
    ).box.bottom


@dataclass(frozen=True, slots=True, kw_only=True)
class _Setting:
    """The combination square set to one quirk: from which edge, how far."""

    letter: str
    quirk: Size
    edge: str
    on: str


def _draw_setting(sheet: Sheet, setting: _Setting, left: float, top: float, width: float) -> float:
    """Draw the square's stock against an edge and its blade out to the pencil line; return the y below."""
    scale, named = next((d for d in _DETAILS if setting.quirk.mm * d[0] <= width * 0.35), _DETAILS[-1])
    sheet.text(f"{setting.letter}, {named}", left, top + 3.2, "title", weight="bold")
    sheet.text(setting.on, left + width - 5.0, top + 23.5, "note", anchor="end")
    y = top + 9.0
    edge, far, stock = left + 13.0, left + width - 3.0, 12.0
    reach = edge + setting.quirk.mm * scale
    sheet.line(((edge, y - 2.0), (far, y - 2.0)), VISIBLE_STANDING.narrowed(0.35))
    sheet.line(((edge, y - 2.0), (edge, y + 20.0)), VISIBLE_STANDING.narrowed(0.35))
    sheet.line(break_line((edge, y + 20.0), (far, y + 20.0)), VISIBLE_STANDING.narrowed(0.13))
    sheet.line(break_line((far, y - 2.0), (far, y + 20.0)), VISIBLE_STANDING.narrowed(0.13))
    if setting.letter == "Q":
        sheet.fill(rectangle(edge, y - 2.0, far, y + 20.0), TINT)
    sheet.fill(rectangle(edge, y + 5.0, reach, y + 11.0), STEEL)
    sheet.line(rectangle(edge - stock, y + 1.0, edge, y + 17.0), VISIBLE, closed=True)
    sheet.line(((edge, y + 5.0), (reach, y + 5.0), (reach, y + 11.0), (edge, y + 11.0)), VISIBLE)
    sheet.text(say("square"), edge - stock / 2 + 1.0, y + 9.0, "note", anchor="middle", upright=True)
    sheet.line(((reach, y + 12.0), (reach, y + 19.0)), PENCIL)
    name = f"setting {setting.letter}"
    sheet.outlines[name] = Outline(
        name=name,
        real=((0.0, 0.0), (setting.quirk.mm, 0.0)),
        paper=((edge, y), (reach, y)),
        scale=scale,
    )
    view = View(
        sheet=sheet, scale=1.0, origin=(0.0, 0.0), zone=Zone(box=Box(left, top, left + width, y + 34.0))
    )
    words = say("square set to %(quirk)s", quirk=setting.quirk.text)
    dimension(view, (edge, y + 20.5), (reach, y + 19.5), y + 26.0, setting.quirk.text, words)
    sheet.settle()
    return max(y + 28.0, sheet.bottom())


def _settings(first: Size, second: Size) -> tuple[_Setting, ...]:
    both = (
        _Setting(letter="P", quirk=first, edge=say("the lining's face"), on=say("the lining edge")),
        _Setting(letter="Q", quirk=second, edge=say("the packer's edge"), on=say("the packer")),
    )
    return tuple(setting for setting in both if setting.quirk.mm > 0)


def _entries(settings: Sequence[_Setting]) -> tuple[Entry, ...]:
    words = {"P": say("first quirk"), "Q": say("second quirk, once the packer is fixed")}
    return tuple(
        Entry(
            letter=s.letter,
            text=say(
                "square set to %(quirk)s from %(edge)s: %(letter)s",
                quirk=s.quirk.text,
                edge=s.edge,
                letter=words[s.letter],
            ),
        )
        for s in settings
    )


def _draw_settings(sheet: Sheet, settings: Sequence[_Setting], top: float) -> float:
    left = margin(sheet)
    wide = min(74.0, (sheet.width - 2 * left - 4.0) / max(1 if sheet.narrow else 2, 1))
    y = top
    for i, setting in enumerate(settings):
        if sheet.narrow:
            y = _draw_setting(sheet, setting, left, y, wide) + 3.0
        else:
            y = max(y, _draw_setting(sheet, setting, left + i * (wide + 6.0), top, wide))
    return y


def _alt(rods: Sequence[_Rod], settings: Sequence[_Setting], spacing: Size, named: str) -> str:
    runs = " ".join(
        say(
            "On the %(words)s marks at %(marks)s mm from %(start)s, the whole being %(length)s mm.",
            words=rod.words,
            marks=", ".join(mark.text for mark in rod.marks),
            start=rod.start,
            length=rod.length.text,
        )
        for rod in rods
    )
    sets = " ".join(
        say(
            "The square is set to %(quirk)s mm from %(edge)s, marking %(on)s.",
            quirk=s.quirk.text,
            edge=s.edge,
            on=s.on,
        )
        for s in settings
    )
    return say(
        "Marking out at %(named)s, a mark every %(spacing)s mm. %(runs)s %(sets)s",
        named=named,
        spacing=spacing.text,
        runs=runs,
        sets=sets,
    )


@drawing
def quirk_marks(
    width: float,
    *,
    leg_length: Size,
    leg_marks: tuple[Size, ...],
    head_length: Size,
    head_marks: tuple[Size, ...],
    spacing: Size,
    first_quirk: Size,
    second_quirk: Size,
) -> Drawn:
    """Quirk marks as a running dimension from one end.

    Marks in mm from the foot of a leg and from the left end of the head, rising; each run ends with the
    member's length. A quirk of 0 has no setting drawn. Raises ValueError for a mark outside its member or
    out of order.
    """
    rods = (
        _Rod(name="leg", words=say("leg"), start="the foot", length=leg_length, marks=leg_marks),
        _Rod(name="head", words=say("head"), start="the left end", length=head_length, marks=head_marks),
    )
    for rod in rods:
        _check(rod)
    return _laid(rods, _settings(first_quirk, second_quirk), spacing, width)


def _laid(rods: Sequence[_Rod], settings: Sequence[_Setting], spacing: Size, width: float) -> Drawn:
    sheet = Sheet(width=width)
    scale, named = _scale(rods, width - 2 * margin(sheet) - 6.0)
    words = say(
        "Quirk marks every %(spacing)s, marked from one end, %(named)s", spacing=spacing.text, named=named
    )
    bottom = _rods(sheet, rods, scale, title(sheet, words) + 2.0)
    if not sheet.thumbnail:
        bottom = _draw_settings(sheet, settings, bottom + 6.0)
        bottom = plain_list(sheet, _entries(settings), margin(sheet), bottom + 4.0, width - 2 * margin(sheet))
        closing = say("Both legs alike. Measure every mark from nought, not from the last. All in mm.")
        notes(sheet, (closing,), bottom + 1.0)
    sheet.height = math.ceil(sheet.bottom() + 3.0)
    alt = _alt(rods, settings, spacing, named)
    return Drawn(sheet=sheet, title=words, alt=alt, scale=named, key=_entries(settings))


def _rods(sheet: Sheet, rods: Sequence[_Rod], scale: float, top: float) -> float:
    for rod in rods:
        if not sheet.thumbnail:
            words = say("%(words)s, from %(start)s", words=rod.words.capitalize(), start=rod.start)
            sheet.text(words, margin(sheet), top + 4.0, "note", weight="bold", colour=INK)
            top += 6.5
        top = _draw_rod(sheet, rod, scale, top) + 4.0
    return top


def _check(rod: _Rod) -> None:
    at = [mark.mm for mark in rod.marks]
    if not at or sorted(at) != at or at[0] < 0 or at[-1] > rod.length.mm + 1e-9:
        raise ValueError(f"the {rod.words}'s marks must rise within its {rod.length.text} mm")
