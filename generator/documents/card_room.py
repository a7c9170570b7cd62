"""How much of a card's one side its words take, and what is left out where one side is too small.

Heights in mm follow the sizes that the print style gives a card; a test prints cards and counts the pages.
"""

from __future__ import annotations

import re
from dataclasses import replace

from generator.documents.blocks import BenchCard, CardCheck, Figure, Prose
from generator.drawings.lettering import extent, wrapped

SIDE, WIDE = 269.0, 172.0
_TEXT, _LINE, _TITLE = 4.233, 4.763, 7.76
_MARKS = re.compile(r"[*_]{1,2}|\[|\]\([^)]*\)")
_BESIDE = 54.0
_HEAD, _HEADING, _COLUMN_HEAD, _ROW = 14.4, 6.2, 8.8, 8.8
_HOLDS_HEAD, _HOLD = 7.7, 9.9
_BOX, _IN_BOX, _GAP = 3.6, 164.0, 1.6
_STOP_HEADING = "MM What stops the job"
_LABEL_COLUMN = {1: 106.0, 2: 86.0, 3: 66.0, 4: 50.0}
# Bold words are wider than the plain ones they are measured as.
_BOLD = 0.99


def fitted(card: BenchCard, figure: Figure | None) -> BenchCard | None:
    """The fullest form of a card that stands on one side of paper; None where even the barest does not."""
    drawn = (replace(card, figure=figure),) if figure else ()
    forms = (*drawn, card, replace(card, close=True), replace(card, close=True, order=()))
    return next((form for form in forms if height(form) <= SIDE), None)


def height(card: BenchCard) -> float:
    """The height of a card as it is printed, in mm, from above never by more than a line or two."""
    parts = (_top(card), _order(card), _middle(card), _holds(card), _stop(card))
    return sum(parts) + _GAP * (sum(1 for part in parts if part) - 1)


def _top(card: BenchCard) -> float:
    columns = len(card.columns)
    label = _LABEL_COLUMN[columns]
    column = (WIDE - label) / columns - 3.2
    names = max(_lines(one.name, column) for one in card.columns)
    rows = sum(max(_ROW, _set(f"{row.label} {row.note}", label - 1.6) + 1.0) for row in card.rows)
    wide = extent(card.title, _TITLE, "bold")[0]
    titles = len(wrapped(card.title, _TITLE, WIDE - 26, "bold")) if wide > WIDE - 26 else 1
    return _HEAD + (titles - 1) * 8.8 + _COLUMN_HEAD + names * _LINE + rows


def _order(card: BenchCard) -> float:
    return _set("Order " + " ".join(card.order), WIDE) if card.order else 0.0


def _middle(card: BenchCard) -> float:
    if card.close:
        return _set("Check each: " + "; ".join(map(_spoken, card.checks)), WIDE) if card.checks else 0.0
    beside = _BESIDE if card.figure else WIDE
    checks = sum(_set(_spoken(check), beside) + 0.9 for check in card.checks)
    checks += _HEADING if checks else 0.0
    if card.figure is None:
        return checks
    key = " ".join(f"{item.letter} {item.text}" for item in card.figure.items)
    return max(
        checks + (_set(key, _BESIDE) + 2.0 if key else 0.0), card.figure.picture.height_mm + _HEADING + 0.5
    )


def _spoken(check: CardCheck) -> str:
    return f"{check.what} {check.limit}"


def _holds(card: BenchCard) -> float:
    return _HOLDS_HEAD + _HOLD * len(card.holds) if card.holds else 0.0


def _stop(card: BenchCard) -> float:
    calls = " ".join(f"{fact.label}: {fact.text}" for fact in card.emergency)
    told = _set(f"{_STOP_HEADING} " + "; ".join(card.stop_if), _IN_BOX)
    return _BOX + told + (_set(calls, _IN_BOX) if calls else 0.0)


def _set(text: Prose, wide: float) -> float:
    return _LINE * _lines(text, wide * _BOLD)


def _lines(text: Prose, wide: float) -> int:
    plain = _MARKS.sub("", text)
    return len(wrapped(plain, _TEXT, wide)) if plain and extent(plain, _TEXT)[0] > wide else 1
