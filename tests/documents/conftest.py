"""The demonstration composed into documents, its drawings stood in for by empty pictures."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import pytest

from generator.documents.exposures import dose_orders
from generator.documents.figures import orders_of, small_order
from generator.documents.programme import programme_orders
from generator.documents.task import Task
from generator.drawings.orders import Order
from generator.drawings.svg import Picture
from generator.model.folder import Project, load_folder
from generator.problems import ProblemLog
from generator.quantities.work import work_out
from generator.shipped import shipped
from generator.wording import ENGLISH

FOLDER = shipped("methods").parent
METHOD, JOB = "SF-07", "Reading Room doors"


def blank(order: Order) -> Picture:
    """A picture without a line, named after what was ordered."""
    return Picture(
        name=order.name,
        title=order.name,
        svg="<svg/>",
        width_mm=order.width,
        height_mm=50,
        alt="",
        scale=None,
        key=(),
    )


def pictures(orders: tuple[Order, ...]) -> Mapping[Order, Picture]:
    """A blank picture for each order."""
    return {order: blank(order) for order in orders}


@pytest.fixture(scope="session")
def project() -> Project:
    """The demonstration, free of faults."""
    log = ProblemLog()
    found = load_folder(Path(FOLDER), log)
    assert list(log) == []
    return found


@pytest.fixture(scope="session")
def guide_task(project: Project) -> Task:
    """The method on its example sizes."""
    method = project.method(METHOD)
    assert method is not None
    ledger = work_out(method, None, project, ProblemLog())
    small = small_order(ledger)
    drawn = pictures((*orders_of(ledger), *((small,) if small else ())))
    return Task(project=project, ledger=ledger, pictures=drawn, language=ENGLISH)


@pytest.fixture(scope="session")
def statement_task(project: Project) -> Task:
    """The method applied to the four doors."""
    method = project.method(METHOD)
    job = next(job for job in project.jobs if job.job.value == JOB)
    assert method is not None
    ledger = work_out(method, job, project, ProblemLog())
    dosed = dose_orders(ledger, project.catalogue.tools)
    drawn = pictures((*orders_of(ledger), *programme_orders(ledger), *dosed))
    return Task(project=project, ledger=ledger, pictures=drawn, language=ENGLISH)
