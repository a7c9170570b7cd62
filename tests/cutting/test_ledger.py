"""Cutting plans asked for in a method, from the pieces of every opening of a job."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.quantities.cutting.plans import cutting_orders, cutting_plans, plans_from
from generator.quantities.cutting.task import work as solve_order
from tests.quantities.folders import SIZES, job_text, method_text, work

TRIM = """
end_trim:
  label: Cut off each end
  policy: {default: 10 mm, least: 0 mm, most: 50 mm}
"""
PIECES = """
set:
  label: Architrave
  work: |
    architrave_set(opening_width = opening_width, opening_height = 1990 mm, quirk = first_quirk,
      head_width = architrave.width, leg_over = 5 mm)
strips:
  label: Packers
  work: |
    packer_set(opening_width = opening_width, opening_height = 1990 mm, first_quirk = first_quirk,
      packer_width = 24 mm, thickness = round_up(mean(set_back), 0.5 mm))
"""
CUTTING = "cutting: {plan: {of: architrave, pieces: set.pieces, saw_kerf: 3 mm, end_trim: end_trim}}"
CATALOGUE = """
format: 1
materials:
  strip:
    label: A strip
    kind: planed timber
    width: 24 mm
    source: "Made up for a test."
"""


def method(cutting: str = CUTTING) -> str:
    return method_text(PIECES, sizes=SIZES + TRIM, more=cutting)


def faults(tmp_path: Path, cutting: str, job: str = "") -> list[str]:
    done = work(tmp_path, method(cutting), job_text(more=job))
    assert cutting_plans(done.ledger, done.project, done.log) == ()
    return done.faults


@pytest.mark.parametrize(("width", "kept"), [("23 mm", False), ("24 mm", True), ("30 mm", True)])
def test_no_piece_is_planned_from_a_material_narrower_than_it_is(
    width: str, kept: bool, tmp_path: Path
) -> None:
    strip = CATALOGUE.replace("width: 24 mm", f"width: {width}\n    stock: [3 m]")
    (tmp_path / "methods" / "catalogue").mkdir(parents=True)
    (tmp_path / "methods" / "catalogue" / "own.yaml").write_text(strip, encoding="utf-8")
    text = method("cutting: {plan: {of: packing, pieces: strips.pieces, saw_kerf: 3 mm}}")
    text = text.replace("glue: wood-glue}", "glue: wood-glue, packing: strip}")
    done = work(tmp_path, text, job_text())
    assert bool(cutting_plans(done.ledger, done.project, done.log)) is kept
    told = "".join(fault.partition(" error: ")[2] for fault in done.faults)
    wanted = (
        "The cutting plan “plan” wants pieces 24 mm wide, and “strip”, bound to packing, is 23 mm "
        "wide. | Bind a wider material to packing, or make the pieces narrower."
    )
    assert told == ("" if kept else wanted)


def test_the_pieces_of_all_openings_make_one_plan(tmp_path: Path) -> None:
    done = work(tmp_path, method(), job_text())
    (plan,) = cutting_plans(done.ledger, done.project, done.log)
    assert done.faults == []
    assert [(cut.mark, cut.length / 2, cut.over / 2, cut.hand) for cut in plan.order.pieces] == [
        ("1AL", 2069, 5, "left"), ("1AH", 916, 0, ""), ("1AR", 2069, 5, "right"),
        ("2AL", 2069, 5, "left"), ("2AH", 992, 0, ""), ("2AR", 2069, 5, "right"),
    ]  # fmt: skip
    assert (plan.order.trim, plan.order.kerf, plan.order.habit) == (20, 3, 10)
    assert plan.proven


def test_without_a_job_the_example_is_planned_and_marks_have_no_opening(tmp_path: Path) -> None:
    done = work(tmp_path, method())
    (plan,) = cutting_plans(done.ledger, done.project, done.log)
    assert [cut.mark for cut in plan.order.pieces] == ["AL", "AH", "AR"]


def test_pieces_of_unlike_section_are_planned_apart(tmp_path: Path) -> None:
    cutting = "cutting: {plan: {of: architrave, pieces: strips.pieces, saw_kerf: 3 mm, waste_habit: 15 %}}"
    done = work(tmp_path, method(cutting), job_text())
    plans = cutting_plans(done.ledger, done.project, done.log)
    sections = [(plan.order.width, plan.order.thickness, len(plan.order.pieces)) for plan in plans]
    assert [(float(width), float(thick or 0), count) for width, thick, count in sections] == [
        (24, 9, 3), (24, 8, 3),
    ]  # fmt: skip
    assert {plan.order.habit for plan in plans} == {15}


def test_lengths_on_hand_come_from_the_job(tmp_path: Path) -> None:
    done = work(tmp_path, method(), job_text(more="offcuts: {architrave: [1.1 m, 1.1 m, 2.3 m]}"))
    (plan,) = cutting_plans(done.ledger, done.project, done.log)
    kept = {(stock.length / 2, stock.on_hand) for stock in plan.order.stock if stock.on_hand}
    assert kept == {(1100, 2), (2300, 1)}
    assert plan.totals is not None
    assert sum(bar.on_hand for bar in plan.bars) == 3


def test_the_plans_may_be_worked_out_elsewhere(tmp_path: Path) -> None:
    done = work(tmp_path, method(), job_text())
    orders = cutting_orders(done.ledger, done.project, done.log)
    made = [solve_order(order) for order in orders]
    assert plans_from(done.ledger, orders, made, done.log) == cutting_plans(
        done.ledger, done.project, done.log
    )


@pytest.mark.parametrize(
    ("cutting", "fault"),
    [
        (
            "cutting: {plan: {of: architrave, pieces: first_quirk, saw_kerf: 3 mm}}",
            "“first_quirk” holds no pieces to cut. | Expected the pieces of a calculator, such as "
            "architrave_lengths.pieces.",
        ),
        (
            "cutting: {plan: {of: architrave, pieces: set.metres, saw_kerf: 3 mm}}",
            "“set.metres” holds no pieces to cut. | Expected the pieces of a calculator, such as "
            "architrave_lengths.pieces.",
        ),
        (
            "cutting: {plan: {of: architrave, pieces: set.pieces}}",
            "The cutting plan “plan” does not say what the saw takes. | Write it as saw_kerf: 3 mm.",
        ),
        (
            "cutting: {plan: {of: architrave, pieces: set.pieces, saw_kerf: 3 mm, end_trim: opening_width}}",
            "“opening_width” is no single length of the whole job. | Expected a size such as an end trim of "
            "10 mm.",
        ),
        (
            "cutting: {plan: {of: glue, pieces: set.pieces, saw_kerf: 3 mm}}",
            "The material “wood-glue”, which is bound to glue, has no stock lengths to cut from. | Write "
            "them in the catalogue, such as stock: [2.1 m, 4.2 m].",
        ),
    ],
)
def test_a_plan_that_cannot_be_asked_is_a_fault_at_its_place(
    tmp_path: Path, cutting: str, fault: str
) -> None:
    (only,) = faults(tmp_path, cutting)
    assert only.endswith(f"error: {fault}")
    assert only.startswith("t.yaml:")


def test_a_piece_that_is_too_long_is_a_fault_of_the_plan(tmp_path: Path) -> None:
    tall = PIECES.replace("1990 mm", "5000 mm")
    done = work(tmp_path, method_text(tall, sizes=SIZES + TRIM, more=CUTTING), job_text())
    (plan,) = cutting_plans(done.ledger, done.project, done.log)
    assert plan.bars == ()
    (only,) = done.faults
    assert only.endswith(
        "error: The cutting plan “plan” cannot be made: 1AL is 5079 mm long and the longest piece its stock "
        "gives is 4380 mm. | Expected longer stock, shorter pieces or more lengths."
    )


@pytest.mark.parametrize("prices", ["[£4.20]", "[£4.20, £0]"])
def test_prices_that_do_not_match_the_lengths_are_a_fault(tmp_path: Path, prices: str) -> None:
    folder = tmp_path / "methods" / "catalogue"
    folder.mkdir(parents=True)
    entry = f"    stock: [2.1 m, 4.2 m]\n    prices: {prices}\n"
    (folder / "own.yaml").write_text(CATALOGUE.lstrip() + entry)
    done = work_beside(tmp_path, "materials: {architrave: strip}")
    assert cutting_plans(done.ledger, done.project, done.log) == ()
    (only,) = done.faults
    assert "The material “strip” has 2 stock lengths and" in only


def test_prices_make_the_cheapest_plan(tmp_path: Path) -> None:
    folder = tmp_path / "methods" / "catalogue"
    folder.mkdir(parents=True)
    entry = "    stock: [2.1 m, 4.2 m]\n    prices: [£4.20, £9.99]\n"
    (folder / "own.yaml").write_text(CATALOGUE.lstrip() + entry)
    done = work_beside(tmp_path, "materials: {architrave: strip}")
    plans = cutting_plans(done.ledger, done.project, done.log)
    bars = [bar for plan in plans for bar in plan.bars]
    assert {(bar.stock.length / 2, bar.stock.price) for bar in bars} <= {(2100, 420), (4200, 999)}
    assert sum(plan.totals.cost or 0 for plan in plans if plan.totals) == sum(
        bar.stock.price or 0 for bar in bars
    )
    assert all(plan.proven for plan in plans) and plans


def work_beside(tmp_path: Path, more: str):  # type: ignore[no-untyped-def]
    """The job worked out in a folder that has a catalogue already."""
    jobs = tmp_path / "methods" / "jobs"
    jobs.mkdir()
    from generator.model.folder import load_folder
    from generator.problems import ProblemLog
    from generator.quantities.work import work_out
    from tests.quantities.folders import SURVEY, Worked

    plain = CUTTING.replace(", end_trim: end_trim", "").replace("set.pieces", "strips.pieces")
    (tmp_path / "methods" / "t.yaml").write_text(method(plain))
    (jobs / "j.yaml").write_text(job_text(more=more))
    (jobs / "doors.csv").write_text(SURVEY.lstrip().replace("8.5\n", "8.5\n").replace("9.1", "8"))
    log = ProblemLog()
    project = load_folder(tmp_path, log)
    ledger = work_out(project.methods[0], project.jobs[0], project, log)
    return Worked(project=project, ledger=ledger, log=log)
