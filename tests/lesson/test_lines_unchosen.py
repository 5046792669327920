"""A line typed while no equation is chosen: when is it taken, and as what?"""

from __future__ import annotations

import pytest
from families import down, plain_problem
from hypothesis import given
from hypothesis import strategies as st
from walks import walk_to

from tutor.judge import M, in_words, right_line
from tutor.judge.about import from_text
from tutor.lesson import Lesson
from tutor.model import Support, load_problem
from tutor.shipped import shipped_problems


@pytest.mark.parametrize(
    ("text", "taken"),
    [
        ("B_x - 360 = 0", "ΣM about A of the whole truss"),
        ("B_x*2.4 = 150*2.4^2", "ΣM about A of the whole truss"),
        ("A_x + B_x = 0", "ΣFx of the whole truss"),
        ("A_y - 150 = 0", "ΣFy of the whole truss"),
    ],
)
def test_a_line_that_is_right_for_one_equation_only_is_taken_as_that(text: str, taken: str) -> None:
    lesson, do = walk_to("reactions")
    reply = do("type", text=text)
    assert reply.accepted
    assert reply.said[0].text == f"Taken as {taken}."
    assert [in_words(line.about) for line in lesson.state.lines] == [taken]


UNREADABLE = "somebody with 3/4 of a rope, →+, pushes 12/13 as hard: {}"


def test_a_line_whose_clause_is_right_for_one_equation_is_taken_as_that_too() -> None:
    _, do = walk_to("reactions")
    reply = do("type", text=UNREADABLE.format("A_x + B_x = 0"))
    assert reply.accepted
    assert reply.said[0].text == "Taken as ΣFx of the whole truss."
    assert any(say.text.startswith("Passed over") for say in reply.said)


def test_the_value_behind_such_a_clause_is_recorded_too() -> None:
    lesson, do = walk_to("reactions")
    reply = do("type", text="A_y - 150 = 0 → A_y = 150 N up,   a gull on a post")
    assert reply.accepted
    assert lesson.state.result["A_y"].value == 150.0


def test_a_line_whose_clause_is_wrong_stays_one_that_cannot_be_read() -> None:
    lesson, do = walk_to("reactions")
    reply = do("type", text=UNREADABLE.format("A_x - B_x = 0"))
    assert [say.tone for say in reply.said] == ["unreadable"]
    assert not lesson.state.lines


@pytest.mark.parametrize("text", ["B_x - 300 = 0", "0 = 0", "1 = 1", "AC = 0*AB"])
def test_a_line_that_is_right_for_none_of_them_is_asked_for_its_equation(text: str) -> None:
    lesson, do = walk_to("reactions")
    tries = lesson.state.tries
    reply = do("type", text=text)
    assert reply.text.startswith("Which equation is this line? Choose it first")
    assert (reply.accepted, lesson.state.tries) == (False, tries)


@pytest.mark.parametrize(
    ("text", "taken"),
    [("B_x + 360 = 0", "ΣM about A"), ("A_y + 150 = 0", "ΣFy"), ("A_x - B_x = 0", "ΣFx")],
)
def test_a_line_that_is_one_equation_but_for_a_slip_and_no_other_is_judged_as_that(
    text: str, taken: str
) -> None:
    lesson, do = walk_to("reactions")
    reply = do("type", text=text)
    assert reply.said[0].text == f"Taken as {taken} of the whole truss."
    assert [say.tone for say in reply.said[1:]] == ["wrong"]
    assert lesson.state.proposed


def test_the_next_line_after_such_a_slip_may_be_another_equation() -> None:
    _, do = walk_to("reactions")
    do("type", text="A_y + 150 = 0")
    reply = do("type", text="A_x + B_x = 0")
    assert reply.accepted
    assert reply.said[0].text == "Taken as ΣFx of the whole truss."


WALL_BRACKET = plain_problem(
    [("A", 0, 0), ("B", 4, 0), ("C", 2, 3), ("D", 4, 3)],
    ("AB", "AC", "BC", "CD", "BD"),
    [Support("A", "pin"), Support("B", "roller")],
    [down("C", 12)],
)


def test_a_line_that_would_do_as_several_equations_is_taken_as_the_likeliest_and_says_so() -> None:
    lesson = Lesson(WALL_BRACKET)
    lesson.take("bring", values={}, senses={}, joint="")
    lesson.take("type", text="ΣFx: A_x = 0")
    assert lesson.take("type", text="A_x = 0").accepted
    reply = lesson.take("type", text="4 A_y - 2*12 = 0")
    assert reply.accepted
    assert reply.said[0].text == (
        "Taken as ΣM about B of the whole truss; it is just as right as ΣM about D of the whole truss."
    )
    assert lesson.take("type", text="A_y = 6").accepted


def test_moments_about_a_joint_whose_load_came_into_the_line_are_likelier_than_with_a_value() -> (
    None
):
    """A_x = -160 stands: about D the 160*3 would be its moment, about A it is that of the load at C."""
    lesson = Lesson(load_problem(shipped_problems() / "zero-force" / "scenery-frame.toml"))
    lesson.take("show", until="reactions", now=1.0)
    lesson.take("type", text="ΣFx: A_x + 160 = 0", now=2.0)
    assert lesson.take("type", text="A_x = -160", now=3.0).accepted
    reply = lesson.take("type", text="4 B_y - 270*4 - 160*3 = 0", now=4.0)
    assert reply.accepted
    assert reply.said[0].text.startswith(
        "Taken as ΣM about A of the whole truss; it is just as right as "
    )


@given(st.sampled_from(["A", "B", "C", "D"]), st.sampled_from([1, -2]))
def test_whatever_a_right_line_is_taken_as_it_is_right_for_that_and_the_other_is_named(
    at: str, times: int
) -> None:
    lesson = Lesson(WALL_BRACKET)
    lesson.take("bring", values={"A_x": "0"}, senses={}, joint="")
    lesson.take("type", text="ΣFx: A_x = 0")
    lesson.take("type", text="A_x = 0")
    line = right_line(lesson.problem, M(at), lesson.state.own)
    left, _, right = line.partition("=")
    reply = lesson.take("type", text=f"{times}*({left}) = {times}*({right})")
    assert reply.accepted
    assert f"ΣM about {at}" in reply.said[0].text
    about = lesson.state.lines[-1].about
    assert lesson.desk.judge(about, line, lesson.state.own).right


@pytest.mark.parametrize(
    ("text", "taken"),
    [
        ("24 - L1U1 - 3/5 U1L2 = 0", "ΣFy of the part with L0, U1"),
        ("24 - 13.5 - 3/5 U1L2 = 0", "ΣFy of the part with L0, L1, U1"),
        ("24*8 - 13.5*4 + 3 U1U2 = 0", "ΣM about L2 of the part with L0, L1, U1"),
        ("24 + 3/5 L0U1 = 0", "ΣFy at joint L0"),
    ],
)
def test_a_line_of_two_joints_at_once_or_of_a_section_is_taken_as_that(
    text: str, taken: str
) -> None:
    lesson = Lesson(load_problem(shipped_problems() / "first-steps" / "creek-footbridge.toml"))
    lesson.take("show", until="joints", now=1.0)
    reply = lesson.take("type", text=text, now=2.0)
    assert reply.accepted
    assert f"Taken as {taken}." in reply.text
    assert [in_words(line.about) for line in lesson.state.lines][-1] == taken


@pytest.mark.parametrize(
    "text", ["24 - 21 - 3/5 U1L2 = 0", "24*8 + 13.5*4 + 3 U1U2 = 0", "24 = 24"]
)
def test_a_line_that_is_of_no_joint_and_of_no_part_is_asked_for_its_equation(text: str) -> None:
    lesson = Lesson(load_problem(shipped_problems() / "first-steps" / "creek-footbridge.toml"))
    lesson.take("show", until="joints", now=1.0)
    reply = lesson.take("type", text=text, now=2.0)
    assert (reply.accepted, lesson.state.part) == (False, ())


def test_a_line_typed_at_the_choice_of_joints_goes_to_its_joint() -> None:
    lesson, do = walk_to("joints")
    assert do("type", text="F_AC - 360 = 0").said[0].text == "Taken as ΣFx at joint A."
    assert lesson.state.joint == "A"
    assert do("type", text="360").accepted
    assert "AC" in lesson.state.result


def test_a_closing_line_is_taken_as_the_equation_it_shows() -> None:
    lesson, do = walk_to("close")
    reply = do("type", text="-360 + 390*12/13 = 0")
    assert reply.said[0].text == "Taken as ΣFx at joint C."
    assert lesson.done


@given(st.sampled_from(["Fx", "Fy", "M A", "M B", "M C"]), st.sampled_from(["1", "2", "-3"]))
def test_a_line_is_never_taken_as_an_equation_it_is_not(key: str, times: str) -> None:
    lesson, do = walk_to("reactions")
    about = from_text(key)
    assert not isinstance(about, M) or about.at in "ABC"
    left, _, right = right_line(lesson.problem, about, lesson.state.own).partition("=")
    reply = do("type", text=f"{times}*({left}) = {times}*({right})")
    if reply.accepted:
        assert [line.about for line in lesson.state.lines] == [about]
    else:
        assert in_words(about) in reply.text


@pytest.fixture
def at_c() -> Lesson:
    """At joint C of the lamp arm, where ΣFx is proposed and nothing was chosen."""
    lesson = Lesson(load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml"))
    lesson.take("show", until="joints", now=1.0)
    lesson.take("joint", joint="C", now=2.0)
    return lesson


@pytest.mark.parametrize("text", ["-5/13 F_BC - 150 = 0", "150 + 5/13 BC = 0"])
def test_a_line_right_for_the_other_sum_of_a_joint_is_taken_as_that(
    at_c: Lesson, text: str
) -> None:
    reply = at_c.take("type", text=text, now=3.0)
    assert reply.accepted, reply
    assert "Taken as ΣFy at joint C" in reply.text
    assert at_c.table.mistakes == ()


def test_where_the_sum_was_chosen_a_line_of_the_other_is_told_so(at_c: Lesson) -> None:
    at_c.take("choose", about="Fx @ C", now=3.0)
    reply = at_c.take("type", text="-5/13 F_BC - 150 = 0", now=4.0)
    assert not reply.accepted
    assert "You can keep it as ΣFy at joint C." in reply.text


@pytest.mark.parametrize(
    ("text", "about", "code"),
    [
        ("F_AB + 150 = 0", "Fy @ A", "sign"),
        ("2 F_AB - 150 = 0", "Fy @ A", "double"),
        ("F_AC + 360 = 0", "Fx @ A", "minus"),
        ("AC*12/13 - 360 = 0", "Fx @ A", "needless-component"),
        ("F_AB - 105 = 0", "Fy @ A", "carried"),
    ],
)
def test_a_wrong_line_at_a_joint_is_told_as_the_sum_it_is_nearest_to(
    text: str, about: str, code: str
) -> None:
    lesson, do = walk_to("joints")
    do("joint", joint="A")
    assert lesson.state.proposed
    reply = do("type", text=text)
    assert reply.verdict is not None
    assert (reply.verdict.kind, lesson.state.tries[-1].place) == ("wrong", about)
    taken = reply.said[0].text.startswith("Taken as")
    assert taken == (about != "Fx @ A")
    assert reply.verdict.mistakes[0].code == code


def test_a_wrong_line_counts_for_the_sum_that_was_chosen() -> None:
    lesson, do = walk_to("joints")
    do("joint", joint="A")
    do("choose", about="Fx @ A")
    do("type", text="F_AB + 150 = 0")
    assert lesson.state.tries[-1].place == "Fx @ A"


@pytest.mark.parametrize(
    "text",
    [
        "-5/13 F_BC - 150 = 0, BC = 390 C",
        "-5/13 F_BC - 150 = 0 => BC = -150*13/5 = -390",
        "-5/13 BC = 150 so BC = -390 N",
        "5/13 BC = -150 = -150 => 390 c",
    ],
)
def test_a_line_with_its_value_is_taken_as_the_sum_that_it_is_alone(
    at_c: Lesson, text: str
) -> None:
    reply = at_c.take("type", text=text, now=3.0)
    assert reply.said[0].text == "Taken as ΣFy at joint C."
    assert [say.tone for say in reply.said][1:3] == ["right", "right"]
    assert at_c.state.result["BC"].value == -390


def test_a_wrong_letter_behind_a_line_without_heading_leaves_the_equation(at_c: Lesson) -> None:
    reply = at_c.take("type", text="-5/13 F_BC - 150 = 0 => BC = 390 T", now=3.0)
    assert "The equation is right and stands" in reply.text
    assert [line.about for line in at_c.state.lines_of("C")] == [from_text("Fy @ C")]


def test_a_wrong_line_is_named_alike_with_its_value_and_without(at_c: Lesson) -> None:
    alone = at_c.take("type", text="12/13 F_BC + 150 = 0", now=3.0)
    valued = at_c.take("type", text="12/13 F_BC + 150 = 0, BC = -162.5", now=4.0)
    assert alone.verdict is not None
    assert valued.verdict is not None
    assert [m.code for m in alone.verdict.mistakes] == [m.code for m in valued.verdict.mistakes]
    assert at_c.state.tries[-1].place == at_c.state.tries[-2].place == "Fy @ C"


@pytest.mark.parametrize("text", ["BC = 150*13/5 = 390 C", "BC = -150*13/5 = -390"])
def test_a_value_with_its_working_is_taken_as_the_sum_it_is_worked_out_from(
    at_c: Lesson, text: str
) -> None:
    reply = at_c.take("type", text=text, now=3.0)
    assert reply.said[0].text == "Taken as ΣFy at joint C."
    assert [line.about for line in at_c.state.lines_of("C")] == [from_text("Fy @ C")]
    assert at_c.state.result["BC"].value == -390


@pytest.mark.parametrize("text", ["BC = 150*13/5 = 390 T", "BC = 150*13/12 = 162.5 C"])
def test_a_wrong_value_with_its_working_is_never_taken(at_c: Lesson, text: str) -> None:
    reply = at_c.take("type", text=text, now=3.0)
    assert reply.said[-1].tone == "wrong"
    assert not at_c.state.lines_of("C")
    assert "BC" not in at_c.state.result


def test_a_line_that_is_one_sum_as_it_is_written_is_not_refused_for_being_a_multiple_of_another() -> (
    None
):
    lesson = Lesson(load_problem(shipped_problems() / "first-steps" / "bell-frame.toml"))
    lesson.take("show", until="joints", now=1.0)
    lesson.take("joint", joint="A", now=2.0)
    for n, text in enumerate(["A_y + 3/5 F_AC = 0", "AC = 10 C", "AB - 4/5*10 = 0", "AB = 8 T"]):
        assert lesson.take("type", text=text, now=3.0 + n).accepted, text
    lesson.take("joint", joint="B", now=8.0)
    reply = lesson.take("type", text="6 + 3/5 BC = 0", now=9.0)
    assert reply.accepted, reply
    assert reply.said[0].text == "Taken as ΣFy at joint B."
    assert lesson.table.mistakes == ()


def test_the_heading_of_a_wrong_line_does_not_bind_a_right_line_without_one() -> None:
    lesson, do = walk_to("reactions")
    assert not do("type", text="ΣM_A: B_x - 300 = 0").accepted
    reply = do("type", text="A_y - 150 = 0")
    assert reply.accepted
    assert reply.said[0].text == "Taken as ΣFy of the whole truss."
    assert [try_.verdict for try_ in lesson.state.tries[-2:]] == ["wrong", "right"]


def test_a_line_mended_without_its_heading_is_still_of_the_sum_that_was_headed() -> None:
    _, do = walk_to("reactions")
    do("type", text="ΣM_A: B_x - 300 = 0")
    assert do("type", text="B_x - 350 = 0").verdict.kind == "wrong"
    assert "ΣM about A of the whole truss holds." in do("type", text="B_x - 360 = 0").text


def test_a_joint_before_a_colon_is_the_point_that_moments_are_taken_about() -> None:
    _, do = walk_to("reactions")
    assert do("type", text="B: 1*B_x = 150*2.4").verdict is None
    reply = do("type", text="A: 1*B_x = 150*2.4")
    assert (reply.said[0].text, reply.accepted) == ("Taken as ΣM about A of the whole truss.", True)


@pytest.mark.parametrize("joint", ["C", None])
def test_a_check_in_numbers_alone_is_the_sum_that_it_is_not_the_one_proposed(
    joint: str | None,
) -> None:
    lesson = Lesson(load_problem(shipped_problems() / "first-steps" / "lamp-arm.toml"))
    lesson.take("show", until="joints", now=1.0)
    lesson.take("joint", joint="C", now=2.0)
    lesson.take("type", text="ΣFy: 5/13 F_BC + 150 = 0", now=3.0)
    lesson.take("type", text="BC = 390 C", now=4.0)
    lesson.take("type", text="ΣFx: F_AC + 12/13 F_BC = 0", now=5.0)
    lesson.take("type", text="AC = 360 T", now=6.0)
    lesson.take("joint", joint=joint, now=7.0)
    reply = lesson.take("type", text="Check at joint C: 390*5/13 - 150 = 0", now=8.0)
    assert reply.said[0].text == "Taken as ΣFy at joint C."
    assert reply.said[1].tone == "right"


def test_an_equation_that_begins_with_its_number_is_found_before_the_value_behind_it() -> None:
    lesson, do = walk_to("reactions")
    reply = do("type", text="150*2.4 = 1*B_x, B_x = 360 N")
    assert reply.said[0].text == "Taken as ΣM about A of the whole truss."
    assert lesson.state.result["B_x"].value == 360


@pytest.mark.parametrize("stands", [False, True])
@pytest.mark.parametrize("text", ["AB = -BD", "AB + BD = 0", "BD = -AB"])
def test_a_line_that_balances_two_members_but_for_a_sign_is_judged_though_both_sums_are_as_near(
    text: str, stands: bool
) -> None:
    lesson = _at_the_middle_of_a_slope()
    if stands:
        assert lesson.take("type", text="ΣFx: 0.8 F_BD - 0.8 F_AB + 0.6 F_BC = 0", now=3.0).accepted
        assert lesson.take("type", text="ΣFy: 0.6 F_BD - 0.6 F_AB - 0.8 F_BC = 0", now=4.0).accepted
    reply = lesson.take("type", text=text, now=5.0)
    assert [say.tone for say in reply.said][-1] == "wrong"
    assert reply.verdict is not None
    assert reply.verdict.mistakes[0].code in ("sign", "sense")
    assert "right and stands" not in reply.text
    reply = lesson.take("type", text="AB = BD", now=6.0)
    assert reply.accepted


def test_two_members_set_equal_that_are_not_by_far_are_asked_for_their_equation() -> None:
    lesson = _at_the_middle_of_a_slope()
    reply = lesson.take("type", text="AB = 3 BD", now=5.0)
    assert [say.tone for say in reply.said][-1] != "right"


def _at_the_middle_of_a_slope() -> Lesson:
    """At B, half way up the straight rafter from A to D, which BC meets at a right angle without a load."""
    problem = plain_problem(
        [("A", 0, 0), ("B", 4, 3), ("D", 8, 6), ("C", 7, -1)],
        ("AB", "BD", "BC", "AC", "CD"),
        [Support("A", "pin"), Support("C", "roller")],
        [down("D", 12)],
    )
    lesson = Lesson(problem)
    lesson.take("show", until="joints", now=1.0)
    lesson.take("joint", joint="B", now=2.0)
    return lesson
