"""The syntax of formulas: text to a bounded tree with spans. Nothing is evaluated or looked up here."""

from __future__ import annotations

from generator.formulas.parser import parse_formula
from generator.formulas.tree import (
    Argument,
    Binary,
    Call,
    Compare,
    Formula,
    Minus,
    Name,
    Number,
    calls_in,
    names_in,
    nodes_in,
)

__all__ = [
    "Argument",
    "Binary",
    "Call",
    "Compare",
    "Formula",
    "Minus",
    "Name",
    "Number",
    "calls_in",
    "names_in",
    "nodes_in",
    "parse_formula",
]
