"""What number did somebody write, exactly?"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from tutor.notation.elements.tree import Binary, Node, Number, Span, to_sympy


@dataclass(frozen=True)
class Exact:
    """A constant without unit, as it was written.

    `value` is the float beside it; `fraction` is the exact value where it is rational, else None;
    `tree` is the parsed expression of a surd or a function ("5*sqrt(3)/2"), None for a plain number.
    """

    text: str
    value: float
    fraction: Fraction | None = None
    tree: Node | None = None

    @classmethod
    def of(cls, number: int | Fraction) -> Exact:
        """The exact rational `number`."""
        fraction = Fraction(number)
        return cls(str(fraction), float(fraction), fraction)

    def sympy(self) -> Any:
        """The number as an exact sympy expression (sympy is imported on first use)."""
        import sympy

        if self.fraction is not None:
            return sympy.Rational(self.fraction.numerator, self.fraction.denominator)
        assert self.tree is not None
        return to_sympy(self.tree)

    def minus(self, other: Exact) -> Exact:
        """The difference, exact where both are."""
        text = f"{self.text} - ({other.text})"
        if self.fraction is not None and other.fraction is not None:
            difference = self.fraction - other.fraction
            return Exact(text, float(difference), difference)
        tree = Binary("-", self._node(), other._node(), Span(0, 0))
        return Exact(text, self.value - other.value, None, tree)

    def less(self, other: Exact) -> float:
        """The value of `minus`, without the rest of it."""
        one, two = self.fraction, other.fraction
        if one is None or two is None or (_in_float(one) and _in_float(two)):
            return self.value - other.value
        return float(one - two)

    def _node(self) -> Node:
        if self.fraction is not None:
            return Number(self.fraction, Fraction(0), Span(0, 0))
        assert self.tree is not None
        return self.tree


def _in_float(fraction: Fraction) -> bool:
    """Whether a float holds the number itself, with room to spare for sums."""
    below = fraction.denominator
    return below <= 1024 and not below & (below - 1) and abs(fraction.numerator) < 2**40
