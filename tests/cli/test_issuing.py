"""A statement issued for real, once: frozen, known again, and held against its job once that is changed."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

import pytest

from generator.cli import main

ROOT = Path(__file__).parents[2]
STEM = "reading-room-leaf"
FILES = ("door-hanging.yaml", "hethersedge.svg", f"jobs/{STEM}.yaml", f"jobs/{STEM}.csv")
SIZE = "  foot_gap: 10 mm"


def lay_out(folder: Path) -> Path:
    """The demonstration's one job, its house rules without policy, which speaks of all methods."""
    methods = folder / "methods"
    (methods / "jobs").mkdir(parents=True)
    for name in FILES:
        shutil.copy(ROOT / "methods" / name, methods / name)
    shutil.copytree(ROOT / "methods" / "catalogue", methods / "catalogue")
    house = (ROOT / "methods" / "house-rules.yaml").read_text()
    (methods / "house-rules.yaml").write_text(re.sub(r"^policy:\n(?: .*\n)+", "", house, flags=re.M))
    return methods


def test_issue_freezes_knows_again_and_refuses_what_has_changed(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    methods = lay_out(tmp_path)
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("STOREYROD_CACHE", str(tmp_path / "memory"))
    register, job = methods / "register", methods / "jobs" / f"{STEM}.yaml"

    assert main(["issue", STEM, "--workers", "1"]) == 0, capsys.readouterr().err
    assert "Issued ORR-MS-04 revision C01" in capsys.readouterr().out
    frozen = register / "ORR-MS-04-C01"
    page = (frozen / f"statement-{STEM}.html").read_text()
    assert "Issued as revision C01 on 19 November 2026; this page is that content." in re.sub(
        "<.*?>", "", page
    )
    assert (frozen / f"statement-{STEM}.pdf").read_bytes().startswith(b"%PDF-")
    assert (frozen / "inputs" / "methods" / "jobs" / f"{STEM}.yaml").read_bytes() == job.read_bytes()

    book = (register / "register.txt").read_bytes()
    assert main(["issue", STEM, "--workers", "1"]) == 0
    assert "is issued already with the same content; nothing was changed." in capsys.readouterr().out
    assert (register / "register.txt").read_bytes() == book

    assert main(["check"]) == 0
    assert "differs from its revision" not in capsys.readouterr().out

    text = job.read_text()
    assert SIZE in text
    job.write_text(text.replace(SIZE, "  foot_gap: 9 mm"))
    assert main(["check"]) == 0
    told = capsys.readouterr().out
    assert f"methods/jobs/{STEM}.yaml:7:13: warning: The statement differs from its revision C01" in told

    assert main(["issue", STEM, "--workers", "1"]) == 1
    assert "Revision C01 of ORR-MS-04 was issued on 2026-11-19" in capsys.readouterr().err
    assert (register / "register.txt").read_bytes() == book
