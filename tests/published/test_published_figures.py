"""The published figures: the survey's arithmetic done again by hand, and one figure wherever it stands."""

from __future__ import annotations

import csv
import json
import re
from fractions import Fraction
from math import ceil
from typing import Any

import pytest
import yaml
from playwright.sync_api import Browser

from tests.checkers.browser import DESK, opened
from tests.checkers.pdf_ua import text_of
from tests.checkers.publication import ROOT, Published, storeyrod

METHOD = yaml.safe_load((ROOT / "methods" / "architrave-set-back-frame.yaml").read_text("utf-8"))
SURVEY = ROOT / "methods" / "jobs" / "reading-room-doors.csv"
# What the survey does not hold: quirks, packer width, floor gap, architrave width, ripping step, all in mm.
FIRST, SECOND, PACKER, FLOOR, ARCHITRAVE, STEP = 5, 4, 24, 2, 69, Fraction(1, 2)


@pytest.fixture(scope="session")
def quantities(published: Published) -> dict[tuple[str, str], str]:
    """The worked values as the quantities command prints them, by opening and name."""
    arguments = ("quantities", "SF-07", "--job", "reading-room-doors", "--as", "json", "--folder")
    done = storeyrod(*arguments, str(published.folder), cache=published.folder / "cache")
    assert done.returncode == 0, done.stderr
    told: list[dict[str, Any]] = json.loads(done.stdout)
    return {(figure["opening"], figure["name"]): figure["value"] for figure in told}


@pytest.fixture(scope="session")
def table(published: Published, browser: Browser) -> list[dict[str, str]]:
    """The openings table of the statement page, a row a mapping from column head to cell."""
    for file in published.pages:
        with opened(browser, file, DESK) as page:
            rows: list[dict[str, str]] | None = page.evaluate(_OPENINGS_TABLE)
        if rows:
            return rows
    pytest.fail("no published page holds a table with the columns 'Packer' and 'Leg, long point'")


_OPENINGS_TABLE = """() => {
  const words = e => e.textContent.replace(/\\s+/g, ' ').trim();
  for (const table of document.querySelectorAll('table')) {
    const heads = [...table.querySelectorAll('thead th, thead td')].map(words);
    if (!heads.some(h => h.startsWith('Leg, long point'))) continue;
    return [...table.querySelectorAll('tbody tr')].map(
      row => Object.fromEntries([...row.children].map((cell, column) => [heads[column], words(cell)])));
  }
  return null;
}"""


def survey() -> list[dict[str, str]]:
    """The rows of the demonstration's survey as they are written."""
    with SURVEY.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def by_hand(row: dict[str, str]) -> dict[str, Fraction]:
    """Work one opening out again: one packer from the mean of all readings, then plain sums of sizes.

    Common practice, no source, for the packer; the rest is the geometry of a mitred frame with the head
    packer lying over the leg packers.
    """
    readings = [Fraction(row[column]) for column in row if column.startswith("set_back@")]
    width, height = Fraction(row["opening_width"]), Fraction(row["opening_height"])
    quirk = FIRST + SECOND
    return {
        "packer_thickness": ceil(sum(readings) / len(readings) / STEP) * STEP,
        "head_packer": width + 2 * FIRST + 2 * PACKER,
        "leg_packer": height + FIRST - FLOOR,
        "head_short_point": width + 2 * quirk,
        "head_long_point": width + 2 * quirk + 2 * ARCHITRAVE,
        "leg_short_point": height + quirk - FLOOR,
        "leg_long_point": height + quirk + ARCHITRAVE - FLOOR,
    }


def number(text: str) -> str:
    """Take the first number out of a printed value, real minus and all."""
    found = re.search(r"[−-]?\d+(?:\.\d+)?", text)
    return found[0] if found else text


@pytest.mark.parametrize("row", survey(), ids=lambda row: row["name"])
def test_each_opening_agrees_with_the_sums_done_by_hand(
    quantities: dict[tuple[str, str], str], row: dict[str, str]
) -> None:
    (opening,) = {opening for opening, _ in quantities if row["name"] in opening}
    worked = {name: Fraction(number(quantities[opening, name])) for name in by_hand(row)}
    assert worked == by_hand(row)


def test_the_openings_table_prints_the_worked_figures(
    quantities: dict[tuple[str, str], str], table: list[dict[str, str]]
) -> None:
    openings = list(dict.fromkeys(opening for opening, _ in quantities if opening))
    assert len(table) == len(openings) == len(survey())
    for opening, row in zip(openings, table, strict=True):
        for column in METHOD["schedule"]:
            worked = quantities[opening, column["show"]]
            (cell,) = [cell for head, cell in row.items() if _heads(head, column["head"])]
            assert Fraction(number(cell)) == Fraction(number(worked)), (opening, column["head"])


def _heads(printed: str, head: str) -> bool:
    """Tell whether a printed column head is `head`, with or without a unit after it."""
    return re.fullmatch(re.escape(head) + r"(?:,? \(?mm\)?)?", printed) is not None


def test_the_printed_statement_carries_the_same_figures(
    published: Published, quantities: dict[tuple[str, str], str]
) -> None:
    texts = [" ".join(text_of(file).split()) for file in published.sheets]
    openings = list(dict.fromkeys(opening for opening, _ in quantities if opening))
    for opening in openings:
        figures = [number(quantities[opening, column["show"]]) for column in METHOD["schedule"]]
        # A column keeps its decimals all the way down, so that a whole figure may be printed as 9.0.
        printed = (rf"{re.escape(figure)}(?:\.0)?" for figure in figures)
        in_order = re.compile(r"(?:\s(?:\S{1,12}\s){0,4}?)".join(printed))
        assert [bool(in_order.search(text)) for text in texts].count(True) >= 1, (opening, figures)
