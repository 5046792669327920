"""Are the lines that textbooks print right, each by itself and as a whole walk?

The sources stand beside the lines in `worked_examples.py`; all of them are from memory.
"""

from __future__ import annotations

import pytest
from student import REASONS, what_acts
from worked_examples import BEER_JOHNSTON_WORKED, WORKED, Worked

from tutor.judge import Equation, Value, judge
from tutor.judge.about import as_text
from tutor.lesson import Lesson

BY_TITLE = pytest.mark.parametrize("worked", WORKED, ids=lambda worked: worked.problem.title)


def named(text: str, worked: Worked) -> str:
    """The unknown of a printed value, as the problem calls it."""
    typed = text.partition(" = ")[0].removeprefix("F_")
    member = worked.problem.between(typed[0], typed[1])
    return member.name if member else typed


@BY_TITLE
def test_every_printed_line_and_value_is_right_by_itself(worked: Worked) -> None:
    senses = {**worked.senses, **worked.drawn}
    known: dict[str, str] = {}
    for about, text in [*worked.steps, *worked.checks]:
        asked = about if about is not None else Value(named(text, worked))
        verdict = judge(worked.problem, asked, text, senses=senses, known=known)
        assert verdict.right, (text, verdict.text)
        remarks = [remark for remark in verdict.remarks if remark.code != "sizes"]
        assert not remarks, (text, remarks)
        if about is None or text == "C_x = 0":
            known[named(text, worked)] = text.partition(" = ")[2]
    assert known.keys() == set(worked.problem.unknowns)


@BY_TITLE
@pytest.mark.parametrize("turned", [("- ", "+ "), ("= 0", "= 300"), ("F_", "1.2 F_")])
def test_a_printed_line_with_one_thing_changed_is_not_right(worked: Worked, turned) -> None:
    known: dict[str, str] = {}
    changed = 0
    for about, text in worked.steps:
        wrong = text.replace(*turned, 1)
        if about is not None and wrong != text:
            changed += 1
            senses = {**worked.senses, **worked.drawn}
            assert not judge(worked.problem, about, wrong, senses=senses, known=known).right, wrong
        if about is None or text == "C_x = 0":
            known[named(text, worked)] = text.partition(" = ")[2]
    assert changed


def begun(worked: Worked) -> Lesson:
    """A lesson in which the free body is drawn as the book draws it."""
    problem = worked.problem
    lesson = Lesson(problem)
    m, r, n = len(problem.members), len(problem.reactions), 2 * len(problem.joints)
    lesson.take("reasons", chosen=REASONS)
    assert lesson.take("count", m=m, r=r, **{"2j": n}).accepted
    for support in problem.supports:
        lesson.take("support", joint=support.joint, acts=what_acts(problem, support))
    for unknown, sense in worked.senses.items():
        lesson.take("sense", unknown=unknown, sense=sense)
    assert lesson.take("turning", positive="counter-clockwise").accepted
    for member, sense in worked.drawn.items():
        assert lesson.take("assume", member=member, sense=sense).accepted
    return lesson


def write(lesson: Lesson, about: Equation | None, text: str) -> None:
    if about is not None and about.joint not in (None, lesson.state.joint):
        assert lesson.take("joint", joint=about.joint).accepted
    where = {} if about is None else {"about": as_text(about)}
    reply = lesson.take("type", text=text, **where)
    assert reply.accepted, (text, reply.text)
    assert all(say.tone != "wrong" for say in reply.said)


@BY_TITLE
def test_the_printed_solution_is_a_whole_walk_in_the_order_of_the_book(worked: Worked) -> None:
    lesson = begun(worked)
    for about, text in worked.steps:
        write(lesson, about, text)
    assert lesson.state.step == "close"
    assert all(t.verdict == "right" for t in lesson.state.tries)


def test_the_printed_checks_close_the_truss_with_nothing_left_over() -> None:
    for about, text in BEER_JOHNSTON_WORKED.checks:
        lesson = begun(BEER_JOHNSTON_WORKED)
        for step in BEER_JOHNSTON_WORKED.steps:
            write(lesson, *step)
        assert as_text(about) in [option.key for option in lesson.ask.options]
        reply = lesson.take("type", text=text, about=as_text(about))
        assert "nothing is left over" in reply.text, reply.text
        assert lesson.done


def test_the_table_of_the_printed_solution_is_the_printed_one() -> None:
    lesson = begun(BEER_JOHNSTON_WORKED)
    for step in BEER_JOHNSTON_WORKED.steps:
        write(lesson, *step)
    rows = {row.member: f"{abs(row.force):g} {row.letter}" for row in lesson.table.rows}
    assert rows == {
        "AB": "1500 T",
        "AD": "2500 C",
        "DB": "2500 T",
        "DE": "3000 C",
        "BE": "3750 C",
        "BC": "5250 T",
        "EC": "8750 C",
    }
