"""Equal values are spelt alike, different values differently, doubtful values not at all."""

from __future__ import annotations

import os
import subprocess
import sys
from dataclasses import dataclass
from decimal import Decimal
from pathlib import PurePath

import pytest

from generator.memory import canonical


@dataclass(frozen=True, slots=True, kw_only=True)
class Board:
    width: Decimal
    marks: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Plank:
    width: Decimal
    marks: tuple[float, ...] = ()


def test_the_order_of_a_mapping_does_not_count() -> None:
    assert canonical({"a": 1, "b": 2}) == canonical({"b": 2, "a": 1})


@pytest.mark.parametrize(
    ("one", "other"),
    [
        (Decimal("8.5"), 8.5),
        (Decimal("8.5"), "8.5"),
        (1, "1"),
        (PurePath("a"), "a"),
        (1, True),
        (None, ""),
        (("a", "b"), ("ab",)),
        (Board(width=Decimal(69)), Plank(width=Decimal(69))),
        (Board(width=Decimal(69)), Board(width=Decimal(70))),
        (0.1 + 0.2, 0.3),
    ],
)
def test_different_values_are_spelt_differently(one: object, other: object) -> None:
    assert canonical(one) != canonical(other)


@pytest.mark.parametrize("value", [object(), float("nan"), float("inf"), Board, lambda: 1])
def test_what_may_be_spelt_differently_next_time_is_refused(value: object) -> None:
    with pytest.raises((TypeError, ValueError)):
        canonical(value)


def test_the_hash_seed_does_not_count() -> None:
    code = "from generator.memory import canonical; print(canonical({'s': {'quirk', 'kerf', 'leg', 'head'}}))"
    told = {
        subprocess.check_output([sys.executable, "-c", code], env={**os.environ, "PYTHONHASHSEED": seed})
        for seed in ("1", "2", "3")
    }
    assert len(told) == 1
