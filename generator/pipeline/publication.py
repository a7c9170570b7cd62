"""Publishing: the line travelled from end to end, or found already travelled with the same input."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path

from generator.memory import Memory
from generator.pipeline.inputs import Inputs, read_inputs
from generator.pipeline.told import heard, told
from generator.problems import Problem, ProblemLog
from generator.publishing.crew import Crew
from generator.publishing.progress import UNWATCHED, Progress
from generator.publishing.site import Laid, lay_down, standing

STEP = "publication"


@dataclass(frozen=True, slots=True, kw_only=True)
class Publication:
    """How a run of publishing ended.

    `laid` is None when nothing was written: for faults, or, with `unchanged`, because the same publication
    stands already. `notices` speak of the machine and are no faults of the files.
    """

    problems: tuple[Problem, ...]
    laid: Laid | None = None
    unchanged: bool = False
    notices: tuple[Problem, ...] = ()


def publish(
    folder: Path, memory: Memory, workers: int, *, strict: bool = False, progress: Progress = UNWATCHED
) -> Publication:
    """Make the site of `folder` in its `output/site`, and apart from it the tutor's packs in `output/tutor`.

    Nothing is made that stands there already, or while a fault forbids it.

    With `strict` a warning forbids it too. Raises MachineLacks when the machine cannot do it.
    """
    inputs = read_inputs(folder)
    key = memory.key(STEP, inputs.payload())
    known = _recalled(memory, key, folder / "output")
    if known is not None and not (strict and known):
        return Publication(problems=known, unchanged=True)
    return _make(inputs, key, memory, workers, strict, progress)


def _make(
    inputs: Inputs, key: str, memory: Memory, workers: int, strict: bool, progress: Progress
) -> Publication:
    # The rooms of the line are imported only by a run that has something to do.
    from generator.pipeline.line import SITE, assess, make_publications

    log = ProblemLog()
    with Crew(memory, workers, progress) as crew:
        assessed = assess(inputs.folder, log, crew)
        if forbidden(log, strict):
            return Publication(problems=tuple(log))
        made = make_publications(assessed, crew)
    # The site comes last, so that whoever sees the new one can also look up its answers.
    laid = {name: lay_down(inputs.folder / "output", files, name) for name, files in made.items()}
    if assessed.inputs == inputs:
        memory.keep(key, _recorded({name: each.digest for name, each in laid.items()}, log))
    notices = (memory.trouble,) if memory.trouble else ()
    return Publication(problems=tuple(log), laid=laid[SITE], notices=notices)


def forbidden(log: ProblemLog, strict: bool) -> bool:
    """True when what was found forbids publishing."""
    return log.has_errors or (strict and len(log) > 0)


def _recorded(digests: Mapping[str, str], problems: Iterable[Problem]) -> bytes:
    return json.dumps({"digests": dict(digests), "problems": told(problems)}).encode()


def _recalled(memory: Memory, key: str, output: Path) -> tuple[Problem, ...] | None:
    """What the same input brought to light when it was published, or None unless it stands published."""
    entry = memory.recall(key)
    if entry is None:
        return None
    record = json.loads(entry)
    stand = all(standing(output, digest, name) for name, digest in record["digests"].items())
    return heard(record["problems"]) if stand else None
