"""Is what was typed for an equation a result, which shows no equilibrium?"""

from __future__ import annotations

from collections.abc import Sequence

from tutor.judge.about import Equation
from tutor.judge.fit import Fit
from tutor.judge.follow import from_lines, from_standing
from tutor.judge.headings import equation_in_words
from tutor.judge.same import SAME
from tutor.judge.true_equation import TrueEquation
from tutor.judge.typed import TypedEquation
from tutor.judge.verdict import Remark
from tutor.notation import Reading
from tutor.notation.elements.tree import Binary, Negative, Node, Number, Unit

IS_A_VALUE = "This is a value of {name}, and your lines give it; it shows no equilibrium by itself."
NOT_A_LINE = (
    "{name} alone beside a number is a result: it does not show {equation}. Write the equation first, "
    "with every force that counts in it."
)


def is_result(line: TypedEquation, reading: Reading, found: Fit | None, in_sum: bool) -> bool:
    """Whether a line is one force beside one number, and not the equation as the free body gives it.

    In a sum of forces one that stands whole may be what is left when all numbers are added up.
    """
    if len(line.unknowns) != 1 or len(line.constants) > 1:
        return False
    if found is not None and (found.plain or not line.constants):
        return False
    if found is not None and abs(found.scale) == 1.0 and in_sum:
        return False
    (coefficient,) = line.unknowns.values()
    return abs(coefficient.value) == 1.0 and len(coefficient.terms) == 1 and is_bare(reading)


def is_bare(reading: object) -> bool:
    """Whether an equation is a name or a number on each side, with a sign or a unit at most."""
    return isinstance(reading, Reading) and _bare(reading.left) and _bare(reading.right)


def _bare(node: Node) -> bool:
    """Whether a side is a single name or number, with a sign or a unit at most."""
    while True:
        match node:
            case Negative(inner):
                node = inner
            case Binary("*", inner, Unit()):
                node = inner
            case Binary():
                return False
            case _:
                return isinstance(node, Number) or type(node).__name__ == "Name"


def said_of_result(
    line: TypedEquation,
    true: TrueEquation,
    standing: Sequence[Equation],
    lines: Sequence[TypedEquation],
) -> tuple[bool, Remark]:
    """Whether the lines that stand give this value, and what is said of it."""
    ((name, coefficient),) = line.unknowns.items()
    typed = -line.total / coefficient.value * true.own.sign(name)
    problem, own = true.problem, true.own
    possible = [
        *from_lines(problem, name, own, lines),
        *from_standing(problem, name, own, standing),
    ]
    given_by = any(
        abs(typed - right.value) <= right.carried + SAME * abs(right.value) for right in possible
    )
    if given_by:
        return True, Remark("result", IS_A_VALUE.format(name=name))
    return False, Remark(
        "result", NOT_A_LINE.format(name=name, equation=equation_in_words(true.problem, true.about))
    )
