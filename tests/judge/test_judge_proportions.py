"""Are forces in the ratio of the sides of their triangle right by their sizes, and is the odd side named?

Where three forces hold a joint, each is to the side of a triangle that is parallel to it as any other
is to its own: the triangle of forces (Hibbeler, Engineering Mechanics: Statics, ch. 3, and Lami's
theorem over sines; from memory). The truss is our own.
"""

from __future__ import annotations

import pytest
from families import down, exact, plain_problem

from tutor.judge import Along, Fx, Fy, M, judge
from tutor.judge.proportion import proportion_in, sums_shown
from tutor.model import Support
from tutor.notation import Line, read_line
from tutor.statics import solve

CRANE = plain_problem(
    [("A", 0, 3), ("B", 0, 0), ("C", 4, 3), ("D", 4, 0), ("E", 8, 3)],
    ("AB", "AC", "CE", "BD", "DE", "CD", "BC"),
    [Support("A", "pin"), Support("B", "roller", exact(0))],
    [down("E", 12), down("D", 8)],
)
"""At E: CE = 16 in tension, DE = 20 in compression."""


def typed(text: str) -> Line:
    line = read_line(text, CRANE.names)
    assert isinstance(line, Line)
    return line


@pytest.mark.parametrize(
    "text",
    [
        "F_CE/4 = F_DE/5 = 12/3",
        "F_CE/4 = F_DE/5 = 12/3 = 4",
        "|F_DE|/5 = |F_CE|/4",
        "By similar triangles F_DE/5 = F_CE/4",
        "F_CE : F_DE : 12 = 4 : 5 : 3",
        "By Lami's theorem: F_CE/sin 53.13° = F_DE/sin 90° = 12/sin 36.87°",
        "Triangle of forces: F_CE/4 = F_DE/5 = 12/3 ⇒ F_CE = 16 kN (T), F_DE = 20 kN (C)",
        "The triangle of forces is a 3-4-5 triangle, so F_CE/4 = F_DE/5 = 12/3",
    ],
)
@pytest.mark.parametrize("about", [Fx("E"), Fy("E")])
def test_sizes_in_the_ratio_of_the_sides_are_right(text: str, about: Fx | Fy) -> None:
    assert judge(CRANE, about, text).right


@pytest.mark.parametrize("senses", [{}, {"DE": "C"}])
@pytest.mark.parametrize("text", ["F_DE/5 = F_CE/4", "F_CE/4 = F_DE/5"])
def test_two_forces_alone_that_are_alike_only_in_size_are_no_sum(
    text: str, senses: dict[str, str]
) -> None:
    """With DE drawn pushing on the joint both come out positive, and the line is a sum as it stands."""
    verdict = judge(CRANE, Fy("E"), text, senses=senses)
    assert verdict.kind == ("right" if senses else "undecided")
    assert senses or "right in size" in verdict.text


@pytest.mark.parametrize(
    ("text", "force", "says"),
    [
        ("F_CE/5 = F_DE/5 = 12/3", "CE", "“F_CE/5” does not go with"),
        ("F_CE/4 = F_DE/5 = 12/4", None, "“12/4” does not go with"),
        ("F_CE : F_DE : 12 = 4 : 6 : 3", "DE", "not equal"),
        ("F_CE/5 = F_DE/4", None, "not equal"),
        ("F_CE/sin 36.87° = F_DE/sin 90° = 12/sin 36.87°", "CE", "sine of the angle"),
        ("F_CE/4 = F_DE/5 = 12/3 ⇒ F_CE = 16 kN (C)", "CE", "not what the force does"),
    ],
)
def test_a_side_that_is_not_that_of_its_force_is_named(
    text: str, force: str | None, says: str
) -> None:
    verdict = judge(CRANE, Fx("E"), text)
    assert (verdict.kind, [m.force for m in verdict.mistakes]) == ("wrong", [force])
    assert says in verdict.text


@pytest.mark.parametrize(
    "text", ["F_CE = F_DE/5 = 12/3", "F_CE/4 + F_DE/5 = 12/3", "F_CE/4 = 12/3", "F_CE/4 = F_CE/5"]
)
def test_what_is_no_proportion_of_forces_is_judged_as_a_sum(text: str) -> None:
    assert proportion_in(typed(text)) is None


@pytest.mark.parametrize(
    ("text", "sums"),
    [
        ("F_CE/4 = F_DE/5 = 12/3", (Fx("E"), Fy("E"))),
        ("F_CE/4 = F_DE/5", (Fx("E"),)),
        ("F_CD/3 = F_DE/5", ()),
        ("F_AB/3 = F_DE/5", ()),
    ],
)
def test_each_link_is_the_sum_across_the_third_of_three_forces(
    text: str, sums: tuple[Fx | Fy, ...]
) -> None:
    step = proportion_in(typed(text))
    assert step is not None
    assert sums_shown(CRANE, step, solve(CRANE).values) == sums


@pytest.mark.parametrize(
    ("text", "by_number"),
    [
        ("F_CE = 4/5(20)", True),
        ("F_CE/12 = 4/3", False),
        ("F_CE = 12*4/3", False),
    ],
)
def test_a_number_is_put_in_for_a_force_only_where_it_is_that_of_the_force(
    text: str, by_number: bool
) -> None:
    verdict = judge(CRANE, Fx("E"), text, senses={"DE": "C"})
    assert verdict.right
    (said,) = [remark.text for remark in verdict.remarks if remark.code == "unrecorded"]
    assert ("puts in a number for DE" in said) is by_number
    assert ("works out the part of DE from other forces" in said) is not by_number


@pytest.mark.parametrize(
    "text",
    [
        "|F_DE|/5 = 12/3",
        "By similar triangles F_DE/5 = 12/3",
        "F_DE : 12 = 5 : 3 in size",
        "|F_DE| is to 12 as 5 is to 3",
        "the size of F_DE / 5 = 12/3",
        "By similar triangles F_DE/DE = 12/CD",
        "|F_DE|/|F_CE| = 5/4",
        "|F_DE| : |F_CE| = DE : CE",
        "Force triangle: F_DE/12 = DE/CD",
    ],
)
def test_a_force_over_its_side_is_right_in_size_where_words_or_bars_say_sizes(text: str) -> None:
    about = Fy("E") if "12" in text else Fx("E")
    verdict = judge(CRANE, about, text)
    assert verdict.right, verdict
    assert [remark.code for remark in verdict.remarks] == ["sizes"]
    assert all("DE" not in remark.text for remark in verdict.remarks)


@pytest.mark.parametrize("text", ["F_DE/5 = 12/3", "F_DE : 12 = 5 : 3", "F_DE/DE = 12/CD"])
def test_a_force_over_its_side_that_says_nothing_of_sizes_is_no_sum(text: str) -> None:
    verdict = judge(CRANE, Fy("E"), text)
    assert verdict.kind == "undecided"
    assert "right in size" in verdict.text
    assert judge(CRANE, Fy("E"), text, senses={"DE": "C"}).right


@pytest.mark.parametrize("text", ["F_DE/5 = -12/3", "F_DE/DE = -12/CD", "F_DE : -12 = 5 : 3"])
def test_a_force_over_its_side_with_its_sign_is_the_sum_that_it_is(text: str) -> None:
    verdict = judge(CRANE, Fy("E"), text)
    assert (verdict.right, verdict.remarks) == (True, ())


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("|F_DE|/4 = 12/3", "tangent"),
        ("|F_DE|/5 = 12/4", "component"),
        ("|F_DE|/3 = 12/5", "upside-down"),
        ("By similar triangles F_DE/DE = 12/CE", "component"),
        ("|F_DE|/5 = 8/3", "magnitude"),
    ],
)
def test_a_side_that_is_not_that_of_the_one_force_is_told_without_its_sign(
    text: str, code: str
) -> None:
    verdict = judge(CRANE, Fy("E"), text)
    assert [mistake.code for mistake in verdict.mistakes] == [code]


@pytest.mark.parametrize("text", ["| E | ΣFy | F_DE*3/5 = 12 |", "|E|ΣFy|F_DE*3/5 = 12|"])
def test_the_bars_of_a_table_say_nothing_of_sizes(text: str) -> None:
    assert judge(CRANE, Fy("E"), text).kind == "wrong"


def test_where_all_but_two_forces_lie_along_one_line_these_two_are_the_sum_across_it() -> None:
    """At B the wall pushes and BD pulls along one line, so that AB and BC alone have upright parts."""
    assert judge(CRANE, Fy("B"), "F_BC/5 = F_AB/3").kind == "undecided"
    assert judge(CRANE, Fy("B"), "|F_BC|/5 = |F_AB|/3").right
    assert judge(CRANE, Fy("B"), "F_BC/5 = -F_AB/3").right
    assert judge(CRANE, Fy("B"), "|F_BC|/4 = |F_AB|/3").kind == "wrong"


def test_three_members_alone_at_a_joint_without_a_load_are_in_the_ratio_of_their_sides() -> None:
    truss = plain_problem(
        [("A", 0, 3), ("B", 4, 0), ("C", 8, 6), ("D", 4, 3)],
        ("AB", "AD", "BD", "CD", "BC"),
        [Support("A", "pin"), Support("B", "roller")],
        [down("C", 12)],
    )
    for about in (Fx("D"), Fy("D")):
        verdict = judge(truss, about, "F_AD/4 = F_BD/3 = F_CD/5")
        assert (verdict.right, [remark.code for remark in verdict.remarks]) == (True, ["sizes"])
        assert judge(truss, about, "F_AD/3 = F_BD/4 = F_CD/5").text.startswith("The parts")


@pytest.mark.parametrize(
    ("about", "text"),
    [
        (Fx("E"), "in size F_CE = F_DE/0.8"),
        (Fx("E"), "in magnitude: F_CE = F_DE*5/4"),
        (Fy("E"), "in magnitude, 12 = F_DE/0.6"),
        (Fy("E"), "12 = |F_DE|/0.6"),
    ],
)
def test_where_sizes_are_meant_only_the_ratio_is_wrong_and_no_sign(
    about: Fx | Fy, text: str
) -> None:
    """CE is 4/5 of DE in size, and 12 is 3/5 of it."""
    said = judge(CRANE, about, text).mistakes
    assert [(mistake.code, mistake.force) for mistake in said] == [("upside-down", "DE")]


@pytest.mark.parametrize(
    ("text", "codes"),
    [
        ("F_CE + 0.8 F_DE = 0 so F_CE + 0.8 F_AC = 0", ["extra", "missing"]),
        ("F_CE + 0.8 F_DE = 0 so 0.8 F_DE + F_CD + F_CE = 0", ["extra"]),
    ],
)
def test_what_holds_another_force_is_no_consequence_but_a_line_of_its_own(
    text: str, codes: list[str]
) -> None:
    said = judge(CRANE, Fx("E"), text)
    assert [mistake.code for mistake in said.mistakes] == codes
    assert "follow" not in said.text


@pytest.mark.parametrize(
    "text",
    [
        "F_DE = -19 since -0.6 F_DE = 12",
        "F_DE = -19 as -0.6 F_DE - 12 = 0",
        "F_DE = 19 C because 0.6 F_DE + 12 = 0",
    ],
)
def test_a_value_before_the_equation_that_it_is_found_from_is_judged_behind_it(text: str) -> None:
    said = judge(CRANE, Fy("E"), text)
    assert [(mistake.code, mistake.force) for mistake in said.mistakes] == [("arithmetic", "DE")]
    assert said.text.startswith("The equation is right.")


@pytest.mark.parametrize(
    ("at", "text", "right"),
    [
        ("C", "F_CD,y = 12 ↓", True),
        ("D", "F_CD,y = 12 ↑", True),
        ("C", "F_CD,y = 12 ↑", False),
        ("C", "F_CE,x = 16 →", True),
        ("E", "F_CE,x = 16 ←", True),
        ("E", "F_CE,x = 16 →", False),
    ],
)
def test_a_member_along_an_axis_is_its_own_component_and_pulls_away_from_its_joint(
    at: str, text: str, right: bool
) -> None:
    said = judge(CRANE, Fx(at), text, known={"CD": 12, "CE": 16})
    assert said.right is right
    assert [mistake.code for mistake in said.mistakes] == ["sense"] * (not right)


@pytest.mark.parametrize(
    ("about", "text", "standing", "how_many"),
    [
        (Along(36.87, joint="E"), "0.8 F_CE + F_DE + 7.2 = 0", (Fx("E"), Fy("E")), "two"),
        (Fx("E"), "F_CE + 0.8 F_DE = 0", (Along(36.87, joint="E"), Fy("E")), "two"),
        (M("B"), "-3 A_x - 8*4 - 12*8 = 0", (M("A"), M("E"), Fx()), "three"),
    ],
)
def test_of_one_that_adds_nothing_it_is_said_how_many_do(
    about: Along | Fx | M, text: str, standing: tuple[Along | Fx | Fy | M, ...], how_many: str
) -> None:
    said = judge(CRANE, about, text, standing=standing)
    assert [remark.code for remark in said.remarks] == ["dependent"]
    assert f"gives {how_many} independent equations" in said.remarks[0].text
