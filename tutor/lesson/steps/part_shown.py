"""Of which part of the truss is a line that no heading names, and that is no sum of one joint?

Such is the sum of two joints at once, or that of a section which the student sees and does not say.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from tutor.judge import Equation, Judge
from tutor.judge.about import equation_of
from tutor.judge.independent import adds_something
from tutor.judge.nearest import plainly, right_for
from tutor.judge.typed import typed_equation
from tutor.judge.worked import equation_before_value
from tutor.lesson.state import State
from tutor.lesson.steps.headings import value_named
from tutor.lesson.steps.section import sums_offered
from tutor.notation import Unreadable
from tutor.statics import cut_around, section_through, sections

MOST_MEMBERS = 40
"""In a larger truss no part is looked for: there are too many."""


def part_shown(state: State, text: str, desk: Judge) -> tuple[str, ...]:
    """The joints of the part that a line with an unknown force is right for; empty where there is none.

    Of several it is one that says something new, and that the line is as it is written, with the fewest
    joints.
    """
    line = desk.read(text)
    reading = equation_before_value(line)
    if (
        isinstance(line, Unreadable)
        or isinstance(reading, Unreadable)
        or line.label is not None
        or value_named(line) is not None
        or len(state.problem.members) > MOST_MEMBERS
    ):
        return ()
    said = typed_equation(reading)
    right = right_for(said, state.problem, state.own, _sums(state, said.names))
    plain = plainly(said, state.problem, state.own, right)

    def unlikely(about: Equation) -> tuple[bool, bool, int]:
        adds = adds_something(state.problem, about, state.standing)
        return not adds, about not in plain, len(about.part)

    return min(right, key=unlikely).part if right else ()


def _sums(state: State, names: frozenset[str]) -> Iterator[Equation]:
    """The sums of parts whose open forces are all in a line, and one at least of the forces cut."""
    known = state.result.keys()
    if not names - known:
        return
    for part in _parts(state, names - known):
        for about in sums_offered(replace(state, part=part)):
            acting = {n for n in equation_of(state.problem, about).linear if n is not None}
            if acting - known == names - known and names <= acting:
                yield about


def _parts(state: State, names: frozenset[str]) -> Iterator[tuple[str, ...]]:
    """The parts that a section leaves which cuts one of these members, and those of two joints."""
    problem, known = state.problem, state.result.keys()
    for found in sections(problem, known):
        if names & set(found.cut):
            yield from (part for part in found.parts if len(part) > 1)
    for member in problem.members:
        cut = cut_around(problem, (member.start, member.end))
        if names & set(cut) and (found := section_through(problem, cut)).divides:
            yield found.part_with(member.start)
