"""The line itself: read and assess everything; then compose each document, print it, and lay the site out.

Checking comes first and whole, since any error anywhere stops the publication. What is made of one method
or job is one step for the crew: it rests on the files of that pair and on those that all share.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path

from generator.model.folder import Project, load_folder
from generator.pipeline.compositions import compose, compose_page_of_all, composition
from generator.pipeline.faults import find_faults
from generator.pipeline.inputs import Inputs, read_inputs
from generator.pipeline.pairs import Pair, pairs_of
from generator.pipeline.prints import Sheet, assets, hash_of_files, make_assets, print_sheet
from generator.pipeline.told import heard_from_bytes
from generator.problems import ProblemLog
from generator.publishing.crew import Crew, Task
from generator.rendering.themes import Theme, load_theme
from generator.safety.returns import check_strangers


@dataclass(frozen=True, slots=True, kw_only=True)
class Assessed:
    """A user's folder read and checked: its input files, its theme, and the pairs to make documents of."""

    inputs: Inputs
    theme: Theme
    pairs: tuple[Pair, ...]


def assess(folder: Path, log: ProblemLog, crew: Crew) -> Assessed:
    """Read and check all of a user's folder; all faults go to the log, and none hides another."""
    inputs, project = _read(folder, log)
    check_strangers(project.methods, project.jobs, log)
    theme = load_theme(user_root=folder)
    pairs = pairs_of(project, inputs, theme)
    for found in crew.perform("Checking", [_check(pair) for pair in pairs]):
        log.take_all(heard_from_bytes(found))
    return Assessed(inputs=inputs, theme=theme, pairs=pairs)


def make_site(assessed: Assessed, crew: Crew) -> Mapping[str, bytes]:
    """Every file of the site by its path; nothing that was assessed may have a fault."""
    pairs, theme = assessed.pairs, assessed.theme
    *composed, index = crew.perform("Drawing and composing", [*map(_compose, pairs), _compose_index(pairs)])
    laid_out = [composition(made) for made in composed]
    hash_of_theme = hash_of_files(theme)
    to_print = {f"{pair.name}.pdf": each.sheet for pair, each in zip(pairs, laid_out, strict=True)}
    to_print |= {pair.card: each.card for pair, each in zip(pairs, laid_out, strict=True) if pair.card}
    printing = [_print(sheet, theme, hash_of_theme) for sheet in to_print.values()]
    *printed, shared = crew.perform("Printing", [*printing, _share(theme, hash_of_theme)])
    return {
        "index.html": index,
        **{f"{pair.name}.html": each.page.encode() for pair, each in zip(pairs, laid_out, strict=True)},
        **dict(zip(to_print, printed, strict=True)),
        **{name: svg.encode() for each in laid_out for name, svg in each.drawings.items()},
        **{f"assets/{name}": content for name, content in assets(shared).items()},
    }


def _read(folder: Path, log: ProblemLog) -> tuple[Inputs, Project]:
    """The project with the hashes of exactly the files it was read from, even while an editor saves."""
    while True:
        inputs, found = read_inputs(folder), ProblemLog()
        project = load_folder(folder, found)
        if read_inputs(folder) == inputs:
            log.take_all(found)
            return inputs, project


def _check(pair: Pair) -> Task:
    return Task(step="faults", work=find_faults, of=pair, by=pair.by)


def _compose(pair: Pair) -> Task:
    return Task(step="composition", work=compose, of=pair, by=pair.by)


def _compose_index(pairs: tuple[Pair, ...]) -> Task:
    return Task(step="index", work=compose_page_of_all, of=pairs, by=_all_files(pairs))


def _all_files(pairs: Iterable[Pair]) -> Mapping[str, str]:
    return {file: value for pair in pairs for file, value in pair.by.items()}


def _print(html: str, theme: Theme, hash_of_theme: str) -> Task:
    return Task(step="sheet", work=print_sheet, of=Sheet(html=html, theme=theme), by=(html, hash_of_theme))


def _share(theme: Theme, hash_of_theme: str) -> Task:
    return Task(step="assets", work=make_assets, of=theme, by=hash_of_theme)
