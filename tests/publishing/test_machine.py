"""What the machine lacks is named before the work begins."""

from __future__ import annotations

import pytest

from generator.memory.surroundings import NATIVE, Native
from generator.problems import MachineLacks
from generator.publishing.machine import require_text_engines


def test_this_machine_has_the_text_engines() -> None:
    require_text_engines()


@pytest.mark.parametrize("place", range(len(NATIVE)))
def test_any_missing_engine_is_named(place: int) -> None:
    needed = (*NATIVE[:place], Native((f"libmissing-{place}.so.0",)), *NATIVE[place:])
    with pytest.raises(MachineLacks) as lack:
        require_text_engines(needed)
    assert lack.value.problem.code == "pango-missing"
    assert lack.value.problem.values == {"library": f"libmissing-{place}.so.0"}
