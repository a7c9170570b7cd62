"""Slow work is shared out, remembered, handed back in order, and fails in words."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import textwrap
import time
from pathlib import Path

import pytest

from generator.memory import Memory, canonical
from generator.problems import MachineLacks
from generator.publishing.crew import Crew, Task, Work, usual_workers
from generator.wording.report import report_text


def shout(of: str) -> bytes:
    return of.upper().encode() + b"!"


def slow_first(of: str) -> bytes:
    time.sleep(0.3 if of == "0" else 0)
    return of.encode()


def die(of: str) -> bytes:
    os.kill(os.getpid(), signal.SIGKILL)
    return of.encode()


def fail(of: str) -> bytes:
    raise LookupError("no such hatch")


def who(of: str) -> bytes:
    return str(os.getpid()).encode()


class Watcher:
    def __init__(self) -> None:
        self.heard: list[str] = []

    def stage(self, name: str, pieces: int) -> None:
        self.heard.append(f"{name} {pieces}")

    def done(self) -> None:
        self.heard.append("done")


def memory(folder: Path) -> Memory:
    return Memory(folder, surroundings="here")


def task(of: str, work: Work = shout) -> Task:
    return Task(step="shout", work=work, of=of)


@pytest.mark.parametrize("workers", [1, 2])
def test_results_come_in_the_order_asked_for(tmp_path: Path, workers: int) -> None:
    tasks = [task(str(number), slow_first) for number in range(6)]
    with Crew(memory(tmp_path), workers) as crew:
        assert crew.perform("Numbers", tasks) == (b"0", b"1", b"2", b"3", b"4", b"5")


def test_two_workers_are_other_processes_and_one_is_this_one(tmp_path: Path) -> None:
    with Crew(memory(tmp_path / "a"), 1) as crew:
        assert crew.perform("Who", [task("", who)]) == (str(os.getpid()).encode(),)
    with Crew(memory(tmp_path / "b"), 2) as crew:
        assert crew.perform("Who", [task("", who)]) != (str(os.getpid()).encode(),)


def test_equal_tasks_are_done_once_and_told_once(tmp_path: Path) -> None:
    watcher = Watcher()
    with Crew(memory(tmp_path), 1, watcher) as crew:
        assert crew.perform("Shouts", [task("a"), task("b"), task("a")]) == (b"A!", b"B!", b"A!")
    assert watcher.heard == ["Shouts 2", "done", "done"]


def test_what_is_remembered_is_not_done_again(tmp_path: Path) -> None:
    with Crew(memory(tmp_path), 1) as crew:
        crew.perform("Shouts", [task("a")])
    watcher = Watcher()
    with Crew(memory(tmp_path), 2, watcher) as crew:
        # The same step and payload: the work that would fail is never called.
        assert crew.perform("Shouts", [task("a", fail)]) == (b"A!",)
    assert watcher.heard == ["Shouts 0"]


@pytest.mark.parametrize("workers", [1, 2])
def test_what_a_task_raises_is_raised_here(tmp_path: Path, workers: int) -> None:
    with Crew(memory(tmp_path), workers) as crew, pytest.raises(LookupError, match="no such hatch"):
        crew.perform("Failing", [task("a", fail)])


def test_what_was_done_before_a_failure_is_remembered(tmp_path: Path) -> None:
    kept = memory(tmp_path)
    with Crew(kept, 1) as crew, pytest.raises(LookupError):
        crew.perform("Half", [task("a"), task("b", fail)])
    assert kept.recall(kept.key("shout", canonical("a"))) == b"A!"


def test_a_worker_that_dies_is_told_in_words(tmp_path: Path) -> None:
    with Crew(memory(tmp_path), 2) as crew, pytest.raises(MachineLacks) as lack:
        crew.perform("Dying", [task("a", die), task("b")])
    assert report_text((lack.value.problem,)) == (
        "error: A worker process was ended from outside, most often because memory ran out.\n"
        "    Publish again with fewer workers: --workers 1 (there were 2).\n\n1 error\n"
    )


def test_workers_end_with_their_publisher_however_it_ends(tmp_path: Path) -> None:
    program = tmp_path / "publisher.py"
    program.write_text(
        textwrap.dedent("""
        import os, time, sys
        from pathlib import Path
        from generator.memory import Memory
        from generator.publishing.crew import Crew, Task

        def sleep(of):
            Path(sys.argv[1], f"pid-{os.getpid()}").touch()
            time.sleep(60)
            return b""

        if __name__ == "__main__":
            with Crew(Memory(Path(sys.argv[1], "cache"), surroundings=""), 2) as crew:
                crew.perform("Sleep", [Task(step="s", work=sleep, of=n) for n in range(2)])
        """)
    )
    publisher = subprocess.Popen([sys.executable, str(program), str(tmp_path)], stderr=subprocess.DEVNULL)
    pids = _started(tmp_path)
    publisher.kill()
    publisher.wait()
    assert _all_end(pids), "workers outlived their publisher"


def _started(folder: Path) -> list[int]:
    deadline = time.monotonic() + 20
    while time.monotonic() < deadline:
        found = sorted(folder.glob("pid-*"))
        if len(found) == 2:
            return [int(path.name.removeprefix("pid-")) for path in found]
        time.sleep(0.05)
    raise AssertionError("the workers did not start")


def _all_end(pids: list[int]) -> bool:
    deadline = time.monotonic() + 10
    while time.monotonic() < deadline:
        if not any(_runs(pid) for pid in pids):
            return True
        time.sleep(0.05)
    return False


def _runs(pid: int) -> bool:
    try:
        state = Path(f"/proc/{pid}/stat").read_text()
    except OSError:
        return False
    return state.rpartition(")")[2].split()[0] != "Z"


def test_one_worker_a_core_unless_told_otherwise() -> None:
    assert usual_workers() == len(os.sched_getaffinity(0))
