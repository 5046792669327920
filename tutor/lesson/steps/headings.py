"""What does a text say that it is: a value, or which equation?"""

from __future__ import annotations

from tutor.judge import Along, Equation, M
from tutor.judge.about import Value, equation_of, from_text
from tutor.judge.headings import snapped
from tutor.model import Problem
from tutor.notation import Line, Unreadable, value_of

FARTHEST = 1e9


Typed = Line | Unreadable


def value_named(line: Typed) -> str | None:
    """The unknown that a line such as "B_y = 4 kN" gives a value to, or None."""
    if isinstance(line, Unreadable) or len(line.steps) > 1 or len(line.result.sides) != 2:
        return None
    reading = value_of(line)
    return None if isinstance(reading, Unreadable) else reading.name


def is_bare_value(line: Typed) -> bool:
    """Whether a line is a number without a name, such as "28.3" or "28.3 kN C"."""
    if isinstance(line, Unreadable) or len(line.steps) > 1 or len(line.result.sides) > 1:
        return False
    return not isinstance(value_of(line), Unreadable)


def is_sum(line: Typed) -> bool:
    """Whether more than one number stands for the value: "A_x = 12 - 5", but not "A_x = 12 kN"."""
    reading = value_of(line)
    if isinstance(reading, Unreadable) or reading.letter or reading.sense:
        return False
    return reading.figures is None


def equation_called(problem: Problem, text: str) -> Equation | None:
    """The equation that `as_text` wrote as `text`, or None where the truss has none of that name."""
    try:
        about = from_text(text)
        if isinstance(about, Value):
            return None
        equation_of(problem, about)
    except (ValueError, KeyError):
        return None
    if about.part and (about.joint or not problem.joint.keys() > set(about.part)):
        return None
    if isinstance(about, M):
        near = isinstance(about.at, str) or all(abs(part) <= FARTHEST for part in about.at)
        return about if near and about.joint is None else None
    if isinstance(about, Along):
        if not abs(about.degrees) <= FARTHEST:
            return None
        return about if about.part else snapped(problem, about.degrees, about.joint)
    return about
