"""What is the key of a problem whose numbers each student has of their own? A row for each student."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import takewhile

from tutor.model import Problem
from tutor.paper.blocks import Block, Paragraph, PrintedSheet, PrintedTable
from tutor.paper.held import what_it_is
from tutor.paper.lines import rounded
from tutor.paper.sheets import key
from tutor.paper.tables import way
from tutor.statics import Answer, forces_follow, solve

WIDTH = 100
"""So many letters stand beside each other in a table on a page; more forces go into another one."""
BESIDE = 4
"""The letters that the room between two columns takes."""


def class_key(problems: Sequence[tuple[str, Problem]]) -> PrintedSheet:
    """The answers of one problem for each student: (how they are called, their problem).

    Reactions with their sense, members with T or C; one answer for all where the truss is asked about
    and statics does not solve it. Raises `Unsolvable` of any other.
    """
    if not forces_follow(problems[0][1]):
        return key(problems[0][1])
    answers = [(whom, solve(problem)) for whom, problem in problems]
    return PrintedSheet(
        f"{_title([problem.title for _, problem in problems])}: key", "", tuple(_blocks(answers))
    )


def _title(titles: Sequence[str]) -> str:
    """The title of a problem; where it follows each student's numbers, what of it is the same, up to
    its last comma where it has one."""
    if len(set(titles)) == 1:
        return titles[0]
    words = zip(*(title.split() for title in titles), strict=False)
    alike = [each[0] for each in takewhile(lambda each: len(set(each)) == 1, words)]
    same = " ".join(alike)
    return same.rpartition(",")[0] or (f"{same} …" if same else titles[0])


def _blocks(answers: Sequence[tuple[str, Answer]]) -> Iterator[Block]:
    problem = answers[0][1].problem
    yield from what_it_is(problem)
    yield Paragraph(f"Forces in {problem.force}; T is tension, C compression.")
    whom = ("student", *(each for each, _ in answers))
    columns = [(name, *(_cell(answer, name) for _, answer in answers)) for name in problem.unknowns]
    for beside in _tables(columns, WIDTH - _width(whom)):
        head, *rows = zip(whom, *beside, strict=True)
        yield PrintedTable(head, tuple(rows))


def _tables(columns: Sequence[Sequence[str]], room: int) -> list[Sequence[Sequence[str]]]:
    """The columns in as few tables as there is room for, about as many in each."""
    of = len(columns)
    for count in range(1, of + 1):
        tables = [columns[n * of // count : (n + 1) * of // count] for n in range(count)]
        if all(sum(map(_width, table)) <= room for table in tables):
            break
    return tables


def _width(column: Sequence[str]) -> int:
    return max(map(len, column)) + BESIDE


def _cell(answer: Answer, name: str) -> str:
    value = answer.value(name)
    size = rounded(abs(value))
    if name in answer.problem.member:
        return f"{size} {'T' if value > 0 else 'C'}" if value else size
    return f"{size} {way(answer.problem.reaction[name], value)}".strip()
