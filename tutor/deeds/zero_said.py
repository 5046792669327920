"""Does a sentence state a zero-force member: "AB is a zero-force member", "F_AB = 0 by inspection"?"""

from __future__ import annotations

import re

from tutor.deeds.deed import Deed, Do, Tell
from tutor.deeds.runs import zero
from tutor.lesson import Lesson, State
from tutor.lesson.reply import LINES
from tutor.lesson.solvable import is_determined
from tutor.notation import Line, Unreadable, read_line
from tutor.notation.pages.reasons import gives_reason
from tutor.notation.sides.zero_words import says_inspection, says_zero, zero_members
from tutor.text import one_line

THE_WORD = re.compile(r"(?:do\s+)?zero\b", re.IGNORECASE)
WHERE = LINES | {"joint"}
ONE_AT_A_TIME = "State one zero-force member after the other, like zero {name} two."

A_REASON = (
    "Read as a reason: {said}. A reason alone says nothing of a force yet: add what follows from it, "
    "like “so (member) is a zero-force member”, or write an equation."
)
RECKONS = re.compile(r"(?<!\w)\d|[+*/^√·×÷=]")


def reason_alone(lesson: Lesson, text: str) -> Deed | None:
    """What is said of a sentence that says only what could show a force to be zero, and of no force that it is."""
    if lesson.ask.kind not in WHERE or not gives_reason(text) or RECKONS.search(text):
        return None
    if zero_members(text, lesson.problem.names):
        return None
    return Tell((A_REASON.format(said=one_line(text).strip("()[]. ")),))


def zero_said(lesson: Lesson, text: str) -> Deed | None:
    """The deed of a sentence that says a member to be zero; None for any other text.

    What the lines that stand give already is a value, and no statement of its own. "By inspection", or a
    reason in words, names no rule, so that any that shows it will do; where nothing is said, it is asked for.
    """
    if THE_WORD.match(text):
        return None
    by_inspection = says_inspection(text)
    if lesson.ask.kind not in WHERE or not (by_inspection or says_zero(text)):
        return None
    line = read_line(text, lesson.problem.names)
    members = () if isinstance(line, Unreadable) else _members_alone(lesson.state, line)
    if not members:
        return None
    if any(is_determined(lesson.state, name) for name in members):
        return Do("type", {"text": text}, text)
    if by_inspection or gives_reason(text):
        return Do("zero", {"member": " = ".join(members), "rule": "along"})
    if len(members) > 1:
        return Tell((ONE_AT_A_TIME.format(name=members[0]),))
    return zero(lesson, members[0])


def _members_alone(state: State, line: Line) -> tuple[str, ...]:
    """The members of a line that sets each to zero and says nothing else, least of all a sum."""
    found: list[str] = []
    for step in line.steps:
        labels = [label for label in (line.label, step.label) if label is not None]
        named = [side.name for side in step.sides if not side.numeric]
        nothing = all(term.value == 0.0 for s in step.sides if s.numeric for term in s.terms)
        members = [name for name in named if name in state.problem.member]
        if any(label.kind for label in labels) or not nothing or len(step.sides) == len(named):
            return ()
        if not named or len(members) < len(named):
            return ()
        found += filter(None, members)
    return tuple(dict.fromkeys(found))
