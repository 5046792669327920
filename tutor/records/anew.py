"""Which other numbers are there for a student who does a problem once more?

Only for one who has no numbers of their own from an instructor: theirs never change.
"""

from __future__ import annotations

from collections.abc import Iterable

from tutor.model import Problem
from tutor.records.belonging import Belonging, problem_in, truss_text
from tutor.records.kept import Kept
from tutor.variants import NoVariant, variant_of

MOST_TRIED = 60


def can_be_anew(problem: Problem) -> bool:
    """Whether there are other numbers."""
    return problem.vary is not None


def then_told(problem: Problem, how: Belonging) -> str:
    """What is said of a kept lesson on another truss than the problem has now; empty on the same."""
    if not how.changes:
        return ""
    return ", with other numbers" if can_be_anew(problem) else ", on the truss as it was then"


def anew(problem: Problem, lessons: Iterable[Kept]) -> Problem:
    """The problem with numbers on which none of these lessons was done; as it is, where none are left."""
    if not can_be_anew(problem):
        return problem
    done = {truss_text(then) for each in lessons if (then := problem_in(each.content)) is not None}
    done.add(truss_text(problem))
    for turn in range(MOST_TRIED):
        try:
            found = variant_of(problem, student=f"once more {turn}", set="")
        except NoVariant:
            return problem
        if truss_text(found) not in done:
            return found
    return problem
