"""Does a line or a value follow from what the student wrote before and was told is wrong?

What follows from an own slip is not called another one: it is said where the slip was made.
"""

from __future__ import annotations

from dataclasses import replace

from tutor.judge import Along, Equation, Fx, Fy, Judge, M
from tutor.judge.follow import from_lines
from tutor.judge.headings import equation_in_words
from tutor.judge.known_values import KnownValue, KnownValues, signed
from tutor.judge.same import SAME
from tutor.judge.typed import typed_equation
from tutor.judge.worked import equation_before_value
from tutor.lesson.state import State, Try
from tutor.lesson.steps.headings import value_named
from tutor.notation import Unreadable, ValueReading, value_of

FROM_LINE = "This value follows from your {line}, which is not right yet: mend that line first."
FROM_VALUE = "With {name} as your {line} gives it this line holds, but that line is not right yet: mend it first."
MOST_TRIES = 24
Given = dict[str, tuple[KnownValue, Equation]]


def from_refused_line(state: State, desk: Judge, unknown: str, text: str) -> str:
    """What is said of a value that a refused line of the student's gives; "" where none does."""
    value = _typed(state, desk, unknown, text)
    given = _given_by_refused(state, desk).get(unknown)
    if value is None or given is None:
        return ""
    own, about = given
    if abs(own.value - value) > max(SAME * abs(value), own.radius) + 1e-9:
        return ""
    return FROM_LINE.format(line=equation_in_words(state.problem, about))


def from_refused_values(state: State, desk: Judge, about: Equation, text: str) -> str:
    """What is said of a line that holds with what a refused one gives; "" where it does not."""
    if isinstance(equation_before_value(desk.read(text)), Unreadable):
        return ""
    for name, (value, source) in reversed(_given_by_refused(state, desk).items()):
        verdict = desk.judge(about, text, _with(state.own, {name: value}))
        if source != about and verdict.right and not verdict.restates:
            line = equation_in_words(state.problem, source)
            return FROM_VALUE.format(name=name, line=line)
    return ""


def _given_by_refused(state: State, desk: Judge) -> Given:
    """What each unknown without a value comes to by a refused line, and which sum that line is."""
    found: Given = {}
    for tried in state.tries[-MOST_TRIES:]:
        about = tried.at
        if tried.verdict == "wrong" and isinstance(about, Fx | Fy | Along | M):
            own = _with(state.own, {name: value for name, (value, _) in found.items()})
            given = _comes_to(state, desk, own, tried)
            if given is not None:
                found[given[0]] = given[1], about
    return found


def _comes_to(
    state: State, desk: Judge, own: KnownValues, tried: Try
) -> tuple[str, KnownValue] | None:
    """The one unknown that a refused line leaves open, and its value under the student's own sense."""
    line = desk.read(tried.text)
    reading = equation_before_value(line)
    if isinstance(reading, Unreadable) or value_named(line) is not None:
        return None
    typed = typed_equation(reading)
    open_names = [name for name in typed.names if name not in own.known]
    if len(open_names) != 1:
        return None
    name = open_names[0]
    for given in from_lines(state.problem, name, own, [typed]):
        value = own.sign(name) * given.value
        return name, KnownValue(value, max(given.carried, SAME * abs(value)))
    return None


def _with(own: KnownValues, more: dict[str, KnownValue]) -> KnownValues:
    return replace(own, known={**more, **own.known})


def _typed(state: State, desk: Judge, unknown: str, text: str) -> float | None:
    """A typed value under the student's own sense, None where it is none."""
    reading = value_of(desk.read(text))
    if not isinstance(reading, ValueReading) or reading.name not in (None, unknown):
        return None
    sign = state.own.sign(unknown)
    return sign * signed(state.problem, unknown, reading.value, reading.letter, reading.sense, sign)
