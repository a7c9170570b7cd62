"""A page as the preview shows it: marked as one, listening for changes, with the faults in it."""

from __future__ import annotations

from collections.abc import Iterable

from markupsafe import escape

from generator.problems import Problem
from generator.wording import ENGLISH
from generator.wording.report import report_text

CHANGES = "/-/changes"
_ROOT = b"<html "
_END = b"</body>"
_SCRIPT = """<script>
new EventSource("%(changes)s").onmessage = function (told) {
  if (told.data !== document.documentElement.dataset.preview) location.reload();
};
</script>"""
_STYLE = """<style>
.preview-faults { position: relative; z-index: 9; margin: 0; padding: 1rem; border: 3px solid #000; }
.preview-faults { background: #fff; color: #000; }
.preview-faults h2 { margin: 0 0 .5rem; font: bold 1rem sans-serif; color: inherit; }
.preview-faults pre { margin: 0; overflow: auto; font: .875rem/1.5 monospace; color: inherit; }
.preview-faults pre { white-space: pre; }
@media print { .preview-faults { display: none; } }
</style>"""
_BARE = """<!doctype html>
<html lang="en"><head><meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>%(title)s</title></head><body><main id="main"><h1>%(title)s</h1></main></body></html>
"""


def bare_page(title: str) -> bytes:
    """A page with a title alone, where no page was ever good."""
    return (_BARE % {"title": escape(title)}).encode()


def with_panel(page: bytes, version: int, problems: Iterable[Problem], stale: bool) -> bytes:
    """The page with the faults first in its body and with the script that loads it again."""
    problems = tuple(problems)
    root = _ROOT + f'data-preview="{version}" '.encode()
    script = (_SCRIPT % {"changes": CHANGES}).encode()
    marked = page.replace(_ROOT, root, 1).replace(_END, script + _END, 1)
    if not problems:
        return marked
    before, body, after = marked.partition(b"<body")
    opening, closed, rest = after.partition(b">")
    return before + body + opening + closed + _faults(problems, stale).encode() + rest


def _faults(problems: tuple[Problem, ...], stale: bool) -> str:
    head = (
        ENGLISH.say("This page is as it was before these faults.")
        if stale
        else ENGLISH.say("Found in this folder")
    )
    told = escape(report_text(problems))
    return (
        f'{_STYLE}<section class="preview-faults" role="status" aria-label="{escape(head)}">'
        f'<h2>{escape(head)}</h2><pre tabindex="0">{told}</pre></section>'
    )
