"""A day's dose of noise and of vibration: a bar a kind, stacked of what each tool adds."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from generator.drawings.clipping import Box, rectangle
from generator.drawings.dosed import DoseMark, DosePart
from generator.drawings.hatches import Hatch
from generator.drawings.keys import LETTERS, Entry, key, margin, paragraph, title
from generator.drawings.lettering import cap, extent
from generator.drawings.pens import CUT_NEW, HATCH_STANDING, THUMBNAIL, TINT, VISIBLE, Pen
from generator.drawings.registry import Drawn, drawing
from generator.drawings.sheet import Outline, Sheet
from generator.drawings.words import say

MOST_PARTS = 8
_HIGH = 9.0
_ROW = 5.0
_HATCHES = tuple(
    Hatch(kind="lines", spacing=spacing, slopes=slopes, pen=Pen(width=0.15, colour=HATCH_STANDING))
    for spacing, slopes in ((2.4, (45.0,)), (1.6, (-45.0,)), (2.8, (45.0, -45.0)))
)


@drawing
def day_dose(
    width: float,
    *,
    day: str,
    noise: tuple[DosePart, ...] = (),
    noise_marks: tuple[DoseMark, ...] = (),
    noise_total: str = "",
    vibration: tuple[DosePart, ...] = (),
    vibration_marks: tuple[DoseMark, ...] = (),
    vibration_total: str = "",
) -> Drawn:
    """A day's dose, stacked by tool.

    `day` names the day. Up to eight parts of a kind, each more than 0 points, and marks in rising order; a
    kind without parts is left out. Raises ValueError for no parts at all, too many, or one without points.
    """
    _check((*noise, *vibration), noise, vibration)
    sheet = Sheet(width=width)
    words = say("A day's dose, %(day)s", day=day)
    bottom = title(sheet, words)
    letters = iter(LETTERS)
    entries: list[Entry] = []
    for total, parts, marks in (
        (noise_total, noise, noise_marks),
        (vibration_total, vibration, vibration_marks),
    ):
        if parts:
            bottom, told = _bar(sheet, total, parts, marks, bottom + 2.0, letters)
            entries += told
    bottom = key(sheet, entries, bottom + 2.0)
    sheet.height = math.ceil(max(sheet.bottom(), bottom) + 3.0)
    alt = _alt(words, ((noise_total, noise, noise_marks), (vibration_total, vibration, vibration_marks)))
    return Drawn(sheet=sheet, title=words, alt=alt)


def _check(parts: Sequence[DosePart], *kinds: Sequence[DosePart]) -> None:
    if not parts:
        raise ValueError("a dose without any part cannot be drawn")
    if any(len(kind) > MOST_PARTS for kind in kinds):
        raise ValueError(f"at most {MOST_PARTS} tools can be drawn in one bar")
    if any(part.points <= 0 for part in parts):
        raise ValueError("a part of a dose has no points")


def _bar(
    sheet: Sheet,
    total: str,
    parts: Sequence[DosePart],
    marks: Sequence[DoseMark],
    top: float,
    letters: Iterator[str],
) -> tuple[float, list[Entry]]:
    """Draw one bar under its words and its marks; return the y below it and its lines of the key."""
    left = margin(sheet)
    if not sheet.thumbnail:
        top = paragraph(sheet, total, left, top, sheet.width - 2 * left) + 1.0
    scale = _scale(sheet, parts, marks)
    upper = top + (0.0 if sheet.thumbnail else _ROW * len(marks) + 1.5)
    lower = upper + (_HIGH if not sheet.thumbnail else 3.0)
    for row, mark in enumerate(marks):
        _mark(sheet, mark, left + mark.points * scale, top + _ROW * row, lower)
    return lower + 2.0, _parts(sheet, parts, scale, upper, lower, letters)


def _scale(sheet: Sheet, parts: Sequence[DosePart], marks: Sequence[DoseMark]) -> float:
    """Paper mm a point, so that the bar and the words of every mark stay on the sheet."""
    room = sheet.width - 2 * margin(sheet)
    most = max(sum(part.points for part in parts), *(mark.points for mark in marks), 0.0)
    scales = [room / most]
    if not sheet.thumbnail:
        wide = (extent(mark.text, sheet.em("note"))[0] + 2.0 for mark in marks)
        scales += [(room - each) / mark.points for each, mark in zip(wide, marks, strict=True) if mark.points]
    return min(scales)


def _mark(sheet: Sheet, mark: DoseMark, x: float, top: float, lower: float) -> None:
    """A mark of a smaller value stands in a higher row, so that its line passes no other words."""
    sheet.line(((x, top), (x, lower + 1.2)), CUT_NEW if not sheet.thumbnail else THUMBNAIL, "dimension")
    sheet.text(mark.text, x + 1.2, top + cap(sheet.em("note")) + 0.4, "note")


def _parts(
    sheet: Sheet,
    parts: Sequence[DosePart],
    scale: float,
    upper: float,
    lower: float,
    letters: Iterator[str],
) -> list[Entry]:
    x, entries = margin(sheet), []
    for place, part in enumerate(parts):
        letter, wide = next(letters), part.points * scale
        box = rectangle(x, upper, x + wide, lower)
        if place % 2 == 0:
            sheet.fill(box, TINT)
        sheet.hatch(box, _HATCHES[place % len(_HATCHES)])
        sheet.line(box, VISIBLE if not sheet.thumbnail else THUMBNAIL, closed=True)
        _letter(sheet, letter, x, wide, upper, lower)
        name = f"part {letter}"
        real = rectangle(0.0, 0.0, part.points, 1.0)
        sheet.outlines[name] = Outline(name=name, real=real, paper=box, scale=scale)
        entries.append(Entry(letter=letter, text=part.text))
        x += wide
    return entries


def _letter(sheet: Sheet, letter: str, x: float, wide: float, upper: float, lower: float) -> None:
    """The letter in its part, where it clears the part's edges and every mark; the key goes from the left."""
    em = sheet.em("letter")
    across, high = extent(letter, em, "bold")[0], cap(em)
    if sheet.thumbnail or wide < across + 1.6:
        return
    base = (upper + lower + high) / 2
    for at in (0.5, 0.25, 0.75):
        centre = x + wide * at
        box = Box(centre - across / 2, base - high, centre + across / 2, base)
        if sheet.free(box.grown(0.4)):
            sheet.text(letter, centre, base, "letter", anchor="middle", weight="bold")
            return


def _alt(words: str, kinds: Sequence[tuple[str, Sequence[DosePart], Sequence[DoseMark]]]) -> str:
    told = [f"{words}."]
    for total, parts, marks in kinds:
        if parts:
            each = "; ".join(part.text for part in parts)
            held = "; ".join(mark.text for mark in marks)
            told.append(
                say(
                    "%(total)s Made up of: %(each)s. Held against: %(held)s.",
                    total=total,
                    each=each,
                    held=held,
                )
            )
    return " ".join(told)
