"""What is asked of a line that ends in a value without its sense, or in one told of a noun that may be another force?"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from tutor.judge.about import Asked, Value
from tutor.judge.verdict import Verdict
from tutor.judge.way_unread import may_say_the_way, only_of_the_way, size_alone
from tutor.judge.worked import side_value
from tutor.notation import Line
from tutor.notation.elements.same import are_same
from tutor.notation.elements.tree import Span

OF_WHICH = (
    "What stands before “{words}” is right, but this is not the value that it finds. "
    "If it is the value of another force, name that one."
)

Judged = Callable[[Line], Verdict]


def asked_of(about: Asked, line: Line, verdict: Verdict, judged: Judged) -> Verdict | None:
    """What is asked instead of a verdict that is not right; None where that stands.

    Behind an equation that stands the size of a value is enough. A noun with the size of the value before it means its force.
    """
    asked = may_say_the_way(about, line, verdict)
    if asked is None and _of_a_noun(line):
        if isinstance(about, Value) and only_of_the_way(verdict) and _of_the_same_size(line):
            return None
        return _said_of_a_noun(about, line, judged)
    if asked is None or isinstance(about, Value) or size_alone(line) is None:
        return asked
    before, _ = _without_last(line)
    again = asked if before is None else judged(before)
    return again if again.right else asked


def asks_whose(line: Line, verdict: Verdict) -> bool:
    """Whether a verdict asks whose value it is that a line tells of a noun."""
    return verdict.kind == "undecided" and _of_a_noun(line)


def _of_a_noun(line: Line) -> bool:
    return any(kind == "noun" for kind, _ in line.taken)


def _of_the_same_size(line: Line) -> bool:
    """Whether the last value of a line is as large as the number before it."""
    numbers = (side for step in line.steps for side in step.sides if side.numeric)
    sizes = [abs(side_value(side)) for side in numbers]
    return len(sizes) > 1 and are_same(*sizes[-2:])


def _said_of_a_noun(about: Asked, line: Line, judged: Judged) -> Verdict | None:
    before, told = _without_last(line)
    if before is None:
        return None
    again = judged(before)
    if not again.right:
        return None if isinstance(about, Value) else again
    words = line.text[told.start : told.end]
    return Verdict("undecided", OF_WHICH.format(words=words), about=about, reading=again.reading)


def _without_last(line: Line) -> tuple[Line | None, Span]:
    """The line without the value that it ends in, which is passed over, and the place of that value."""
    *steps, last = line.steps
    told = last.sides[-1].span
    passed = last.span
    if len(last.sides) > 2:
        steps, passed = [*steps, replace(last, sides=last.sides[:-1])], told
    if not steps:
        return None, told
    nouns = [span for kind, span in line.taken if kind == "noun"]
    passed = Span(nouns[-1].start, max(nouns[-1].end, told.end)) if nouns else passed
    taken = tuple(each for each in line.taken if each[0] != "noun")
    return replace(line, steps=tuple(steps), passed=(*line.passed, passed), taken=taken), told
