"""The user folder that a path on the command line means."""

from __future__ import annotations

import os
from pathlib import Path

from generator.cli.wrong_use import WrongUse

METHODS = "methods"


def user_folder(path: Path) -> Path:
    """The folder that holds `methods/`: `path` itself, or the nearest one above it.

    It is named as `path` was: from the root, or from where the user is. Raises WrongUse when there is nothing
    at `path` or no `methods/` about it.
    """
    if not path.exists():
        raise WrongUse("path-missing", path=path)
    whole = path.absolute()
    for folder in (whole, *whole.parents):
        if (folder / METHODS).is_dir():
            return folder if path.is_absolute() else Path(os.path.relpath(folder))
    raise WrongUse("no-methods-folder", folder=path)
