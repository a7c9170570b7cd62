"""The commands of the README are the ones that are run, and its recipe makes a method."""

from __future__ import annotations

import re
import shutil
import subprocess
import textwrap
from pathlib import Path

from generator.model.folder import load_folder
from generator.problems import ProblemLog
from generator.wording.report import report_text

ROOT = Path(__file__).parents[2]
BLOCK = re.compile(r"^```sh\n(.*?)^```", re.DOTALL | re.MULTILINE)


def test_the_first_block_publishes_and_the_second_tests() -> None:
    first, second = BLOCK.findall((ROOT / "README.md").read_text())[:2]
    assert first.count("\n") == second.count("\n") == 1
    assert first.strip().endswith("storeyrod publish")
    assert second.strip().endswith("pytest -n auto --dist worksteal")


def test_the_machine_script_is_sound_shell_and_idle_where_nothing_is_missing() -> None:
    for name in ("machine", "run"):
        subprocess.run(["bash", "-n", ROOT / ".ci" / name], check=True)
    idle = subprocess.run(
        ["sh", ROOT / ".ci" / "machine"], capture_output=True, text=True, check=True, timeout=60
    )
    assert idle.stdout == ""


def test_ci_runs_the_second_block_word_for_word() -> None:
    second = BLOCK.findall((ROOT / "README.md").read_text())[1]
    extract = next(line for line in (ROOT / ".ci" / "run").read_text().splitlines() if "awk" in line)
    found = subprocess.check_output(
        ["bash", "-c", f'{extract}\nprintf "%s\\n" "$command"'], cwd=ROOT, text=True
    )
    assert found == second


def test_the_recipe_is_a_method_once_its_tools_and_hazards_are_copied(tmp_path: Path) -> None:
    blocks = re.findall(
        r"^ {3}```yaml\n(.*?)^ {3}```$",
        (ROOT / "README.md").read_text(encoding="utf-8"),
        re.MULTILINE | re.DOTALL,
    )
    copied = (ROOT / "methods" / "skirting-scribed-and-mitred.yaml").read_text(encoding="utf-8")
    parts = [
        re.search(rf"^{key}:\n.*?^(?=\w)", copied, re.MULTILINE | re.DOTALL) for key in ("tools", "hazards")
    ]
    shutil.copytree(ROOT / "methods" / "catalogue", tmp_path / "methods" / "catalogue")
    text = "".join([*map(textwrap.dedent, blocks), *(part.group() for part in parts if part)])
    (tmp_path / "methods" / "shelf.yaml").write_text(text, encoding="utf-8")
    log = ProblemLog()
    (method,) = load_folder(tmp_path, log).methods
    assert report_text(log) == "No faults found.\n"
    assert [step.hold is not None for step in method.steps] == [True]
