"""A user's folder published by the command in a process of its own, as tests look at it afterwards."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
GIVEN = "methods-as-given"
LANGUAGES = ("pl",)
TRANSLATED = "guide-architrave-set-back-frame.html"
COMMAND = "import sys; from generator.cli import main; sys.exit(main(sys.argv[1:]))"


@dataclass(frozen=True, slots=True, kw_only=True)
class Published:
    """A user's folder after `publish`: where it is, and its pages and sheets in order of their names."""

    folder: Path

    @property
    def site(self) -> Path:
        """Give the folder that is published."""
        return self.folder / "output" / "site"

    @property
    def pages(self) -> tuple[Path, ...]:
        """Give all HTML files of the site; there are never none."""
        return self._files("*.html")

    @property
    def looked_at(self) -> tuple[Path, ...]:
        """Give the pages that a browser is asked about: of each further language its index and one guide.

        All guides of a language are laid out alike; this one is the longest and has a translation of its own.
        """
        apart = (Path(tag, name) for tag in LANGUAGES for name in ("index.html", TRANSLATED))
        chosen = {self.site / path for path in apart}
        return tuple(file for file in self.pages if file in chosen or not self.tag(file))

    def tag(self, file: Path) -> str:
        """Give the further language of a page, empty for English."""
        first = file.relative_to(self.site).parts[0]
        return first if first in LANGUAGES else ""

    @property
    def sheets(self) -> tuple[Path, ...]:
        """Give all PDF files of the site; there are never none."""
        return self._files("*.pdf")

    def _files(self, pattern: str) -> tuple[Path, ...]:
        found = tuple(sorted(self.site.rglob(pattern)))
        if not found:
            raise FileNotFoundError(f"the published site holds no {pattern}")
        return found

    def name(self, file: Path) -> str:
        """Give a file's path inside the site, as findings print it."""
        return file.relative_to(self.site).as_posix()


def storeyrod(*arguments: str, cache: Path, **variables: str) -> subprocess.CompletedProcess[str]:
    """Run the command line in a process of its own, on a memory that nobody else has filled."""
    environment = {**os.environ, "PYTHONPATH": str(ROOT), "STOREYROD_CACHE": str(cache), **variables}
    command = [sys.executable, "-c", COMMAND, *arguments]
    return subprocess.run(command, capture_output=True, text=True, env=environment)


def publish_demo(folder: Path, methods: Path, *arguments: str, **variables: str) -> Published:
    """Copy `methods` into `folder` and publish that; AssertionError with the whole report if it fails."""
    folder.mkdir(exist_ok=True)
    shutil.copytree(methods, folder / "methods")
    shutil.copytree(methods, folder / GIVEN)
    done = storeyrod("publish", str(folder), *arguments, cache=folder / "cache", **variables)
    assert done.returncode == 0, f"publish ended with {done.returncode}:\n{done.stdout}{done.stderr}"
    return Published(folder=folder)


def contents(site: Path) -> dict[str, str]:
    """Give a hash of every file of a folder by its path in it."""
    files = [file for file in site.rglob("*") if file.is_file()]
    return {file.relative_to(site).as_posix(): sha256(file.read_bytes()).hexdigest() for file in files}
