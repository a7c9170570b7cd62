"""The demo published for real: the same bytes every time, and only what changed made again."""

from __future__ import annotations

import hashlib
import os
import shutil
import subprocess
import sys
from pathlib import Path
from typing import NamedTuple

import pytest

ROOT = Path(__file__).parents[2]
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


def lay_out(folder: Path) -> Path:
    shutil.copytree(ROOT / "methods", folder / "methods")
    return folder


def hashes(folder: Path) -> dict[str, str]:
    site = folder / "output" / "site"
    return {
        path.relative_to(site).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in sorted(site.rglob("*"))
        if path.is_file()
    }


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo, published once with two workers; its memory stands beside it."""
    folder = lay_out(tmp_path_factory.mktemp("demo"))
    made = publish(folder, folder / "cache", "--workers", "2", PYTHONHASHSEED="1")
    assert made.status == 0, made.err
    return folder


def test_a_cold_second_publication_has_the_same_bytes(demo: Path, tmp_path: Path) -> None:
    """Another folder, another hash seed, another time zone and language, one worker, nothing remembered."""
    other = lay_out(tmp_path / "elsewhere")
    made = publish(
        other,
        tmp_path / "cold",
        "--workers",
        "1",
        PYTHONHASHSEED="2",
        TZ="Pacific/Apia",
        LANG="C",
        LC_ALL="C",
    )
    assert made.status == 0, made.err
    first, second = hashes(demo), hashes(other)
    assert len([name for name in first if name.endswith(".pdf")]) >= 2
    assert {name for name in first.keys() | second.keys() if first.get(name) != second.get(name)} == set()


def test_a_warm_publication_has_the_same_bytes(demo: Path, tmp_path: Path) -> None:
    other = lay_out(tmp_path / "elsewhere")
    made = publish(other, demo / "cache", PYTHONHASHSEED="3")
    assert made.status == 0, made.err
    assert hashes(demo) == hashes(other)


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
    folder = tmp_path / "copy"
    shutil.copytree(demo, folder, symlinks=True)
    (folder / "output" / "site").unlink()
    made = publish(folder, folder / "cache")
    assert made.status == 0, made.err
    assert "weasyprint" not in made.heavy
    assert "matplotlib" not in made.heavy
    assert hashes(folder) == hashes(demo)


def test_one_changed_sentence_touches_only_what_says_it(demo: Path, tmp_path: Path) -> None:
    folder = tmp_path / "copy"
    shutil.copytree(demo, folder, symlinks=True)
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
    folder = tmp_path / "copy"
    shutil.copytree(demo, folder, symlinks=True)
    before = hashes(folder)
    job = folder / "methods/jobs/reading-room-doors.yaml"
    job.write_text(job.read_text().replace("method: SF-07", "method: SF-70"))
    made = publish(folder, folder / "cache")
    assert made.status == 1
    assert "methods/jobs/reading-room-doors.yaml:3:9: error: There is no method “SF-70”." in made.err
    assert made.out == ""
    assert hashes(folder) == before
