"""What does a student lack most, by all their first answers so far, and how is that told?"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from tutor.judge import Equation, M
from tutor.judge.called import CALLED, called
from tutor.lesson.place import Place, place_of
from tutor.progress.account import Answer
from tutor.skills import MASTERED, masteries, skill_called

WEAK = 0.5
"""Below this a skill is lacking rather than on its way; our own judgement, as `MASTERED` is the study's."""
LATELY = 400
"""From so many of the latest first answers it is told what is lacking; our own judgement."""


@dataclass(frozen=True)
class Weakness:
    """A skill that is lacking: its code, how likely it is there all the same, how often it went wrong
    of how many first answers, and in which kind of place, empty where in several."""

    skill: str
    likely: float
    wrong: int
    answers: int
    where: str = ""

    @property
    def told(self) -> str:
        """ "You made “the other component” twice, at joints"."""
        where = f", {self.where}" if self.where else ""
        if self.skill in CALLED:
            return f"You made “{called(self.skill)}” {times(self.wrong)}{where}"
        name = skill_called(self.skill)
        return f"{name[:1].upper()}{name[1:]} went wrong {times(self.wrong)}"


def times(count: int) -> str:
    """ "once", "twice", "3 times"."""
    return {1: "once", 2: "twice"}.get(count, f"{count} times")


def weaknesses(answers: Sequence[Answer]) -> tuple[Weakness, ...]:
    """What is lacking, the weakest first; a named mistake before the step it was made in.

    A mistake that was made is counted until it is known to be overcome; a step, while it is weak.
    """
    latest = sorted(answers, key=lambda answer: answer.time)[-LATELY:]
    found = [
        Weakness(m.skill, m.likely, m.answers - m.right, m.answers, _where(latest, m.skill))
        for m in masteries(seen for answer in latest for seen in answer.seen)
        if m.right < m.answers and m.likely < (WEAK if m.skill.startswith("step ") else MASTERED)
    ]
    return tuple(sorted(found, key=_rank))


def _rank(lacking: Weakness) -> tuple[bool, float, int, str]:
    step = lacking.skill.startswith("step ")
    return step, lacking.likely, -lacking.wrong, lacking.skill


def _where(answers: Iterable[Answer], skill: str) -> str:
    """In which kind of place a skill went wrong, where that was in one kind only."""
    places = {
        _kind(place_of(each.place)) for each in answers if not each.right and skill in each.skills
    }
    return places.pop() if len(places) == 1 else ""


def _kind(place: Place) -> str:
    if isinstance(place, M):
        return "in sums of moments"
    return "at joints" if isinstance(place, Equation) and place.joint else ""
