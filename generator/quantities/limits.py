"""How far a result can be off when the sizes it rests on are: followed through its working, on demand.

A limit is not a standard deviation: every size may be off by the whole of its limit at once. Each result
keeps its share from each size as it was written, so that a size used twice counts as one.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import ROUND_CEILING, ROUND_FLOOR, Context, Decimal
from typing import TypeAlias

from generator.problems import Span
from generator.quantities import enclosures
from generator.quantities.enclosures import Enclosure, NotFollowed
from generator.quantities.functions import rounded_like
from generator.quantities.worked import (
    Applied,
    Given,
    Literal,
    Named,
    Operation,
    Worked,
    Working,
    givens,
    limited,
)
from generator.quantities.workings import THIN, print_worked
from generator.units import TRADE_UNITS, Dimension, Unit, Value, print_value
from generator.wording import ENGLISH, Language

Size: TypeAlias = tuple[str, Span | None]
_Enclosed: TypeAlias = Enclosure[Size]
_NEAR = Decimal("1e-9")


@dataclass(frozen=True, slots=True, kw_only=True)
class Share:
    """What one size contributes: its limit, the result's slope to it, and the part of the range due to it."""

    name: str
    label: str
    within: Value
    slope: float
    part: Value


@dataclass(frozen=True, slots=True, kw_only=True)
class Limits:
    """The range of a result: `low` and `high` are outcomes that cannot be passed, both None if not followed.

    `smooth` means that no rounding, choice or search lies on the way; the shares are exact then, to first
    order. `through` names the function that limits could not be followed through.
    """

    value: Value
    low: Value | None
    high: Value | None
    smooth: bool
    shares: tuple[Share, ...]
    through: str = ""

    @property
    def open(self) -> bool:
        """Whether the result can come out otherwise than worked, or may for all that is known."""
        return self.low is None or self.low != self.high


def limits_of(item: Worked) -> Limits | None:
    """The limits of a result; None where no size it rests on was written with any."""
    if not limited(item.tree):
        return None
    written = [each for each in givens(item.tree) if each.within]
    try:
        enclosed = _Walk().of(item.tree)
    except NotFollowed as fault:
        return Limits(
            value=item.value,
            low=None,
            high=None,
            smooth=False,
            shares=tuple(_share(each, 0.0, item.dimension) for each in written),
            through=fault.function,
        )
    return _limits(item, enclosed, written)


def _limits(item: Worked, enclosed: _Enclosed, written: Sequence[Given]) -> Limits:
    slopes = enclosed.slopes
    return Limits(
        value=item.value,
        low=item.value if enclosed.fixed else _value(enclosed.low, item.dimension),
        high=item.value if enclosed.fixed else _value(enclosed.high, item.dimension),
        smooth=enclosed.smooth,
        shares=tuple(_share(each, slopes.get(_key(each), 0.0), item.dimension) for each in written),
    )


def _value(number: float, dimension: Dimension) -> Value:
    return Value(number, dimension)


def _share(each: Given, slope: float, dimension: Dimension) -> Share:
    assert each.within is not None
    part = _value(abs(slope) * float(each.within.magnitude), dimension)
    return Share(name=each.name, label=each.label, within=each.within, slope=slope, part=part)


def _key(each: Given) -> Size:
    return each.name, each.span


class _Walk:
    """Encloses each part of one working, a part that is used twice once."""

    def __init__(self) -> None:
        self._done: dict[int, _Enclosed] = {}

    def of(self, tree: Working) -> _Enclosed:
        """The enclosure of a working; NotFollowed where there is none."""
        if id(tree) not in self._done:
            self._done[id(tree)] = self._enclose(tree)
        return self._done[id(tree)]

    def _enclose(self, tree: Working) -> _Enclosed:
        if not limited(tree):
            return enclosures.constant(float(tree.value.magnitude))
        match tree:
            case Given(within=Value(magnitude=reach)):
                return enclosures.source(_key(tree), float(tree.value.magnitude), float(reach))
            case Named():
                return self.of(tree.of)
            case Operation(parts=(only,)):
                return enclosures.negative(self.of(only))
            case Operation():
                return _ARITHMETIC[tree.symbol](*(self.of(part) for part in tree.parts))
            case Applied():
                return self._applied(tree)
            case Given() | Literal():
                raise AssertionError("a value without a limit is constant")

    def _applied(self, tree: Applied) -> _Enclosed:
        if tree.behind is not None:
            return self.of(tree.behind)
        items = [self.of(part) for part in tree.arguments]
        if tree.function in _ROUNDINGS:
            return _rounded(tree, items)
        if tree.function in _SEVERAL:
            return _SEVERAL[tree.function](items)
        if tree.function in _ONE:
            return _ONE[tree.function](items[0])
        if tree.again is None:
            raise NotFollowed(tree.function)
        return enclosures.worst_ways(items, tree.again, tree.function)


_ROUNDINGS = frozenset({"round_up", "round_down"})
_ARITHMETIC: Mapping[str, Callable[[_Enclosed, _Enclosed], _Enclosed]] = {
    "+": enclosures.add,
    "-": enclosures.subtract,
    "*": enclosures.multiply,
    "/": enclosures.divide,
}
_ONE: Mapping[str, Callable[[_Enclosed], _Enclosed]] = {
    "sqrt": enclosures.sqrt,
    "sin": enclosures.sin,
    "cos": enclosures.cos,
    "tan": enclosures.tan,
    "atan": enclosures.atan,
    "asin": enclosures.asin,
}


def _count(items: Sequence[_Enclosed]) -> _Enclosed:
    return enclosures.constant(float(len(items)))


_SEVERAL: Mapping[str, Callable[[Sequence[_Enclosed]], _Enclosed]] = {
    "least": enclosures.least,
    "greatest": enclosures.greatest,
    "total": enclosures.total,
    "mean": enclosures.mean,
    "count": _count,
}


def _rounded(tree: Applied, items: Sequence[_Enclosed]) -> _Enclosed:
    item, step = items
    if not step.fixed:
        raise NotFollowed(tree.function)
    size = tree.arguments[1].value

    def rounded(number: float) -> float:
        value = Value(Decimal(repr(number)), size.dimension)
        return float(rounded_like(tree.function, value, size).magnitude)

    return enclosures.stepped(item, step.at, rounded, up=tree.function == "round_up")


def limits_text(
    item: Worked, limits: Limits, unit: Unit | None = None, *, space: str = THIN, language: Language = ENGLISH
) -> str:
    """The result with its limits: “924 mm ± 3 mm”, or “4 mm (3.5 mm to 4.5 mm)” where a step lies on the way.

    What is printed never says less than what is possible: limits are taken up, ends of a range outward.
    """
    printed = print_worked(item, unit).text(space)
    if limits.low is None or limits.high is None:
        return language.say("%(value)s, limits not followed", value=printed)
    if not limits.open:
        return printed
    chosen = unit or TRADE_UNITS.get(item.dimension)
    under, over = _less(limits.value, limits.low), _less(limits.high, limits.value)
    if limits.smooth and _outward(under, chosen) == _outward(over, chosen):
        return f"{printed} ± {_print(_outward(over, chosen), chosen, space)}"
    return language.say(
        "%(value)s (%(least)s to %(most)s)",
        value=printed,
        least=_print(_outward(limits.low, chosen, ROUND_FLOOR), chosen, space),
        most=_print(_outward(limits.high, chosen), chosen, space),
    )


def with_limits(item: Worked, unit: Unit | None = None, *, language: Language = ENGLISH) -> str:
    """The result as printed, with its limits where the sizes it rests on have any."""
    limits = limits_of(item)
    if limits is None:
        return print_worked(item, unit).text(THIN)
    return limits_text(item, limits, unit, language=language)


def ends(limits: Limits, unit: Unit | None = None) -> tuple[str, str]:
    """The two ends of a range as numbers in the unit printed, taken outward; empty without a range."""
    if limits.low is None or limits.high is None or not limits.open:
        return "", ""
    chosen = unit or TRADE_UNITS.get(limits.value.dimension)
    low, high = _outward(limits.low, chosen, ROUND_FLOOR), _outward(limits.high, chosen)
    return print_value(low, chosen).number, print_value(high, chosen).number


def _less(more: Value, less: Value) -> Value:
    return _value(float(more.magnitude) - float(less.magnitude), more.dimension)


def _outward(value: Value, unit: Unit | None, way: str = ROUND_CEILING) -> Value:
    """The value taken to the last decimal printed, away from the result."""
    size, places = (unit.size, unit.decimals) if unit else (Decimal(1), 2)
    lean = _NEAR if way == ROUND_FLOOR else -_NEAR
    whole = Decimal(repr(float(value.magnitude))) / size + lean
    shown = whole.quantize(Decimal(1).scaleb(-places), rounding=way, context=Context(prec=60))
    return Value(shown * size, value.dimension)


def _print(value: Value, unit: Unit | None, space: str) -> str:
    return print_value(value, unit).text(space)


def limit_lines(
    item: Worked, unit: Unit | None = None, *, space: str = THIN, language: Language = ENGLISH
) -> tuple[str, ...]:
    """The lines that close a working: the result with its limits, and what they come from; none without."""
    limits = limits_of(item)
    if limits is None or isinstance(item.tree, Given):
        return ()
    if not limits.open:
        parts = ", ".join(_reach(share, space) for share in _gathered(limits.shares))
        return (language.say("the same anywhere within %(parts)s", parts=parts),)
    text = limits_text(item, limits, unit, space=space, language=language)
    return (f"= {text}", *_sources(limits, space, language))


def _sources(limits: Limits, space: str, language: Language) -> Iterator[str]:
    if limits.through:
        yield language.say(
            "limits are not followed through “%(function)s”: take it with the sizes again, or leave them out",
            function=limits.through,
        )
    parts = ", ".join(_source(share, limits, space) for share in _gathered(limits.shares))
    yield language.say("limits from %(parts)s", parts=parts)


def _gathered(shares: Sequence[Share]) -> Iterator[Share]:
    """The shares of several readings of one size as one."""
    by_name: dict[str, list[Share]] = {}
    for share in shares:
        by_name.setdefault(share.name.partition("@")[0], []).append(share)
    for name, alike in by_name.items():
        widest = max(alike, key=lambda share: share.within.magnitude)
        part = _value(sum(float(share.part.magnitude) for share in alike), alike[0].part.dimension)
        yield Share(name=name, label=widest.label, within=widest.within, slope=widest.slope, part=part)


def _source(share: Share, limits: Limits, space: str) -> str:
    if not limits.smooth:
        return _reach(share, space)
    part = _outward(share.part, TRADE_UNITS.get(share.part.dimension))
    return f"{_reach(share, space)}: {print_value(part).text(space)}"


def _reach(share: Share, space: str) -> str:
    return f"{share.name} ± {print_value(share.within).text(space)}"
