"""How do symbols join into a tree? The grammar is `line.lark`; this builds nodes and complains."""

from __future__ import annotations

import json
from fractions import Fraction
from functools import lru_cache
from pathlib import Path
from typing import Any, cast

from tutor.notation.elements.rational import rational
from tutor.notation.elements.tree import (
    Binary,
    Call,
    Name,
    Negative,
    Node,
    Number,
    Span,
    children,
    has,
    with_span,
)
from tutor.notation.elements.unreadable import Broken
from tutor.notation.formulas.table import Misplaced, ParseTable
from tutor.notation.naming.symbols import OPERANDS, Applied, Symbol

HIGHEST_POWER = 6
_OF_ANGLES = frozenset({"sin", "cos", "tan", "cot", "sec", "csc"})


def parse_sides(symbols: list[Symbol], text: str) -> tuple[Node, ...]:
    """The sides of a chain of = signs, one alone where there is none; raises Broken."""
    return cast(tuple[Node, ...], _parse(symbols, "line", text))


def parse_expression(symbols: list[Symbol], text: str) -> Node:
    """One expression without an = sign; raises Broken."""
    return cast(Node, _parse(symbols, "expression", text))


def _parse(symbols: list[Symbol], start: str, text: str) -> Any:
    end = Symbol("$END", "", len(text), len(text))
    try:
        return _table(start).joined((*symbols, end))
    except Misplaced as misplaced:
        raise _misplaced(symbols, misplaced.index, end) from None


@lru_cache(maxsize=2)
def _table(start: str) -> ParseTable:
    saved = Path(__file__).with_name("line_table.json").read_text("utf-8")
    builder = _Builder()
    return ParseTable.of(json.loads(saved)[start], start, lambda name: getattr(builder, name))


class _Builder:
    """Makes a node of every rule as soon as it is complete; each method takes the rule's parts."""

    def line(self, parts: list[Any]) -> tuple[Node, ...]:
        return parts[0] if isinstance(parts[0], tuple) else (parts[0],)

    def chain(self, parts: list[Any]) -> tuple[Node, ...]:
        before, _, side = parts
        return (*before, side) if isinstance(before, tuple) else (before, side)

    def expression(self, parts: list[Any]) -> Node:
        return cast(Node, parts[0])

    def binary(self, parts: list[Any]) -> Node:
        left, sign, right = parts
        return Binary(sign.value, left, right, Span(left.span.start, right.span.end))

    def beside(self, parts: list[Any]) -> Node:
        left, right = parts
        return Binary("*", left, right, Span(left.span.start, right.span.end))

    def negative(self, parts: list[Any]) -> Node:
        sign, inner = parts
        return Negative(inner, Span(sign.start, inner.span.end))

    def positive(self, parts: list[Any]) -> Node:
        return cast(Node, parts[1])

    def measured(self, parts: list[Any]) -> Node:
        inner, unit = parts
        if isinstance(inner, Name):
            raise Broken("unit", unit.start, unit.end)
        return Binary("*", inner, unit.value, Span(inner.span.start, unit.end))

    def bracket(self, parts: list[Any]) -> Node:
        opened, inner, closed = parts
        return with_span(inner, Span(opened.start, closed.end))

    def call(self, parts: list[Any]) -> Node:
        symbol, argument = parts[:2]
        angle = parts[2] if len(parts) > 2 else None
        applied: Applied = symbol.value
        end = argument.span.end if angle is None else angle.end
        if angle is not None and applied.name in _OF_ANGLES:
            argument = Binary("*", argument, angle.value, Span(argument.span.start, end))
        elif angle is not None and (applied.name == "sqrt" or angle.value.unit == "rad"):
            raise Broken("angle/inverse", symbol.start, end)
        call = _called(applied.name, argument, Span(symbol.start, end))
        if applied.power == 1:
            return call
        power = Number(Fraction(applied.power), Fraction(0), Span(symbol.start, symbol.end))
        return Binary("^", call, power, call.span)

    def power(self, parts: list[Any]) -> Node:
        base, _, exponent = parts[:3]
        span = exponent.span
        if has(exponent, Name):
            raise Broken("power/unknown", span.start, span.end)
        value = rational(exponent)
        if value is None or value.denominator > 2 or abs(value) > HIGHEST_POWER:
            raise Broken("power", span.start, span.end)
        if not isinstance(base, Number) and abs(value) * _highest_power(base) > HIGHEST_POWER:
            raise Broken("power", span.start, span.end)
        exact = Number(value, Fraction(0), span)
        raised = Binary("^", base, exact, Span(base.span.start, span.end))
        return self.measured([raised, parts[3]]) if len(parts) > 3 else raised

    def unclear_power(self, parts: list[Any]) -> Node:
        span = parts[2].span
        raise Broken("ambiguous/power", span.start, span.end)


def _called(name: str, argument: Node, span: Span) -> Node:
    """A function, with the reciprocal ones by sine and cosine."""
    if name not in _RECIPROCAL:
        return Call(name, argument, span)
    above, below = _RECIPROCAL[name]
    top = Call(above, argument, span) if above else Number(Fraction(1), Fraction(0), span)
    return Binary("/", top, Call(below, argument, span), span)


_RECIPROCAL = {"cot": ("cos", "sin"), "sec": ("", "cos"), "csc": ("", "sin")}


def _highest_power(node: Node) -> Fraction:
    """The largest power that powers inside powers reach, so that no number grows without bound."""
    inner = max((_highest_power(child) for child in children(node)), default=Fraction(1))
    if isinstance(node, Binary) and node.operator == "^":
        assert isinstance(node.right, Number)
        return max(abs(node.right.value), Fraction(1)) * _highest_power(node.left)
    return inner


def _misplaced(symbols: list[Symbol], index: int, end: Symbol) -> Broken:
    """What is wrong about the symbol at `index`, which cannot follow the one before it."""
    symbol = symbols[index] if index < len(symbols) else end
    previous = symbols[index - 1] if index else None
    before = previous.type if previous else ""
    start, stop = symbol.start, symbol.end
    said = Span(previous.start, previous.end) if previous else Span(0, 0)
    if symbol.type == "$END" and before == "EQUAL":
        return Broken("empty-side", start, stop, side="right of")
    if symbol.type == "EQUAL" and before in ("", "EQUAL"):
        key = "two-equals" if before else "empty-side"
        return Broken(key, start, stop, side="left of")
    if before == "FUNCTION":
        return Broken("argument", start, stop, before=said)
    if symbol.type == "ANGLE" and before not in ("ANGLE", "UNIT"):
        return Broken("angle/alone", start, stop)
    if before and before not in OPERANDS and before not in ("OPEN", "EQUAL"):
        if symbol.type in ("$END", "CLOSE", "EQUAL"):
            return Broken("unfinished", start, stop, before=said)
        return Broken("operator", start, stop, before=said)
    if before in ("", "OPEN", "EQUAL") and symbol.type in ("TIMES", "OVER", "POWER"):
        return Broken("operator/first", start, stop)
    if symbol.type == "UNIT":
        return Broken("unit", start, stop)
    return Broken("order", start, stop, before=said)
