"""Everything that can be found wrong with a pair without drawing it."""

from __future__ import annotations

from generator.documents.bench_card import check_cards
from generator.documents.figures import wanted
from generator.pipeline.pairs import Pair
from generator.pipeline.told import told_as_bytes
from generator.problems import ProblemLog
from generator.prose import check_bare_names, check_prose, check_typed_numbers, check_unused
from generator.quantities.cutting.plans import cutting_plans
from generator.quantities.lifts import check_lifts
from generator.quantities.work import work_out
from generator.safety.exposures import exposures_reached
from generator.safety.required import check_safety


def find_faults(pair: Pair) -> bytes:
    """The problems of a pair: in its arithmetic, prose, drawings' values and required sections."""
    log = ProblemLog()
    ledger = work_out(pair.method, pair.job, pair.project, log)
    check_prose(ledger, log)
    check_typed_numbers(ledger, log)
    check_bare_names(ledger, log)
    check_safety(
        pair.method,
        pair.job,
        pair.project,
        log,
        exposures=exposures_reached(ledger, pair.project.catalogue.tools),
    )
    check_lifts(ledger, log)
    cutting_plans(ledger, pair.project, log)
    asked = wanted(ledger, log)
    check_cards(ledger, pair.project, log)
    # A formula that cannot be read may use any of them.
    if pair.job is None and not ledger.broken:
        check_unused(pair.method, {name for each in asked for name, _ in each.order.values}, log)
    return told_as_bytes(log)
