"""The rulebook: the rules that ship, the firm's own, what it makes stricter and what it sets aside."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Final

from generator.model.house import HouseRules
from generator.model.prose import Prose
from generator.model.reading import describe
from generator.model.rules import Rule, Rulebook
from generator.problems import ProblemLog
from generator.reading.yaml_nodes import read_yaml

FOLDER: Final = Path(__file__).parent / "rulebook"
MUST: Final = "must"


@dataclass(frozen=True, slots=True, kw_only=True)
class InForce:
    """A rule as it holds here. `level` may be stricter than the book's; `aside` is why it is set aside."""

    rule: Rule
    level: str
    of_house: bool
    aside: Prose | None

    @property
    def number(self) -> str:
        """The number documents print."""
        return self.rule.rule.value

    @property
    def title(self) -> str:
        """What sets it off."""
        return self.rule.title.value

    @property
    def must(self) -> bool:
        """True when a document that does not keep it has an error."""
        return self.level == MUST

    def sources_in(self, nation: str | None) -> str:
        """What it rests on, in one line; without a nation, for all of them."""
        cited = (
            source.cite.value
            for source in self.rule.sources
            if nation is None or not source.nations or nation in [each.value for each in source.nations]
        )
        return "; ".join(cited)


@cache
def shipped_rules() -> tuple[Rule, ...]:
    """The rules that ship, in the order of their numbers. ValueError when one of the files has a fault."""
    log = ProblemLog()
    paths = sorted(FOLDER.glob("*.yaml"))
    nodes = [read_yaml(path, f"shipped rulebook/{path.name}", log) for path in paths]
    read = [node and describe(Rulebook, node, log) for node in nodes]
    if len(log):
        faults = [(problem.code, problem.span and problem.span.line) for problem in log]
        raise ValueError(f"the shipped rulebook has faults: {faults}")
    rules = (rule for book in read if book for rule in book.rules)
    return tuple(sorted(rules, key=lambda rule: rule.rule.value))


def rules_in_force(house: HouseRules) -> tuple[InForce, ...]:
    """Every rule of the book and then those of the house; of two with one number the first holds."""
    stricter = {number.value for number in house.stricter}
    return tuple(_in_force(rule, own, stricter, house.set_aside) for rule, own in _all(house))


def _all(house: HouseRules) -> Iterator[tuple[Rule, bool]]:
    shipped = shipped_rules()
    numbers = {rule.rule.value for rule in shipped}
    yield from ((rule, False) for rule in shipped)
    yield from ((rule, True) for rule in house.rules if rule.rule.value not in numbers)


def _in_force(rule: Rule, own: bool, stricter: set[str], aside: Mapping[str, Prose]) -> InForce:
    level = MUST if rule.rule.value in stricter else rule.level.value
    return InForce(rule=rule, level=level, of_house=own, aside=aside.get(rule.rule.value))
