"""What has a lesson that was handed in come to, and which of its verdicts may be believed?

Verdicts are recomputed. Judging takes a hundred times as long as reading, so an outcome is believed
where this very judge said it, every check sum agrees and what it claims can be so (`claimed`). Even
then a sample of the answers is judged again (`sampling`). Which ones depends on all files together, so
that nobody can know beforehand. One answer that comes out otherwise, and the whole lesson is judged
anew.
"""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from typing import Any

from tutor.cohort.claimed import ANSWERS, can_be, has_to_fit, may_add
from tutor.cohort.sampling import SHARE, sample
from tutor.judge import Judge
from tutor.judge.about import Same
from tutor.judge.version import judge_version
from tutor.lesson import Event, Lesson
from tutor.lesson.fold import step_once
from tutor.lesson.outcome import Outcome, changed, changes
from tutor.lesson.replay import KeptEvent, paired
from tutor.lesson.state import State
from tutor.model import Problem
from tutor.records.line import JournalLine

MOST_ANSWERS = 3000
"""So many answers of one lesson are looked at."""
NO_EVENTS = frozenset({"outcome", "outcomes", "compared"})


@dataclass
class Replayed:
    """A lesson as it is now: how many answers it has, how many were judged now, of how many today's
    judge says otherwise, and whether the verdicts in the file were not those of its judge."""

    lesson: Lesson
    answers: int = 0
    again: int = 0
    otherwise: int = 0
    whole: bool = False
    forged: bool = False
    passed_over: int = 0
    events: list[Event] = field(default_factory=list)


def replayed(
    problem: Problem, lines: Sequence[JournalLine], whole: bool, seed: str, share: float = SHARE
) -> Replayed:
    """The lesson on `problem` that these lines of a journal hold.

    `whole` is whether every line is as it was written; `seed` chooses the sample, `share` of 1 judges
    everything anew. Unsolvable as of `Lesson`.
    """
    records = [line.event for line in lines]
    version = judge_version(problem)
    kept = side_by_side(records) if whole else None
    if kept is None:
        kept, _ = paired(records, version)
    over = max(0, len(kept) - MOST_ANSWERS)
    kept = kept[:MOST_ANSWERS]
    same = whole and all(k.outcome is not None and k.outcome.judge == version for k in kept)
    believe = same and share < 1.0
    found = _believed(problem, kept, sample(kept, seed, share)) if believe else None
    if found is None:
        found = _anew(problem, kept)
        found.forged = believe or (same and found.otherwise > 0)
    found.passed_over = over
    return found


def side_by_side(records: Sequence[Mapping[str, Any]]) -> list[KeptEvent] | None:
    """Each event with the outcome that stands behind it; None where they do not take turns so."""
    if len(records) % 2:
        return None
    kept = []
    try:
        for event, outcome in zip(records[::2], records[1::2], strict=True):
            if outcome.get("kind") != "outcome" or event.get("kind") in NO_EVENTS:
                return None
            kept.append(KeptEvent(Event.from_record(event), Outcome.from_record(outcome), False))
    except ValueError:
        return None
    return kept


def _begun(problem: Problem) -> Lesson:
    """A lesson without an event; where all students have the same numbers, they have one judge."""
    return Lesson(problem, desk=_judge_of(Same(problem)))


@lru_cache(maxsize=64)
def _judge_of(same: Same) -> Judge:
    return Judge(same.problem)


def _believed(
    problem: Problem, kept: Sequence[KeptEvent], judged: frozenset[int]
) -> Replayed | None:
    """The lesson as its outcomes say; None where one of them cannot be so, or comes out otherwise.

    The states between are made only where one is asked for; an undo asks for all of them.
    """
    found = Replayed(_begun(problem), events=[each.event for each in kept])
    found.answers = sum(event.kind in ANSWERS for event in found.events)
    found.again = len(judged)
    every = any(event.kind == "undo" for event in found.events)
    lesson = found.lesson
    waiting: list[tuple[Event, Outcome]] = []
    try:
        for place, (event, outcome, _) in enumerate(kept):
            assert outcome is not None
            asked = every or has_to_fit(event, outcome)
            if asked or place in judged:
                lesson.restore_all(waiting)
                waiting.clear()
            if place in judged and not _comes_out_so(lesson, event, outcome):
                return None
            if not asked:
                if not may_add(event, outcome):
                    return None
                waiting.append((event, outcome))
                continue
            before = lesson.state
            lesson.restore(event, outcome)
            if not can_be(before, lesson.state, lesson.desk, event, outcome):
                return None
        lesson.restore_all(waiting)
    except ValueError:
        return None
    return found


def _comes_out_so(lesson: Lesson, event: Event, kept: Outcome) -> bool:
    """Whether an answer judged now changes what its outcome says."""
    before = lesson.state
    try:
        after, reply = step_once(before, event, lesson.desk)
    except Exception:  # a fault of ours: the lesson is judged anew as a whole, and it shows there
        return False
    return reply.accepted == kept.accepted and as_kept(before, after) == kept.changed


def as_kept(before: State, after: State) -> Any:
    """What changed from one state to another, as it is read back from a journal."""
    return json.loads(json.dumps(changes(before, after)))


def _anew(problem: Problem, kept: Sequence[KeptEvent]) -> Replayed:
    """The lesson with every answer judged now; what was shown is no answer, and stands as it was kept."""
    found = Replayed(_begun(problem), whole=True)
    lesson = found.lesson
    for each in kept:
        if _stands_as_shown(lesson, each):
            continue
        is_answer = each.event.kind in ANSWERS
        found.answers += is_answer
        found.again += is_answer
        before = lesson.state
        accepted = _applied(lesson, each.event)
        if each.outcome is not None:
            made = as_kept(before, lesson.state) if each.event.kind != "undo" else {}
            same = accepted == each.outcome.accepted and made == each.outcome.changed
            found.otherwise += is_answer and not same
    found.events = lesson.events
    return found


def _stands_as_shown(lesson: Lesson, kept: KeptEvent) -> bool:
    """Whether this was shown to the student, and is taken over so: another version may show something
    else at the same word, and what was typed after it would be lost."""
    if kept.event.kind != "show" or kept.outcome is None:
        return False
    try:
        after = changed(lesson.state, kept.event, kept.outcome.changed)
    except ValueError:
        return False
    if not can_be(lesson.state, after, lesson.desk, kept.event, kept.outcome):
        return False
    lesson.restore(kept.event, kept.outcome)
    return True


def _applied(lesson: Lesson, event: Event) -> bool:
    """Whether an event is taken; one that cannot be folded in is left out."""
    before: tuple[State, Any] = (lesson.state, len(lesson.events))
    try:
        return lesson.apply(event).accepted
    except Exception:  # whatever a file holds, the lesson goes on without it
        lesson.state = before[0]
        del lesson.events[before[1] :]
        return False
