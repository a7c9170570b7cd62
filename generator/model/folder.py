"""A user's folder read whole: methods, jobs with their surveys, catalogue and house rules."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Final, TypeVar, cast

from generator.model.assignments import check_job, check_policy, method_of
from generator.model.border import Described
from generator.model.catalogue import Catalogue, CatalogueFile
from generator.model.house import HouseRules
from generator.model.jobs import Job
from generator.model.method import Method
from generator.model.names import check_method
from generator.model.reading import describe
from generator.model.scalars import Count, Word
from generator.model.shipped import extended, shipped_catalogue
from generator.model.survey_rows import rows_of
from generator.model.tables import Table
from generator.model.translations import Translation, TranslationFile, check_translation
from generator.problems import Problem, ProblemLog, Span, nearest
from generator.reading.files import read_text
from generator.reading.nodes import Entries, Text
from generator.reading.surveys import read_survey
from generator.reading.yaml_nodes import parse_yaml
from generator.wording.languages import tags

METHODS: Final = "methods"
HOUSE_RULES: Final = "house-rules.yaml"
LANGUAGES: Final = "languages"
# The second is what a plain text editor adds unasked, and some desktops hide.
WRONG_ENDINGS: Final = (".yml", ".yaml.txt")

D = TypeVar("D", bound=Described)


@dataclass(frozen=True, slots=True, kw_only=True)
class Project:
    """Everything a user's folder describes. `files` are the files it was read from, in order."""

    folder: Path
    methods: tuple[Method, ...]
    jobs: tuple[Job, ...]
    catalogue: Catalogue
    house: HouseRules
    files: tuple[Path, ...]
    translations: tuple[Translation, ...] = ()

    def method(self, number: str) -> Method | None:
        """The method of this number."""
        return next((method for method in self.methods if method.method.value == number), None)

    def translation(self, method: Method, tag: str) -> Translation | None:
        """What of a method has been put into a language; None where nothing has."""
        number = method.method.value
        found = (one for one in self.translations if one.tag == tag and one.file.method.value == number)
        return next(found, None)


def load_folder(folder: Path, log: ProblemLog) -> Project:
    """Read and check every file of a folder; all faults go to the log, and none hides another.

    With errors in the log the project holds what could be read and serves only to find more faults.
    """
    return _Loader(folder / METHODS, log).project()


@dataclass(frozen=True, slots=True, kw_only=True)
class _File:
    """A file's path with its text, None when it could not be read."""

    path: Path
    text: str | None


class _Loader:
    """Reads one folder."""

    def __init__(self, folder: Path, log: ProblemLog) -> None:
        self._folder, self._log = folder, log
        self._files: list[Path] = []

    def project(self) -> Project:
        """The folder's project."""
        house_file = self._folder / HOUSE_RULES
        methods = self._methods([path for path in self._listed(self._folder) if path != house_file])
        catalogue = self._catalogue()
        sound = tuple(method for method in methods.values() if method)
        for method in sound:
            check_method(method, catalogue, self._log)
        jobs = self._jobs(methods, catalogue)
        house = self._house(house_file)
        translations = self._translations(methods)
        check_policy(house, sound, len(sound) == len(methods), self._log)
        return Project(
            folder=self._folder.parent,
            methods=sound,
            jobs=jobs,
            catalogue=catalogue,
            house=house,
            files=tuple(self._files),
            translations=translations,
        )

    def _listed(self, folder: Path) -> list[Path]:
        if not folder.is_dir():
            return []
        for ending in WRONG_ENDINGS:
            for path in sorted(folder.glob(f"*{ending}")):
                better = f"{path.name.removesuffix(ending)}.yaml"
                self._log.add("file-ending", _whole(path), name=path.name, better=better)
        return sorted(folder.glob("*.yaml"))

    def _read(self, path: Path) -> _File:
        self._files.append(path)
        return _File(path=path, text=read_text(path, path.as_posix(), self._log))

    def _described(self, kind: type[D], file: _File) -> D | None:
        if file.text is None:
            return None
        found, problems = _described(kind, file.text, file.path.as_posix())
        self._log.take_all(problems)
        return cast("D | None", found)

    def _methods(self, paths: Sequence[Path]) -> Mapping[str, Method | None]:
        if not paths:
            self._log.add("folder-no-methods", None, folder=self._folder.as_posix())
        methods: dict[str, Method | None] = {}
        first: dict[str, Path] = {}
        for file in map(self._read, paths):
            method, number = self._described(Method, file), _number(file)
            if number.value in first and number.value:
                path = first[number.value].as_posix()
                self._log.add("method-doubled", number.span, name=number.value, first=path)
            first.setdefault(number.value, file.path)
            methods.setdefault(number.value, method)
        return methods

    def _jobs(self, methods: Mapping[str, Method | None], catalogue: Catalogue) -> tuple[Job, ...]:
        read = map(self._read, self._listed(self._folder / "jobs"))
        described = [self._described(Job, file) for file in read]
        jobs = tuple(job for job in described if job)
        self._check_numbers(jobs)
        return tuple(self._with_rows(job, methods, catalogue) for job in jobs)

    def _check_numbers(self, jobs: Sequence[Job]) -> None:
        """A register cannot tell two statements of one number apart."""
        first: dict[str, str] = {}
        for number in (job.document.number for job in jobs if job.document):
            if number.value in first:
                self._log.add("document-doubled", number.span, number=number, first=first[number.value])
            first.setdefault(number.value, number.span.file)

    def _with_rows(self, job: Job, methods: Mapping[str, Method | None], catalogue: Catalogue) -> Job:
        method = method_of(job, methods, self._log)
        if method is None:
            return job
        check_job(job, method, catalogue, self._log)
        path = self._survey_of(job)
        if path is None or job.survey is None:
            return job
        self._files.append(path)
        survey = read_survey(path, path.as_posix(), self._log)
        rows = rows_of(survey, job.survey, method, job, self._log) if survey else ()
        return job.model_copy(update={"rows": rows})

    def _survey_of(self, job: Job) -> Path | None:
        if job.survey is None:
            return None
        name, folder = job.survey.file, self._folder / "jobs"
        beside = sorted(path.name for path in folder.glob("*.csv"))
        if name.value in beside:
            return folder / name.value
        near, where = nearest(name.value, beside), folder.as_posix()
        self._log.add("survey-missing", name.span, name=name, folder=where, nearest=near)
        return None

    def _house(self, path: Path) -> HouseRules:
        house = self._described(HouseRules, self._read(path)) if path.is_file() else None
        return house or no_house_rules(path)

    def _translations(self, methods: Mapping[str, Method | None]) -> tuple[Translation, ...]:
        folder = self._folder / LANGUAGES
        found = sorted(path for path in folder.iterdir() if path.is_dir()) if folder.is_dir() else []
        read = (self._translation(tag, path, methods) for tag in found for path in self._listed(tag))
        return tuple(one for one in read if one)

    def _translation(
        self, folder: Path, path: Path, methods: Mapping[str, Method | None]
    ) -> Translation | None:
        """A translation that can serve; a language that the tool does not speak is a fault of its folder."""
        known, file = tags(), self._described(TranslationFile, self._read(path))
        if folder.name not in known:
            near, listed = nearest(folder.name, known), ", ".join(known)
            self._log.add("language-unknown", _whole(path), tag=folder.name, known=listed, nearest=near)
        if file is None or folder.name not in known:
            return None
        number = file.method
        unreadable = "" in methods
        if number.value not in methods and not unreadable:
            near = nearest(number.value, methods)
            self._log.add("translation-method", number.span, method=number.value, nearest=near)
        translation, method = Translation(tag=folder.name, file=file), methods.get(number.value)
        if method:
            check_translation(translation, method, self._log)
        return translation

    def _catalogue(self) -> Catalogue:
        paths = self._listed(self._folder / "catalogue")
        read = [self._described(CatalogueFile, file) for file in map(self._read, paths)]
        return extended(shipped_catalogue(), [file for file in read if file], self._log)


# A long-lived process reads a whole folder again when one file of it was saved.
@lru_cache(maxsize=256)
def _described(kind: type[Described], text: str, shown: str) -> tuple[Described | None, tuple[Problem, ...]]:
    """What the text of a file describes, which is frozen and may be shared, with the faults in it."""
    log = ProblemLog()
    node = parse_yaml(text, shown, log)
    found = None if node is None else describe(kind, node, log)
    return found, tuple(log)


def no_house_rules(path: Path) -> HouseRules:
    """What holds where a firm has written none: no company and every policy number at its default."""
    return HouseRules.model_construct(
        span=_whole(path), format=Count(1, _whole(path)), company=None, policy=Table.empty()
    )


def _whole(path: Path) -> Span:
    return Span(file=path.as_posix(), line=1, column=1, text="")


def _number(file: _File) -> Word:
    """The number of a method, readable even where the rest of its file is not; empty when it is not."""
    whole = parse_yaml(file.text, file.path.as_posix(), ProblemLog()) if file.text is not None else None
    node = whole.get("method") if isinstance(whole, Entries) else None
    return (
        Word(value=node.value, span=node.span)
        if isinstance(node, Text)
        else Word(value="", span=_whole(file.path))
    )
