"""How long the preview takes from a save to the new HTML, against publishing the whole folder afresh.

    python tests/benchmarks/preview.py [--saves 10]

Each save changes a sentence of the method; the time runs until the new page has come over the wire, and so
holds the wait until the save is noticed. The processor's seconds, of server and reader together, tell more
where other work shares the machine. The figures depend on the machine; the ratio travels. Not collected by
pytest.
"""

from __future__ import annotations

import argparse
import shutil
import statistics
import tempfile
import time
import urllib.request
from pathlib import Path
from threading import Thread

from generator.memory import open_memory
from generator.memory.store import Memory
from generator.memory.surroundings import hash_of_surroundings
from generator.pipeline.publication import publish
from generator.preview.bench import Bench
from generator.preview.server import Server, watching

ROOT = Path(__file__).parents[2]
METHOD = Path("methods/architrave-set-back-frame.yaml")
PAGES = ("guide-architrave-set-back-frame.html", "statement-reading-room-doors.html")


def main() -> None:
    """Print the median and the longest time of each page, and their ratio to a whole publication."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--saves", type=int, default=10)
    saves = parser.parse_args().saves
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        shutil.copytree(ROOT / "methods", folder / "methods")
        began = time.perf_counter()
        publish(folder, Memory(folder / "memory", surroundings=hash_of_surroundings()), 1)
        whole = time.perf_counter() - began
        print(f"whole publication, one worker: {whole:.2f} s")
        for page, times in _saved(folder, saves).items():
            walls, busy = zip(*times, strict=True)
            middle, worst = statistics.median(walls), max(walls)
            processor = statistics.median(busy)
            print(
                f"{page}: {middle:.3f} s, at worst {worst:.3f} s, 1:{whole / middle:.0f}; "
                f"processor {processor:.3f} s"
            )


def _saved(folder: Path, saves: int) -> dict[str, list[tuple[float, float]]]:
    server = Server(Bench(folder, open_memory()), 0)
    server.bench.look_again()
    watching(server)
    Thread(target=server.serve_forever, daemon=True).start()
    for page in PAGES:
        _read(server, page)
    times = {page: [_save(server, folder, page, f"{page} {n}") for n in range(saves)] for page in PAGES}
    server.shutdown()
    server.end()
    return times


def _save(server: Server, folder: Path, page: str, word: str) -> tuple[float, float]:
    """Seconds by the clock and of the processor."""
    before, path = server.bench.state.version, folder / METHOD
    lines = path.read_text(encoding="utf-8").split("\n")
    at = next(number for number, line in enumerate(lines) if line.startswith("title:"))
    lines[at] = f'title: "{word} {time.time_ns()}"'
    began, busy = time.perf_counter(), time.process_time()
    path.write_text("\n".join(lines), encoding="utf-8")
    server.bench.wait_for_change(before, 60)
    if word not in _read(server, page):
        raise RuntimeError(f"{page} does not show the saved title")
    return time.perf_counter() - began, time.process_time() - busy


def _read(server: Server, page: str) -> str:
    with urllib.request.urlopen(server.address + page) as answer:
        return str(answer.read().decode())


if __name__ == "__main__":
    main()
