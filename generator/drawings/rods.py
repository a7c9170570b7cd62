"""The jamb's front laid on its rod: the marks a joiner sets out by, over the section they belong to."""

from __future__ import annotations

import math
from dataclasses import dataclass

from generator.drawings.clipping import Box, rectangle
from generator.drawings.dimensions import dimension, spread
from generator.drawings.figures import Core, Shape, Size, Substance
from generator.drawings.jamb_parts import Jamb, Part, front_jamb, front_parts, paint
from generator.drawings.keys import LETTERS, Entry, letter_run, notes
from generator.drawings.lettering import cap, extent
from generator.drawings.measures import Measures
from generator.drawings.pens import RULE_FINE, VISIBLE, Pen
from generator.drawings.registry import Drawn, drawing
from generator.drawings.sheet import Outline, Sheet, Zone
from generator.drawings.views import View
from generator.drawings.words import say

_SCALES = ((1.0, "1:1"), (0.5, "1:2"), (0.25, "1:4"), (0.2, "1:5"), (0.1, "1:10"))
_SIDE, _AFTER = 11.0, 16.0
_VEE_HALF, _VEE_HIGH = 1.5, 3.5
_ROD_HIGH, _ROD_OVER = 9.0, 7.0
_MARK = Pen(width=0.7)
_LETTERED = ("architrave", "packer", "lining", "plaster", "wall", "filler")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Mark:
    """A mark of the rod: how far it lies from the lining's face, and its figure, where there is one."""

    away: float
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class _Place:
    """Where the section falls on the sheet: its scale with its name, and the lining face's x."""

    scale: float
    named: str
    face: float


@drawing
def jamb_rod(
    width: float,
    *,
    wall_core: Core,
    plaster_thickness: Size,
    packing_gap: Size,
    set_back: Size,
    frame_edge: Size,
    first_quirk: Size,
    second_quirk: Size,
    total_quirk: Size,
    packer_width: Size,
    packer_thickness: Size,
    left_over: Size,
    architrave_width: Size,
    architrave_thickness: Size,
    architrave_profile: Shape,
    architrave_material: Substance,
    architrave_pin: Size,
    architrave_measures: Measures | None = None,
    outer_mark: Size | None = None,
    place: str = "",
) -> Drawn:
    """Section of the jamb on its rod.

    Sizes in mm, as for `jamb_section`. `outer_mark` is the architrave's outer edge from the lining's face;
    without it that mark bears no figure. The scale is the largest of 1:1, 1:2, 1:4, 1:5 and 1:10 that
    fits the width; on a bench card the key stands beside the drawing. Raises KeyError for an unknown core or
    material, UnknownProfile for an unknown moulding.
    """
    given = {name: value for name, value in locals().items() if name not in {"width", "outer_mark"}}
    jamb = front_jamb(**given)
    marks = _marks(jamb, outer_mark)
    where = _place(jamb, width)
    sheet, parts = Sheet(width=width), front_parts(jamb)
    _lay(sheet, jamb, marks, where, parts)
    at = say(" of doorway %(place)s", place=place) if place else ""
    return Drawn(
        sheet=sheet,
        title=say("Jamb%(at)s on its rod, %(named)s", at=at, named=where.named),
        alt=_alt(jamb, where),
        scale=where.named,
        key=tuple(Entry(letter=letter, text=part.name) for letter, part in _lettered(parts)),
    )


def _marks(jamb: Jamb, outer: Size | None) -> tuple[_Mark, ...]:
    """The marks from the lining's face outward, each place once."""
    inner = [jamb.first_quirk, jamb.total_quirk] if jamb.packed else [jamb.total_quirk]
    found = {0.0: "0"} | {size.mm: size.text for size in inner}
    edge = jamb.quirk + jamb.architrave_width.mm
    found |= {edge: outer.text if outer else ""}
    return tuple(_Mark(away=away, text=text) for away, text in sorted(found.items()))


def _place(jamb: Jamb, width: float) -> _Place:
    wide = jamb.reach + 5.0
    room = width - _SIDE - _AFTER
    scale, named = next((pair for pair in _SCALES if wide * pair[0] <= room), _SCALES[-1])
    return _Place(scale=scale, named=named, face=_SIDE + wide * scale)


def _lay(sheet: Sheet, jamb: Jamb, marks: tuple[_Mark, ...], where: _Place, parts: tuple[Part, ...]) -> None:
    top = 1.0 if sheet.thumbnail else cap(sheet.em("figure"), "bold") + 1.5 + _VEE_HIGH
    zero = top + (0.0 if sheet.thumbnail else _ROD_HIGH + 2.5) + jamb.front * where.scale
    bottom = zero + max(y for part in parts for _, y in part.points) * where.scale
    zone = Zone(box=Box(0.3, 0.3, sheet.width - 0.3, bottom + 3.0))
    view = View(sheet=sheet, scale=where.scale, origin=(where.face, zero), zone=zone)
    if not sheet.thumbnail:
        _rod(view, jamb, marks, top)
    paint(view, parts)
    _figures(view, jamb)
    for letter, part in _lettered(parts):
        view.letter(letter, part.name, part.points)
    sheet.settle()
    sheet.height = float(math.ceil(_key(sheet, parts, max(bottom, sheet.bottom()) + 3.0)))


def _rod(view: View, jamb: Jamb, marks: tuple[_Mark, ...], top: float) -> None:
    """Draw the rod with its millimetres, a vee at each mark, and a line down to the edge it sets."""
    sheet = view.sheet
    left, right = view.at(-jamb.reach, 0)[0] - _ROD_OVER, view.at(0, 0)[0] + _ROD_OVER
    board = rectangle(left, top, right, top + _ROD_HIGH)
    sheet.line(board, VISIBLE, closed=True)
    for mark in marks:
        x = view.at(-mark.away, 0)[0]
        sheet.line(((x - _VEE_HALF, top - _VEE_HIGH), (x, top), (x + _VEE_HALF, top - _VEE_HIGH)), VISIBLE)
        sheet.line(((x, top), (x, top + _ROD_HIGH)), _MARK)
        sheet.line(((x, top + _ROD_HIGH), (x, view.at(0, _edge(jamb, mark.away))[1] - 0.6)), RULE_FINE)
        sheet.outlines[f"rod mark {mark.text or 'outer edge'}"] = Outline(
            name="rod mark", real=((-mark.away, 0.0),), paper=((x, top),), scale=view.scale
        )
    _millimetres(view, jamb, top + _ROD_HIGH)
    _mark_figures(view, marks, top - _VEE_HIGH - 1.2)
    _moulding_words(view, jamb, top + 5.0)


def _moulding_words(view: View, jamb: Jamb, base: float) -> None:
    """Say what lies between the last two marks, as fully as there is room for."""
    sheet, room = view.sheet, jamb.architrave_width.mm * view.scale - 2.0
    em, size = sheet.em("note"), jamb.architrave_width.text
    fits = (words for words in (f"architrave {size}", size) if extent(words, em, "bold")[0] <= room)
    middle = view.at(-jamb.quirk - jamb.architrave_width.mm / 2, 0)[0]
    if words := next(fits, ""):
        sheet.text(words, middle, base, "note", anchor="middle", weight="bold")


def _edge(jamb: Jamb, away: float) -> float:
    """The y at which the line of a mark ends: the edge that it sets."""
    if away >= jamb.quirk:
        return jamb.back - jamb.section().face_at(min(away - jamb.quirk, jamb.architrave_width.mm))
    return jamb.back if away > 0 and jamb.packed else 0.0


def _millimetres(view: View, jamb: Jamb, bottom: float) -> None:
    for real in range(-int(jamb.reach) - 5, 6):
        high = 3.4 if real % 10 == 0 else 2.6 if real % 5 == 0 else 1.7
        if view.scale >= 0.5 or real % 5 == 0:
            x = view.at(real, 0)[0]
            view.sheet.line(((x, bottom - high), (x, bottom)), RULE_FINE)


def _mark_figures(view: View, marks: tuple[_Mark, ...], base: float) -> None:
    """Set the figures over their marks, pushed apart where marks lie closer than figures are wide."""
    sheet = view.sheet
    shown = sorted((mark for mark in marks if mark.text), key=lambda mark: -mark.away)
    em = sheet.em("figure")
    wide = [extent(mark.text, em, "bold")[0] + 1.0 for mark in shown]
    places = spread([view.at(-mark.away, 0)[0] for mark in shown], wide)
    for mark, x in zip(shown, places, strict=True):
        sheet.text(mark.text, x, base, "figure", anchor="middle", weight="bold")


def _figures(view: View, jamb: Jamb) -> None:
    edge = view.at(-jamb.reach - 5.0, 0)[0]
    face = jamb.back - jamb.architrave_thickness.mm
    for start, end, x, size, words in (
        ((jamb.outer, face), (jamb.outer, jamb.back), edge - 4.5, jamb.architrave_thickness, "architrave"),
        ((0.0, jamb.back), (0.0, 0.0), view.at(0, 0)[0] + 7.0, jamb.packer_thickness, "packer"),
    ):
        if size.mm > 0:
            dimension(
                view,
                (view.at(*start)[0], view.at(*start)[1]),
                (view.at(*end)[0], view.at(*end)[1]),
                x,
                size.text,
                f"{words} {size.text}",
                direction="upright",
            )


def _lettered(parts: tuple[Part, ...]) -> tuple[tuple[str, Part], ...]:
    by_name = {part.name: part for part in parts}
    there = (by_name[name] for name in _LETTERED if name in by_name)
    return tuple(zip(LETTERS, there, strict=False))


def _key(sheet: Sheet, parts: tuple[Part, ...], top: float) -> float:
    if sheet.thumbnail or sheet.bench:
        return notes(sheet, sheet.unplaced, top) if sheet.unplaced else top
    entries = [Entry(letter=letter, text=part.name) for letter, part in _lettered(parts)]
    return notes(sheet, sheet.unplaced, letter_run(sheet, entries, top))


def _alt(jamb: Jamb, where: _Place) -> str:
    packer, moulding = (
        say("%(across)s by %(through)s mm", across=across.text, through=through.text)
        for across, through in (
            (jamb.packer_width, jamb.packer_thickness),
            (jamb.architrave_width, jamb.architrave_thickness),
        )
    )
    packed = (
        say(
            " The packer is %(packer)s, its first quirk %(first_quirk)s mm.",
            packer=packer,
            first_quirk=jamb.first_quirk.text,
        )
        if jamb.packed
        else ""
    )
    return say(
        "Section of the jamb at %(named)s with a rod over it. Its marks set the architrave, %(moulding)s, "
        "whose inner edge is %(total_quirk)s mm back from the lining's face.%(packed)s",
        named=where.named,
        moulding=moulding,
        total_quirk=jamb.total_quirk.text,
        packed=packed,
    )
