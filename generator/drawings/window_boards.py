"""A window board: cut through at its middle, and in plan with ears, notches and packers."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from generator.drawings.clipping import Box, Points, arc, rectangle
from generator.drawings.dimensions import dimension
from generator.drawings.figures import Size, Substance
from generator.drawings.keys import LETTERS, Entry, key, margin, notes, paragraph, title
from generator.drawings.pens import HIDDEN, NOTES
from generator.drawings.registry import Drawn, drawing
from generator.drawings.sheet import Sheet, Zone
from generator.drawings.views import View
from generator.drawings.words import MADE_OF, say

_SECTION = ((1.0, "1:1"), (0.5, "1:2"), (0.2, "1:5"), (0.1, "1:10"), (0.05, "1:20"))
_PLAN = ((0.2, "1:5"), (0.1, "1:10"), (0.05, "1:20"), (0.02, "1:50"), (0.01, "1:100"), (0.005, "1:200"))
_FRAME = (58.0, 45.0)
_BELOW = 70.0
_TALLEST = 95.0
_PACKER = 60.0
_CLEAR = 5.0
_INTO_WALL = (60, 120, 75, 105, 45, 135)
_MATERIALS = {"mdf": "new mdf", "timber": "new timber"}


@dataclass(frozen=True, slots=True, kw_only=True)
class _Board:
    """The board; in section x runs from the frame's face into the room and y down from the board's top."""

    place: str
    reveal_width: Size
    left_depth: Size
    right_depth: Size
    projection: Size
    ear: Size
    frame_gap: Size
    board_width: Size
    board_length: Size
    left_notch: Size
    right_notch: Size
    board_thickness: Size
    packer_thickness: Size
    plaster_thickness: Size
    packers: Size
    packer_end: Size
    board_material: str

    @property
    def depth(self) -> float:
        """The depth the section is taken at: the greater."""
        return max(self.left_depth.mm, self.right_depth.mm)

    @property
    def back(self) -> float:
        return self.depth + self.projection.mm - self.board_width.mm

    def section(self) -> Points:
        """The board cut through, its nosing a half round."""
        front, thick = self.depth + self.projection.mm, self.board_thickness.mm
        radius = min(thick / 2, max(self.projection.mm, 1.0))
        nose = arc((front - radius, thick / 2), radius, -math.pi / 2, math.pi / 2)
        squashed = tuple((x, thick / 2 + (y - thick / 2) * thick / 2 / radius) for x, y in nose)
        return ((self.back, 0.0), *squashed, (self.back, thick))

    def plan(self) -> Points:
        """The board from above: x along the window from the reveal's left side, y from the frame out."""
        wide, ear, nose = self.reveal_width.mm, self.ear.mm, self.depth + self.projection.mm
        left, right = self.back + self.left_notch.mm, self.back + self.right_notch.mm
        return (
            (0.0, self.back),
            (wide, self.back),
            (wide, right),
            (wide + ear, right),
            (wide + ear, nose),
            (-ear, nose),
            (-ear, left),
            (0.0, left),
        )


def _frame(top: float, bottom: float) -> Points:
    return rectangle(-_FRAME[0], top, 0.0, bottom)


def _parts(board: _Board) -> tuple[tuple[str, Points, str, str, tuple[int, ...]], ...]:
    under = board.board_thickness.mm
    top = under + board.packer_thickness.mm
    foot, inner = top + _BELOW, board.depth - board.plaster_thickness.mm
    words, material = say(MADE_OF[board.board_material]), _MATERIALS[board.board_material]
    size = f"{board.board_width.text} × {board.board_thickness.text}"
    return (
        ("board", board.section(), material,
         say("Window board, %(made_of)s, %(size)s", made_of=words, size=size), ()),
        ("frame", _frame(under - _FRAME[1], top), "standing timber", say("Window frame"), (0,)),
        ("packer", rectangle(max(inner * 0.3, 2.0), under, inner * 0.7, top), "new timber",
         say("Packer, %(thickness)s; %(packers)s along the board", thickness=board.packer_thickness.text,
             packers=board.packers.text), ()),
        ("wall", rectangle(-_FRAME[0], top, inner, foot), "block", say("Wall"), (2, 3)),
        ("plaster", rectangle(inner, under, board.depth, foot), "plaster",
         say("Plaster, %(thickness)s", thickness=board.plaster_thickness.text), (2,)),
    )  # fmt: skip


def _fit(scales: Sequence[tuple[float, str]], wide: float, high: float, room: float) -> tuple[float, str]:
    return next((s for s in scales if wide * s[0] <= room and high * s[0] <= _TALLEST), scales[-1])


def _section(board: _Board, sheet: Sheet, below: float) -> tuple[View, float, str]:
    thick = board.board_thickness.mm
    high = _FRAME[1] + board.packer_thickness.mm + _BELOW
    wide = _FRAME[0] + board.depth + board.projection.mm
    room = sheet.width - 2 * margin(sheet) - (0.0 if sheet.thumbnail else 8.0)
    scale, named = _fit(_SECTION, wide, high, room)
    top = below + (2.0 if sheet.thumbnail else 14.0) + (_FRAME[1] - thick) * scale
    left = margin(sheet) + _FRAME[0] * scale if not sheet.thumbnail else (sheet.width - wide * scale) / 2
    left = left if not sheet.thumbnail else left + _FRAME[0] * scale
    bottom = top + (thick + board.packer_thickness.mm + _BELOW) * scale
    zone = Zone(box=Box(0.5, below, sheet.width - 0.5, bottom + 8.0))
    return View(sheet=sheet, scale=scale, origin=(left, top), zone=zone), bottom, named


def _paint_section(view: View, board: _Board) -> None:
    for name, points, material, _, broken in _parts(board):
        if broken:
            view.open_part(name, points, material, broken)
        else:
            view.part(name, points, material)


def _section_sizes(view: View, board: _Board) -> None:
    nose, back = board.depth + board.projection.mm, board.back
    at = view.at(0, board.board_thickness.mm - _FRAME[1])[1] - 8.0
    ends = view.at(back, 0), view.at(nose, 0)
    dimension(
        view,
        *ends,
        at,
        board.board_width.text,
        say("board %(board_width)s wide", board_width=board.board_width.text),
    )
    low = view.at(0, board.board_thickness.mm)[1] + 9.0
    faces = view.at(board.depth, board.board_thickness.mm), view.at(nose, board.board_thickness.mm)
    dimension(
        view,
        *faces,
        low,
        board.projection.text,
        say("nosing %(projection)s past the plaster", projection=board.projection.text),
    )
    for letter, (name, points, *_) in zip(LETTERS, _parts(board), strict=False):
        # A packer is too thin for its letter, which would else stand on the board and be read as the board's.
        view.letter(letter, name, points, turns=_INTO_WALL if name == "packer" else ())


def _plan(board: _Board, sheet: Sheet, top: float) -> tuple[View, float, str]:
    wide = board.board_length.mm
    nose = board.depth + board.projection.mm
    room = sheet.width - 2 * margin(sheet) - (2.0 if sheet.thumbnail else 16.0)
    scale, named = _fit(_PLAN, wide, nose, room)
    left = (sheet.width - wide * scale) / 2 + board.ear.mm * scale
    zone = Zone(box=Box(0.5, top, sheet.width - 0.5, top + nose * scale + 34.0))
    start = top + (3.0 if sheet.thumbnail else 12.0)
    return View(sheet=sheet, scale=scale, origin=(left, start), zone=zone), start + nose * scale, named


def _paint_plan(view: View, board: _Board) -> None:
    wide, band = board.reveal_width.mm, 60.0
    reach = board.ear.mm + band
    view.open_part("left reveal", rectangle(-reach, 0.0, 0.0, board.left_depth.mm), "plaster", (3,))
    view.open_part("right reveal", rectangle(wide, 0.0, wide + reach, board.right_depth.mm), "plaster", (1,))
    view.part("board in plan", board.plan(), "new work in elevation")
    count = int(board.packers.mm)
    bays = max(count - 1, 1)
    deep = min(board.left_depth.mm, board.right_depth.mm)
    end = board.packer_end.mm
    half = min(_PACKER / 2, end - _CLEAR, (wide - 2 * end) / (2 * count))
    for at in range(count):
        x = end + (wide - 2 * end) * at / bays
        box = rectangle(x - half, deep * 0.3, x + half, deep * 0.7)
        view.line((*box, box[0]), HIDDEN, f"packer {at + 1}")


def _plan_sizes(view: View, board: _Board) -> None:
    nose, wide = board.depth + board.projection.mm, board.reveal_width.mm
    reveal = view.at(0, 0), view.at(wide, 0)
    dimension(
        view,
        *reveal,
        view.at(0, 0)[1] - 6.0,
        board.reveal_width.text,
        say("reveal %(reveal_width)s", reveal_width=board.reveal_width.text),
    )
    whole = view.at(-board.ear.mm, nose), view.at(wide + board.ear.mm, nose)
    at = view.at(0, nose)[1] + 9.0
    dimension(
        view,
        *whole,
        at,
        board.board_length.text,
        say("board %(board_length)s long", board_length=board.board_length.text),
    )
    left = view.at(-board.ear.mm, nose), view.at(0, nose)
    dimension(
        view, *left, at + 8.0, board.ear.text, say("ear %(ear)s", ear=board.ear.text), ends=(True, False)
    )


def _closing(board: _Board, plan: str) -> tuple[str, ...]:
    return (
        say(
            "Plan at %(plan)s: notches %(left_notch)s on the left and %(right_notch)s on the right from the "
            "edge at the frame, %(ear)s long; dashed, the packers, the end ones %(packer_end)s from the "
            "reveal. %(frame_gap)s left along the frame. All in mm.",
            plan=plan,
            left_notch=board.left_notch.text,
            right_notch=board.right_notch.text,
            ear=board.ear.text,
            packer_end=board.packer_end.text,
            frame_gap=board.frame_gap.text,
        ),
    )


def _entries(board: _Board) -> tuple[Entry, ...]:
    parts = _parts(board)
    return tuple(
        Entry(letter=letter, text=words, material=material)
        for letter, (_, _, material, words, _) in zip(LETTERS, parts, strict=False)
    )


def _alt(board: _Board, section: str, plan: str) -> str:
    return " ".join(
        (
            say(
                "Section at %(section)s and plan at %(plan)s of the window board%(place)s.",
                section=section,
                plan=plan,
                place=f", {board.place}" if board.place else "",
            ),
            say(
                "The board is %(board_width)s mm wide, %(board_thickness)s mm thick and %(board_length)s mm "
                "long in a reveal of %(reveal_width)s mm, its nosing %(projection)s mm past the plaster and "
                "its ears %(ear)s mm.",
                board_width=board.board_width.text,
                board_thickness=board.board_thickness.text,
                board_length=board.board_length.text,
                reveal_width=board.reveal_width.text,
                projection=board.projection.text,
                ear=board.ear.text,
            ),
            say(
                "Notches %(left_notch)s mm deep on the left, %(right_notch)s mm on the right.",
                left_notch=board.left_notch.text,
                right_notch=board.right_notch.text,
            ),
            say(
                "%(packers)s packers %(packer_thickness)s mm thick; %(frame_gap)s mm left along the frame.",
                packers=board.packers.text,
                packer_thickness=board.packer_thickness.text,
                frame_gap=board.frame_gap.text,
            ),
        )
    )


@drawing
def window_board_section(
    width: float,
    *,
    reveal_width: Size,
    left_depth: Size,
    right_depth: Size,
    projection: Size,
    ear: Size,
    frame_gap: Size,
    board_width: Size,
    board_length: Size,
    left_notch: Size,
    right_notch: Size,
    board_thickness: Size,
    packer_thickness: Size,
    plaster_thickness: Size,
    packers: Size,
    packer_end: Size,
    board_material: Substance,
    place: str = "",
) -> Drawn:
    """Window board in section and in plan.

    Sizes in mm; depths from the frame to the face of the plaster. The section is at 1:1 to 1:10 and the plan
    at 1:5 to 1:100, each the largest that fits the sheet. The frame's own section is no more than a sketch.
    """
    board = _Board(**{name: value for name, value in locals().items() if name != "width"})
    sheet = Sheet(width=width)
    words = say("%(place)s, section", place=place or say("Window board"))
    below = title(sheet, words)
    view, bottom, section = _section(board, sheet, below)
    _paint_section(view, board)
    plan_view, low, plan = _plan(board, sheet, bottom + (2.0 if sheet.thumbnail else 10.0))
    _paint_plan(plan_view, board)
    if not sheet.thumbnail:
        _lettering(view, plan_view, board, low, plan)
    sheet.height = math.ceil(max(sheet.bottom() + 3.0, low + 3.0))
    return Drawn(
        sheet=sheet,
        title=say("%(words)s %(section)s, plan %(plan)s", words=words, section=section, plan=plan),
        alt=_alt(board, section, plan),
        scale=section,
        key=_entries(board),
    )


def _lettering(view: View, plan_view: View, board: _Board, low: float, plan: str) -> None:
    sheet = view.sheet
    _section_sizes(view, board)
    _plan_sizes(plan_view, board)
    sheet.settle()
    top = key(sheet, _entries(board), low + 24.0) + 1.5
    notes(sheet, _closing(board, plan), top)
    if sheet.unplaced:
        words = say("Not figured on the view: %(unplaced)s.", unplaced="; ".join(sheet.unplaced))
        paragraph(sheet, words, margin(sheet), sheet.bottom() + 3.0, sheet.width - 2 * margin(sheet), NOTES)
