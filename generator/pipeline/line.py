"""The line itself: read, work out, assess; then draw, compose, render, print each document, and the index.

Checking comes first and whole, since any error anywhere stops the publication. What is made of one method
or job is one step for the crew: it rests on the files of that pair and on those that all share.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from generator.model.folder import Project, load_folder
from generator.pipeline.faults import find_faults
from generator.pipeline.inputs import Inputs, read_inputs
from generator.pipeline.pairs import Pair, pairs_of
from generator.pipeline.told import heard_from_bytes
from generator.problems import ProblemLog
from generator.publishing.crew import Crew, Task


@dataclass(frozen=True, slots=True, kw_only=True)
class Assessed:
    """A user's folder read and checked: its input files, its project, and the pairs to make documents of."""

    inputs: Inputs
    project: Project
    pairs: tuple[Pair, ...]


def assess(folder: Path, log: ProblemLog, crew: Crew) -> Assessed:
    """Read and check all of a user's folder; all faults go to the log, and none hides another."""
    inputs, project = _read(folder, log)
    pairs = pairs_of(project, inputs)
    tasks = [Task(step="faults", work=find_faults, of=pair, by=pair.by) for pair in pairs]
    for found in crew.perform("Checking", tasks):
        log.take_all(heard_from_bytes(found))
    return Assessed(inputs=inputs, project=project, pairs=pairs)


def _read(folder: Path, log: ProblemLog) -> tuple[Inputs, Project]:
    """The project with the hashes of exactly the files it was read from, even while an editor saves."""
    while True:
        inputs, found = read_inputs(folder), ProblemLog()
        project = load_folder(folder, found)
        if read_inputs(folder) == inputs:
            log.take_all(found)
            return inputs, project
