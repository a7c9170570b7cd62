"""The shipped catalogue, and how a user's entries extend it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache
from pathlib import Path
from typing import Final, TypeVar

from generator.model.catalogue import Catalogue, CatalogueFile, Material, Tool
from generator.model.kinds import Kind
from generator.model.names import check_known
from generator.model.reading import describe
from generator.model.tables import Table
from generator.problems import ProblemLog, nearest
from generator.reading.yaml_nodes import read_yaml

FOLDER: Final = Path(__file__).parent / "catalogue"

E = TypeVar("E", bound=Material | Tool | Kind)


@cache
def shipped_catalogue() -> Catalogue:
    """The catalogue that comes with the tool. Raises ValueError when one of its own files has a fault."""
    log = ProblemLog()
    nodes = (
        (path, read_yaml(path, f"shipped catalogue/{path.name}", log))
        for path in sorted(FOLDER.glob("*.yaml"))
    )
    read = [node and describe(CatalogueFile, node, log) for _, node in nodes]
    whole = extended(Catalogue(materials={}, tools={}), [file for file in read if file], log)
    if len(log):
        raise ValueError(f"the shipped catalogue has faults: {[problem.code for problem in log]}")
    return whole


def extended(catalogue: Catalogue, added: Sequence[CatalogueFile], log: ProblemLog) -> Catalogue:
    """The catalogue with entries of other files added; one replaces another only where it says so."""
    whole = Catalogue(
        materials=_merged(catalogue.materials, [file.materials for file in added], log),
        tools=_merged(catalogue.tools, [file.tools for file in added], log),
        places=_merged(catalogue.places, [file.kinds_of_place for file in added], log),
        people=_merged(catalogue.people, [file.kinds_of_people for file in added], log),
        activities=_merged(catalogue.activities, [file.kinds_of_work for file in added], log),
        lost=catalogue.lost | frozenset(name for file in added for name in _lost(file)),
    )
    _check_counted(whole, log)
    return whole


def _check_counted(catalogue: Catalogue, log: ProblemLog) -> None:
    """What counts as another entry is looked up there, so the other has to exist."""
    for entries, known in (
        (catalogue.tools.values(), catalogue.tool_keys),
        (catalogue.materials.values(), catalogue.material_keys),
    ):
        named = (word for entry in entries for word in entry.counts_as)
        check_known(named, known, "counts-as-unknown", log)


def _lost(file: CatalogueFile) -> frozenset[str]:
    tables = (file.materials, file.tools, file.kinds_of_place, file.kinds_of_people, file.kinds_of_work)
    return frozenset[str]().union(*(table.lost for table in tables))


def _merged(shipped: Mapping[str, E], tables: Sequence[Table[E]], log: ProblemLog) -> Mapping[str, E]:
    merged, own = dict(shipped), dict[str, E]()
    for key, entry in ((key, entry) for table in tables for key, entry in table.items()):
        if key in own:
            first = own[key].span
            log.add("catalogue-doubled", entry.span, key=key, file=first.file, line=first.line)
        elif key in shipped and not entry.replaces:
            log.add("catalogue-taken", entry.span, key=key, label=shipped[key].label)
        elif key not in shipped and entry.replaces:
            log.add("catalogue-replaces", entry.places["replaces"], key=key, nearest=nearest(key, shipped))
        own.setdefault(key, entry)
        merged[key] = entry
    return merged
