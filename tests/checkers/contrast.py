"""Contrast of all visible text, also where axe-core gives up: in drawings, and where something overlaps.

WCAG 2.2 success criterion 1.4.3 with its definitions of relative luminance and contrast ratio. The background
is that of the nearest element behind the text that paints one; shapes inside a drawing are not looked at.
"""

from __future__ import annotations

from playwright.sync_api import Page

from tests.checkers.findings import Finding

LEAST = 4.5


def faint_text(page: Page, where: str, least: float = LEAST) -> tuple[Finding, ...]:
    """List the texts whose contrast with what is painted behind them is under `least`, each look once."""
    found = page.evaluate(_FAINT, least)
    return tuple(Finding(where=where, rule="contrast", says=says) for says in found)


_FAINT = """least => {
  const canvas = document.createElement('canvas').getContext('2d', {willReadFrequently: true});
  const painted = colour => {
    canvas.clearRect(0, 0, 1, 1);
    canvas.fillStyle = colour;
    canvas.fillRect(0, 0, 1, 1);
    return [...canvas.getImageData(0, 0, 1, 1).data];
  };
  const part = c => c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  const light = ([r, g, b]) => 0.2126 * part(r / 255) + 0.7152 * part(g / 255) + 0.0722 * part(b / 255);
  const dark = matchMedia('(prefers-color-scheme: dark)').matches;
  const schemed = getComputedStyle(document.documentElement).colorScheme.includes('dark');
  const behind = e => {
    for (; e; e = e.parentElement) {
      const colour = painted(getComputedStyle(e).backgroundColor);
      if (colour[3] > 250) return colour;
    }
    return painted(dark && schemed ? '#121212' : '#ffffff');
  };
  const faint = new Map();
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let text = walk.nextNode(); text; text = walk.nextNode()) {
    const e = text.parentElement, style = getComputedStyle(e);
    if (!text.data.trim() || e.closest('script, style, title, desc, noscript')) continue;
    if (!e.checkVisibility({visibilityProperty: true})) continue;
    const front = painted(e.closest('svg') ? style.fill : style.color), back = behind(e);
    const [low, high] = [light(front), light(back)].sort((a, b) => a - b);
    const ratio = (high + 0.05) / (low + 0.05);
    const look = `${e.tagName.toLowerCase()}${[...e.classList].map(c => '.' + c).join('')}: `
      + `rgb(${front.slice(0, 3)}) on rgb(${back.slice(0, 3)}) is ${ratio.toFixed(2)}`;
    if (ratio < least && !faint.has(look)) faint.set(look, text.data.trim().slice(0, 40));
  }
  return [...faint].map(([look, words]) => `${look} ("${words}")`);
}"""
