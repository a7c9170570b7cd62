"""The worker that keeps opened pages on a reader's device, for where there is no signal."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping, Sequence

from markupsafe import escape

from generator.rendering.themes import Theme
from generator.wording import ENGLISH, Language

WORKER = "worker.js"


def offline_worker(
    files: Mapping[str, bytes],
    companions: Mapping[str, Sequence[str]],
    theme: Theme,
    language: Language = ENGLISH,
) -> bytes:
    """The script of the worker: the theme's own, with what is published put before it.

    `files` are the site's by their paths; `companions` gives each page the files that are kept with it.
    The version is a hash over every file the worker may keep, so that it changes with any of them.
    """
    common = sorted(name for name in files if name.startswith("assets/"))
    pages = {page: list(with_it) for page, with_it in sorted(companions.items())}
    script = theme.text(WORKER)
    kept = sorted({*common, *pages, *(name for with_it in pages.values() for name in with_it)})
    told = {"common": common, "pages": pages, "unopened": _unopened(language)}
    version = hashlib.sha256((script + json.dumps(told)).encode())
    for name in kept:
        version.update(f"{name}\0".encode() + hashlib.sha256(files[name]).digest())
    published = {"version": version.hexdigest()[:16], **told}
    return f"const PUBLISHED = {json.dumps(published, ensure_ascii=False)};\n{script}".encode()


def _unopened(language: Language) -> str:
    """The page shown instead of one that is not on the device."""
    title = escape(language.say("No signal"))
    told = escape(
        language.say(
            "No copy of this page in force is kept on this device. Open it once where there is a signal."
        )
    )
    back = escape(language.say("All methods"))
    return (
        f'<!doctype html><html lang="{language.tag}"><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width"><meta name="color-scheme" content="light dark">'
        f"<title>{title}</title>"
        f'<main><h1>{title}</h1><p>{told}</p><p><a href="index.html">{back}</a></p></main>'
    )
