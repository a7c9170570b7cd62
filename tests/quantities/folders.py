"""Small folders of a user, written to disk and worked out, with the faults as lines of text."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from textwrap import dedent, indent

from generator.model.folder import Project, load_folder
from generator.problems import Problem, ProblemLog
from generator.quantities.ledger import Ledger
from generator.quantities.work import work_out
from generator.wording.faults import words

SIZES = """
opening_width:
  label: Clear width
  measured: {example: 768 mm, least: 300 mm, most: 3 m}
set_back:
  label: Plaster proud
  measured: {example: [7.5 mm, 8 mm, 8.5 mm], least: -40 mm, most: 40 mm}
  readings: true
first_quirk:
  label: First quirk
  chosen: {default: 5 mm, least: 0 mm, most: 12 mm}
hinge_side:
  label: Hinges
  chosen: {default: left, from: [left, right]}
ripping_step:
  label: Ripping step
  policy: {default: 0.5 mm, least: 0 mm, most: 2 mm}
"""
QUANTITIES = """
head:
  label: Head
  work: opening_width + 2 * first_quirk
"""
METHOD = """
format: 1
method: T-1
title: A test
stage: second fixing
summary: |
{summary}
sizes:
{sizes}
materials: {{architrave: torus-69x18-mdf, glue: wood-glue}}
quantities:
{quantities}
{more}
steps:
  - title: One
    do: ["{do}"]
    why: "Because."
    minutes: 5
"""
JOB = """
format: 1
job: A job
method: T-1
sizes: {sizes}
survey: {{file: doors.csv, unit: mm, key: [opening]}}
{more}
"""
SURVEY = """
opening,name,opening_width,set_back@left:0,set_back@head:0,set_back@right:0
1,Porch,768,7.5,8,8.5
2,Hall,844,8,8.5,9.1
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Worked:
    """What came of a folder."""

    project: Project
    ledger: Ledger
    log: ProblemLog

    @property
    def faults(self) -> list[str]:
        """Each fault as "file:line severity: what is wrong | what was expected"."""
        return [_line(problem) for problem in self.log]


def _line(problem: Problem) -> str:
    says, expected = words(problem)
    span = problem.span
    place = (
        f"{Path(span.file).name}:{span.line}:{span.text[span.column - 1 :][: span.length]}" if span else ""
    )
    return f"{place} {problem.severity.value}: {says} | {expected}"


def method_text(
    quantities: str = QUANTITIES,
    *,
    sizes: str = SIZES,
    summary: str = "Summary.",
    do: str = "Do it.",
    more: str = "",
) -> str:
    """A whole method with the given parts."""
    return METHOD.format(
        summary=indent(dedent(summary).strip(), "  "),
        sizes=indent(dedent(sizes).strip(), "  "),
        quantities=indent(dedent(quantities).strip(), "  "),
        more=dedent(more).strip(),
        do=do,
    ).lstrip()


def job_text(sizes: str = "{}", more: str = "") -> str:
    """A whole job of that method."""
    return JOB.format(sizes=sizes, more=dedent(more).strip()).lstrip()


def folder(tmp_path: Path, method: str, job: str = "", survey: str = SURVEY, house: str = "") -> Path:
    """The folder written to disk."""
    jobs = tmp_path / "methods" / "jobs"
    jobs.mkdir(parents=True)
    (tmp_path / "methods" / "t.yaml").write_text(method)
    if job:
        (jobs / "j.yaml").write_text(job)
        (jobs / "doors.csv").write_text(survey.lstrip())
    if house:
        (tmp_path / "methods" / "house-rules.yaml").write_text(dedent(house).lstrip())
    return tmp_path


def work(
    tmp_path: Path, method: str, job: str = "", survey: str = SURVEY, house: str = "", *, sound: bool = True
) -> Worked:
    """The method worked out on its examples, or its job where one is given; reading must find no fault."""
    log = ProblemLog()
    project = load_folder(folder(tmp_path, method, job, survey, house), log)
    assert not (sound and len(log)), [_line(problem) for problem in log]
    ledger = work_out(project.methods[0], project.jobs[0] if job else None, project, log)
    return Worked(project=project, ledger=ledger, log=log)
