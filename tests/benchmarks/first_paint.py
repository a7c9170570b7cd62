"""What a page costs a phone until something is to be seen, with its processor slowed four times.

    python -m tests.benchmarks.first_paint [--site output/site] [--runs 5] [--slower 4]

For each page: its bytes and those of its scripts, how often style and layout were worked out until the page
had loaded and for how long, the time in scripts, the first paint with content, and the longest task. Times
are medians. They depend on the machine and are compared with each other on one machine only; counts and bytes
travel. The pages are served on loopback, nothing kept from before. Not collected by pytest.
"""

from __future__ import annotations

import argparse
import statistics
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread

from playwright.sync_api import Browser

from tests.checkers.browser import PHONE, chromium, loads, weight

ROOT = Path(__file__).parents[2]
PAGES = ("index.html", "guide-architrave-set-back-frame.html", "statement-reading-room-doors.html")
SETTLED_MS = 500
_PAINTED = """() => ({
  paint: performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? 0,
  longest: Math.max(0, ...(self.TASKS || [])),
})"""
_WATCHED = """self.TASKS = []; new PerformanceObserver(list => {
  for (const task of list.getEntries()) self.TASKS.push(task.duration);
}).observe({type: 'longtask', buffered: true});"""
_COUNTED = {
    "styles": "RecalcStyleCount",
    "layouts": "LayoutCount",
    "style ms": "RecalcStyleDuration",
    "layout ms": "LayoutDuration",
    "script ms": "ScriptDuration",
}
COLUMNS = ("page kB", "script kB", *_COUNTED, "paint ms", "longest ms")


class _Silent(SimpleHTTPRequestHandler):
    def log_message(self, format: str, *args: object) -> None:
        """Leave the line unprinted."""


def main() -> None:
    """Print a table, a line a page."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--site", type=Path, default=ROOT / "output" / "site")
    parser.add_argument("--runs", type=int, default=5)
    parser.add_argument("--slower", type=float, default=4)
    given = parser.parse_args()
    print(f"{'':42}" + "".join(f"{name:>12}" for name in COLUMNS))
    with chromium() as browser, _served(given.site) as address:
        for name in PAGES:
            figures = _weighed(browser, given.site / name)
            opened = [_opened(browser, address + name, given.slower) for _ in range(given.runs)]
            figures |= {key: statistics.median(each[key] for each in opened) for key in opened[0]}
            print(f"{name:42}" + "".join(f"{figures[key]:12.0f}" for key in COLUMNS))


@contextmanager
def _served(site: Path) -> Iterator[str]:
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(_Silent, directory=str(site)))
    Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}/"
    server.shutdown()
    server.server_close()


def _weighed(browser: Browser, file: Path) -> dict[str, float]:
    scripts = [address for address in loads(browser, file) if address.endswith(".js")]
    sizes = (Path(address.removeprefix("file://")).stat().st_size for address in scripts)
    return {"page kB": weight(browser, file) / 1000, "script kB": sum(sizes) / 1000}


def _opened(browser: Browser, address: str, slower: float) -> Mapping[str, float]:
    """Open a page once as on a phone that has nothing of it, and read the browser's own counters."""
    context = browser.new_context(
        viewport={"width": PHONE.width, "height": PHONE.height}, service_workers="block"
    )
    page = context.new_page()
    page.add_init_script(_WATCHED)
    session = context.new_cdp_session(page)
    session.send("Emulation.setCPUThrottlingRate", {"rate": slower})
    session.send("Performance.enable")
    page.goto(address, wait_until="load")
    page.wait_for_timeout(SETTLED_MS)
    counted = {each["name"]: each["value"] for each in session.send("Performance.getMetrics")["metrics"]}
    painted = page.evaluate(_PAINTED)
    context.close()
    figures = {
        name: counted[metric] * (1000 if name.endswith("ms") else 1) for name, metric in _COUNTED.items()
    }
    return figures | {"paint ms": painted["paint"], "longest ms": painted["longest"]}


if __name__ == "__main__":
    main()
