"""A job of three hundred doors: each on its own sizes, packers in batches, no row hiding another's fault."""

from __future__ import annotations

import random
import shutil
import time
from collections import defaultdict
from dataclasses import dataclass
from decimal import ROUND_CEILING, Decimal
from pathlib import Path

import pytest

from generator.model.folder import Project, load_folder
from generator.problems import ProblemLog
from generator.quantities.ledger import Ledger
from generator.quantities.ripping import ripping_batches
from generator.quantities.work import work_out

ROOT = Path(__file__).parents[2]
DOORS = 300
STATIONS = (
    "left:100", "left:700", "left:1300", "head:0", "head:350", "right:0", "right:700", "right:1300",
    "right:1900",
)  # fmt: skip
HEAD = "opening,face,name,opening_width,opening_height,frame_edge,plaster_overlap," + ",".join(
    f"set_back@{station}" for station in STATIONS
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Door:
    """One row as it is written; readings in half millimetres, so that sums are exact."""

    number: int
    width: int
    height: int
    readings: tuple[Decimal, ...]

    @property
    def row(self) -> str:
        """The row of the survey."""
        return f"{self.number},hall,Door {self.number},{self.width},{self.height},34,1," + ",".join(
            str(reading) for reading in self.readings
        )

    @property
    def packer(self) -> Decimal:
        """The packer by hand: the mean taken up to the next half millimetre."""
        halves = sum(self.readings) / len(self.readings) * 2
        return halves.to_integral_value(ROUND_CEILING) / 2


def doors(count: int = DOORS, seed: int = 20261124) -> tuple[Door, ...]:
    dice = random.Random(seed)
    return tuple(_door(number, dice) for number in range(1, count + 1))


def _door(number: int, dice: random.Random) -> Door:
    middle = dice.choice([6, 7, 8, 9, 10])
    return Door(
        number=number,
        width=dice.choice([692, 768, 844]),
        height=dice.randint(1985, 1995),
        readings=tuple(Decimal(dice.randint(2 * middle - 2, 2 * middle + 2)) / 2 for _ in STATIONS),
    )


def folder(tmp_path: Path, rows: list[str]) -> Path:
    """The demonstration's method and catalogue with the job's survey written anew."""
    shutil.copytree(ROOT / "methods", tmp_path / "methods")
    for job in (tmp_path / "methods" / "jobs").iterdir():
        if job.suffix == ".yaml" and job.stem != "reading-room-doors":
            job.unlink()
    survey = tmp_path / "methods" / "jobs" / "reading-room-doors.csv"
    survey.write_text("\n".join((HEAD, *rows)) + "\n", encoding="utf-8")
    return tmp_path


def loaded(tmp_path: Path, rows: list[str]) -> tuple[Project, ProblemLog]:
    log = ProblemLog()
    return load_folder(folder(tmp_path, rows), log), log


def worked(project: Project, log: ProblemLog) -> Ledger:
    job = next(job for job in project.jobs if job.job.value == "Reading Room doors")
    method = project.method(job.method.value)
    assert method is not None
    return work_out(method, job, project, log)


@pytest.fixture(scope="module")
def survey(tmp_path_factory: pytest.TempPathFactory) -> tuple[Ledger, float]:
    """The ledger of all doors, and the seconds it took to read and work them out."""
    rows = [door.row for door in doors()]
    folder_ = tmp_path_factory.mktemp("survey")
    began = time.perf_counter()
    project, log = loaded(folder_, rows)
    ledger = worked(project, log)
    assert [problem.code for problem in log if problem.severity.value == "error"] == []
    return ledger, time.perf_counter() - began


def test_every_door_has_its_own_packer(survey: tuple[Ledger, float]) -> None:
    found = [opening.entries["packer"].result.thickness.magnitude for opening in survey[0].openings]
    assert found == [door.packer for door in doors()]


def test_totals_are_those_of_the_rows_by_hand(survey: tuple[Ledger, float]) -> None:
    architrave, quirks = 69, 9
    by_hand = sum(
        door.width + 2 * (quirks + architrave) + 2 * (door.height + quirks + architrave - 2)
        for door in doors()
    )
    assert survey[0].job_entries["architrave_metres"].result.magnitude == by_hand


def test_packers_stand_in_batches_by_section(survey: tuple[Ledger, float]) -> None:
    expected: dict[Decimal, list[int]] = defaultdict(list)
    for door in doors():
        leg, head = door.height + 5 - 2, door.width + 2 * 5 + 2 * 24
        expected[door.packer] += [leg, head, leg]
    found = {
        batch.thickness.magnitude: (batch.pieces.number, batch.metres.number, batch.longest.number)
        for batch in ripping_batches(survey[0])
    }
    assert found == {
        thickness: (len(pieces), sum(pieces), max(pieces)) for thickness, pieces in expected.items()
    }
    assert sum(pieces for pieces, _, _ in found.values()) == 3 * DOORS


def test_batches_name_their_openings_each_once_thickest_first(survey: tuple[Ledger, float]) -> None:
    batches = ripping_batches(survey[0])
    marks = [mark for batch in batches for mark in batch.openings]
    assert sorted(marks, key=int) == [str(number) for number in range(1, DOORS + 1)]
    assert [batch.thickness.number for batch in batches] == sorted(
        (batch.thickness.number for batch in batches), reverse=True
    )


def test_the_order_of_rows_changes_no_batch(tmp_path: Path) -> None:
    few = list(doors(30))
    turned = [door.row for door in reversed(few)]
    straight = [door.row for door in few]

    def told(rows: list[str], where: str) -> set[tuple[object, ...]]:
        project, log = loaded(tmp_path / where, rows)
        return {
            (batch.thickness.value, batch.pieces.value, batch.metres.value, frozenset(batch.openings))
            for batch in ripping_batches(worked(project, log))
        }

    assert told(straight, "straight") == told(turned, "turned")


def test_bad_rows_are_all_told_and_hide_no_other(tmp_path: Path) -> None:
    count = 100
    rows = [door.row for door in doors(count)]
    rows[9] = rows[9].replace("hall,Door 10,", "hall,Door 10,wide")
    rows[49] = rows[49].replace(",34,1,", ",34,,")
    rows[98] = rows[98].replace(",34,1,", ",34,1 kg,")
    project, log = loaded(tmp_path, rows)
    told = [(problem.span.line, problem.code) for problem in log if problem.span]
    assert told == [(11, "size-word"), (51, "size-blank"), (100, "amount-dimension")]
    ledger, again = worked(project, ProblemLog()), doors(count)
    assert len(ledger.openings) == count
    sound = [n for n in range(count) if n not in (9, 49, 98)]
    packers = [ledger.openings[n].entries["packer"].result.thickness.magnitude for n in sound]
    assert packers == [again[n].packer for n in sound]


def test_it_is_read_and_worked_out_in_seconds(survey: tuple[Ledger, float]) -> None:
    """About two seconds on two quiet cores; the bound only catches work that grows with the square."""
    assert survey[1] < 30
