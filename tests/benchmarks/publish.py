"""How long publishing takes, against the same sheets printed without any tuning, in the same run.

    python tests/benchmarks/publish.py [--jobs 50]

Untuned means: one process of its own, drawings inline in the HTML, WeasyPrint's default settings, nothing
shared between documents; composing them is not counted, and they are neither tagged nor kept. The figures
depend on the machine; the ratios travel. Not collected by pytest.
"""

from __future__ import annotations

import argparse
import base64
import os
import re
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterable, Iterator
from functools import partial
from pathlib import Path
from typing import NamedTuple

from generator.documents.figures import wanted, widths
from generator.drawings.orders import Order
from generator.drawings.registry import draw
from generator.memory import Memory
from generator.pipeline.compositions import compose, composition
from generator.pipeline.line import Assessed, assess
from generator.problems import ProblemLog
from generator.publishing.crew import Crew
from generator.quantities.work import work_out
from generator.rendering.fonts import paper_font_css
from generator.wording.report import report_text

ROOT = Path(__file__).parents[2]
COMMAND = "import sys; from generator.cli import main; sys.exit(main(sys.argv[1:]))"
EMBEDDED = re.compile(r'<img\b([^>]*?)src="data:image/svg\+xml;base64,([^"]+)"([^>]*)>')
HELD = re.compile(r'\b(?:class|style)="[^"]*"')
UNTUNED = """
import sys
from pathlib import Path
from weasyprint import HTML
for file in sorted(Path(sys.argv[1]).iterdir()):
    HTML(string=file.read_text(encoding="utf-8"), base_url=sys.argv[2]).write_pdf()
"""
JOB, METHOD = "reading-room-doors", "architrave-set-back-frame"


class Taken(NamedTuple):
    """Wall-clock seconds, and processor seconds of this process and of those it waited for.

    Workers are not waited for, so that with more than one the processor's seconds say little.
    """

    wall: float
    processor: float

    def of(self, other: Taken) -> str:
        """Both, and their shares of `other`."""
        return f"{self.wall / other.wall:.2f} of untuned, processor {self.processor / other.processor:.2f}"

    def __str__(self) -> str:
        return f"{self.wall:.2f} s, processor {self.processor:.2f} s"


def taken(work: Callable[[], object]) -> Taken:
    """What one call takes. The processor's seconds tell more where other work shares the machine."""
    began, busy = time.perf_counter(), _processor()
    work()
    return Taken(time.perf_counter() - began, _processor() - busy)


def _processor() -> float:
    whole = os.times()
    return whole.user + whole.system + whole.children_user + whole.children_system


def publish(folder: Path, cache: Path, workers: int) -> None:
    """One publication in a process of its own, compiled Python kept as it is for a user."""
    known = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    environment = {**known, "PYTHONPATH": str(ROOT), "STOREYROD_CACHE": str(cache)}
    command = [sys.executable, "-c", COMMAND, "publish", ".", "--workers", str(workers)]
    subprocess.run(command, cwd=folder, env=environment, check=True, capture_output=True)


def fifty_jobs(folder: Path, count: int) -> Path:
    """The demo's method with `count` jobs, each with sizes of its own, so that no drawing serves two."""
    shutil.copytree(ROOT / "methods", folder / "methods")
    jobs = folder / "methods" / "jobs"
    job, survey = (jobs / f"{JOB}.yaml").read_text(), (jobs / f"{JOB}.csv").read_text()
    for number in range(1, count):
        name = f"{JOB}-{number:02}"
        wider = re.sub(r",(\d{3}),(\d{4}),", partial(_wider, number), survey)
        (jobs / f"{name}.csv").write_text(wider)
        renamed = job.replace(f"{JOB}.csv", f"{name}.csv").replace(
            "number: ORR-MS-07", f"number: ORR-MS-1{number:02}"
        )
        (jobs / f"{name}.yaml").write_text(renamed)
    return folder


def _wider(number: int, sizes: re.Match[str]) -> str:
    return f",{int(sizes[1]) + number},{int(sizes[2]) + number},"


def fifty_methods(folder: Path, count: int) -> Path:
    """`count` methods that differ in number alone, each with one job."""
    shutil.copytree(ROOT / "methods", folder / "methods")
    methods = folder / "methods"
    method, job = (methods / f"{METHOD}.yaml").read_text(), (methods / "jobs" / f"{JOB}.yaml").read_text()
    for number in range(1, count):
        key = f"SF-1{number:02}"
        (methods / f"{METHOD}-{number:02}.yaml").write_text(
            method.replace("method: SF-07", f"method: {key}", 1)
        )
        (methods / "jobs" / f"{JOB}-{number:02}.yaml").write_text(
            job.replace("method: SF-07", f"method: {key}", 1).replace(
                "number: ORR-MS-07", f"number: ORR-MS-1{number:02}"
            )
        )
    return folder


def change_one_sentence(folder: Path) -> None:
    """One sentence of one method says something else."""
    file = folder / "methods" / f"{METHOD}.yaml"
    text = file.read_text()
    changed = text.replace("Bring the edge of a door lining", "Bring the edge of one door lining", 1)
    assert changed != text
    file.write_text(changed)


def lay_untuned(sheets: Iterable[str], style: str, folder: Path) -> Path:
    """The same sheets as files, each with its whole style and its drawings inline."""
    folder.mkdir()
    for number, html in enumerate(sheets):
        text = EMBEDDED.sub(_inlined, html).replace("</head>", f"<style>{style}</style></head>")
        (folder / f"{number:03}.html").write_text(text, encoding="utf-8")
    return folder


def _inlined(found: re.Match[str]) -> str:
    """The drawing itself, of the class and size of the image that held it."""
    held = " ".join(HELD.findall(found[1] + found[3]))
    svg = base64.b64decode(found[2]).decode()
    return svg[svg.index("<svg") :].replace("<svg", f"<svg {held}", 1)


def print_untuned(folder: Path, base: str) -> None:
    """WeasyPrint on those files as it comes, in a process that has nothing else in it."""
    subprocess.run([sys.executable, "-c", UNTUNED, folder, base], check=True, capture_output=True)


def report(figures: Iterable[tuple[str, str]]) -> None:
    """A line a figure, as soon as it is known."""
    for name, figure in figures:
        sys.stdout.write(f"{name:<34} {figure}\n")
        sys.stdout.flush()


def measure(count: int, place: Path) -> Iterator[tuple[str, str]]:
    """Every figure after what it is of."""
    jobs = fifty_jobs(place / "jobs", count)
    found = assessed(jobs)
    yield from printing(found, jobs, place)
    nothing = [taken(lambda: publish(jobs, place / "cold-2", 2)).wall for _ in range(5)]
    yield "nothing changed", f"{statistics.median(nothing):.2f} s (aim under 0.5 s)"
    yield "a drawing", drawing(found)
    yield from changing(count, place)


def printing(found: Assessed, jobs: Path, place: Path) -> Iterator[tuple[str, str]]:
    """The same sheets untuned, and published whole with one worker and with two."""
    style = "\n".join((paper_font_css(), found.theme.text("tokens.css"), found.theme.text("print.css")))
    made = [composition(compose(pair)) for pair in found.pairs]
    sheets = [sheet for each in made for sheet in (each.sheet, each.card) if sheet]
    folder = lay_untuned(sheets, style, place / "untuned")
    base = found.theme.file("print.css").parent.as_uri() + "/"
    untuned = taken(partial(print_untuned, folder, base))
    yield f"{len(sheets)} documents, untuned", str(untuned)
    for workers, aim in ((1, 0.45), (2, 0.25)):
        whole = taken(partial(publish, jobs, place / f"cold-{workers}", workers))
        shares = whole.of(untuned) if workers == 1 else f"{whole.wall / untuned.wall:.2f} of untuned"
        yield f"{len(sheets)} documents, {workers} at work", f"{whole.wall:.2f} s, {shares} (aim {aim})"
        if workers == 1:
            shutil.rmtree(jobs / "output")


def assessed(folder: Path) -> Assessed:
    """The folder read and checked, as a publication would; it must be free of faults."""
    log = ProblemLog()
    with Crew(Memory(folder / "unused", surroundings=""), 1) as crew:
        found = assess(folder, log, crew)
    assert not log.has_errors, report_text(log)
    shutil.rmtree(folder / "unused", ignore_errors=True)
    return found


def drawing(found: Assessed) -> str:
    """The mean of every drawing, the plotting library imported beforehand."""
    ledgers = (work_out(pair.method, pair.job, pair.project, ProblemLog()) for pair in found.pairs)
    asked = (each for ledger in ledgers for each in wanted(ledger, ProblemLog()))
    orders = list(dict.fromkeys(order for each in asked for order in widths(each.order)))
    _draw_all(orders[:1])
    whole = taken(partial(_draw_all, orders))
    return f"{1000 * whole.processor / len(orders):.1f} ms of processor, mean of {len(orders)} (aim 3 ms)"


def _draw_all(orders: Iterable[Order]) -> None:
    for order in orders:
        draw(order.name, dict(order.values), order.width)


def changing(count: int, place: Path) -> Iterator[tuple[str, str]]:
    """One sentence changed in one method: where it is the only one, and where it is one of many."""
    for many in (1, count):
        folder, cache = fifty_methods(place / f"methods-{many}", many), place / f"changed-{many}"
        publish(folder, cache, 2)
        change_one_sentence(folder)
        yield f"one sentence changed, {many} methods", str(taken(partial(publish, folder, cache, 2)))


def main() -> None:
    """Measure and report."""
    asked = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    asked.add_argument("--jobs", type=int, default=50)
    with tempfile.TemporaryDirectory() as place:
        report(measure(asked.parse_args().jobs, Path(place)))


if __name__ == "__main__":
    main()
