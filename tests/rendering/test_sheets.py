"""Printed sheets: valid, tagged, true to scale, the same every time, and laid out whole."""

from __future__ import annotations

import logging
import re
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pikepdf
import pytest

from generator.documents.blocks import CheckBox, Sequence, Status
from generator.rendering.html import render_sheet
from generator.rendering.outline import contents
from generator.rendering.pdf import OutsideAddress, render_pdf
from generator.rendering.themes import Theme
from tests.checkers.findings import listed
from tests.checkers.pdf_ua import facts, syntax_failures, text_of, ua_failures
from tests.checkers.programs import output_of
from tests.checkers.true_scale import strokes
from tests.rendering import sample
from tests.rendering.conftest import DOCUMENTS

# Left edge and top of the rod, and its true length, in millimetres.
ROD_LEFT, ROD_TOP, ROD_LENGTH = 6.0, 17.0, 262
TRUE_WITHIN = 0.1


@pytest.mark.parametrize("name", DOCUMENTS)
def test_sheets_conform_to_pdf_ua_1(name: str, sheets: dict[str, Path]) -> None:
    assert listed(ua_failures(sheets[name])) == ""
    assert listed(syntax_failures(sheets[name])) == ""


def test_the_ua_check_finds_a_drawing_without_words(theme: Theme, tmp_path: Path) -> None:
    sheet = re.sub(
        r'(<img class="drawing"[^>]*?) alt="[^"]*"', r"\1", render_sheet(sample.statement(), theme)
    )
    broken = tmp_path / "broken.pdf"
    broken.write_bytes(render_pdf(sheet, theme))
    assert "FIGURE" in listed(ua_failures(broken)).upper()


@pytest.mark.parametrize("name", DOCUMENTS)
def test_sheets_say_what_they_are(name: str, sheets: dict[str, Path]) -> None:
    said = facts(sheets[name])
    assert said.title.startswith("SF-07 Architrave to a set-back frame")
    assert (said.language, said.tagged) == ("en-GB", True)
    assert {title for title, _ in bookmarks(sheets[name])} >= {
        entry.title.replace("'", "’") for entry in contents(DOCUMENTS[name])
    }
    assert {(round(width), round(height)) for width, height in said.sizes} == {(210, 297)}


@pytest.mark.parametrize("name", DOCUMENTS)
def test_the_rod_is_true_on_every_page(name: str, sheets: dict[str, Path]) -> None:
    for page in range(1, facts(sheets[name]).pages + 1):
        ticks = [
            stroke
            for stroke in strokes(sheets[name], page)
            if stroke.level()
            and abs(min(stroke.x0, stroke.x1) - ROD_LEFT) < TRUE_WITHIN
            and stroke.length < 8.2
        ]
        heights = {stroke.y0 for stroke in ticks}
        for mark in range(ROD_LENGTH + 1):
            assert min(abs(height - ROD_TOP - mark) for height in heights) < TRUE_WITHIN, (page, mark)


def test_the_great_marks_cross_the_rod_and_no_others_do(sheets: dict[str, Path]) -> None:
    full = [
        round(stroke.y0 - ROD_TOP, 1)
        for stroke in strokes(sheets["statement"])
        if stroke.level() and abs(stroke.length - 8) < 0.05 and abs(stroke.width - 0.5) < 0.01
    ]
    assert sorted(full) == [0, 100, 200]


def test_the_same_sheet_gives_the_same_bytes_in_another_process(sheets: dict[str, Path]) -> None:
    made = subprocess.run(
        [sys.executable, "-c", _AGAIN], capture_output=True, check=True, cwd=Path(__file__).parents[2]
    )
    assert made.stdout == sheets["guide"].read_bytes()


_AGAIN = """
import sys
from tests.rendering import sample
from generator.rendering.html import render_sheet
from generator.rendering.pdf import render_pdf
from generator.rendering.themes import load_theme
sys.stdout.buffer.write(render_pdf(render_sheet(sample.guide(), load_theme()), load_theme()))
"""


def test_style_sheets_are_understood_to_the_last_rule(theme: Theme, caplog: pytest.LogCaptureFixture) -> None:
    from generator.rendering import pdf

    pdf._press.cache_clear()
    logging.getLogger("weasyprint").propagate = True
    with caplog.at_level(logging.WARNING, logger="weasyprint"):
        render_pdf(render_sheet(sample.guide(), theme), theme)
    assert [record.getMessage() for record in caplog.records if record.name == "weasyprint"] == []


@pytest.mark.parametrize("address", ["https://a.test/x.png", "file:///etc/hostname"])
def test_an_address_outside_the_theme_stops_the_press(address: str, theme: Theme) -> None:
    sheet = render_sheet(sample.guide(), theme)
    with pytest.raises(OutsideAddress, match=re.escape(address)):
        render_pdf(sheet.replace("<main>", f'<main><img src="{address}" alt="x">'), theme)


def bookmarks(pdf: Path) -> set[tuple[str, int]]:
    """Each bookmark's title and the number of the page it leads to."""
    with pikepdf.open(pdf) as opened, opened.open_outline() as outline:
        numbers = {page.objgen: number for number, page in enumerate(opened.pages, start=1)}
        return {
            (item.title, numbers[item.destination[0].objgen])
            for root in outline.root
            for item in (root, *under(root))
        }


def under(item: pikepdf.OutlineItem) -> Iterator[pikepdf.OutlineItem]:
    """The bookmarks below one, depth first."""
    for child in item.children:
        yield child
        yield from under(child)


def pages_of(pdf: Path) -> list[str]:
    return text_of(pdf).split("\f")[:-1]


def drawn_in_order(pdf: Path, page: int) -> str:
    """The words of one page as they follow in its content, columns one after the other."""
    return " ".join(output_of("pdftotext", "-raw", "-f", str(page), "-l", str(page), str(pdf), "-").split())


@pytest.mark.parametrize("name", DOCUMENTS)
def test_every_page_has_its_header_and_number(name: str, sheets: dict[str, Path]) -> None:
    texts = pages_of(sheets[name])
    for number, text in enumerate(texts, start=1):
        assert "SF-07 Architrave to a set-back frame" in text
        assert f"Page {number} of {len(texts)}" in " ".join(text.split())


def test_a_hold_point_never_splits(sheets: dict[str, Path]) -> None:
    for text in pages_of(sheets["statement"]):
        assert text.count("HOLD POINT") == text.count("Date and time") == text.count("Released by")


def test_the_first_page_answers_what_a_supervisor_asks(sheets: dict[str, Path]) -> None:
    first = drawn_in_order(sheets["statement"], 1)
    asked = ("What", "Where and when", "Who", "What stops the job", "In an emergency")
    places = [first.index(f"{word}") for word in asked]
    assert places == sorted(places)
    assert "Approved" in first


def test_contents_give_the_page_where_each_part_stands(sheets: dict[str, Path]) -> None:
    listing, stand = drawn_in_order(sheets["statement"], 2), bookmarks(sheets["statement"])
    for entry in (entry for entry in contents(DOCUMENTS["statement"]) if entry.depth == 1):
        title = entry.title.replace("'", "’")
        found = re.search(rf"{re.escape(title)} (\d+)", listing)
        assert found, title
        assert (title, int(found.group(1))) in stand, title


@pytest.mark.parametrize("status", [Status.DRAFT, Status.SUPERSEDED, Status.WITHDRAWN])
def test_a_word_lies_across_sheets_that_must_not_be_worked_from(status: Status, theme: Theme) -> None:
    worded, plain = (
        render_sheet(replace(sample.statement(), issue=sample.issue_of(one)), theme)
        for one in (status, Status.FOR_CONSTRUCTION)
    )
    assert worded.count("background-image:url(") == plain.count("background-image:url(") == 1
    assert len(re.findall(r'url\("data:', worded)) == len(re.findall(r'url\("data:', plain)) + 1


@pytest.mark.parametrize(("status", "layers"), [(Status.DRAFT, 2), (Status.FOR_CONSTRUCTION, 1)])
def test_rod_and_word_are_drawn_once_and_lie_behind_the_text_of_every_sheet(
    status: Status, layers: int, theme: Theme, tmp_path: Path
) -> None:
    file = tmp_path / "statement.pdf"
    sheet = render_sheet(replace(sample.statement(), issue=sample.issue_of(status)), theme)
    file.write_bytes(render_pdf(sheet, theme))
    with pikepdf.open(file) as opened:
        behind = [_behind(page)[:layers] for page in opened.pages]
        forms = [page.resources.XObject[behind[0][0]].objgen for page in opened.pages]
    assert len(behind) > 4
    assert len(set(behind[0])) == layers
    assert len(set(map(tuple, behind))) == len(set(forms)) == 1


def _behind(page: pikepdf.Page) -> list[str]:
    """The names of the forms that a page shows before its first word, all of them marked as artifacts."""
    names, marks = [], [""]
    for operands, operator in pikepdf.parse_content_stream(page):
        match str(operator):
            case "BT":
                break
            case "BMC" | "BDC":
                marks.append(str(operands[0]))
            case "EMC":
                marks.pop()
            case "Do":
                assert marks[-1] == "/Artifact"
                names.append(str(operands[0]))
    return names


def test_sheets_that_give_page_numbers_are_laid_out_twice_and_no_oftener(
    theme: Theme, monkeypatch: pytest.MonkeyPatch
) -> None:
    from weasyprint.layout import page

    laid_out: list[int] = []
    whole = page.remake_page
    monkeypatch.setattr(
        page, "remake_page", lambda index, *rest: laid_out.append(index) or whole(index, *rest)
    )
    render_pdf(render_sheet(sample.statement(), theme), theme)
    times = [laid_out.count(index) for index in range(max(laid_out) + 1)]
    assert set(times) == {1, 2}


def test_a_drawing_keeps_its_size_on_paper(sheets: dict[str, Path]) -> None:
    cut = [
        stroke
        for page in range(1, facts(sheets["statement"]).pages + 1)
        for stroke in strokes(sheets["statement"], page)
        if abs(stroke.width - 0.5) < 0.01 and abs(stroke.length - 69) < 3
    ]
    assert {round(stroke.length, 1) for stroke in cut if stroke.level()} == {69.0}


def test_no_text_runs_into_the_margin(sheets: dict[str, Path]) -> None:
    for name in DOCUMENTS:
        boxes = output_of("pdftotext", "-bbox", str(sheets[name]), "-")
        right = [float(edge) * 25.4 / 72 for edge in re.findall(r'xMax="([\d.]+)"', boxes)]
        assert max(right) < 196.6, name


@pytest.mark.parametrize("count", [1, 4, 5, 7, 13])
def test_the_boxes_of_a_check_stay_on_the_sheet_for_any_number_of_openings(
    count: int, theme: Theme, tmp_path: Path
) -> None:
    statement = sample.statement()
    boxes = tuple(CheckBox(opening=f"box{n}", expected="expect 2504 mm") for n in range(1, count + 1))
    first = sample.steps(guide=False)[0]
    check = replace(sample.reading_check("1.1", openings=True), boxes=boxes)
    steps = (replace(first, figures=(), checks=(check,)),)
    blocks = tuple(replace(b, steps=steps) if isinstance(b, Sequence) else b for b in statement.blocks)
    file = tmp_path / "boxes.pdf"
    file.write_bytes(render_pdf(render_sheet(replace(statement, blocks=blocks), theme), theme))
    edges = re.findall(r'xMax="([\d.]+)"[^>]*>box\d+<', output_of("pdftotext", "-bbox", str(file), "-"))
    assert len(edges) == count
    assert max(float(edge) * 25.4 / 72 for edge in edges) < 196


def test_drawings_too_big_for_their_step_stand_after_the_text_before_the_workings(theme: Theme) -> None:
    statement = sample.statement()
    tall = replace(sample.section_picture(), height_mm=220.0)
    big = replace(sample.jamb_figure("figure-8", "8"), picture=tall)
    steps = (replace(sample.steps(guide=False)[0], figures=(big,)),)
    blocks = tuple(replace(b, steps=steps) if isinstance(b, Sequence) else b for b in statement.blocks)
    sheet = render_sheet(replace(statement, blocks=blocks), theme)
    places = [sheet.index(f'id="{key}"') for key in ("step-1", "briefing", "figure-8", "annex-workings")]
    assert places == sorted(places)
    assert 'Figure 8, page <a class="page-of" href="#figure-8">' in sheet
