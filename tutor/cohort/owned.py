"""How much of a lesson is the student's own, and how much was shown at the board?"""

from __future__ import annotations

from dataclasses import dataclass

from tutor.cohort.facts import HowFar
from tutor.judge import Value
from tutor.lesson import Lesson
from tutor.lesson.place import NoForce, Place
from tutor.lesson.state import State
from tutor.statics import forces_follow

WATCHED = 0.9
"""From this share shown on, a lesson was watched; our own judgement."""


@dataclass(frozen=True)
class Owned:
    """What one lesson counts for: how far it got; of the `of` forces asked for, how many the student
    `found` and how many were `shown`."""

    state: HowFar
    found: int
    shown: int
    of: int


def owned(lesson: Lesson) -> Owned:
    """What a lesson that was begun counts for. Forces that the problem gives are asked of nobody."""
    state = lesson.state
    given = _given(state)
    stands = state.result.keys() - given
    last = _last_answers(lesson)
    shown = {name for name in stands if last.get(name) == "shown"}
    of = asked(lesson)
    if not lesson.done:
        far: HowFar = "begun"
    else:
        share = len(shown) / of if of else _share_shown(lesson)
        far = "watched" if share >= WATCHED else "finished"
    return Owned(far, len(stands - shown), len(shown), of)


def asked(lesson: Lesson) -> int:
    """How many forces a lesson asks for; none where statics does not solve the truss."""
    problem = lesson.problem
    return len(problem.unknowns) - len(_given(lesson.state)) if forces_follow(problem) else 0


def _given(state: State) -> set[str]:
    return {result.unknown for result in state.results if result.how == "given"}


def _last_answers(lesson: Lesson) -> dict[str, str]:
    """Of each force how its value came to stand last: "right" or "shown"."""
    return {
        name: made.verdict
        for made in lesson.state.tries
        if made.verdict in ("right", "shown") and (name := _force(made.at))
    }


def _force(place: Place) -> str:
    match place:
        case Value(unknown=name) | NoForce(member=name):
            return name
    return ""


def _share_shown(lesson: Lesson) -> float:
    """The share of the places answered at which the answer was shown."""
    answered = {
        made.at: made.verdict == "shown"
        for made in lesson.state.tries
        if made.verdict in ("right", "shown")
    }
    return sum(answered.values()) / len(answered) if answered else 0.0
