"""What should be explained again before the next lecture? Three sentences that follow from the numbers.

They are the mistakes, the stops and the lines that had to be given which concern most students; each
says of how many. What concerns one student alone is no matter for a lecture.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from tutor.cohort.counting import wrong_answers
from tutor.cohort.facts import Stop, Student
from tutor.judge.called import called
from tutor.judge.claims import CLAIMS
from tutor.judge.mistakes import KINDS
from tutor.lesson.steps import STEP
from tutor.text import so_often

MOST = 3
FEWEST = 2
OFTEN = 3
"""So often a mistake is no slip any more; our own judgement."""
WORST = 0.5
"""A habit is made at least so often, beside what the same student did most: what follows from another
mistake, or is told by it once in a while, is none of its own. Our own judgement."""
CHOSEN = frozenset(name for name, step in STEP.items() if step.chosen)
"""The steps in which answers are chosen, not typed."""
NOBODY = "Nobody has handed in anything that can be read, so there is nothing to explain again."
NOTHING_ELSE = "Nothing else was met by more than one of the {of}."
NOTHING = "Nothing was met by more than one of the {of} students who handed in."
ONE_ALONE = "One student alone has handed in: what to explain to all follows from several."
UNNAMED = frozenset({"not-equilibrium"})
"""Codes that do not say what there would be to explain."""


@dataclass(frozen=True)
class Matter:
    """One thing that may have to be explained, in words: of how many students it is a habit (`often`),
    and how many it concerns at all."""

    often: int
    students: int
    words: str


def again(
    students: Sequence[Student], stops: Sequence[Stop], titles: Mapping[str, str]
) -> tuple[str, ...]:
    """The sentences, habits of most students first: three, or fewer where the numbers say no more."""
    of = sum(student.handed_in for student in students)
    if not of:
        return (NOBODY,)
    matters = [
        *_mistaken(students, titles, of),
        *_stopped(stops, titles, of),
        *_told(students, titles, of),
    ]
    concerned = [matter for matter in matters if matter.students >= FEWEST]
    ranked = sorted(concerned, key=lambda m: (-m.often, -m.students, m.words))[:MOST]
    sentences = tuple(matter.words for matter in ranked)
    if len(sentences) == MOST:
        return sentences
    last = NOTHING_ELSE if sentences else ONE_ALONE if of == 1 else NOTHING
    return (*sentences, last.format(of=of))


def _mistaken(students: Sequence[Student], titles: Mapping[str, str], of: int) -> Iterator[Matter]:
    """Mistakes, those in what is typed apart from those in what is chosen.

    What anybody does once is a slip; it counts by the students of whom it is a habit. It is said where
    most of them did it, or most of all where it is nobody's habit.
    """
    times: defaultdict[tuple[str, bool], Counter[str]] = defaultdict(Counter)
    where: defaultdict[tuple[str, bool], set[tuple[str, str, str]]] = defaultdict(set)
    for student, work, answer in wrong_answers(students):
        for code in dict.fromkeys(answer.codes):
            if code not in UNNAMED:
                what = code, answer.step in CHOSEN
                times[what][student.id] += 1
                where[what].add((student.id, work.problem, answer.step))
    worst = {
        who: max(each[who] for each in times.values()) for each in times.values() for who in each
    }
    for (code, chosen), by_student in sorted(times.items()):
        often = sum(count >= OFTEN for count in by_student.values())
        habitual = {who for who, n in by_student.items() if n >= max(OFTEN, WORST * worst[who])}
        places = Counter(
            (problem, step)
            for who, problem, step in where[code, chosen]
            if who in habitual or not habitual
        )
        problem, step = max(sorted(places), key=places.__getitem__)
        habit = f", {often} of them {OFTEN} times or more" if often else ""
        words = (
            f"Explain again “{called(code)}”: {len(by_student)} of {of} students did so{habit}, "
            f"{so_often(by_student.total())} in all, most in {titles[problem]} ({step}). "
            f"{why(code, step)}"
        )
        yield Matter(len(habitual), len(by_student), words.strip())


def why(code: str, step: str) -> str:
    """Why students make a mistake, in one sentence of its own file.

    That is of lines, or of what is claimed; a kind of line that is said of the first step is no line.
    """
    known = CLAIMS.get(code) or (None if step == "idealise" else KINDS.get(code))
    return "" if known is None else known.why


def _stopped(stops: Sequence[Stop], titles: Mapping[str, str], of: int) -> Iterator[Matter]:
    """Steps of a problem that students did not get beyond, whatever they tried last."""
    at: defaultdict[tuple[str, str], int] = defaultdict(int)
    for stop in stops:
        at[stop.problem, stop.step] += stop.students
    for (problem, step), count in sorted(at.items()):
        words = (
            f"Show {titles[problem]} from the step “{step}” on: {count} of {of} students "
            "stopped there."
        )
        yield Matter(count, count, words)


def _told(students: Sequence[Student], titles: Mapping[str, str], of: int) -> Iterator[Matter]:
    """Problems in which the line itself was asked for."""
    who: defaultdict[str, int] = defaultdict(int)
    lines: defaultdict[str, int] = defaultdict(int)
    for student in students:
        for work in student.problems:
            who[work.problem] += work.told > 0
            lines[work.problem] += work.told
    for problem, count in sorted(who.items()):
        words = (
            f"Work {titles[problem]} through on the board: {count} of {of} students asked for "
            f"a line itself there, {so_often(lines[problem])}."
        )
        yield Matter(count, count, words)
