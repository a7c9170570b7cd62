"""A programme: each step of the work as a bar over hours or days, with what it waits for."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from generator.drawings.clipping import Points, rectangle
from generator.drawings.hatches import Hatch
from generator.drawings.keys import margin, notes, title
from generator.drawings.lettering import cap, extent, wrapped
from generator.drawings.pens import (
    CUT_NEW,
    HATCH_STANDING,
    HIDDEN,
    NOTES,
    RULE_FINE,
    THUMBNAIL,
    TINT,
    VISIBLE,
    Pen,
)
from generator.drawings.registry import Drawn, drawing
from generator.drawings.sheet import Outline, Sheet
from generator.drawings.timed import TimedBar, WorkingDay
from generator.drawings.words import say

MOST_BARS = 60
_CLOCK_DAY = 1440.0
_NIGHT = 0.1
"""How wide a night is drawn, as a share of the working day."""
_HOURS = (15, 30, 60, 120, 240, 480, 1440, 2880, 10080)
_DAYS = (1, 2, 5, 10, 20, 50, 100)
_COLUMN = 62.0
_HIGH = 4.4
_GAP = 2.6
_LEAST_BAR = 0.6
_DECIDES = Hatch(kind="lines", spacing=1.6, slopes=(45.0,), pen=Pen(width=0.15, colour=HATCH_STANDING))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Chart:
    """Where time falls on the sheet: `left` to `right` hold the whole of it, nights drawn narrow."""

    sheet: Sheet
    left: float
    right: float
    day: float
    end: float

    def x(self, minutes: float) -> float:
        """Where a clock time falls."""
        return self.left + self._along(minutes) * (self.right - self.left) / self._along(self.end)

    def _along(self, minutes: float) -> float:
        days, rest = divmod(minutes, _CLOCK_DAY)
        night = max(rest - self.day, 0.0) / max(_CLOCK_DAY - self.day, 1.0) * self._night
        return days * (self.day + self._night) + min(rest, self.day) + night

    @property
    def _night(self) -> float:
        return self.day * _NIGHT if self.day < _CLOCK_DAY else 0.0

    @property
    def in_days(self) -> bool:
        """Whether the axis counts working days."""
        return self.day < _CLOCK_DAY and self.end > self.day

    def ticks(self) -> tuple[tuple[float, str], ...]:
        """The clock times that are marked, each with its words."""
        steps = _DAYS if self.in_days else _HOURS
        per = _CLOCK_DAY if self.in_days else 1.0
        for step in steps:
            marks = _marks(self.end, step * per, self.in_days)
            if self._apart(marks):
                return marks
        return _marks(self.end, steps[-1] * per, self.in_days)[:1]

    def _apart(self, marks: Sequence[tuple[float, str]]) -> bool:
        places = [self.words_at(at, words) for at, words in marks]
        return all(first[1] + 1.5 <= second[0] for first, second in pairwise(places))

    def words_at(self, minutes: float, words: str) -> tuple[float, float]:
        """Where the words of a mark begin and end: at it, or against the sheet's edge."""
        wide = extent(words, self.sheet.em("figure"))[0]
        start = min(self.x(minutes), self.sheet.width - 0.5 - wide)
        return start, start + wide


def _marks(end: float, step: float, in_days: bool) -> tuple[tuple[float, str], ...]:
    count = int(end // step) + 1
    times = [number * step for number in range(count) if number * step < end or number == 0]
    return tuple((at, f"day {at / _CLOCK_DAY + 1:.0f}" if in_days else _hours(at)) for at in times)


def _hours(minutes: float) -> str:
    whole, rest = divmod(int(minutes), 60)
    return f"{whole}:{rest:02d}"


@drawing
def programme(
    width: float,
    *,
    bars: tuple[TimedBar, ...],
    day: WorkingDay | None = None,
    outcome: str = "",
) -> Drawn:
    """Programme of the steps over hours or days.

    1 to 60 bars in clock minutes from the start of the first day. Without a working day time runs on; with
    one, the nights between are drawn narrow. `outcome` is a sentence for the notes. Raises ValueError for no
    bars, too many, or one that ends before it starts.
    """
    _check(bars)
    sheet = Sheet(width=width)
    chart = _chart(sheet, bars, day)
    words = say("Programme, in working days") if chart.in_days else say("Programme, in hours and minutes")
    top = title(sheet, words)
    bottom = _rows(chart, bars, _axis(chart, top))
    if not sheet.thumbnail:
        notes(sheet, _said(bars, day, outcome, chart), bottom + 2.0, NOTES)
    sheet.height = math.ceil(max(sheet.bottom(), bottom) + 3.0)
    return Drawn(sheet=sheet, title=words, alt=_alt(bars, words, outcome))


def _check(bars: Sequence[TimedBar]) -> None:
    if not 1 <= len(bars) <= MOST_BARS:
        raise ValueError(f"1 to {MOST_BARS} steps can be drawn on one sheet, not {len(bars)}")
    for bar in bars:
        if not 0 <= bar.start.minutes <= bar.finish.minutes <= bar.ready.minutes:
            raise ValueError(f"step {bar.number} ends before it starts")


def _chart(sheet: Sheet, bars: Sequence[TimedBar], day: WorkingDay | None) -> _Chart:
    edge = 2.0 if sheet.thumbnail else margin(sheet)
    column = 0.0 if sheet.narrow else _COLUMN
    return _Chart(
        sheet=sheet,
        left=edge + column,
        right=sheet.width - edge - (0.0 if sheet.thumbnail else 1.0),
        day=day.minutes if day else _CLOCK_DAY,
        end=max(*(bar.ready.minutes for bar in bars), 1.0),
    )


def _axis(chart: _Chart, top: float) -> float:
    """The marks of time with their words; below them the rows begin."""
    sheet = chart.sheet
    if sheet.thumbnail:
        return top
    base = top + 2.0 + cap(sheet.em("figure"))
    for at, words in chart.ticks():
        sheet.text(words, chart.words_at(at, words)[0], base, "figure")
    return base + 2.0


def _rows(chart: _Chart, bars: Sequence[TimedBar], top: float) -> float:
    for bar in bars:
        top = _row(chart, bar, top)
    return top


def _row(chart: _Chart, bar: TimedBar, top: float) -> float:
    sheet = chart.sheet
    if sheet.thumbnail:
        _draw_bar(chart, bar, top, 1.6)
        return top + 2.4
    below = _lettering(chart, bar, top)
    at = below if sheet.narrow else top
    _grid(chart, bar, at - 0.4, max(at + _HIGH, below) + (0.4 if sheet.narrow else 1.2))
    _draw_bar(chart, bar, at, _HIGH)
    return max(at + _HIGH, below) + _GAP


def _lettering(chart: _Chart, bar: TimedBar, top: float) -> float:
    """The step's number, title and time: beside its bar on paper, above it on a phone."""
    sheet, em = chart.sheet, chart.sheet.em("note")
    left, indent = margin(sheet), extent("00 ", em, "bold")[0]
    room = (sheet.width - left if sheet.narrow else chart.left - 3.0) - left - indent
    y = top + cap(em) + 0.6
    sheet.text(bar.number, left, y, "note", weight="bold")
    for line in wrapped(f"{bar.title}, {bar.work}", em, room):
        sheet.text(line, left + indent, y, "note")
        y += 5.2 if sheet.narrow else 4.7
    return y - cap(em)


def _grid(chart: _Chart, bar: TimedBar, top: float, bottom: float) -> None:
    """The marks of time carried down the row, but not through its bar."""
    start, ready = chart.x(bar.start.minutes), chart.x(bar.ready.minutes)
    for at, _ in chart.ticks():
        x = chart.x(at)
        if not start < x < ready:
            chart.sheet.line(((x, top), (x, bottom)), RULE_FINE, "dimension")


def _draw_bar(chart: _Chart, bar: TimedBar, top: float, high: float) -> None:
    sheet = chart.sheet
    start, finish = chart.x(bar.start.minutes), chart.x(bar.finish.minutes)
    finish = max(finish, start + _LEAST_BAR)
    box = rectangle(start, top, finish, top + high)
    if bar.critical:
        sheet.fill(box, TINT)
        sheet.hatch(box, _DECIDES)
    thick = THUMBNAIL if sheet.thumbnail else CUT_NEW if bar.critical else VISIBLE
    sheet.line(box, thick, closed=True)
    sheet.outlines[f"step {bar.number}"] = Outline(
        name=f"step {bar.number}", real=_real(bar), paper=box, scale=(finish - start)
    )
    if bar.ready.minutes > bar.finish.minutes:
        _wait(chart, bar, finish, top + high / 2, high / 3)


def _real(bar: TimedBar) -> Points:
    return rectangle(bar.start.minutes, 0.0, bar.finish.minutes, 1.0)


def _wait(chart: _Chart, bar: TimedBar, start: float, middle: float, half: float) -> None:
    ready = chart.x(bar.ready.minutes)
    chart.sheet.line(((start, middle), (ready, middle)), HIDDEN)
    chart.sheet.line(((ready, middle - half), (ready, middle + half)), VISIBLE)


def _said(bars: Sequence[TimedBar], day: WorkingDay | None, outcome: str, chart: _Chart) -> tuple[str, ...]:
    lines = [outcome] if outcome else []
    if any(bar.ready.minutes > bar.finish.minutes for bar in bars):
        lines.append(say("Broken line: waiting, with nobody at work."))
    if any(bar.critical for bar in bars):
        lines.append(say("Hatched, in a thick line: when this step is late, so is the end."))
    if chart.in_days and day:
        lines.append(say("A working day is %(day)s; the nights between are drawn narrow.", day=day.text))
    return tuple(lines)


def _alt(bars: Sequence[TimedBar], words: str, outcome: str) -> str:
    steps = (
        say(
            "Step %(bar)s, %(title)s: %(work)s, from %(start)s to %(finish)s%(minutes)s%(critical)s.",
            bar=bar.number,
            title=bar.title,
            work=bar.work,
            start=bar.start.text,
            finish=bar.finish.text,
            minutes=say(", ready at %(ready)s", ready=bar.ready.text)
            if bar.ready.minutes > bar.finish.minutes
            else "",
            critical=say(", decides the end") if bar.critical else "",
        )
        for bar in bars
    )
    return " ".join((f"{words}.", *steps, *((outcome,) if outcome else ())))
