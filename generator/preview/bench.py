"""What is on the bench: the last good pair of every page, its faults since, and pages made on request."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from threading import Condition, RLock

from generator.memory import Memory
from generator.pipeline.compositions import (
    Composition,
    compose,
    compose_page,
    compose_page_in,
    compose_page_of_all,
    composition,
    index_pages,
)
from generator.pipeline.issues import issued_files
from generator.pipeline.line import Assessed, assess, parcel_of, sheets_of
from generator.pipeline.pairs import Pair, company_of
from generator.pipeline.prints import Sheet, assets, hash_of_files, make_assets, print_sheet
from generator.problems import MachineLacks, Problem, ProblemLog, Severity
from generator.publishing.crew import Crew, Task
from generator.rendering.search import FINDER, search_files, search_index
from generator.rendering.search import INDEX as SEARCHED
from generator.rendering.themes import Theme

INDEX = "index.html"
ASSETS = "assets/"


@dataclass(frozen=True, slots=True, kw_only=True)
class State:
    """How the folder stands: the count of changes, its faults, and the good pairs by name.

    `stale` names the pairs that are shown as they were before a fault.
    """

    version: int
    problems: tuple[Problem, ...]
    pairs: Mapping[str, Pair]
    stale: frozenset[str]


class Bench:
    """The pages of a user's folder, made in this process when they are asked for and then remembered."""

    def __init__(self, folder: Path, memory: Memory) -> None:
        self._folder = folder
        self._crew = Crew(memory, 1)
        self._making = RLock()
        self._told = Condition()
        self._theme: Theme | None = None
        self._issued: Mapping[str, bytes] = {}
        self._shown: dict[str, bytes] = {}
        self._state = State(version=0, problems=(), pairs={}, stale=frozenset())

    @property
    def folder(self) -> Path:
        """The user's folder."""
        return self._folder

    @property
    def state(self) -> State:
        """How the folder stands now."""
        return self._state

    def look_again(self) -> None:
        """Read what was saved; a pair with a fault keeps its last good state."""
        log = ProblemLog()
        with self._making:
            try:
                assessed = assess(self._folder, log, self._crew)
            except OSError:
                # A file was taken away between being listed and being read; the next look finds it gone.
                return
            except Exception as failure:
                self._tell(self._as_before((*log, _own_fault(failure))))
                return
            self._theme = assessed.theme
            self._issued = issued_files(assessed.register, company_of(assessed.pairs), assessed.theme)
            self._tell(self._next(assessed, tuple(log)))

    def wait_for_change(self, version: int, seconds: float) -> int:
        """The version, as soon as it is another than `version` or `seconds` have passed."""
        with self._told:
            self._told.wait_for(lambda: self._state.version != version, seconds)
            return self._state.version

    def page(self, name: str) -> tuple[bytes, tuple[Problem, ...]] | None:
        """A page and what went wrong in making it, when an older one is given instead; None where none is."""
        if name in self._issued:
            return self._issued[name], ()
        tag, _, own = name.rpartition("/")
        pair = self._state.pairs.get(own.removesuffix(".html"))
        if tag and tag not in self._tags():
            return None
        if own == INDEX and self._state.pairs:
            pairs = tuple(self._state.pairs.values())
            return self._last_good(name, lambda: index_pages(compose_page_of_all(pairs))[name])
        if pair is None or not name.endswith(".html"):
            return None
        if tag and tag not in pair.tags:
            return None
        return self._last_good(name, lambda: self._page(pair, tag))

    def file(self, name: str) -> bytes | None:
        """A file that a page leads to: of the theme, a PDF, a drawing, a list or a parcel."""
        with self._making:
            if name in self._issued:
                return self._issued[name]
            tag, _, own = name.rpartition("/")
            if name in (SEARCHED, FINDER):
                return self._searching().get(name)
            if own == SEARCHED and tag in self._tags():
                return search_index(self._pages(tag))
            if name.startswith(ASSETS):
                return self._assets().get(name.removeprefix(ASSETS))
            for pair in self._state.pairs.values():
                made = self._file_of(pair, name)
                if made is not None:
                    return made
        return None

    def close(self) -> None:
        """Let the memory go back within its limit."""
        self._crew.__exit__(None, None, None)

    def _tell(self, state: State) -> None:
        with self._told:
            self._state = state
            self._told.notify_all()

    def _as_before(self, problems: tuple[Problem, ...]) -> State:
        before = self._state
        return replace(before, version=before.version + 1, problems=problems, stale=frozenset(before.pairs))

    def _last_good(self, name: str, make: Callable[[], bytes]) -> tuple[bytes, tuple[Problem, ...]] | None:
        with self._making:
            try:
                self._shown[name] = make()
            except MachineLacks as lack:
                return self._older(name, lack.problem)
            except Exception as failure:
                return self._older(name, _own_fault(failure))
            return self._shown[name], ()

    def _older(self, name: str, problem: Problem) -> tuple[bytes, tuple[Problem, ...]]:
        return self._shown.get(name, b""), (problem,)

    def _next(self, assessed: Assessed, problems: tuple[Problem, ...]) -> State:
        errors = [problem for problem in problems if problem.severity is Severity.ERROR]
        sound = {pair.name: pair for pair in assessed.pairs if not _touched(pair, errors)}
        there = {path.as_posix() for path in assessed.inputs.hashes}
        kept = {
            name: pair
            for name, pair in self._state.pairs.items()
            if name not in sound and (pair.job or pair.method).span.file in there
        }
        order = [pair.name for pair in assessed.pairs]
        whole = kept | sound
        names = sorted(whole, key=lambda name: (whole[name].job is not None, _place(order, name), name))
        return State(
            version=self._state.version + 1,
            problems=problems,
            pairs={name: whole[name] for name in names},
            stale=frozenset(kept),
        )

    def _composed(self, pair: Pair) -> Composition:
        return composition(self._perform(Task(step="composition", work=compose, of=pair, by=pair.basis)))

    def _page(self, pair: Pair, tag: str) -> bytes:
        if tag:
            by = (pair.basis, tag)
            return self._perform(Task(step="page abroad", work=compose_page_in, of=(pair, tag), by=by))
        return self._perform(Task(step="page", work=compose_page, of=pair, by=pair.basis))

    def _file_of(self, pair: Pair, name: str) -> bytes | None:
        if name in (f"{pair.name}.pdf", pair.card, pair.full_size):
            sheet = sheets_of(pair, self._composed(pair)).get(name)
            return self._print(sheet, pair) if sheet else None
        if pair.job and name == pair.parcel:
            return self._parcel(pair)
        composed = self._composed(pair) if name.startswith(pair.stem) or name.endswith(".svg") else None
        if composed is None:
            return None
        drawing = composed.drawings.get(name)
        return drawing.encode() if drawing else composed.lists.get(name)

    def _searching(self) -> Mapping[str, bytes]:
        """What the search needs, over the pages as they would be now."""
        if self._theme is None:
            return {}
        return search_files(self._pages(), self._theme)

    def _pages(self, tag: str = "") -> Mapping[str, bytes]:
        """The pages of a language, English without a tag."""
        pairs = self._state.pairs.items()
        return {f"{name}.html": self._page(pair, tag) for name, pair in pairs if not tag or tag in pair.tags}

    def _tags(self) -> frozenset[str]:
        """The further languages that are asked for."""
        return frozenset(tag for pair in self._state.pairs.values() for tag in pair.tags)

    def _parcel(self, pair: Pair) -> bytes:
        composed = self._composed(pair)
        sheets = {name: self._print(html, pair) for name, html in sheets_of(pair, composed).items()}
        common = {f"{ASSETS}{name}": content for name, content in self._assets().items()}
        return parcel_of(pair, composed, sheets, common)

    def _print(self, sheet: str, pair: Pair) -> bytes:
        by = (sheet, hash_of_files(pair.theme))
        return self._perform(
            Task(step="sheet", work=print_sheet, of=Sheet(html=sheet, theme=pair.theme), by=by)
        )

    def _assets(self) -> Mapping[str, bytes]:
        theme = self._theme
        if theme is None:
            return {}
        return assets(self._perform(Task(step="assets", work=make_assets, of=theme, by=hash_of_files(theme))))

    def _perform(self, task: Task) -> bytes:
        (made,) = self._crew.perform("Composing", [task])
        return made


def _touched(pair: Pair, errors: Iterable[Problem]) -> bool:
    """True when an error stands in a file that the pair rests on, or in no file at all."""
    return any(error.span is None or error.span.file in pair.by for error in errors)


def _place(order: list[str], name: str) -> int:
    return order.index(name) if name in order else len(order)


def _own_fault(failure: Exception) -> Problem:
    values = {"failure": f"{type(failure).__name__}: {failure}", "place": type(failure).__module__}
    return Problem(code="own-fault", values=values)
