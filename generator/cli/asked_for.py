"""The method and the job that a command line names, worked out."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from generator.cli.folders import user_folder
from generator.cli.wrong_use import WrongUse
from generator.model.catalogue import Tool
from generator.model.folder import Project, load_folder
from generator.model.jobs import Job
from generator.model.method import Method
from generator.problems import ProblemLog, nearest
from generator.quantities.ledger import Ledger
from generator.quantities.work import work_out


def ledger_asked_for(
    method: str, job: str | None, folder: Path, log: ProblemLog
) -> tuple[Ledger, Mapping[str, Tool]]:
    """The ledger of a method, by number or file, and of a job of it, by file, name or title; with all tools.

    A method given by its file is looked for in that file's folder. Raises WrongUse for what is not there.
    """
    place = user_folder(Path(method) if Path(method).is_file() else folder)
    project = load_folder(place, log)
    found = _method(project, method, place)
    ledger = work_out(found, _job(project, found, job, place) if job else None, project, log)
    return ledger, project.catalogue.tools


def _method(project: Project, name: str, folder: Path) -> Method:
    known = {each.method.value: each for each in project.methods}
    by_file = (each for each in project.methods if Path(each.span.file).resolve() == Path(name).resolve())
    found = known.get(name) or next(by_file, None)
    if found is None:
        raise WrongUse("no-such-method", name=name, folder=folder, **_others(name, known))
    return found


def _job(project: Project, method: Method, name: str, folder: Path) -> Job:
    jobs = [job for job in project.jobs if job.method.value == method.method.value]
    known = {Path(job.span.file).stem: job for job in jobs}
    other_names = {str(job.job): job for job in jobs} | {Path(job.span.file).name: job for job in jobs}
    by_file = (job for job in jobs if Path(job.span.file).resolve() == Path(name).resolve())
    found = known.get(name) or other_names.get(name) or next(by_file, None)
    if found is None:
        number = method.method.value
        raise WrongUse("no-such-job", name=name, method=number, folder=folder, **_others(name, known))
    return found


def job_asked_for(name: str, folder: Path) -> Path:
    """The file of a job in a folder, by its file or its name; raises WrongUse for what is not there."""
    files = {path.stem: path for path in sorted((folder / "methods" / "jobs").glob("*.yaml"))}
    if Path(name).is_file():
        return Path(name)
    found = files.get(name.removesuffix(".yaml"))
    if found is None:
        raise WrongUse("no-job-to-issue", name=name, folder=folder, **_others(name, files))
    return found


def _others(name: str, known: Mapping[str, object]) -> Mapping[str, str]:
    return {"known": ", ".join(known) or "none is there", "nearest": nearest(name, known)}
