"""What may be typed, and the help that teaches it."""

from __future__ import annotations

import argparse
import textwrap
from importlib import metadata
from pathlib import Path
from typing import NamedTuple, TypeAlias

SCHEMA_KINDS = ("method", "job", "house-rules", "catalogue", "theme", "translation")
LISTS = ("calculators", "drawings", "materials", "people", "places", "tools", "work")

DESCRIPTION = """\
Turn one YAML file about a piece of site carpentry into an illustrated method
statement: sizes worked out with the working shown, drawings made from those
sizes, a web page and a PDF.
"""

BEGIN = """\
begin here:
  storeyrod start my-jobs         lay out a folder with whole methods and a job
  cd my-jobs
  storeyrod publish               make output/site, then open its index.html
  storeyrod check                 after every change: what is wrong, and where

exit status:
  0  nothing wrong (warnings are printed; --strict makes them faults)
  1  faults in your files, every one of them listed
  2  the command was used wrongly
  3  this machine lacks something, named with its cure
 70  a fault of storeyrod itself, told in one line (--traceback shows all of it)
"""


Commands: TypeAlias = "argparse._SubParsersAction[argparse.ArgumentParser]"


class Command(NamedTuple):
    """A command with one line about it, a few about how it is used, and examples."""

    name: str
    line: str
    about: str
    examples: str


PUBLISH = Command(
    "publish",
    "check everything, then make the whole site and its PDFs",
    """\
    Reads methods/ under FOLDER, checks every file, and lays the finished site
    down in FOLDER/output/site. With any error nothing is written and the site
    published before still stands. Drawings and PDFs that have not changed are
    remembered, so a second run takes a moment.
    """,
    """\
    storeyrod publish               the folder you are in
    storeyrod publish my-jobs       another folder
    storeyrod publish --strict      publish only when there is not even a warning
    storeyrod publish --workers 1   on a machine with little memory
    """,
)
CHECK = Command(
    "check",
    "report every fault and write nothing",
    """\
    Each fault is shown with its file, line and column, the line itself with a
    caret under the spot, and what was expected. PATH is a folder or a file;
    of a file's folder everything is read, but only that file's faults are told.
    """,
    """\
    storeyrod check
    storeyrod check methods/jobs/reading-room-doors.yaml
    storeyrod check --as json | jq '.[].file'
    """,
)
QUANTITIES = Command(
    "quantities",
    "show what is worked out for a method, with the working",
    """\
    METHOD is a method's number or its file. Without a job the method's own
    examples and defaults are used; with one, the sizes of that job's survey.
    """,
    """\
    storeyrod quantities SF-07
    storeyrod quantities SF-07 --job reading-room-doors
    storeyrod quantities SF-07 --job reading-room-doors --as csv > sizes.csv
    """,
)
PREVIEW = Command(
    "preview",
    "show the site while you write, made again at every save",
    """\
    Serves the pages on this machine alone. A save is read at once and the browser
    loads the page again; faults stand at the top of it, and a page with a fault is
    shown as it was before. A PDF is made when it is asked for. Nothing is written
    to output/. Ctrl-C ends it.
    """,
    """\
    storeyrod preview               then open http://127.0.0.1:8710/
    storeyrod preview my-jobs --port 9000
    """,
)
ISSUE = Command(
    "issue",
    "freeze a job's statement at its revision into the issue register",
    """\
    Checks the whole folder, then keeps the statement, its PDF, its lists and the
    files it was made from under methods/register, and enters one line in
    methods/register/register.txt. Nothing issued is ever changed: content that
    differs takes the next revision. JOB is a job's file, or its name without .yaml.
    """,
    """\
    storeyrod issue reading-room-leaf
    storeyrod issue reading-room-leaf my-jobs
    """,
)
START = Command(
    "start",
    "lay out a new folder with complete methods and a job",
    """\
    Copies the example methods with a job, its survey and house rules into FOLDER,
    which must be new or empty. Change them into your own, one line at a time.
    """,
    """\
    storeyrod start my-jobs
    """,
)
RULES = Command(
    "rules",
    "print the rulebook and the required sections in force, with sources",
    """\
    Each rule with its number: when it applies, what a document must then hold and
    by which words that is found, which sections it makes mandatory, and its
    sources with how well each is known. With FOLDER, the house rules there are
    in it: rules added, made stricter, or set aside with the reason.
    """,
    """\
    storeyrod rules                 the book that ships
    storeyrod rules .               with the house rules of the folder you are in
    storeyrod rules --as json | jq '.rules[].title'
    """,
)
SCHEMA = Command(
    "schema",
    "print the JSON Schema of a kind of file, or list what a method may use",
    """\
    An editor with a YAML language server completes keys and marks faults while
    you type, once it knows the schema. Save it beside your methods and name it
    in the first line of the file:

        # yaml-language-server: $schema=method.schema.json

    With --list, what may be named in a file: each calculator with what it takes
    and gives, each drawing with its values, the keys of the catalogue.
    """,
    """\
    storeyrod schema method > methods/method.schema.json
    storeyrod schema job > methods/jobs/job.schema.json
    storeyrod schema --list calculators | less
    storeyrod schema --list materials --folder my-jobs
    """,
)


def parser() -> argparse.ArgumentParser:
    """The parser of the whole command line."""
    whole = argparse.ArgumentParser(
        prog="storeyrod",
        description=DESCRIPTION,
        epilog=BEGIN,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    whole.add_argument("--version", action="version", version=f"storeyrod {metadata.version('storeyrod')}")
    commands = whole.add_subparsers(dest="command", metavar="COMMAND", required=True)
    _publish(_add(commands, PUBLISH))
    _check(_add(commands, CHECK))
    _quantities(_add(commands, QUANTITIES))
    _preview(_add(commands, PREVIEW))
    _issue(_add(commands, ISSUE))
    _rules(_add(commands, RULES))
    _add(commands, START).add_argument("folder", metavar="FOLDER", type=Path, help="a new or empty folder")
    _schema(_add(commands, SCHEMA))
    return whole


def _add(commands: Commands, of: Command) -> argparse.ArgumentParser:
    added = commands.add_parser(
        of.name,
        help=of.line,
        description=textwrap.dedent(of.about),
        epilog="examples:\n" + textwrap.indent(textwrap.dedent(of.examples), "  "),
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    added.add_argument(
        "--traceback", action="store_true", help="show where storeyrod itself failed, if it does"
    )
    return added


def _publish(command: argparse.ArgumentParser) -> None:
    _folder(command)
    command.add_argument("--strict", action="store_true", help="let a warning stop the publication too")
    _workers(command)


def _workers(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "--workers",
        metavar="N",
        type=_at_least_one,
        help="processes for drawings and PDFs (default: one a core)",
    )


def _issue(command: argparse.ArgumentParser) -> None:
    command.add_argument("job", metavar="JOB", help="a job's file, or its name without .yaml")
    _folder(command)
    _workers(command)


def _check(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "paths",
        metavar="PATH",
        nargs="*",
        type=Path,
        default=[Path()],
        help="folders or files (default: here)",
    )
    command.add_argument("--strict", action="store_true", help="exit with 1 for a warning too")
    command.add_argument("--as", dest="form", choices=("text", "json"), default="text", help="default: text")


def _preview(command: argparse.ArgumentParser) -> None:
    _folder(command)
    command.add_argument(
        "--port", metavar="N", type=_port, default=8710, help="0 for any that is free (default: 8710)"
    )


def _port(text: str) -> int:
    if not text.isdecimal() or int(text) > 65535:
        raise argparse.ArgumentTypeError(f"{text!r} is not a port from 0 to 65535")
    return int(text)


def _quantities(command: argparse.ArgumentParser) -> None:
    command.add_argument("method", metavar="METHOD", help="a method's number or file")
    command.add_argument("--job", metavar="JOB", help="a job's file, its name without .yaml, or its title")
    command.add_argument(
        "--folder", metavar="FOLDER", type=Path, default=Path(), help="default: the one you are in"
    )
    command.add_argument(
        "--as", dest="form", choices=("text", "json", "csv"), default="text", help="default: text"
    )


def _rules(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "folder", metavar="FOLDER", nargs="?", type=Path, help="holds methods/ (none when not given)"
    )
    command.add_argument("--as", dest="form", choices=("text", "json"), default="text", help="default: text")


def _schema(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "kind", metavar="KIND", nargs="?", choices=SCHEMA_KINDS,
        help=f"{', '.join(SCHEMA_KINDS)} (method when not given)",
    )  # fmt: skip
    command.add_argument("--list", dest="what", metavar="WHAT", choices=LISTS, help=", ".join(LISTS))
    command.add_argument(
        "--folder", metavar="FOLDER", type=Path, help="lists its own catalogue too (none when not given)"
    )
    command.add_argument("--as", dest="form", choices=("text", "json"), help="of a list (default: text)")


def _folder(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "folder",
        metavar="FOLDER",
        nargs="?",
        type=Path,
        default=Path(),
        help="holds methods/ (default: here)",
    )


def _at_least_one(text: str) -> int:
    if not text.isdecimal() or int(text) < 1:
        raise argparse.ArgumentTypeError(f"{text!r} is not a whole number of 1 or more")
    return int(text)
