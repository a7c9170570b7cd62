"""The head of a doorway cut through upright: lining, packer and architrave as they stand over the opening."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from generator.drawings.clipping import Box
from generator.drawings.dimensions import dimension
from generator.drawings.figures import Core, Shape, Size, Substance
from generator.drawings.jamb_parts import Jamb, Part, front_jamb, front_parts, lettered, paint
from generator.drawings.keys import Entry, key_round, margin, notes, rule_bar, title
from generator.drawings.measures import Measures
from generator.drawings.registry import Drawn, drawing
from generator.drawings.sheet import Sheet, Zone
from generator.drawings.views import View
from generator.drawings.words import say

_SCALES = ((1.0, "1:1"), (0.5, "1:2"), (0.25, "1:4"), (0.2, "1:5"), (0.1, "1:10"))
_BESIDE, _NEXT = 12.0, 7.0
_OVER, _UNDER = 14.0, 24.0
_TALLEST = 170.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Place:
    """The scale with its name, and how far the parts reach in real mm: in front of the lining, and behind."""

    scale: float
    named: str
    front: float
    behind: float


def _parts(jamb: Jamb) -> tuple[Part, ...]:
    """The parts of the jamb's front turned to stand over the opening: x into the wall, y down."""
    turned = (
        replace(part, points=tuple((y, x) for x, y in part.points), words=_words(part))
        for part in front_parts(jamb)
    )
    return tuple(turned)


def _words(part: Part) -> str:
    return {
        "wall": say("Wall over the opening; what carries it is not drawn"),
        "lining": say("Head of the lining"),
        "pin": say("Pin"),
    }.get(part.name, part.words)


def _place(parts: tuple[Part, ...], width: float) -> _Place:
    xs = [x for part in parts for x, _ in part.points]
    ys = [y for part in parts for _, y in part.points]
    front, behind, high = -min(xs), max(xs), max(ys) - min(ys)
    room = width - (3.0 if width < 60 else 2 * _BESIDE + 2 * _NEXT)
    fits = (pair for pair in _SCALES if (front + behind) * pair[0] <= room and high * pair[0] <= _TALLEST)
    scale, named = next(fits, _SCALES[-1])
    return _Place(scale=scale, named=named, front=front, behind=behind)


def _view(sheet: Sheet, jamb: Jamb, place: _Place, top: float) -> View:
    over = 1.0 if sheet.thumbnail else _OVER
    left = 1.5 if sheet.thumbnail else margin(sheet) + _BESIDE + _NEXT - (8.0 if sheet.narrow else 3.0)
    zero = top + over + (jamb.reach + 5.0) * place.scale
    right = left + (place.front + place.behind) * place.scale
    under = 1.0 if sheet.thumbnail else _UNDER
    zone = Zone(box=Box(0.5, top + 0.5, min(right + _BESIDE + _NEXT + 5.0, sheet.width - 0.5), zero + under))
    return View(sheet=sheet, scale=place.scale, origin=(left + place.front * place.scale, zero), zone=zone)


def _upright_dimensions(view: View, jamb: Jamb, place: _Place) -> None:
    """Architrave and both quirks in front; packer, first quirk and the lining's edge behind."""
    face = jamb.back - jamb.architrave_thickness.mm
    before = view.at(-place.front, 0)[0] - _NEXT
    behind = view.at(place.behind, 0)[0] + _NEXT
    start = -jamb.first_quirk.mm
    wide, both = jamb.architrave_width.text, jamb.total_quirk.text
    chain = [
        ((face, jamb.outer), (face, -jamb.quirk), before, wide, say("architrave width %(wide)s", wide=wide)),
        ((face, -jamb.quirk), (0.0, 0.0), before, both, say("both quirks %(both)s", both=both)),
    ]
    if jamb.packed:
        packer, first = jamb.packer_width.text, jamb.first_quirk.text
        chain += [
            ((0.0, start - jamb.packer_width.mm), (0.0, start), behind, packer,
             say("packer width %(packer)s", packer=packer)),
            ((0.0, start), (0.0, 0.0), behind, first, say("first quirk %(first)s", first=first)),
        ]  # fmt: skip
    for one, two, at, text, words in chain:
        if one[1] != two[1]:
            dimension(view, view.at(*one), view.at(*two), at, text, words, direction="upright")


def _level_dimensions(view: View, jamb: Jamb) -> None:
    """Architrave and packer under the opening's edge, the plaster's set-back over the view."""
    face, under = jamb.back - jamb.architrave_thickness.mm, view.at(0, 0)[1] + 9.0
    thick, packer, proud = jamb.architrave_thickness.text, jamb.packer_thickness.text, jamb.set_back.text
    dimension(
        view, view.at(face, -jamb.quirk), view.at(jamb.back, -jamb.quirk), under, thick,
        say("architrave thickness %(thick)s", thick=thick), ends=(True, False),
    )  # fmt: skip
    if jamb.packed:
        dimension(
            view, view.at(jamb.back, -jamb.first_quirk.mm), view.at(0, 0), under, packer,
            say("packer thickness %(packer)s", packer=packer), ends=(False, True),
        )  # fmt: skip
    if jamb.set_back.mm * view.scale >= 1.5:
        top = -jamb.reach - 5.0
        over = view.at(0, top)[1] - 5.0
        dimension(
            view, view.at(-jamb.set_back.mm, top), view.at(0, top), over, proud,
            say("plaster proud of the frame %(proud)s", proud=proud),
        )  # fmt: skip


def _lay(sheet: Sheet, jamb: Jamb, parts: tuple[Part, ...], place: _Place, top: float) -> tuple[Entry, ...]:
    view = _view(sheet, jamb, place, top)
    paint(view, parts)
    letters = lettered(parts)
    entries = tuple(Entry(letter=letter, text=part.words, material=part.material) for letter, part in letters)
    if sheet.thumbnail:
        sheet.height = float(math.ceil(view.at(0, 0)[1] + 2.0))
        return entries
    _upright_dimensions(view, jamb, place)
    _level_dimensions(view, jamb)
    for letter, part in letters:
        view.letter(letter, part.name, part.points)
    sheet.settle()
    _round(sheet, view, entries, place, top)
    return entries


def _round(sheet: Sheet, view: View, entries: tuple[Entry, ...], place: _Place, top: float) -> None:
    """Key, notes and rule: the key beside the view where there is room for it."""
    low = max(sheet.bottom(), view.at(0, 0)[1])
    below = key_round(sheet, entries, view.zone.box.right + 4.0, top + _OVER, low) + 2.0
    lines = (*sheet.unplaced, say("Cut through the middle of the head, room to the left. All in mm."))
    bottom = notes(sheet, lines, below)
    if place.scale == 1.0:
        bottom = rule_bar(sheet, say("full size"), bottom + 1.0)
    sheet.height = float(math.ceil(max(bottom, sheet.bottom()) + 3.0))


def _alt(jamb: Jamb, named: str) -> str:
    packed = (
        say(
            "The packer, %(wide)s by %(thick)s mm, stands %(first)s mm over the lining's edge.",
            wide=jamb.packer_width.text,
            thick=jamb.packer_thickness.text,
            first=jamb.first_quirk.text,
        )
        if jamb.packed
        else say("There is no packer.")
    )
    return say(
        "Upright section through the head of the doorway at %(named)s. Plaster stands %(proud)s mm proud of "
        "the lining. %(packed)s The architrave, %(wide)s by %(thick)s mm, stands %(total)s mm over the "
        "lining's edge.",
        named=named,
        proud=jamb.set_back.text,
        packed=packed,
        wide=jamb.architrave_width.text,
        thick=jamb.architrave_thickness.text,
        total=jamb.total_quirk.text,
    )


@drawing
def head_section(
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
    place: str = "",
) -> Drawn:
    """Upright section through the head of a doorway.

    Sizes in mm, as for `jamb_section`; what carries the wall over the opening is not known and not drawn. The
    scale is the largest of 1:1, 1:2, 1:4, 1:5 and 1:10 that fits the sheet. Raises KeyError for an unknown
    core or material, UnknownProfile for an unknown moulding.
    """
    jamb = front_jamb(**{name: value for name, value in locals().items() if name != "width"})
    parts, sheet = _parts(jamb), Sheet(width=width)
    where = _place(parts, width)
    words = say(
        "Head%(place)s, upright section %(named)s",
        place=say(" of doorway %(place)s", place=place) if place else "",
        named=where.named,
    )
    entries = _lay(sheet, jamb, parts, where, title(sheet, words))
    return Drawn(sheet=sheet, title=words, alt=_alt(jamb, where.named), scale=where.named, key=entries)
