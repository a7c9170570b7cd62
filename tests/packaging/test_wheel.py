"""The wheel, installed in a new environment away from the checkout, lays out a folder and publishes it."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import sysconfig
import venv
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]

KEPT = ("architrave-set-back-frame", "reading-room-doors", "house-rules")


def run(command: list[str | Path], **options: object) -> subprocess.CompletedProcess[str]:
    done = subprocess.run(command, capture_output=True, text=True, timeout=300, check=False, **options)  # type: ignore[call-overload]
    assert isinstance(done, subprocess.CompletedProcess)
    assert done.returncode == 0, done.stdout + done.stderr
    return done


def kept_files() -> list[str]:
    listing = run(["git", "-C", ROOT, "ls-files", "-z", "--cached", "--others", "--exclude-standard"]).stdout
    return [name for name in listing.split("\0") if name and (ROOT / name).is_file()]


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A wheel built from a copy of the checkout, so that the build leaves nothing in it."""
    copy, built = tmp_path_factory.mktemp("copy"), tmp_path_factory.mktemp("built")
    for name in kept_files():
        target = copy / name
        target.parent.mkdir(parents=True, exist_ok=True)
        shutil.copy(ROOT / name, target)
    run([sys.executable, "-m", "pip", "wheel", "--quiet", "--no-deps", "--wheel-dir", built, copy])
    return next(built.glob("storeyrod-*.whl"))


@pytest.fixture(scope="module")
def installed(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The command in a new environment that has the wheel and, of this one, the libraries alone."""
    place = tmp_path_factory.mktemp("environment")
    venv.create(place, with_pip=False, symlinks=True)
    python = place / "bin" / "python"
    run([sys.executable, "-m", "pip", "--python", python, "install", "--quiet", "--no-deps", wheel])
    libraries = Path(
        run([python, "-c", "import sysconfig; print(sysconfig.get_path('purelib'))"]).stdout.strip()
    )
    (libraries / "libraries.pth").write_text(sysconfig.get_path("purelib") + "\n")
    return place / "bin" / "storeyrod"


def test_it_carries_every_theme_file_and_every_demo_method(wheel: Path) -> None:
    with zipfile.ZipFile(wheel) as archive:
        carried = {name for name in archive.namelist() if name.startswith("generator/shipped/")}
    wanted = {
        f"generator/shipped/{name}" for name in kept_files() if name.startswith(("themes/", "methods/"))
    }
    assert len(wanted) > 10
    assert wanted <= carried


def test_it_carries_every_file_of_the_package_and_no_test(wheel: Path) -> None:
    with zipfile.ZipFile(wheel) as archive:
        carried = set(archive.namelist())
    assert {name for name in kept_files() if name.startswith("generator/")} <= carried
    tops = {name.split("/")[0] for name in carried}
    assert tops == {"generator", next(name for name in tops if name.endswith(".dist-info"))}


def leave_one_method(folder: Path) -> None:
    """Take away all methods and jobs but one of each: the whole is published where it is looked at."""
    for file in (*folder.glob("*.yaml"), *folder.glob("jobs/*.yaml")):
        if file.stem not in KEPT:
            file.unlink()


def test_it_starts_a_folder_and_publishes_it(installed: Path, tmp_path: Path) -> None:
    away = {**os.environ, "STOREYROD_CACHE": str(tmp_path / "cache")}
    away.pop("PYTHONPATH", None)
    place = run(
        [installed.parent / "python", "-c", "import generator; print(generator.__file__)"], cwd=tmp_path
    )
    assert place.stdout.startswith(str(installed.parents[1]))
    run([installed, "start", "jobs"], cwd=tmp_path, env=away)
    leave_one_method(tmp_path / "jobs" / "methods")
    told = run([installed, "publish", "--workers", "1"], cwd=tmp_path / "jobs", env=away)
    site = tmp_path / "jobs" / "output" / "site"
    assert told.stdout.startswith("Published output/site/index.html in ")
    assert (site / "index.html").is_file()
    pdfs = list(site.rglob("*.pdf"))
    assert len(pdfs) >= 2
    assert all(path.read_bytes().startswith(b"%PDF-") for path in pdfs)
