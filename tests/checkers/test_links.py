"""The link follower bites."""

from __future__ import annotations

from pathlib import Path

from tests.checkers.findings import listed
from tests.checkers.links import broken_links, doubled_ids, outside_addresses, read_sheet

SOUND = """<!doctype html><html lang="en-GB"><head><title>Index</title></head><body>
<h1 id="top">Index</h1><a href="guide/one.html#step-2">One</a>
<a href="#top">Up</a><img src="a%20b.svg" alt="">
<svg xmlns="http://www.w3.org/2000/svg"><title>Plan</title></svg></body></html>"""


def laid_down(folder: Path, index: str = SOUND) -> Path:
    (folder / "guide").mkdir()
    (folder / "index.html").write_text(index, encoding="utf-8")
    (folder / "guide" / "one.html").write_text(
        "<h1 id='step-2'>One</h1><a href='../index.html'>Index</a>", encoding="utf-8"
    )
    (folder / "a b.svg").write_text("<svg xmlns='http://www.w3.org/2000/svg'/>", encoding="utf-8")
    return folder


def test_a_sound_site_passes(tmp_path: Path) -> None:
    site = laid_down(tmp_path)
    assert listed(broken_links(site)) == ""
    assert listed(doubled_ids(site)) == ""
    assert listed(outside_addresses(site)) == ""
    assert (read_sheet(site / "index.html").title, read_sheet(site / "index.html").language) == (
        "Index",
        "en-GB",
    )


def test_each_broken_link_is_named(tmp_path: Path) -> None:
    links = (
        "guide/two.html",
        "guide/one.html#step-9",
        "#gone",
        "../other.html",
        "/root.html",
        "https://example.com/",
    )
    (tmp_path / "site").mkdir()
    site = laid_down(
        tmp_path / "site", SOUND.replace("</body>", "".join(f"\n<a href='{link}'>x</a>" for link in links))
    )
    (tmp_path / "other.html").write_text("", encoding="utf-8")
    assert listed(broken_links(site)).splitlines() == [
        "index.html:5: [no such file] guide/two.html",
        "index.html:6: [no such id] guide/one.html#step-9",
        "index.html:7: [no such id] #gone",
        "index.html:8: [leads out of the site] ../other.html",
        "index.html:9: [not a path inside the site] /root.html",
        "index.html:10: [not a path inside the site] https://example.com/",
    ]


def test_an_address_outside_is_named_wherever_it_stands(tmp_path: Path) -> None:
    site = laid_down(tmp_path)
    (site / "look.css").write_text("@import '//fonts.example.com/a.css';", encoding="utf-8")
    (site / "read.js").write_text("// a remark\nfetch('https://example.com/x')", encoding="utf-8")
    assert listed(outside_addresses(site)).splitlines() == [
        "look.css: [address outside] //fonts.example.com/a.css",
        "read.js: [address outside] https://example.com/x",
    ]


def test_a_doubled_id_is_named(tmp_path: Path) -> None:
    site = laid_down(tmp_path, SOUND.replace("<svg ", "<svg id='top' "))
    assert listed(doubled_ids(site)) == "index.html: [doubled id] top"
