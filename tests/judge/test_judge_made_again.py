"""Is a mistake that is soon made at all forces named at all of them, and which are seen in a sum?

The trusses are our own; what is said of each line is what a lecturer would say, common practice, no
source.
"""

from __future__ import annotations

import pytest
from families import exact, plain_problem
from paper.measure import problem

from tutor.judge import Equation, Fx, Fy, M, judge
from tutor.model import Load, Support


@pytest.mark.parametrize(
    ("truss", "about", "text", "code", "forces"),
    [
        ("awning", Fx("J4"), "-0.6543 J4-J5 - 0.6973 R_J4 = 0", "angle-mode", "J4-J5, R_J4"),
        ("bracket", M("D"), "-4 A_x - 3 A_y - 12*3 = 0", "arm", "A_x, A_y, load E"),
        ("balti", M("L1"), "-6L0_y + 6L4_y - 20*9 - 20*6 = 0", "arm-from", "L0_y, L4_y, load L2"),
        ("fink", M("A"), "12 E_y = 5*300 + 5*6000 + 5*9000", "arm-unit", "load B, load C, load D"),
        ("incl", Fx("D"), "-0.5 AD + 0.5 CD + 10*0.5 = 0", "component", "AD, CD"),
        ("crane", M("C"), "-A_y - B_x = 0", "no-arm", "A_y, B_x"),
        ("coaling", M("D"), "A_x - B_y - 5 - 12 = 0", "no-arm", "A_x, B_y, load E x, load E y"),
        ("fink", Fy("B"), "BC sin(.555) = AB sin(.555) + BF sin(.894) + 5", "ratio", "AB, BC, BF"),
        ("fink", Fy("B"), "-0.5 AB + 0.5 BC - 0.8 BF - 5 = 0", "rounding", "AB, BC, BF"),
        ("dormer", Fx("D"), "-3 AD + 4 CD = 0", "side", "AD, CD"),
        ("hall", Fx("E"), "-1.875 CE + 1.875 BE - 1.6 EG = 0", "tangent", "BE, CE, EG"),
        ("compound", Fx("C"), "1.25 BC - 1.667 AC = 0", "upside-down", "AC, BC"),
    ],
)
def test_a_mistake_that_is_soon_made_at_all_forces_goes_before_others_at_fewer(
    truss: str, about: Equation, text: str, code: str, forces: str
) -> None:
    mistakes = judge(problem(truss), about, text).mistakes
    assert {mistake.code for mistake in mistakes} == {code}
    assert sorted(str(mistake.force) for mistake in mistakes) == forces.split(", ")


PURLINS = plain_problem(
    [(name, 2 * place, 0) for place, name in enumerate("ABCDEFG")]
    + [(name, 2 * place, 3) for place, name in enumerate("HIJKL", start=1)],
    [
        "AB",
        "BC",
        "CD",
        "DE",
        "EF",
        "FG",
        "HI",
        "IJ",
        "JK",
        "KL",
        "AH",
        "GL",
        "BH",
        "CI",
        "DJ",
        "EK",
        "FL",
        "HC",
        "ID",
        "KD",
        "LE",
    ],
    [Support("A", "pin"), Support("G", "roller")],
    [
        Load(joint, (("down", exact(size)),))
        for joint, size in (("H", 3), ("I", 5), ("J", 9), ("K", 17), ("L", 33))
    ]
    + [Load("D", (("right", exact(6)),))],
)
"""No sum of some loads is one of others: 67 downwards together, with moments of 546 about A."""


@pytest.mark.parametrize(
    ("about", "text", "code", "force"),
    [
        (Fy(), "A_y + G_y = 50", "missing", "load K"),
        (Fy(), "A_y + G_y = 84", "double", "load K"),
        (Fy(), "A_y + G_y = 33", "sign", "load K"),
        (M("A"), "12 G_y = 410", "missing", "load K"),
        (M("A"), "12 G_y = 682", "double", "load K"),
        (M("A"), "12 G_y = 274", "turning", "load K"),
    ],
)
def test_a_slip_at_one_of_five_loads_is_seen_in_their_sum(
    about: Equation, text: str, code: str, force: str
) -> None:
    (mistake,) = judge(PURLINS, about, text).mistakes
    assert (mistake.code, mistake.force) == (code, force)


def test_the_lost_minus_of_one_of_three_results_beside_a_load_is_seen_in_their_sum() -> None:
    """Level at D: -CD + DE - 0.5547 ID + 0.5547 KD + 6 = 0; with its minus CD makes it 22.226."""
    known = {"CD": "-8", "DE": "11", "ID": "5"}
    assert judge(PURLINS, Fx("D"), "22.226 + 0.5547 KD = 0", known=known).right
    (mistake,) = judge(PURLINS, Fx("D"), "6.226 + 0.5547 KD = 0", known=known).mistakes
    assert (mistake.code, mistake.force) == ("minus", "CD")


@pytest.mark.parametrize(
    ("answer", "near", "code"),
    [("0.962", "0.966", "angle-mode"), ("0.707", "0.705", "slope-assumed")],
)
def test_what_a_calculator_answers_or_is_known_by_heart_is_met_to_the_last_figure(
    answer: str, near: str, code: str
) -> None:
    """The rafter rises 4 over 3; 0.962 is what is said of 53.13 radians."""
    roof = plain_problem(
        [("A", 0, 0), ("B", 6, 0), ("C", 3, 4)],
        ("AB", "AC", "BC"),
        [Support("A", "pin"), Support("B", "roller")],
        [Load("C", (("down", exact(12)),))],
    )
    sign = "-" if code == "angle-mode" else "+"
    for factor, named in ((answer, code), (near, "not-equilibrium")):
        text = f"A_x + F_AB {sign} {factor} F_AC = 0"
        (mistake,) = judge(roof, Fx("A"), text).mistakes
        assert (mistake.code, mistake.force) == (named, "AC")


@pytest.mark.parametrize(
    ("truss", "about", "text", "more"),
    [
        ("incl", Fy("D"), "-0.866 AD - 0.866 CD + BD - 8.66 = 0", ("sign", "BD")),
        ("fink", Fy("C"), "-0.832 BC - 0.832 CD - 0.447 CF - 0.447 CG + 5 = 0", ("sign", "load C")),
        (
            "fink",
            Fy("C"),
            "-0.832 BC - 0.832 CD - 0.894 CF - 0.894 CG - 7 = 0",
            ("magnitude", "load C"),
        ),
    ],
)
def test_a_mistake_made_again_is_one_beside_another(
    truss: str, about: Equation, text: str, more: tuple[str, str]
) -> None:
    first, second, *others, last = judge(problem(truss), about, text).mistakes
    again = {mistake.code for mistake in (first, second, *others)}
    assert (again, (last.code, last.force)) == ({"component"}, more)


def test_two_mistakes_beside_one_made_again_are_too_many_to_be_named() -> None:
    text = "-0.866 AD - 0.866 CD + BD - 7 = 0"
    (mistake,) = judge(problem("incl"), Fy("D"), text).mistakes
    assert mistake.code == "not-equilibrium"
