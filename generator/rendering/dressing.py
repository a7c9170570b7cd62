"""A theme as the house asks for it: its `theme.yaml` and the firm's colour read, checked and put on."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import replace
from pathlib import Path

from generator.model.house import Company, HouseRules
from generator.model.reading import describe
from generator.model.scalars import Word
from generator.model.tables import Table
from generator.model.theme import ThemeFile
from generator.problems import ProblemLog, nearest
from generator.reading.yaml_nodes import read_yaml
from generator.rendering.contrast import contrast, ratio_words
from generator.rendering.labels import sentences
from generator.rendering.templates import check_templates
from generator.rendering.themes import DEFAULT, Theme, ThemeMissing, load_theme
from generator.rendering.tokens import MODES, Mode, colours, screen_colours

THEME_FILE = "theme.yaml"
PAIRS = (
    ("ink", "paper", 7.0), ("ink", "raised", 7.0), ("ink", "warning-tint", 7.0),
    ("muted", "paper", 4.5), ("muted", "raised", 4.5), ("blue", "paper", 4.5), ("blue", "raised", 4.5),
    ("red", "paper", 4.5), ("red", "raised", 4.5), ("on-blue", "blue", 4.5), ("on-hold", "hold", 7.0),
    ("warning-word", "warning-tint", 4.5), ("drawing-ink", "drawing-paper", 7.0),
    ("drawing-notes", "drawing-paper", 4.5), ("drawing-dimension", "drawing-paper", 4.5),
)  # fmt: skip
"""Text, the ground it stands on, and the least ratio (WCAG 2.2, 1.4.6 for what is read, else 1.4.3)."""
_PLACEHOLDER = re.compile(r"%\((\w+)\)s")


def theme_of(house: HouseRules, folder: Path, log: ProblemLog) -> Theme:
    """The theme that the house asks for, with its own colours and words; faults go to the log."""
    theme = _named(house.theme, folder, log)
    check_templates(theme, folder, log)
    own = _read(theme, folder, log)
    dressed = _dressed(theme, own, log) if own else theme
    return _accented(dressed, house.company, log)


def _named(name: Word | None, folder: Path, log: ProblemLog) -> Theme:
    try:
        return load_theme(name.value if name else DEFAULT, folder)
    except ThemeMissing as missing:
        near, known = nearest(missing.name, missing.known), ", ".join(missing.known)
        log.add("theme-unknown", name.span if name else None, name=missing.name, known=known, nearest=near)
        return load_theme()


def _read(theme: Theme, folder: Path, log: ProblemLog) -> ThemeFile | None:
    path = theme.folders[0] / THEME_FILE
    if not path.is_file():
        return None
    node = read_yaml(path, theme.shown(path, folder), log)
    return describe(ThemeFile, node, log) if node else None


def _dressed(theme: Theme, own: ThemeFile, log: ProblemLog) -> Theme:
    given = {mode: getattr(own.tokens, mode) if own.tokens else Table.empty() for mode in MODES}
    for mode in MODES:
        _check_names(given[mode], log)
    pairs = {mode: tuple((name, word.value) for name, word in given[mode].items()) for mode in MODES}
    labels = tuple((said, word.value) for said, word in own.labels.items())
    dressed = replace(theme, light=pairs["light"], dark=pairs["dark"], labels=labels)
    for mode in MODES:
        _check_contrast(dressed, given[mode], mode, log)
    _check_labels(own.labels, log)
    return dressed


def _check_names(given: Table[Word], log: ProblemLog) -> None:
    known = colours(load_theme().text("tokens.css"), "light")
    for name in given:
        if name not in known:
            near = nearest(name, known)
            log.add("token-unknown", given.place(name), name=name, known=", ".join(known), nearest=near)


def _check_contrast(theme: Theme, given: Table[Word], mode: Mode, log: ProblemLog) -> None:
    """Every pair of which the theme gives one; what it takes from the default has been held against it."""
    found = screen_colours(theme, mode)
    for text, ground, least in PAIRS:
        word = given.get(text) or given.get(ground)
        if word and {text, ground} <= found.keys():
            ratio = contrast(found[text], found[ground])
            if ratio < least:
                log.add(
                    "theme-contrast", word.span, text=text, colour=found[text], ground=ground,
                    other=found[ground], mode=mode, ratio=ratio_words(ratio), least=f"{least:g}",
                )  # fmt: skip


def _check_labels(labels: Table[Word], log: ProblemLog) -> None:
    for said, word in labels.items():
        if said not in sentences():
            log.add("label-unknown", labels.place(said), said=said, nearest=nearest(said, sentences()))
        elif not _fills(word.value, said):
            wanted = ", ".join(found.group() for found in _PLACEHOLDER.finditer(said)) or "%%"
            log.add("label-placeholders", word.span, label=word.value, wanted=wanted)


def _fills(label: str, said: str) -> bool:
    """Whether the label takes exactly the values of the sentence it stands for."""
    names = _PLACEHOLDER.findall(said)
    if sorted(_PLACEHOLDER.findall(label)) != sorted(names):
        return False
    try:
        return bool(label % dict.fromkeys(names, ""))
    except (KeyError, TypeError, ValueError):
        return False


def _accented(theme: Theme, company: Company | None, log: ProblemLog) -> Theme:
    """The theme with the firm's colour in place of its blue: on a light screen, and on paper."""
    if company is None or company.accent is None:
        return theme
    accent, found = company.accent.value, screen_colours(theme, "light")
    ratio, other, name = min(_against(accent, found))
    if ratio < 4.5:
        log.add(
            "accent-contrast", company.accent.span, colour=accent, other=other, ground=name,
            ratio=ratio_words(ratio),
        )  # fmt: skip
        return theme
    light = tuple((dict(theme.light) | {"blue": accent}).items())
    return replace(theme, light=light, accent=accent)


def _against(accent: str, found: Mapping[str, str]) -> Iterator[tuple[float, str, str]]:
    for name in ("paper", "raised", "on-blue"):
        if name in found:
            yield contrast(accent, found[name]), found[name], name
    yield contrast(accent, "#ffffff"), "#ffffff", "white paper"
