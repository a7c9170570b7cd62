"""Where a theme's files are: the user's folder first, then the shipped default, wheel or checkout alike."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from generator.shipped import shipped

DEFAULT = "default"


class ThemeMissing(LookupError):
    """No theme of that name; carries the name and the names there are."""

    def __init__(self, name: str, known: tuple[str, ...]) -> None:
        super().__init__(name)
        self.name, self.known = name, known


@dataclass(frozen=True, slots=True, kw_only=True)
class Theme:
    """A theme by name with the folders that hold it; a file missing in the first is sought in the next.

    `light` and `dark` are its own colours by name, `labels` its own words by the sentence they stand for,
    `accent` the firm's colour, empty where the house gives none.
    """

    name: str
    folders: tuple[Path, ...]
    light: tuple[tuple[str, str], ...] = ()
    dark: tuple[tuple[str, str], ...] = ()
    labels: tuple[tuple[str, str], ...] = ()
    accent: str = ""

    def own_colours(self, mode: Literal["light", "dark"]) -> tuple[tuple[str, str], ...]:
        """The theme's own colours of a mode, each with its name."""
        return self.light if mode == "light" else self.dark

    def file(self, name: str) -> Path:
        """The file of this theme called `name`; FileNotFoundError when no folder has it."""
        for folder in self.folders:
            if (folder / name).is_file():
                return folder / name
        raise FileNotFoundError(f"{name} in theme {self.name}")

    def text(self, name: str) -> str:
        """The text of that file."""
        return self.file(name).read_text(encoding="utf-8")

    def further(self, name: str) -> str:
        """The text of a file that a theme may have beside the default's; empty where it has none."""
        return self.text(name) if any((folder / name).is_file() for folder in self.folders) else ""

    def shown(self, path: Path, user_root: Path) -> str:
        """A file of the theme as reports print it: from the user's folder where it stands in it."""
        root = user_root.resolve()
        within = path.resolve().is_relative_to(root)
        return (user_root / path.resolve().relative_to(root)).as_posix() if within else path.as_posix()

    def icons(self) -> tuple[str, ...]:
        """The names of all icons, of every folder of the theme."""
        found = {path.stem for folder in self.folders for path in (folder / "icons").glob("*.svg")}
        return tuple(sorted(found))

    def files(self) -> tuple[Path, ...]:
        """Every file the theme rests on, in order, for keys of remembered work."""
        found = (path for folder in self.folders for path in sorted(folder.rglob("*")))
        return tuple(path for path in found if path.is_file())


def theme_folder(name: str, user_root: Path | None = None) -> Path:
    """The folder of a named theme, the user's before the shipped one; raises ThemeMissing."""
    roots = ([user_root / "themes"] if user_root else []) + [shipped("themes")]
    for root in roots:
        if (root / name).is_dir():
            return (root / name).resolve()
    known = {folder.name for root in roots if root.is_dir() for folder in root.iterdir() if folder.is_dir()}
    raise ThemeMissing(name, tuple(sorted(known)))


def load_theme(name: str = DEFAULT, user_root: Path | None = None) -> Theme:
    """A theme ready for use: its own folder, backed by the shipped default."""
    folders = (theme_folder(name, user_root), shipped("themes") / DEFAULT)
    return Theme(name=name, folders=tuple(dict.fromkeys(folders)))
