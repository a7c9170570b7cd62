"""Each command carried out: what is asked for is made, told, and turned into an exit status."""

from __future__ import annotations

import argparse
import json
import sys
import time
import traceback
from collections.abc import Callable, Iterable, Mapping, Sequence
from datetime import date
from pathlib import Path

from generator.cli.arguments import parser
from generator.cli.folders import user_folder
from generator.cli.start import start
from generator.cli.terminal import coloured, say, tell, watched
from generator.cli.wrong_use import WrongUse
from generator.problems import MachineLacks, Problem, ProblemLog
from generator.wording import ENGLISH
from generator.wording.report import report_json, report_text

WELL, FAULTS, WRONG_USE, MACHINE_LACKS = 0, 1, 2, 3
OWN_FAULT = 70
"""EX_SOFTWARE of sysexits.h: the program itself failed."""
_ISSUED_ALREADY = (
    "%(number)s revision %(revision)s is issued already with the same content; nothing was changed."
)
_ISSUED = "Issued %(number)s revision %(revision)s: its files stand in %(place)s."
_PUBLISHED = "Published %(site)s in %(seconds)s s: %(written)s files written, %(kept)s as they were."


def obey(argv: Sequence[str]) -> int:
    """Carry out the command in `argv` and return its exit status."""
    try:
        asked = parser().parse_args(argv)
    except SystemExit as told:
        return int(told.code or WELL)
    try:
        return COMMANDS[asked.command](asked)
    except WrongUse as wrong:
        tell((wrong.problem,), sys.stderr)
        return WRONG_USE
    except MachineLacks as lack:
        tell((lack.problem,), sys.stderr)
        return MACHINE_LACKS
    except BrokenPipeError:
        raise
    except Exception as failure:
        return _own_fault(failure, asked.traceback)


def _own_fault(failure: Exception, shown: bool) -> int:
    if shown:
        traceback.print_exception(failure)
    where = traceback.extract_tb(failure.__traceback__)[-1]
    values = {
        "failure": f"{type(failure).__name__}: {failure}",
        "place": f"{Path(where.filename).name}, line {where.lineno}",
    }
    tell((Problem(code="own-fault", values=values),), sys.stderr)
    return OWN_FAULT


def _publish(asked: argparse.Namespace) -> int:
    from generator.memory import open_memory
    from generator.pipeline.publication import publish
    from generator.publishing.crew import usual_workers

    began = time.perf_counter()
    folder = user_folder(asked.folder)
    workers = asked.workers or usual_workers()
    with watched(sys.stderr) as progress:
        made = publish(folder, open_memory(), workers, strict=asked.strict, progress=progress)
    tell((*made.problems, *made.notices), sys.stderr)
    site = folder / "output" / "site" / "index.html"
    if made.unchanged:
        say(ENGLISH.say("Nothing has changed: %(site)s stands as it was published.", site=site))
    elif made.laid:
        seconds = f"{time.perf_counter() - began:.1f}"
        values = {"site": site, "written": made.laid.written, "kept": made.laid.kept, "seconds": seconds}
        say(ENGLISH.say(_PUBLISHED, **values))
    else:
        say(ENGLISH.say("Nothing was published; what was published before still stands."), sys.stderr)
        return FAULTS
    return WELL


def today() -> date:
    """The day this computer says it is: of all commands, only check asks for it."""
    return date.today()


def _check(asked: argparse.Namespace) -> int:
    from generator.memory import open_memory
    from generator.pipeline.issuing import check_register
    from generator.pipeline.line import assess
    from generator.pipeline.publication import forbidden
    from generator.publishing.crew import Crew
    from generator.safety.sources import check_reviews

    log, found = ProblemLog(), ProblemLog()
    # One worker: what is checked takes less time than starting another process.
    with Crew(open_memory(), 1) as crew:
        for folder in dict.fromkeys(user_folder(path) for path in asked.paths):
            assessed = assess(folder, log, crew)
            check_register(assessed, crew, log)
            check_reviews(assessed.house, today(), log)
    found.take_all(problem for problem in log if _meant(problem, asked.paths))
    write = {"text": _found_as_text, "json": report_json}[asked.form]
    sys.stdout.write(write(found))
    return FAULTS if forbidden(found, asked.strict) else WELL


def _preview(asked: argparse.Namespace) -> int:
    from generator.memory import open_memory
    from generator.preview.bench import Bench
    from generator.preview.server import Server, watching

    server = Server(Bench(user_folder(asked.folder), open_memory()), asked.port)
    try:
        # Watched from before the first look, so that no save falls between them.
        watching(server)
        server.bench.look_again()
        tell(server.bench.state.problems, sys.stderr)
        say(ENGLISH.say("Preview at %(address)s (Ctrl-C ends it)", address=server.address))
        sys.stdout.flush()
        server.serve_forever()
    except KeyboardInterrupt:
        say(ENGLISH.say("Preview ended."))
    finally:
        server.end()
    return WELL


def _issue(asked: argparse.Namespace) -> int:
    from generator.cli.asked_for import job_asked_for
    from generator.memory import open_memory
    from generator.pipeline.issuing import issue
    from generator.publishing.crew import usual_workers

    folder = user_folder(asked.folder)
    job = job_asked_for(asked.job, folder)
    with watched(sys.stderr) as progress:
        made = issue(folder, job, open_memory(), asked.workers or usual_workers(), progress)
    tell(made.log, sys.stderr)
    if made.issued is None:
        say(ENGLISH.say("Nothing was issued; the register stands as it was."), sys.stderr)
        return FAULTS
    place = folder / "methods" / "register" / made.issued.folder
    values = {"number": made.issued.number, "revision": made.issued.revision, "place": place}
    say(ENGLISH.say(_ISSUED_ALREADY if made.stood_already else _ISSUED, **values))
    return WELL


def _meant(problem: Problem, paths: Sequence[Path]) -> bool:
    """True when the problem stands in one of the files or folders asked about, or in no file at all."""
    if problem.span is None:
        return True
    place = Path(problem.span.file).resolve()
    return any(place.is_relative_to(path.resolve()) for path in paths)


def _found_as_text(problems: Iterable[Problem]) -> str:
    return report_text(problems, colour=coloured(sys.stdout))


def _quantities(asked: argparse.Namespace) -> int:
    from generator.cli.asked_for import ledger_asked_for
    from generator.cli.exposure_figures import exposure_figures
    from generator.cli.figures import as_csv, as_json, as_text, figures_of

    log = ProblemLog()
    try:
        ledger, tools = ledger_asked_for(asked.method, asked.job, asked.folder, log)
    except WrongUse:
        # The name may stand in a file that could not be read: its faults say more than that it is not there.
        if not log.has_errors:
            raise
    tell(log, sys.stderr)
    if log.has_errors:
        return FAULTS
    write = {"text": as_text, "json": as_json, "csv": as_csv}[asked.form]
    sys.stdout.write(write((*exposure_figures(ledger, tools), *figures_of(ledger))))
    return WELL


def _rules(asked: argparse.Namespace) -> int:
    from generator.cli.book import book_as_json, book_as_text
    from generator.model.folder import load_folder, no_house_rules
    from generator.safety.house import check_house

    log = ProblemLog()
    house = no_house_rules(Path("house-rules.yaml"))
    if asked.folder:
        project = load_folder(user_folder(asked.folder), log)
        house = project.house
        check_house(house, project.catalogue, log)
    tell(log, sys.stderr)
    if log.has_errors:
        return FAULTS
    write = {"text": book_as_text, "json": book_as_json}[asked.form]
    sys.stdout.write(write(house))
    return WELL


def _start(asked: argparse.Namespace) -> int:
    for path in start(asked.folder):
        say(str(path))
    say(ENGLISH.say("Now: cd %(folder)s && storeyrod publish", folder=asked.folder))
    return WELL


def _schema(asked: argparse.Namespace) -> int:
    from generator.model.schema import json_schema

    if (asked.kind and asked.what) or ((asked.folder or asked.form) and not asked.what):
        raise WrongUse("list-or-schema")
    if asked.what:
        return _listed(asked)

    say(json.dumps(json_schema(asked.kind or "method"), indent=1, ensure_ascii=False))
    return WELL


def _listed(asked: argparse.Namespace) -> int:
    from generator.cli.listing import list_as_json, list_as_text
    from generator.model.folder import load_folder
    from generator.model.shipped import shipped_catalogue

    log, catalogue = ProblemLog(), shipped_catalogue()
    if asked.folder:
        catalogue = load_folder(user_folder(asked.folder), log).catalogue
    tell(log, sys.stderr)
    if log.has_errors:
        return FAULTS
    write = {"text": list_as_text, "json": list_as_json}[asked.form or "text"]
    sys.stdout.write(write(asked.what, catalogue))
    return WELL


COMMANDS: Mapping[str, Callable[[argparse.Namespace], int]] = {
    "publish": _publish,
    "check": _check,
    "preview": _preview,
    "quantities": _quantities,
    "issue": _issue,
    "rules": _rules,
    "start": _start,
    "schema": _schema,
}
