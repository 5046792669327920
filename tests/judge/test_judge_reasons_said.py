"""Words beside a right line that are not so are told, and give nothing away that is not found yet."""

from __future__ import annotations

from pathlib import Path

import pytest

from tutor import Fx, Fy, Value, judge, load_problem, solve

QUAY = load_problem(Path(__file__).parents[1] / "notation" / "hands" / "quay.toml")
TRUE = dict(solve(QUAY).values)
FOUND = {"CD": -35, "A_y": 15}


def said(about, text: str, known=None) -> str:
    """The remarks on a line that is right, as one text."""
    verdict = judge(QUAY, about, text, known=known)
    assert verdict.right, verdict.text
    return " ".join(remark.text for remark in verdict.remarks)


@pytest.mark.parametrize(
    ("text", "truth"),
    [
        ("F_BD = 12, since CD is in tension", "CD is in compression"),
        ("F_BD = 12 (CD is a tie)", "CD is in compression"),
        ("F_BD = 12, as CD and BD are in tension", "CD is in compression"),
        ("F_BD = 12 since CD is zero", "CD is in compression"),
        ("F_BD = 12, because A_y acts down", "A_y acts the other way"),
        ("F_BD = 12, because A_y is 16", "A_y is 15 kN"),
        ("F_BD = 12, where CD is a strut of 25 kN", "CD is -35 kN"),
        ("F_BD = 12, because the load is 30", "no load of that size is given"),
        ("F_BD = 12, because the load at D is 12", "no load at D of that size is given"),
        ("F_BD = 12 (the load at B is 24 kN)", "no load at B of that size is given"),
        ("F_BD = 12, weil die Last 30 ist", ""),
        ("F_BD = 12 (CD is a zero bar)", "CD is in compression"),
        ("F_BD = 12 (CD is zero, nothing hangs on it)", "CD is in compression"),
    ],
)
def test_a_reason_that_is_not_so_is_told_with_what_is_so(text: str, truth: str) -> None:
    told = said(Value("BD"), text, FOUND)
    assert truth in told
    assert told


@pytest.mark.parametrize(
    "text",
    [
        "F_BD = 12, since CD is in compression",
        "F_BD = 12 (CD is a strut)",
        "F_BD = 12, because the load at B is 12",
        "F_BD = 12, because the load is 12 kN",
        "F_BD = 12, because A_y is 15",
        "F_BD = 12, as A_y acts up",
        "F_BD = 12, CD is a strut of 35 kN",
        "F_BD = 12, so BD is in tension",
    ],
)
def test_a_reason_that_is_so_costs_nothing(text: str) -> None:
    assert not said(Value("BD"), text, FOUND)


@pytest.mark.parametrize("text", ["F_BD = 12, since 0.6 CD is 21", "F_BD = 12 (as 0.6 CD is 21)"])
def test_of_a_part_of_a_force_nothing_is_held_against_the_whole(text: str) -> None:
    assert "is not so" not in said(Value("BD"), text, FOUND)


@pytest.mark.parametrize("name", sorted(set(QUAY.member) - {"BD"}))
def test_of_a_force_not_found_yet_the_same_is_said_of_a_true_and_of_a_false_reason(
    name: str,
) -> None:
    told = {
        way: said(Value("BD"), f"F_BD = 12, since {name} is in {way}")
        for way in ("tension", "compression")
    }
    assert told["tension"].replace("tension", "compression") == told["compression"]
    assert f"{name} is not found yet" in told["tension"]


@pytest.mark.parametrize(
    "text",
    [
        "A_x + F_AB + 0.8 F_AD = 0 (AD drawn in tension)",
        "A_x + F_AB + 0.8 F_AD = 0, taking AD in tension",
        "A_x + F_AB + 0.8 F_AD = 0, if AD is in tension",
    ],
)
def test_how_a_force_is_drawn_or_taken_is_no_reason(text: str) -> None:
    assert "not so" not in said(Fx(joint="A"), text, {"AD": -25})


def test_a_false_reason_never_makes_a_right_line_wrong_nor_a_wrong_one_right() -> None:
    for line in ("A_y + 0.6 F_AD = 0", "A_y - 0.6 F_AD = 0"):
        for reason in ("since CD is in tension", "because the load is 30", "as A_y is 3"):
            plain = judge(QUAY, Fy(joint="A"), line, known=FOUND)
            given = judge(QUAY, Fy(joint="A"), f"{line}, {reason}", known=FOUND)
            assert given.kind == plain.kind, (line, reason)
            assert given.mistakes == plain.mistakes or plain.right
