"""The tables of this room: YAML data that is ours, so that a fault in it is raised and never logged."""

from __future__ import annotations

from importlib.resources import files
from typing import Any

import yaml


def table(name: str) -> Any:
    """The content of `name`.yaml beside this module."""
    text = files("generator.safety").joinpath(f"{name}.yaml").read_text(encoding="utf-8")
    return yaml.load(text, Loader=getattr(yaml, "CSafeLoader", yaml.SafeLoader))
