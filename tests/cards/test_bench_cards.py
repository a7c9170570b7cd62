"""A bench card stands on one side of paper, in black alone, with the sizes worked out for its openings."""

from __future__ import annotations

import subprocess
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from itertools import combinations
from pathlib import Path

import pytest
from PIL import Image, ImageChops

from generator.documents.bench_card import (
    MOST_COLUMNS,
    card_orders,
    check_cards,
    compose_card,
    compose_cards,
    groups,
)
from generator.documents.blocks import BenchCard, Document
from generator.documents.card_room import SIDE, height
from generator.documents.card_rows import has_card
from generator.documents.figures import bench_order
from generator.documents.task import Task
from generator.drawings.registry import draw
from generator.model.folder import Project, load_folder
from generator.model.jobs import Job
from generator.problems import ProblemLog
from generator.quantities.ledger import Ledger, OpeningLedger
from generator.quantities.work import work_out
from generator.rendering.html import render_sheet
from generator.rendering.pdf import render_pdf
from generator.rendering.themes import load_theme
from generator.shipped import shipped
from generator.wording import ENGLISH
from generator.wording.report import report
from tests.checkers.findings import listed
from tests.checkers.pdf_ua import facts, text_of, ua_failures
from tests.checkers.true_scale import outlines

DOORS = "Reading Room doors"


@cache
def demo() -> Project:
    return load_folder(shipped("methods").parent, ProblemLog())


def carded_jobs() -> list[str]:
    jobs = [job for job in demo().jobs if has_card(_method(job))]
    assert len(jobs) >= 2
    return [job.job.value for job in jobs]


def _method(job: Job) -> object:
    method = demo().method(job.method.value)
    assert method is not None
    return method


@cache
def task_of(name: str) -> Task:
    job = next(job for job in demo().jobs if job.job.value == name)
    ledger = work_out(demo().method(job.method.value), job, demo(), ProblemLog())  # type: ignore[arg-type]
    orders = {*card_orders(ledger), *filter(None, (bench_order(ledger, one) for one in ledger.openings))}
    drawn = {order: draw(order.name, dict(order.values), order.width) for order in orders}
    return Task(project=demo(), ledger=ledger, pictures=drawn, language=ENGLISH)


def choices(ledger: Ledger) -> Iterator[tuple[OpeningLedger, ...]]:
    """Openings for one card: each alone, and the first two, three and four together."""
    yield from ((opening,) for opening in ledger.openings)
    yield from (ledger.openings[:count] for count in range(2, min(len(ledger.openings), MOST_COLUMNS) + 1))


def printed(cards: tuple[BenchCard, ...], folder: Path) -> Path:
    whole = replace(compose_cards(task_of(DOORS)), blocks=cards)
    return laid(whole, folder)


def laid(document: Document, folder: Path) -> Path:
    theme = load_theme()
    file = folder / "card.pdf"
    file.write_bytes(render_pdf(render_sheet(document, theme), theme))
    return file


@pytest.fixture(scope="module")
def together(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The four doors on one card."""
    task = task_of(DOORS)
    card = compose_card(task, task.ledger.openings)
    assert card is not None
    return printed((card,), tmp_path_factory.mktemp("together"))


@pytest.mark.parametrize("name", carded_jobs())
def test_every_opening_of_the_demonstration_has_one_side(name: str, tmp_path: Path) -> None:
    task = task_of(name)
    cards = [compose_card(task, openings) for openings in choices(task.ledger)]
    assert None not in cards
    kept = tuple(replace(card, key=f"card-{place}") for place, card in enumerate(cards) if card)
    unique = tuple(
        replace(card, figure=replace(card.figure, key=f"{card.key}-drawing") if card.figure else None)
        for card in kept
    )
    assert facts(printed(unique, tmp_path)).pages == len(cards)


def test_the_doors_share_a_card_and_have_one_each() -> None:
    task = task_of(DOORS)
    assert [len(openings) for openings in groups(task.ledger)] == [4, 1, 1, 1, 1]
    five = replace(task.ledger, openings=(*task.ledger.openings, task.ledger.openings[0]))
    assert [len(openings) for openings in groups(five)] == [1, 1, 1, 1, 1]
    one = replace(task.ledger, openings=task.ledger.openings[:1])
    assert [len(openings) for openings in groups(one)] == [1]


def test_the_sizes_are_those_worked_out_at_each_opening() -> None:
    """Opening 2 by hand: 844 + 2 x 5 + 2 x 24 = 902 over the legs; 844 + 2 x 9 + 2 x 69 = 1000 long point."""
    task = task_of(DOORS)
    card = compose_card(task, task.ledger.openings)
    assert card is not None
    assert [column.mark for column in card.columns] == ["1", "2", "3", "4"]
    assert {row.label: row.sizes for row in card.rows} == {
        "Packer": ("8.5", "9.0", "7.5", "8.0"),
        "Packer legs": ("1993", "1993", "1995", "1992"),
        "Packer head": ("826", "902", "826", "750"),
        "Head": ("924", "1000", "924", "848"),
        "Legs": ("2066", "2066", "2068", "2065"),
    }


def test_the_section_is_full_size(together: Path) -> None:
    cut = [outline.size for outline in outlines(together) if outline.width and 0.45 < outline.width < 0.55]
    assert any(size == pytest.approx((24.0, 8.5), abs=0.1) for size in cut)
    assert any(size == pytest.approx((69.0, 18.0), abs=0.1) for size in cut)


def test_a_card_is_black_alone(together: Path) -> None:
    subprocess.run(
        ["pdftoppm", "-r", "60", "-png", "-singlefile", together, together.with_suffix("")], check=True
    )
    picture = Image.open(together.with_suffix(".png")).convert("RGB")
    spread = [ImageChops.difference(*pair).getextrema()[1] for pair in combinations(picture.split(), 2)]
    assert max(spread) <= 3


def test_a_card_says_who_signs_what_stops_the_job_and_whom_to_call(together: Path) -> None:
    text = " ".join(text_of(together).split())
    for said in (
        "Hold points: wait for Marit Sallowfield, 07700 900214",
        "Before packers are covered, after step 6",
        "both the porch and the kitchen door would be blocked.",
        "Owen Tacebury; kit and eyewash on the hall table.",
        "C01",
    ):
        assert said in text
    assert "Page 1 of 1" in text


def test_a_card_conforms_to_pdf_ua(together: Path) -> None:
    assert listed(ua_failures(together)) == ""


def test_of_a_card_too_full_the_drawing_goes_first_then_the_order(tmp_path: Path) -> None:
    task = task_of(DOORS)
    job = task.job
    assert job is not None
    forms = []
    for more in range(0, 28, 3):
        longer = job.model_copy(update={"stop_if": (*job.stop_if, *job.stop_if[:1] * more)})
        full = replace(task, ledger=replace(task.ledger, job=longer))
        card = compose_card(full, task.ledger.openings)
        forms.append((bool(card.figure), not card.close, bool(card.order)) if card else None)
        if card:
            assert height(card) <= SIDE
            assert facts(printed((card,), tmp_path)).pages == 1
    assert list(dict.fromkeys(forms)) == [
        (True, True, True),
        (False, True, True),
        (False, False, True),
        (False, False, False),
        None,
    ]


def test_a_card_that_no_side_can_hold_is_a_fault_and_names_its_openings() -> None:
    task = task_of(DOORS)
    job = task.job
    assert job is not None
    endless = job.model_copy(update={"stop_if": job.stop_if * 40})
    log = ProblemLog()
    check_cards(replace(task.ledger, job=endless), demo(), log)
    assert [problem.code for problem in log] == ["card-of-openings-too-long"] * 5
    assert [problem.values["openings"] for problem in log] == ["1, 2, 3, 4", "1", "2", "3", "4"]


def test_the_demonstration_has_no_card_too_long() -> None:
    log = ProblemLog()
    for name in carded_jobs():
        check_cards(task_of(name).ledger, demo(), log)
    assert list(log) == []


def test_a_card_too_long_of_a_job_without_a_survey_names_no_opening() -> None:
    task = next(task for task in map(task_of, carded_jobs()) if task.ledger.openings[0].row is None)
    job = task.job
    assert job is not None
    endless = job.model_copy(update={"stop_if": job.stop_if * 40})
    log = ProblemLog()
    check_cards(replace(task.ledger, job=endless), demo(), log)
    assert [report(problem).says for problem in log] == [
        f"The bench card of “{job.job.value}” does not fit on one side of paper."
    ]
