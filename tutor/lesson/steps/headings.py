"""What does a text say that it is: a value, or which equation?"""

from __future__ import annotations

from collections.abc import Collection

from tutor.judge import Along, Equation, Judge, M
from tutor.judge.about import Value, equation_of, from_text, is_asked
from tutor.judge.headings import along_in_words, member_along, sum_along
from tutor.judge.worked import named, side_value, value_at_end, value_given
from tutor.model import Problem
from tutor.notation import (
    Label,
    Line,
    Names,
    Unreadable,
    heading_begun,
    read_line,
    value_of,
)

Typed = Line | Unreadable


def as_spoken(desk: Judge, line: Typed) -> Typed:
    """A line, or where it cannot be read as a whole the clauses of it that can."""
    return desk.read_in_part(line.text) or line if isinstance(line, Unreadable) else line


def value_named(line: Typed, known: Collection[str] = ()) -> str | None:
    """The unknown that a line such as "B_y = 4 kN" or "B_y = 12/3 = 4" gives a value to, or None.

    Every statement of the line has to be about it; `known` are the unknowns with a value.
    """
    if isinstance(line, Unreadable):
        return None
    names = {value_given(step) for step in named(line, known).steps}
    return names.pop() if len(names) == 1 else None


def value_behind(line: Typed, known: Collection[str]) -> str | None:
    """The unknown whose value stands behind its equation: "0.6 AD = 12 => AD = 20"; else None."""
    return None if isinstance(line, Unreadable) else value_at_end(named(line, known), known)


def is_bare_value(line: Typed) -> bool:
    """Whether a line is a number without a name, such as "28.3" or "28.3 kN C"."""
    if isinstance(line, Unreadable) or len(line.steps) > 1 or len(line.result.sides) > 1:
        return False
    return not isinstance(value_of(line), Unreadable)


def is_worked_number(line: Typed) -> bool:
    """Whether a line is a number with its working and no name: "40 - 11.7 = 28.3", not "40 - 40 = 0"."""
    if isinstance(line, Unreadable) or len(line.steps) > 1 or line.label is not None:
        return False
    sides = line.result.sides
    return len(sides) > 1 and all(side.numeric and side_value(side) for side in sides)


def is_sum(line: Typed) -> bool:
    """Whether more than one number stands for the value: "A_x = 12 - 5", but not "A_x = 12 kN"."""
    reading = value_of(line)
    if isinstance(reading, Unreadable) or reading.letter or reading.sense:
        return False
    return reading.figures is None


def label_of(text: str, names: Names) -> Label | None:
    """What the heading of a text names, also where the rest of it cannot be read; else None."""
    line = read_line(text, names)
    if not isinstance(line, Unreadable):
        return line.label
    return heading_begun(text, names)


def offered_along(problem: Problem, about: Along) -> str:
    """ "ΣF perpendicular to EF, 45°" where a member at the joint lies so; else "ΣF along 45°"."""
    degrees = "" if member_along(problem, about) is None else f", {about.degrees:.4g}°"
    return f"ΣF {along_in_words(problem, about)}{degrees}"


def equation_called(problem: Problem, text: str) -> Equation | None:
    """The equation that `as_text` wrote as `text`, or None where the truss has none of that name."""
    try:
        about = from_text(text)
        if not is_asked(about) or isinstance(about, Value):
            return None
        equation_of(problem, about)
    except (ValueError, KeyError):
        return None
    if about.part and (about.joint or not problem.joint.keys() > set(about.part)):
        return None
    if isinstance(about, M):
        return about if about.joint is None else None
    if isinstance(about, Along):
        return about if about.part else sum_along(problem, about.degrees, about.joint)
    return about
