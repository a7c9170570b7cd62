"""The published demo published again: the same bytes, and only what changed made again."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path
from typing import NamedTuple

import pytest

from tests.checkers.publication import Published, contents

HEAVY = ("weasyprint", "matplotlib", "numpy", "pydantic", "yaml", "jinja2", "markdown_it", "rich")
PROGRAM = """
import sys
from generator.cli import main
status = main(sys.argv[1:])
print([name for name in {heavy} if name in sys.modules])
raise SystemExit(status)
"""


class Run(NamedTuple):
    """How a publication in a process of its own ended, and which heavy libraries it had imported."""

    status: int
    out: str
    err: str
    heavy: str


def publish(folder: Path, cache: Path, *arguments: str, **environment: str) -> Run:
    done = subprocess.run(
        [sys.executable, "-c", PROGRAM.format(heavy=HEAVY), "publish", ".", *arguments],
        cwd=folder, env={**os.environ, "STOREYROD_CACHE": str(cache), **environment},
        capture_output=True, text=True, timeout=300, check=False,
    )  # fmt: skip
    *out, heavy = done.stdout.splitlines()
    return Run(done.returncode, "\n".join(out), done.stderr, heavy)


@pytest.fixture(scope="module")
def demo(published: Published, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The published demo in a folder of its own, its memory beside it, published from it."""
    folder = copied(published.folder, tmp_path_factory.mktemp("demo") / "folder")
    made = publish(folder, folder / "cache", PYTHONHASHSEED="3")
    assert made.status == 0, made.err
    return folder


def copied(folder: Path, target: Path) -> Path:
    return shutil.copytree(folder, target, symlinks=True)


def hashes(folder: Path) -> dict[str, str]:
    return contents(folder / "output" / "site")


def test_a_publication_from_memory_has_the_same_bytes(demo: Path, published: Published) -> None:
    assert hashes(demo) == contents(published.site)


def test_a_run_with_nothing_to_do_imports_nothing_heavy_and_writes_nothing(demo: Path) -> None:
    before = {path: path.stat() for path in sorted(demo.rglob("*"))}
    made = publish(demo, demo / "cache")
    assert (made.status, made.heavy) == (0, "[]")
    assert made.out == "Nothing has changed: output/site/index.html stands as it was published."
    after = {path: path.stat() for path in sorted(demo.rglob("*"))}
    changed = [str(path) for path in before if path.is_file() and "cache" not in path.parts
               and after[path].st_mtime_ns != before[path].st_mtime_ns]  # fmt: skip
    assert (changed, before.keys()) == ([], after.keys())


def test_a_lost_site_is_laid_again_without_drawing_or_printing(demo: Path, tmp_path: Path) -> None:
    folder = copied(demo, tmp_path / "copy")
    (folder / "output" / "site").unlink()
    made = publish(folder, folder / "cache")
    assert made.status == 0, made.err
    assert "weasyprint" not in made.heavy
    assert "matplotlib" not in made.heavy
    assert hashes(folder) == hashes(demo)


def test_one_changed_sentence_touches_only_what_says_it(demo: Path, tmp_path: Path) -> None:
    folder = copied(demo, tmp_path / "copy")
    site = folder / "output" / "site"
    before = {
        path.relative_to(site): path.stat().st_ino for path in sorted(site.rglob("*")) if path.is_file()
    }
    job = folder / "methods/jobs/reading-room-doors.yaml"
    text = job.read_text()
    assert text.count("Certificates are in the") == 1
    job.write_text(text.replace("Certificates are in the", "Certificates stand in the"))
    made = publish(folder, folder / "cache")
    assert made.status == 0, made.err
    kept = {
        path
        for path, inode in before.items()
        if (site / path).is_file() and (site / path).stat().st_ino == inode
    }
    assert {str(path) for path in before.keys() - kept} == {
        "manifest.json",
        "reading-room-doors.zip",
        "search.js",
        "statement-reading-room-doors.html",
        "statement-reading-room-doors.pdf",
        "worker.js",
    }  # fmt: skip


def test_with_a_fault_in_the_files_the_site_stands_to_the_byte(demo: Path, tmp_path: Path) -> None:
    folder = copied(demo, tmp_path / "copy")
    before = hashes(folder)
    job = folder / "methods/jobs/reading-room-doors.yaml"
    job.write_text(job.read_text().replace("method: SF-07", "method: SF-70"))
    made = publish(folder, folder / "cache")
    assert made.status == 1
    assert "methods/jobs/reading-room-doors.yaml:3:9: error: There is no method “SF-70”." in made.err
    assert made.out == ""
    assert hashes(folder) == before
