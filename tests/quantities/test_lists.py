"""Lists of sizes: an empty one in a job says that there are none, and a method has an example."""

from __future__ import annotations

from pathlib import Path

from generator.model.folder import load_folder
from generator.problems import ProblemLog
from generator.wording.report import report_text
from tests.quantities.folders import folder, method_text, work

SIZES = """
walls:
  label: Walls
  readings: true
  measured: {example: [4 m, 3 m, 4 m, 3 m], least: 100 mm, most: 20 m}
corners:
  label: Corners
  readings: true
  measured: {example: [90 deg, 90 deg, 90 deg, 90 deg], least: 20 deg, most: 340 deg}
door_walls:
  label: Door walls
  readings: true
  measured: {example: [1], least: 1, most: 40}
door_starts:
  label: Door starts
  readings: true
  measured: {example: [1 m], least: 0 mm, most: 20 m}
door_widths:
  label: Door widths
  readings: true
  measured: {example: [900 mm], least: 300 mm, most: 5 m}
"""
QUANTITIES = """
shape:
  label: Room
  work: room(walls = walls, corners = corners)
run:
  label: Skirting
  work: |
    skirting_run(room = shape, thickness = 15 mm, door_walls = door_walls, door_starts = door_starts,
      door_widths = door_widths, longest = 4.2 m, joint_clear = 300 mm)
net:
  label: Wall
  work: run.net
"""
JOB = """
format: 1
job: A job
method: T-1
sizes:
  walls: [4 m, 3 m, 4 m, 3 m]
  corners: [90 deg, 90 deg, 90 deg, 90 deg]
  door_walls: {walls}
  door_starts: {starts}
  door_widths: {widths}
"""


def test_a_job_says_by_empty_lists_that_a_room_has_no_door(tmp_path: Path) -> None:
    job = JOB.format(walls="[]", starts="[]", widths="[]").lstrip()
    done = work(tmp_path, method_text(QUANTITIES, sizes=SIZES), job)
    assert done.faults == []
    (opening,) = done.ledger.openings
    assert opening.entries["net"].result.number == 14000  # type: ignore[union-attr]


def test_lists_of_different_lengths_are_a_fault_at_the_argument(tmp_path: Path) -> None:
    job = JOB.format(walls="[1]", starts="[1 m]", widths="[]").lstrip()
    done = work(tmp_path, method_text(QUANTITIES, sizes=SIZES), job)
    assert len(done.faults) == 1
    assert "“door_widths” has 0 entries for the whole job." in done.faults[0]
    assert "Expected 1, one beside each entry of the list it belongs to." in done.faults[0]


def test_a_method_without_an_example_in_its_list_is_a_fault(tmp_path: Path) -> None:
    sizes = SIZES.replace("example: [1], least: 1, most: 40", "example: []")
    done = work(tmp_path, method_text(QUANTITIES, sizes=sizes), sound=False)
    assert any("“door_walls” has an empty list to start from." in fault for fault in done.faults)


def test_a_list_where_one_value_stands_is_a_fault(tmp_path: Path) -> None:
    sizes = SIZES + "gap:\n  label: Gap\n  chosen: {default: 5 mm, least: 0 mm, most: 9 mm}\n"
    job = JOB.format(walls="[1]", starts="[1 m]", widths="[900 mm]").lstrip() + "  gap: []\n"
    log = ProblemLog()
    load_folder(folder(tmp_path, method_text(QUANTITIES, sizes=sizes), job), log)
    assert "“gap” has one value, and a list stands here." in report_text(log)
