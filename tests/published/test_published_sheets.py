"""The published PDFs held against PDF/UA-1, PDF syntax and a steel rule."""

from __future__ import annotations

import pytest

from tests.checkers.findings import listed
from tests.checkers.leftovers import other_tools, unfilled
from tests.checkers.pdf_ua import (
    facts,
    loose_fonts,
    orphaned_headings,
    outside_links,
    syntax_failures,
    text_of,
    ua_failures,
)
from tests.checkers.publication import Published
from tests.checkers.true_scale import Outline, Segment, outlines, strokes_of

ROD_LEFT, ROD_TOP = 6.0, 17.0
WITHIN = 0.1


def test_every_sheet_conforms_to_pdf_ua(published: Published) -> None:
    assert listed(fault for file in published.sheets for fault in ua_failures(file)) == ""


def test_every_sheet_is_sound_pdf(published: Published) -> None:
    assert listed(fault for file in published.sheets for fault in syntax_failures(file)) == ""


def test_every_font_is_carried(published: Published) -> None:
    assert listed(fault for file in published.sheets for fault in loose_fonts(file)) == ""


def test_every_sheet_says_what_it_is(published: Published) -> None:
    told = [facts(file) for file in published.sheets]
    assert {fact.language for fact in told} == {"en-GB"}
    assert all(fact.tagged for fact in told)
    assert all(fact.title for fact in told)
    assert {size for fact in told for size in fact.sizes} == {(210.0, 297.0)}
    assert [fact.title for fact in told if fact.pages > 1 and fact.bookmarks < 2] == []


def test_every_printed_page_says_which_of_how_many_it_is(published: Published) -> None:
    for file in published.sheets:
        pages = text_of(file).split("\f")[:-1]
        lost = [k for k, page in enumerate(pages, 1) if f"{k} of {len(pages)}" not in " ".join(page.split())]
        assert lost == [], published.name(file)


def test_no_heading_is_left_alone_at_the_foot_of_a_page(published: Published) -> None:
    left = {published.name(file): orphaned_headings(file) for file in published.sheets}
    assert {name: titles for name, titles in left.items() if titles} == {}


def test_no_sheet_leads_outside_or_speaks_of_its_making(published: Published) -> None:
    found = []
    for file in published.sheets:
        text = text_of(file)
        found += [
            *other_tools(text, published.name(file)),
            *unfilled(text.splitlines(), published.name(file)),
        ]
    assert listed(found) == ""
    assert [link for file in published.sheets for link in outside_links(file)] == []


@pytest.fixture(scope="session")
def painted(published: Published) -> dict[str, tuple[Outline, ...]]:
    """All that is painted on every printed page, by file and page number."""
    return {
        f"{published.name(file)} page {page}": outlines(file, page)
        for file in published.sheets
        for page in range(1, facts(file).pages + 1)
    }


@pytest.fixture(scope="session")
def ruled(painted: dict[str, tuple[Outline, ...]]) -> dict[str, tuple[Segment, ...]]:
    """All strokes of every printed page."""
    return {where: strokes_of(found) for where, found in painted.items()}


def _on_the_rod(lines: tuple[Segment, ...]) -> list[Segment]:
    return [line for line in lines if line.level() and abs(min(line.x0, line.x1) - ROD_LEFT) < WITHIN]


def test_the_rod_is_true_on_every_page(ruled: dict[str, tuple[Segment, ...]]) -> None:
    for where, lines in ruled.items():
        great = sorted(
            {line.y0 for line in _on_the_rod(lines) if 0.4 < line.width < 0.6 and line.length > 7.5}
        )
        assert great == pytest.approx([ROD_TOP, ROD_TOP + 100, ROD_TOP + 200], abs=WITHIN), where


def test_every_millimetre_of_the_rod_is_marked(ruled: dict[str, tuple[Segment, ...]]) -> None:
    for where, lines in ruled.items():
        heights = {round(line.y0, 3) for line in _on_the_rod(lines)}
        for millimetre in range(201):
            assert min(abs(height - ROD_TOP - millimetre) for height in heights) < WITHIN, (where, millimetre)


@pytest.fixture(scope="session")
def drawn(painted: dict[str, tuple[Outline, ...]]) -> dict[str, tuple[Outline, ...]]:
    """All outlines cut through new work (stroked 0.5 mm, ISO 128) of every printed page."""
    return {
        where: tuple(outline for outline in found if outline.width and 0.45 < outline.width < 0.55)
        for where, found in painted.items()
    }


def _measures(outline: Outline, width: float, height: float) -> bool:
    across, down = outline.size
    return outline.closed and abs(across - width) < WITHIN and abs(down - height) < WITHIN


def test_the_jamb_section_is_true_to_scale(drawn: dict[str, tuple[Outline, ...]]) -> None:
    """Packer 24 x 8.5 mm, architrave 69 x 18 mm on it, second quirk 4 mm: the sizes of the first opening."""
    found = {
        where: (packer.box, architrave.box)
        for where, cut in drawn.items()
        for packer in cut
        if _measures(packer, 24.0, 8.5)
        for architrave in cut
        if _measures(architrave, 69.0, 18.0) and abs(architrave.box[3] - packer.box[1]) < WITHIN
    }
    assert found
    for where, (packer, architrave) in found.items():
        assert packer[2] - architrave[2] == pytest.approx(4.0, abs=WITHIN), where
        assert architrave[0] > 24.0, where
