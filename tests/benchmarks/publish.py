"""How long publishing takes, against the same sheets printed without any tuning, in the same run.

    python tests/benchmarks/publish.py [--jobs 50]

Untuned means: one process, drawings inline in the HTML, WeasyPrint's default settings, nothing shared
between documents. The figures depend on the machine; the ratios travel. Not collected by pytest.
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
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path

ROOT = Path(__file__).parents[2]
COMMAND = "import sys; from generator.cli import main; sys.exit(main(sys.argv[1:]))"
EMBEDDED = re.compile(r'<img\b[^>]*?src="data:image/svg\+xml;base64,([^"]+)"[^>]*>')
SENTENCE = "Certificates are in the"
JOB, METHOD = "reading-room-doors", "architrave-set-back-frame"


def seconds(work: Callable[[], object]) -> float:
    """Wall-clock seconds of one call."""
    began = time.perf_counter()
    work()
    return time.perf_counter() - began


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
        wider = re.sub(r",(\d{3}),(\d{4}),", lambda sizes: _wider(sizes, number), survey)
        (jobs / f"{name}.csv").write_text(wider)
        renamed = job.replace(f"{JOB}.csv", f"{name}.csv").replace("number: ORR-MS-07", f"number: ORR-MS-1{number:02}")
        (jobs / f"{name}.yaml").write_text(renamed)
    return folder


def _wider(sizes: re.Match[str], number: int) -> str:
    return f",{int(sizes[1]) + number},{int(sizes[2]) + number},"


def fifty_methods(folder: Path, count: int) -> Path:
    """`count` methods that differ in number alone, each with one job."""
    shutil.copytree(ROOT / "methods", folder / "methods")
    methods = folder / "methods"
    method, job = (methods / f"{METHOD}.yaml").read_text(), (methods / "jobs" / f"{JOB}.yaml").read_text()
    for number in range(1, count):
        key = f"SF-1{number:02}"
        (methods / f"{METHOD}-{number:02}.yaml").write_text(method.replace("method: SF-07", f"method: {key}", 1))
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


def print_untuned(sheets: Iterator[str], style: str) -> float:
    """Seconds that WeasyPrint takes for the same sheets as it comes: drawings inline, all settings at default."""
    from weasyprint import HTML

    texts = [EMBEDDED.sub(_inlined, html).replace("</head>", f"<style>{style}</style></head>") for html in sheets]

    def work() -> None:
        for text in texts:
            HTML(string=text).write_pdf()

    return seconds(work)


def _inlined(found: re.Match[str]) -> str:
    return base64.b64decode(found[1]).decode()


def report(figures: Mapping[str, str]) -> None:
    """A line a figure."""
    wide = max(map(len, figures))
    for name, figure in figures.items():
        sys.stdout.write(f"{name:<{wide}}  {figure}\n")


def measure(count: int, place: Path) -> Mapping[str, str]:
    """Every figure by what it is of."""
    jobs = fifty_jobs(place / "jobs", count)
    untuned = untuned_seconds(jobs)
    one, two = (seconds(lambda n=n: publish(jobs, place / f"cold-{n}", n)) for n in (1, 2))
    shutil.rmtree(place / "cold-1")
    nothing = statistics.median(seconds(lambda: publish(jobs, place / "cold-2", 2)) for _ in range(5))
    each, drawings = drawing_seconds(jobs)
    change = changed_seconds(count, place)
    return {
        f"{count} jobs, untuned": f"{untuned:.1f} s",
        f"{count} jobs, one worker": f"{one:.1f} s, {one / untuned:.2f} of untuned (aim 0.45)",
        f"{count} jobs, two workers": f"{two:.1f} s, {two / untuned:.2f} of untuned (aim 0.25)",
        "a drawing": f"{1000 * each:.1f} ms, mean of {drawings} (aim 3 ms)",
        "nothing changed": f"{nothing:.2f} s (aim under 0.5 s)",
        **change,
    }


def untuned_seconds(folder: Path) -> float:
    """Untuned printing of every sheet of the folder, drawn and composed beforehand."""
    from generator.pipeline.leaves import sheets_of
    from generator.rendering.fonts import paper_font_css
    from generator.rendering.themes import load_theme

    theme = load_theme()
    style = "\n".join((paper_font_css(), theme.text("tokens.css"), theme.text("print.css")))
    return print_untuned(sheets_of(folder), style)


def drawing_seconds(folder: Path) -> tuple[float, int]:
    """Seconds a drawing, and how many were drawn; the plotting library is imported beforehand."""
    from generator.drawings.registry import draw
    from generator.pipeline.leaves import orders_of

    orders = orders_of(folder)
    draw(orders[0].name, dict(orders[0].values), orders[0].width)
    whole = seconds(lambda: [draw(order.name, dict(order.values), order.width) for order in orders])
    return whole / len(orders), len(orders)


def changed_seconds(count: int, place: Path) -> Mapping[str, str]:
    """One sentence changed in one method: where it is the only one, and where it is one of many."""
    taken = []
    for many in (1, count):
        folder, cache = fifty_methods(place / f"methods-{many}", many), place / f"changed-{many}"
        publish(folder, cache, 2)
        change_one_sentence(folder)
        taken.append(seconds(lambda f=folder, c=cache: publish(f, c, 2)))
    return {
        "one sentence changed, 1 method": f"{taken[0]:.2f} s",
        f"one sentence changed, {count} methods": f"{taken[1]:.2f} s (aim: as for one)",
    }


def main() -> None:
    """Measure and report."""
    asked = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    asked.add_argument("--jobs", type=int, default=50)
    with tempfile.TemporaryDirectory() as place:
        report(measure(asked.parse_args().jobs, Path(place)))


if __name__ == "__main__":
    main()
