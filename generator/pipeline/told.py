"""Problems as bytes and back, so that what a step found can be remembered with what it made."""

from __future__ import annotations

import json
from collections.abc import Iterable
from dataclasses import asdict
from typing import Any

from generator.problems import Problem, Severity, Span


def told(problems: Iterable[Problem]) -> list[dict[str, Any]]:
    """Problems as plain data that JSON takes."""
    return [asdict(problem) for problem in problems]


def heard(data: Iterable[dict[str, Any]]) -> tuple[Problem, ...]:
    """The problems again."""
    return tuple(_problem(**each) for each in data)


def told_as_bytes(problems: Iterable[Problem]) -> bytes:
    """Problems as the result of a step."""
    return json.dumps(told(problems)).encode()


def heard_from_bytes(content: bytes) -> tuple[Problem, ...]:
    """The problems again."""
    return heard(json.loads(content))


def _problem(code: str, span: dict[str, Any] | None, values: dict[str, str], severity: str) -> Problem:
    place = Span(**span) if span else None
    return Problem(code=code, span=place, values=values, severity=Severity(severity))
