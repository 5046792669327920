"""Does a picture that marks what the third hint names tell a number that was not told before?"""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from habits import HABITS, Habit
from table import FILES
from walker import Walker

from tutor.figure import Figure
from tutor.lesson import Reply
from tutor.lesson.pointing import PLACE, pointed_out
from tutor.model import Problem, load_problem
from tutor.screens.pictures import pictures

SLIPPING = [h for h in HABITS if h.name in ("geometry-blind", "forgetful")]


def numbers(problem: Problem, figure: Figure) -> set[str]:
    """Every number in the texts and sentences of a picture, those in names left out."""
    texts = [figure.title, *figure.sentences]
    for item in figure.items:
        for name in ("texts", "words", "run", "rise", "gaps", "runs"):
            value = getattr(item, name, ())
            texts += [value] if isinstance(value, str) else map(str, value)
    joints = "|".join(map(re.escape, sorted(problem.joint, key=len, reverse=True)))
    return {n for text in texts for n in re.findall(r"\d+(?:\.\d+)?", re.sub(joints, "", text))}


class Watched(Walker):
    """A student beside whom the pictures are looked at after every hint."""

    def __init__(self, *given: object) -> None:
        super().__init__(*given)  # type: ignore[arg-type]
        self.marked = 0
        self.wrong: list[str] = []

    def _take(self, kind: str, **data: object) -> Reply:
        reply = super()._take(kind, **data)
        state, ask = self.lesson.state, self.lesson.ask
        if kind == "hint" and state.hints_used[-1:] == (PLACE,) and pointed_out(state):
            now = pictures(state, ask)
            before = pictures(replace(state, hints={}), ask)
            problem = self.lesson.problem
            known = set().union(*(numbers(problem, figure) for _, figure in before))
            for title, figure in now:
                self.wrong += [f"{title}: {n}" for n in numbers(problem, figure) - known]
            self.marked += now != before
        return reply


@pytest.mark.parametrize("habit", SLIPPING, ids=lambda habit: habit.name)
@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_marked_picture_holds_no_number_that_was_not_there(habit: Habit, path) -> None:
    student = Watched(load_problem(path), habit)
    student.walk()
    assert student.wrong == []


def test_pictures_are_marked_at_all() -> None:
    student = Watched(load_problem(FILES[3]), SLIPPING[0])
    student.walk()
    assert student.marked > 3
