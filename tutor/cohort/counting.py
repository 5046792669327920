"""What went wrong in the class as a whole: which mistakes, where, in whose lines, and where did students
stop?"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence

from tutor.cohort.facts import AnswerGiven, KindOverSet, Mistaken, Stop, Student, StudentWork
from tutor.judge.called import called
from tutor.lesson import STEPS
from tutor.text import printable

Place = tuple[str, str, str]
"""A mistake's code, its problem, its step."""


def wrong_answers(
    students: Sequence[Student],
) -> Iterator[tuple[Student, StudentWork, AnswerGiven]]:
    """Every wrong answer of the class, with whose it is and on what."""
    for student in students:
        for work in student.problems:
            for answer in work.answers:
                if answer.verdict == "wrong":
                    yield student, work, answer


def mistakes(students: Sequence[Student]) -> tuple[Mistaken, ...]:
    """The mistakes by kind, problem and step: those of most students first, then the most frequent.

    Of lines typed equally often the shortest come first: where each student has own numbers, most are
    typed once.
    """
    times: Counter[Place] = Counter()
    who: defaultdict[Place, set[str]] = defaultdict(set)
    typed: defaultdict[Place, Counter[str]] = defaultdict(Counter)
    for student, work, answer in wrong_answers(students):
        for code in dict.fromkeys(answer.codes):
            place = code, work.problem, answer.step
            times[place] += 1
            who[place].add(student.id)
            if answer.text:
                typed[place][printable(answer.text)] += 1
    order = {name: at for at, name in enumerate(_names(students))}

    def rank(place: Place) -> tuple[int, int, int, int, str]:
        code, problem, step = place
        return -len(who[place]), -times[place], order[problem], STEPS.index(step), code

    found = []
    for place in sorted(times, key=rank):
        code, problem, step = place
        lines = sorted(typed[place].items(), key=lambda item: (-item[1], len(item[0]), item[0]))
        texts, counts = tuple(t for t, _ in lines), tuple(n for _, n in lines)
        count = len(who[place])
        found.append(
            Mistaken(code, called(code), problem, step, times[place], count, texts, counts)
        )
    return tuple(found)


def _names(students: Sequence[Student]) -> list[str]:
    """The problems of the set in its order."""
    return [work.problem for work in students[0].problems] if students else []


def kinds(students: Sequence[Student], places: Sequence[Mistaken]) -> tuple[KindOverSet, ...]:
    """The mistakes over the whole set, those of most students first; `places` are by problem and step."""
    who: defaultdict[str, set[str]] = defaultdict(set)
    for student, _, answer in wrong_answers(students):
        for code in answer.codes:
            who[code].add(student.id)
    first: dict[str, Mistaken] = {}
    times: Counter[str] = Counter()
    for place in places:
        first.setdefault(place.code, place)
        times[place.code] += place.times
    ranked = sorted(who, key=lambda code: (-len(who[code]), -times[code], code))
    return tuple(
        KindOverSet(
            code,
            called(code),
            times[code],
            len(who[code]),
            first[code].problem,
            first[code].step,
        )
        for code in ranked
    )


def stops(students: Sequence[Student]) -> tuple[Stop, ...]:
    """Where students stopped in what they have begun and not finished, most students first."""
    found: Counter[tuple[str, str, str]] = Counter()
    for student in students:
        for work in student.problems:
            if work.state == "begun":
                found[work.problem, work.step, _tried_last(work)] += 1
    order = {name: at for at, name in enumerate(_names(students))}
    ranked = sorted(
        found.items(), key=lambda item: (-item[1], order[item[0][0]], item[0][1], item[0][2])
    )
    return tuple(Stop(*place, count) for place, count in ranked)


def _tried_last(work: StudentWork) -> str:
    """The place of the last answer, where it was wrong."""
    last = max(work.answers, key=lambda answer: answer.time, default=None)
    return last.place if last is not None and last.verdict == "wrong" else ""
