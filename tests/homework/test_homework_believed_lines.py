"""What is said of a page of lines that one belief runs through, and of reactions taken for granted?

The pages are of two trusses of our own, a mast with K bracing and a scissors roof; their values come from
numpy and plain geometry alone, two sums a joint, three figures written and carried on.
"""

from __future__ import annotations

import pytest
from families import plain_problem

from tutor import review
from tutor.homework import Review, read_paper
from tutor.model import Load, Problem, Support
from tutor.notation import Exact


def load(joint: str, **pushes: int) -> Load:
    return Load(joint, tuple((way, Exact.of(size)) for way, size in pushes.items()))  # type: ignore[misc]


MAST = plain_problem(
    (("A", 0, 0), ("B", 6, 0), ("C", 0, 4), ("D", 6, 4), ("M", 3, 4), ("E", 0, 7), ("F", 6, 7), ("N", 3, 7)),
    ("AB", "AC", "BD", "CM", "MD", "AM", "BM", "CE", "DF", "EN", "NF", "CN", "DN"),
    (Support("A", "pin"), Support("B", "roller")),
    (load("E", down=10, right=8), load("N", down=10), load("F", down=10), load("C", right=12)),
)  # fmt: skip
ROOF = plain_problem(
    (("A", 0, 0), ("B", 32, 0), ("C", 16, 12), ("D", 8, 6), ("E", 24, 6), ("F", 16, 4)),
    ("AD", "CD", "CE", "BE", "AF", "BF", "DF", "EF", "CF"),
    (Support("A", "pin"), Support("B", "roller", Exact.of(120))),
    (load("D", down=4, right=2), load("C", down=5), load("E", down=4)),
    force="kip",
    length="ft",
)
TOP = """
A_x = -20, A_y = -2.33, B_y = 32.3
ΣFx at E: 8 + F_EN = 0
ΣFy at E: -10 - F_CE = 0
CE = 10 C, EN = 8 C
ΣFy at F: -10 - F_DF = 0
DF = 10 C, NF = 0
"""
ONE_SLOPE = """
ΣFx at N: 8 - 0.6 F_CN + 0.6 F_DN = 0
ΣFy at N: -10 - 0.8 F_CN - 0.8 F_DN = 0
CN = 0.417 T, DN = 12.9 C
ΣFx at C: 12 + F_CM + 0.6(0.417) = 0
ΣFy at C: -F_AC - 10 + 0.8(0.417) = 0
AC = 9.67 C, CM = 12.3 C
ΣFx at D: -F_MD + 0.6(12.9) = 0
ΣFy at D: -F_BD - 10 - 0.8(12.9) = 0
BD = 20.3 C, MD = 7.74 T
AM = 16.7 T, BM = 16.7 C, AB = 9.98 T
"""
RADIANS = """
ΣFx at N: 8 - 0.525 F_CN + 0.525 F_DN = 0
ΣFy at N: -10 - 0.851 F_CN - 0.851 F_DN = 0
CN = 1.74 T, DN = 13.5 C
ΣFx at C: 12 + F_CM + 0.525(1.74) = 0
ΣFy at C: -F_AC - 10 + 0.851(1.74) = 0
AC = 8.52 C, CM = 12.9 C
"""
WHOLE_FORCES = """
ΣFx at N: 8 - F_CN + F_DN = 0
ΣFy at N: -10 - F_CN - F_DN = 0
CN = 1 C, DN = 9 C
ΣFx at C: 12 + F_CM - 1 = 0
ΣFy at C: -F_AC - 10 - 1 = 0
AC = 11 C, CM = 11 C
"""


def checked(problem: Problem, page: str) -> Review:
    read = read_paper(problem, page)
    assert not read.refused
    return review(problem, read.paper.work(problem))


@pytest.mark.parametrize(("page", "code"), [(ONE_SLOPE, "slope"), (RADIANS, "angle-mode")])
def test_a_wrong_line_is_judged_with_what_was_found_before_it_and_not_after(
    page: str, code: str
) -> None:
    """With AC as the line below gave it, the first of joint C would be a sum along CN."""
    result = checked(MAST, TOP + page)
    assert result.places == ("N",)
    lines = [f for f in result.findings if isinstance(f.name, int) and f.state == "wrong"]
    assert len(lines) >= 4
    assert {f.cause.code for f in lines if f.cause is not None} == {code}
    assert "of joint C" in result.said
    assert "the same kind of mistake" in result.said


def test_what_a_later_line_shows_explains_the_value_that_it_gave() -> None:
    result = checked(MAST, TOP + RADIANS)
    for name in ("AC", "CM"):
        cause = result.finding[name].cause
        assert cause is not None
        assert cause.code == "angle-mode"


def test_a_line_in_which_nothing_can_be_named_explains_no_value() -> None:
    nothing = RADIANS.replace("-F_AC - 10 + 0.851(1.74) = 0", "3 F_AC - 31 F_CE + 77 F_CM = 0")
    result = checked(MAST, TOP + nothing)
    assert (result.finding["AC"].state, result.finding["AC"].cause) == ("wrong", None)


def test_a_line_that_is_true_with_wrong_values_or_without_is_never_called_another_one() -> None:
    """CN came in whole, and its number is now that of the component: the lines of C are right."""
    result = checked(MAST, TOP + WHOLE_FORCES)
    states = [f.state for f in result.findings if isinstance(f.name, int)]
    assert states == ["right", "right", "right", "wrong", "wrong", "right", "right"]
    assert "the same kind of mistake" not in result.said


MEMBERS = "CE = 10 C, EN = 8 C, DF = 10 C, NF = 0, CN = 1.41 C, DN = 12.7 C"
REST = "AC = 11 C, CM = 11 C, BD = 19 C, MD = 8.98 T, AM = 16.6 T, BM = 16.6 C"


@pytest.mark.parametrize("page", ["", MEMBERS, f"{MEMBERS}\n{REST}\nAB = 9.96 C"])
def test_a_pin_reaction_written_down_as_none_is_told_as_a_pin_taken_for_a_roller(page: str) -> None:
    result = checked(MAST, f"A_x = 0, A_y = -2.33, B_y = 32.3\n{page}")
    assert result.places == ("whole",)
    assert result.accounts[0].mistake.code == "missing"
    assert result.accounts[0].mistake.force == "A_x"
    assert {f.name for f in result.findings if f.state == "wrong"} == {"A_x"}
    assert "certain" not in {f.sure for f in result.findings if f.state != "right"}


def test_the_same_beside_an_inclined_roller_found_rightly() -> None:
    page = "A_x = 0, A_y = 6.12, R_B = 7.94\nAD = 15.3 C, AF = 12.6 T\nCD = 10.9 C, DF = 5.67 C"
    result = checked(ROOF, page)
    assert result.places == ("whole",)
    assert result.accounts[0].mistake.code == "missing"
    assert {f.name for f in result.findings if f.state == "follows"} == {"AD", "AF", "CD"}


def test_a_line_is_of_its_own_joint_though_another_joints_sum_comes_to_the_same() -> None:
    """R_B taken as upright: 0.97(14.2) is BF in it, and 0.8(12.2) + 0.97(4.17) at E by its sum alone."""
    members = "AD = 16.6 C, AF = 15.7 T, CD = 12.2 C, DF = 5.67 C, CE = 12.2 C, CF = 9.64 T"
    line = "ΣFx at B: -0.8 F_BE - 0.97(14.2) = 0"
    page = f"A_x = -2, A_y = 6.12, R_B = 6.88\n{members}\nEF = 4.17 C, BF = 14.2 T\n{line}\nBE = 17.2 C"
    cause = checked(ROOF, page).finding[0].cause
    assert cause is not None
    assert (cause.code, cause.force) == ("missing", "R_B")


@pytest.mark.parametrize(
    "page",
    [
        "A_x = -2, A_y = 6.5, R_B = 6.5",
        "A_x = -2, A_y = 6.5, R_B = 6.5\nAD = 17.5 C, AF = 16.5 T\nCD = 13.1 C, DF = 5.67 C",
        "A_x = 1.75, A_y = 6.5, R_B = 7.51",
    ],
)
def test_half_the_load_on_an_inclined_roller_is_told_as_half_the_load(page: str) -> None:
    """13 kips in all: 6.5 each, R_B taken as upright, or 6.5 as its vertical component."""
    result = checked(ROOF, page)
    assert result.places == ("whole",)
    assert result.accounts[0].mistake.code == "symmetry"
