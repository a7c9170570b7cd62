"""Names of values that stand in prose without their braces, and would be printed as they are."""

from __future__ import annotations

import re

from generator.problems import ProblemLog
from generator.prose.walk import prose_in
from generator.quantities.ledger import Ledger

_REFERENCE = re.compile(r"(?<!\{)\{[^{}\n]*\}(?!\})")
_NAME = re.compile(r"\b[a-z][a-z0-9]*(?:_[a-z0-9]+)+\b")


def check_bare_names(ledger: Ledger, log: ProblemLog) -> None:
    """Warn of each name of several words that is a value's and stands in prose outside braces."""
    for prose in prose_in(ledger.job or ledger.method):
        text = _REFERENCE.sub(lambda braced: " " * len(braced.group()), prose.source.value)
        for found in _NAME.finditer(text):
            if found.group() in ledger.names:
                span = prose.source.place(found.start(), len(found.group()))
                log.add("bare-name", span, warning=True, name=found.group())
