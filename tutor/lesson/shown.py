"""Does a line of numbers alone show the student's values, or would it hold whatever they were?"""

from __future__ import annotations

import re
from math import isclose

from tutor.judge import Judge, LineAbout, in_words
from tutor.judge.about import equation_of
from tutor.lesson.state import State
from tutor.notation import Unreadable, read_equation

NUMBER = re.compile(r"\d+(?:\.\d+)?")
NO_VALUES = (
    "This does not show your values: put each of them into {equation}, with its factor and sign."
)


def shows_values(state: State, text: str, desk: Judge, about: LineAbout) -> bool:
    """Whether a line is more than a multiple by chance: "1 = 1" is one of any two equal forces.

    A line of numbers alone has to hold the student's values, or what they add to the sum.
    """
    reading = read_equation(text, desk.names)
    if isinstance(reading, Unreadable) or reading.names:
        return True
    acting = [term for term in equation_of(state.problem, about).terms if term.coefficient != 0.0]
    open_still = [t for t in acting if t.force.size is None and t.force.name not in state.result]
    if open_still:
        return True
    parts = sum(abs(part) for part in parts_of(state, about))
    typed = sum(abs(term.value) for term in reading.terms)
    if abs(typed - parts) <= state.problem.tolerance.remark * parts:
        return True
    sizes = [t.force.size or state.result[t.force.name].value for t in acting]
    numbers = [float(n) for n in NUMBER.findall(text.replace(",", "."))]
    return all(any(isclose(abs(s), n, rel_tol=0.005) for n in numbers) for s in sizes if s)


def parts_of(state: State, about: LineAbout) -> list[float]:
    """What each force adds to an equation with the student's values, zeros left out."""
    parts = []
    for term in equation_of(state.problem, about).terms:
        if term.coefficient != 0.0:
            size = 1.0 if term.force.size is not None else state.signed(term.force.name)
            parts.append(term.coefficient * size)
    return [part for part in parts if part != 0.0]


def shows_nothing(about: LineAbout) -> str:
    """What is said of a line that holds, but shows no values."""
    return NO_VALUES.format(equation=in_words(about))
