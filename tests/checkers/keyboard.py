"""A walk through a page by the Tab key alone, as a reader without a pointer takes it."""

from __future__ import annotations

from dataclasses import dataclass

from playwright.sync_api import Page

from tests.checkers.findings import Finding

MOST_STOPS = 400


@dataclass(frozen=True, slots=True, kw_only=True)
class Stop:
    """One place where the focus rests: its element and text, and three facts.

    `skips`: a link from outside the main part into it; `seen`: not wholly hidden; `marked`: the focus shows.
    """

    element: str
    text: str
    skips: bool
    seen: bool
    marked: bool


def journey(page: Page) -> tuple[Stop, ...]:
    """Press Tab from the top of the page until the focus leaves it, and give every stop on the way, in order.

    Errors: ValueError when the focus is still inside after MOST_STOPS presses, as in a trap.
    """
    stops: list[Stop] = []
    for _ in range(MOST_STOPS):
        page.keyboard.press("Tab")
        stop = page.evaluate(_STOP)
        if stop is None:
            return tuple(stops)
        stops.append(Stop(**stop))
    raise ValueError(f"the focus never leaves the page; last stops: {stops[-3:]}")


def keyboard_faults(page: Page, where: str) -> tuple[Finding, ...]:
    """List stops out of sight or without a mark, what Tab never reaches, and a missing skip link."""
    stops = journey(page)
    faults = [
        *(
            ("hidden stop", f"{stop.element} {stop.text!r} has the focus out of sight")
            for stop in stops
            if not stop.seen
        ),
        *(
            ("focus not shown", f"{stop.element} {stop.text!r} looks the same")
            for stop in stops
            if not stop.marked
        ),
        *(("never reached", name) for name in page.evaluate(_NEVER_REACHED)),
        *_skip_link(stops),
    ]
    return tuple(Finding(where=where, rule=rule, says=says) for rule, says in faults)


def _skip_link(stops: tuple[Stop, ...]) -> tuple[tuple[str, str], ...]:
    if stops and stops[0].skips:
        return ()
    return (("no skip link", f"the first stop is {stops[0].element if stops else 'nowhere'}"),)


# The mark of focus is whatever changes in the element's own look when the focus is taken away again.
_STOP = """() => {
  const e = document.activeElement, root = document.documentElement, main = document.querySelector('main');
  if (!e || e === document.body || e === root || e.dataset.walked) return null;
  const look = () => {
    const s = getComputedStyle(e);
    const outline = s.outlineStyle === 'none' ? '' : s.outlineStyle + s.outlineWidth + s.outlineColor;
    return [outline, s.boxShadow, s.backgroundColor, s.color, s.borderTopColor, s.borderTopWidth,
            s.textDecorationLine].join('|');
  };
  const label = e.labels && e.labels.length ? e.labels[0] : null;
  const hit = (x, y) => {
    const top = document.elementFromPoint(x, y);
    return !!top && (e.contains(top) || !!label && label.contains(top));
  };
  const shares = [0.02, 0.25, 0.5, 0.75, 0.98];
  const shows = box => box.width > 1 && box.height > 1
    && shares.some(u => shares.some(v => hit(box.left + u * box.width, box.top + v * box.height)));
  const seen = [...e.getClientRects(), ...(label ? label.getClientRects() : [])].some(shows);
  const focused = look();
  e.blur();
  const plain = look();
  e.focus({preventScroll: true});
  e.dataset.walked = '1';
  const inward = !!main && !main.contains(e) && (e.getAttribute('href') || '').startsWith('#');
  return {
    element: e.tagName.toLowerCase() + (e.id ? '#' + e.id : ''),
    text: (e.innerText || e.ariaLabel || '').trim().slice(0, 60),
    skips: inward && main.contains(document.getElementById(e.hash.slice(1))),
    seen: seen,
    marked: focused !== plain,
  };
}"""

# Tab enters a group of radio buttons once; the arrow keys go through it.
_NEVER_REACHED = """() => {
  const walked = e => e.dataset.walked
    || e.type === 'radio' && document.querySelector(`input[name="${e.name}"][data-walked]`);
  return [...document.querySelectorAll('a[href], button, input, select, textarea, summary, [tabindex]')]
    .filter(e => e.checkVisibility({visibilityProperty: true}) && !e.disabled && e.tabIndex >= 0)
    .filter(e => !walked(e))
    .map(e => e.tagName.toLowerCase() + ' ' + (e.innerText || e.ariaLabel || e.id || '').trim().slice(0, 60));
}"""
