"""Prose and numbers as they are set."""

from __future__ import annotations

import pytest

from generator.rendering.markdown import line, prose, stays_inside
from generator.rendering.numerals import set_numbers


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("5 mm", "<bdi>5 mm</bdi>"),
        ("8.5\u2009mm proud", "<bdi>8.5 mm</bdi> proud"),
        ("8.5\u00a0mm", "<bdi>8.5 mm</bdi>"),
        ("-0.5 / +1.0 mm", "<bdi>−0.5 / +1.0 mm</bdi>"),
        ("69 x 18 mm", "<bdi>69 × 18 mm</bdi>"),
        ("69 x 18", "69 × 18"),
        ("1.5 m²", "<bdi>1.5 m²</bdi>"),
        ("40 minutes", "40 minutes"),
        ("3 men", "3 men"),
        ("SF-07", "SF-07"),
        ("2026-11-16", "2026-11-16"),
        ("the frame's edge", "the frame’s edge"),
        ("+-1 mm", "<bdi>±1 mm</bdi>"),
        ("<b>5 mm", "&lt;b&gt;<bdi>5 mm</bdi>"),
    ],
)
def test_plain_text_is_escaped_and_numbers_keep_their_units(text: str, expected: str) -> None:
    assert set_numbers(text) == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("**Not included:** paint.", "<p><strong>Not included:</strong> paint.</p>"),
        ("one\n\ntwo", "<p>one</p>\n<p>two</p>"),
        ("- a\n- b", "<ul>\n<li>a</li>\n<li>b</li>\n</ul>"),
        ("<script>x</script>", "<p>&lt;script&gt;x&lt;/script&gt;</p>"),
        ("# Not a heading", "<p># Not a heading</p>"),
        ("![p](a.png)", '<p>!<a href="a.png">p</a></p>'),
        ("[step](#step-2)", '<p><a href="#step-2">step</a></p>'),
        ("[out](https://example.test)", "<p>[out](https://example.test)</p>"),
        ("[out](//example.test)", "<p>[out](//example.test)</p>"),
        ("[x](javascript:alert)", "<p>[x](javascript:alert)</p>"),
        ("set to **5 mm**", "<p>set to <strong><bdi>5 mm</bdi></strong></p>"),
    ],
)
def test_prose(text: str, expected: str) -> None:
    assert prose(text) == expected


def test_a_line_of_prose_has_no_blocks() -> None:
    assert line("*first*\nsecond") == "<em>first</em> second"


@pytest.mark.parametrize(
    "address", ["http://a", "HTTPS://a", "//a", "mailto:a", "data:x", "file:///a", "\\\\a"]
)
def test_addresses_that_lead_outside(address: str) -> None:
    assert not stays_inside(address)


@pytest.mark.parametrize("address", ["#a", "a.html", "../a/index.html", "a/b#c"])
def test_addresses_that_stay_inside(address: str) -> None:
    assert stays_inside(address)
