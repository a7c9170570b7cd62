"""What a YAML syntax error comes from, in the reader's terms.

A parser says where it gave up, seldom what went wrong. The causes below are tried in order on the lines
about that place and on the tokens before it; the first that fits is reported.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

import yaml
from yaml import tokens

from generator.problems import Problem
from generator.reading.limits import MOST_DEPTH
from generator.reading.source import Source, called, quoted, straightened

Place = tuple[int, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class Upset:
    """Where the parser gave up and why: its two texts, their places, the last text or bracket before
    the place, and where the innermost bracket still open stands."""

    source: Source
    problem: str
    context: str
    at: Place
    began: Place
    before: Any
    opened: Place | None

    @property
    def line(self) -> str:
        """The line the parser gave up in."""
        return self.source.line(self.at[0])

    @property
    def character(self) -> str:
        """The character the parser gave up at; empty at the end of a line."""
        return self.line[self.at[1] : self.at[1] + 1]

    def cause(self, code: str, place: Place, length: int = 1, **values: object) -> Problem:
        """The fault of that code at `place`."""
        said = {name: str(value) for name, value in values.items()}
        return Problem(code=code, span=self.source.span(*place, length), values=said)

    def rest_of(self, place: Place) -> int:
        """How many characters stand from `place` to the end of its line."""
        return len(self.source.line(place[0]).rstrip()) - place[1]


_KEY_WITHOUT_SPACE = re.compile(r"(?P<before>\s*(?:- +)*(?P<key>[A-Za-z_][\w-]*)):(?P<value>[^\s:/].*)")
_ODD_SPACE_AFTER = re.compile(
    "\\s*(?:- +)*(?:-|[A-Za-z_][\\w-]*:)(?P<space>[\u00a0\u2000-\u200a\u202f\u205f\u3000])"
)
_NO_DASH = re.compile(r"\s*(?P<mark>-(?=[^\s-])|[\u2010-\u2015\u2212\u2022\u00b7])")
_CURLY = re.compile(r"\s*(?:- +)*(?:[\w-]+: +)?(?P<text>[\u201c\u201d\u201e\u2018\u2019\u00ab].*)")
_TEXT_IN_BRACKETS = re.compile(r"\s*(?:- +)*(?:[\w-]+: +)?(?P<text>[{\[].*)")
_CLOSING = {"{": "}", "[": "]"}
_TEXT_TOKENS = (tokens.ScalarToken, tokens.FlowMappingEndToken, tokens.FlowSequenceEndToken)
_OPENING_TOKENS = (tokens.FlowMappingStartToken, tokens.FlowSequenceStartToken)
_CLOSING_TOKENS = (tokens.FlowMappingEndToken, tokens.FlowSequenceEndToken)


def explain(fault: yaml.YAMLError, text: str, source: Source, loader: Any) -> Problem:
    """The syntax error that stopped PyYAML, as a problem worded by its likely cause."""
    upset = _upset(fault, text, source, loader)
    return next((cause for find in _CAUSES if (cause := find(upset))), None) or upset.cause(
        "yaml-syntax", upset.at
    )


def _upset(fault: yaml.YAMLError, text: str, source: Source, loader: Any) -> Upset:
    mark, context_mark = getattr(fault, "problem_mark", None), getattr(fault, "context_mark", None)
    at = _place(mark) if mark else (0, 0)
    before, opened = _state_before(at, text, loader)
    return Upset(
        source=source,
        problem=getattr(fault, "problem", None) or str(fault),
        context=getattr(fault, "context", None) or "",
        at=at,
        began=_place(context_mark) if context_mark else at,
        before=before,
        opened=opened,
    )


def _place(mark: Any) -> Place:
    return mark.line, mark.column


def _tokens_before(at: Place, text: str, loader: Any) -> Iterator[Any]:
    """The tokens that begin before the place, as far as they can be read."""
    try:
        for token in yaml.scan(text, Loader=loader):
            if _place(token.start_mark) >= at:
                return
            yield token
    except yaml.YAMLError:
        return


def _state_before(at: Place, text: str, loader: Any) -> tuple[Any, Place | None]:
    """The last text or closing bracket before the place, and where the innermost open bracket stands."""
    last, opened = None, []
    for token in _tokens_before(at, text, loader):
        if isinstance(token, _TEXT_TOKENS):
            last = token
        if isinstance(token, _OPENING_TOKENS):
            opened.append(_place(token.start_mark))
        if isinstance(token, _CLOSING_TOKENS) and opened:
            opened.pop()
    return last, opened[-1] if opened else None


def _line_above(upset: Upset, line: int) -> int:
    """The nearest line above that is neither blank nor a comment; -1 when there is none."""
    above = line - 1
    while above >= 0 and upset.source.line(above).lstrip()[:1] in ("", "#"):
        above -= 1
    return above


def _indent(line: str) -> int:
    return len(line) - len(line.lstrip(" "))


def _too_deep(upset: Upset) -> Problem | None:
    if "nesting depth" not in upset.problem:
        return None
    return upset.cause("yaml-too-deep", upset.at, most=MOST_DEPTH)


def _directive(upset: Upset) -> Problem | None:
    for number in range(upset.at[0] + 1):
        if upset.source.line(number).startswith("%"):
            return upset.cause("yaml-starts-with", (number, 0), mark="%")
    return None


def _bad_start(upset: Upset) -> Problem | None:
    if "cannot start any token" not in upset.problem:
        return None
    return upset.cause("yaml-starts-with", upset.at, mark=upset.character)


def _alias_or_anchor(upset: Upset) -> Problem | None:
    if not upset.context.endswith(("an alias", "an anchor")):
        return None
    mark = upset.source.line(upset.began[0])[upset.began[1]]
    return upset.cause("yaml-starts-with", upset.began, mark=mark)


def _tag(upset: Upset) -> Problem | None:
    if "tag" not in f"{upset.context} {upset.problem}":
        return None
    written = upset.source.line(upset.began[0])[upset.began[1] :].split(" ")[0]
    return upset.cause("yaml-tag", upset.began, len(written), mark=written)


def _unclosed_quote(upset: Upset) -> Problem | None:
    if "quoted scalar" not in upset.context or "found unexpected" not in upset.problem:
        return None
    return upset.cause("yaml-quote-unclosed", upset.began)


def _bad_escape(upset: Upset) -> Problem | None:
    if "quoted scalar" not in upset.context:
        return None
    column = upset.line.rfind("\\", 0, upset.at[1] + 1)
    return upset.cause("yaml-escape", (upset.at[0], max(column, 0)), 2)


def _block_header(upset: Upset) -> Problem | None:
    if "block scalar" not in upset.context:
        return None
    return upset.cause("yaml-block-header", upset.at, upset.rest_of(upset.at))


def _quote_closed_late(upset: Upset) -> Problem | None:
    """A quote left open runs on to the next quote, some lines below: the first one is the fault."""
    token = upset.before
    if getattr(token, "style", None) not in ("'", '"') or token.end_mark.line != upset.at[0]:
        return None
    if token.start_mark.line < upset.at[0]:
        return upset.cause("yaml-quote-unclosed", _place(token.start_mark))
    return upset.cause("yaml-text-after-quote", upset.at, upset.rest_of(upset.at))


def _text_after_bracket(upset: Upset) -> Problem | None:
    token = upset.before
    if not isinstance(token, _CLOSING_TOKENS) or token.end_mark.line != upset.at[0]:
        return None
    if upset.character in ("}", "]", ","):
        return None
    whole = _TEXT_IN_BRACKETS.match(upset.line)
    if whole and not upset.opened:
        place = (upset.at[0], whole.start("text"))
        text = whole["text"].rstrip()
        return upset.cause("yaml-text-in-brackets", place, len(text), mark=text[0], quoted=quoted(text))
    mark = "}" if isinstance(token, tokens.FlowMappingEndToken) else "]"
    return upset.cause("yaml-text-after-bracket", upset.at, upset.rest_of(upset.at), mark=mark)


def _curly_quotes(upset: Upset) -> Problem | None:
    found = _CURLY.match(upset.line)
    if not found or upset.character != ":":
        return None
    text = found["text"].rstrip()
    return upset.cause(
        "yaml-curly-quotes", (upset.at[0], found.start("text")), len(text), quoted=straightened(text)
    )


def _second_colon(upset: Upset) -> Problem | None:
    if upset.character != ":" or ": " not in upset.line[: upset.at[1]]:
        return None
    return upset.cause("yaml-colon-in-text", upset.at)


def _no_space_after_colon(upset: Upset) -> Problem | None:
    for line in (upset.began[0], upset.at[0], _line_above(upset, upset.at[0])):
        found = _KEY_WITHOUT_SPACE.match(upset.source.line(line))
        if found and upset.opened is None:
            key, value = found["key"], found["value"].rstrip()
            place = (line, len(found["before"]))
            return upset.cause("yaml-colon-space", place, key=key, value=value)
    return None


def _flow(upset: Upset) -> Problem | None:
    if upset.opened is None:
        return None
    mark = upset.source.line(upset.opened[0])[upset.opened[1]]
    if upset.at[0] > upset.opened[0] or not upset.character:
        return upset.cause("yaml-bracket-unclosed", upset.opened, mark=mark, closing=_CLOSING[mark])
    return upset.cause("yaml-bracket-comma", upset.at, mark=mark, closing=_CLOSING[mark])


def _set_in_below_text(upset: Upset) -> Problem | None:
    above = _line_above(upset, upset.at[0])
    if not _reads_on(upset, above):
        return None
    while above >= 0 and _indent(upset.source.line(above)) >= _indent(upset.line):
        above = _line_above(upset, above)
    if above < 0:
        return None
    return upset.cause("yaml-set-in", (upset.at[0], _indent(upset.line)), above=above + 1)


def _reads_on(upset: Upset, above: int) -> bool:
    """True when the line was taken for more of a value above it."""
    if "mapping values are not allowed" in upset.problem:
        return True
    deeper = upset.at[1] == _indent(upset.line) > _indent(upset.source.line(above))
    return deeper and "mapping" in upset.context


def _text_not_set_in(upset: Upset) -> Problem | None:
    """A line of a text that begins at the column of its key, or before it, ends the text."""
    above = _line_above(upset, upset.began[0])
    while above >= 0 and _indent(upset.source.line(above)) > upset.began[1]:
        above = _line_above(upset, above)
    begun = upset.source.line(above).rstrip().endswith((": |", ": >"))
    if "simple key" not in upset.context or not begun:
        return None
    return upset.cause("yaml-text-not-set-in", upset.began, upset.rest_of(upset.began), above=above + 1)


def _odd_space(upset: Upset) -> Problem | None:
    found = _ODD_SPACE_AFTER.match(upset.source.line(upset.began[0]))
    if "simple key" not in upset.context or not found:
        return None
    return upset.cause(
        "yaml-space-after", (upset.began[0], found.start("space")), character=called(found["space"])
    )


def _no_dash(upset: Upset) -> Problem | None:
    found = _NO_DASH.match(upset.source.line(upset.began[0]))
    if "simple key" not in upset.context or not found:
        return None
    return upset.cause("yaml-dash", (upset.began[0], found.start("mark")), mark=found["mark"])


def _no_key(upset: Upset) -> Problem | None:
    if "simple key" not in upset.context:
        return None
    return upset.cause("yaml-line-no-key", upset.began, upset.rest_of(upset.began))


def _item_on_key_line(upset: Upset) -> Problem | None:
    if "sequence entries are not allowed" not in upset.problem:
        return None
    return upset.cause("yaml-item-on-line", upset.at)


def _stray_bracket(upset: Upset) -> Problem | None:
    if upset.character not in ("}", "]"):
        return None
    return upset.cause("yaml-bracket-stray", upset.at, mark=upset.character)


def _bad_content(upset: Upset) -> Problem | None:
    if "node content" not in upset.problem or not upset.character:
        return None
    return upset.cause("yaml-starts-with", upset.at, mark=upset.character)


def _second_root(upset: Upset) -> Problem | None:
    if "document start" not in upset.problem:
        return None
    return upset.cause("yaml-after-end", upset.at)


def _no_key_before_colon(upset: Upset) -> Problem | None:
    if upset.character != ":" or upset.line[: upset.at[1]].strip(" -"):
        return None
    return upset.cause("yaml-key-empty", upset.at)


def _indentation(upset: Upset) -> Problem | None:
    if not upset.context.startswith("while parsing a block"):
        return None
    (line, column), among_keys = upset.began, "mapping" in upset.context
    above = _indent(upset.source.line(_line_above(upset, upset.at[0])))
    values = {"column": upset.at[1] + 1, "above": above + 1, "first": line + 1, "first_column": column + 1}
    if among_keys and upset.character == "-":
        return upset.cause("yaml-item-among-keys", upset.at, **values)
    if not among_keys and upset.at[1] == column:
        return upset.cause("yaml-key-among-items", upset.at, **values)
    return upset.cause("yaml-indentation", upset.at, **values) if upset.at[1] != column else None


_CAUSES: tuple[Callable[[Upset], Problem | None], ...] = (
    _too_deep,
    _directive,
    _bad_start,
    _alias_or_anchor,
    _tag,
    _unclosed_quote,
    _bad_escape,
    _block_header,
    _quote_closed_late,
    _text_after_bracket,
    _curly_quotes,
    _second_colon,
    _no_space_after_colon,
    _flow,
    _no_key_before_colon,
    _set_in_below_text,
    _odd_space,
    _no_dash,
    _text_not_set_in,
    _no_key,
    _item_on_key_line,
    _stray_bracket,
    _bad_content,
    _second_root,
    _indentation,
)
