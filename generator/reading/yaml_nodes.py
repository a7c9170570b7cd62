"""A YAML file to nodes that know where they stand, by PyYAML's events alone.

No Python object is ever built from a tag, nothing is expanded from an alias, and the size, the depth and
the number of nodes are bounded, so that a file can be wrong but cannot do harm or hang.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from typing import Any, NamedTuple, NoReturn, TypeAlias

import yaml
from yaml import events

from generator.problems import Problem, ProblemLog, Span
from generator.reading.characters import report_odd_indents, report_tabs, report_unseen
from generator.reading.files import read_text
from generator.reading.limits import MOST_DEPTH, MOST_NODES
from generator.reading.nodes import Entries, Items, Node, Nothing, Style, Text
from generator.reading.pieces import Extent, pieces_of
from generator.reading.source import CURLY_QUOTES, Source, quoted, source_of, straightened
from generator.reading.syntax import explain

LOADER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)

_CHECKS = (report_unseen, report_tabs, report_odd_indents)
_STYLES = {"|": Style.BLOCK, ">": Style.BLOCK, '"': Style.QUOTED, "'": Style.QUOTED}
_NULLS = frozenset(("", "~", "null", "Null", "NULL"))
_COMMENT_LIKE_TEXT = re.compile(r"\s+(?P<lost>#[^\s#].*)")
_IN_CURLY_QUOTES = re.compile(f"[{CURLY_QUOTES}][^{CURLY_QUOTES}]*[{CURLY_QUOTES}]")
_CLOSE_COLON = re.compile(r"(?P<key>[A-Za-z_][\w-]*):(?P<value>[^\s:/].*)")
_WORD = re.compile(r"[^\s,\]}]+")


Pairs: TypeAlias = tuple[tuple[Text, Node], ...]


class _Unreadable(Exception):
    """The rest of the file cannot be read; the fault is in the log already."""


class _Pair(NamedTuple):
    """A key as read with its value; `colon` is False where a flow mapping has a key and no colon."""

    key: Text
    value: Node
    colon: bool


def read_yaml(path: Path, shown: str, log: ProblemLog) -> Node | None:
    """The one document of a YAML file; None when it cannot be read at all, with the reason in the log.

    `shown` is how the path is printed. Faults that leave the rest readable (a key that stands twice, a tag)
    are logged too, and the rest is returned, so that its own faults come out in the same run.
    """
    text = read_text(path, shown, log)
    return None if text is None else parse_yaml(text, shown, log)


def parse_yaml(text: str, shown: str, log: ProblemLog) -> Node | None:
    """As `read_yaml`, from text whose lines end in `\\n`."""
    node, problems = _parsed(text, shown)
    log.take_all(problems)
    return node


# A long-lived process reads a whole folder again when one file of it was saved.
@lru_cache(maxsize=256)
def _parsed(text: str, shown: str) -> tuple[Node | None, tuple[Problem, ...]]:
    log = ProblemLog()
    return _parse(text, shown, log), tuple(log)


def _parse(text: str, shown: str, log: ProblemLog) -> Node | None:
    source = source_of(text, shown)
    faulty = [check(source, log) for check in _CHECKS]
    if any(faulty):
        return None
    found = ProblemLog()
    try:
        return _Reader(text, source, found).document()
    except _Unreadable:
        return None
    except yaml.YAMLError as fault:
        found = _with_cause(found, explain(fault, text, source, LOADER))
        return None
    finally:
        log.take_all(found)


def _with_cause(found: ProblemLog, cause: Problem) -> ProblemLog:
    """The cause with what was found before it; of two faults on one line only the cause is worth reading."""
    kept = ProblemLog()
    kept.take_all(problem for problem in found if not _same_line(problem, cause))
    kept.take(cause)
    return kept


def _same_line(problem: Problem, other: Problem) -> bool:
    return bool(problem.span and other.span and problem.span.line == other.span.line)


def _stands_before(first: Text, second: Text) -> bool:
    return (first.span.line, first.span.column) < (second.span.line, second.span.column)


class _Reader:
    """Turns the events of one file into nodes."""

    def __init__(self, text: str, source: Source, log: ProblemLog) -> None:
        self._text, self._source, self._log = text, source, log
        self._events: Iterator[Any] = iter(yaml.parse(text, Loader=LOADER))
        self._count = 0

    def document(self) -> Node:
        """The only document, or _Unreadable."""
        next(self._events)
        if isinstance(next(self._events), events.StreamEndEvent):
            self._stop("yaml-empty", self._source.span(0, 0))
        root = self._node(next(self._events), 0)
        if isinstance(root, Nothing):
            self._stop("yaml-empty", root.span)
        next(self._events)
        after = next(self._events)
        if not isinstance(after, events.StreamEndEvent):
            self._stop("yaml-several-documents", self._span(after, 3))
        return root

    def _node(self, event: Any, depth: int) -> Node:
        self._keep_bounds(event, depth)
        if isinstance(event, events.AliasEvent):
            self._stop("yaml-alias", self._marked(event), mark=self._mark(event))
        if event.anchor is not None:
            self._log.add("yaml-anchor", self._marked(event), mark=f"&{event.anchor}")
        if event.tag is not None:
            self._log.add("yaml-tag", self._marked(event), mark=self._mark(event))
        if isinstance(event, events.ScalarEvent):
            return self._scalar(event)
        if isinstance(event, events.SequenceStartEvent):
            return self._items(event, depth)
        return self._mapping(event, depth)

    def _keep_bounds(self, event: Any, depth: int) -> None:
        self._count += 1
        if self._count > MOST_NODES:
            self._stop("yaml-too-many", self._span(event), most=f"{MOST_NODES:,}")
        if depth > MOST_DEPTH:
            self._stop("yaml-too-deep", self._span(event), most=MOST_DEPTH)

    def _scalar(self, event: Any) -> Text | Nothing:
        mark = event.style or ""
        if not mark and event.value in _NULLS:
            return Nothing(span=self._span(event, len(event.value)))
        extent = self._extent(event, event)
        lines, starts = pieces_of(event.value, mark, extent, self._source)
        style = _STYLES.get(mark, Style.PLAIN)
        span = self._span(event, 1 if style is Style.BLOCK else self._length(extent))
        if style is Style.PLAIN:
            self._look_at_plain(event.value, span, extent)
        return Text(value=event.value, span=span, style=style, lines=lines, starts=starts)

    def _look_at_plain(self, value: str, span: Span, extent: Extent) -> None:
        if _IN_CURLY_QUOTES.fullmatch(value):
            self._log.add("yaml-curly-quotes", span, quoted=straightened(value))
        line = self._source.line(extent.end_line)
        found = _COMMENT_LIKE_TEXT.match(line, extent.end_column)
        if found:
            lost = found["lost"].rstrip()
            span = self._source.span(extent.end_line, found.start("lost"), len(lost))
            self._log.add("yaml-comment-in-text", span, warning=True, lost=lost)

    def _items(self, event: Any, depth: int) -> Items:
        items = []
        while not isinstance(following := next(self._events), events.SequenceEndEvent):
            items.append(self._node(following, depth + 1))
        return Items(items=tuple(items), span=self._whole(event, following))

    def _mapping(self, event: Any, depth: int) -> Node:
        pairs: dict[str, _Pair] = {}
        while not isinstance(following := next(self._events), events.MappingEndEvent):
            pair = self._pair(following, depth + 1, event.flow_style)
            if pair and self._is_new(pair.key, pairs):
                pairs[pair.key.value] = pair
        span = self._whole(event, following)
        kept = tuple((pair.key, pair.value) for pair in pairs.values() if pair.colon)
        loose = tuple(pair.key for pair in pairs.values() if not pair.colon)
        if loose and not kept:
            return self._text_in_braces(event, following, span)
        if kept and kept[0][0].value.startswith(tuple(CURLY_QUOTES)):
            return self._text_in_curly_quotes(kept[0][0].span)
        return Entries(entries=self._rejoined(kept, loose), span=span)

    def _text_in_curly_quotes(self, key: Span) -> Text:
        """A text with a colon in quotes that are none to YAML: a mapping to it, and plainly meant as text."""
        value = key.text[key.column - 1 :].rstrip()
        span = self._source.span(key.line - 1, key.column - 1, len(value))
        self._log.add("yaml-curly-quotes", span, quoted=straightened(value))
        return Text(value=value, span=span, lines=(span,), starts=(0,))

    def _pair(self, event: Any, depth: int, flow: bool) -> _Pair | None:
        key = self._node(event, depth)
        following = next(self._events)
        value = self._node(following, depth)
        if not isinstance(key, Text):
            code = "yaml-key-empty" if isinstance(key, Nothing) else "yaml-key-not-text"
            self._log.add(code, key.span)
            return None
        if not key.value.strip():
            self._log.add("yaml-key-empty", key.span)
            return None
        colon = ":" in self._text[event.end_mark.index : following.start_mark.index]
        return _Pair(key, value, colon or not flow)

    def _is_new(self, key: Text, pairs: dict[str, _Pair]) -> bool:
        if key.value not in pairs:
            return True
        first = pairs[key.value].key.span.line
        self._log.add("yaml-key-doubled", key.span, key=key.value, first=first)
        return False

    def _text_in_braces(self, start: Any, end: Any, span: Span) -> Text:
        """`{name}` without quotes: a mapping to YAML, and plainly meant as text."""
        begin = start.start_mark.index
        value = self._text[begin : end.end_mark.index]
        inner_of_two = self._text[max(begin - 1, 0) : begin] == "{"
        if not inner_of_two:
            self._log.add("yaml-brace-text", span, text=value, quoted=quoted(value))
        return Text(value=value, span=span, lines=(span,), starts=(0,))

    def _rejoined(self, kept: Pairs, loose: tuple[Text, ...]) -> Pairs:
        """The pairs, with each text put together again that a comma split; the rest is left out."""
        pairs = list(kept)
        for part in loose:
            if close := _CLOSE_COLON.fullmatch(part.value):
                pairs.append(self._apart(part, close))
                continue
            before = [at for at, (key, _) in enumerate(pairs) if _stands_before(key, part)]
            key, value = pairs[before[-1]] if before else (part, part)
            if before and isinstance(value, Text):
                pairs[before[-1]] = (key, replace(value, value=self._joined(key, value, part)))
            else:
                self._log.add("yaml-key-no-colon", part.span, key=part.value)
        return tuple(pairs)

    def _apart(self, part: Text, close: re.Match[str]) -> tuple[Text, Node]:
        """The key and the value of `key:value`, which is one text to YAML."""
        key, value = close["key"], close["value"]
        place, along = part.place(close.end("key")), close.start("value")
        self._log.add("yaml-colon-space", place, key=key, value=value)
        return Text(value=key, span=part.place(0, len(key))), Text(
            value=value, span=part.place(along, len(value))
        )

    def _joined(self, key: Text, value: Text, part: Text) -> str:
        if value.value[-1:].isdigit() and part.value[:1].isdigit():
            whole = f"{value.value}.{part.value}"
            self._log.add("yaml-comma-decimal", part.span, key=key.value, whole=whole)
            return whole
        whole = f"{value.value}, {part.value}"
        self._log.add("yaml-comma-split", part.span, part=part.value, key=key.value, whole=quoted(whole))
        return whole

    def _stop(self, code: str, span: Span, **values: Any) -> NoReturn:
        self._log.add(code, span, **values)
        raise _Unreadable

    def _span(self, event: Any, length: int = 1) -> Span:
        return self._source.span(event.start_mark.line, event.start_mark.column, length)

    def _whole(self, start: Any, end: Any) -> Span:
        """A flow collection is meant as a whole; a block one by its first character."""
        return self._span(start, self._length(self._extent(start, end)) if start.flow_style else 1)

    def _extent(self, start: Any, end: Any) -> Extent:
        first, last = start.start_mark, end.end_mark
        return Extent(first.line, first.column, last.line, last.column)

    def _length(self, extent: Extent) -> int:
        """How much of the extent stands on its first line."""
        whole_line = len(self._source.line(extent.line).rstrip())
        end = extent.end_column if extent.end_line == extent.line else whole_line
        return max(end - extent.column, 1)

    def _marked(self, event: Any) -> Span:
        return self._span(event, len(self._mark(event)))

    def _mark(self, event: Any) -> str:
        """The alias, anchor or tag as written."""
        found = _WORD.match(self._source.line(event.start_mark.line), event.start_mark.column)
        return found.group() if found else ""
