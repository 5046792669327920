"""Two mistakes at one force, and an earlier result of another force in its place."""

from __future__ import annotations

from pathlib import Path

import pytest
from families import exact, plain_problem
from paper.measure import problem

from tutor import Fx, Fy, M, judge, load_problem
from tutor.model import Load, Support

QUAY = load_problem(Path(__file__).parents[1] / "notation" / "hands" / "quay.toml")
FOUND = {"A_x": -8, "A_y": 15, "AD": -25, "CD": -35, "BC": 28, "C_y": 21, "BD": 12}


def named(about, text: str, **known: float) -> list[tuple[str, str | None]]:
    return [(m.code, m.force) for m in judge(QUAY, about, text, known=known).mistakes]


@pytest.mark.parametrize(
    ("text", "force", "codes"),
    [
        ("5C_y - 12*4 - 24*4 - 8*3 = 0", "C_y", ["arm"]),
        ("-5C_y - 12*4 - 24*4 - 8*3 = 0", "C_y", ["arm", "turning"]),
        ("5C_y + 12*4 + 24*4 + 8*3 = 0", "C_y", ["arm", "turning"]),
        ("7.3C_y + 168 = 0", "C_y", ["arm", "turning"]),
        ("8C_y - 12*4 - 24*4 + 8*2 = 0", "load D x", ["arm", "turning"]),
        ("8C_y - 12*4 + 24*3.5 - 8*3 = 0", "load D y", ["arm", "turning"]),
        ("8C_y - 12*4 + 20*4 - 8*3 = 0", "load D y", ["magnitude", "turning"]),
        ("8C_y + 12*5 - 24*4 - 8*3 = 0", "load B", ["arm", "turning"]),
    ],
)
def test_a_force_with_a_wrong_arm_or_size_that_turns_the_wrong_way_too_has_both_named(
    text: str, force: str, codes: list[str]
) -> None:
    assert named(M("A"), text) == [(code, force) for code in codes]


@pytest.mark.parametrize(
    ("about", "text", "force"),
    [
        (Fy("A"), "15 + 0.6*(-35) = 0", "AD"),
        (Fy("A"), "15 - 0.6*35 = 0", "AD"),
        (Fy("A"), "15 + 0.6*(-28) = 0", "AD"),
        (Fy("A"), "21 - 0.6*25 = 0", "A_y"),
        (Fx("A"), "-8 + F_AB - 0.8*35 = 0", "AD"),
        (Fx("A"), "-8 + F_AB - 0.8*35.05 = 0", "AD"),
        (Fx("A"), "15 + F_AB - 0.8*25 = 0", "A_x"),
    ],
)
def test_the_result_of_another_force_in_the_place_of_one_is_carried(
    about, text: str, force: str
) -> None:
    assert named(about, text, **FOUND) == [("carried", force)]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("8 + F_AB - 0.8*25 = 0", [("minus", "A_x")]),
        ("-8 + F_AB + 0.8*25 = 0", [("minus", "AD")]),
        ("F_AB = -8 + 20", [("minus", "A_x")]),
        ("F_AB = 8 - 20", [("minus", "AD")]),
        ("F_AB = -8 - 20", [("sign", "AB")]),
        ("-8 = F_AB - 20", [("pull-push", None)]),
        ("8 - F_AB - 0.8*(-25) = 0", []),
        ("-(-8) - F_AB + 25*0.8 = 0", []),
        ("F_AB = -(-8) - 0.8(-25)", []),
    ],
)
def test_a_negative_result_comes_in_with_its_minus_once_and_moves_over_with_it(
    text: str, found: list[tuple[str, str | None]]
) -> None:
    assert named(Fx("A"), text, **FOUND) == found


def test_a_force_left_out_is_not_taken_for_a_load_of_the_size_of_its_factor() -> None:
    tent = plain_problem(
        [("A", 0, 0), ("B", 4, 0), ("C", 8, 0), ("D", 4, 3)],
        ("AB", "BC", "AD", "BD", "CD"),
        [Support("A", "pin"), Support("C", "roller")],
        [Load("D", (("down", exact(1)),)), Load("B", (("down", exact(5)),))],
    )
    (missing,) = judge(tent, Fy("D"), "1 + 0.6 F_AD + 0.6 F_CD = 0").mistakes
    assert (missing.code, missing.force, missing.alike) == ("missing", "BD", ())


ROOF = plain_problem(
    [("A", 0, 0), ("B", 6, 0), ("C", 3, 4)],
    ("AB", "AC", "BC"),
    [Support("A", "pin"), Support("B", "roller")],
    [Load("C", (("down", exact(16)),))],
)


@pytest.mark.parametrize(
    ("about", "text", "more", "called"),
    [
        (Fx("A"), "A_x + F_AB + 0.8*10 = 0", {"known": {"AC": "-10"}}, "minus"),
        (Fx("A"), "A_x + F_AB - 0.8*(-10) = 0", {"known": {"AC": "-10"}}, "minus"),
        (Fx("A"), "A_x + F_AB + 0.8 F_AC = 0", {"senses": {"AC": "C"}}, "sense"),
        (Fx("A"), "A_x + F_AB - 0.8 F_AC = 0", {}, "sign"),
    ],
)
def test_a_wrong_component_with_a_wrong_sign_has_the_sign_named_as_it_would_be_alone(
    about, text: str, more, called: str
) -> None:
    said = judge(ROOF, about, text, **more)
    assert [(m.code, m.force) for m in said.mistakes] == [("component", "AC"), (called, "AC")]
    alone = judge(ROOF, about, text.replace("0.8", "0.6"), **more)
    assert [(m.code, m.force) for m in alone.mistakes] == [(called, "AC")]


@pytest.mark.parametrize(
    ("about", "text", "force", "more"),
    [
        (Fx(), "A_x - 0.5 R_C - 10 cos30 = 0", "load D", {}),
        (Fy(), "A_y + 0.866 R_C - 6 + 10*0.5 = 0", "load D", {}),
        (Fx(), "A_x + 10*0.5 + 7 sin60 = 0", "R_C", {"known": {"R_C": "7"}}),
        (Fy("C"), "0.5 F_CD - 7*(1/2) = 0", "R_C", {"known": {"R_C": "7"}}),
    ],
)
def test_a_load_or_a_known_force_by_its_other_component_the_wrong_way_has_both_named(
    about, text: str, force: str, more
) -> None:
    said = judge(problem("incl"), about, text, **more)
    assert [(m.code, m.force) for m in said.mistakes] == [("component", force), ("sign", force)]
    assert "sizes fit" not in said.text
