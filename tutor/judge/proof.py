"""Is a line, taken to the letter, exactly the true equation? The slow way, in sympy.

The judge answers in floats and intervals; this is the proof beside it. Both must agree on every
line without rounded numbers: a law in the tests holds them together.
"""

from __future__ import annotations

from typing import Any

from tutor.judge.about import Equation, equation_of
from tutor.judge.known_values import KnownValues
from tutor.model import Problem
from tutor.notation import Reading
from tutor.statics import symbolic


def proves(problem: Problem, about: Equation, reading: Reading, own: KnownValues) -> bool | None:
    """Whether the line is a nonzero multiple of the true equation, term by term.

    Only symbols are compared: values put in for unknowns are not looked up, so the line must have
    every unknown as a symbol. None where a typed number may have been rounded, because then there
    is nothing to prove.
    """
    if any(term.radius > 0.0 for term in reading.terms):
        return None
    true = {
        name: value if name is None else _signed(own, name, value)
        for name, value in symbolic(equation_of(problem, about), problem).items()
    }
    typed = reading.exact_form()
    names = [
        n for n in {*true, *typed} if not _is_zero(true.get(n, 0)) or not _is_zero(typed.get(n, 0))
    ]
    if not names:
        return True
    anchors = [n for n in names if not _is_zero(true.get(n, 0))]
    if not anchors or _is_zero(typed.get(anchors[0], 0)):
        return False
    anchor = anchors[0]
    return all(
        _is_zero(typed.get(n, 0) * true[anchor] - true.get(n, 0) * typed[anchor]) for n in names
    )


def _signed(own: KnownValues, name: str, value: Any) -> Any:
    return -value if own.sign(name) < 0 else value


def _is_zero(value: Any) -> bool:
    """Whether an exact number is zero: by its value to fifty figures, then by algebra."""
    import sympy  # here, not at the top: the first frame must not wait for sympy

    number = sympy.Integer(0) + value
    if number.is_Rational:
        return bool(number == 0)
    if abs(number.evalf(50)) > sympy.Rational(1, 10**40):
        return False
    return bool(sympy.simplify(number) == 0)
