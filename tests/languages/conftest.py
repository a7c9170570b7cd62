"""The demonstration's task guide of one method, ready to be put into a language."""

from __future__ import annotations

import pytest

from generator.documents.cutting import plan_orders
from generator.documents.figures import orders_of, small_order
from generator.documents.task import Task
from generator.model.folder import Project, load_folder
from generator.pipeline.editions import drawing
from generator.problems import ProblemLog
from generator.quantities.cutting.plans import cutting_plans
from generator.quantities.work import work_out
from generator.rendering.themes import Theme, load_theme
from generator.shipped import shipped
from generator.wording import ENGLISH

METHOD = "SF-07"


@pytest.fixture(scope="session")
def demonstration() -> Project:
    """The demonstration, free of faults."""
    log = ProblemLog()
    found = load_folder(shipped("methods").parent, log)
    assert list(log) == []
    return found


@pytest.fixture(scope="session")
def guide(demonstration: Project) -> Task:
    """The English guide of one method with its drawings."""
    method = demonstration.method(METHOD)
    assert method is not None
    ledger = work_out(method, None, demonstration, ProblemLog())
    plans, small = cutting_plans(ledger, demonstration, ProblemLog()), small_order(ledger)
    orders = (*orders_of(ledger), *plan_orders(plans), *((small,) if small else ()))
    pictures = {order: drawing(order, ENGLISH) for order in orders}
    return Task(project=demonstration, ledger=ledger, plans=plans, pictures=pictures, language=ENGLISH)


@pytest.fixture(scope="session")
def theme() -> Theme:
    """The shipped theme."""
    return load_theme()
