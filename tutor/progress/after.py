"""What is said after a problem? What went wrong there in plain words, and the one thing to watch."""

from __future__ import annotations

from collections.abc import Iterator

from tutor.judge import Equation, Value
from tutor.judge.claims import CLAIMS
from tutor.judge.kind import Case
from tutor.judge.mistakes import KINDS
from tutor.lesson import Lesson
from tutor.lesson.state import State
from tutor.skills.table import NO_SKILL

WATCH = "The one thing to watch: {reason}"


def one_thing(lesson: Lesson) -> str:
    """The principle behind the mistake that was made most on this walk; empty where there was none.

    It is said of the line in which the mistake was made last, so that it is true of it.
    """
    for code, _ in lesson.table.mistakes:
        if code in NO_SKILL:
            continue
        reason = next(_reasons(lesson.state, code), "")
        if reason:
            return WATCH.format(reason=reason[:1].lower() + reason[1:])
    return ""


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
            force = about.unknown if isinstance(about, Value) else None
            yield KINDS[code].reason(Case(state.problem, about, force))
