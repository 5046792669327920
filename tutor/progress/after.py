"""What is said after a problem? What went wrong there in plain words, and the one thing to watch."""

from __future__ import annotations

from collections.abc import Iterator

from tutor.judge import Equation, Value
from tutor.judge.claims import CLAIMS
from tutor.judge.kind import Case
from tutor.judge.mistakes import KINDS
from tutor.judge.value_words import WORDS
from tutor.lesson import Lesson
from tutor.lesson.state import State
from tutor.model import Problem
from tutor.skills.seen import step_shown
from tutor.skills.table import NO_SKILL
from tutor.text import lowered

WATCH = "The one thing to watch: {reason}"


def one_thing(lesson: Lesson, skill: str = "") -> str:
    """The principle behind one mistake of this walk; empty where there was none.

    It is the one whose `skill` the next problem trains, where that was made here; else the one made
    most, in the step trained next where it was made there. It is said of the line in which the mistake
    was made last, so that it is true of it.
    """
    made = [code for code, _ in lesson.table.mistakes if code not in NO_SKILL]
    there = _made_in(lesson.state, skill)
    for code in sorted(made, key=lambda code: (code != skill, code not in there)):
        reason = next(_reasons(lesson.state, code), "")
        if reason:
            return WATCH.format(reason=lowered(reason))
    return ""


def _made_in(state: State, step: str) -> set[str]:
    """The mistakes made where the skill of a step is shown."""
    wrong = (made for made in state.tries if made.verdict == "wrong")
    return {code for made in wrong if step and step_shown(made) == step for code in made.codes}


def _reasons(state: State, code: str) -> Iterator[str]:
    """The principle that a mistake goes against, by the line in which it was made last."""
    if code in CLAIMS:
        yield CLAIMS[code].reason
    if code not in KINDS:
        return
    for made in reversed(state.tries):
        if made.verdict != "wrong" or code not in made.codes:
            continue
        about = made.at
        if isinstance(about, Equation | Value):
            yield _principle(state.problem, code, about)


def _principle(problem: Problem, code: str, about: Equation | Value) -> str:
    """What a mistake goes against in an equation, or in a value worked out from one."""
    if not isinstance(about, Value):
        return KINDS[code].reason(Case(problem, about))
    words = WORDS.get(code)
    return words[1] if words else KINDS[code].reason(Case(problem, about, about.unknown))
