"""Are forces in the ratio of the sides of their triangle right by their sizes, and is the odd side named?

Where three forces hold a joint, each is to the side of a triangle that is parallel to it as any other
is to its own: the triangle of forces (Hibbeler, Engineering Mechanics: Statics, ch. 3, and Lami's
theorem over sines; from memory). The truss is our own.
"""

from __future__ import annotations

import pytest
from families import down, exact, plain_problem

from tutor.judge import Fx, Fy, judge
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
