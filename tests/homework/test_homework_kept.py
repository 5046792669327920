"""Do the lines in which a paper is kept write the same paper again?"""

from __future__ import annotations

from itertools import accumulate

import pytest
from families import plain_problem

from tutor.homework import Paper, lines_of, read_paper, write_line
from tutor.model import Load, Problem, Support
from tutor.notation import Exact
from tutor.notation.naming.symbols import FREE_LETTERS, LOAD_LETTERS


def mast(force: str, length: str) -> Problem:
    return plain_problem(
        (("A", 0, 0), ("B", 8, 0), ("C", 4, 3)),
        ("AB", "BC", "AC"),
        (Support("A", "pin"), Support("B", "roller")),
        (Load("C", (("down", Exact.of(12)), ("right", Exact.of(6)))),),
        force=force,
        length=length,
    )


MAST = mast("kN", "m")
PAGE = """\
let a = 4 m
P = 12 kN
θ = 36.87°
A_x drawn left
AC drawn push
BC drawn pull
A_x = 6
joint C
AC = 6.25
BC = -13.75
ΣFy: -P - AC sin θ - BC sin θ = 0
joint A
AB = 11
ΣFx: A_x + AB + AC cos θ = 0
order C A"""


def again(problem: Problem, paper: Paper) -> Paper:
    written = read_paper(problem, "\n".join(lines_of(problem, paper)))
    assert not written.refused
    return written.paper


@pytest.mark.parametrize("rows", range(1, 16))
def test_a_paper_is_the_same_once_it_was_kept_and_read_again(rows: int) -> None:
    written = read_paper(MAST, "\n".join(PAGE.splitlines()[:rows]))
    assert not written.refused
    assert again(MAST, written.paper) == written.paper


@pytest.mark.parametrize("letter", sorted(FREE_LETTERS | LOAD_LETTERS))
@pytest.mark.parametrize(("force", "length"), [("kN", "m"), ("lb", "ft"), ("N", "mm")])
def test_a_letter_for_a_length_or_a_load_is_kept_though_a_joint_has_the_same(
    letter: str, force: str, length: str
) -> None:
    problem = mast(force, length)
    paper = Paper(letters={letter: 4.25})
    assert again(problem, paper) == paper


def test_a_paper_shows_all_that_stands_on_it_and_what_is_not_done() -> None:
    papers = list(
        accumulate(
            PAGE.splitlines(), lambda p, row: write_line(MAST, p, row).paper, initial=Paper()
        )
    )
    assert papers[0].shown(MAST) == ("not done: A_x, A_y, B_y, AB, BC, AC",)
    assert papers[-1].shown(MAST) == (
        *("A_x = 6", "AB = 11", "BC = -13.75", "AC = 6.25"),
        *("A_x drawn left", "AC drawn pushing", "BC drawn pulling"),
        "line 1, ΣFy at joint C: -P - AC sin θ - BC sin θ = 0",
        "line 2, ΣFx at joint A: A_x + AB + AC cos θ = 0",
        *("a = 4", "P = 12", "θ = 36.87", "order: C, A", "not done: A_y, B_y"),
    )
    full = write_line(MAST, write_line(MAST, papers[-1], "A_y = 3.75").paper, "B_y = 8.25").paper
    assert not any(row.startswith("not done") for row in full.shown(MAST))
