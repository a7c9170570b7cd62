"""Lists as CSV and as XLSX, the same bytes for the same list."""

from __future__ import annotations

import csv
import io
from collections.abc import Mapping, Sequence
from datetime import UTC, datetime
from decimal import Decimal
from typing import Any

from generator.documents.listings import Cell, Listing

# Spreadsheets take a text that begins so for a formula; an apostrophe keeps it a text.
_FORMULA_SIGNS = ("=", "+", "-", "@", "\t")
_LONGEST_NAME = 31
_WIDEST = 48
# A file's own date would make two equal lists differ; this is the first that a ZIP can hold.
_NO_DATE = datetime(1980, 1, 1, tzinfo=UTC)


def csv_bytes(listing: Listing) -> bytes:
    """The list by RFC 4180, in UTF-8 with its mark, so that spreadsheets read names with accents rightly."""
    out = io.StringIO(newline="")
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerows([listing.heads, *([_written(cell) for cell in row] for row in listing.rows)])
    return out.getvalue().encode("utf-8-sig")


def _written(cell: Cell) -> str:
    if cell is None:
        return ""
    if isinstance(cell, str):
        return f"'{cell}" if cell.startswith(_FORMULA_SIGNS) else cell
    return format(cell, "f") if isinstance(cell, Decimal) else str(cell)


def xlsx_bytes(listings: Sequence[Listing], properties: Mapping[str, str]) -> bytes:
    """A workbook with a sheet for each list, its heads in sight; `properties` such as title and company."""
    import xlsxwriter

    out = io.BytesIO()
    with xlsxwriter.Workbook(out, {"in_memory": True, "strings_to_formulas": False}) as book:
        book.set_properties({**properties, "created": _NO_DATE})
        bold = book.add_format({"bold": True, "text_wrap": True, "valign": "bottom"})
        for listing in listings:
            _fill(book.add_worksheet(listing.title[:_LONGEST_NAME]), listing, bold)
    return out.getvalue()


def _fill(sheet: Any, listing: Listing, bold: Any) -> None:
    for column, head in enumerate(listing.heads):
        sheet.write_string(0, column, head, bold)
        sheet.set_column(column, column, _width(listing, column))
    for number, row in enumerate(listing.rows, 1):
        for column, cell in enumerate(row):
            if isinstance(cell, str):
                sheet.write_string(number, column, cell)
            elif cell is not None:
                sheet.write_number(number, column, float(cell))
    sheet.freeze_panes(1, 0)
    sheet.set_paper(9)
    sheet.set_landscape()
    sheet.fit_to_pages(1, 0)
    sheet.repeat_rows(0)


def _width(listing: Listing, column: int) -> int:
    """Characters across: the widest cell or the longest word of the head, which may take several lines."""
    head = max(map(len, listing.heads[column].split()))
    return min(max(head, *(len(_written(row[column])) for row in listing.rows)) + 2, _WIDEST)
