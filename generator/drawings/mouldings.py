"""A moulding's section from the same path its area and girth are taken from: enlarged, and at full size."""

from __future__ import annotations

import math
from dataclasses import dataclass

from generator.drawings.clipping import Box, Points
from generator.drawings.dimensions import dimension
from generator.drawings.figures import Shape, Size, Substance
from generator.drawings.keys import Entry, key, margin, notes, rule_bar, title
from generator.drawings.lettering import cap
from generator.drawings.measures import Measures
from generator.drawings.registry import Drawn, drawing
from generator.drawings.sheet import Sheet, Zone
from generator.drawings.views import View
from generator.drawings.words import MADE_OF, say
from generator.quantities.profiles import PROFILES, Profile, profile

_SCALES = (
    (4.0, "4:1"),
    (2.0, "2:1"),
    (1.0, "1:1"),
    (0.5, "1:2"),
    (1 / 3, "1:3"),
    (0.2, "1:5"),
    (0.1, "1:10"),
)
_MATERIALS = {"mdf": "new mdf", "timber": "new timber"}
_TALLEST = 120.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Moulding:
    """A moulding with the words for its measures, in the order the catalogue gives them."""

    shape: str
    width: Size
    thickness: Size
    girth: Size
    material: str
    measures: tuple[tuple[str, Size], ...]

    def section(self) -> Profile:
        sizes = {name: size.mm for name, size in self.measures}
        return profile(self.shape, self.width.mm, self.thickness.mm, {"arris": 0.0, **sizes})

    def outline(self) -> Points:
        """The section with its back down: x from the inner edge, y down from the face."""
        return tuple((u, self.thickness.mm - v) for u, v in self.section().points())

    @property
    def measured(self) -> str:
        """The measures in words."""
        listed = ", ".join(f"{name.replace('_', ' ')} {size.text}" for name, size in self.measures)
        return listed.capitalize() if listed else say("No moulded edge")


def _scale(moulding: _Moulding, width: float) -> tuple[float, str]:
    room = width - (4.0 if width < 60 else 26.0 if width < 120 else 46.0)
    wide, thick = moulding.width.mm, moulding.thickness.mm
    fits = (s for s in _SCALES if wide * s[0] <= room and thick * s[0] <= _TALLEST)
    return next(fits, _SCALES[-1])


def _draw(sheet: Sheet, moulding: _Moulding, scale: float, left: float, top: float, name: str) -> View:
    low = top + moulding.thickness.mm * scale
    zone = Zone(box=Box(0.5, top - 4.0, sheet.width - 0.5, low + 14.0))
    view = View(sheet=sheet, scale=scale, origin=(left, top), zone=zone)
    view.part(name, moulding.outline(), _MATERIALS[moulding.material])
    return view


def _dimensions(view: View, moulding: _Moulding) -> None:
    (left, top), (right, low) = view.at(0, 0), view.at(moulding.width.mm, moulding.thickness.mm)
    wide, thick = moulding.width.text, moulding.thickness.text
    dimension(view, (left, low), (right, low), low + 8.0, wide, say("%(wide)s wide", wide=wide))
    words = say("%(thick)s thick", thick=thick)
    dimension(view, (right, top), (right, low), right + 9.0, thick, words, direction="upright")


def _entries(moulding: _Moulding) -> tuple[Entry, ...]:
    words, material = say(MADE_OF[moulding.material]), _MATERIALS[moulding.material]
    text = f"{moulding.shape}, {words}, {moulding.width.text} × {moulding.thickness.text}"
    return (Entry(letter="M", text=text, material=material),)


def _lay(sheet: Sheet, moulding: _Moulding, scale: float, top: float) -> None:
    left = 2.0 if sheet.thumbnail else margin(sheet) + 3.0
    over = 2.0 if sheet.thumbnail else 6.0
    view = _draw(sheet, moulding, scale, left, top + over, "moulding")
    low = top + over + moulding.thickness.mm * scale
    if sheet.thumbnail:
        sheet.height = math.ceil(low + 2.0)
        return
    _dimensions(view, moulding)
    view.letter("M", say("moulding"), moulding.outline())
    sheet.settle()
    bottom = key(sheet, _entries(moulding), max(sheet.bottom(), low + 8.0) + 4.0)
    line = say(
        "%(measured)s. Girth to paint, all but the back, %(girth)s. All in mm.",
        measured=moulding.measured,
        girth=moulding.girth.text,
    )
    bottom = notes(sheet, (*sheet.unplaced, line), bottom + 1.0)
    bottom = _full_size(sheet, moulding, scale, bottom)
    sheet.height = math.ceil(max(bottom, sheet.bottom()) + 3.0)


def _full_size(sheet: Sheet, moulding: _Moulding, scale: float, top: float) -> float:
    """The section once more at 1:1 where the view above is enlarged and the sheet has room for it."""
    left = margin(sheet)
    if scale > 1.0 and left + moulding.width.mm < sheet.width - left:
        sheet.text(say("Full size"), left, top + 4.0 + cap(sheet.em("note")), "note", weight="bold")
        _draw(sheet, moulding, 1.0, left, top + 9.0, "moulding, full size")
        top += 9.0 + moulding.thickness.mm
    return rule_bar(sheet, say("full size"), top + 2.0) if scale >= 1.0 else top


@drawing
def moulding_profile(
    width: float,
    *,
    shape: Shape,
    moulding_width: Size,
    thickness: Size,
    girth: Size,
    material: Substance,
    radius: Size | None = None,
    depth: Size | None = None,
    breadth: Size | None = None,
    fillet_depth: Size | None = None,
    fillet_breadth: Size | None = None,
    inner_fillet: Size | None = None,
    outer_fillet: Size | None = None,
    arris: Size | None = None,
    measures: Measures | None = None,
    place: str = "",
) -> Drawn:
    """Section of a moulding, enlarged and at full size.

    Sizes in mm. `shape` is a name in `profiles.PROFILES`, its measures given one by one or all as
    `measures`, bound from `role.measures`; a measure left out takes the profile's usual
    proportion, an arris left out is square; `girth` is printed as given; `material` is mdf or timber. Raises
    ValueError for another shape or material.
    """
    if shape not in PROFILES or material not in _MATERIALS:
        raise ValueError(f"no moulding {shape!r} of {material!r}")
    given = (
        ("radius", radius), ("depth", depth), ("breadth", breadth), ("fillet_depth", fillet_depth),
        ("fillet_breadth", fillet_breadth), ("inner_fillet", inner_fillet), ("outer_fillet", outer_fillet),
        ("arris", arris),
    )  # fmt: skip
    singly = {name: size for name, size in given if size is not None}
    drawn_to = {**(measures.given() if measures else {}), **singly}
    moulding = _Moulding(
        shape=shape, width=moulding_width, thickness=thickness, girth=girth, material=material,
        measures=tuple(drawn_to.items()),
    )  # fmt: skip
    sheet, (scale, named) = Sheet(width=width), _scale(moulding, width)
    where = f", {place}" if place else ""
    words = say(
        "%(shape)s, %(moulding_width)s × %(thickness)s%(where)s, section %(named)s",
        shape=shape.capitalize(),
        moulding_width=moulding_width.text,
        thickness=thickness.text,
        where=where,
        named=named,
    )
    _lay(sheet, moulding, scale, title(sheet, words))
    alt = say(
        "Section of a %(shape)s moulding of %(material)s at %(named)s, %(moulding_width)s mm wide and "
        "%(thickness)s mm thick, its back flat. %(measured)s. Girth without the back %(girth)s mm.",
        shape=shape,
        material=say(MADE_OF[material]),
        named=named,
        moulding_width=moulding_width.text,
        thickness=thickness.text,
        measured=moulding.measured,
        girth=girth.text,
    )
    return Drawn(sheet=sheet, title=words, alt=alt, scale=named, key=_entries(moulding))
