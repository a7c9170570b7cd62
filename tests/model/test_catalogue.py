"""The shipped catalogue: entries agree with their keys, sections can be milled, figures have sources."""

from __future__ import annotations

import re

import pytest

from generator.model.amounts import Amount
from generator.model.catalogue import PROFILES, Material
from generator.model.shipped import shipped_catalogue

CATALOGUE = shipped_catalogue()
MOULDINGS = [material for material in CATALOGUE.materials.values() if material.kind.value == "moulding"]


def size(material: Material, name: str) -> float:
    value = material.fields[name]
    assert isinstance(value, Amount)
    return float(value.value.magnitude)


def test_there_is_something_of_every_kind_the_demonstration_needs() -> None:
    kinds = {material.kind.value for material in CATALOGUE.materials.values()}
    assert {"moulding", "planed timber", "adhesive", "filler", "pins"} <= kinds
    assert {tool.kind.value for tool in CATALOGUE.tools.values()} >= {
        "machine",
        "extraction",
        "detector",
        "access",
    }


@pytest.mark.parametrize("moulding", MOULDINGS, ids=str)
def test_a_moulding_is_what_its_key_says(moulding: Material) -> None:
    key = moulding.name.value
    found = re.fullmatch(r"([a-z-]+)-(\d+)x(\d+)-(mdf|softwood)", key)
    assert found and moulding.profile
    assert moulding.profile.value.replace(" ", "-") == found[1]
    assert (size(moulding, "width"), size(moulding, "thickness")) == (float(found[2]), float(found[3]))
    assert (moulding.dust and moulding.dust.value) == {"mdf": "mixed", "softwood": "softwood"}[found[4]]


@pytest.mark.parametrize("moulding", MOULDINGS, ids=str)
def test_a_moulding_s_section_can_be_milled(moulding: Material) -> None:
    width, thickness = size(moulding, "width"), size(moulding, "thickness")
    measures = {name: float(value.value.magnitude) for name, value in moulding.geometry.items()}
    across = 2 * measures.get("radius", 0) + sum(
        value for name, value in measures.items() if "fillet" in name
    )
    deep = max((value for name, value in measures.items() if name in ("radius", "depth")), default=0)
    assert across + measures.get("breadth", 0) < width
    assert deep < thickness


@pytest.mark.parametrize("material", CATALOGUE.materials.values(), ids=str)
def test_a_figure_without_a_published_source_is_marked_as_assumed(material: Material) -> None:
    figures = {name for name, value in material.fields.items() if isinstance(value, (Amount, tuple, int))}
    own_size = {"width", "thickness", "edge_thickness", "gauge"}
    assert {word.value for word in material.assumed} == figures - own_size
    assert "ssumed" in material.source.typed


@pytest.mark.parametrize("tool", CATALOGUE.tools.values(), ids=str)
def test_no_noise_or_vibration_is_made_up(tool: object) -> None:
    assert (getattr(tool, "noise"), getattr(tool, "vibration")) == (None, None)  # noqa: B009


def test_every_profile_is_drawn_and_every_drawn_profile_is_known() -> None:
    from generator.quantities.profiles import PROFILES as DRAWN

    assert set(PROFILES) == set(DRAWN)
