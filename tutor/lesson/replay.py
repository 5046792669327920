"""What has a kept lesson come to? What stood stands; where today's judge differs is told.

A lesson is kept as events and, with each, its outcome and the judge that said so. An outcome is
taken as it is. One by another judge is held against today's where it still matters, and that is done
once for each judge: `Replay.to_keep` has what is to be kept of it.
"""

from __future__ import annotations

from collections import defaultdict, deque
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, NamedTuple

from tutor.judge.version import judge_version
from tutor.lesson.compare import Differing, EventTaken, differing
from tutor.lesson.event import Event
from tutor.lesson.lesson import Lesson
from tutor.lesson.older import Older
from tutor.lesson.outcome import Outcome, mark_of
from tutor.lesson.reply import Reply
from tutor.model import Problem

Record = Mapping[str, Any]
MOST_TOLD = 4
AT_ONCE = 100
"""How many outcomes of a lesson kept without them are put into one line of its journal."""


class KeptEvent(NamedTuple):
    """An event of a journal, with the outcome kept of it, and whether today's judge has seen it."""

    event: Event
    outcome: Outcome | None
    seen: bool


@dataclass
class Replay:
    """A lesson opened again: what it has come to, and what is to be told and kept of that.

    `skipped` counts the entries that could not be read; `differing` are those of which today's judge
    would say otherwise.
    """

    lesson: Lesson
    skipped: int = 0
    differing: list[Differing] = field(default_factory=list)
    to_keep: list[dict[str, Any]] = field(default_factory=list)

    @property
    def told(self) -> tuple[str, ...]:
        """What is to be told of the judge's change of mind, one sentence a line."""
        return tuple(each.told for each in self.differing)


def replay(
    problem: Problem,
    records: Iterable[Record],
    fault: Callable[[Exception], object] = lambda _: None,
    compare: bool = True,
) -> Replay:
    """The lesson on `problem` that these records of a journal hold.

    `fault` is told of what could not be folded in, which is left out. `compare` is whether today's
    judge is asked at all. Unsolvable as of `Lesson`.
    """
    found = Replay(Lesson(problem))
    version = judge_version(problem)
    kept, found.skipped = paired(records, version)
    judged: list[EventTaken] = []
    fresh: list[dict[str, Any]] = []
    older = Older(found.lesson, [each.event for each in kept])
    for place, each in enumerate(kept):
        before = found.lesson.state
        if each.outcome is not None:
            try:
                found.lesson.restore(each.event, each.outcome)
            except ValueError as unreadable:
                fault(unreadable)
            else:
                if not each.seen and each.outcome.judge != version:
                    judged.append(EventTaken(each.event, before, found.lesson.state, each.outcome))
                continue
        try:
            reply = older.take(place)
        except Exception as wrong:
            fault(wrong)
            found.skipped += 1
            continue
        fresh.append(_kept_of(found.lesson, before, each.event, reply))
    found.differing += older.differing
    found.to_keep += [
        {"kind": "outcomes", "each": fresh[start : start + AT_ONCE]}
        for start in range(0, len(fresh), AT_ONCE)
    ]
    if compare and judged:
        found.differing += differing(found.lesson, judged)
        found.to_keep.append({"kind": "compared", "judge": version})
    return found


def paired(records: Iterable[Record], version: str) -> tuple[list[KeptEvent], int]:
    """The events in their order, each with its outcome, and how many entries are no events."""
    outcomes: dict[str, deque[tuple[Outcome, int]]] = defaultdict(deque)
    events: list[Event] = []
    compared, skipped = -1, 0
    for place, record in enumerate(records):
        kind = record.get("kind")
        if kind == "compared":
            compared = place if record.get("judge") == version else compared
            continue
        if kind in ("outcome", "outcomes"):
            for each in (record,) if kind == "outcome" else _each(record):
                try:
                    outcomes[str(each.get("of"))].append((Outcome.from_record(each), place))
                except ValueError:
                    skipped += 1
            continue
        try:
            events.append(Event.from_record(record))
        except ValueError:
            skipped += 1
    kept = []
    for event in events:
        waiting = outcomes.get(mark_of(event))
        outcome, place = waiting.popleft() if waiting else (None, -1)
        kept.append(KeptEvent(event, outcome, place < compared))
    return kept, skipped


def events_of(records: Iterable[Record]) -> tuple[Event, ...]:
    """The events among the records of a journal, without what came of them."""
    return tuple(each.event for each in paired(records, "")[0])


def _each(record: Record) -> Iterable[Record]:
    each = record.get("each")
    return [one for one in each if isinstance(one, Mapping)] if isinstance(each, list) else ()


def _kept_of(lesson: Lesson, before: Any, event: Event, reply: Reply) -> dict[str, Any]:
    return lesson.outcome(before, event, reply).as_record(event)


def told_in_short(told: Sequence[str], most: int = MOST_TOLD) -> tuple[str, ...]:
    """The first few of the sentences, and how many more there are."""
    more = len(told) - most
    if more <= 0:
        return tuple(told)
    return (*told[:most], f"The same holds of {more} more of your lines; all of them stand.")
