"""Is a value with its working taken as the sum it is solved from, where that force alone is open?"""

from __future__ import annotations

import json

import pytest
from families import SEED_HOUSE, down, exact, plain_problem
from paper.measure import problem
from test_headed_joints import at_the_joints
from walks import Clock, walk_to

from tutor.judge import Fx, Judge, in_words
from tutor.judge.headings import headed
from tutor.lesson import Lesson
from tutor.lesson.outcome_parts import PARTS
from tutor.lesson.state import StandingLine
from tutor.model import Problem, Support

HOUSE: Problem = plain_problem(
    [("A", 0, 0), ("B", 8, 0), ("C", 4, 3)],
    ("AB", "BC", "AC"),
    [Support("A", "pin"), Support("B", "roller")],
    [down("C", 48)],
)
"""Worked by hand: A_y = B_y = 24, AC = BC = -24*5/3 = -40, AB = 4/5*40 = 32."""


@pytest.mark.parametrize("text", ["ac=-24*5/3=-40", "ac=24*5/3=40 c", "AC = -(5/3)(24) = -40 kN"])
def test_a_value_with_its_working_is_the_sum_solved_for_it(text: str) -> None:
    lesson, do = walk_to("joints", HOUSE)
    do("joint", joint="A")
    assert do("type", text=text).accepted
    assert in_words(lesson.state.lines[-1].about) == "ΣFy at joint A"
    assert lesson.state.result["AC"].value == pytest.approx(-40)
    assert do("type", text="ab=.8*40=32 t").accepted
    assert in_words(lesson.state.lines[-1].about) == "ΣFx at joint A"


@pytest.mark.parametrize("text", ["ac=24*5/3=40 t", "ac=-24*5/4=-30", "ac=24*3/5=14.4 c"])
def test_a_value_with_wrong_working_is_told_wrong_by_that_sum(text: str) -> None:
    lesson, do = walk_to("joints", HOUSE)
    do("joint", joint="A")
    reply = do("type", text=text)
    assert not reply.accepted
    assert lesson.state.tries[-1].verdict == "wrong"
    assert lesson.state.tries[-1].place == "Fy @ A"


def test_a_bare_number_is_still_asked_for_its_line() -> None:
    _, do = walk_to("joints", HOUSE)
    do("joint", joint="A")
    reply = do("type", text="ac=40 c")
    assert not reply.accepted
    assert "write the line first" in reply.text


def test_a_value_whose_working_leaves_two_forces_open_is_asked_for_its_line() -> None:
    lesson, do = walk_to("joints", HOUSE)
    do("joint", joint="A")
    assert not do("type", text="ab=.8*40=32 t").accepted
    assert not lesson.state.lines_of("A")


def test_of_sums_that_a_line_is_a_multiple_of_the_one_with_its_terms_is_taken() -> None:
    lesson, do = walk_to("reactions", HOUSE)
    assert do("type", text="ΣM_A: 8 B_y - 4*48 = 0 => B_y = 24").accepted
    assert do("type", text="ay=48-24=24").accepted
    assert in_words(lesson.state.lines[-1].about) == "ΣFy of the whole truss"
    assert lesson.state.result["A_y"].value == pytest.approx(24)


def test_a_reaction_beside_numbers_is_the_sum_of_its_terms() -> None:
    lesson, do = walk_to("reactions", HOUSE)
    assert do("type", text="ΣM_A: 8 B_y - 4*48 = 0 => B_y = 24").accepted
    assert do("type", text="ay+24-48=0").accepted
    assert in_words(lesson.state.lines[-1].about) == "ΣFy of the whole truss"


def test_loads_added_up_are_terms_of_the_sum_as_written() -> None:
    """24 = 30 + 18 - 24: the moments about C would give the same number, in other terms."""
    problem = plain_problem(
        [("A", 0, 0), ("B", 8, 0), ("C", 4, 3)],
        ("AB", "BC", "AC"),
        [Support("A", "pin"), Support("B", "roller")],
        [down("C", 30), down("C", 18)],
    )
    lesson, do = walk_to("reactions", problem)
    assert do("type", text="ΣM_A: 8 B_y - 4*48 = 0 => B_y = 24").accepted
    assert do("type", text="ay=48-24=24").accepted
    assert in_words(lesson.state.lines[-1].about) == "ΣFy of the whole truss"


def test_a_load_alone_is_the_sum_at_a_joint_that_has_no_other_force() -> None:
    lesson, do = at_the_joints()
    do("joint", joint="D")
    assert do("type", text="cd=-240").accepted
    assert in_words(lesson.state.lines[-1].about) == "ΣFx at joint D"


@pytest.mark.parametrize(
    ("text", "place"), [("bc=-48*5/3-40=-120", "Fy @ C"), ("bc=-40*4/5=-32", "Fx @ C")]
)
def test_of_several_sums_a_wrong_working_is_told_by_the_nearest(text: str, place: str) -> None:
    lesson, do = walk_to("joints", HOUSE)
    do("joint", joint="A")
    assert do("type", text="ac=-24*5/3=-40").accepted
    do("joint", joint="C")
    assert not do("type", text=text).accepted
    assert lesson.state.tries[-1].place == place


def test_wrong_working_is_held_against_the_sum_it_is_nearest_to_where_none_was_proposed() -> None:
    lesson, do = walk_to("reactions", HOUSE)
    assert do("type", text="ΣM_A: 8 B_y - 4*48 = 0 => B_y = 24").accepted
    reply = do("type", text="ay=48+24=72")
    assert "Taken as ΣFy of the whole truss" in reply.text
    assert lesson.state.tries[-1].verdict == "wrong"
    assert "A_y" not in lesson.state.result


@pytest.mark.parametrize(("text", "value"), [("Ax = 0", 0.0), ("A_x = 0 kN", 0.0)])
def test_a_reaction_that_nothing_opposes_is_the_sum_of_forces_and_its_value(
    text: str, value: float
) -> None:
    lesson, do = walk_to("reactions", SEED_HOUSE)
    assert do("type", text=text).accepted
    assert in_words(lesson.state.lines[-1].about) == "ΣFx of the whole truss"
    assert lesson.state.result["A_x"].value == value


def test_a_reaction_against_one_load_is_the_sum_of_forces_and_its_value() -> None:
    lesson, do = walk_to("reactions")
    assert do("type", text="A_y = 150 up").accepted
    assert in_words(lesson.state.lines[-1].about) == "ΣFy of the whole truss"


def test_a_reaction_that_stands_for_several_forces_shows_no_sum() -> None:
    lesson, do = walk_to("reactions", SEED_HOUSE)
    assert "No line stands yet" in do("type", text="E_y = 8.5").text
    do("type", text="ΣM_A: 8 E_y - 2*6 - 4*8 - 6*4 = 0")
    do("type", text="E_y = 8.5")
    assert "No line stands yet" in do("type", text="A_y = 9.5").text
    assert len(lesson.state.lines) == 1


def test_what_was_left_out_as_zero_leaves_the_other_force_to_its_line() -> None:
    lesson, do = walk_to("reactions", SEED_HOUSE)
    do("type", text="ΣM_A: 8 E_y - 2*6 - 4*8 - 6*4 = 0")
    do("type", text="E_y = 8.5")
    do("type", text="ΣFy: A_y + 8.5 - 18 = 0")
    do("type", text="A_y = 9.5")
    do("joint", joint="A")
    do("type", text="ΣFy: 9.5 + 3/5 AB = 0")
    do("type", text="AB = 15.8 C")
    assert "may that be left out" in do("type", text="ΣFx: AF - 15.8(0.8) = 0").text
    assert do("type", text="AF = 12.6 T").accepted
    assert "A_x" not in lesson.state.result


def test_what_was_left_out_stays_so_in_a_kept_line() -> None:
    line = StandingLine(Fx("A"), "AF - 15.8(0.8) = 0", without=("A_x",))
    kept = json.loads(json.dumps(PARTS["lines"].difference((), (line,))))
    assert PARTS["lines"].changed((), kept) == (line,)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("along AC: BC + 15.8 - 6*3/5 + BF cos 73.7 = 0", "ΣF along AB at joint B"),
        ("ΣF along CA: -BC - 15.8 + 3.6 - BF cos 73.7 = 0", "ΣF along AB at joint B"),
        ("perpendicular to AC: BF sin 73.7 + 6*0.8 = 0", "ΣF perpendicular to AB at joint B"),
        ("⊥ AC: BF sin 73.7 + 6*0.8 = 0", "ΣF perpendicular to AB at joint B"),
    ],
)
def test_a_sum_may_be_along_two_joints_without_a_member_between(text: str, words: str) -> None:
    _, do = walk_to("joints", SEED_HOUSE)
    do("joint", joint="A")
    do("type", text="ΣFy: 9.5 + 3/5 AB = 0")
    do("type", text="AB = 15.8 C")
    do("joint", joint="B")
    reply = do("type", text=text)
    assert reply.accepted, reply.text
    assert f"Right: {words} holds." in reply.text


def test_a_sum_along_two_level_joints_is_the_sum_to_the_right() -> None:
    line = Judge(SEED_HOUSE).read("along AE: AB*4/5 + AF + A_x = 0")
    assert headed(SEED_HOUSE, line, "A") == Fx("A")


def test_wrong_working_of_a_reaction_is_judged_though_no_sum_was_chosen() -> None:
    do = Clock(Lesson(problem("rack")))
    do("show", until="reactions")
    do("type", text="ΣM_A: 600 C_y = 432000")
    do("type", text="C_y = 720")
    reply = do("type", text="A_y = 800 + 720 = 1520")
    assert [say.tone for say in reply.said] == ["note", "wrong"]
    assert "A_y" not in do.lesson.state.result


@pytest.mark.parametrize(("text", "tone"), [("BD = 10 T", "right"), ("BD = 16 T", "wrong")])
def test_a_number_alone_is_met_the_same_way_right_or_wrong(text: str, tone: str) -> None:
    """At B the post BD alone holds the load of 10; the load of 16 is at D."""
    truss = plain_problem(
        [("A", 0, 0), ("B", 4, 0), ("C", 8, 0), ("D", 4, 3)],
        ("AB", "BC", "AD", "CD", "BD"),
        [Support("A", "pin"), Support("C", "roller")],
        [down("B", 10), down("D", 16)],
    )
    lesson, do = walk_to("joints", truss)
    do("joint", joint="B")
    reply = do("type", text=text)
    assert reply.said[0].text == "Taken as ΣFy at joint B."
    assert reply.said[1].tone == tone
    assert bool(lesson.state.lines_of("B")) is (tone == "right")


def triangle() -> tuple[Lesson, Clock]:
    """At E by hand: ED rises 3 for 4 across, 12 down: CE = 12(4/3) = 16."""
    truss = plain_problem(
        [("A", 0, 3), ("B", 0, 0), ("C", 4, 3), ("D", 4, 0), ("E", 8, 3)],
        ("AB", "AC", "CE", "BD", "DE", "CD", "BC"),
        [Support("A", "pin"), Support("B", "roller", exact(0))],
        [down("E", 12), down("D", 8)],
    )
    lesson, do = walk_to("joints", truss)
    do("joint", joint="E")
    return lesson, do


@pytest.mark.parametrize(
    "text",
    [
        "CE = 12 cot α = 12 × 4/3 = 16 kN, tension (tan α = 3/4)",
        "By similar triangles, CE/12 = 4/3 so CE = 16 T",
        "CE = 12(4/3) = 16 T",
    ],
)
def test_a_side_of_a_triangle_of_forces_is_the_sum_across_the_other(text: str) -> None:
    lesson, do = triangle()
    assert do("type", text=text).accepted
    assert lesson.state.result["CE"].value == pytest.approx(16)
    assert [type(line.about).__name__ for line in lesson.state.lines_of("E")] == ["Along"]


def test_a_ratio_upside_down_is_told_of_that_sum() -> None:
    _, do = triangle()
    reply = do("type", text="From the triangle of forces, CE / 12 = 3/4 ∴ CE = 9 kN (tie)")
    assert "wrong one of its pair" in reply.text


def test_a_load_left_out_beside_two_equal_rafters_is_told_of_the_sum_along_an_axis() -> None:
    truss = plain_problem(
        [("A", 0, 0), ("B", 15, 8), ("C", 30, 0), ("D", 45, 8), ("E", 60, 0), ("F", 30, 16)],
        ("AC", "CE", "AB", "BF", "FD", "DE", "BC", "CD", "CF"),
        [Support("A", "pin"), Support("E", "roller")],
        [down("B", 9), down("F", 8), down("D", 9)],
    )
    _, do = walk_to("joints", truss)
    do("joint", joint="A")
    for text in ("13 + 8/17 AB = 0", "AB = 27.625 C"):
        assert do("type", text=text).accepted
    do("joint", joint="B")
    for text in (
        "ΣFx: 15/17 BF + 15/17 BC - 15/17 AB = 0",
        "ΣFy: 8/17 BF - 8/17 BC - 8/17 AB - 9 = 0",
        "BF = 18.06 C",
    ):
        assert do("type", text=text).accepted
    do("joint", joint="F")
    reply = do("type", text="CF = 2 × 18.06 × 8/17 = 17.0 (tie)")
    assert reply.said[0].text == "Taken as ΣFy at joint F."
    assert [m.code for m in reply.verdict.mistakes] == ["missing"]


@pytest.mark.parametrize(("text", "codes"), [("AC = 24 C", ("whole-force",)), ("AC = 17 C", ())])
def test_an_inclined_force_taken_whole_is_told_by_the_sum_that_leaves_it_alone(
    text: str, codes: tuple[str, ...]
) -> None:
    lesson, do = walk_to("joints", HOUSE)
    do("joint", joint="A")
    before = len(lesson.state.tries)
    assert not do("type", text=text).accepted
    tries = lesson.state.tries[before:]
    assert [(tried.place, tried.codes) for tried in tries] == ([("Fy @ A", codes)] if codes else [])
