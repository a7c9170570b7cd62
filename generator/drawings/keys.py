"""What stands round a view: title, key with swatches, notes and the bar to lay a rule on."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from generator.drawings.clipping import rectangle
from generator.drawings.lettering import cap, extent, wrapped
from generator.drawings.pens import INK, NOTES, VISIBLE
from generator.drawings.sheet import Sheet
from generator.drawings.views import MATERIALS
from generator.drawings.words import say

LETTERS = "ABCDEFGHJKLMNPQRSTUVW"
MARGIN = 9.0
PHONE_MARGIN = 3.0
_LEAST_COLUMN = 60.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One line of a key: letter, words and, for a part, the material its swatch shows."""

    letter: str
    text: str
    material: str | None = None


def margin(sheet: Sheet) -> float:
    """Return where the text column starts, in mm from the sheet's left edge."""
    return PHONE_MARGIN if sheet.narrow else MARGIN


def title(sheet: Sheet, words: str) -> float:
    """Set the title, over as many lines as it needs; return the y below it."""
    left, em = margin(sheet), sheet.em("title")
    y = 6.0
    for line in wrapped(words, em, sheet.width - 2 * left, "bold"):
        sheet.text(line, left, y, "title", weight="bold")
        y += 5.6
    return y - 5.6 + 2.0 if not sheet.thumbnail else 1.0


def paragraph(sheet: Sheet, words: str, left: float, top: float, width: float, colour: str = INK) -> float:
    """Set wrapped note text with its first line's capitals at `top`; return the y below the last line."""
    em = sheet.em("note")
    y = top + cap(em)
    for line in wrapped(words, em, width):
        sheet.text(line, left, y, "note", colour=colour)
        y += _leading(sheet)
    return y - cap(em)


def _leading(sheet: Sheet) -> float:
    return 5.2 if sheet.narrow else 4.7


def notes(sheet: Sheet, lines: Sequence[str], top: float, colour: str = NOTES) -> float:
    """Set note lines under one another over the sheet's width; return the y below them."""
    left = margin(sheet)
    for line in lines:
        top = paragraph(sheet, line, left, top, sheet.width - 2 * left, colour)
    return top


def key(sheet: Sheet, entries: Sequence[Entry], top: float) -> float:
    """Set the key, in two columns on paper and one on a phone; return the y below it."""
    if sheet.thumbnail:
        return top
    columns = 1 if sheet.narrow else 2
    left, wide = margin(sheet), (sheet.width - 2 * margin(sheet)) / columns
    share = -(-len(entries) // columns)
    lowest = top
    for i in range(columns):
        y = top
        for entry in entries[i * share : (i + 1) * share]:
            y = _entry(sheet, entry, left + i * wide, y, wide - 2.0)
        lowest = max(lowest, y)
    return lowest


def _entry(sheet: Sheet, entry: Entry, left: float, top: float, width: float) -> float:
    swatch = 6.5 if entry.material else 0.0
    column = left + 7.5 + (12.5 if swatch else 0.0)
    lines = wrapped(entry.text, sheet.em("note"), left + width - column)
    base = top + 4.2
    sheet.text(entry.letter, left, base, "key letter", weight="bold")
    if entry.material:
        _swatch(sheet, entry.material, left + swatch, top)
    for i, line in enumerate(lines):
        sheet.text(line, column, base - 0.3 + i * _leading(sheet), "note")
    return max(top + 6.6, base + (len(lines) - 1) * _leading(sheet) + 2.4)


def _swatch(sheet: Sheet, material: str, left: float, top: float) -> None:
    made = MATERIALS[material]
    box = rectangle(left, top, left + 10.0, top + 5.0)
    if made.fill:
        sheet.fill(box, made.fill)
    if made.hatch:
        sheet.hatch(box, made.hatch)
    colour = INK if made.pen.colour == INK else made.pen.colour
    sheet.line(box, VISIBLE if colour == INK else made.pen.narrowed(0.25), closed=True)


def rule_bar(sheet: Sheet, scale: str, top: float) -> float:
    """Draw 100 mm of paper to lay a steel rule on; return the y below it. Nothing on a phone."""
    if sheet.narrow:
        return top
    left, y = margin(sheet), top + 4.0
    sheet.line(((left, y - 2.6), (left, y), (left + 100, y), (left + 100, y - 2.6)), VISIBLE)
    for at in range(10, 100, 10):
        sheet.line(((left + at, y), (left + at, y - (2.6 if at == 50 else 1.3))), VISIBLE)
    for at in (0, 50, 100):
        sheet.text(str(at), left + at, y + 3.6, "figure", anchor="middle")
    words = say("lay a rule here: %(scale)s if it reads 100", scale=scale)
    sheet.text(words, left + 106, y + 3.6, "note")
    return y + 6.0


def heading(sheet: Sheet, words: str, left: float, top: float) -> float:
    """Set a bold heading of a list; return the y below it."""
    em = sheet.em("title")
    sheet.text(words, left, top + cap(em, "bold"), "title", weight="bold")
    return top + 6.6


def list_width(sheet: Sheet, entries: Sequence[Entry]) -> float:
    """Return the width a key column needs to carry every entry on one line, in mm."""
    em = sheet.em("note")
    return max(extent(entry.text, em)[0] + 7.5 + (12.5 if entry.material else 0.0) for entry in entries)


def letter_run(sheet: Sheet, entries: Sequence[Entry], top: float) -> float:
    """Set letters and their words one after another in lines over the sheet; return the y below them."""
    left, em = margin(sheet), sheet.em("note")
    x, y = left, top + cap(em)
    for entry in entries:
        letter, words = extent(entry.letter, em, "bold")[0], extent(entry.text, em)[0]
        if x > left and x + letter + 1.2 + words > sheet.width - left:
            x, y = left, y + _leading(sheet) + 0.5
        sheet.text(entry.letter, x, y, "note", weight="bold")
        sheet.text(entry.text, x + letter + 1.2, y, "note")
        x += letter + words + 5.5
    return y + em * 0.3 + 1.2


def plain_list(sheet: Sheet, entries: Sequence[Entry], left: float, top: float, width: float) -> float:
    """Set lettered lines in one column at a place of the drawing's choosing; return the y below them."""
    for entry in entries:
        top = _entry(sheet, entry, left, top, width)
    return top


def key_round(sheet: Sheet, entries: Sequence[Entry], column: float, top: float, below: float) -> float:
    """Set the key from `column` beside what is drawn where there is room, or under it; return the y below."""
    if not sheet.narrow and sheet.width - column >= min(_LEAST_COLUMN, list_width(sheet, entries)):
        return max(below, plain_list(sheet, entries, column, top, sheet.width - column - 4.0))
    return key(sheet, entries, below + 3.0)
