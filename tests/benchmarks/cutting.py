"""How long cutting plans take, and how far from proved they end, over orders made by chance from seeds.

    python tests/benchmarks/cutting.py [--orders 40]

Processor seconds of this process, since other work may share the machine; each order is planned once. The
seconds depend on the machine; the ratio to one first-fit plan of the same orders travels. Not collected by
pytest.
"""

from __future__ import annotations

import argparse
import statistics
import sys
import time
from collections.abc import Callable, Iterator, Sequence
from typing import NamedTuple

from generator.quantities.cutting.first_fit import first_fit
from generator.quantities.cutting.orders import CuttingOrder, StockLength
from generator.quantities.cutting.plan import CuttingPlan
from generator.quantities.cutting.problem import reduced
from generator.quantities.cutting.task import plan_of, problem_of
from tests.cutting.samples import chance, doors

STOCK = tuple(StockLength(length=length) for length in (4200, 4800, 8400))
"""Lengths of 2.1, 2.4 and 4.2 m, in half millimetres."""
REPEATS = 5


class Planned(NamedTuple):
    """One order planned: processor seconds, and the plan."""

    seconds: float
    plan: CuttingPlan


def everyday(count: int) -> Iterator[CuttingOrder]:
    """Orders of 60 to 150 pieces, all of different lengths, or every other one of 25 lengths."""
    for seed in range(count):
        pieces = 60 + seed * 90 // max(1, count - 1)
        yield chance(seed, pieces, 300, 2000, 25 if seed % 2 else 0, stock=STOCK, trim=20)


def planned(order: CuttingOrder) -> Planned:
    """The order planned and timed."""
    seconds, plan = timed(lambda: plan_of(order))
    return Planned(seconds, plan)


def timed(work: Callable[[], CuttingPlan]) -> tuple[float, CuttingPlan]:
    """Processor seconds of one call, and what it gave."""
    began = time.process_time()
    made = work()
    return time.process_time() - began, made


def first_fit_seconds(orders: Sequence[CuttingOrder]) -> float:
    """Processor seconds of the quick plan alone, for all orders together."""
    problems = [reduced(problem_of(order)) for order in orders]
    began = time.process_time()
    for problem in problems:
        first_fit(problem, problem.demands)
    return time.process_time() - began


def report(name: str, found: Sequence[Planned]) -> None:
    """One line: how many are proved, the spread of seconds, and the worst gap."""
    seconds = sorted(each.seconds for each in found)
    proven = sum(each.plan.proven for each in found)
    late = seconds[min(len(seconds) - 1, len(seconds) * 9 // 10)]
    gap = max(each.plan.gap for each in found)
    sys.stdout.write(
        f"{name:<32} {proven} of {len(found)} proved; median {statistics.median(seconds):.2f} s, "
        f"nine in ten {late:.2f} s, longest {seconds[-1]:.2f} s; widest gap {gap:.2f} %\n"
    )
    sys.stdout.flush()


def main() -> None:
    """Measure and report."""
    asked = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    asked.add_argument("--orders", type=int, default=40)
    orders = list(everyday(asked.parse_args().orders))
    planned(doors(1))
    report("one door", [planned(doors(1)) for _ in range(REPEATS)])
    found = [planned(order) for order in orders]
    report("60 to 150 pieces", found)
    report("of these, not proved", [each for each in found if not each.plan.proven] or found[:1])
    report("2,000 pieces of 60 lengths", [planned(chance(1, 2000, 300, 2000, 60, stock=STOCK, trim=20))])
    ratio = sum(each.seconds for each in found) / first_fit_seconds(orders)
    sys.stdout.write(f"60 to 150 pieces against first fit alone: {ratio:.0f} : 1\n")


if __name__ == "__main__":
    main()
