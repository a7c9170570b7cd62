"""Prose is cut at its braces, and every fault in it stands at its own spot."""

from __future__ import annotations

import pytest

from generator.model.method import Method
from generator.model.prose import Kept, Part, Reference, Words

from .describing import codes, method, problems, read


def parts(prose: str) -> tuple[Part, ...]:
    described, report = read(Method, method("stop_if:", f"  - {prose}"))
    assert described is not None, report
    return described.stop_if[0].parts


def shape(part: Part) -> tuple[str | None, ...]:
    if isinstance(part, Reference):
        return (part.name, part.field, part.unit)
    return (part.text,)


@pytest.mark.parametrize(
    ("prose", "expected"),
    [
        ("\"Set it.\"", [("Set it.",)]),
        ("\"{quirk}\"", [("quirk", None, None)]),
        ("\"at {packer.mean} or so\"", [("at ",), ("packer", "mean", None), (" or so",)]),
        ("\"{ leg in m }\"", [("leg", None, "m")]),
        ("\"{packer.mean in cm}\"", [("packer", "mean", "cm")]),
        ("\"{= 5 mm} is meant\"", [("5 mm",), (" is meant",)]),
        ("\"a {{brace}} here\"", [("a {brace} here",)]),
        ("\"{{{quirk}}}\"", [("{",), ("quirk", None, None), ("}",)]),
        ("\"{a}{b}\"", [("a", None, None), ("b", None, None)]),
    ],
)  # fmt: skip
def test_prose_is_cut_at_its_braces(prose: str, expected: list[tuple[str | None, ...]]) -> None:
    assert [shape(part) for part in parts(prose)] == expected


def test_kept_figures_and_words_are_told_apart() -> None:
    assert [type(part) for part in parts('"{= 5 mm} of {quirk}"')] == [Kept, Words, Reference]


FAULTY = (
    "{a", "a}", "{}", "{a.b.c}", "{A}", "{a in}", "{a in b c}", "{=}", "{a + b}", "{a b}", "{_a}", "{a__b}",
)  # fmt: skip


@pytest.mark.parametrize("prose", FAULTY)
def test_a_fault_in_braces_is_an_error(prose: str) -> None:
    assert len(codes(Method, method("stop_if:", f'  - "{prose}"'))) == 1


def test_several_faults_in_one_block_stand_each_at_its_spot() -> None:
    block = ("    One { here.", "    Fine {quirk} here,", "    and two } there {Bad}.")
    spots = [
        (problem.code, problem.span.line, problem.span.column, problem.span.length)
        for problem in problems(Method, method("stop_if:", "  - |", *block))
        if problem.span
    ]
    assert spots == [("braces-open", 13, 9, 1), ("braces-stray", 15, 13, 1), ("braces-reference", 15, 21, 5)]


def test_a_reference_in_a_block_knows_its_line() -> None:
    described, _ = read(Method, method("stop_if:", "  - |", "    Words first,", "    then {quirk}."))
    assert described is not None
    (reference,) = described.stop_if[0].references
    assert (reference.span.line, reference.span.column, reference.span.length) == (14, 10, 7)
