"""What did a student do on one problem: how far, with how many lines, hints and minutes?"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from tutor.cohort.facts import AnswerGiven, StudentWork
from tutor.cohort.owned import Owned, owned
from tutor.lesson import STEPS, Event, Lesson
from tutor.lesson.hints import LEVELS

PAUSE = 300.0
"""Nobody is at work longer than this, in seconds, between one event and the next; our own judgement."""


def work_of(problem: str, title: str, lessons: Sequence[Lesson], of: int = 0) -> StudentWork:
    """One student's lessons on one problem as a work; the answers in the order of the lessons.

    `of` is how many forces the problem asks for, where no lesson says so.
    """
    begun = [lesson for lesson in lessons if lesson.events]
    if not begun:
        return StudentWork(problem, title, "not begun", of=of)
    used = [level for lesson in begun for level in lesson.state.hints_used]
    answers = tuple(answer for lesson in begun for answer in answers_of(lesson))
    best = max(map(owned, begun), key=_far)
    seconds = sum(seconds_on_task(lesson.events) for lesson in begun)
    return StudentWork(
        problem,
        title,
        best.state,
        step=max((lesson.state.step for lesson in begun), key=STEPS.index),
        found=best.found,
        of=best.of,
        lines=sum(event.kind == "type" for lesson in begun for event in lesson.events),
        hints=len(used),
        told=used.count(len(LEVELS)),
        minutes=round(seconds / 60.0, 1),
        slips=sum(answer.verdict == "wrong" for answer in answers),
        lessons=len(begun),
        first=min(lesson.events[0].time for lesson in begun),
        last=max(lesson.state.last_time for lesson in begun),
        shown=best.shown,
        answers=answers,
    )


def _far(one: Owned) -> tuple[bool, int, bool]:
    """What makes one of several lessons on a problem the one that counts."""
    return one.state == "finished", one.found, one.state == "watched"


def answers_of(lesson: Lesson) -> tuple[AnswerGiven, ...]:
    """Every answer of a lesson that was judged, in its order."""
    return tuple(
        AnswerGiven(
            made.step, made.place, made.text, made.verdict, made.codes, made.time, made.others
        )
        for made in lesson.state.tries
        if made.verdict != "shown"
    )


def seconds_on_task(events: Sequence[Event]) -> float:
    """The time from event to event, each no longer than `PAUSE`; clocks put back count nothing."""
    gaps = (after.time - before.time for before, after in pairwise(events))
    return sum(min(max(gap, 0.0), PAUSE) for gap in gaps)
