"""What an outside checker has to say about one file, in one shape for all of them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One complaint: the file or view it is about, the rule broken, and the checker's own words."""

    where: str
    rule: str
    says: str

    def __str__(self) -> str:
        return f"{self.where}: [{self.rule}] {self.says}"


def listed(findings: Iterable[Finding]) -> str:
    """Print findings one a line, so that a failed assertion can be read; nothing found gives ""."""
    return "\n".join(str(finding) for finding in findings)
