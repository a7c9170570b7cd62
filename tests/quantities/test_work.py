"""Working out: order, scope, precedence, origins, and one bad opening that hides no other."""

from __future__ import annotations

from pathlib import Path

from generator.quantities.ledger import Scope
from generator.quantities.worked import Origin, Worked
from generator.quantities.workings import places, print_worked
from tests.quantities.folders import SURVEY, job_text, method_text, work


def printed(entry: object) -> str:
    result = getattr(entry, "result")  # noqa: B009
    assert isinstance(result, Worked)
    return print_worked(result, getattr(entry, "unit")).text(" ")  # noqa: B009


def test_a_method_alone_is_worked_out_on_its_example_sizes(tmp_path: Path) -> None:
    ledger = work(tmp_path, method_text()).ledger
    (opening,) = ledger.openings
    assert (opening.row, opening.label) == (None, "")
    assert printed(opening.entries["head"]) == "778 mm"
    assert opening.entries["opening_width"].origin is Origin.EXAMPLE


def test_a_job_is_worked_out_at_each_opening(tmp_path: Path) -> None:
    ledger = work(tmp_path, method_text(), job_text()).ledger
    assert [(o.mark, o.label, printed(o.entries["head"])) for o in ledger.openings] == [
        ("1", "1, Porch", "778 mm"),
        ("2", "2, Hall", "854 mm"),
    ]


def test_quantities_may_stand_in_any_order(tmp_path: Path) -> None:
    text = method_text("""
        last: {label: Last, work: middle * 2}
        middle: {label: Middle, work: first + 1 mm}
        first: {label: First, work: first_quirk}
    """)
    done = work(tmp_path, text)
    assert list(done.ledger.job_entries) == [
        "first_quirk",
        "hinge_side",
        "ripping_step",
        "first",
        "middle",
        "last",
    ]
    assert printed(done.ledger.job_entries["last"]) == "12 mm"


def test_scope_is_inferred_from_what_is_used(tmp_path: Path) -> None:
    text = method_text("""
        quirks: {label: Quirks, work: 2 * first_quirk}
        head: {label: Head, work: opening_width + quirks}
        heads: {label: All heads, work: total(head), unit: m}
        share: {label: Share, work: head / heads}
    """)
    ledger = work(tmp_path, text, job_text()).ledger
    scopes = {name: ledger.scope(name) for name in ("quirks", "head", "heads", "share")}
    assert scopes == {
        "quirks": Scope.JOB, "head": Scope.OPENING, "heads": Scope.JOB, "share": Scope.OPENING,
    }  # fmt: skip
    assert printed(ledger.job_entries["heads"]) == "1.63 m"
    assert [printed(o.entries["share"]) for o in ledger.openings] == ["0.48", "0.52"]


def test_gathering_lifts_a_value_and_folds_readings_where_they_stand(tmp_path: Path) -> None:
    text = method_text("""
        worst: {label: Worst, work: greatest(set_back)}
        worst_of_all: {label: Worst of all, work: greatest(worst)}
        openings: {label: Openings, work: count(opening_width)}
        stations: {label: Stations, work: count(set_back)}
        narrow: {label: Narrow, work: least(opening_width)}
    """)
    ledger = work(tmp_path, text, job_text()).ledger
    assert [printed(o.entries["worst"]) for o in ledger.openings] == ["8.5 mm", "9.1 mm"]
    assert {name: printed(ledger.job_entries[name]) for name in ("worst_of_all", "openings", "narrow")} == {
        "worst_of_all": "9.1 mm", "openings": "2", "narrow": "768 mm",
    }  # fmt: skip
    assert [printed(o.entries["stations"]) for o in ledger.openings] == ["3", "3"]


def test_a_size_that_the_survey_gives_belongs_to_openings(tmp_path: Path) -> None:
    survey = (
        SURVEY.replace("name,", "name,first_quirk,").replace("Porch,", "Porch,6,").replace("Hall,", "Hall,,")
    )
    ledger = work(tmp_path, method_text(), job_text(), survey).ledger
    assert ledger.scope("first_quirk") is Scope.OPENING
    quirks = [(printed(o.entries["first_quirk"]), o.entries["first_quirk"].origin) for o in ledger.openings]
    assert quirks == [("6 mm", Origin.ROW), ("5 mm", Origin.DEFAULT)]


def test_the_row_comes_before_the_job_and_the_job_before_the_default(tmp_path: Path) -> None:
    survey = (
        SURVEY.replace("name,", "name,first_quirk,").replace("Porch,", "Porch,6,").replace("Hall,", "Hall,,")
    )
    ledger = work(tmp_path, method_text(), job_text("{first_quirk: 7 mm}"), survey).ledger
    quirks = [(printed(o.entries["first_quirk"]), o.entries["first_quirk"].origin) for o in ledger.openings]
    assert quirks == [("6 mm", Origin.ROW), ("7 mm", Origin.JOB)]


HOUSE = """
    format: 1
    policy: {ripping_step: 1 mm}
"""


def test_house_policy_comes_before_the_method_s_own_number(tmp_path: Path) -> None:
    text = method_text("packer: {label: Packer, work: 'round_up(mean(set_back), ripping_step)'}")
    ledger = work(tmp_path, text, job_text(), house=HOUSE).ledger
    assert [printed(o.entries["packer"]) for o in ledger.openings] == ["8 mm", "9 mm"]
    assert ledger.job_entries["ripping_step"].origin is Origin.HOUSE


def test_a_job_may_set_a_policy_number_for_itself(tmp_path: Path) -> None:
    done = work(tmp_path, method_text(), job_text("{ripping_step: 2 mm}"), house=HOUSE)
    assert done.ledger.job_entries["ripping_step"].origin is Origin.JOB


def test_a_material_s_field_is_read_from_the_entry_the_role_is_bound_to(tmp_path: Path) -> None:
    text = method_text("leg: {label: Leg, work: 2 m + architrave.width}")
    entry = work(tmp_path, text).ledger.job_entries["leg"]
    assert printed(entry) == "2069 mm"
    (place,) = places(entry.result)
    assert (place.name, place.value, place.origin) == ("architrave.width", "69\u2009mm", "catalogue")


def test_a_result_says_which_lines_it_rests_on(tmp_path: Path) -> None:
    done = work(tmp_path, method_text(), job_text())
    rests = [
        (place.name, place.origin, Path(place.where).name)
        for place in places(done.ledger.openings[1].entries["head"].result)
    ]
    assert rests == [("opening_width", "survey row", "doors.csv:3"), ("first_quirk", "default", "t.yaml:17")]


def test_a_record_s_field_is_one_dot_away(tmp_path: Path) -> None:
    text = method_text("""
        packer: {label: Packer, work: 'even_packer(readings = set_back, step = ripping_step)'}
        thickness: {label: Thickness, work: packer.thickness}
    """)
    done = work(tmp_path, text, job_text())
    assert [printed(o.entries["thickness"]) for o in done.ledger.openings] == ["8 mm", "9 mm"]
    packer = done.ledger.openings[0].entries["packer"].result
    assert [(each.member, each.at.number) for each in packer.remainders] == [
        ("left", 0),
        ("head", 0),
        ("right", 0),
    ]


def test_a_comparison_is_a_result(tmp_path: Path) -> None:
    text = method_text("roomy: {label: Roomy, work: opening_width >= 800 mm}")
    ledger = work(tmp_path, text, job_text()).ledger
    assert [o.entries["roomy"].result.holds for o in ledger.openings] == [False, True]


def test_faces_of_one_opening_are_told_apart(tmp_path: Path) -> None:
    survey = (
        SURVEY.replace("opening,name", "opening,face,name")
        .replace("1,Porch", "1,hall,")
        .replace("2,Hall", "1,yard,")
    )
    done = work(tmp_path, method_text(), job_text().replace("[opening]", "[opening, face]"), survey)
    assert [(o.mark, o.label) for o in done.ledger.openings] == [("1 hall", "1 hall"), ("1 yard", "1 yard")]


def test_one_bad_opening_hides_no_other(tmp_path: Path) -> None:
    text = method_text("""
        share: {label: Share, work: 1 mm * 1 mm / (opening_width - 768 mm)}
        all: {label: All, work: total(share)}
        head: {label: Head, work: opening_width + 2 * first_quirk}
    """)
    done = work(tmp_path, text, job_text())
    assert done.faults == [
        "t.yaml:26:1 mm * 1 mm / (opening_width - 768 mm) error: A division by nought for opening 1, Porch. "
        "| Expected a divisor that is not nought."
    ]
    assert "share" not in done.ledger.openings[0].entries and "share" in done.ledger.openings[1].entries
    assert [printed(o.entries["head"]) for o in done.ledger.openings] == ["778 mm", "854 mm"]
    assert "all" not in done.ledger.job_entries
    assert done.ledger.broken == {"share", "all"}


def test_each_opening_s_fault_is_reported_by_itself(tmp_path: Path) -> None:
    text = method_text(
        "marks: {label: Marks, work: 'marks(length = opening_width - 900 mm, spacing = 300 mm)'}"
    )
    done = work(tmp_path, text, job_text())
    assert [fault.partition(" error: ")[2] for fault in done.faults] == [
        "“length” of marks is −132 mm for opening 1, Porch. | Expected more than 0 mm. It rests on "
        f"{tmp_path}/methods/jobs/doors.csv:2: measure or read it again.",
        "“length” of marks is −56 mm for opening 2, Hall. | Expected more than 0 mm. It rests on "
        f"{tmp_path}/methods/jobs/doors.csv:3: measure or read it again.",
    ]
