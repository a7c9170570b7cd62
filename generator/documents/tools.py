"""A tool as lists name it: with its noise and vibration, marked where the value is assumed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Final

from generator.model.catalogue import Tool
from generator.units import print_value
from generator.wording import Language

_FACTS: Final[Mapping[tuple[str, bool], str]] = {
    ("noise", False): "noise %(value)s",
    ("noise", True): "noise %(value)s, assumed",
    ("vibration", False): "vibration %(value)s",
    ("vibration", True): "vibration %(value)s, assumed",
}


def tool_told(tool: Tool, language: Language) -> str:
    """The tool's label, followed by the exposure values it has, each marked if nobody measured it."""
    facts = ", ".join(_facts(tool, language))
    if not facts:
        return tool.label.value
    return language.say("%(tool)s (%(facts)s)", tool=tool.label.value, facts=facts)


def _facts(tool: Tool, language: Language) -> Iterator[str]:
    assumed = {word.value for word in tool.assumed}
    for fact, amount in (("noise", tool.noise), ("vibration", tool.vibration)):
        if amount is not None:
            value = print_value(amount.value).text("\u2009")
            yield language.say(_FACTS[fact, fact in assumed], value=value)
