"""The ledger value by value."""

from __future__ import annotations

from pathlib import Path

from generator.quantities.listing import lines
from generator.quantities.workings import print_worked
from tests.quantities.folders import job_text, method_text, work

QUANTITIES = """
    head: {label: Head, work: opening_width + 2 * first_quirk}
    packer: {label: Packer, work: 'even_packer(readings = set_back, step = ripping_step)'}
"""


def test_every_single_value_stands_under_the_name_a_formula_would_use(tmp_path: Path) -> None:
    ledger = work(tmp_path, method_text(QUANTITIES), job_text()).ledger
    found = {(line.opening, line.name): print_worked(line.value).text() for line in lines(ledger)}
    assert found["2, Hall", "head"] == "854 mm"
    assert found["2, Hall", "packer.thickness"] == "9 mm"
    assert found["2, Hall", "set_back[3]"] == "9.1 mm"
