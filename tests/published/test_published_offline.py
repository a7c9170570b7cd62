"""A guide opened once stays on the device: the site served on loopback, then the network cut."""

from __future__ import annotations

import json
import os
from pathlib import Path
from urllib.request import urlopen

import pytest
from playwright.sync_api import BrowserContext, Page

from tests.published.conftest import Quiet, opened_and_kept

GUIDE = "guide-architrave-set-back-frame.html"
OTHER = "guide-door-hanging.html"
STATEMENT = "statement-reading-room-doors.html"


@pytest.fixture
def long_served(served: tuple[Path, str]) -> tuple[Path, str]:
    """Give the same, published a year ago: a browser left to itself then asks for nothing again for weeks."""
    folder, address = served
    for file in folder.rglob("*"):
        os.utime(file, (file.stat().st_atime, file.stat().st_mtime - 365 * 86_400))
    return folder, address


def published(folder: Path) -> dict[str, object]:
    first = (folder / "worker.js").read_text(encoding="utf-8").split("\n", 1)[0]
    whole: dict[str, object] = json.loads(first.removeprefix("const PUBLISHED = ").removesuffix(";"))
    return whole


def test_an_opened_guide_works_with_the_network_cut(
    served: tuple[Path, str], context: BrowserContext
) -> None:
    _, address = served
    page = opened_and_kept(context, address + GUIDE)
    height = page.evaluate("document.body.scrollHeight")
    context.set_offline(True)
    page.reload()
    assert "Architrave" in page.locator("h1").inner_text()
    assert page.evaluate("document.fonts.ready.then(() => document.fonts.check('17px \"Fira Sans\"'))")
    notice = page.locator(".lent")
    notice.wait_for()
    assert notice.inner_text().startswith("Kept copy.")
    told = page.evaluate("document.querySelector('.lent').getBoundingClientRect().height")
    assert page.evaluate("document.body.scrollHeight") == pytest.approx(height + told, abs=1)
    assert page.evaluate("document.documentElement.classList.contains('scripted')")


def test_a_kept_statement_brings_its_sheet_and_its_bench_cards(
    served: tuple[Path, str], context: BrowserContext
) -> None:
    _, address = served
    page = opened_and_kept(context, address + STATEMENT)
    context.set_offline(True)
    read = "name => fetch(name).then(r => r.arrayBuffer()).then(b => b.byteLength)"
    for name in (STATEMENT.replace(".html", ".pdf"), "reading-room-doors-card.pdf"):
        assert page.evaluate(read, name) == (served[0] / name).stat().st_size


def test_the_index_and_its_search_work_with_the_network_cut(
    served: tuple[Path, str], context: BrowserContext
) -> None:
    _, address = served
    page = opened_and_kept(context, address + GUIDE)
    context.set_offline(True)
    page.goto(address)
    page.get_by_role("searchbox").fill("packer")
    page.wait_for_selector(".find li a")


def test_a_page_never_opened_says_so(served: tuple[Path, str], context: BrowserContext) -> None:
    _, address = served
    page = opened_and_kept(context, address + GUIDE)
    assert not page.locator(".lent").is_visible()
    context.set_offline(True)
    page.goto(address + OTHER)
    assert page.locator("h1").inner_text() == "No signal"
    page.get_by_role("link").click()
    page.wait_for_url(address + "index.html")


def change(folder: Path, address: str, *, lost: bool = False) -> None:
    """Publish the guide anew under another version, or with the guide `lost` on the way."""
    guide, worker = folder / GUIDE, folder / "worker.js"
    guide.write_text(
        guide.read_text(encoding="utf-8").replace("<main", "<main data-again", 1), encoding="utf-8"
    )
    version = str(published(folder)["version"])
    worker.write_text(worker.read_text(encoding="utf-8").replace(version, "0" * 16), encoding="utf-8")
    with urlopen(address + "worker.js") as served:
        assert b"0" * 16 in served.read()
    with urlopen(address + GUIDE) as served:
        assert b"<main data-again" in served.read()
    if lost:
        guide.unlink()


UPDATED = """async () => {
  await (await navigator.serviceWorker.ready).update();
  for (const start = Date.now(); Date.now() - start < 30000;) {
    const names = await caches.keys();
    if (names.length === 1 && names[0].endsWith("0".repeat(16))) return true;
    await new Promise(resolve => setTimeout(resolve, 50));
  }
  return false;
}"""


def update(page: Page) -> None:
    assert page.evaluate(UPDATED), "the old version is still kept"


def test_a_new_version_takes_the_place_of_the_old_with_what_was_kept(
    long_served: tuple[Path, str], context: BrowserContext
) -> None:
    folder, address = long_served
    page = opened_and_kept(context, address + GUIDE)
    change(folder, address)
    page.goto(address)
    update(page)
    context.set_offline(True)
    page.goto(address + GUIDE)
    assert page.locator("main[data-again]").count() == 1


def test_an_old_guide_that_cannot_be_fetched_anew_is_let_go(
    long_served: tuple[Path, str], context: BrowserContext
) -> None:
    folder, address = long_served
    page = opened_and_kept(context, address + GUIDE)
    change(folder, address, lost=True)
    page.goto(address)
    update(page)
    context.set_offline(True)
    page.goto(address + GUIDE)
    assert page.locator("h1").inner_text() == "No signal"


def test_what_is_published_now_is_shown_whatever_the_browser_stored(
    long_served: tuple[Path, str], context: BrowserContext
) -> None:
    folder, address = long_served
    page = opened_and_kept(context, address + GUIDE)
    page.goto(address + GUIDE)
    change(folder, address)
    page.goto(address)
    page.goto(address + GUIDE)
    assert page.locator("main[data-again]").count() == 1


def test_a_server_that_keeps_the_reader_waiting_is_not_waited_for(
    served: tuple[Path, str], context: BrowserContext
) -> None:
    _, address = served
    page = opened_and_kept(context, address + GUIDE)
    Quiet.waits.clear()
    try:
        page.goto(address + GUIDE, wait_until="commit", timeout=20_000)
        assert "Architrave" in page.locator("h1").inner_text()
    finally:
        Quiet.waits.set()
    page.locator(".lent").wait_for()


def test_a_page_being_written_is_not_kept(served: tuple[Path, str], context: BrowserContext) -> None:
    folder, address = served
    guide = folder / GUIDE
    text = guide.read_text(encoding="utf-8")
    guide.write_text(text.replace("<html ", "<html data-preview ", 1), encoding="utf-8")
    page = context.new_page()
    page.goto(address + GUIDE)
    page.wait_for_selector("html.scripted", state="attached")
    assert page.evaluate("navigator.serviceWorker.getRegistrations().then(all => all.length)") == 0


def test_what_may_be_kept_is_published_and_nothing_of_the_tutors(site: Path) -> None:
    told = published(site)
    pages = told["pages"]
    assert isinstance(pages, dict)
    names = [*told["common"], *pages, *(name for kept in pages.values() for name in kept)]  # type: ignore[misc]
    assert [name for name in names if not (site / name).is_file()] == []
    assert [name for name in names if "tutor" in name] == []
    wanted = [
        file.relative_to(site).as_posix()
        for kind in ("index", "guide-*", "statement-*")
        for file in site.rglob(f"{kind}.html")
    ]
    assert sorted(pages) == sorted(wanted)
