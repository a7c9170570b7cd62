"""A kill at any moment leaves the old site or the new one, and the next publication clears up after it.

The publisher kills itself with SIGKILL before its n-th call that touches the output folder, for every n it
has, so that no moment is left to chance; a few kills by the clock follow.
"""

from __future__ import annotations

import random
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from generator.publishing.site import lay_down, standing

PUBLISHER = """
import os, signal, sys
from pathlib import Path
from generator.publishing.site import lay_down

output, last = Path(sys.argv[1]), int(sys.argv[2])
files = {{f"{{n % 3}}/{{n}}.html": ({content!r} + str(n)).encode() * 50 for n in range({count})}}
files["same.html"] = b"same"
TOUCHING = ("open", "os.rename", "os.link", "os.symlink", "os.remove", "os.rmdir", "os.mkdir", "os.listdir",
            "os.scandir", "shutil.rmtree", "fcntl.flock")
calls = 0

def watch(event, arguments):
    global calls
    if event in TOUCHING:
        calls += 1
        if calls == last:
            os.kill(os.getpid(), signal.SIGKILL)

if last:
    sys.addaudithook(watch)
lay_down(output, files)
if last:
    sys.stdout.write(str(calls))
"""


def publisher(content: str, count: int) -> str:
    return PUBLISHER.format(content=content, count=count)


def killed_at(output: Path, program: str, last: int) -> subprocess.CompletedProcess[str]:
    command = [
        sys.executable,
        "-S",
        "-c",
        f"import sys; sys.path[:0] = {sys.path!r}\n{program}",
        str(output),
        str(last),
    ]
    return subprocess.run(command, capture_output=True, text=True, timeout=60, check=False)


def digest_of(tmp_path: Path, content: str, count: int) -> str:
    files = {f"{n % 3}/{n}.html": (content + str(n)).encode() * 50 for n in range(count)}
    return lay_down(tmp_path / f"as-{content}", {**files, "same.html": b"same"}).digest


def test_a_kill_before_any_call_leaves_the_old_site_or_the_new_one(tmp_path: Path) -> None:
    old, new = digest_of(tmp_path, "old", 6), digest_of(tmp_path, "new", 4)
    output = tmp_path / "output"
    whole = killed_at(tmp_path / "counted", publisher("new", 4), 100_000)
    assert whole.returncode == 0, whole.stderr
    seen = {"old": 0, "new": 0}
    for last in range(1, 200):
        assert killed_at(output, publisher("old", 6), 0).returncode == 0
        assert standing(output, old)
        run = killed_at(output, publisher("new", 4), last)
        if run.returncode == 0:
            break
        assert run.returncode == -signal.SIGKILL, run.stderr
        stands = [name for name, digest in (("old", old), ("new", new)) if standing(output, digest)]
        assert len(stands) == 1, f"killed before call {last}: {sorted(output.iterdir())}"
        seen[stands[0]] += 1
    assert run.returncode == 0
    assert standing(output, new)
    assert sorted(path.name.split("-")[0] for path in output.iterdir()) == [".publishing", ".site", "site"]
    assert seen["old"] > 20
    assert seen["new"] > 5


@pytest.mark.parametrize("seed", range(3))
def test_a_kill_by_the_clock_leaves_a_whole_site(tmp_path: Path, seed: int) -> None:
    old, new = digest_of(tmp_path, "old", 400), digest_of(tmp_path, "new", 400)
    output = tmp_path / "output"
    assert killed_at(output, publisher("old", 400), 0).returncode == 0
    chance = random.Random(seed)
    for _ in range(6):
        command = [sys.executable, "-c", publisher("new", 400), str(output), "0"]
        with subprocess.Popen(command) as running:
            time.sleep(chance.uniform(0.05, 0.4))
            running.kill()
        assert standing(output, old) or standing(output, new)
