"""What lies behind the text of every sheet, drawn on the first and shown again on the others.

The rod has some three hundred strokes and figures; drawn anew they would be a good part of a sheet's work.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

# The first sheet alone gets the background; `repeat_background` gives it to the others.
FIRST_ALONE = "@page :nth(n + 2) { background-image: none !important }"
_SAVE, _RESTORE = b"q", b"Q"


def repeat_background(document: Any, pdf: Any) -> None:
    """Show the background of the first sheet on each other: a finisher for WeasyPrint.

    The drawing itself is in the resources that all sheets share; it stays marked as an artifact.
    """
    if not any(layer.image for layer in document.pages[0]._page_box.background.layers):
        return
    first, *others = _contents(pdf)
    start, end = _background(first)
    for content in others:
        content[start:start] = first[start:end]


def _contents(pdf: Any) -> Iterator[list[Any]]:
    """The content of each sheet, an operator or a line to an entry."""
    for number in pdf.pages["Kids"][::3]:
        stream = int(pdf.objects[number]["Contents"].split()[0])
        yield pdf.objects[stream].stream


def _background(content: Sequence[Any]) -> tuple[int, int]:
    """Where the background stands: the first that is saved and restored inside the scaled sheet."""
    start = content.index(_SAVE, content.index(_SAVE) + 1)
    depth = 0
    for place in range(start, len(content)):
        depth += (content[place] == _SAVE) - (content[place] == _RESTORE)
        if depth == 0:
            return start, place + 1
    raise ValueError("what is saved on the first sheet is not restored")
