"""What does a student lack most, by all their first answers so far, and how is that told?"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from tutor.judge import Equation, M
from tutor.judge.called import CALLED, called
from tutor.lesson.place import Place, place_of
from tutor.progress.account import FirstAnswer
from tutor.skills import MASTERED, masteries, skill_called
from tutor.skills.table import ASKED, STEP_CODES
from tutor.text import listed, raised

WEAK = 0.5
"""Below this a skill is lacking rather than on its way; our own judgement, as `MASTERED` is the study's."""
LATELY = 400
"""From so many of the latest first answers it is told what is lacking; our own judgement."""


@dataclass(frozen=True)
class Weakness:
    """A skill that is lacking: its code, how likely it is there all the same, how often it went wrong
    of how many first answers, and in which kind of place, empty where in several. `asked` are the
    questions that went wrong, where the step has several.

    `lately` is whether it went wrong in the lesson last worked on."""

    skill: str
    likely: float
    wrong: int
    answers: int
    where: str = ""
    lately: bool = True
    asked: tuple[str, ...] = ()

    @property
    def is_step(self) -> bool:
        """Whether it is a step of the method, and no named mistake."""
        return self.skill not in CALLED

    @property
    def told(self) -> str:
        """ "Wrong twice, at joints: the other component", "Equations of a joint went wrong once"."""
        if self.is_step:
            name = listed(self.asked) or skill_called(self.skill)
            return f"{raised(name)} went wrong {times(self.wrong)}"
        where = f", {self.where}" if self.where else ""
        earlier = "" if self.lately else " in earlier problems"
        return f"Wrong {times(self.wrong)}{earlier}{where}: {called(self.skill)}"


def times(count: int) -> str:
    """ "once", "twice", "3 times"."""
    return {1: "once", 2: "twice"}.get(count, f"{count} times")


def weaknesses(
    answers: Sequence[FirstAnswer], last: Sequence[FirstAnswer] | None = None
) -> tuple[Weakness, ...]:
    """What is lacking, the weakest first; a named mistake before the step it was made in.

    A mistake that was made is counted until it is known to be overcome; a step, while it is weak.
    What went wrong in the `last` lesson (by default they are all of one) comes first, since that is
    what is told of at its end.
    """
    latest = sorted(answers, key=lambda answer: answer.time)[-LATELY:]
    lately = {
        skill
        for answer in (answers if last is None else last)
        if not answer.right
        for skill in answer.skills
    }
    found = [
        Weakness(
            m.skill,
            m.likely,
            m.answers - m.right,
            m.answers,
            _where(latest, m.skill),
            m.skill in lately,
            _asked(latest, m.skill),
        )
        for m in masteries(seen for answer in latest for seen in answer.seen)
        if m.right < m.answers and m.likely < (WEAK if m.skill in STEP_CODES else MASTERED)
    ]
    return tuple(sorted(found, key=_rank))


def _rank(lacking: Weakness) -> tuple[bool, bool, float, int, str]:
    return (
        lacking.is_step,
        not lacking.lately,
        lacking.likely,
        -lacking.wrong,
        lacking.skill,
    )


def _asked(answers: Iterable[FirstAnswer], skill: str) -> tuple[str, ...]:
    """What the questions asked for that went wrong at a step, each in words; none where one of them is
    asked in few problems only."""
    wrong = {each.place for each in answers if not each.right and skill in each.skills}
    asked = ASKED.get(skill, {})
    return tuple(asked[place] for place in asked if place in wrong) if wrong <= asked.keys() else ()


def _where(answers: Iterable[FirstAnswer], skill: str) -> str:
    """In which kind of place a skill went wrong, where that was in one kind only."""
    places = {
        _kind(place_of(each.place)) for each in answers if not each.right and skill in each.skills
    }
    return places.pop() if len(places) == 1 else ""


def _kind(place: Place) -> str:
    if isinstance(place, M):
        return "in sums of moments"
    return "at joints" if isinstance(place, Equation) and place.joint else ""
