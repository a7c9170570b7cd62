"""The little language in which rules say by which words a thing is found."""

from __future__ import annotations

import pytest

from generator.safety.phrases import phrase, sign_in


@pytest.mark.parametrize(
    ("typed", "text"),
    [
        ("guard", "The guards close."),
        ("guard + clos", "It closes, that guard."),
        ("push-stick", "A push stick is to hand."),
        ("110 V", "Supply at 110 V."),
        ("hand/finger + away", "Fingers kept away."),
        ("no dry sweep", "There is no dry sweeping."),
    ],
)
def test_a_phrase_is_found(typed: str, text: str) -> None:
    assert phrase(typed).stands_in(text) and phrase(typed).is_meant_in(text)


@pytest.mark.parametrize(
    ("typed", "text"),
    [
        ("guard", "He is safeguarded."),
        ("guard + clos", "The guard is there."),
        ("hand/finger + away", "Toes kept away."),
        ("out", "Throughout the day."),
    ],
)
def test_a_phrase_is_not_found(typed: str, text: str) -> None:
    assert not phrase(typed).stands_in(text)


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("No guard.", False),
        ("Without a guard.", False),
        ("A guard is not needed here.", False),
        ("Guard is not fitted.", False),
        ("Never without the guard.", True),
        ("No guard at first; the guard is put on for the second cut.", True),
        ("Guard on. Masks are not needed.", True),
    ],
)
def test_what_is_denied_is_not_meant(text: str, meant: bool) -> None:
    assert phrase("guard").is_meant_in(text) is meant


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("Screw it to the wall.", True),
        ("Never screw it to the wall.", False),
        ("Screw it. Lean on the wall.", False),
        ("No glue. Screw it to the wall.", True),
    ],
)
def test_a_sign_stands_in_one_sentence_that_denies_nothing(text: str, shown: bool) -> None:
    assert sign_in(["screw/pin + to the wall"], text) is shown


@pytest.mark.parametrize(
    ("typed", "whole"), [("a + b", True), ("a +", False), ("/b", False), ("a + b/", False)]
)
def test_an_empty_part_is_seen(typed: str, whole: bool) -> None:
    assert phrase(typed).whole is whole
