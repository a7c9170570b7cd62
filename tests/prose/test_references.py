"""Values in prose: as the trade prints them, for one opening, for all, or by the schedule's column."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.prose import check_prose, lookup, resolve
from generator.quantities.ledger import Ledger
from generator.quantities.worked import Worked as WorkedValue
from tests.quantities.folders import Worked, job_text, method_text, work

QUANTITIES = """
    head: {label: Head, work: opening_width + 2 * first_quirk}
    heads: {label: All heads, work: total(head), unit: m}
    packer: {label: Packer, work: 'even_packer(readings = set_back, step = ripping_step)'}
    roomy: {label: Roomy, work: opening_width > 700 mm}
"""
SCHEDULE = "schedule: [{show: head, head: Head packer}, {show: packer.thickness}]"


def done(tmp_path: Path, do: str, more: str = SCHEDULE, *, job: bool = True) -> Worked:
    return work(tmp_path, method_text(QUANTITIES, do=do, more=more), job_text() if job else "")


def said(ledger: Ledger, opening: int | None = None) -> str:
    prose = ledger.method.steps[0].do[0]
    return resolve(prose, ledger, opening=None if opening is None else ledger.openings[opening])


def faults(worked: Worked) -> list[str]:
    check_prose(worked.ledger, worked.log)
    return worked.faults


@pytest.mark.parametrize(
    ("do", "text"),
    [
        ("Set it to {first_quirk}.", "Set it to 5\u2009mm."),
        ("Cut {heads} in all.", "Cut 1.63\u2009m in all."),
        ("Cut {heads in mm} in all.", "Cut 1632\u2009mm in all."),
        ("Use {architrave}.", "Use Torus architrave, MDF, primed."),
        ("It is {architrave.width} wide.", "It is 69\u2009mm wide."),
        ("Hinges: {hinge_side}.", "Hinges: left."),
        ("Roomy: {roomy}.", "Roomy: yes."),
        ("Leave {= 5 mm} off.", "Leave 5\u2009mm off."),
        ("Write {{head}}.", "Write {head}."),
        ("Head {head}.", "Head see schedule, column “Head packer”."),
        ("Packer {packer.thickness}.", "Packer see schedule, column “Packer”."),
    ],
)
def test_prose_shared_by_all_openings(tmp_path: Path, do: str, text: str) -> None:
    worked = done(tmp_path, do)
    assert faults(worked) == []
    assert said(worked.ledger).replace(said_material(worked.ledger), "Torus architrave, MDF, primed") == text


def said_material(ledger: Ledger) -> str:
    return ledger.materials["architrave"].label.value


def test_an_opening_s_own_prose_prints_its_own_value(tmp_path: Path) -> None:
    ledger = done(tmp_path, "Head {head}, read {set_back}.").ledger
    assert said(ledger, 0) == "Head 778\u2009mm, read 7.5 to 8.5\u2009mm."
    assert said(ledger, 1) == "Head 854\u2009mm, read 8 to 9.1\u2009mm."


def test_a_value_that_all_openings_share_is_printed(tmp_path: Path) -> None:
    survey = "opening,opening_width,set_back@left:0\n1,768,8\n2,768,9\n"
    worked = work(tmp_path, method_text(QUANTITIES, do="Head {head}."), job_text(), survey)
    check_prose(worked.ledger, worked.log)
    assert not worked.log.has_errors
    assert said(worked.ledger) == "Head 778\u2009mm."


def test_the_guide_prints_the_example_values(tmp_path: Path) -> None:
    worked = done(tmp_path, "Head {head}, packer {packer.thickness}.", more="", job=False)
    assert faults(worked) == []
    assert said(worked.ledger) == "Head 778\u2009mm, packer 8\u2009mm."


def test_a_word_of_a_file_stays_plain_in_markdown(tmp_path: Path) -> None:
    sizes = "core: {label: Core, chosen: {default: '*solid*_', from: ['*solid*_']}}"
    worked = work(tmp_path, method_text("x: {label: X, work: 1 mm}", sizes=sizes, do="Wall of {core}."))
    assert said(worked.ledger) == "Wall of \\*solid\\*\\_."


@pytest.mark.parametrize(
    ("do", "fault"),
    [
        (
            "Cut {haed}.",
            "{haed} error: There is no size, quantity or material called “haed”. | Expected a name of this "
            "method between the braces. A literal brace is written twice: {{ or }}. Did you mean “head”?",
        ),
        (
            "Cut {head in mmm}.",
            "{head in mmm} error: There is no unit called “mmm”. | Expected a unit such as mm, m or ml. "
            "Did you mean “mm”?",
        ),
        (
            "Cut {heads in kg}.",
            "{heads in kg} error: “heads” is a length and cannot be said in kg. | "
            "Expected a unit of the same kind.",
        ),
        (
            "Cut {head.width}.",
            "{head.width} error: “head” is a length and has no fields. | "
            "Expected the name alone, without a dot.",
        ),
        (
            "Cut {opening_width}.",
            "{opening_width} error: “opening_width” differs between openings (768\u2009mm, 844\u2009mm) and "
            "no column of the schedule shows it. | Write “- show: opening_width” under “schedule:” in the "
            "method, and the sentence points to that column.",
        ),
    ],
)
def test_a_reference_that_cannot_be_printed_is_told_at_its_place(tmp_path: Path, do: str, fault: str) -> None:
    (found,) = faults(done(tmp_path, do))
    assert found.split(":", 2)[2] == fault


def test_a_record_is_told_with_the_fields_a_sentence_can_say(tmp_path: Path) -> None:
    (found,) = faults(done(tmp_path, "Use {packer}."))
    assert "“packer” is what even_packer gives, which a sentence cannot say." in found
    assert " | A sentence can say: packer.thickness, packer.mean, packer.least, " in found


def test_an_unknown_field_is_told_with_the_nearest(tmp_path: Path) -> None:
    unknown, material = (
        faults(done(tmp_path / str(n), do))[0]
        for n, do in enumerate(("{packer.thicknes}", "{architrave.widht}"))
    )
    assert unknown.endswith("Did you mean “thickness”?")
    assert material.endswith("Did you mean “width”?")


def test_a_name_whose_own_fault_is_told_already_is_not_told_again(tmp_path: Path) -> None:
    worked = work(tmp_path, method_text("bad: {label: Bad, work: first_quirk + 3 kg}", do="Cut {bad}."))
    assert len(worked.faults) == 1
    assert len(faults(worked)) == 1


def test_a_job_s_prose_is_checked_too(tmp_path: Path) -> None:
    job = job_text(more="not_included: 'Nothing over {firstquirk}.'")
    worked = work(tmp_path, method_text(), job)
    (fault,) = faults(worked)
    assert fault.startswith("j.yaml:6:{firstquirk} error: ")
    assert fault.endswith("Did you mean “first_quirk”?")


def test_prose_that_was_not_checked_is_refused_loudly(tmp_path: Path) -> None:
    with pytest.raises(KeyError):
        said(done(tmp_path, "Cut {haed}.").ledger)


def test_a_value_is_looked_up_by_its_dotted_name(tmp_path: Path) -> None:
    ledger = done(tmp_path, "Do it.").ledger
    opening = ledger.openings[1]
    thickness = lookup("packer.thickness", ledger, opening)
    assert isinstance(thickness, WorkedValue) and thickness.number == 9
    width = lookup("architrave.width", ledger)
    assert isinstance(width, WorkedValue) and width.number == 69
    assert lookup("hinge_side", ledger, opening) == "left"
    for absent in ("packer.nothing", "nothing", "head", "architrave.nothing"):
        assert lookup(absent, ledger) is None
