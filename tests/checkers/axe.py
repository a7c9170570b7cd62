"""Pages held against WCAG 2.2 A and AA and axe-core's best practices, in the browser (npm axe-core)."""

from __future__ import annotations

from typing import Any

from playwright.sync_api import Page

from tests.checkers.findings import Finding
from tests.checkers.programs import node_package

TAGS = ("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22a", "wcag22aa", "best-practice")


OF_COLOURS = ("color-contrast", "link-in-text-block")


def axe_violations(page: Page, where: str) -> tuple[Finding, ...]:
    """List axe-core's violations on an open page, one for each element that breaks a rule."""
    return _findings(_run(page)["violations"], where)


def axe_violations_of_colour(page: Page, where: str) -> tuple[Finding, ...]:
    """List those of the rules that look at colours, for a page whose other scheme has passed the rest."""
    return _findings(_run(page, {"type": "rule", "values": list(OF_COLOURS)})["violations"], where)


def axe_undecided(page: Page, where: str) -> tuple[Finding, ...]:
    """List what axe-core could not decide alone (its "incomplete"), for a person to look at."""
    return _findings(_run(page)["incomplete"], where)


def _run(page: Page, only: dict[str, Any] | None = None) -> dict[str, Any]:
    page.evaluate((node_package("axe-core") / "axe.min.js").read_text(encoding="utf-8"))
    by_tag = {"type": "tag", "values": list(TAGS)}
    options = {"runOnly": only or by_tag, "resultTypes": ["violations", "incomplete"]}
    results: dict[str, Any] = page.evaluate("options => axe.run(document, options)", options)
    if not results["passes"]:
        raise RuntimeError("axe-core passed no rule at all on this page, so it has looked at nothing")
    return results


def _findings(broken: list[dict[str, Any]], where: str) -> tuple[Finding, ...]:
    return tuple(
        Finding(
            where=where,
            rule=rule["id"],
            says=f"{node['target']}: {node['failureSummary']}".replace("\n", " "),
        )
        for rule in broken
        for node in rule["nodes"]
    )
