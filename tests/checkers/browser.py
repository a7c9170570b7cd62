"""Chromium without a window, the views a page is looked at in, and what the browser itself can measure."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Literal
from urllib.parse import unquote, urlsplit

from playwright.sync_api import Browser, Page, sync_playwright

from tests.checkers.findings import Finding
from tests.checkers.programs import browser_program

FLAGS = (
    "--no-sandbox",
    "--disable-gpu",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class View:
    """One way of looking at a page: size in CSS pixels, the reader's colour scheme, scripts or none."""

    width: int
    height: int
    scheme: Literal["light", "dark"] = "light"
    scripts: bool = True

    def __str__(self) -> str:
        return f"{self.width} px, {self.scheme}" + ("" if self.scripts else ", scripts off")


PHONE = View(width=360, height=740)
PHONE_DARK = View(width=360, height=740, scheme="dark")
DESK = View(width=1280, height=900)
DESK_DARK = View(width=1280, height=900, scheme="dark")
VIEWS = (PHONE, PHONE_DARK, DESK, DESK_DARK)
PHONE_WITHOUT_SCRIPTS = View(width=360, height=740, scripts=False)


@contextmanager
def chromium() -> Iterator[Browser]:
    """Start Chromium on a profile of its own; MissingProgramError when it is not installed."""
    with sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=browser_program(), args=list(FLAGS))
        yield browser
        browser.close()


@contextmanager
def opened(browser: Browser, file: Path, view: View) -> Iterator[Page]:
    """Open a file of the site from disk in a fresh context, so that nothing is remembered from before."""
    for _, page in leafed(browser, [file], view):
        yield page


def leafed(browser: Browser, files: Iterable[Path], view: View) -> Iterator[tuple[Path, Page]]:
    """Open one file after another in the same window, for what does not depend on what was kept before.

    A window of its own for each page costs more than most looks at it.
    """
    context = browser.new_context(
        viewport={"width": view.width, "height": view.height},
        color_scheme=view.scheme,
        reduced_motion="reduce",
        java_script_enabled=view.scripts,
        service_workers="block",
    )
    page = context.new_page()
    for file in files:
        page.goto(file.resolve().as_uri(), wait_until="load")
        yield file, page
    context.close()


def overflows(page: Page, where: str) -> tuple[Finding, ...]:
    """Say whether a page must be scrolled sideways, and name the elements that stick out furthest."""
    wide, room, culprits = page.evaluate(_OVERFLOW)
    if wide <= room:
        return ()
    says = f"the page is {wide} px wide in a window of {room} px; sticking out: {', '.join(culprits)}"
    return (Finding(where=where, rule="sideways scroll", says=says),)


_OVERFLOW = """() => {
  const root = document.documentElement, room = window.innerWidth;
  const wide = Math.max(root.scrollWidth, document.body.scrollWidth);
  const named = e => e.tagName.toLowerCase() + (e.id ? '#' + e.id : '')
    + [...e.classList].map(c => '.' + c).join('');
  const out = [...document.body.querySelectorAll('*')].map(e => [e.getBoundingClientRect().right, named(e)])
    .filter(([right]) => right > room + 0.5).sort((a, b) => b[0] - a[0]);
  return [wide, room, out.slice(0, 5).map(([right, name]) => `${name} to ${Math.round(right)} px`)];
}"""


def readable_lines(page: Page) -> tuple[str, ...]:
    """Give the lines of text seen in the main part; ValueError without a main part.

    Buttons are left out, and what is shown only where a script can serve it.
    """
    text = page.evaluate(_MAIN_TEXT)
    if text is None:
        raise ValueError("the page has no main element")
    return tuple(line.strip() for line in text.splitlines() if line.strip())


# Playwright's own add_style_tag waits for ever on a page whose scripts are off.
_MAIN_TEXT = """() => {
  const style = document.createElement('style');
  style.textContent = 'button, .by-script { display: none !important }';
  document.head.append(style);
  const text = document.querySelector('main')?.innerText ?? null;
  style.remove();
  return text;
}"""


def headings(page: Page) -> tuple[tuple[str, bool], ...]:
    """Give every heading of the page in order, and whether a reader can see it."""
    found = page.evaluate(
        "() => [...document.querySelectorAll('h1, h2, h3, h4, h5, h6')]"
        ".map(e => [e.textContent.trim(), e.checkVisibility({visibilityProperty: true})])"
    )
    return tuple((text, seen) for text, seen in found)


def console_errors(browser: Browser, files: Iterable[Path], view: View) -> tuple[Finding, ...]:
    """List the script errors, console errors and failed loads of pages, opened one after another."""
    said: list[Finding] = []
    at = ""

    def note(rule: str, says: str) -> None:
        said.append(Finding(where=at, rule=rule, says=says))

    context = browser.new_context(
        viewport={"width": view.width, "height": view.height}, color_scheme=view.scheme
    )
    page = context.new_page()
    page.on("pageerror", lambda error: note("script error", str(error)))
    page.on("console", lambda message: note("console", message.text) if message.type == "error" else None)
    page.on("requestfailed", lambda request: note("failed load", request.url))
    for file in files:
        at = f"{file.name} ({view})"
        page.goto(file.resolve().as_uri(), wait_until="load")
    context.close()
    return tuple(said)


def loads(browser: Browser, file: Path) -> tuple[str, ...]:
    """List the addresses a page fetches when it is opened, itself first, data: addresses left out."""
    context = browser.new_context(viewport={"width": PHONE.width, "height": PHONE.height})
    page = context.new_page()
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(file.resolve().as_uri(), wait_until="networkidle")
    context.close()
    return tuple(dict.fromkeys(address for address in asked if not address.startswith("data:")))


def weight(browser: Browser, file: Path) -> int:
    """Add up the bytes of a page and all it fetches from disk; ValueError if it fetches from elsewhere."""
    addresses = loads(browser, file)
    far = [address for address in addresses if urlsplit(address).scheme != "file"]
    if far:
        raise ValueError(f"{file.name} fetches from outside: {', '.join(far)}")
    return sum(Path(unquote(urlsplit(address).path)).stat().st_size for address in addresses)
