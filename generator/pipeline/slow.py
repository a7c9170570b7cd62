"""The slow pure steps of the line, as tasks for the crew: drawings, sheets and what the pages of a theme share."""

from __future__ import annotations

import base64
import hashlib
import json
from collections.abc import Iterable, Mapping
from dataclasses import asdict, dataclass

from generator.drawings.orders import Order
from generator.drawings.svg import Picture
from generator.publishing.crew import Crew, Task
from generator.publishing.machine import require_text_engines
from generator.rendering.themes import Theme


@dataclass(frozen=True, slots=True, kw_only=True)
class Themed:
    """What is laid out by a theme: the sheet's HTML (empty for assets), the theme, a hash of the theme's files."""

    html: str
    theme: Theme
    files: str


def drawn(orders: Iterable[Order], crew: Crew, stage: str) -> Mapping[Order, Picture]:
    """Each order's finished picture."""
    wanted = tuple(dict.fromkeys(orders))
    made = crew.perform(stage, [Task(step="drawing", work=_draw, of=order) for order in wanted])
    return {order: _picture(picture) for order, picture in zip(wanted, made, strict=True)}


def printed(sheets: Mapping[str, str], theme: Theme, crew: Crew, stage: str) -> Mapping[str, bytes]:
    """Each sheet's PDF, by its name. Raises MachineLacks where the text engine is missing."""
    files = hash_of_files(theme)
    tasks = [
        Task(step="sheet", work=_print, of=Themed(html=html, theme=theme, files=files))
        for html in sheets.values()
    ]
    return dict(zip(sheets, crew.perform(stage, tasks), strict=True))


def shared_by_pages(theme: Theme, crew: Crew, stage: str) -> Mapping[str, bytes]:
    """The files that every page of the theme asks for, by their names in the assets folder."""
    task = Task(step="assets", work=_assets, of=Themed(html="", theme=theme, files=hash_of_files(theme)))
    (made,) = crew.perform(stage, [task])
    return {name: base64.b64decode(content) for name, content in json.loads(made).items()}


def hash_of_files(theme: Theme) -> str:
    """A hash over the names and contents of everything the theme rests on."""
    whole = hashlib.sha256()
    for path in theme.files():
        whole.update(f"{path}\0".encode() + hashlib.sha256(path.read_bytes()).digest())
    return whole.hexdigest()


def _draw(order: Order) -> bytes:
    from generator.drawings.registry import draw

    return json.dumps(asdict(draw(order.name, dict(order.values), order.width))).encode()


def _picture(made: bytes) -> Picture:
    fields = json.loads(made)
    return Picture(**{**fields, "key": tuple((letter, text) for letter, text in fields["key"])})


def _print(sheet: Themed) -> bytes:
    require_text_engines()
    from generator.rendering.pdf import render_pdf

    return render_pdf(sheet.html, sheet.theme)


def _assets(of: Themed) -> bytes:
    from generator.rendering.assets import theme_assets

    whole = {name: base64.b64encode(content).decode() for name, content in theme_assets(of.theme).items()}
    return json.dumps(whole).encode()
