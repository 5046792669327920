"""Where would today's judge say otherwise than the one a lesson was done under?

Only what still matters is asked again: the lines and values that stand, and the last lines that were
refused and of which nothing stands yet. Whatever comes of it is told and changes nothing.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from tutor.lesson.event import Event
from tutor.lesson.fold import step_once
from tutor.lesson.lesson import Lesson
from tutor.lesson.outcome import Outcome
from tutor.lesson.state import State

MOST_REFUSED = 20
"""How many of the refused lines, the last ones, are looked at again."""


@dataclass(frozen=True)
class EventTaken:
    """An event as it was taken: where the lesson was before and after it, and its outcome."""

    event: Event
    before: State
    after: State
    outcome: Outcome


@dataclass(frozen=True)
class Differing:
    """A typed line of which today's judge says otherwise, and the sentences that tell it."""

    text: str
    told: str


def stands_though(text: str, said: str) -> str:
    """What is told of a line that stands and would be refused today."""
    today = f" Today it would be said: {said}" if said else ""
    return f"“{text}” was taken as right by an earlier version of pinjoint and stands.{today}"


def right_after_all(text: str) -> str:
    """What is told of a line that was refused and would be taken today."""
    return (
        f"“{text}” was refused by an earlier version of pinjoint, and is right. Type it again to "
        "have it stand."
    )


def differing(lesson: Lesson, judged: Sequence[EventTaken]) -> list[Differing]:
    """What today's judge says otherwise, in the order in which it was done."""
    refused = [each for each in judged if _is_refused(lesson, each)][-MOST_REFUSED:]
    asked = [each for each in judged if _stands(lesson.state, each) or each in refused]
    return list(_differing(lesson, asked))


def _differing(lesson: Lesson, asked: Iterable[EventTaken]) -> Iterable[Differing]:
    for each in asked:
        try:
            after, reply = step_once(each.before, each.event, lesson.desk)
        except Exception:  # a fault of ours now takes nothing from what was done then
            continue
        text = _words_of(each)
        if each.outcome.accepted:
            if not _has_all(after, each):
                yield Differing(text, stands_though(text, reply.text if not reply.accepted else ""))
        elif reply.accepted and _is_news(lesson.state, each.before, after):
            yield Differing(text, right_after_all(text))


def _words_of(each: EventTaken) -> str:
    """What was typed, or which forces were stated or brought along."""
    brought = (r for r in each.after.results if r not in each.before.results)
    return each.event.text("text") or ", ".join(f"{r.unknown} = {r.text}" for r in brought)


def _stands(state: State, each: EventTaken) -> bool:
    """Whether an event added a line or a value that is still there."""
    return any(line in state.lines for line in each.after.lines[len(each.before.lines) :]) or any(
        result in state.results and result not in each.before.results
        for result in each.after.results
    )


def _is_refused(lesson: Lesson, each: EventTaken) -> bool:
    return each.event.kind == "type" and not each.outcome.accepted and bool(each.outcome.verdict)


def _has_all(after: State, each: EventTaken) -> bool:
    """Whether today's judge adds the same lines and the same values."""
    lines = {(line.about, line.text) for line in after.lines}
    values = {result.unknown: result.value for result in after.results}
    return all((line.about, line.text) in lines for line in each.after.lines) and all(
        abs(values.get(result.unknown, float("inf")) - result.value) <= 1e-9 * abs(result.value)
        for result in each.after.results
    )


def _is_news(now: State, before: State, after: State) -> bool:
    """Whether what would be taken today is nothing that stands by now."""
    lines = {line.about for line in now.lines}
    new_lines = [line for line in after.lines if line not in before.lines]
    new_values = [result for result in after.results if result not in before.results]
    return any(line.about not in lines for line in new_lines) or any(
        result.unknown not in now.result for result in new_values
    )
