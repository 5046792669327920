"""What has a lesson that was handed in come to, and which of its verdicts may be believed?

Verdicts are recomputed. Judging takes a thousand times as long as reading, so an outcome is believed
where this very judge said it, every check sum agrees and what it claims can be so: only an answer adds
to what stands, every value is near the true one, no step is left undone. Even then a sample of the
answers is judged again. Which ones depends on all files together, so that nobody can know beforehand.
One answer that comes out otherwise, and the whole lesson is judged anew.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from tutor.judge import Judge
from tutor.judge.version import judge_version
from tutor.lesson import Event, Lesson
from tutor.lesson.fold import barred, step_once
from tutor.lesson.older import WIDE
from tutor.lesson.outcome import Outcome, changed, changes
from tutor.lesson.replay import Kept, paired
from tutor.lesson.state import State
from tutor.lesson.steps import STEPS
from tutor.model import Problem
from tutor.records.line import Line

SHARE = 0.02
"""The share of the answers that is judged again though it is believed; at least one a lesson."""
MOST_ANSWERS = 3000
"""So many answers of one lesson are looked at."""
BEFORE_LINES = frozenset(
    {
        *("reasons_done", "count_done", "sound_done", "moving_done"),
        *("halves_done", "brought", "supports_done"),
    }
)
ADDS: Mapping[str, frozenset[str]] = {
    "reasons": frozenset({"reasons_done"}),
    "count": frozenset({"count_done"}),
    "soundness": frozenset({"sound_done"}),
    "loose": frozenset({"moving_done"}),
    "halves": frozenset({"halves_done"}),
    "shares": frozenset({"brought"}),
    "support": frozenset({"supports_done"}),
    "zero": frozenset({"results"}),
    "bring": BEFORE_LINES | {"results"},
    "skip": BEFORE_LINES,
    "type": frozenset({"lines", "results", "ended"}),
    "keep": frozenset({"lines", "ended"}),
    "show": BEFORE_LINES | {"lines", "results", "ended"},
}
"""What an event of each kind may add to what stands; what is shown stands as shown (`_is_shown`)."""
CREDIT = frozenset().union(*ADDS.values())
ANSWERS = ADDS.keys() - {"bring", "skip", "show"}
"""What the student answers, so that it is judged; the rest is no answer."""
NO_EVENTS = frozenset({"outcome", "outcomes", "compared"})
NEARLY_ZERO = 1e-6


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
    problem: Problem, lines: Sequence[Line], whole: bool, seed: str, share: float = SHARE
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
    found = _believed(problem, kept, _sample(kept, seed, share)) if believe else None
    if found is None:
        found = _anew(problem, kept)
        found.forged = believe or (same and found.otherwise > 0)
    found.passed_over = over
    return found


def side_by_side(records: Sequence[Mapping[str, Any]]) -> list[Kept] | None:
    """Each event with the outcome that stands behind it; None where they do not take turns so."""
    if len(records) % 2:
        return None
    kept = []
    try:
        for event, outcome in zip(records[::2], records[1::2], strict=True):
            if outcome.get("kind") != "outcome" or event.get("kind") in NO_EVENTS:
                return None
            kept.append(Kept(Event.from_record(event), Outcome.from_record(outcome), False))
    except ValueError:
        return None
    return kept


def _sample(kept: Sequence[Kept], seed: str, share: float) -> frozenset[int]:
    """The places of the answers to be judged again."""
    draws = {
        place: _draw(f"{seed} {place} {each.event.time!r} {each.event.text('text')}")
        for place, each in enumerate(kept)
        if each.event.kind in ANSWERS
    }
    if not draws:
        return frozenset()
    least = min(draws, key=lambda place: draws[place])
    return frozenset({least, *(place for place, draw in draws.items() if draw < share)})


def _draw(text: str) -> float:
    """A number from 0 up to 1 that follows from a text as if drawn by lot."""
    figures = hashlib.sha256(text.encode("utf-8", "surrogatepass")).digest()[:7]
    return int.from_bytes(figures, "big") / 256**7


def _believed(problem: Problem, kept: Sequence[Kept], sample: frozenset[int]) -> Replayed | None:
    """The lesson as its outcomes say; None where one of them cannot be so."""
    found = Replayed(Lesson(problem))
    lesson = found.lesson
    for place, each in enumerate(kept):
        event, outcome = each.event, each.outcome
        assert outcome is not None
        before = lesson.state
        found.answers += event.kind in ANSWERS
        if place in sample:
            found.again += 1
            if not _comes_out_so(lesson, event, outcome):
                return None
        try:
            lesson.restore(event, outcome)
        except ValueError:
            return None
        if not _can_be(before, lesson.state, lesson.desk, event, outcome):
            return None
    found.events = lesson.events
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


def _can_be(before: State, after: State, desk: Judge, event: Event, kept: Outcome) -> bool:
    """Whether what an outcome claims can be so at all, without judging anything."""
    if event.kind == "undo":
        return True
    added = CREDIT & kept.changed.keys()
    if not added <= ADDS.get(event.kind, frozenset()) or (added and not kept.accepted):
        return False
    if event.kind == "show" and not _is_shown(before, after):
        return False
    if STEPS.index(after.step) > STEPS.index(before.step) and barred(after, after.step):
        return False
    if "results" not in added:
        return True
    true = desk.values()
    reach = max(map(abs, true.values()))
    return all(
        abs(after.signed(r.unknown) - true[r.unknown])
        <= WIDE.remark * abs(true[r.unknown]) + r.radius + NEARLY_ZERO * reach
        and r.radius <= WIDE.remark * reach
        for r in after.results
        if r not in before.results
    )


def _is_shown(before: State, after: State) -> bool:
    """Whether what a `show` event adds is marked as shown, so that it counts as nobody's."""
    tries = after.tries[len(before.tries) :]
    places = {made.place for made in tries}
    return all(made.verdict == "shown" for made in tries) and all(
        f"value {result.unknown}" in places or f"zero {result.unknown}" in places
        for result in after.results
        if result.unknown not in before.result
    )


def _anew(problem: Problem, kept: Sequence[Kept]) -> Replayed:
    """The lesson with every answer judged now; what was shown is no answer, and stands as it was kept."""
    found = Replayed(Lesson(problem), whole=True)
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


def _stands_as_shown(lesson: Lesson, kept: Kept) -> bool:
    """Whether this was shown to the student, and is taken over so: another version may show something
    else at the same word, and what was typed after it would be lost."""
    if kept.event.kind != "show" or kept.outcome is None:
        return False
    try:
        after = changed(lesson.state, kept.event, kept.outcome.changed)
    except ValueError:
        return False
    if not _can_be(lesson.state, after, lesson.desk, kept.event, kept.outcome):
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
