"""The method and the job that the format was designed by read as they stand."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

from generator.formulas.tree import Call
from generator.model.amounts import Amount
from generator.model.jobs import Job
from generator.model.method import Method
from generator.model.prose import Reference, Words
from generator.units import LENGTH, Value

from .describing import NO_FAULT, read

FILES = Path(__file__).parent / "files"


def example() -> Method:
    method, report = read(Method, (FILES / "example-method.yaml").read_text(encoding="utf-8"))
    assert report == NO_FAULT
    assert method is not None
    return method


def test_a_size_says_where_it_comes_from() -> None:
    sizes = example().sizes
    assert list(sizes) == ["opening_width", "set_back", "first_quirk"]
    assert sizes["opening_width"].measured and not sizes["opening_width"].chosen
    assert sizes["first_quirk"].chosen and not sizes["first_quirk"].measured
    assert (
        sizes["opening_width"].take
        and sizes["opening_width"].take.typed == "At head, middle and foot; use the smallest."
    )


def test_a_length_keeps_its_text_and_its_place() -> None:
    width = example().sizes["opening_width"]
    assert isinstance(width.start, Amount)
    assert width.start.value == Value(Decimal(768), LENGTH)
    assert width.start.text == "768 mm"
    assert (width.start.span.line, width.start.span.column) == (10, 25)
    assert width.most and width.most.value == Value(Decimal(3000), LENGTH)


def test_readings_are_several() -> None:
    set_back = example().sizes["set_back"]
    assert set_back.readings
    assert isinstance(set_back.start, tuple)
    assert [reading.text for reading in set_back.start] == ["7.5 mm", "8 mm", "8.5 mm"]


def test_a_quantity_is_a_formula() -> None:
    packer = example().quantities["packer"]
    assert (packer.name.value, packer.label.value) == ("packer", "Packer")
    assert isinstance(packer.work, Call) and packer.work.function == "even_packer"
    assert packer.span.line == 24


def test_prose_is_cut_into_words_and_references() -> None:
    first = example().steps[0].do[0]
    words, reference, stop = first.parts
    assert words == Words(text="Set the combination square to ")
    assert isinstance(reference, Reference) and (reference.name, reference.field, reference.unit) == (
        "first_quirk",
        None,
        None,
    )
    assert stop == Words(text=".")


def test_a_lone_check_is_a_list_of_one() -> None:
    (check,) = example().steps[0].check
    assert check.within and check.within.text == "1 mm"


def test_a_control_knows_its_rank() -> None:
    (control,) = example().hazards[0].controls
    assert (control.rank, control.what.typed) == (
        "engineer",
        "Extraction running on the saw, M class, before the first cut.",
    )


def test_the_job_reads() -> None:
    job, report = read(Job, (FILES / "example-job.yaml").read_text(encoding="utf-8"))
    assert report == NO_FAULT
    assert job is not None
    assert (
        job.site
        and job.site.building_begun == 1998
        and job.site.nation
        and job.site.nation.value == "England"
    )
    assert job.survey and [column.value for column in job.survey.key] == ["opening", "face"]
    assert job.rows == () and job.document is None
