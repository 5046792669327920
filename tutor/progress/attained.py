"""Where does this student stand? All that the lessons kept of them come to, in one value."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property

from tutor.model import Problem
from tutor.progress.account import FirstAnswer, LessonAccount
from tutor.progress.kept import Summaries, Summary
from tutor.progress.kinds import is_topic, kind_of, kind_of_problem
from tutor.progress.stages import ALONE, Past, StageName, next_stage, offered
from tutor.progress.weakness import Weakness, weaknesses
from tutor.skills import Mastery, masteries

MOST_TRACED = 200
"""So many of the lessons last worked on are traced; older ones say little of what is there now."""


@dataclass(frozen=True)
class WorkedLesson:
    """One lesson: the key, kind and title of its problem, when it was last worked on, its account, and
    the name of its file."""

    key: str
    kind: str
    title: str
    last: float
    account: LessonAccount
    name: str = ""


@dataclass(frozen=True)
class Attained:
    """The lessons of a student in the order in which they were last worked on."""

    worked: tuple[WorkedLesson, ...] = ()

    @cached_property
    def answers(self) -> tuple[tuple[WorkedLesson, FirstAnswer], ...]:
        """Every first answer with the lesson it is from, in the order of time."""
        each = [(worked, answer) for worked in self.worked for answer in worked.account.answers]
        return tuple(sorted(each, key=lambda pair: pair[1].time))

    @cached_property
    def masteries(self) -> tuple[Mastery, ...]:
        """How far each skill is mastered of which anything was seen."""
        return masteries(seen for _, answer in self.answers for seen in answer.seen)

    @cached_property
    def weak(self) -> tuple[Weakness, ...]:
        """What is lacking, what went wrong last and is weakest first."""
        last = self.worked[-1].account.answers if self.worked else ()
        return weaknesses([answer for _, answer in self.answers], last)

    @cached_property
    def past(self) -> tuple[Past, ...]:
        """The finished lessons."""
        return tuple(
            Past(w.kind, w.account.stage, w.account.share)
            for w in self.worked
            if w.account.done and w.kind
        )

    def stage(self, problem: Problem) -> StageName:
        """What is to be left to the student of a problem that is begun now."""
        kind = kind_of_problem(problem)
        stage = next_stage(self.past, kind) if kind else ALONE
        can_be_parted = problem.truss is None or stage == "watch"
        return stage if can_be_parted else ALONE

    def offer(self, problem: Problem) -> str:
        """The sentence that offers it, empty where all is theirs or nothing was finished yet."""
        if not self.past:
            return ""
        kind = kind_of_problem(problem)
        return offered(self.stage(problem), self.past, kind, "set" if is_topic(kind) else "kind")


def attained_of(summaries: Summaries, most: int = MOST_TRACED) -> Attained:
    """What the lessons kept in a folder come to; what was not gone through yet is, and kept."""
    readable = [each for each in summaries.look() if each.kept.readable and each.kept.events]
    found = summaries.go_through(readable[:most])
    summaries.put_down()
    return attained_by(reversed(found))


def attained_by(found: Iterable[Summary]) -> Attained:
    """What these lessons come to, in their order."""
    return Attained(tuple(_worked(found)))


def _worked(found: Iterable[Summary]) -> Sequence[WorkedLesson]:
    return [
        WorkedLesson(
            each.kept.problem,
            kind_of(each.kept.problem, each.account.walk),
            each.kept.title,
            0.0 if each.kept.last is None else each.kept.last.timestamp(),
            each.account,
            each.kept.path.name,
        )
        for each in found
        if each.account is not None
    ]
