"""The SVG itself: valid, in true millimetres, the same every time, fit to stand with others in one page."""

from __future__ import annotations

import re
import subprocess
import sys
import xml.etree.ElementTree as ET
from pathlib import Path

import pytest

from generator.drawings import DRAWINGS, draw
from generator.drawings.pens import SCREEN_NAMES
from generator.drawings.registry import lay
from tests.drawings.samples import PAPER, PHONE, THUMBNAIL, USUAL, jamb

NAMES = sorted(USUAL)
SWEPT_APART = ("cutting_plan", "day_dose", "programme")
"""Drawings with tests of their own: test_bars_drawing.py, test_doses.py and test_programmes.py."""
SVG = "{http://www.w3.org/2000/svg}"
ROOT = Path(__file__).parents[2]


def test_every_drawing_has_a_sample_here_or_a_test_of_its_own() -> None:
    assert sorted(DRAWINGS) == sorted((*NAMES, *SWEPT_APART))


@pytest.mark.parametrize("width", [PAPER, PHONE, THUMBNAIL])
@pytest.mark.parametrize("name", NAMES)
def test_root_is_sized_in_millimetres_with_the_same_view_box(name: str, width: float) -> None:
    picture = draw(name, USUAL[name], width)
    root = ET.fromstring(picture.svg)
    assert root.tag == f"{SVG}svg"
    assert root.get("width") == f"{width:g}mm"
    assert root.get("height") == f"{picture.height_mm:g}mm"
    assert root.get("viewBox") == f"0 0 {width:g} {picture.height_mm:g}"
    assert root.get("role") == "img"


@pytest.mark.parametrize("name", NAMES)
def test_title_and_description_are_the_pictures_own(name: str) -> None:
    picture = draw(name, USUAL[name], PAPER)
    root = ET.fromstring(picture.svg)
    assert root.findtext(f"{SVG}title") == picture.title
    assert root.findtext(f"{SVG}desc") == picture.alt
    ids = [element.get("id") for element in root.iter() if element.get("id")]
    assert root.get("aria-labelledby") == " ".join(str(i) for i in ids)


@pytest.mark.parametrize("name", NAMES)
def test_nothing_in_it_reaches_beyond_itself(name: str) -> None:
    svg = draw(name, USUAL[name], PAPER).svg
    for unwanted in ("<metadata", "<style", "<!DOCTYPE", "<?xml", "var(", "href", "<image", "url("):
        assert unwanted not in svg


@pytest.mark.parametrize("name", NAMES)
def test_text_stays_text(name: str) -> None:
    drawn = lay(name, USUAL[name], PAPER)
    root = ET.fromstring(draw(name, USUAL[name], PAPER).svg)
    assert [e.text for e in root.iter(f"{SVG}text")] == [text.text for text in drawn.sheet.texts]


@pytest.mark.parametrize("name", NAMES)
def test_a_thumbnail_carries_no_text_and_no_hatch(name: str) -> None:
    sheet = lay(name, USUAL[name], THUMBNAIL).sheet
    assert sheet.texts == []
    assert sheet.hatches == []


def test_a_packer_is_written_in_the_sheets_own_millimetres() -> None:
    drawn = lay("jamb_section", jamb(packer=8.5), PAPER)
    svg = draw("jamb_section", jamb(packer=8.5), PAPER).svg
    (x, y), (right, _), (_, bottom), _ = drawn.sheet.outlines["packer"].paper
    wide, high = f"{right - x:g}", f"{bottom - y:.1f}"
    assert f'd="m{x:g} {y:.2f}h{wide}v{high}h-{wide}z' in svg


def test_a_jamb_for_paper_is_light() -> None:
    """Its MDF alone has some two thousand dots."""
    assert len(draw("jamb_section", jamb(), PAPER).svg.encode()) < 43_000


@pytest.mark.parametrize("name", NAMES)
def test_same_values_same_bytes(name: str) -> None:
    assert draw(name, USUAL[name], PAPER) == draw(name, USUAL[name], PAPER)


def test_same_bytes_in_another_process_with_another_hash_seed() -> None:
    program = (
        "import hashlib; from tests.drawings.samples import USUAL; from generator.drawings import draw; "
        "whole = ''.join(draw(n, USUAL[n], 175.0).svg for n in sorted(USUAL)); "
        "print(hashlib.sha256(whole.encode()).hexdigest())"
    )
    runs = [
        subprocess.run(
            [sys.executable, "-c", program],
            cwd=ROOT,
            env={"PYTHONHASHSEED": seed, "PATH": "/usr/bin:/bin"},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    ]
    assert runs[0] == runs[1]
    assert len(runs[0].strip()) == 64


def test_ids_differ_between_pictures() -> None:
    pictures = [draw(name, USUAL[name], width) for name in NAMES for width in (PAPER, PHONE)]
    ids = [found for picture in pictures for found in re.findall(r'\bid="([^"]+)"', picture.svg)]
    assert len(ids) == len(set(ids)) == 2 * len(pictures)


@pytest.mark.parametrize("name", NAMES)
def test_on_screen_every_colour_can_be_changed_by_the_page(name: str) -> None:
    picture = draw(name, USUAL[name], PAPER)
    inline = picture.inline()
    colours = set(re.findall(r"#[0-9a-f]{6}\b", picture.svg))
    assert colours <= set(SCREEN_NAMES)
    assert re.findall(r"(?<!,)#[0-9a-f]{6}", inline) == []
    for colour in colours:
        assert f"var({SCREEN_NAMES[colour]},{colour})" in inline
    assert re.sub(r"var\(--[a-z-]+,(#[0-9a-f]{6})\)", r"\1", inline) == picture.svg


@pytest.mark.parametrize("name", NAMES)
def test_hatches_survive_a_photocopy(name: str) -> None:
    """At least 0.15 mm wide and no lighter than #4F4F4F (tried on a simulated harsh copy)."""
    for area in lay(name, USUAL[name], PAPER).sheet.hatches:
        pen = area.hatch.pen
        assert pen.width >= 0.15
        assert int(pen.colour[1:3], 16) <= 0x4F


def test_importing_the_room_loads_no_plotting_library() -> None:
    program = (
        "import sys, generator.drawings; "
        "print(sorted({'matplotlib', 'numpy', 'fontTools'} & set(sys.modules)))"
    )
    run = subprocess.run(
        [sys.executable, "-c", program], cwd=ROOT, capture_output=True, text=True, check=True
    )
    assert run.stdout.strip() == "[]"


def test_drawing_never_loads_pyplot() -> None:
    program = (
        "import sys; from tests.drawings.samples import USUAL; from generator.drawings import draw; "
        "[draw(n, USUAL[n], 175.0) for n in USUAL]; print('matplotlib.pyplot' in sys.modules)"
    )
    run = subprocess.run(
        [sys.executable, "-c", program], cwd=ROOT, capture_output=True, text=True, check=True
    )
    assert run.stdout.strip() == "False"
