"""`storeyrod schema --list`: everything a method may name, with what it takes."""

from __future__ import annotations

import json
import shutil
from pathlib import Path
from typing import Any

import pytest

from generator.cli import main
from generator.cli.arguments import LISTS
from generator.drawings import DRAWINGS
from generator.model.shipped import shipped_catalogue
from generator.quantities.calculator import registered

ROOT = Path(__file__).parents[2]


def listed(what: str, capsys: pytest.CaptureFixture[str], *more: str) -> list[dict[str, Any]]:
    assert main(["schema", "--list", what, "--as", "json", *more]) == 0
    found = json.loads(capsys.readouterr().out)
    assert isinstance(found, list)
    return found


def text_of(what: str, capsys: pytest.CaptureFixture[str]) -> str:
    assert main(["schema", "--list", what]) == 0
    return capsys.readouterr().out


def test_every_calculator_is_listed_with_what_it_takes_and_gives(capsys: pytest.CaptureFixture[str]) -> None:
    found = {each["name"]: each for each in listed("calculators", capsys)}
    assert set(found) == set(registered())
    for name, made in registered().items():
        assert [each["name"] for each in found[name]["takes"]] == list(made.parameters)
        assert found[name]["gives"] == list(made.fields)
    assert found["glue_bead"]["takes"] == [
        {"name": "length", "kind": "a length", "required": True},
        {"name": "diameter", "kind": "a length", "required": True},
        {"name": "waste", "kind": "a plain number", "required": False},
    ]


def test_a_calculator_as_text_shows_its_example(capsys: pytest.CaptureFixture[str]) -> None:
    told = text_of("calculators", capsys)
    assert max(map(len, told.splitlines())) <= 100
    assert told.partition("\nglue_bead\n")[2].partition("\n\n")[0] == (
        "     Volume of a round bead of glue or adhesive.\n"
        "     length: a length\n"
        "     diameter: a length\n"
        "     waste: a plain number; may be left out\n"
        "     gives: section, length, volume\n"
        "     such as: length = 10 m, diameter = 6 mm\n"
        "     which gives: volume 282.7 ml, length 10000 mm"
    )


def test_every_drawing_is_listed_with_its_values(capsys: pytest.CaptureFixture[str]) -> None:
    found = {each["name"]: each for each in listed("drawings", capsys)}
    assert set(found) == set(DRAWINGS)
    kinds = {each["name"]: each["kind"] for each in found["jamb_rod"]["takes"]}
    assert kinds["architrave_width"] == "a value"
    assert (
        kinds["architrave_profile"]
        == "a word, one of: square, pencil round, chamfer, ovolo, ogee, torus, bullnose, cove"
    )
    assert kinds["architrave_measures"].startswith("a record with radius, depth, breadth")
    assert f"\n{sorted(DRAWINGS)[-1]}\n" in text_of("drawings", capsys)


@pytest.mark.parametrize("what", [what for what in LISTS if what not in {"calculators", "drawings"}])
def test_the_keys_of_the_catalogue_are_listed_with_their_labels(
    what: str, capsys: pytest.CaptureFixture[str]
) -> None:
    shipped = getattr(shipped_catalogue(), {"work": "activities"}.get(what, what))
    assert {each["key"]: each["label"] for each in listed(what, capsys)} == {
        key: entry.label.value for key, entry in shipped.items()
    }
    lines = text_of(what, capsys).splitlines()
    assert [line.split()[0] for line in lines] == sorted(shipped)


def test_a_folder_s_own_entries_are_listed_too(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    shutil.copytree(ROOT / "methods", tmp_path / "methods")
    own = {each["key"] for each in listed("materials", capsys, "--folder", str(tmp_path))}
    assert own > set(shipped_catalogue().materials)


def test_a_list_there_is_not_is_wrong_use(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["schema", "--list", "gadgets"]) == 2
    assert "calculators" in capsys.readouterr().err


@pytest.mark.parametrize("asked", [["job", "--list", "tools"], ["--as", "json"], ["job", "--folder", "."]])
def test_a_schema_and_a_list_are_not_asked_for_at_once(
    asked: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["schema", *asked]) == 2
    assert "A schema has a kind, and a list has --folder and --as" in capsys.readouterr().err


def test_without_a_kind_it_is_the_method_s_schema(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["schema"]) == 0
    bare = capsys.readouterr().out
    assert main(["schema", "method"]) == 0
    assert capsys.readouterr().out == bare
