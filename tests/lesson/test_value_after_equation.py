"""A line begins with a right equation and ends in a value: is each of the two answered for itself?

The truss is our own, in kN and m. By hand: ΣM_A: 10 B_y = 14*4 + 6*4 + 10*3 = 110, so B_y = 11;
A_y = 20 - 11 = 9; A_x = -10. Joint D: BD = 0, for it alone has a horizontal component there; CD = -6.
"""

from __future__ import annotations

import pytest
from families import down, exact, plain_problem
from walks import Clock

from tutor.judge import in_words
from tutor.lesson import Lesson
from tutor.model import Load, Problem, Support

MAST: Problem = plain_problem(
    [("A", 0, 0), ("B", 10, 0), ("C", 4, 3), ("D", 4, 8)],
    ("AB", "BC", "AC", "CD", "BD"),
    [Support("A", "pin"), Support("B", "roller")],
    [Load("C", (("down", exact(14)), ("right", exact(10)))), down("D", 6)],
)


def at_reactions(*typed: str) -> Clock:
    do = Clock(Lesson(MAST))
    do("show", until="reactions")
    for text in typed:
        assert do("type", text=text).accepted
    return do


def with_b() -> Clock:
    return at_reactions("ΣM_A: 10 B_y - 20*4 - 10*3 = 0", "B_y = 11")


def at_d() -> Clock:
    do = Clock(Lesson(MAST))
    do("show", until="joints")
    do("joint", joint="D")
    return do


@pytest.mark.parametrize(
    ("text", "tone"),
    [
        ("ay=20-11=9 down", "wrong"),
        ("ay = 14 + 6 - 11 = 9 kN down", "wrong"),
        ("Fy: ay=20-11=9 down", "wrong"),
        ("ay=20-11=8", "wrong"),
        ("ay=20-11=-9 up", "undecided"),
        ("by=110/10=11 down", "wrong"),
    ],
)
def test_the_equation_that_a_line_begins_with_stands_and_its_value_is_not_taken(
    text: str, tone: str
) -> None:
    do = with_b() if text.startswith(("ay", "Fy")) else at_reactions()
    lines = len(do.lesson.state.lines)
    reply = do("type", text=text)
    kept = do.lesson.state.lines[lines:]
    assert [in_words(line.about) for line in kept] == [
        "ΣFy of the whole truss" if "ay" in text else "ΣM about A of the whole truss"
    ]
    assert [say.tone for say in reply.said if say.tone not in ("note", "remark")] == ["right", tone]
    assert "This is true" not in reply.text
    assert do.lesson.state.result.keys() == ({"B_y"} if "ay" in text else set())


@pytest.mark.parametrize(
    "text",
    [
        "ax=-10=-10 right",
        "ax+10=0 ax=-10 right",
        "Fx: ax+10=0 so ax=-10 kN right",
        "Fx: ax+10=0, ax=-10 so right",
    ],
)
def test_a_way_that_contradicts_the_minus_before_it_is_asked_about(text: str) -> None:
    do = at_reactions()
    reply = do("type", text=text)
    assert "The equation is right. The minus and “right” contradict each other" in reply.text
    assert [in_words(line.about) for line in do.lesson.state.lines] == ["ΣFx of the whole truss"]
    assert not do.lesson.state.result


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("Fy: ay=-by+20=9 ie 9 up", 9.0),
        ("Fy: ay=-by+20=9 so 9 kN up", 9.0),
        ("ay=20-by=9 => 9 up", 9.0),
        ("ay=20-by=9 ie up", 9.0),
    ],
)
def test_a_number_behind_words_is_the_value_that_the_chain_before_it_came_to(
    text: str, value: float
) -> None:
    do = with_b()
    assert do("type", text=text).accepted
    assert do.lesson.state.result["A_y"].value == value


@pytest.mark.parametrize("text", ["Fy: ay=-by+20=9 ie 9 down", "Fy: ay=20-by=9 so 7 up"])
def test_a_number_behind_words_that_is_not_what_the_chain_came_to_is_told(text: str) -> None:
    do = with_b()
    reply = do("type", text=text)
    assert "The equation is right and stands; the value is not" in reply.text
    assert "A_y" not in do.lesson.state.result


@pytest.mark.parametrize(
    "text",
    [
        "bd zero force so cd=-6 (comp)",
        "bd is zero, hence cd = 6 C",
        "bd=0 so cd=-6",
        "bd=0 ∴ cd=6 comp",
        "bd=0 => cd=-6 kN",
    ],
)
def test_a_value_said_to_follow_from_that_of_another_force_is_a_line_of_its_own(text: str) -> None:
    do = at_d()
    assert do("type", text=text).accepted
    found = do.lesson.state.result
    assert (found["BD"].value, found["CD"].value) == (0.0, -6.0)


def test_a_wrong_value_said_to_follow_from_that_of_another_force_is_answered() -> None:
    do = at_d()
    reply = do("type", text="bd zero force so cd=-8 (comp)")
    assert "Of CD:" in reply.text
    assert [say.tone for say in reply.said].count("wrong") == 1
    assert "CD" not in do.lesson.state.result


def test_a_value_that_no_line_gives_yet_is_never_passed_over_behind_a_right_one() -> None:
    do = at_reactions()
    reply = do("type", text="ΣFy: A_y + B_y = 20 so B_y = 11")
    assert "No line stands yet that gives B_y" in reply.text


@pytest.mark.parametrize(
    "text",
    [
        "by=11 because 10by=110",
        "by=11 kN cause 10by-80-30=0",
        "B_y = 11 since 10 B_y - 20*4 - 10*3 = 0",
        "by=11 ∵ 10by=110",
    ],
)
def test_a_value_before_its_equation_is_taken_with_it(text: str) -> None:
    do = at_reactions()
    assert do("type", text=text).accepted
    assert [in_words(line.about) for line in do.lesson.state.lines] == [
        "ΣM about A of the whole truss"
    ]
    assert do.lesson.state.result["B_y"].value == 11.0


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("by=12 because 10by=110", "The equation is right. This value does not follow"),
        (
            "by=11 kN down since 10by=110",
            "The equation is right. The size is right; the way it acts",
        ),
        ("by=11 since 10by=80-30", "turning"),
    ],
)
def test_of_a_value_before_its_equation_the_one_that_is_wrong_is_told(text: str, said: str) -> None:
    do = at_reactions()
    reply = do("type", text=text)
    assert not reply.accepted
    assert reply.verdict is not None
    assert said in reply.text or said in {m.code for m in reply.verdict.mistakes}
    assert not do.lesson.state.result


@pytest.mark.parametrize(
    "text", ["ac = -15, acx = -12, acy = -9", "acy = -9, ac = -15", "ac = 15 C, acx = 12"]
)
def test_values_and_components_are_taken_for_values_and_stand_for_no_equation(text: str) -> None:
    do = Clock(Lesson(MAST))
    do("show", until="joints")
    do("joint", joint="A")
    assert do("type", text="ΣFy: A_y + 3/5 AC = 0").accepted
    lines = do.lesson.state.lines
    do("choose", about="Fx A")
    do("type", text=text)
    assert do.lesson.state.lines == lines
    assert do.lesson.state.result["AC"].value == pytest.approx(-15)


AWNING: Problem = plain_problem(
    [("A", 0, 0), ("B", 3, 0), ("C", 6, 0), ("D", 3, 4)],
    ("AB", "BC", "AD", "BD", "CD"),
    [Support("A", "pin"), Support("C", "roller", exact(120))],
    [down("B", 20), Load("D", (("right", exact(9)),))],
)
"""By hand: ΣM_C: 6 A_y = 3*20 - 4*9, A_y = 4; R_C = 16/0.866 = 18.475; A_x = 9.238 - 9 = 0.238."""


@pytest.mark.parametrize(
    "text", ["ax + 9 - 18.48cos60 = 0, ax = 0.24", "ax+9=9.24, so ax=.24", "ax = 9.24 - 9, ax=.24"]
)
def test_a_small_difference_of_large_rounded_numbers_is_a_value_of_the_line_before_it(
    text: str,
) -> None:
    do = Clock(Lesson(AWNING))
    do("show", until="reactions")
    for line in (
        "ΣM_C: 6 A_y - 3*20 + 4*9 = 0",
        "A_y = 4",
        "ΣFy: 4 + 0.866 R_C = 20",
        "R_C = 18.48",
    ):
        assert do("type", text=line).accepted, line
    reply = do("type", text=f"Fx: {text}")
    assert reply.accepted
    assert not [said for said in reply.said if said.tone == "wrong"]
    assert do.lesson.state.result["A_x"].value == pytest.approx(0.24)
