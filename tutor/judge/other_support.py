"""Is the wrong value of a reaction what another support does in its direction: V_A = 13 where V_B is 13?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from tutor.judge.about import Value
from tutor.judge.desk import Desk
from tutor.judge.kind import Case
from tutor.judge.same import are_same
from tutor.judge.typed import TypedEquation
from tutor.judge.value_words import OF_OTHER_SUPPORT
from tutor.judge.verdict import Mistake, Verdict


def of_other_support(
    desk: Desk, about: Value, verdict: Verdict, lines: Sequence[TypedEquation]
) -> Verdict:
    """A verdict on a wrong value that nothing explains; that of another support, where it is that one's.

    Where a line that stands has the reaction, the value is held against that line alone.
    """
    unexplained = verdict.kind == "wrong" and verdict.mistakes[0].code == "arithmetic"
    reaction, value = desk.problem.reaction.get(about.unknown), verdict.value
    if not unexplained or reaction is None or not value:
        return verdict
    if any(about.unknown in line.names for line in lines):
        return verdict
    values, along = desk.values(), reaction.direction
    level = min(abs(along.x), abs(along.y)) == 0.0
    for name, other in desk.problem.reaction.items():
        shared = other.direction.x * along.x + other.direction.y * along.y
        elsewhere = other.joint != reaction.joint and (level or are_same(abs(shared), 1.0))
        if elsewhere and are_same(abs(value), abs(values[name] * shared)):
            case = Case(desk.problem, about, about.unknown)
            look, reason, place = (
                said.format(thing=case.thing, subject=case.subject) for said in OF_OTHER_SUPPORT
            )
            told = Mistake("carried", about.unknown, look, reason, place)
            return replace(verdict, text=look, mistakes=(told,))
    return verdict
