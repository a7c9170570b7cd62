"""The colours of a theme by name: those of its `tokens.css`, and over them those of its `theme.yaml`."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Literal

from generator.rendering.themes import Theme

Mode = Literal["light", "dark"]
MODES: tuple[Mode, ...] = ("light", "dark")
_TOKEN = re.compile(r"--([a-z][a-z-]*):\s*(#[0-9A-Fa-f]{6})\s*;")
_PARTS = re.compile(r"prefers-color-scheme:\s*dark|@media print")


def colours(style: str, mode: Mode) -> Mapping[str, str]:
    """The colours that a style sheet gives on a screen of this mode, by name."""
    light, dark = (*_PARTS.split(style), "", "")[:2]
    found = dict(_TOKEN.findall(light))
    return found | dict(_TOKEN.findall(dark)) if mode == "dark" else found


def screen_colours(theme: Theme, mode: Mode) -> Mapping[str, str]:
    """The colours of the theme's pages on a screen of this mode, by name."""
    return {**colours(theme.text("tokens.css"), mode), **dict(theme.own_colours(mode))}


def screen_rules(theme: Theme) -> str:
    """The theme's own colours as rules that stand after `tokens.css`; they never reach the printer."""
    return "\n".join(_rule(theme, mode) for mode in MODES if theme.own_colours(mode))


def _rule(theme: Theme, mode: Mode) -> str:
    said = "".join(f"--{name}:{colour};" for name, colour in theme.own_colours(mode))
    return f"@media screen and (prefers-color-scheme: {mode}){{:root{{{said}}}}}"


def print_rules(theme: Theme) -> str:
    """The firm's colour on paper; empty where the house gives none."""
    return f":root{{--blue:{theme.accent};}}" if theme.accent else ""
