"""The choice among whole patterns: a mixed-integer programme on a fresh model, bounded by nodes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from generator.quantities.cutting.master import silent
from generator.quantities.cutting.problem import Bars, Pattern, Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Chosen:
    """Bars chosen (with surplus pieces, None where none were found) and the least their objective can be."""

    bars: Bars | None
    bound: float
    closed: bool


def choose(
    problem: Problem,
    patterns: Sequence[Pattern],
    prices: Sequence[int],
    nodes: int,
    within: int | None = None,
) -> Chosen:
    """The cheapest whole choice of patterns by `prices`, with a total cost of at most `within`.

    No first solution is handed in: with one, this kind of solver has been seen to return a false optimum.
    """
    import highspy

    solver = silent()
    for option, value in _OPTIONS.items():
        solver.setOptionValue(option, value)
    solver.setOptionValue("mip_max_nodes", nodes)
    solver.passModel(_model(problem, patterns, prices, within))
    solver.run()
    status, found = solver.getModelStatus(), solver.getInfo()
    closed = status in (highspy.HighsModelStatus.kOptimal, highspy.HighsModelStatus.kInfeasible)
    if found.primal_solution_status != highspy.SolutionStatus.kSolutionStatusFeasible:
        return Chosen(bars=None, bound=found.mip_dual_bound, closed=closed)
    values = solver.getSolution().col_value
    bars = tuple(
        pattern for pattern, value in zip(patterns, values, strict=True) for _ in range(round(value))
    )
    return Chosen(bars=bars, bound=found.mip_dual_bound, closed=closed)


# Costs are whole, so a plan within less than one of the bound is the best there is.
_OPTIONS = {"mip_rel_gap": 0.0, "mip_abs_gap": 0.999, "mip_heuristic_effort": 0.0}


def _model(problem: Problem, patterns: Sequence[Pattern], prices: Sequence[int], within: int | None) -> Any:
    import highspy
    import numpy as np

    columns = [_column(problem, pattern, within) for pattern in patterns]
    lower, upper = _row_bounds(problem, within)
    model = highspy.HighsLp()
    model.num_col_, model.num_row_ = len(patterns), len(lower)
    model.col_cost_ = np.array(prices, dtype=np.float64)
    model.col_lower_ = np.zeros(len(patterns))
    model.col_upper_ = np.array([_most(problem, pattern) for pattern in patterns], dtype=np.float64)
    model.row_lower_, model.row_upper_ = np.array(lower), np.array(upper)
    model.a_matrix_.format_ = highspy.MatrixFormat.kColwise
    model.a_matrix_.start_ = np.cumsum([0, *(len(column) for column in columns)])
    model.a_matrix_.index_ = np.array([row for column in columns for row, _ in column])
    model.a_matrix_.value_ = np.array([float(count) for column in columns for _, count in column])
    model.integrality_ = [highspy.HighsVarType.kInteger] * len(patterns)
    return model


def _column(problem: Problem, pattern: Pattern, within: int | None) -> list[tuple[int, int]]:
    rows, limited = len(problem.sizes), problem.limited
    column = list(pattern.items)
    if pattern.kind in limited:
        column.append((rows + limited.index(pattern.kind), 1))
    if within is not None and problem.kinds[pattern.kind].cost:
        column.append((rows + len(limited), problem.kinds[pattern.kind].cost))
    return column


def _row_bounds(problem: Problem, within: int | None) -> tuple[list[float], list[float]]:
    import highspy

    infinite = highspy.kHighsInf
    counts = [float(problem.kinds[at].count or 0) for at in problem.limited]
    roof = [] if within is None else [float(within)]
    lower = [*map(float, problem.demands), *([-infinite] * (len(counts) + len(roof)))]
    return lower, [*([infinite] * len(problem.demands)), *counts, *roof]


def _most(problem: Problem, pattern: Pattern) -> int:
    """How often a pattern can be of use."""
    return max(-(-problem.demands[at] // count) for at, count in pattern.items)
