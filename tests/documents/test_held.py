"""The stair of the demonstration in its statement: figures held against documents, pieces told together."""

from __future__ import annotations

import pytest

from generator.cli.figures import figures_of
from generator.documents.blocks import Table, Text
from generator.documents.held import held_figures
from generator.documents.pieces import piece_list
from generator.documents.task import Task
from generator.model.folder import Project
from generator.problems import ProblemLog
from generator.quantities.work import work_out
from generator.wording import ENGLISH
from generator.wording.report import words
from tests.documents.conftest import FOLDER
from tests.safety.folder import read_job

FILE = FOLDER / "methods" / "jobs" / "reading-room-stair.yaml"
METHOD, JOB = "SF-15", "Gallery stair balustrade"


@pytest.fixture(scope="module")
def stair(project: Project) -> Task:
    method = project.method(METHOD)
    job = next(job for job in project.jobs if job.job.value == JOB)
    assert method is not None
    return Task(
        project=project, ledger=work_out(method, job, project, ProblemLog()), pictures={}, language=ENGLISH
    )


def parts(task: Task) -> tuple[dict[str, tuple[str, ...]], dict[str, str]]:
    """The rows by their figure, and the documents by their letter."""
    (part,) = held_figures(task)
    table, documents = part.blocks
    assert isinstance(table, Table) and isinstance(documents, Text)
    rows = {row[0]: tuple(cell.replace("\u2009", " ") for cell in row[1:]) for row in table.rows}
    return rows, dict(str(line).split(": ", 1) for line in documents.text)


def test_each_figure_stands_beside_the_documents_with_how_well_that_is_known(stair: Task) -> None:
    rows, documents = parts(stair)
    assert rows["Rise"] == ("169.5 mm", "from 150 mm to 190 mm (B)", "Inside")
    assert documents["B"] == (
        "Approved Document K (England, 2013) Table 1.1, utility stair; not opened: check before relying "
        "on it."
    )
    assert rows["Guarding over the landing"] == ("1100 mm", "1100 mm or more (E)", "Inside")
    assert rows["Widest gap between balusters"] == ("98.5 mm", "less than 100 mm (G)", "Inside")
    assert documents["G"].endswith("children under five may be; read in a copy of the official text.")


def test_the_table_says_that_inside_is_no_approval_and_who_decides(stair: Task) -> None:
    (part,) = held_figures(stair)
    assert str(part.intro).startswith(
        "Each figure stands beside the one a document gives. To be inside is no"
    )
    rows, documents = parts(stair)
    assert rows["Greatest rise less least"] == (
        "7 mm",
        "5 mm or less (A)",
        "Outside; the designer has decided on it in writing",
    )
    assert documents["A"] == (
        "This firm's own number, for steps that should be all alike; decided by the firm."
    )


def test_a_job_in_which_nobody_has_decided_is_refused(project: Project, stair: Task) -> None:
    text = FILE.read_text(encoding="utf-8").replace("decided_by: designer", "decided_by: nobody yet")
    log = ProblemLog()
    work_out(stair.method, read_job(text), project, log)
    assert [words(problem)[0] for problem in log] == [
        "Flight, read step by step, the whole job: greatest rise less least is 7 mm, the most is 5 mm and "
        "nobody is named who decided on it."
    ]


def test_a_method_that_holds_nothing_has_no_such_table(guide_task: Task) -> None:
    assert held_figures(guide_task) == ()


def test_the_cutting_list_tells_pieces_alike_on_one_line(stair: Task) -> None:
    listed = piece_list(stair)
    assert listed is not None
    told = {piece.mark: piece for piece in listed.pieces}
    assert list(told) == [
        "RH", "LH", "RB", "LB", "R1 to R13", "L1 to L17", "RF1 to RF24", "RF25 to RF28", "LF1 to LF32",
        "LF33 to LF36",
    ]  # fmt: skip
    assert (told["R1 to R13"].count, told["R1 to R13"].long_point) == ("13", "814.6")
    assert told["R1 to R13"].ends.replace("\u2009", " ") == "32.9°, both one way"
    assert told["L1 to L17"].ends == "square"


def test_the_terminal_tells_them_so_too_and_a_held_figure_on_one_line(stair: Task) -> None:
    figures = {figure.name: figure for figure in figures_of(stair.ledger)}
    told = {name: figure.value for name, figure in figures.items()}
    assert (figures["guard.held.4"].number, figures["guard.held.4"].unit) == ("98.5", "mm")
    assert told["rake_cut.pieces.1 to 13.mark"] == "R1 to R13"
    assert told["rake_cut.pieces.1 to 13.long_point"] == "814.6 mm"
    assert "rake_cut.pieces.2.long_point" not in told
    assert told["guard.held.4"] == (
        "widest gap between balusters 98.5 mm; less than 100 mm by Approved Document K (England, 2013) "
        "section 3, where children under five may be, read in a copy of the official text: inside"
    )
