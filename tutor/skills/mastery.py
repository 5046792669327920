"""How far is each skill mastered, after all that was seen, and how is that told?"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from tutor.skills.seen import Seen
from tutor.skills.table import MASTERED, skills
from tutor.skills.tracing import trace

IN_PLAIN_WORDS = (
    "From the first answers of each kind, right or wrong in their order, it is worked out how likely "
    "a student has learnt the skill by now. A right answer can be luck, a wrong one a slip: so a skill "
    f"counts as mastered only when that is {MASTERED:.0%} likely. The numbers behind it are our own "
    "judgement; they sort, and they are no mark."
)


@dataclass(frozen=True)
class Mastery:
    """One skill of one student: how likely it is learnt, from how many first answers, how many right."""

    skill: str
    likely: float
    answers: int
    right: int

    @property
    def mastered(self) -> bool:
        return self.likely >= MASTERED


def masteries(seen: Iterable[Seen]) -> tuple[Mastery, ...]:
    """How far each skill is mastered of which anything was seen, in the order of the table."""
    by_skill: dict[str, list[Seen]] = {}
    for each in seen:
        by_skill.setdefault(each.skill, []).append(each)
    found = []
    for code, skill in skills().items():
        answers = sorted(by_skill.get(code, ()), key=lambda each: each.time)
        if answers:
            rights = [each.right for each in answers]
            likely = round(trace(rights, skill.parameters), 6)
            found.append(Mastery(code, likely, len(rights), sum(rights)))
    return tuple(found)
