"""One spelling in bytes for any plain value, so that equal inputs hash alike in every run."""

from __future__ import annotations

import dataclasses
import json
from collections.abc import Mapping
from decimal import Decimal
from pathlib import PurePath


def canonical(value: object) -> bytes:
    """`value` as bytes: text, numbers, decimals, paths, sequences, mappings, dataclasses and nothing else.

    Mappings lose their order, dataclasses keep their name. Raises TypeError for anything whose spelling
    might differ between two runs.
    """
    return json.dumps(value, default=_spell, sort_keys=True, ensure_ascii=False, allow_nan=False).encode()


def _spell(value: object) -> object:
    if isinstance(value, PurePath):
        return {"path": str(value)}
    if isinstance(value, Decimal):
        return {"decimal": str(value)}
    if isinstance(value, Mapping):
        return dict(value)
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        fields = {field.name: getattr(value, field.name) for field in dataclasses.fields(value)}
        return {type(value).__name__: fields}
    if isinstance(value, frozenset | set):
        return sorted(value)
    raise TypeError(f"{type(value).__name__} has no canonical spelling")
