"""Is a wrong value what another support does, or another member: V_A = 13 where V_B is 13?"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from tutor.judge.about import Value
from tutor.judge.desk import Desk
from tutor.judge.kind import Case
from tutor.judge.same import are_same
from tutor.judge.typed import TypedEquation
from tutor.judge.value_words import OF_OTHER_MEMBER, OF_OTHER_SUPPORT
from tutor.judge.verdict import Mistake, Verdict
from tutor.model import Reaction
from tutor.notation import ValueReading

FEWEST_FIGURES = 3
"""A number of fewer figures is another force's by chance."""


def told_as_anothers(
    desk: Desk, about: Value, verdict: Verdict, lines: Sequence[TypedEquation]
) -> Verdict:
    """A verdict on a wrong value that nothing explains; that of another force, where it is that one's.

    Where a line that stands has the force, the value is held against that line alone.
    """
    unexplained = verdict.kind == "wrong" and verdict.mistakes[0].code == "arithmetic"
    value = verdict.value
    if not unexplained or not value or any(about.unknown in line.names for line in lines):
        return verdict
    reaction = desk.problem.reaction.get(about.unknown)
    if reaction is not None:
        sizes, words = _of_supports(desk, reaction), OF_OTHER_SUPPORT
    else:
        enough = _has_figures(verdict)
        sizes, words = _of_members(desk, about.unknown) if enough else iter(()), OF_OTHER_MEMBER
    if not any(are_same(abs(value), abs(size)) for size in sizes):
        return verdict
    case = Case(desk.problem, about, about.unknown)
    look, reason, place = (said.format(thing=case.thing, subject=case.subject) for said in words)
    told = Mistake("carried", about.unknown, look, reason, place)
    return replace(verdict, text=look, mistakes=(told,))


def _has_figures(verdict: Verdict) -> bool:
    reading = verdict.reading
    figures = reading.figures if isinstance(reading, ValueReading) else None
    return figures is not None and figures >= FEWEST_FIGURES


def _of_supports(desk: Desk, reaction: Reaction) -> Iterator[float]:
    """What the other supports do in the direction of a reaction."""
    values, along = desk.values(), reaction.direction
    level = min(abs(along.x), abs(along.y)) == 0.0
    for name, other in desk.problem.reaction.items():
        shared = other.direction.x * along.x + other.direction.y * along.y
        if other.joint != reaction.joint and (level or are_same(abs(shared), 1.0)):
            yield values[name] * shared


def _of_members(desk: Desk, unknown: str) -> Iterator[float]:
    """What the other members carry."""
    values = desk.values()
    return (values[name] for name in desk.problem.member if name != unknown)
