"""What a tool or material counts as for a rule: its key, its kind, what it does, what it is likened to."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TypeVar

from generator.model.catalogue import (
    DUSTS,
    MATERIAL_HAZARDS,
    MATERIAL_KINDS,
    TOOL_EFFECTS,
    TOOL_KINDS,
    Catalogue,
    Material,
    Tool,
)

E = TypeVar("E", Tool, Material)


def tool_words(key: str, catalogue: Catalogue) -> frozenset[str]:
    """The words of rules that a tool answers to; only its own key when the catalogue does not know it."""
    return frozenset({key}).union(*map(_tool, _likened(key, catalogue.tools)))


def material_words(key: str, catalogue: Catalogue) -> frozenset[str]:
    """The words of rules that a material answers to; only its own key when the catalogue does not know it."""
    return frozenset({key}).union(*map(_material, _likened(key, catalogue.materials)))


def all_tool_words(catalogue: Catalogue) -> frozenset[str]:
    """Every word by which a rule may name tools."""
    return catalogue.tool_keys.union(TOOL_KINDS, TOOL_EFFECTS)


def all_material_words(catalogue: Catalogue) -> frozenset[str]:
    """Every word by which a rule may name materials."""
    return catalogue.material_keys.union(MATERIAL_KINDS, MATERIAL_HAZARDS, map(_dust, DUSTS))


def _likened(key: str, entries: Mapping[str, E]) -> Iterator[E]:
    """The entry, and those it counts as."""
    entry = entries.get(key)
    if entry is not None:
        yield entry
        yield from (entries[other.value] for other in entry.counts_as if other.value in entries)


def _tool(tool: Tool) -> frozenset[str]:
    return frozenset({tool.name.value, tool.kind.value, *(word.value for word in tool.does)})


def _material(material: Material) -> frozenset[str]:
    own = {material.name.value, material.kind.value, *(word.value for word in material.hazards)}
    return frozenset(own | ({_dust(material.dust.value)} if material.dust else set()))


def _dust(kind: str) -> str:
    return f"{kind} dust"
