"""What does every conversation have at hand, and what does it tell the student of what to do next?"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from tutor.deeds.board import invitation
from tutor.model import Problem, ProblemSet
from tutor.plain.choices import KeptChoices
from tutor.plain.choosing import guide_of
from tutor.plain.voice import Voice
from tutor.progress.after import one_thing
from tutor.progress.attained import attained_of
from tutor.progress.kept import Summaries
from tutor.records import Keep
from tutor.records.belonging import key_of
from tutor.session import Session

NOTHING_NEXT = "Nothing is next: every problem here is finished."


@dataclass(frozen=True)
class Here:
    """What every conversation has: the voice, the problem sets, and the student's choices."""

    voice: Voice
    sets: Sequence[ProblemSet]
    choices: KeptChoices

    @property
    def keep(self) -> Keep:
        return self.choices.keep

    @property
    def among_others(self) -> bool:
        """Whether there is more than one problem to choose from."""
        return sum(len(each.problems) for each in self.sets) > 1


def offer(here: Here, session: Session) -> str:
    """What is offered to be written first where a lesson is begun; it is noted in the session."""
    lesson, choices = session.lesson, here.choices
    if lesson.events or choices.given.begin:
        return ""
    offered = ""
    if choices.guided:
        attained = attained_of(Summaries(here.keep))
        session.stage = attained.stage(lesson.problem)
        offered = attained.offer(lesson.problem)
    return invitation(lesson, choices.settings.done, offered)


def after_lines(here: Here, session: Session) -> Iterator[str]:
    """What is said after the table: the one thing to watch, and the problem to take next and why."""
    if not here.choices.guided:
        return
    guide = guide_of(here.sets, here.keep)
    ahead = guide.next() if here.among_others else None
    yield from filter(None, (one_thing(session.lesson, ahead.skill if ahead else ""),))
    if ahead is not None:
        title = next(p.problem.title for p in guide.listed if key_of(p.problem) == ahead.key)
        yield f"Next: {title}. {ahead.why} Type next to open it."


def next_problem(here: Here) -> Problem | None:
    """The problem to take next, after saying that there is none."""
    ahead = guide_of(here.sets, here.keep).next()
    problems = (problem for each in here.sets for problem in each.problems)
    found = next((p for p in problems if ahead is not None and key_of(p) == ahead.key), None)
    if found is None:
        here.voice.say((NOTHING_NEXT,))
    return found
