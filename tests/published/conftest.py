"""The published site served on loopback to a phone that nothing was opened on before."""

from __future__ import annotations

import shutil
import threading
from collections.abc import Iterator
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page


class Quiet(SimpleHTTPRequestHandler):
    """Serves files and says nothing of it; while `waits` is clear it answers nobody."""

    waits = threading.Event()
    waits.set()

    def do_GET(self) -> None:
        """Answer once it may."""
        self.waits.wait(30)
        super().do_GET()

    def log_message(self, format: str, *args: object) -> None:
        """Leave the line unprinted."""


@pytest.fixture
def served(site: Path, tmp_path: Path) -> Iterator[tuple[Path, str]]:
    """Give a copy of the site that a test may alter, and the address at which it is served."""
    folder = tmp_path / "site"
    shutil.copytree(site, folder)
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(Quiet, directory=str(folder)))
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    yield folder, f"http://127.0.0.1:{server.server_port}/"
    server.shutdown()
    server.server_close()
    thread.join()


@pytest.fixture
def context(browser: Browser) -> Iterator[BrowserContext]:
    """Give a phone on which nothing was opened before."""
    made = browser.new_context(viewport={"width": 360, "height": 740})
    yield made
    made.close()


def opened_and_kept(context: BrowserContext, address: str) -> Page:
    page = context.new_page()
    page.goto(address)
    page.wait_for_selector("html[data-offline='kept']", state="attached", timeout=20_000)
    return page
