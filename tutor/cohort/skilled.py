"""How many of a class have mastered each skill?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from statistics import fmean

from tutor.cohort.facts import Student
from tutor.skills import skill_called

FEWEST = 3
"""From so many first answers on something can be said of a skill; our own judgement."""


@dataclass(frozen=True)
class SkillOf:
    """One skill in a class: `mastered` by so many of the `students` of whom anything was seen, and
    how likely it is learnt on the average of them."""

    code: str
    called: str
    students: int
    mastered: int
    likely: float


def skilled(students: Sequence[Student]) -> tuple[SkillOf, ...]:
    """The skills that somebody lacked at least once, the least mastered first.

    A student counts for a skill once it was seen in a few answers.
    """
    seen: dict[str, list[tuple[float, bool]]] = {}
    lacked = {m.skill for student in students for m in student.skills if m.right < m.answers}
    for student in students:
        for mastery in student.skills:
            if mastery.skill in lacked and mastery.answers >= FEWEST:
                seen.setdefault(mastery.skill, []).append((mastery.likely, mastery.mastered))
    found = [
        SkillOf(
            code,
            skill_called(code),
            len(each),
            sum(mastered for _, mastered in each),
            round(fmean(likely for likely, _ in each), 4),
        )
        for code, each in seen.items()
    ]
    return tuple(sorted(found, key=lambda s: (s.mastered / s.students, s.likely, s.code)))
