"""What is the key of a problem whose numbers each student has of their own? A row for each student."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import takewhile

from tutor.model import Problem
from tutor.paper.blocks import Block, Grid, Paper, Words
from tutor.paper.held import what_it_is
from tutor.paper.lines import rounded
from tutor.paper.sheets import key, way
from tutor.statics import Answer, forces_follow, solve

MOST_COLUMNS = 7
"""So many forces stand beside the students on a page; more of them go into another table."""


def class_key(problems: Sequence[tuple[str, Problem]]) -> Paper:
    """The answers of one problem for each student: (how they are called, their problem).

    Reactions with their sense, members with T or C; one answer for all where the truss is asked about
    and statics does not solve it. Raises `Unsolvable` of any other.
    """
    if not forces_follow(problems[0][1]):
        return key(problems[0][1])
    answers = [(whom, solve(problem)) for whom, problem in problems]
    return Paper(
        f"{_title([problem.title for _, problem in problems])}: key", "", tuple(_blocks(answers))
    )


def _title(titles: Sequence[str]) -> str:
    """The title of a problem; where it follows each student's numbers, what of it is the same."""
    if len(set(titles)) == 1:
        return titles[0]
    words = zip(*(title.split() for title in titles), strict=False)
    alike = [each[0] for each in takewhile(lambda each: len(set(each)) == 1, words)]
    return f"{' '.join(alike)} …" if alike else titles[0]


def _blocks(answers: Sequence[tuple[str, Answer]]) -> Iterator[Block]:
    problem = answers[0][1].problem
    yield from what_it_is(problem)
    yield Words(f"Forces in {problem.force}; T is tension, C compression.")
    every = tuple(problem.unknowns)
    tables = -(-len(every) // MOST_COLUMNS)
    for table in range(tables):
        names = every[table * len(every) // tables : (table + 1) * len(every) // tables]
        rows = tuple((whom, *(_cell(answer, name) for name in names)) for whom, answer in answers)
        yield Grid(("student", *names), rows)


def _cell(answer: Answer, name: str) -> str:
    value = answer.value(name)
    size = rounded(abs(value))
    if name in answer.problem.member:
        return f"{size} {'T' if value > 0 else 'C'}" if value else size
    return f"{size} {way(answer.problem.reaction[name], value)}".strip()
