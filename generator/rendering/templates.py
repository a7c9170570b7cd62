"""A theme's own templates read for faults before anything is laid out by them."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path

from jinja2 import TemplateSyntaxError, nodes
from jinja2.meta import find_undeclared_variables

from generator.documents.blocks import Document
from generator.problems import Problem, ProblemLog, nearest
from generator.reading.files import read_text
from generator.rendering.html import environment_of, names_known
from generator.rendering.template_faults import reason, span_of
from generator.rendering.themes import Theme
from generator.wording import ENGLISH

_JINJAS_OWN = frozenset({"caller", "loop", "super", "self", "varargs", "kwargs"})
_DOCUMENTS = frozenset(name for name in dir(Document) if not name.startswith("_"))


def check_templates(theme: Theme, folder: Path, log: ProblemLog) -> None:
    """Report templates of the theme's first folder that cannot be read, and names nothing answers to."""
    for path in sorted(theme.folders[0].glob("*.html")):
        shown = theme.shown(path, folder)
        source = read_text(path, shown, log)
        if source is not None:
            log.take_all(_found(source, path.name, shown, theme))


# A long-lived process checks the same templates at every save of a method.
@lru_cache(maxsize=64)
def _found(source: str, name: str, shown: str, theme: Theme) -> tuple[Problem, ...]:
    """The faults of one template. Of the theme only what its templates may name counts, never its files."""
    log = ProblemLog()
    _check(source, name, shown, theme, log)
    return tuple(log)


def _check(source: str, name: str, shown: str, theme: Theme, log: ProblemLog) -> None:
    environment = environment_of(theme, ENGLISH)
    try:
        tree = environment.parse(source, name, shown)
        environment.compile(tree, name, shown)
    except TemplateSyntaxError as error:
        log.add("template-syntax", span_of(source, shown, error.lineno), reason=reason(error))
        return
    known = names_known() | _JINJAS_OWN | environment.globals.keys()
    for used, line, names in (*_undeclared(tree, known), *_of_document(tree)):
        near = nearest(used, names)
        log.add("template-name", span_of(source, shown, line, used), name=used, nearest=near)


def _undeclared(tree: nodes.Template, known: frozenset[str]) -> Iterator[tuple[str, int, frozenset[str]]]:
    # A name set in one branch alone counts as undeclared there.
    named = {node.name for node in tree.find_all(nodes.Name) if node.ctx != "load"}
    strange = find_undeclared_variables(tree) - known - named
    for node in tree.find_all(nodes.Name):
        if node.ctx == "load" and node.name in strange:
            yield node.name, node.lineno, known


def _of_document(tree: nodes.Template) -> Iterator[tuple[str, int, frozenset[str]]]:
    for node in tree.find_all(nodes.Getattr):
        owner = node.node
        if isinstance(owner, nodes.Name) and owner.name == "document" and node.attr not in _DOCUMENTS:
            yield node.attr, node.lineno, _DOCUMENTS
