"""A sheet printed to PDF, and what the pages of a theme share."""

from __future__ import annotations

import base64
import hashlib
import json
from collections.abc import Mapping
from dataclasses import dataclass

from generator.publishing.machine import require_text_engines
from generator.rendering.themes import Theme


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """The HTML of a sheet and the theme it is printed by."""

    html: str
    theme: Theme


def print_sheet(sheet: Sheet) -> bytes:
    """The sheet as PDF. Raises MachineLacks where the text engine is missing."""
    require_text_engines()
    from generator.rendering.pdf import render_pdf

    return render_pdf(sheet.html, sheet.theme)


def make_assets(theme: Theme) -> bytes:
    """The files that every page of the theme asks for."""
    from generator.rendering.assets import theme_assets

    whole = {name: base64.b64encode(content).decode() for name, content in theme_assets(theme).items()}
    return json.dumps(whole).encode()


def assets(made: bytes) -> Mapping[str, bytes]:
    """The files again, by their names in the assets folder."""
    return {name: base64.b64decode(content) for name, content in json.loads(made).items()}


def hash_of_files(theme: Theme) -> str:
    """A hash over the names and contents of everything the theme rests on, and what it was given to wear."""
    whole = hashlib.sha256(repr((theme.light, theme.dark, theme.labels, theme.accent)).encode())
    for path in theme.files():
        whole.update(f"{path.name}\0".encode() + hashlib.sha256(path.read_bytes()).digest())
    return whole.hexdigest()
