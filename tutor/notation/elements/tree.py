"""What does a typed expression look like, term by term? An immutable tree with text spans."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from fractions import Fraction
from typing import Any, Literal

from tutor.notation.elements.fact import fact


@fact
class Span:
    """Columns `start` to `end` (exclusive, from 0) in the text as it was typed."""

    start: int
    end: int


@fact
class Number:
    """A number as typed; `radius` is half its last place where it may have been rounded, else 0."""

    value: Fraction
    radius: Fraction
    span: Span


Axis = Literal["x", "y"]


@fact
class Share:
    """How much of a force lies along an axis: the size of its direction cosine.

    `square` is the square of it exactly, None where it is irrational or not known; `backward` says
    that the force's own arrow points to the left, or down. `signed` takes the component as positive
    to the right and up instead of along the force's arrow.
    """

    axis: Axis
    value: float
    square: Fraction | None = None
    backward: bool = False
    signed: bool = False

    @property
    def factor(self) -> float:
        """What the force is multiplied by."""
        return -self.value if self.signed and self.backward else self.value


@fact
class Name:
    """An unknown, by its one name; `share` says which component of it was typed, if one was."""

    name: str
    span: Span
    share: Share | None = None


@fact
class Pi:
    span: Span


@fact
class Unit:
    """A unit factor: "kN", "m", "kN*m", and for angles "deg" or "rad"."""

    unit: str
    span: Span


@fact
class Call:
    """A function of one argument; `name` is one of sin, cos, tan, asin, acos, atan, sqrt."""

    name: str
    argument: Node
    span: Span


@fact
class Negative:
    inner: Node
    span: Span


@fact
class Binary:
    operator: Literal["+", "-", "*", "/", "^"]
    left: Node
    right: Node
    span: Span


Node = Number | Name | Pi | Unit | Call | Negative | Binary


def with_span(node: Node, span: Span) -> Node:
    """The same node with another span (brackets around an expression belong to its text)."""
    if isinstance(node, Name):
        return Name(node.name, span, node.share)
    kind: Callable[..., Node] = type(node)
    fields = type(node).__match_args__[:-1]
    return kind(*[getattr(node, field) for field in fields], span)


def moved(node: Node, place: Callable[[Span], Span]) -> Node:
    """The same tree with every span put where `place` says."""
    span = place(node.span)
    match node:
        case Binary(operator, left, right):
            return Binary(operator, moved(left, place), moved(right, place), span)
        case Negative(inner):
            return Negative(moved(inner, place), span)
        case Call(name, argument):
            return Call(name, moved(argument, place), span)
        case _:
            return with_span(node, span)


def children(node: Node) -> tuple[Node, ...]:
    """The nodes directly below `node`, from left to right."""
    if isinstance(node, Binary):
        return node.left, node.right
    if isinstance(node, Negative):
        return (node.inner,)
    if isinstance(node, Call):
        return (node.argument,)
    return ()


def within(node: Node) -> Iterator[Node]:
    """`node` and all nodes below it, each before those below it."""
    yield node
    for child in children(node):
        yield from within(child)


def has(node: Node, *kinds: type) -> bool:
    """Whether `node` or one below it is of one of these kinds."""
    return any(isinstance(each, kinds) for each in within(node))


def to_sympy(
    node: Node, size: Callable[[str], Fraction] | None = None, degrees: bool = True
) -> Any:
    """The exact sympy expression of a constant tree; bare angles are in degrees.

    `size` gives a force or length unit in the problem's own; a tree without such units needs none.
    With `degrees` false, bare angles are in radians. Decimals are the rationals they spell,
    whatever their rounding. Raises TypeError for a tree with a name, or a unit and no `size`.
    """
    import sympy  # slow to import, and most lines are judged without it

    half_turn = sympy.Integer(180) if degrees else sympy.pi

    def rational(number: Fraction) -> Any:
        return sympy.Rational(number.numerator, number.denominator)

    def convert(node: Node) -> Any:
        match node:
            case Number(value):
                return rational(value)
            case Pi():
                return sympy.pi
            case Unit("deg"):
                return half_turn / 180
            case Unit("rad"):
                return half_turn / sympy.pi
            case Unit(unit) if size is not None:
                return rational(size(unit))
            case Negative(inner):
                return -convert(inner)
            case Call("sqrt", argument):
                return sympy.sqrt(convert(argument))
            case Call("sin" | "cos" | "tan" as name, argument):
                return getattr(sympy, name)(convert(argument) * sympy.pi / half_turn)
            case Call(name, argument):
                return getattr(sympy, name)(convert(argument)) * half_turn / sympy.pi
            case Binary(operator, left, right):
                return _SYMPY_OPERATORS[operator](convert(left), convert(right))
            case _:
                raise TypeError(f"not a constant: {node}")

    return convert(node)


_SYMPY_OPERATORS: Mapping[str, Callable[[Any, Any], Any]] = {
    "+": lambda left, right: left + right,
    "-": lambda left, right: left - right,
    "*": lambda left, right: left * right,
    "/": lambda left, right: left / right,
    "^": lambda left, right: left**right,
}
