"""PDF files held against ISO 14289-1 (PDF/UA-1), against PDF syntax, and asked for plain facts."""

from __future__ import annotations

import re
import subprocess
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path

import pikepdf
from page import ValidationProfile, validate_pdf

from tests.checkers.findings import Finding
from tests.checkers.programs import output_of, program

_ROD_FIGURE, _FOOT = re.compile(r"^\s*\d{1,3}(?=\s|$)"), re.compile(r"Page \d+ of \d+")


@dataclass(frozen=True, slots=True, kw_only=True)
class Facts:
    """What a PDF says of itself; page sizes in millimetres as (width, height), one a page."""

    title: str
    language: str
    tagged: bool
    pages: int
    sizes: tuple[tuple[float, float], ...]
    bookmarks: int


def ua_failures(pdf: Path) -> tuple[Finding, ...]:
    """List the rules of PDF/UA-1 that a file breaks, by PyPI page-validation; none when it conforms."""
    report = validate_pdf(pdf, profile=ValidationProfile.PDF_UA_1)
    if report.rules.total < 100:
        raise RuntimeError(
            f"the PDF/UA-1 checker ran {report.rules.total} rules only; it is not the one expected"
        )
    found = tuple(
        Finding(where=pdf.name, rule=fault.rule_id, says=fault.message) for fault in report.failures
    )
    if report.is_compliant == bool(found):
        raise RuntimeError(f"the PDF/UA-1 checker contradicts itself about {pdf.name}")
    return found


def syntax_failures(pdf: Path) -> tuple[Finding, ...]:
    """List what `qpdf --check` finds wrong in a file's structure; it exits 2 on errors, 3 on warnings."""
    done = subprocess.run([program("qpdf"), "--check", str(pdf)], capture_output=True, text=True)
    if done.returncode == 0:
        return ()
    says = (done.stderr.strip() or done.stdout.strip()).replace(str(pdf), pdf.name)
    return (Finding(where=pdf.name, rule=f"qpdf exit {done.returncode}", says=says),)


def facts(pdf: Path) -> Facts:
    """Read title, tagging, page count and sizes by pdfinfo; language and bookmarks from the catalogue."""
    said = dict(re.findall(r"^([^:]+):\s*(.*)$", output_of("pdfinfo", "-l", "-1", str(pdf)), re.MULTILINE))
    sizes = [said[key] for key in said if re.fullmatch(r"Page\s+\d+ size", key)]
    with pikepdf.open(pdf) as opened:
        language = str(opened.Root.get("/Lang", ""))
        bookmarks = _bookmarks(opened)
    return Facts(
        title=said.get("Title", ""),
        language=language,
        tagged=said["Tagged"] == "yes",
        pages=int(said["Pages"]),
        sizes=tuple(_millimetres(size) for size in sizes),
        bookmarks=bookmarks,
    )


def _bookmarks(opened: pikepdf.Pdf) -> int:
    with opened.open_outline() as outline:
        return len(outline.root)


def _millimetres(size: str) -> tuple[float, float]:
    width, height = re.findall(r"[\d.]+", size)[:2]
    return round(float(width) * 25.4 / 72, 2), round(float(height) * 25.4 / 72, 2)


def loose_fonts(pdf: Path) -> tuple[Finding, ...]:
    """List fonts that a file names without carrying them, by pdffonts; a reader's machine may lack those."""
    lines = output_of("pdffonts", str(pdf)).splitlines()[2:]
    fonts = [
        re.fullmatch(r"(\S+).*?\s(yes|no)\s+(?:yes|no)\s+(?:yes|no)\s+\d+\s+\d+", line) for line in lines
    ]
    if not all(fonts):
        raise RuntimeError(f"pdffonts printed a line of another shape for {pdf.name}")
    return tuple(
        Finding(where=pdf.name, rule="font not embedded", says=font[1])
        for font in fonts
        if font and font[2] == "no"
    )


def text_of(pdf: Path) -> str:
    """Give the visible text of a PDF with its lay-out kept, by pdftotext."""
    return output_of("pdftotext", "-layout", str(pdf), "-")


def orphaned_headings(pdf: Path) -> tuple[str, ...]:
    """List the headings among a PDF's bookmarks that stand last on a page, away from what they head.

    The last line of a page is read by pdftotext, without the figures of the rod and the line at its foot.
    """
    titles = bookmarks(pdf)
    lasts = (_last_line(page) for page in text_of(pdf).split("\f")[:-1])
    return tuple(last for last in lasts if last in titles)


def bookmarks(pdf: Path) -> frozenset[str]:
    """Give the titles of all of a PDF's bookmarks."""
    with pikepdf.open(pdf) as opened, opened.open_outline() as outline:
        return frozenset(_titles(outline.root))


def _titles(items: Iterable[pikepdf.OutlineItem]) -> Iterator[str]:
    for item in items:
        yield " ".join(str(item.title).split())
        yield from _titles(item.children)


def _last_line(page: str) -> str:
    lines = (" ".join(_ROD_FIGURE.sub("", line).split()) for line in page.splitlines())
    return next(reversed([line for line in lines if line and not _FOOT.search(line)]), "")


def outside_links(pdf: Path) -> tuple[str, ...]:
    """List the addresses that a PDF's link annotations lead to outside the file itself."""
    with pikepdf.open(pdf) as opened:
        notes = [note for page in opened.pages for note in page.get("/Annots", [])]
        return tuple(str(note.A.URI) for note in notes if "/A" in note and "/URI" in note.A)
