"""Where does this student stand? All that the lessons kept of them come to, in one value."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from tutor.model import Problem
from tutor.progress.account import Answer, LessonAccount
from tutor.progress.kept import Summaries, Summary
from tutor.progress.stages import ALONE, Past, StageName, next_stage, offered
from tutor.progress.weakness import Weakness, weaknesses
from tutor.records.belonging import key_of
from tutor.skills import Mastery, masteries

MOST_TRACED = 200
"""So many of the lessons last worked on are traced; older ones say little of what is there now."""


@dataclass(frozen=True)
class Worked:
    """One lesson: the key, kind and title of its problem, when it was last worked on, its account, and
    the name of its file."""

    key: str
    kind: str
    title: str
    last: float
    account: LessonAccount
    name: str = ""


@dataclass(frozen=True)
class Standing:
    """The lessons of a student in the order in which they were last worked on."""

    worked: tuple[Worked, ...] = ()

    @cached_property
    def answers(self) -> tuple[tuple[Worked, Answer], ...]:
        """Every first answer with the lesson it is from, in the order of time."""
        each = [(worked, answer) for worked in self.worked for answer in worked.account.answers]
        return tuple(sorted(each, key=lambda pair: pair[1].time))

    @cached_property
    def masteries(self) -> tuple[Mastery, ...]:
        """How far each skill is mastered of which anything was seen."""
        return masteries(seen for _, answer in self.answers for seen in answer.seen)

    @cached_property
    def weak(self) -> tuple[Weakness, ...]:
        """What is lacking, the weakest first."""
        return weaknesses([answer for _, answer in self.answers])

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
        return offered(self.stage(problem), self.past, kind_of_problem(problem))


def standing_of(summaries: Summaries, most: int = MOST_TRACED) -> Standing:
    """The standing by the lessons kept in a folder; what was not gone through yet is, and kept."""
    readable = [each for each in summaries.look() if each.kept.readable and each.kept.events]
    found = summaries.go_through(readable[:most])
    summaries.put_down()
    return standing_by(reversed(found))


def standing_by(found: Iterable[Summary]) -> Standing:
    """The standing by these lessons, in their order."""
    return Standing(tuple(_worked(found)))


def _worked(found: Iterable[Summary]) -> Sequence[Worked]:
    return [
        Worked(
            each.kept.problem,
            kind_of(each.kept.problem, each.kept.source),
            each.kept.title,
            0.0 if each.kept.last is None else each.kept.last.timestamp(),
            each.account,
            each.kept.path.name,
        )
        for each in found
        if each.account is not None
    ]


def kind_of(key: str, source: str) -> str:
    """Of which kind a problem is: its set, by the folder its file lies in; empty without a file."""
    folder, _, file = key.rpartition("/")
    if folder and file and not key.startswith("id "):
        return folder
    return Path(source).parent.name if source else ""


def kind_of_problem(problem: Problem) -> str:
    """The kind of a problem that is there."""
    source = "" if problem.source is None else str(problem.source.absolute())
    return kind_of(key_of(problem), source)
