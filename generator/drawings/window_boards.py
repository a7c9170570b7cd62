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

_SECTION = ((1.0, "1:1"), (0.5, "1:2"), (0.2, "1:5"), (0.1, "1:10"))
_PLAN = ((0.2, "1:5"), (0.1, "1:10"), (0.05, "1:20"), (0.02, "1:50"), (0.01, "1:100"))
_FRAME = (58.0, 45.0)
_BELOW = 70.0
_TALLEST = 95.0
_PACKER = 60.0
_CLEAR = 5.0
_INTO_WALL = (60, 120, 75, 105, 45, 135)
_MATERIALS = {"mdf": ("MDF", "new mdf"), "timber": ("timber", "new timber")}


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
    words, material = _MATERIALS[board.board_material]
    size = f"{board.board_width.text} × {board.board_thickness.text}"
    return (
        ("board", board.section(), material, f"Window board, {words}, {size}", ()),
        ("frame", _frame(under - _FRAME[1], top), "standing timber", "Window frame", (0,)),
        ("packer", rectangle(max(inner * 0.3, 2.0), under, inner * 0.7, top), "new timber",
         f"Packer, {board.packer_thickness.text}; {board.packers.text} along the board", ()),
        ("wall", rectangle(-_FRAME[0], top, inner, foot), "block", "Wall", (2, 3)),
        ("plaster", rectangle(inner, under, board.depth, foot), "plaster",
         f"Plaster, {board.plaster_thickness.text}", (2,)),
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
    dimension(view, *ends, at, board.board_width.text, f"board {board.board_width.text} wide")
    low = view.at(0, board.board_thickness.mm)[1] + 9.0
    faces = view.at(board.depth, board.board_thickness.mm), view.at(nose, board.board_thickness.mm)
    dimension(view, *faces, low, board.projection.text, f"nosing {board.projection.text} past the plaster")
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
        view, *reveal, view.at(0, 0)[1] - 6.0, board.reveal_width.text, f"reveal {board.reveal_width.text}"
    )
    whole = view.at(-board.ear.mm, nose), view.at(wide + board.ear.mm, nose)
    at = view.at(0, nose)[1] + 9.0
    dimension(view, *whole, at, board.board_length.text, f"board {board.board_length.text} long")
    left = view.at(-board.ear.mm, nose), view.at(0, nose)
    dimension(view, *left, at + 8.0, board.ear.text, f"ear {board.ear.text}", ends=(True, False))


def _closing(board: _Board, plan: str) -> tuple[str, ...]:
    return (
        f"Plan at {plan}: notches {board.left_notch.text} on the left and {board.right_notch.text} on the "
        f"right from the edge at the frame, {board.ear.text} long; dashed, the packers, the end ones "
        f"{board.packer_end.text} from the reveal. "
        f"{board.frame_gap.text} left along the frame. All in mm.",
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
            f"Section at {section} and plan at {plan} of the window board"
            f"{f', {board.place}' if board.place else ''}.",
            f"The board is {board.board_width.text} mm wide, {board.board_thickness.text} mm thick and",
            f"{board.board_length.text} mm long in a reveal of {board.reveal_width.text} mm, its nosing",
            f"{board.projection.text} mm past the plaster and its ears {board.ear.text} mm.",
            f"Notches {board.left_notch.text} mm deep on the left, {board.right_notch.text} mm on the right.",
            f"{board.packers.text} packers {board.packer_thickness.text} mm thick;"
            f" {board.frame_gap.text} mm left along the frame.",
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
    words = f"{place or 'Window board'}, section"
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
        title=f"{words} {section}, plan {plan}",
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
        words = f"Not figured on the view: {'; '.join(sheet.unplaced)}."
        paragraph(sheet, words, margin(sheet), sheet.bottom() + 3.0, sheet.width - 2 * margin(sheet), NOTES)
