"""Which equation does a student choose by its words: a sum, a direction, a moment point?"""

from __future__ import annotations

from collections.abc import Callable

from tutor.deeds.deed import Deed, Do, Tell
from tutor.judge import Fx, Fy
from tutor.judge.about import Equation, as_text
from tutor.judge.headings import equation_named
from tutor.lesson import Lesson
from tutor.notation import Label, Unreadable, read_heading

Run = Callable[[Lesson, str], Deed | None]
WHICH_WAY = "Cannot read: name a member or degrees from +x, like along AC or along 30."
ACROSS = "Cannot read: name a member, like across AC."


def heading(lesson: Lesson, text: str) -> Deed | None:
    """The choice of the equation that a heading names; None for what is no heading."""
    label = read_heading(text, lesson.problem.names)
    if isinstance(label, Unreadable):
        return Tell((label.message,)) if label.code == "label" else None
    about = equation_named(lesson.problem, label, lesson.state.joint)
    if about is None:
        return _what_is_missing(lesson, label)
    asked_apart = label.point is None and lesson.state.joint is None
    if isinstance(about, Fx | Fy) and asked_apart and lesson.ask.kind == "close":
        return _offered(lesson, about)
    return Do("choose", {"about": as_text(about)})


def by_word(word: str, else_said: str = "") -> Run:
    """The choice by a word that begins a heading, and what is said where the rest makes none."""

    def run(lesson: Lesson, rest: str) -> Deed | None:
        deed = heading(lesson, f"{word} {rest}")
        return Tell((else_said,)) if deed is None and else_said else deed

    return run


def about_a_point(lesson: Lesson, rest: str) -> Deed | None:
    """The choice of a sum of moments about a joint or a point."""
    deed = heading(lesson, f"moment {rest}")
    return deed if isinstance(deed, Do) else Tell((_whose_moment(lesson),))


def _what_is_missing(lesson: Lesson, label: Label) -> Deed | None:
    if label.kind == "moment":
        return Tell((_whose_moment(lesson),))
    return Tell((WHICH_WAY,)) if label.kind == "along" else None


def _whose_moment(lesson: Lesson) -> str:
    joints = ", ".join(joint.name for joint in lesson.problem.joints)
    return f"Cannot read: a moment is about a joint ({joints}) or a point, like 4, 0."


def _offered(lesson: Lesson, about: Equation) -> Deed:
    """The choice of a sum by its axis alone, among the equations that are offered."""
    kind, axis = type(about), type(about).__name__
    found = [option for option in lesson.ask.options if isinstance(option.about, kind)]
    if len(found) == 1:
        return Do("choose", {"about": found[0].key})
    if not found:
        return Tell((f"No Σ{axis} is offered here; type again to hear what is.",))
    named = " or ".join(option.words for option in found)
    joint = next((o.about.joint for o in found if o.about is not None and o.about.joint), "")
    at = f", or {axis[1:]} at {joint}" if joint else ""
    return Tell((f"Which one: {named}? Type its number{at}.",))
