"""Is every arrow head to be seen, whatever else is drawn at its joint?"""

from __future__ import annotations

import pytest
from every_problem import SHARED
from hypothesis import given
from hypothesis import strategies as st
from test_figure_laws import GLYPHS, figures

from tutor.figure import Figure, Glyphs, joint_figure, result_figure, to_cells, truss_figure
from tutor.figure.heads import THROUGH, Cell, cell_of, cells_of
from tutor.figure.layout import lay_out
from tutor.figure.signs import MARKS
from tutor.model import load_problem
from tutor.statics import solve

SIZES = ((76, 14), (76, 20), (64, 28))


def heads_of(figure: Figure, size: tuple[int, int]) -> list[Cell]:
    return [cell_of(head.tip) for head in lay_out(figure, *size, snap=True).heads]


CRAMPED = ((30, 8), (40, 12), (52, 14), (76, 20), (120, 40))


@given(figures(), st.sampled_from(CRAMPED), st.sampled_from(GLYPHS))
def test_no_arrow_head_is_hidden_by_a_joint_a_member_another_head_or_anything_drawn_over_it(
    figure: Figure, size: tuple[int, int], glyphs: Glyphs
) -> None:
    sheet = lay_out(figure, *size, snap=True)
    joints = {cell_of(sign.at) for sign in sheet.signs if sign.symbol == "joint"}
    members = {
        cell
        for line in sheet.lines
        if line.owner and line.role not in THROUGH
        for cell in cells_of(line)
    }
    heads = heads_of(figure, size)
    page = to_cells(figure, *size, glyphs)
    for column, row in heads:
        assert 0 <= column < size[0]
        assert 0 <= row < size[1]
        assert (column, row) not in joints | members
        assert heads.count((column, row)) == 1
        assert page.rows[row][column][0] in MARKS[glyphs].heads
    for column, row in joints:
        marks = MARKS[glyphs]
        assert page.rows[row][column][0] in {marks.joint, marks.joint_lit, marks.moment_point}


@pytest.mark.parametrize("path", SHARED)
def test_no_head_of_our_problems_stands_on_a_member(path) -> None:
    problem = load_problem(path)
    values = dict(solve(problem).values)
    free = dict.fromkeys(problem.reaction, "")
    drawn = [
        truss_figure(problem),
        truss_figure(problem, reactions=free),
        result_figure(problem, values),
        *(joint_figure(problem, joint.name, known=values) for joint in problem.joints),
    ]
    for figure in drawn:
        for size in SIZES:
            sheet = lay_out(figure, *size, snap=True)
            members = {cell for line in sheet.lines if line.owner for cell in cells_of(line)}
            assert not members & set(heads_of(figure, size)), figure.title
