"""The printed working of a value: the arithmetic in names, in numbers, then folded to the result."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal

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
    parts_of,
)
from generator.units import AREA, NUMBER, TRADE_UNITS, UNITS, Printed, Unit, Value, print_value
from generator.wording import ENGLISH, Language
from generator.wording.arithmetic import PHRASES, Phrase

THIN = "\u2009"
_SIGNS = {"+": " + ", "-": " − ", "*": " × ", "/": " ÷ "}
_BINDING = {"+": 1, "-": 1, "*": 2, "/": 2}
_PHRASE, _SUM, _NEGATION, _ATOM = 0, 1, 3, 4
_ROUNDINGS = frozenset({"round_up", "round_down"})
_MOST_DECIMALS = 6
_SMALL_AREA = 10_000


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """A written value that a working rests on, and where it was written."""

    name: str
    label: str
    value: str
    origin: str
    where: str


@dataclass(frozen=True, slots=True)
class _Said:
    """Text of a part of a working, how tightly it binds, and whether its numbers are shown whole."""

    text: str
    binds: int = _ATOM
    exact: bool = True

    def within(self, level: int) -> _Said:
        """Itself, in brackets where it binds less tightly than `level`."""
        return self if self.binds >= level else _Said(f"({self.text})", _ATOM, self.exact)


def print_worked(item: Worked, unit: Unit | None = None) -> Printed:
    """A worked value as the trade prints it; a written value keeps the figures it was written with."""
    return _printed(item.tree, item.value, unit)


def _printed(tree: Working, value: Value, unit: Unit | None = None) -> Printed:
    usual = print_value(value, unit or _fine_unit(value))
    if usual.exact or not value.exact or not isinstance(tree, Given | Literal):
        return usual
    chosen = unit or TRADE_UNITS.get(value.dimension)
    places = range((chosen.decimals if chosen else 2) + 1, _MOST_DECIMALS + 1)
    return next((p for n in places if (p := print_value(value, unit, n)).exact), usual)


def _fine_unit(value: Value) -> Unit | None:
    """Small areas in mm², which m² would print as nought."""
    return UNITS["mm2"] if value.dimension == AREA and abs(float(value.magnitude)) < _SMALL_AREA else None


def working_lines(
    item: Worked,
    language: Language = ENGLISH,
    *,
    name: str = "",
    unit: Unit | None = None,
    space: str = THIN,
) -> tuple[str, ...]:
    """The working line by line: names, numbers, each function worked out in turn, the result.

    `unit` adds a last line in that unit where it is not the trade's own for the dimension. A line begins
    with ≈ where a number shown in it is not the whole of it.
    """
    item, writer = _behind_names(item), _Writer(language, space)
    names = writer.names(item.tree).text
    first = f"{name} = {names}" if name else names
    if isinstance(item.tree, Given | Literal):
        first, names = _written(name, names, writer.value(item.tree).text)
    stages = [writer.numbers(item.tree, folded) for folded in range(_depth(item.tree) + 1)]
    told = [_equals(stage) for stage in (*stages, *writer.results(item, unit))]
    return tuple(_without_repeats(first, told, names))


def _behind_names(item: Worked) -> Worked:
    """A quantity that is only another name for a value is told by the arithmetic behind that name."""
    tree = item.tree
    while isinstance(tree, Named):
        tree = tree.of
    return Worked(value=item.value, tree=tree)


def _written(name: str, names: str, value: str) -> tuple[str, str]:
    """A value that was written is told in one line, under its own name where no other is given."""
    return f"{name or names} = {value}" if (name or names) != value else value, value


def _equals(said: _Said) -> str:
    return f"{'=' if said.exact else '≈'} {said.text}"


def _without_repeats(first: str, told: list[str], names: str) -> list[str]:
    lines, last = [first], names
    for line in told:
        if line[2:] != last:
            lines.append(line)
        last = line[2:]
    return lines


def _depth(tree: Working) -> int:
    """How many functions stand inside one another; what a name stands for is not looked into."""
    if isinstance(tree, Named):
        return 0
    inside = max((_depth(part) for part in parts_of(tree)), default=0)
    return inside + isinstance(tree, Applied)


@dataclass(frozen=True, slots=True)
class _Writer:
    language: Language
    space: str

    def names(self, tree: Working) -> _Said:
        """The working in names."""
        if isinstance(tree, Given | Named):
            return _Said(tree.name)
        return self._write(tree, self.names)

    def numbers(self, tree: Working, folded: int) -> _Said:
        """The working in numbers, with functions up to `folded` deep already worked out."""
        if isinstance(tree, Applied) and _depth(tree) <= folded:
            return self.value(tree)
        if isinstance(tree, Applied) and tree.function in _ROUNDINGS:
            return self._rounding(tree, folded)
        if isinstance(tree, Operation | Applied):
            return self._write(tree, lambda part: self.numbers(part, folded))
        return self.value(tree)

    def value(self, tree: Working) -> _Said:
        """The value alone."""
        return self._text(_printed(tree, tree.value))

    def results(self, item: Worked, unit: Unit | None) -> list[_Said]:
        """The result in the trade's unit, and then in the one asked for."""
        printed = [print_worked(item), print_worked(item, unit)] if unit else [print_worked(item)]
        return [self._text(each) for each in printed]

    def _text(self, printed: Printed) -> _Said:
        text = printed.text(self.space)
        return _Said(text, _NEGATION if text.startswith("−") else _ATOM, printed.exact)

    def _write(self, tree: Working, inner: Callable[[Working], _Said]) -> _Said:
        if isinstance(tree, Operation):
            return _operation(tree, tuple(inner(part) for part in tree.parts))
        if isinstance(tree, Applied):
            return self._phrase(tree, inner)
        return self.value(tree)

    def _phrase(self, tree: Applied, inner: Callable[[Working], _Said]) -> _Said:
        phrase = PHRASES[tree.function]
        said = [inner(argument) for argument in tree.arguments]
        by_name = inner == self.names
        sentence = phrase.names if by_name else phrase.with_numbers
        joint = ", " if by_name else phrase.joint
        items = [part.within(_SUM if "%(item)s" not in sentence else _PHRASE).text for part in said]
        items = _collapsed(items) if by_name else items
        text = self.language.say(
            sentence,
            item=said[0].text,
            step=said[-1].text,
            second=said[1].text if len(said) > 1 else "",
            items=joint.join(items),
            rest=joint.join(
                _collapsed([part.within(_SUM).text for part in said[2:]]) if by_name else items[2:]
            ),
            count=str(len(said)),
        )
        return _Said(text, self._binds(phrase, said, by_name=by_name), all(part.exact for part in said))

    def _binds(self, phrase: Phrase, said: list[_Said], *, by_name: bool) -> int:
        if by_name or not phrase.sign:
            return _ATOM if phrase.binds else _PHRASE
        return said[0].binds if len(said) == 1 and phrase.sign == "+" else _BINDING[phrase.sign]

    def _rounding(self, tree: Applied, folded: int) -> _Said:
        """A rounding shows as many figures of its item as let the reader round to the same result."""
        item, step = tree.arguments
        if not (isinstance(item, Applied) and _depth(item) <= folded) and not isinstance(item, Named):
            return self._phrase(tree, lambda part: self.numbers(part, folded))
        shown = self._text(_telling(tree, item.value, step.value))
        return self._phrase(tree, lambda part: shown if part is item else self.numbers(part, folded))


def _telling(tree: Applied, value: Value, step: Value) -> Printed:
    usual = print_value(value)
    unit = TRADE_UNITS.get(value.dimension)
    least = unit.decimals if unit else 2
    for places in range(least, _MOST_DECIMALS + 1):
        printed = usual if places == least else print_value(value, None, places)
        if rounded_like(tree.function, _read_back(printed, value), step) == tree.value:
            return printed
    return usual


def _read_back(printed: Printed, value: Value) -> Value:
    unit = TRADE_UNITS.get(value.dimension)
    number = Decimal(printed.number.replace("−", "-"))
    return Value(number * (unit.size if unit else 1), value.dimension)


def _operation(tree: Operation, parts: tuple[_Said, ...]) -> _Said:
    exact = all(part.exact for part in parts)
    if len(parts) == 1:
        return _Said(f"−{parts[0].within(_ATOM).text}", _NEGATION, exact)
    level = _BINDING[tree.symbol]
    left = parts[0].within(level)
    right = parts[1].within(_ATOM if parts[1].binds == _NEGATION else level + (tree.symbol in "-/"))
    return _Said(f"{left.text}{_SIGNS[tree.symbol]}{right.text}", level, exact)


def _collapsed(names: list[str]) -> list[str]:
    """Names one after another, the readings of one size said once."""
    bare = [name.partition("@")[0] for name in names] if len(names) > 1 else names
    return [name for index, name in enumerate(bare) if index == 0 or name != bare[index - 1]]


def places(item: Worked, space: str = THIN) -> tuple[Place, ...]:
    """Each written value the working rests on, with its file and line."""
    return tuple(_place(each, space) for each in givens(item.tree))


def _place(each: Given, space: str) -> Place:
    where = f"{each.span.file}:{each.span.line}" if each.span else ""
    within = f" ± {print_value(each.within).text(space)}" if each.within else ""
    return Place(
        name=each.name,
        label=each.label,
        value=_printed(each, each.value).text(space) + within,
        origin=each.origin.value,
        where=where,
    )


def number_of(item: Worked) -> bool:
    """True when it is a plain number, such as a count."""
    return item.dimension == NUMBER
