"""The user folder that a path on the command line means."""

from __future__ import annotations

from pathlib import Path

from generator.cli.wrong_use import WrongUse

METHODS = "methods"


def user_folder(path: Path) -> Path:
    """The folder that holds `methods/`: `path` itself, or the nearest one above a file or folder inside it.

    Raises WrongUse when there is nothing at `path` or no `methods/` about it.
    """
    if not path.exists():
        raise WrongUse("path-missing", path=path)
    for folder in (path, *path.parents):
        if (folder / METHODS).is_dir():
            return folder
    raise WrongUse("no-methods-folder", folder=path)
