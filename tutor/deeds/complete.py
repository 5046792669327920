"""How may a word that is being typed go on? Deeds, and the names that go with them."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping

from tutor.deeds.board import BEGINNINGS
from tutor.deeds.words import BY_WORD, COMMANDS, Takes
from tutor.lesson import STEPS, Lesson
from tutor.lesson.steps.zero import RULES
from tutor.model import Problem

SHORTEST = 2
"""One letter alone is more often the beginning of a name than of a word."""


def completions(lesson: Lesson, text: str) -> tuple[str, ...]:
    """The texts that `text` may be completed to, each as a whole; none where it goes on as no word.

    The beginning of a name in this truss is left alone.
    """
    *before, last = text.split(" ")
    if not before:
        return _words(lesson.problem, last)
    command = BY_WORD.get(before[0].lower())
    place = len(before) - 1
    if command is None or place >= len(command.takes):
        return ()
    names = NAMES[command.takes[place]](lesson.problem)
    return tuple(" ".join((*before, name)) for name in _going_on(last, names))


def _words(problem: Problem, begun: str) -> tuple[str, ...]:
    small = begun.casefold()
    own = problem.names.own_spellings
    if len(begun) < SHORTEST or any(name.casefold().startswith(small) for name in own):
        return ()
    return tuple(
        each.words[0] + (" " if each.takes else "")
        for each in COMMANDS
        if each.words[0].startswith(small)
    )


def _going_on(begun: str, names: Iterable[str]) -> list[str]:
    return [name for name in names if name.casefold().startswith(begun.casefold())]


def _members(problem: Problem) -> Iterable[str]:
    return (member.name for member in problem.members)


NAMES: Mapping[Takes, Callable[[Problem], Iterable[str]]] = {
    "joint": lambda problem: (joint.name for joint in problem.joints),
    "member": _members,
    "reaction": lambda problem: problem.reaction,
    "unknown": lambda problem: problem.unknowns,
    "rule": lambda problem: RULES,
    "letter": lambda problem: ("C", "T"),
    "step": lambda problem: STEPS,
    "beginning": lambda problem: BEGINNINGS,
    "switch": lambda problem: ("on", "off"),
    "word": lambda problem: (each.words[0] for each in COMMANDS),
}
