"""What tests of several rooms share: one browser a test process, one publication of the demonstration."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import settings
from playwright.sync_api import Browser

from tests.checkers.browser import chromium
from tests.checkers.once import made_once
from tests.checkers.publication import ROOT, Published, publish_demo

# No deadline: a loaded machine is no fault of the code.
settings.register_profile("the same every run", derandomize=True, database=None, deadline=None)
settings.load_profile("the same every run")


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Headless Chromium, started once a test process; an error naming the cure where it is not installed."""
    with chromium() as started:
        yield started


def _publish(folder: Path) -> None:
    publish_demo(folder, ROOT / "methods")


@pytest.fixture(scope="session")
def published(tmp_path_factory: pytest.TempPathFactory) -> Published:
    """The demonstration as published, shared by all test processes of one run; not to be altered."""
    base = tmp_path_factory.getbasetemp()
    shared = base.parent if "PYTEST_XDIST_WORKER" in os.environ else base
    return Published(folder=made_once(shared / "published-demonstration", _publish))


@pytest.fixture(scope="session")
def site(published: Published) -> Path:
    """The folder of the published site."""
    return published.site
