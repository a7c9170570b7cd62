"""Every calculator, and every drawing that a step may ask for, is seen at work in the demonstration."""

from __future__ import annotations

import re

from generator.drawings import DRAWINGS
from generator.drawings.orders import BENCH_FORMS
from generator.quantities.calculator import registered
from generator.shipped import shipped

# Ordered by documents themselves, whatever the steps ask for.
ORDERED_BY_DOCUMENTS = {"cutting_plan", "day_dose", "programme", *BENCH_FORMS.values()}
METHODS = "\n".join(path.read_text(encoding="utf-8") for path in shipped("methods").glob("*.yaml"))


def test_every_calculator_has_its_place() -> None:
    assert registered().keys() - set(re.findall(r"(\w+)\(", METHODS)) == set()


def test_every_drawing_is_shown_by_a_step_or_ordered_by_a_document() -> None:
    assert DRAWINGS.keys() - set(re.findall(r"show: (\w+)", METHODS)) == ORDERED_BY_DOCUMENTS
