"""What does a text say that it is: a value, or which equation?"""

from __future__ import annotations

from tutor.judge import Along, Equation, Judge, M
from tutor.judge.about import Value, equation_of, from_text
from tutor.judge.headings import snapped
from tutor.model import Problem
from tutor.notation import Unreadable, read_value

FARTHEST = 1e9


def value_named(desk: Judge, text: str) -> str | None:
    """The unknown that a text such as "B_y = 4 kN" gives a value to, or None."""
    if text.count("=") != 1:
        return None
    reading = read_value(text, desk.names, None)
    return None if isinstance(reading, Unreadable) else reading.name


def is_bare_value(desk: Judge, text: str) -> bool:
    """Whether a text is a number without a name, such as "28.3" or "28.3 kN C"."""
    return "=" not in text and not isinstance(read_value(text, desk.names, None), Unreadable)


def is_sum(desk: Judge, text: str) -> bool:
    """Whether more than one number stands for the value: "A_x = 12 - 5", but not "A_x = 12 kN"."""
    reading = read_value(text, desk.names, None)
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
