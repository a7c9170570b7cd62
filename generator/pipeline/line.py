"""The line itself: read and assess everything; then compose each document, print it, and lay the site out.

Checking comes first and whole, since any error anywhere stops the publication. What is made of one method
or job is one step for the crew: it rests on the files of that pair and on those that all share.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path

from generator.model.folder import METHODS, Project, load_folder
from generator.model.house import HouseRules
from generator.pipeline.compositions import (
    LIBRARY,
    Composition,
    compose,
    compose_pack,
    compose_pack_of_all,
    compose_page_of_all,
    composition,
    index_pages,
)
from generator.pipeline.faults import find_faults
from generator.pipeline.inputs import Inputs, read_inputs
from generator.pipeline.issues import issued_files
from generator.pipeline.pairs import Pair, company_of, pairs_of
from generator.pipeline.prints import Sheet, assets, hash_of_files, make_assets, print_sheet
from generator.pipeline.told import heard_from_bytes
from generator.problems import ProblemLog
from generator.publishing.crew import Crew, Task
from generator.publishing.parcel import parcel
from generator.register.book import Register, read_register
from generator.rendering.dressing import theme_of
from generator.rendering.logos import check_logo
from generator.rendering.offline import WORKER, offline_worker
from generator.rendering.search import INDEX, search_files, search_index
from generator.rendering.themes import Theme
from generator.safety.returns import check_strangers

SITE, TUTOR = "site", "tutor"


@dataclass(frozen=True, slots=True, kw_only=True)
class Assessed:
    """A user's folder read and checked: inputs, house rules, theme, register, and the pairs to be made."""

    inputs: Inputs
    house: HouseRules
    theme: Theme
    register: Register
    pairs: tuple[Pair, ...]


def assess(folder: Path, log: ProblemLog, crew: Crew) -> Assessed:
    """Read and check all of a user's folder; all faults go to the log, and none hides another."""
    inputs, project = _read(folder, log)
    check_strangers(project.methods, project.jobs, log)
    register = read_register(folder / METHODS, log)
    check_logo(project.house.company, folder / METHODS, log)
    theme = theme_of(project.house, folder, log)
    pairs = pairs_of(project, inputs, theme, register)
    for found in crew.perform("Checking", [_check(pair) for pair in pairs]):
        log.take_all(heard_from_bytes(found))
    return Assessed(inputs=inputs, house=project.house, theme=theme, register=register, pairs=pairs)


def compositions_of(pairs: tuple[Pair, ...], crew: Crew) -> tuple[Composition, ...]:
    """The composition of each pair, remembered like those of a publication."""
    return tuple(map(composition, crew.perform("Drawing and composing", [_compose(pair) for pair in pairs])))


def make_parcel(pair: Pair, composed: Composition, crew: Crew) -> bytes:
    """The parcel of one job's pair, as a publication has it."""
    sheets = sheets_of(pair, composed)
    printed, shared = _printed([*sheets.values()], pair.theme, crew)
    common = {f"assets/{name}": content for name, content in assets(shared).items()}
    return parcel_of(pair, composed, dict(zip(sheets, printed, strict=True)), common)


def make_publications(assessed: Assessed, crew: Crew) -> Mapping[str, Mapping[str, bytes]]:
    """Every file of the site and of the tutor's folder by its path; nothing assessed may have a fault."""
    pairs, theme = assessed.pairs, assessed.theme
    guides = tuple(pair for pair in pairs if pair.job is None)
    steps = [*map(_compose, pairs), *map(_compose_pack, guides), _compose_pack_index(guides)]
    *composed, index = crew.perform("Drawing and composing", [*steps, _compose_index(pairs)])
    laid_out = [composition(made) for made in composed]
    documents = dict(zip((pair.name for pair in pairs), laid_out[: len(pairs)], strict=True))
    packs = dict(zip((*(pair.pack for pair in guides), LIBRARY), laid_out[len(pairs) :], strict=True))
    sheets = {name: html for pair in pairs for name, html in sheets_of(pair, documents[pair.name]).items()}
    private = {f"{name}.pdf": each.sheet for name, each in packs.items()}
    printed, shared = _printed([*sheets.values(), *private.values()], theme, crew)
    common = {f"assets/{name}": content for name, content in assets(shared).items()}
    to_read = dict(zip(sheets, printed[: len(sheets)], strict=True))
    jobs = [(pair, documents[pair.name]) for pair in pairs if pair.job]
    site = {
        **index_pages(index),
        **search_files(_pages(documents), theme),
        **_pages(documents),
        **_abroad(documents),
        **to_read,
        **{name: content for _, each in jobs for name, content in _beside(each).items()},
        **{pair.parcel: parcel_of(pair, each, to_read, common) for pair, each in jobs},
        **common,
        **issued_files(assessed.register, company_of(pairs), theme),
    }
    return {
        TUTOR: _pages(packs) | dict(zip(private, printed[len(sheets) :], strict=True)) | common,
        SITE: site | {WORKER: offline_worker(site, _kept_together(pairs), theme)},
    }


def sheets_of(pair: Pair, composed: Composition) -> dict[str, str]:
    """The HTML of every sheet of a pair by the name of its file."""
    named = {f"{pair.name}.pdf": composed.sheet, pair.card: composed.card, pair.full_size: composed.full_size}
    return {name: html for name, html in named.items() if name and html}


def _kept_together(pairs: Iterable[Pair]) -> Mapping[str, tuple[str, ...]]:
    """The sheets that stay on a reader's device with each page."""
    sheets = {
        f"{pair.name}.html": tuple(name for name in (f"{pair.name}.pdf", pair.card) if name) for pair in pairs
    }
    abroad = {f"{tag}/{pair.name}.html": () for pair in pairs for tag in pair.tags}
    tags = {name.partition("/")[0] for name in abroad}
    return {
        "index.html": (INDEX,),
        **sheets,
        **abroad,
        **{f"{tag}/index.html": (f"{tag}/{INDEX}",) for tag in tags},
    }


def _pages(composed: Mapping[str, Composition]) -> dict[str, bytes]:
    return {f"{name}.html": each.page.encode() for name, each in composed.items()}


def _abroad(composed: Mapping[str, Composition]) -> dict[str, bytes]:
    """The guides in further languages, each language in its folder with an index of its own to search."""
    by_tag: dict[str, dict[str, bytes]] = {}
    for name, each in composed.items():
        for tag, page in each.abroad.items():
            by_tag.setdefault(tag, {})[f"{name}.html"] = page.encode()
    searched = {f"{tag}/{INDEX}": search_index(pages) for tag, pages in by_tag.items()}
    placed = {f"{tag}/{name}": page for tag, pages in by_tag.items() for name, page in pages.items()}
    return placed | searched


def _beside(composed: Composition) -> dict[str, bytes]:
    """The drawings and lists that stand beside a page."""
    return {name: svg.encode() for name, svg in composed.drawings.items()} | dict(composed.lists)


def parcel_of(
    pair: Pair, composed: Composition, sheets: Mapping[str, bytes], common: Mapping[str, bytes]
) -> bytes:
    """All that a job has, in one file that can be sent and read without the site."""
    printed = {name: sheets[name] for name in sheets_of(pair, composed)}
    page = {f"{pair.name}.html": composed.carried.encode()}
    return parcel({**page, **printed, **_beside(composed), **common}, pair.stem)


def _printed(sheets: list[str], theme: Theme, crew: Crew) -> tuple[tuple[bytes, ...], bytes]:
    """Each sheet as PDF, and what the pages of the theme share."""
    hash_of_theme = hash_of_files(theme)
    printing = [_print(sheet, theme, hash_of_theme) for sheet in sheets]
    *printed, shared = crew.perform("Printing", [*printing, _share(theme, hash_of_theme)])
    return tuple(printed), shared


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
    return Task(step="composition", work=compose, of=pair, by=pair.basis)


def _compose_pack(guide: Pair) -> Task:
    return Task(step="tutor pack", work=compose_pack, of=guide, by=guide.by)


def _compose_pack_index(guides: tuple[Pair, ...]) -> Task:
    return Task(step="tutor library", work=compose_pack_of_all, of=guides, by=_all_files(guides))


def _compose_index(pairs: tuple[Pair, ...]) -> Task:
    return Task(step="index", work=compose_page_of_all, of=pairs, by=_all_files(pairs))


def _all_files(pairs: Iterable[Pair]) -> Mapping[str, str]:
    return {file: value for pair in pairs for file, value in pair.by.items()}


def _print(html: str, theme: Theme, hash_of_theme: str) -> Task:
    return Task(step="sheet", work=print_sheet, of=Sheet(html=html, theme=theme), by=(html, hash_of_theme))


def _share(theme: Theme, hash_of_theme: str) -> Task:
    return Task(step="assets", work=make_assets, of=theme, by=hash_of_theme)
