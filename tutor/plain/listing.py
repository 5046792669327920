"""How are the sets and their problems said, all at once or one set at a time?"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from tutor.model import Problem, ProblemSet
from tutor.progress.guide import Guide
from tutor.progress.where import BEGUN, DONE, FINISHED, NO_STEP
from tutor.records.belonging import key_of


def list_lines(sets: Sequence[ProblemSet], guide: Guide) -> Iterator[str]:
    """Every set with its problems, numbered throughout, and what is wrong with broken files."""
    for each, first in _numbered(sets):
        yield from _set_lines(each, first, guide)
    yield from dict.fromkeys(each.note for each in sets if each.note)
    if any(each.problems for each in sets):
        yield "Type the number of a problem, draw for a truss of your own, or leave."


def sets_lines(sets: Sequence[ProblemSet], guide: Guide) -> Iterator[str]:
    """Every set in one sentence, and what is wrong with broken files."""
    for number, (each, first) in enumerate(_numbered(sets), start=1):
        yield f"Set {number}: {each.title}. {_span(each, first, guide)}"
        yield from _broken_lines(each)
    yield from dict.fromkeys(each.note for each in sets if each.note)
    yield (
        "Type set and a number to hear its problems, the number of a problem to open it, draw for a "
        "truss of your own, or leave."
    )


def set_lines(sets: Sequence[ProblemSet], guide: Guide, number: int) -> Iterator[str]:
    """The problems of one set, the first being number 1."""
    if not 0 < number <= len(sets):
        yield f"Cannot read: the sets are 1 to {len(sets)}."
        return
    each, first = tuple(_numbered(sets))[number - 1]
    yield from _set_lines(each, first, guide)
    yield "Type the number of a problem to open it."


def _numbered(sets: Sequence[ProblemSet]) -> Iterator[tuple[ProblemSet, int]]:
    """Each set with the number of its first problem, which are numbered throughout."""
    first = 1
    for each in sets:
        yield each, first
        first += len(each.problems)


def _set_lines(each: ProblemSet, first: int, guide: Guide) -> Iterator[str]:
    yield f"Problems: {each.title}."
    for number, problem in enumerate(each.problems, start=first):
        level = f", level {problem.level}" if problem.level is not None else ""
        mark = _mark(guide, problem) or waits(guide, each.before(problem))
        yield f"{number}. {problem.title}{level}{mark}"
    yield from _broken_lines(each)


def _broken_lines(each: ProblemSet) -> Iterator[str]:
    for refused in each.broken.values():
        yield "A file of this set cannot be used:"
        yield from (str(defect) for defect in refused.problems)


def _span(each: ProblemSet, first: int, guide: Guide) -> str:
    """Which problems a set has, of which levels, and how many of them are finished."""
    count = len(each.problems)
    if not count:
        return "No problems."
    which = f"Problem {first}" if count == 1 else f"Problems {first} to {first + count - 1}"
    levels = sorted({p.level for p in each.problems if p.level is not None})
    span = ""
    if levels:
        ends = f"{levels[0]}" if len(levels) == 1 else f"{levels[0]} to {levels[-1]}"
        span = f", level{'s' if len(levels) > 1 else ''} {ends}"
    done = sum(guide.places.get(key_of(p)) in FINISHED for p in each.problems)
    return f"{which}{span}{f', {done} finished' if done else ''}."


def waits(guide: Guide, before: Sequence[Problem]) -> str:
    """What comes before a problem and is not finished yet."""
    titles = [p.title for p in before if guide.places.get(key_of(p)) not in FINISHED]
    return f", best after {' and '.join(titles)}" if titles else ""


def _mark(guide: Guide, problem: Problem) -> str:
    """How the last lesson on a problem was left, if there is one."""
    where = guide.places.get(key_of(problem))
    if where is None:
        return ""
    if where in FINISHED:
        return ", finished" if where == DONE else f", {where}"
    return f", {where}" if where in NO_STEP else f", {BEGUN}, {where}"
