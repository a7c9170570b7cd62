"""YAML as editors see it, by the core schema of YAML 1.2: `no` is text, `10` a number, `true` a flag."""

from __future__ import annotations

import re
from typing import Any

import yaml

# YAML 1.2.2, section 10.3.2
CORE = (
    ("tag:yaml.org,2002:null", r"null|Null|NULL|~|", [*"nN~", ""]),
    ("tag:yaml.org,2002:bool", r"true|True|TRUE|false|False|FALSE", [*"tTfF"]),
    ("tag:yaml.org,2002:int", r"[-+]?[0-9]+|0o[0-7]+|0x[0-9a-fA-F]+", [*"-+0123456789"]),
    ("tag:yaml.org,2002:float", r"[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?", [*"-+.0123456789"]),
    ("tag:yaml.org,2002:float", r"[-+]?\.(inf|Inf|INF)|\.(nan|NaN|NAN)", [*"-+."]),
)


class CoreLoader(yaml.SafeLoader):
    """PyYAML's loader with the core schema's types alone."""

    yaml_implicit_resolvers: dict[str, Any] = {}  # noqa: RUF012


def _integer(loader: yaml.SafeLoader, node: yaml.ScalarNode) -> int:
    text = node.value.lstrip("+")
    return int(text, 0) if text[:2] in ("0o", "0x") else int(text, 10)


def _float(loader: yaml.SafeLoader, node: yaml.ScalarNode) -> float:
    return float(node.value.lower().replace(".inf", "inf").replace(".nan", "nan"))


for tag, pattern, first in CORE:
    CoreLoader.add_implicit_resolver(tag, re.compile(f"^(?:{pattern})$"), first)
CoreLoader.add_constructor("tag:yaml.org,2002:int", _integer)
CoreLoader.add_constructor("tag:yaml.org,2002:float", _float)


def as_editor_sees(text: str) -> Any:
    """The plain data an editor validates."""
    return yaml.load(text, Loader=CoreLoader)
