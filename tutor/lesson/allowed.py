"""What does the student's set allow: which hints, how many tries, and how much is said of a line?

`tutor.model.Rules` says what there is to allow; a problem on its own allows everything.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from tutor.lesson.place import Place
from tutor.lesson.reply import Reply, Say
from tutor.lesson.state import State
from tutor.model.rules import Hints

ALL = 4
"""The level of the last hint, the line itself."""
MOST: Mapping[Hints, int] = {"all": ALL, "no lines": ALL - 1, "none": 0}
NO_HINTS = "There are no hints in this set."
NO_LINES = "In this set the line itself is not given; that was the last hint."
NOT_RIGHT = "This is not right."
LAST_TRY = (
    "That was the last of {attempts} here. Go on trying, or take hints now, one after the other: the "
    "last is the line itself, and with it this counts as given."
)


def most_level(state: State, place: Place) -> int:
    """The last level of hint to be had at a place; all of them once its tries are used up."""
    return ALL if tries_used_up(state, place) else MOST[state.problem.rules.hints]


def no_more(state: State) -> str:
    """What is said where no further hint is to be had."""
    return NO_HINTS if MOST[state.problem.rules.hints] == 0 else NO_LINES


def tries_used_up(state: State, place: Place) -> bool:
    """Whether an equation or a value has been tried wrongly as often as the set allows."""
    attempts = state.problem.rules.attempts
    return attempts is not None and wrong_tries(state, place) >= attempts


def wrong_tries(state: State, place: Place) -> int:
    """How often a place was tried wrongly since it was last right."""
    count = 0
    for done in reversed(state.tries):
        if done.at == place:
            if done.verdict == "right":
                break
            count += done.verdict == "wrong"
    return count


def as_allowed(before: State, after: State, reply: Reply) -> tuple[State, Reply]:
    """What came of an event, told as far as the set allows.

    In mode "check" a wrong answer is only called so; a last try is told as one.
    """
    rules = after.problem.rules
    if rules.mode == "check":
        after, reply = _called_only(before, after, reply)
    new = after.tries[len(before.tries) :]
    tried = new[-1] if new else None
    if (
        tried is not None
        and tried.verdict == "wrong"
        and wrong_tries(after, tried.at) == rules.attempts
    ):
        tries = "1 try" if rules.attempts == 1 else f"{rules.attempts} tries"
        said = (*reply.said, Say("note", LAST_TRY.format(attempts=tries)))
        reply = replace(reply, said=said)
    return after, reply


def _called_only(before: State, after: State, reply: Reply) -> tuple[State, Reply]:
    """Without what is wrong, where, or of what else it is true."""
    if all(say.tone != "wrong" for say in reply.said):
        return after, reply
    verdict = reply.verdict
    if verdict is not None and verdict.kind == "wrong":
        verdict = replace(verdict, text=NOT_RIGHT, mistakes=(), remarks=(), true_of=None)
    told = replace(reply, said=(Say("wrong", NOT_RIGHT),), verdict=verdict)
    return _before_any_hint(before, replace(after, offered=None)), told


def _before_any_hint(before: State, after: State) -> State:
    """The first hint is still to come: the verdict has not been one."""
    hints = {
        place: replace(given, level=before.hints[place].level if place in before.hints else 0)
        if given is not before.hints.get(place)
        else given
        for place, given in after.hints.items()
    }
    return replace(after, hints=hints)
