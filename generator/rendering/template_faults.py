"""A template that fails while a page is laid out, told by the line of the template."""

from __future__ import annotations

import traceback
from pathlib import Path

from jinja2 import TemplateError, TemplateSyntaxError

from generator.problems import MachineLacks, Span
from generator.rendering.themes import Theme


class TemplateFails(MachineLacks):
    """A template of the theme asks for what is not there; carries the problem with its place."""

    def __init__(self, error: TemplateError, theme: Theme) -> None:
        span = _syntax_place(error) if isinstance(error, TemplateSyntaxError) else _place(error, theme)
        super().__init__("template-fails", span, reason=reason(error))

    def __reduce__(self) -> tuple[object, ...]:
        # A worker hands it back without the template error, which cannot travel.
        return (_again, (self.problem,))


def _again(problem: object) -> TemplateFails:
    again = TemplateFails.__new__(TemplateFails)
    again.__dict__["problem"] = problem
    return again


def reason(error: TemplateError) -> str:
    """What Jinja says of it, as part of a sentence."""
    return (error.message or "").rstrip(". ")


def _syntax_place(error: TemplateSyntaxError) -> Span | None:
    return span_in(Path(error.filename), error.filename, error.lineno) if error.filename else None


def _place(error: TemplateError, theme: Theme) -> Span | None:
    """The innermost line of a template that was being filled."""
    frames = traceback.extract_tb(error.__traceback__)
    folders = theme.folders
    within = [frame for frame in frames if any(Path(frame.filename).is_relative_to(one) for one in folders)]
    return span_in(Path(within[-1].filename), within[-1].filename, within[-1].lineno or 1) if within else None


def span_in(path: Path, shown: str, line: int, word: str = "") -> Span:
    """A line of a template, or the first place of `word` in it."""
    return span_of(path.read_text(encoding="utf-8"), shown, line, word)


def span_of(source: str, shown: str, line: int, word: str = "") -> Span:
    """As `span_in`, in the text of a template."""
    lines = source.split("\n")
    text = lines[line - 1] if 0 < line <= len(lines) else ""
    before = len(text) - len(text.lstrip())
    column = text.find(word) + 1 if word and word in text else before + 1
    length = len(word) or max(len(text.strip()), 1)
    return Span(file=shown, line=line, column=column, text=text, length=length)
