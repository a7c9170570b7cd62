"""HTML pages held against the HTML standard by the Nu HTML checker (npm vnu-jar), all in one run."""

from __future__ import annotations

import json
import subprocess
from collections.abc import Iterable
from pathlib import Path
from typing import Any
from urllib.parse import unquote, urlsplit

from tests.checkers.findings import Finding
from tests.checkers.programs import java, node_package


def nu_messages(files: Iterable[Path]) -> tuple[Finding, ...]:
    """List everything the checker says of the given .html, .css and .svg files, notes and warnings included.

    Errors: ValueError when no file is given, or one of another kind; MissingProgramError without the checker.
    """
    given = tuple(files)
    strange = [file.name for file in given if file.suffix not in {".html", ".css", ".svg"}]
    if strange or not given:
        raise ValueError(f"no page for the HTML checker: {strange or 'nothing given'}")
    # Style sheets go in a run of their own: --also-check-css makes it count the lines of pages from 0.
    sheets = [file for file in given if file.suffix == ".css"]
    pages = [file for file in given if file.suffix != ".css"]
    return _messages("--also-check-svg", pages) + _messages("--css", sheets)


def _messages(flag: str, files: list[Path]) -> tuple[Finding, ...]:
    if not files:
        return ()
    jar = node_package("vnu-jar") / "build" / "dist" / "vnu.jar"
    command = [java(), "-jar", str(jar), "--format", "json", "--exit-zero-always", flag]
    done = subprocess.run([*command, *map(str, files)], capture_output=True, text=True, check=True)
    return tuple(_finding(message) for message in json.loads(done.stderr)["messages"])


def _finding(message: dict[str, Any]) -> Finding:
    name = Path(unquote(urlsplit(message.get("url", "")).path)).name
    return Finding(
        where=f"{name}:{message.get('lastLine', 0)}:{message.get('firstColumn', 0)}",
        rule=message.get("subType", message["type"]),
        says=message["message"],
    )
