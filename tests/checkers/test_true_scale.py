"""The steel rule measures what is known: shapes of given millimetres, by every way onto the page."""

from __future__ import annotations

from pathlib import Path
from urllib.parse import quote

import pikepdf
import pytest
from weasyprint import HTML

from tests.checkers.true_scale import Outline, outlines, strokes

SVG = """<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40">
<g transform="translate(10 5)">
<rect x="2" y="3" width="24" height="8.5" fill="none" stroke="#000" stroke-width="0.5"/></g>
<path d="M 40 5 v 30" stroke="#000" stroke-width="0.25" fill="none"/>
<path d="M 50 20 a 5 5 0 0 1 5 5" stroke="#000" stroke-width="0.13" fill="none"/></svg>"""
PLACED = "position:absolute;left:20mm;top:30mm;width:60mm;height:40mm"
ADDRESS = f"data:image/svg+xml,{quote(SVG)}"
WAYS = {
    "image": f'<img alt="x" style="{PLACED}" src="{ADDRESS}">',
    "inline": SVG.replace("<svg ", f'<svg style="{PLACED}" '),
    "background": f"<div style=\"{PLACED};background:url('{ADDRESS}') no-repeat\"></div>",
    "repeated background": f"<div style=\"{PLACED};height:80mm;background:url('{ADDRESS}')\"></div>",
}


def printed(folder: Path, body: str, zoom: float = 1) -> Path:
    file = folder / "sample.pdf"
    style = "<style>@page{size:A4;margin:0}body{margin:0}</style>"
    HTML(string=f"{style}{body}").write_pdf(file, zoom=zoom)
    return file


def rectangle(file: Path) -> Outline:
    return next(found for found in outlines(file) if found.width and found.closed)


@pytest.mark.parametrize("way", WAYS)
def test_a_rectangle_measures_what_was_drawn(tmp_path: Path, way: str) -> None:
    found = rectangle(printed(tmp_path, WAYS[way]))
    assert found.size == pytest.approx((24.0, 8.5), abs=0.01)
    assert found.box == pytest.approx((32.0, 38.0, 56.0, 46.5), abs=0.01)
    assert found.width == pytest.approx(0.5, abs=0.001)


@pytest.mark.parametrize("way", WAYS)
def test_a_line_is_a_segment_of_its_length_and_width(tmp_path: Path, way: str) -> None:
    lines = [line for line in strokes(printed(tmp_path, WAYS[way])) if line.upright() and line.length > 20]
    assert [line.length for line in lines[:1]] == pytest.approx([30.0], abs=0.01)
    assert (lines[0].x0, min(lines[0].y0, lines[0].y1)) == pytest.approx((60.0, 35.0), abs=0.01)
    assert lines[0].width == pytest.approx(0.25, abs=0.001)


def test_a_repeated_background_is_measured_at_each_repeat(tmp_path: Path) -> None:
    tops = [
        found.box[1] for found in outlines(printed(tmp_path, WAYS["repeated background"])) if found.closed
    ]
    assert [top for top in tops if top > 35] == pytest.approx([38.0, 78.0], abs=0.01)


def test_an_arc_is_as_long_as_a_quarter_turn(tmp_path: Path) -> None:
    arc = [
        piece
        for piece in strokes(printed(tmp_path, WAYS["image"]))
        if piece.width == pytest.approx(0.13, abs=0.001)
    ]
    assert sum(piece.length for piece in arc) == pytest.approx(7.854, abs=0.01)  # 5 mm x pi / 2


def test_a_filled_box_is_an_outline_without_a_stroke(tmp_path: Path) -> None:
    box = '<div style="position:absolute;left:6mm;top:17mm;width:8mm;height:100mm;background:#000"></div>'
    file = printed(tmp_path, box)
    (found,) = [outline for outline in outlines(file) if outline.filled]
    assert found.box == pytest.approx((6, 17, 14, 117), abs=0.01)
    assert found.width is None
    assert strokes(file) == ()


def test_a_sheet_printed_at_98_per_cent_is_found_out(tmp_path: Path) -> None:
    found = rectangle(printed(tmp_path, WAYS["inline"], zoom=0.98))
    assert abs(found.size[0] - 24.0) > 0.1


def test_operators_that_weasyprint_seldom_writes_are_followed(tmp_path: Path) -> None:
    file = tmp_path / "operators.pdf"
    with pikepdf.new() as pdf:
        page = pdf.add_blank_page(page_size=(595.2756, 841.8898))
        page.obj.Contents = pdf.make_stream(
            b"q 2.834645669 0 0 2.834645669 0 0 cm 0.3 w 10 20 m 20 20 l 20 30 l s"
            b" q 0 1 -1 0 0 0 cm 5 w 10 -60 m 40 -60 l S Q 10 50 m 20 60 20 60 v S n Q 0 0 99 99 re n"
        )
        pdf.save(file)
    triangle, turned, curve = outlines(file)
    assert triangle.closed
    assert triangle.box == pytest.approx((10, 267, 20, 277), abs=0.01)
    assert triangle.width == pytest.approx(0.3, abs=0.001)
    assert turned.box == pytest.approx((60, 257, 60, 287), abs=0.01)
    assert turned.width == pytest.approx(5, abs=0.001)
    assert curve.box == pytest.approx((10, 237, 20, 247), abs=0.01)
