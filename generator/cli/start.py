"""A new user folder: the demo method with its job, survey and house rules, ready to be changed."""

from __future__ import annotations

import shutil
from pathlib import Path

from generator.cli.wrong_use import WrongUse
from generator.problems import MachineLacks
from generator.shipped import shipped


def start(folder: Path) -> tuple[Path, ...]:
    """Lay the demo out in `folder` and return the files laid.

    The folder appears whole or not at all. Raises WrongUse when it holds something already, MachineLacks
    when it cannot be written.
    """
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise WrongUse("folder-not-empty", folder=folder)
    try:
        _lay(folder.absolute())
    except OSError as error:
        raise MachineLacks("folder-unwritable", folder=folder, reason=error.strerror or str(error)) from error
    return tuple(sorted(path for path in folder.rglob("*") if path.is_file()))


def _lay(folder: Path) -> None:
    folder.parent.mkdir(parents=True, exist_ok=True)
    building = folder.with_name(f".{folder.name}-starting")
    shutil.rmtree(building, ignore_errors=True)
    try:
        shutil.copytree(
            shipped("methods"), building / "methods", copy_function=_copy, ignore=shutil.ignore_patterns(".*")
        )
        building.replace(folder)
    finally:
        shutil.rmtree(building, ignore_errors=True)


def _copy(source: str, target: str) -> None:
    """The contents alone: the new files are the user's own, whatever the shipped ones allow."""
    Path(target).write_bytes(Path(source).read_bytes())
