"""What should be explained again before the next lecture? Three sentences that follow from the numbers.

They are the mistakes, the stops and the lines that had to be given which concern most students; each
says of how many. What concerns one student alone is no matter for a lecture.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from tutor.cohort.facts import Kind, Stop, Student
from tutor.judge.claims import CLAIMS
from tutor.judge.mistakes import KINDS

MOST = 3
FEWEST = 2
NOBODY = "Nobody has handed in anything that can be read, so there is nothing to explain again."
NOTHING_ELSE = "Nothing else was met by more than one of the {of}."
UNNAMED = frozenset({"not-equilibrium"})
"""Codes that do not say what there would be to explain."""


@dataclass(frozen=True)
class Matter:
    """One thing that may have to be explained: how many students it concerns, and in words."""

    students: int
    weight: int
    words: str


def again(
    students: Sequence[Student],
    kinds: Sequence[Kind],
    stops: Sequence[Stop],
    titles: Mapping[str, str],
) -> tuple[str, ...]:
    """The sentences, most students first: three, or fewer where the numbers say no more."""
    of = sum(student.handed_in for student in students)
    if not of:
        return (NOBODY,)
    matters = [
        *_mistaken(kinds, titles, of),
        *_stopped(stops, titles, of),
        *_told(students, titles, of),
    ]
    concerned = [matter for matter in matters if matter.students >= FEWEST]
    ranked = sorted(concerned, key=lambda m: (-m.students, -m.weight, m.words))[:MOST]
    sentences = tuple(matter.words for matter in ranked)
    return sentences if len(sentences) == MOST else (*sentences, NOTHING_ELSE.format(of=of))


def _mistaken(kinds: Sequence[Kind], titles: Mapping[str, str], of: int) -> Iterator[Matter]:
    for kind in kinds:
        if kind.code in UNNAMED:
            continue
        where = f"most in {titles[kind.problem]} ({kind.step})"
        words = (
            f"Explain again “{kind.called}”: {kind.students} of {of} students did so, "
            f"{_times(kind.times)}, {where}. {why(kind.code, kind.step)}"
        )
        yield Matter(kind.students, kind.times, words.strip())


def why(code: str, step: str) -> str:
    """Why students make a mistake, in one sentence of its own file; that is of lines and supports."""
    known = KINDS.get(code) or CLAIMS.get(code)
    return "" if known is None or step == "idealise" else known.why


def _times(count: int) -> str:
    return "once" if count == 1 else f"{count} times"


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
            f"a line itself there, {_times(lines[problem])}."
        )
        yield Matter(count, lines[problem], words)
