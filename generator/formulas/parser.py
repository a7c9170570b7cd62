"""Formulas by precedence: comparison, then + and -, then * and /, then a minus before a value."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager

from generator.formulas.tokens import Kind, NotAFormula, Token, tokens_of
from generator.formulas.tree import Argument, Binary, Call, Compare, Formula, Minus, Name, Number
from generator.problems import Problem, ProblemLog, Span
from generator.reading.nodes import Text

MOST_CHARACTERS = 1000
MOST_DEPTH = 30
MOST_NODES = 200

_SUMS, _PRODUCTS = frozenset("+-"), frozenset("*/")
_COMPARISONS = frozenset(("<", "<=", ">", ">=", "==", "!="))


def parse_formula(text: Text, log: ProblemLog) -> Formula | None:
    """The tree of a formula; None when it is not one, with the first fault in the log at its spot.

    Arithmetic, comparison, one dot on a name, and calls whose arguments are all given by place or all by
    name, those by place first. Length, depth and number of nodes are bounded.
    """
    try:
        return _Parser(text).whole()
    except NotAFormula as fault:
        span = text.place(fault.start, fault.end - fault.start)
        log.take(Problem(code=fault.code, span=span, values=fault.values))
        return None


class _Parser:
    """Reads the tokens of one formula from left to right."""

    def __init__(self, text: Text) -> None:
        if len(text.value) > MOST_CHARACTERS:
            raise NotAFormula("formula-long", 0, 1, count=str(len(text.value)), most=str(MOST_CHARACTERS))
        self._text = text
        self._tokens = tuple(tokens_of(text.value))
        self._at, self._depth, self._nodes = 0, 0, 0

    def whole(self) -> Formula:
        """The formula from the first token to the last."""
        if len(self._tokens) == 1:
            raise NotAFormula("formula-empty", 0, 1)
        tree = self._comparison()
        if self._at < len(self._tokens) - 1:
            raise self._surplus()
        return tree

    @property
    def _next(self) -> Token:
        return self._tokens[self._at]

    def _take(self) -> Token:
        token = self._next
        self._at += 1
        return token

    def _takes(self, sign: str) -> bool:
        found = self._next.kind is Kind.SIGN and self._next.text == sign
        self._at += found
        return found

    def _comparison(self) -> Formula:
        begin, left = self._next.start, self._sum()
        if self._next.text not in _COMPARISONS:
            return left
        symbol, right = self._take().text, self._sum()
        if self._next.text in _COMPARISONS:
            raise self._fault("formula-compare-twice", self._next)
        return Compare(symbol=symbol, left=left, right=right, span=self._since(begin))

    def _sum(self) -> Formula:
        return self._chain(_SUMS, self._product)

    def _product(self) -> Formula:
        return self._chain(_PRODUCTS, self._signed)

    def _chain(self, signs: frozenset[str], part: Callable[[], Formula]) -> Formula:
        begin, tree = self._next.start, part()
        while self._next.text in signs:
            symbol, right = self._take().text, part()
            tree = Binary(symbol=symbol, left=tree, right=right, span=self._since(begin))
        return tree

    def _signed(self) -> Formula:
        begin = self._next
        if not self._takes("-"):
            return self._value()
        with self._deeper(begin):
            of = self._signed()
        return Minus(of=of, span=self._since(begin.start))

    def _value(self) -> Formula:
        token = self._take()
        if token.value is not None:
            return Number(value=token.value, text=token.text, span=self._since(token.start))
        if token.kind is Kind.NAME:
            return self._call(token) if self._takes("(") else self._name(token)
        if token.text == "(":
            return self._bracketed(token)
        raise self._no_value(token)

    def _bracketed(self, opened: Token) -> Formula:
        with self._deeper(opened):
            tree = self._comparison()
        self._close(opened)
        return tree

    def _name(self, token: Token) -> Name:
        field = self._field(token) if self._takes(".") else None
        if self._next.text == ".":
            raise self._fault("formula-dots", self._next, name=f"{token.text}.{field}")
        return Name(name=token.text, field=field, span=self._since(token.start))

    def _field(self, token: Token) -> str:
        found = self._take()
        if found.kind is not Kind.NAME:
            raise self._fault("formula-field", found, name=token.text)
        if self._next.text == "(":
            raise self._fault("formula-field-called", self._next, name=f"{token.text}.{found.text}")
        return found.text

    def _call(self, name: Token) -> Call:
        opened = self._tokens[self._at - 1]
        with self._deeper(name):
            arguments = () if self._next.text == ")" else tuple(self._arguments())
        self._close(opened)
        if self._next.text == ".":
            raise self._fault("formula-call-field", self._next, function=name.text)
        return Call(function=name.text, arguments=arguments, span=self._since(name.start))

    def _arguments(self) -> Iterator[Argument]:
        named: set[str] = set()
        while True:
            begin = self._next
            argument = self._argument()
            if argument.name in named:
                raise self._fault("formula-argument-doubled", begin, argument=str(argument.name))
            if argument.name is None and named:
                raise self._fault("formula-argument-unnamed", begin)
            named |= {argument.name} if argument.name else set()
            yield argument
            if not self._takes(","):
                return

    def _argument(self) -> Argument:
        begin, name = self._next, None
        if begin.kind is Kind.NAME and self._tokens[self._at + 1].text == "=":
            name = self._take().text
            self._take()
        return Argument(name=name, tree=self._sum(), span=self._since(begin.start))

    def _close(self, opened: Token) -> None:
        if self._takes(")"):
            return
        if self._next.kind is Kind.END:
            raise self._fault("formula-bracket-unclosed", opened)
        raise self._surplus()

    def _surplus(self) -> NotAFormula:
        """What is wrong with a token that stands where the formula could have ended."""
        token = self._next
        if token.kind is not Kind.SIGN or token.text == "(":
            return self._fault("formula-two-values", token, found=token.text)
        return self._fault(_SURPLUS.get(token.text, "formula-surplus"), token, found=token.text)

    def _no_value(self, token: Token) -> NotAFormula:
        if token.kind is Kind.END:
            last = self._tokens[max(self._at - 2, 0)]
            return self._fault("formula-unfinished", last, last=last.text)
        return self._fault("formula-no-value", token, found=token.text)

    def _fault(self, code: str, token: Token, **values: str) -> NotAFormula:
        return NotAFormula(code, token.start, token.end, **values)

    @contextmanager
    def _deeper(self, token: Token) -> Iterator[None]:
        self._depth += 1
        if self._depth > MOST_DEPTH:
            raise self._fault("formula-deep", token, most=str(MOST_DEPTH))
        yield
        self._depth -= 1

    def _since(self, begin: int) -> Span:
        """The place of a finished node, from `begin` to the last token taken; each node is counted here."""
        self._nodes += 1
        last = self._tokens[self._at - 1]
        if self._nodes > MOST_NODES:
            raise self._fault("formula-large", last, most=str(MOST_NODES))
        return self._text.place(begin, last.end - begin)


_SURPLUS = {
    ")": "formula-bracket-stray",
    ",": "formula-comma-outside",
    "=": "formula-equals",
    ".": "formula-dot-place",
    **dict.fromkeys(_COMPARISONS, "formula-compare-place"),
}
