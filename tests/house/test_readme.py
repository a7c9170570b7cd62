"""The commands of the README are the ones that are run."""

from __future__ import annotations

import re
import subprocess
from pathlib import Path

ROOT = Path(__file__).parents[2]
BLOCK = re.compile(r"^```sh\n(.*?)^```", re.DOTALL | re.MULTILINE)


def test_the_first_block_publishes_and_the_second_tests() -> None:
    first, second = BLOCK.findall((ROOT / "README.md").read_text())[:2]
    assert first.count("\n") == second.count("\n") == 1
    assert first.strip().endswith("storeyrod publish")
    assert second.strip().endswith("pytest -n auto")


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
