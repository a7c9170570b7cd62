"""The preview as a browser and a stranger meet it."""

from __future__ import annotations

import html
import http.client
import os
import re
import shutil
import signal
import socket
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from threading import Thread

import pytest
from playwright.sync_api import Browser

from generator.memory import Memory
from generator.pipeline.compositions import compose, composition
from generator.preview.bench import Bench
from generator.preview.server import HOST, Server, watching
from generator.problems import MachineLacks

ROOT = Path(__file__).parents[2]
METHOD = "methods/architrave-set-back-frame.yaml"
GUIDE = "guide-architrave-set-back-frame.html"
STATEMENT = "statement-reading-room-doors.html"
TITLE = "Architrave to a set-back frame"
MOST_MS = 90_000


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    shutil.copytree(ROOT / "methods", tmp_path / "site" / "methods")
    for path in (tmp_path / "site" / "methods").glob("*.yaml"):
        if path.name not in (Path(METHOD).name, "house-rules.yaml"):
            path.unlink()
    # A sentence changed here is not one that its translation was made of, which is a warning of its own.
    shutil.rmtree(tmp_path / "site" / "methods" / "languages")
    for path in (tmp_path / "site" / "methods" / "jobs").glob("*.yaml"):
        if path.name != "reading-room-doors.yaml":
            path.unlink()
    return tmp_path / "site"


@pytest.fixture
def server(folder: Path, tmp_path: Path) -> Iterator[Server]:
    bench = Bench(folder, Memory(tmp_path / "memory", surroundings="test"))
    bench.look_again()
    server = Server(bench, 0)
    watching(server)
    serving = Thread(target=server.serve_forever, daemon=True)
    serving.start()
    yield server
    server.shutdown()
    server.end()


def asked(server: Server, path: str, host: str | None = None) -> tuple[int, bytes]:
    connection = http.client.HTTPConnection(HOST, server.server_port, timeout=60)
    connection.request("GET", path, headers={"Host": host or f"{HOST}:{server.server_port}"})
    answer = connection.getresponse()
    return answer.status, answer.read()


def edit(folder: Path, old: str, new: str, file: str = METHOD) -> None:
    path = folder / file
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")


def test_a_save_changes_the_page_a_fault_shows_in_it_and_goes_when_mended(
    browser: Browser, server: Server, folder: Path
) -> None:
    page = browser.new_page()
    page.goto(server.address + GUIDE)
    assert page.locator("html").get_attribute("data-preview") == "1"
    edit(folder, f"title: {TITLE}", "title: Architrave with <b>packers</b>")
    page.locator("h1", has_text="Architrave with <b>packers</b>").wait_for(timeout=MOST_MS)
    edit(folder, "\nsizes:\n", "\nsises:\n")
    faults = page.locator(".preview-faults")
    # An editor may empty a file before it fills it, and the empty file is a fault of its own.
    faults.locator("pre", has_text="sises").wait_for(timeout=MOST_MS)
    said = faults.locator("pre").inner_text()
    line = (folder / METHOD).read_text(encoding="utf-8").split("\nsises:")[0].count("\n") + 2
    assert f"{METHOD}:{line}:1: error: " in said
    assert "    sises:\n    ^^^^^\n" in said
    assert "Architrave with <b>packers</b>" in page.locator("h1").inner_text()
    edit(folder, "\nsises:\n", "\nsizes:\n")
    faults.wait_for(state="detached", timeout=MOST_MS)
    assert "Architrave with <b>packers</b>" in page.locator("h1").inner_text()
    assert not (folder / "output").exists()
    page.close()


def test_a_fault_says_that_the_page_is_older(server: Server, folder: Path) -> None:
    edit(folder, f"title: {TITLE}", "title: '<script>alert(1)</script>'\ntitel: x")
    server.bench.wait_for_change(1, 20)
    _, page = asked(server, f"/{GUIDE}")
    assert b"This page is as it was before these faults." in page
    assert TITLE.encode() in page
    assert b"<script>alert" not in page


SHARED = (
    ("methods/catalogue/reading-room.yaml", "ripped in our workshop", "ripped in the <yard>", True),
    ("methods/house-rules.yaml", "name: Hethersedge Joinery", "name: Hethersedge and Daughters", True),
    ("methods/house-rules.yaml", "filler_takes: 2 mm", "filler_takes: 2.5 mm", True),
    ("methods/jobs/reading-room-doors.csv", "Porch to hall,768", "Porch to nave,769", False),
    ("methods/jobs/reading-room-doors.yaml", "number: ORR-MS-07", "number: ORR-MS-7A", False),
)
"""A file on which the pages rest, what is changed in it, and whether the guide rests on it too."""


def test_a_page_never_outlives_anything_it_rests_on(folder: Path, tmp_path: Path) -> None:
    bench = Bench(folder, Memory(tmp_path / "memory", surroundings="test"))
    bench.look_again()
    shown = {page: bench.page(page) for page in (GUIDE, STATEMENT)}
    for file, old, new, both in SHARED:
        edit(folder, old, new, file)
        bench.look_again()
        assert bench.state.problems == ()
        now = {page: bench.page(page) for page in (GUIDE, STATEMENT)}
        assert (now[GUIDE] != shown[GUIDE], now[STATEMENT] != shown[STATEMENT]) == (both, True), new
        said = html.escape(new.split(": ")[-1].split(",")[0])
        assert said in _text(now[STATEMENT]), new
        shown = now


def test_a_changed_house_rule_is_asked_for_at_once_and_let_go_at_once(folder: Path, tmp_path: Path) -> None:
    bench = Bench(folder, Memory(tmp_path / "memory", surroundings="test"))
    bench.look_again()
    edit(folder, "policy:\n", f"{HOUSE_RULE}policy:\n", "methods/house-rules.yaml")
    bench.look_again()
    (told,) = {problem.values["title"] for problem in bench.state.problems}
    assert told == "Set-back block"
    edit(folder, HOUSE_RULE, "", "methods/house-rules.yaml")
    bench.look_again()
    assert bench.state.problems == ()


HOUSE_RULE = """\
rules:
  - rule: H1
    title: Set-back block
    when: {tools: [set-back-block]}
    hazard: "A block that was dropped reads wrong."
    needs:
      - administer: "Block tried on the bench."
        words: [hippogriff]
    level: should
    sources: [{cite: Workshop sheet WS-9, known: house}]
"""


def test_the_page_on_the_bench_is_the_page_that_would_be_published(folder: Path, tmp_path: Path) -> None:
    bench = Bench(folder, Memory(tmp_path / "memory", surroundings="test"))
    bench.look_again()
    for name, pair in bench.state.pairs.items():
        assert _text(bench.page(f"{name}.html")) == composition(compose(pair)).page


def _text(given: tuple[bytes, object] | None) -> str:
    assert given is not None
    return given[0].decode()


@pytest.mark.parametrize("host", ["example.com", "127.0.0.1", "rebound.example:8710"])
def test_another_host_is_refused(server: Server, host: str) -> None:
    assert asked(server, "/", host) == (403, b"Only this machine may ask.\n")


def test_the_loopback_names_are_answered(server: Server) -> None:
    assert asked(server, "/", f"localhost:{server.server_port}")[0] == 200
    assert server.server_address[0] == "127.0.0.1"


@pytest.mark.parametrize(
    "path",
    [
        "/../methods/house-rules.yaml",
        "/methods/house-rules.yaml",
        "/assets/../screen.css",
        "/assets/%2e%2e/%2e%2e/pyproject.toml",
        "/%2fetc/passwd",
        "/tutor-architrave-set-back-frame.html",
    ],
)
def test_nothing_but_the_site_is_served(server: Server, path: str) -> None:
    assert asked(server, path)[0] == 404


def test_the_theme_and_a_sheet_are_made_on_request(server: Server) -> None:
    status, style = asked(server, "/assets/page.css")
    assert status == 200
    assert b"font-face" in style
    status, sheet = asked(server, f"/{GUIDE.removesuffix('.html')}.pdf")
    assert status == 200
    assert sheet.startswith(b"%PDF-")


def test_all_files_of_a_job_are_made_on_request(server: Server) -> None:
    _, page = asked(server, f"/{STATEMENT}")
    beside = re.findall(r'href="(reading-room-doors[^"/]*)"', page.decode())
    assert {"reading-room-doors-full-size.pdf", "reading-room-doors.zip"} <= set(beside)
    for name in ("reading-room-doors-full-size.pdf", "reading-room-doors.zip"):
        status, content = asked(server, f"/{name}")
        assert (status, content[:2]) == (200, b"%P" if name.endswith("pdf") else b"PK")


def test_a_taken_port_is_told(folder: Path, tmp_path: Path) -> None:
    with socket.create_server((HOST, 0)) as taken, pytest.raises(MachineLacks) as lack:
        Server(Bench(folder, Memory(tmp_path / "memory", surroundings="test")), taken.getsockname()[1])
    assert lack.value.problem.code == "port-taken"


def test_the_interrupt_key_ends_it_well(folder: Path, tmp_path: Path) -> None:
    command = [sys.executable, "-m", "generator.cli", "preview", str(folder), "--port", "0"]
    environment = {**os.environ, "PYTHONPATH": str(ROOT), "STOREYROD_CACHE": str(tmp_path / "memory")}
    run = subprocess.Popen(
        command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, env=environment
    )
    assert run.stdout
    assert run.stdout.readline().startswith("Preview at http://127.0.0.1:")
    run.send_signal(signal.SIGINT)
    out, err = run.communicate(timeout=20)
    assert (out, run.returncode) == ("Preview ended.\n", 0)
    assert "Traceback" not in err
