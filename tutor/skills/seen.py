"""Which skill does each first answer of a lesson show, and was it there?

Only the first answer at an equation, a value, a support or a member counts, as in the study: what is
tried after a verdict or a hint says less. A mistake counts as avoided where the line is right and the
mistake could have been made in it, and as made where it was named; any other wrong line says nothing
of it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import lru_cache
from typing import NamedTuple

from tutor.judge.about import Equation, Same, Value
from tutor.judge.edits import turning_code
from tutor.judge.known_values import NOTHING_OWN, KnownValues
from tutor.judge.mistakes import KINDS
from tutor.judge.true_equation import TrueEquation, TrueTerm
from tutor.lesson.place import AtSupport, NoForce, Place, Question
from tutor.lesson.state import State, Try
from tutor.lesson.steps import STEP
from tutor.skills.of_lines import of_line
from tutor.skills.table import CLAIMED, NO_SKILL, OF_VALUES, skills

AS_GOOD_AS = 1e-6


class Seen(NamedTuple):
    """One first answer as evidence of one skill: its code, when, and whether the skill was shown."""

    skill: str
    time: float
    right: bool


def seen_in(state: State) -> tuple[Seen, ...]:
    """The evidence that a lesson holds, in its order."""
    return tuple(_seen(state, first_answers(state.tries)))


def first_answers(tries: Iterable[Try]) -> tuple[Try, ...]:
    """The first try at each place, where it was the student's own: what was shown first is none."""
    firsts: dict[Place, Try] = {}
    for each in tries:
        firsts.setdefault(each.at, each)
    return tuple(each for each in firsts.values() if each.verdict != "shown")


def _seen(state: State, tries: Iterable[Try]) -> Iterator[Seen]:
    for each in tries:
        right = each.verdict == "right"
        yield from (Seen(code, each.time, right) for code in shown_by(state, each))


def shown_by(state: State, answer: Try) -> tuple[str, ...]:
    """The skills of which a first answer is evidence: all were there if it is right, else all lacked.

    A question with an answer of its own shows its step alone.
    """
    step = step_shown(answer)
    steps = (step,) if step else ()
    if answer.verdict == "right":
        avoided = may_be_made(state, answer.at) | _of_earlier_values(state, answer)
        return (*steps, *sorted(avoided))
    if isinstance(answer.at, Question) and answer.at.name not in CLAIMED:
        return steps  # what is wrong with a count or a reason says nothing of lines and values
    return (*steps, *(code for code in dict.fromkeys(answer.codes) if code in skills()))


def step_shown(answer: Try) -> str:
    """The step whose skill an answer shows, by its place; empty where it shows none."""
    if isinstance(answer.at, Value | NoForce):
        return "step values" if isinstance(answer.at, Value) else "step zero"
    if answer.step in STEP and STEP[answer.step].skill:
        return STEP[answer.step].skill
    if not isinstance(answer.at, Equation):
        return ""
    return "step joints" if answer.at.joint else "step reactions"


def may_be_made(state: State, place: Place) -> frozenset[str]:
    """The mistakes that can be made at a place of a lesson."""
    match place:
        case AtSupport():
            return CLAIMED["support"]
        case NoForce():
            return CLAIMED["zero"]
        case Question(name=name):
            return CLAIMED.get(name, frozenset())
    if isinstance(place, Value):
        member = place.unknown in state.problem.member
        return OF_VALUES - NO_SKILL - (frozenset() if member else {"tension-compression"})
    drawn = tuple(sorted((n, s) for n, s in state.senses.items() if n in state.problem.reaction))
    return _in_line(Same(state.problem), place, drawn)


def _of_earlier_values(state: State, answer: Try) -> frozenset[str]:
    """The mistake that can be made where an own earlier value with a minus goes into a line."""
    if not isinstance(answer.at, Equation):
        return frozenset()
    negative = [result.unknown for result in state.results if result.value < 0.0]
    if not negative:
        return frozenset()
    acting = _acting(Same(state.problem), answer.at)
    places = {Value(name) for name in negative if name in acting}
    earlier = any(made.at in places and made.time < answer.time for made in state.tries)
    return frozenset({"minus"}) if earlier else frozenset()


@lru_cache(maxsize=8192)
def _acting(same: Same, about: Equation) -> frozenset[str]:
    """The unknowns that add something to an equation."""
    line = TrueEquation(same.problem, about, NOTHING_OWN)
    return frozenset(name for name, term in line.unknowns.items() if term.true != 0.0)


@lru_cache(maxsize=8192)
def _in_line(same: Same, about: Equation, drawn: tuple[tuple[str, str], ...]) -> frozenset[str]:
    """The mistakes that turn some term of an equation into a wrong one, or the line as a whole."""
    line = TrueEquation(same.problem, about, KnownValues(dict(drawn), {}))
    found = set(of_line(line))
    for spot in (*line.unknowns.values(), *line.loads):
        _add_at_spot(found, spot)
    return frozenset(found - NO_SKILL)


def _add_at_spot(found: set[str], spot: TrueTerm) -> None:
    """Add the mistakes that turn this term into a wrong one to those found at others."""
    if spot.true:
        found.add(turning_code(spot))
    for code, kind in KINDS.items():
        if code in found or code in NO_SKILL or kind.variants is None:
            continue
        for wrong in kind.variants(spot):
            if abs(wrong - spot.per_unit) > AS_GOOD_AS:
                found.add(code)
                break
