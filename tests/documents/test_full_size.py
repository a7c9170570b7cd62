"""Drawings to lay on the work: those at 1:1, a sheet each, shared by openings that are alike."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from generator.documents.blocks import Document, Figure
from generator.documents.full_size import compose_full_size, full_size_orders
from generator.documents.task import Task
from generator.drawings.registry import draw
from generator.model.folder import Project
from generator.problems import ProblemLog
from generator.quantities.ledger import Ledger
from generator.quantities.work import work_out
from generator.rendering.html import render_sheet
from generator.rendering.pdf import render_pdf
from generator.rendering.themes import load_theme
from generator.wording import ENGLISH
from tests.checkers.pdf_ua import facts, text_of
from tests.checkers.true_scale import outlines


def ledger_of(project: Project, name: str) -> Ledger:
    job = next(job for job in project.jobs if job.job.value == name)
    method = project.method(job.method.value)
    assert method is not None
    return work_out(method, job, project, ProblemLog())


def composed(project: Project, ledger: Ledger) -> Document | None:
    drawn = {order: draw(order.name, dict(order.values), order.width) for order in full_size_orders(ledger)}
    return compose_full_size(Task(project=project, ledger=ledger, pictures=drawn, language=ENGLISH))


def figures(document: Document | None) -> tuple[Figure, ...]:
    assert document is not None
    return document.figures()


@pytest.fixture(scope="module")
def doors(project: Project) -> Ledger:
    return ledger_of(project, "Reading Room doors")


def test_each_opening_of_its_own_sizes_has_a_sheet(project: Project, doors: Ledger) -> None:
    shown = figures(composed(project, doors))
    assert [(figure.number, figure.picture.name, figure.scale) for figure in shown] == [
        (mark, name, "1:1") for name in ("jamb_section", "head_section") for mark in ("1", "2", "3", "4")
    ]


def test_openings_that_are_alike_share_a_sheet(project: Project, doors: Ledger) -> None:
    """A twin of the first opening, of another mark, is served by the sheet of the first."""
    first = doors.openings[0]
    twin = replace(first, mark="9")
    shown = figures(composed(project, replace(doors, openings=(first, twin, doors.openings[1]))))
    assert [figure.number for figure in shown] == ["1, 9", "2", "1, 9", "2"]


def test_a_job_without_a_full_size_drawing_has_none(project: Project) -> None:
    assert composed(project, ledger_of(project, "Committee room floor")) is None


def test_a_sheet_measures_what_it_shows(project: Project, doors: Ledger, tmp_path: Path) -> None:
    """The packer of the second opening, 24 x 9 mm, on the paper."""
    document, file = composed(project, doors), tmp_path / "full-size.pdf"
    assert document is not None
    file.write_bytes(render_pdf(render_sheet(document, load_theme()), load_theme()))
    assert facts(file).pages == 8
    assert "Openings served: 2" in text_of(file)
    cut = [line.size for line in outlines(file, 2) if line.width and 0.45 < line.width < 0.55]
    assert any(size == pytest.approx((24.0, 9.0), abs=0.1) for size in cut)


def test_it_takes_a_job(guide_task: Task) -> None:
    with pytest.raises(ValueError, match="take a job with its document control"):
        compose_full_size(guide_task)
