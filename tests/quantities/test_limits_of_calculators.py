"""Every calculator there is, with a limit on each size it takes: its results tell their range."""

from __future__ import annotations

import itertools
import math
import random
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from decimal import Decimal

import pytest

from generator.quantities.calculator import Result, registered
from generator.quantities.limits import limits_of
from generator.quantities.worked import Origin, Worked, given
from generator.units import NUMBER, Value, parse_value
from tests.quantities import examples

# Chosen at the desk and not measured, so that no limit is ever written with them.
STEPS = frozenset({"step", "rounding", "round_to", "read_to", "fillet_step"})
# Plain numbers that are read off an instrument; any other is a count.
MEASURED_NUMBERS = frozenset({"temperature", "humidity"})
# Results that say in so many words that limits are not followed to them, each with the reason.
NOT_FOLLOWED = {
    ("floor_layout", "boards_opened"): "a count from a search over rows; the layout is worked again on site",
    ("floor_layout", "boards_at_least"): "the bound of that search",
    ("opening_shape", "parted_by_rounding"): "itself a limit on how far the tape may disagree",
    ("room", "left_open"): "how far the measurements disagree, turning back at nought",
    ("sheet_layout", "screws_counted"): "a count over sheets whose number may change",
}
# Chosen or sorted by the sizes as they were given: at others another layout, order or refusal comes out.
CHOSEN_ONCE = {
    "floor_layout": "the rows are those of the layout that was chosen",
    "room_reach": "a corner that is not square is refused",
    "sheet_layout": "sheets that no longer meet on a stud are refused",
}
SORTED = ".measured["
# At other sizes a piece whose edges are as good as equal lies turned about on the saw, its ends exchanged.
TURNED = {"cornice_run": ".cuts["}
# Takes words only.
WITHOUT_SIZES = frozenset({"movement_coefficient"})
SHARE = Decimal("0.0005")
Found = Iterator[tuple[str, Worked]]


def measured(name: str, value: Value) -> bool:
    """Whether it is a size that a limit may stand beside: no step, and no count."""
    return name not in STEPS and not (value.dimension == NUMBER and name not in MEASURED_NUMBERS)


def worked_values(result: Result, path: str = "") -> Found:
    if isinstance(result, Worked):
        yield path, result
    elif isinstance(result, tuple):
        for at, item in enumerate(result):
            yield from worked_values(item, f"{path}[{at}]")
    elif is_dataclass(result):
        for field in fields(result):
            yield from worked_values(getattr(result, field.name), f"{path}.{field.name}")


@pytest.fixture
def with_limits(monkeypatch: pytest.MonkeyPatch) -> None:
    places = itertools.count()

    def size(text: str, name: str = "size") -> Worked:
        value = parse_value(text)
        within = Value(abs(value.magnitude * SHARE), value.dimension) if measured(name, value) else None
        return given(f"{name} {next(places)}", value, label=name, origin=Origin.EXAMPLE, within=within)

    monkeypatch.setattr(examples, "size", size)


def moved(monkeypatch: pytest.MonkeyPatch, draw: random.Random) -> None:
    """Every size taken to one end of its limit or the other."""

    def size(text: str, name: str = "size") -> Worked:
        value = parse_value(text)
        way = draw.choice((-1, 1)) if measured(name, value) else 0
        at = Value(value.magnitude * (1 + way * SHARE), value.dimension)
        return given(name, at, label=name, origin=Origin.EXAMPLE)

    monkeypatch.setattr(examples, "size", size)


@pytest.mark.usefixtures("with_limits")
@pytest.mark.parametrize("name", sorted(registered()))
def test_limits_are_followed_to_every_result_or_the_reason_is_on_record(name: str) -> None:
    told = [limits for _, item in worked_values(examples.example_result(name)) if (limits := limits_of(item))]
    assert bool(told) == (name not in WITHOUT_SIZES)
    left = {(name, limits.through) for limits in told if limits.low is None}
    assert left == {key for key in NOT_FOLLOWED if key[0] == name}


@pytest.mark.parametrize("name", sorted(set(registered()) - set(CHOSEN_ONCE)))
def test_no_size_at_its_limits_takes_a_result_out_of_its_range(
    name: str, monkeypatch: pytest.MonkeyPatch, with_limits: None
) -> None:
    told = {path: limits_of(item) for path, item in worked_values(examples.example_result(name))}
    draw = random.Random(name)
    for _ in range(6):
        moved(monkeypatch, draw)
        for path, item in worked_values(examples.example_result(name)):
            limits = told.get(path)
            if (
                path.startswith((SORTED, TURNED.get(name, SORTED)))
                or limits is None
                or limits.low is None
                or limits.high is None
            ):
                continue
            at, low, high = (float(each.magnitude) for each in (item.value, limits.low, limits.high))
            hair = 1e-9 * max(1.0, math.fabs(at))
            assert low - hair <= at <= high + hair, path
