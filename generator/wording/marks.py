"""Where a text holds words that are not in its own language: marked in the text until it is laid out.

A page in another language still holds the English of its method. Strings travel a long way before they
become HTML, and are joined and filled on it; the marks travel inside them. They are two code points that
Unicode keeps from ever being characters, so that no file of a user's can hold them (they are reported as
unseen characters), and they never reach a page: `rendering.languages` turns them into `lang` attributes.
"""

from __future__ import annotations

from typing import Final

BEGINS: Final = "\ufdd0"
ENDS: Final = "\ufdd1"


def marked(text: str) -> str:
    """`text` as words in English; each paragraph by itself, so that a text may be parted between them."""
    return "\n\n".join(f"{BEGINS}{part}{ENDS}" if part.strip() else part for part in text.split("\n\n"))


def unmarked(text: str) -> str:
    """`text` without its marks."""
    return text.replace(BEGINS, "").replace(ENDS, "")


def parted(text: str, separator: str) -> tuple[str, str]:
    """What stands before and after `separator`, each marked where all of `text` was."""
    before, _, after = text.partition(separator)
    if not (text.startswith(BEGINS) and text.endswith(ENDS)) or not after:
        return before, after
    return f"{before}{ENDS}", f"{BEGINS}{after}"


def capital(text: str) -> str:
    """`text` with a capital first."""
    at = next((place for place, letter in enumerate(text) if letter not in (BEGINS, ENDS)), 0)
    return f"{text[:at]}{text[at : at + 1].upper()}{text[at + 1 :]}"


def without_end(text: str, ends: str) -> str:
    """`text` without the characters of `ends` at its end."""
    closing = text[len(text.rstrip(ENDS)) :]
    return f"{text.removesuffix(closing).rstrip(ends)}{closing}"
