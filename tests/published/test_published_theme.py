"""One job published in the shipped theme that is least like the default, held against the same checkers."""

from __future__ import annotations

import shutil

import pytest
from playwright.sync_api import Browser

from tests.checkers.axe import axe_violations
from tests.checkers.browser import VIEWS, opened, overflows
from tests.checkers.contrast import faint_text
from tests.checkers.findings import Finding, listed
from tests.checkers.nu import nu_messages
from tests.checkers.publication import ROOT, Published, publish_demo

KEPT = ("architrave-set-back-frame.yaml", "jobs/reading-room-doors.yaml", "jobs/reading-room-doors.csv")


@pytest.fixture(scope="module")
def dressed(tmp_path_factory: pytest.TempPathFactory) -> Published:
    """One method with its job, published in the theme called workshop."""
    folder = tmp_path_factory.mktemp("workshop")
    methods = folder / "given"
    (methods / "jobs").mkdir(parents=True)
    shutil.copytree(ROOT / "methods" / "catalogue", methods / "catalogue")
    for name in KEPT:
        shutil.copy(ROOT / "methods" / name, methods / name)
    rules = "format: 1\ntheme: workshop\ncompany:\n  name: Hethersedge Joinery\n"
    (methods / "house-rules.yaml").write_text(rules, encoding="utf-8")
    return publish_demo(folder / "work", methods)


def test_the_themed_site_is_sound_and_plainly_the_themes(dressed: Published, browser: Browser) -> None:
    assert listed(nu_messages([*dressed.pages, *sorted(dressed.site.rglob("*.css"))])) == ""
    found: list[Finding] = []
    for file in dressed.pages:
        for view in VIEWS:
            with opened(browser, file, view) as page:
                where = f"{dressed.name(file)} ({view})"
                found += [*axe_violations(page, where), *faint_text(page, where), *overflows(page, where)]
    assert listed(found) == ""
    statement = next(file for file in dressed.pages if file.name.startswith("statement-"))
    assert "When we down tools" in statement.read_text(encoding="utf-8")
