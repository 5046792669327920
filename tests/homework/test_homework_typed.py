"""Is what a student types of a homework put on the paper as it was meant, and nothing else?"""

from __future__ import annotations

import pytest
from families import plain_problem
from hypothesis import given, settings
from hypothesis import strategies as st
from strategies import make_truss, pratt
from students_work import homework

from tutor.homework import Paper, read_paper, review, write_line
from tutor.homework.kept import lines_of
from tutor.homework.typed import write_row
from tutor.judge import Along, Equation, Fx, Fy, M
from tutor.model import Load, Problem, Support
from tutor.notation import Exact

MAST = plain_problem(
    (("A", 0, 0), ("B", 8, 0), ("C", 4, 3)),
    ("AB", "BC", "AC"),
    (Support("A", "pin"), Support("B", "roller")),
    (Load("C", (("down", Exact.of(12)), ("right", Exact.of(6)))),),
)
BRIDGE = pratt(4, 3, 4, 12)
WORDS = (
    "joint",
    "whole",
    "order",
    "draw",
    "push",
    "strike",
    "sense",
    "A_x",
    "AB",
    "CA",
    "C",
    "ΣFx",
)
TYPED = st.one_of(
    st.text(max_size=60),
    st.text(alphabet="ABCFxyT_ =+-*/().,;:0123456789°ΣMk{}#\t\x1b[m\u202e", max_size=60),
    st.lists(st.sampled_from((*WORDS, "=", ":", "12", "7,5", "C", "left")), max_size=8).map(
        " ".join
    ),
)


@pytest.mark.parametrize(
    ("text", "values"),
    [
        ("AB = 7.5 C", {"AB": "7.5 C"}),
        ("BA=7.5C", {"AB": "7.5C"}),
        ("AB = 7.5 C, BC = -3; A_x = 6 left", {"AB": "7.5 C", "BC": "-3", "A_x": "6 left"}),
        ("AB = 7.5 C BC = 4.5 T", {"AB": "7.5 C", "BC": "4.5 T"}),
        ("AB = 7.5 kN (C) and BC = 4.5 kN (T)", {"AB": "7.5 kN (C)", "BC": "4.5 kN (T)"}),
        ("AB = 7,5 C, BC = 4,5", {"AB": "7,5 C", "BC": "4,5"}),
        ("F_AB = -3/5 * 10 # from joint A", {"AB": "-3/5 * 10"}),
        ("AB\t7,5\tC", {"AB": "7.5 C"}),
        ("AB, 7.5", {"AB": "7.5"}),
        ("AB 7.5 C", {"AB": "7.5 C"}),
        ("Ax: 6 left", {"A_x": "6 left"}),
        ("AB = -", {}),
        ("# AB = 7", {}),
        ("", {}),
    ],
)
def test_values_are_written_down_as_typed(text: str, values: dict[str, str]) -> None:
    written = write_line(MAST, Paper(), text)
    assert dict(written.paper.values) == values
    assert written.refused == ()


@pytest.mark.parametrize(
    ("text", "about"),
    [
        ("ΣFx at C: 6 + 0.8 F_BC - 0.8 F_AC = 0", Fx("C")),
        ("joint C, ΣFy: -12 - 0.6 F_BC - 0.6 F_AC = 0", Fy("C")),
        ("sum Fx: A_x + 6 = 0", Fx("B")),
        ("ΣM_A: 8 B_y - 12*4 - 6*3 = 0", M("A")),
        ("along 36.9 at A: F_AC + 0.8 F_AB = 0", Along(36.86989764584402, "A")),
    ],
)
def test_a_line_with_its_heading_is_a_line_of_that_equation(text: str, about: Equation) -> None:
    paper = write_line(MAST, Paper(), "joint B").paper
    written = write_line(MAST, paper, text)
    assert written.paper.lines == ((about, text),)
    assert written.refused == ()


def test_after_whole_a_sum_is_of_the_whole_truss() -> None:
    paper = write_line(MAST, Paper(place="B"), "whole truss").paper
    assert write_line(MAST, paper, "ΣFx: A_x + 6 = 0").paper.lines[0][0] == Fx()


def test_arrows_and_the_order_are_taken_down() -> None:
    paper = Paper()
    for text in ("draw A_x left", "B_y drawn up", "push AC", "pull AB", "order: B, C > A"):
        written = write_line(MAST, paper, text)
        assert written.refused == (), text
        paper = written.paper
    assert dict(paper.senses) == {"A_x": "left", "B_y": "up", "AC": "C", "AB": "T"}
    assert paper.order == ("B", "C", "A")
    assert write_line(MAST, paper, "order").paper.order == ()


def test_a_value_and_a_line_are_taken_off_again() -> None:
    paper = write_line(MAST, Paper(), "AB = 3, BC = 2").paper
    paper = write_line(MAST, paper, "ΣFx at C: 6 = 0").paper
    assert dict(write_line(MAST, paper, "AB =").paper.values) == {"BC": "2"}
    assert write_line(MAST, paper, "strike 1").paper.lines == ()


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("XY = 3", "no member or reaction XY"),
        ("A_z 3", "did you mean"),
        ("AB = lots", "lots"),
        ("AB = 1,500", "1500 or 1.500"),
        ("AB = 7 left", "AB is written with T or C"),
        ("A_x = 7 C", "A_x is written with a sign or a direction"),
        ("F_AB + F_AC = 0", "Say which equation this is"),
        ("AB = AC", "Say which equation this is"),
        ("7 AB = 31 AC - 4", "Say which equation this is"),
        ("ΣFx at Q: F_AB = 0", "Q"),
        ("ΣFx at C: F_AB + = 0", "+"),
        ("joint Q", "the joints are A, B, C"),
        ("order C Q", "There is no joint Q"),
        ("draw A_x up", "A_x is drawn right or left"),
        ("push A_x", "A_x is drawn right or left"),
        ("strike 3", "there is none"),
        ("what now", "a value is like AB = 7.5 C"),
        ("x" * 501, "500 characters at most"),
    ],
)
def test_what_cannot_be_read_is_told_and_leaves_the_paper_as_it_was(text: str, says: str) -> None:
    paper = Paper({"BC": "2"})
    written = write_line(MAST, paper, text)
    assert written.paper == paper
    (refused,) = written.refused
    assert says in refused.message


def test_one_bad_value_in_a_line_does_not_lose_the_good_ones() -> None:
    written = write_line(MAST, Paper(), "AB = 3, XY = 4, BC = 5")
    assert dict(written.paper.values) == {"AB": "3", "BC": "5"}
    assert len(written.refused) == 1


@pytest.mark.parametrize(
    ("text", "values"),
    [
        ("AB -43.13, BC 57.5", {"AB": "-43.13", "BC": "57.5"}),
        ("AB -43,13, BC 57,5", {"AB": "-43.13", "BC": "57.5"}),
        ("AB -43.13 BC 57.5", {"AB": "-43.13", "BC": "57.5"}),
        ("AB -43.13,BC 57.5", {"AB": "-43.13", "BC": "57.5"}),
        ("AB 4 C, BC = 5 T", {"AB": "4 C", "BC": "5 T"}),
        ("A_x 6 left; AB 4 T and BC 5", {"A_x": "6 left", "AB": "4 T", "BC": "5"}),
        ("AB, 4, C", {"AB": "4 C"}),
    ],
)
def test_several_values_need_no_equals_signs(text: str, values: dict[str, str]) -> None:
    written = write_line(MAST, Paper(), text)
    assert dict(written.paper.values) == values
    assert written.refused == ()


def test_a_bad_value_among_several_is_told_and_the_others_are_taken() -> None:
    written = write_line(MAST, Paper(), "AB plenty, BC 57.5")
    assert dict(written.paper.values) == {"BC": "57.5"}
    (refused,) = written.refused
    assert refused.message.startswith("AB:")
    assert "plenty" in refused.message


@pytest.mark.parametrize(
    ("text", "column"), [("5 + * 3", 5), ("12 BC", 4), ("lots", 1), ("3 % 4", 3)]
)
def test_the_column_told_in_a_row_is_one_of_what_was_typed(text: str, column: int) -> None:
    (refused,) = write_row(MAST, Paper(), "AC", text).refused
    assert f"At column {column}," in refused.message


def test_a_row_takes_its_value_and_those_named_behind_it() -> None:
    written = write_row(MAST, Paper(), "AC", "-43.13, BC 57.5")
    assert dict(written.paper.values) == {"AC": "-43.13", "BC": "57.5"}
    assert dict(write_row(MAST, written.paper, "AC", "").paper.values) == {"BC": "57.5"}


@given(TYPED, st.sampled_from((MAST, BRIDGE)))
@settings(max_examples=133)
def test_whatever_is_typed_is_noted_or_told_in_plain_text(text: str, problem: Problem) -> None:
    paper = Paper({problem.members[0].name: "2"})
    written = write_line(problem, paper, text)
    assert all(refused.message.isprintable() for refused in written.refused)
    assert all(refused.text.isprintable() for refused in written.refused)
    if not written.noted:
        assert written.paper == paper
    review(problem, written.paper.work(problem))
    assert all("\x1b" not in line for line in written.paper.shown(problem))


@given(st.lists(TYPED, max_size=6).map("\n".join))
@settings(max_examples=50)
def test_no_file_of_work_makes_its_reading_raise(text: str) -> None:
    written = read_paper(MAST, text)
    review(MAST, written.paper.work(MAST))
    assert all(refused.name.startswith("line ") for refused in written.refused)


@given(st.integers(0, 10**9))
@settings(max_examples=20)
def test_a_homework_typed_out_is_the_homework(seed: int) -> None:
    both = homework(seed)
    if both is None:
        return
    done = both[0]
    work = done.work(order=done.order)
    typed = [f"{n} = {v}" for part in ("reactions", "forces") for n, v in work[part].items()]
    typed.append("order " + " ".join(done.order))
    written = read_paper(done.problem, "\n".join(typed))
    assert written.refused == ()
    assert review(done.problem, written.paper.work(done.problem)) == review(done.problem, work)


def test_a_table_of_a_spreadsheet_is_a_file_of_work_with_its_heading_passed_over() -> None:
    written = read_paper(MAST, "﻿member;force;kind\nAB;11,00;T\nAC;1.006,25;C\nBC;13,75;C\nA_x;-6\n")
    assert written.refused == ()
    assert dict(written.paper.values) == {
        "AB": "11.00 T",
        "AC": "1006.25 C",
        "BC": "13.75 C",
        "A_x": "-6",
    }


def test_a_line_of_a_file_that_cannot_be_read_is_told_with_its_number() -> None:
    written = read_paper(MAST, "AB = 11\n\n# joint C\nwhat is this\nQQ, 3\n")
    assert [refused.name for refused in written.refused] == ["line 4", "line 5"]


def test_a_file_that_is_no_work_is_refused_whole() -> None:
    problem = make_truss(7, 5)
    (refused,) = read_paper(problem, "AB = 3\n" * 3000).refused
    assert "is it another file" in refused.message


# By hand: A_x = -6, B_y = (6*3 + 12*4)/8 = 8.25, A_y = 3.75; AC = -3.75*5/3 = -6.25, AB = 6 + 5 = 11.


@pytest.mark.parametrize(
    ("place", "text", "about"),
    [
        ("joint A", "A_x + AB + 4/5 AC = 0", Fx("A")),
        ("joint A", "-6 + AB - 6.25(.8) = 0", Fx("A")),
        ("joint A", "3.75 + .6AC = 0 => AC = -6.25", Fy("A")),
        ("joint A", "3.75 + .8AC = 0", Fy("A")),
        ("joint A", "-6 + AB + 6.25(.8) = 0", Fx("A")),
        ("whole", "A_y + B_y - 12 = 0", Fy()),
        ("whole", "8 B_y - 12*4 - 6*3 = 0", M("A")),
        ("whole", "8 B_y - 12*4 + 6*3 = 0", M("A")),
    ],
)
def test_a_line_without_a_heading_is_the_equation_that_it_holds_at_its_place(
    place: str, text: str, about: Equation
) -> None:
    paper = read_paper(MAST, f"{place}\n{text}").paper
    assert [each for each, _ in paper.lines] == [about]
    again = read_paper(MAST, "\n".join(lines_of(MAST, paper))).paper
    assert again == paper


def test_a_line_that_is_no_equation_of_its_place_is_asked_for_its_heading() -> None:
    written = read_paper(MAST, "joint A\nBC + 7 = 0")
    assert not written.paper.lines
    assert "Say which equation this is" in written.refused[0].message


BY_JOINTS = "Joint A: AC = 6.25 C, AB = 11 T\njoint B\nBC = -13.75"


def test_values_below_joints_that_give_them_show_the_order_of_the_work() -> None:
    paper = read_paper(MAST, BY_JOINTS).paper
    assert paper.work(MAST)["order"] == ["A", "B"]
    assert read_paper(MAST, "\n".join(lines_of(MAST, paper))).paper.work(MAST) == paper.work(MAST)


@pytest.mark.parametrize(
    "text",
    [
        "joint C\nAC = 6.25 C, AB = 11 T, BC = -13.75",
        "joint A\nAC = 6.25 C\njoint B\nBC = -13.75",
        "AC = 6.25 C\njoint A\nAB = 11",
    ],
)
def test_values_below_joints_that_cannot_give_them_show_no_order(text: str) -> None:
    assert "order" not in read_paper(MAST, text).paper.work(MAST)


def test_an_order_that_is_told_goes_before_the_one_that_shows() -> None:
    assert read_paper(MAST, f"{BY_JOINTS}\norder B A").paper.work(MAST)["order"] == ["B", "A"]
