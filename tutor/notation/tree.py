"""What does a typed expression look like, term by term? An immutable tree with text spans."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Any, Literal


@dataclass(frozen=True)
class Span:
    """Columns `start` to `end` (exclusive, from 0) in the text as it was typed."""

    start: int
    end: int


@dataclass(frozen=True)
class Number:
    """A number as typed; `radius` is half its last place where it may have been rounded, else 0."""

    value: Fraction
    radius: Fraction
    span: Span


@dataclass(frozen=True)
class Name:
    """An unknown, by its one name."""

    name: str
    span: Span


@dataclass(frozen=True)
class Pi:
    span: Span


@dataclass(frozen=True)
class Unit:
    """A unit factor, e.g. "kN", "m" or "kN*m"."""

    unit: str
    span: Span


@dataclass(frozen=True)
class Call:
    """A function of one argument; `name` is one of sin, cos, tan, asin, acos, atan, sqrt."""

    name: str
    argument: Node
    span: Span


@dataclass(frozen=True)
class Negative:
    inner: Node
    span: Span


@dataclass(frozen=True)
class Binary:
    operator: Literal["+", "-", "*", "/", "^"]
    left: Node
    right: Node
    span: Span


Node = Number | Name | Pi | Unit | Call | Negative | Binary


def to_sympy(node: Node) -> Any:
    """The exact sympy expression of a constant tree; bare angles are in degrees."""
    raise NotImplementedError
