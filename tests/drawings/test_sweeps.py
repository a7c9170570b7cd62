"""Every drawing at sizes taken at random: no label meets another, is struck by a line or leaves the sheet.

`STOREYROD_SWEEP` is how many cases each drawing gets where it is to be more than the few of a usual run.
"""

from __future__ import annotations

import os
from typing import Any

import pytest
from hypothesis import HealthCheck, Phase, given, settings

from generator.drawings import DRAWINGS
from generator.drawings.orders import BENCH, BENCH_FORMS
from generator.drawings.registry import lay
from generator.drawings.sheet import collisions
from tests.drawings.samples import PAPER, PHONE, THUMBNAIL
from tests.drawings.sweeps import SWEEPS

CASES = int(os.environ.get("STOREYROD_SWEEP", "20"))
ALL = tuple(HealthCheck)
# Less than the thinnest line is wide.
SLACK = 0.1


def test_every_drawing_there_is_is_swept() -> None:
    assert set(SWEEPS) == set(DRAWINGS)


@pytest.mark.parametrize("name", sorted(SWEEPS))
def test_labels_stand_free_at_any_size(name: str) -> None:
    widths = (PAPER, PHONE, THUMBNAIL, *((BENCH,) if name in BENCH_FORMS.values() else ()))

    @settings(max_examples=CASES, deadline=None, phases=(Phase.generate,), suppress_health_check=ALL)
    @given(SWEEPS[name])
    def free(values: dict[str, Any]) -> None:
        for width in widths:
            sheet = lay(name, values, width).sheet
            assert collisions(sheet) == (), width
            assert not sheet.texts or width > THUMBNAIL
            reach = [point for stroke in sheet.strokes for point in stroke.points]
            assert all(-SLACK <= x <= sheet.width + SLACK for x, _ in reach), width
            assert all(-SLACK <= y <= sheet.height + SLACK for _, y in reach), width

    free()
