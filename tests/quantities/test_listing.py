"""The ledger as plain data, CSV and text."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path
from typing import Any

from generator.quantities.listing import CSV_HEAD, as_csv, as_data, as_text
from tests.quantities.folders import job_text, method_text, work

QUANTITIES = """
    head: {label: Head, work: opening_width + 2 * first_quirk}
    heads: {label: All heads, work: total(head), unit: m}
    packer: {label: Packer, work: 'even_packer(readings = set_back, step = ripping_step)'}
"""


def entries(part: list[dict[str, Any]]) -> dict[str, Any]:
    return {entry["name"]: entry for entry in part}


def test_plain_data_holds_value_working_and_what_it_rests_on(tmp_path: Path) -> None:
    data = as_data(work(tmp_path, method_text(QUANTITIES), job_text()).ledger)
    assert (data["method"], data["job"], data["broken"]) == ("T-1", "A job", [])
    head = entries(data["openings"][1]["entries"])["head"]
    assert head["result"]["text"] == "854 mm"
    assert head["result"]["working"] == [
        "head = opening_width + 2 × first_quirk", "= 844 mm + 2 × 5 mm", "= 854 mm",
    ]  # fmt: skip
    assert [rest["name"] for rest in head["result"]["rests_on"]] == ["opening_width", "first_quirk"]
    heads = entries(data["whole_job"])["heads"]["result"]
    assert (heads["number"], heads["unit"], heads["exact"]) == ("1.63", "m", False)


def test_plain_data_survives_json(tmp_path: Path) -> None:
    data = as_data(work(tmp_path, method_text(QUANTITIES), job_text()).ledger)
    assert json.loads(json.dumps(data)) == data


def test_a_record_is_laid_out_by_field_with_findings_in_words(tmp_path: Path) -> None:
    survey = "opening,opening_width,set_back@left:0\n1,768,8\n"
    data = as_data(work(tmp_path, method_text(QUANTITIES), job_text(), survey).ledger)
    packer = entries(data["openings"][0]["entries"])["packer"]["result"]
    assert packer["thickness"]["text"] == "8 mm"
    assert packer["remainders"][0]["member"] == "left"
    assert packer["remarks"][0] == {
        "code": "one-reading", "words": "there is one reading alone; the packer rests on it",
    }  # fmt: skip


def test_a_row_for_every_single_value(tmp_path: Path) -> None:
    ledger = work(tmp_path, method_text(QUANTITIES), job_text()).ledger
    head, *rows = csv.reader(io.StringIO(as_csv(ledger)))
    assert tuple(head) == CSV_HEAD
    found = {(row[1], row[2]): row[4:7] for row in rows}
    assert found["", "heads"] == ["1.63", "m", "no"]
    assert found["2, Hall", "packer.thickness"] == ["9", "mm", "yes"]
    assert found["2, Hall", "set_back[3]"] == ["9.1", "mm", "yes"]


def test_text_for_a_terminal(tmp_path: Path) -> None:
    text = as_text(work(tmp_path, method_text("""
        heads: {label: All heads, work: total(head), unit: m}
        head: {label: Head, work: opening_width + 2 * first_quirk}
    """), job_text()).ledger)  # fmt: skip
    assert text == (
        "T-1 A test: A job\n\n"
        "Whole job\n---------\n\n"
        "All heads\n  heads = total of head\n      = 778 mm + 854 mm\n      = 1632 mm\n      ≈ 1.63 m\n\n"
        "Opening 1, Porch\n----------------\n\n"
        "Head\n  head = opening_width + 2 × first_quirk\n      = 768 mm + 2 × 5 mm\n      = 778 mm\n\n"
        "Opening 2, Hall\n---------------\n\n"
        "Head\n  head = opening_width + 2 × first_quirk\n      = 844 mm + 2 × 5 mm\n      = 854 mm\n"
    )
