"""What tests of several rooms share: one browser for the whole run."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from hypothesis import settings
from playwright.sync_api import Browser

from tests.checkers.browser import chromium

settings.register_profile("the same every run", derandomize=True, database=None)
settings.load_profile("the same every run")


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Headless Chromium, started once a test process; an error naming the cure where it is not installed."""
    with chromium() as started:
        yield started
