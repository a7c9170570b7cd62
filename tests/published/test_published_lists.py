"""The lists a job can be taken away in, read by readers that did not write them, and its parcel."""

from __future__ import annotations

import csv
import io
import zipfile
from pathlib import Path

import openpyxl
import pytest

from generator.documents.listings import Listing
from generator.publishing.parcel import parcel
from generator.rendering.spreadsheets import csv_bytes, xlsx_bytes
from tests.checkers.findings import listed
from tests.checkers.links import broken_links, outside_addresses, read_sheet
from tests.checkers.publication import Published

DOORS = "reading-room-doors"
CUT = (
    "Mark", "Opening", "Material", "Piece", "Hand", "Long point, mm", "Short point, mm",
    "Left end, degrees off square", "Right end, degrees off square", "Left on for fitting, mm", "Cut, mm",
    "Width, mm", "Thickness, mm",
)  # fmt: skip


def _rows(file: Path) -> list[list[str]]:
    with file.open(newline="", encoding="utf-8-sig") as text:
        return list(csv.reader(text))


def test_the_cutting_list_is_that_of_the_openings(site: Path) -> None:
    """Opening 2 by hand: head 844 + 2 x 9 + 2 x 69 = 1000, 844 + 2 x 9 = 862; leg 1990 - 2 + 9 + 69."""
    rows = _rows(site / f"{DOORS}-cutting-list.csv")
    assert tuple(rows[0]) == CUT
    assert len(rows) == 1 + 4 * (3 + 3)
    where = "2, Hall to reading room"
    assert [row for row in rows if row[1:3] == [where, "architrave"]] == [
        ["2AL", where, "architrave", "left leg", "left", "2066", "1997", "0", "45", "5", "2071", "69", "18"],
        ["2AH", where, "architrave", "head", "", "1000", "862", "45", "45", "0", "1000", "69", "18"],
        [
            "2AR",
            where,
            "architrave",
            "right leg",
            "right",
            "2066",
            "1997",
            "45",
            "0",
            "5",
            "2071",
            "69",
            "18",
        ],
    ]


def test_the_materials_name_every_role_and_what_is_bought_of_it(site: Path) -> None:
    rows = _rows(site / f"{DOORS}-materials.csv")
    assert rows[0] == ["Used as", "Material", "What", "Amount", "Unit"]
    bought = {row[0]: row[2:] for row in rows[1:]}
    assert set(bought) == {
        "architrave", "packer timber", "glue", "adhesive", "filler", "stopping", "pins",
    }  # fmt: skip
    assert bought["glue"][:2] == ["Bottles of wood glue", "1"]
    assert bought["stopping"] == ["", "", ""]


@pytest.mark.parametrize("name", ["cutting-list", "materials"])
def test_the_workbook_holds_what_the_csv_holds(site: Path, name: str) -> None:
    book = openpyxl.load_workbook(site / f"{DOORS}-lists.xlsx")
    sheet = book[name.replace("-", " ").capitalize()]
    cells = [["" if cell is None else cell for cell in row] for row in sheet.iter_rows(values_only=True)]
    text = _rows(site / f"{DOORS}-{name}.csv")
    assert [[f"{cell:g}" if isinstance(cell, int | float) else cell for cell in row] for row in cells] == [
        [f"{float(cell):g}" if cell.replace(".", "", 1).isdigit() else cell for cell in row] for row in text
    ]
    assert sheet.freeze_panes == "A2"


def test_numbers_are_numbers_in_the_workbook(site: Path) -> None:
    sheet = openpyxl.load_workbook(site / f"{DOORS}-lists.xlsx")["Cutting list"]
    assert {type(cell.value) for cell in sheet["F"][1:]} <= {int, float}
    assert sum(cell.value for cell in sheet["F"][1:]) > 10_000


LISTING = Listing(
    name="x", title="X", heads=("What", "Amount, mm"), rows=(("=1+1", -2.5), ("naïve, “x”", None), ("@a", 3))
)


def test_no_text_is_taken_for_a_formula() -> None:
    assert csv_bytes(LISTING).decode("utf-8-sig") == (
        'What,"Amount, mm"\r\n\'=1+1,-2.5\r\n"naïve, “x”",\r\n\'@a,3\r\n'
    )
    sheet = openpyxl.load_workbook(io.BytesIO(xlsx_bytes([LISTING], {})))["X"]
    assert (sheet["A2"].value, sheet["A2"].data_type, sheet["B2"].value) == ("=1+1", "s", -2.5)


def test_equal_lists_and_parcels_are_equal_bytes() -> None:
    assert xlsx_bytes([LISTING], {"title": "a"}) == xlsx_bytes([LISTING], {"title": "a"})
    files = {"b.txt": b"2", "a/c.html": b"<p>1</p>"}
    assert parcel(files, "job") == parcel(dict(reversed(files.items())), "job")
    with zipfile.ZipFile(io.BytesIO(xlsx_bytes([LISTING], {}))) as book:
        assert {entry.date_time[0] for entry in book.infolist()} == {1980}


def test_a_job_is_whole_in_its_parcel(published: Published, tmp_path: Path) -> None:
    with zipfile.ZipFile(published.site / f"{DOORS}.zip") as whole:
        assert whole.testzip() is None
        assert {entry.date_time for entry in whole.infolist()} == {(1980, 1, 1, 0, 0, 0)}
        whole.extractall(tmp_path)
    folder = tmp_path / DOORS
    assert {file.name for file in folder.iterdir()} == {
        "assets", "drawings", f"statement-{DOORS}.html", f"statement-{DOORS}.pdf", f"{DOORS}-card.pdf",
        f"{DOORS}-cutting-list.csv", f"{DOORS}-materials.csv", f"{DOORS}-lists.xlsx",
        f"{DOORS}-full-size.pdf",
    }  # fmt: skip
    assert listed([*broken_links(folder), *outside_addresses(folder)]) == ""
    for file in folder.rglob("*"):
        if file.is_file() and file.suffix != ".html":
            assert file.read_bytes() == (published.site / file.relative_to(folder)).read_bytes()


def test_a_statement_leads_to_its_lists_and_to_all_in_one(published: Published) -> None:
    for page in published.pages:
        if page.name.startswith("statement-"):
            ways = {way.target for way in read_sheet(page).pointers}
            stem = page.stem.removeprefix("statement-")
            assert {f"{stem}.zip", f"{stem}-materials.csv", f"{stem}-lists.xlsx"} <= ways
            assert all((published.site / way).is_file() for way in ways if way.startswith(stem))
