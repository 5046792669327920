"""What is said of a line does not depend on the unit: 24 kN are 0.024 MN, 24000 N, and told alike.

Only words that give a number again differ. Our own judgement, no source.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest
from families import exact

from tutor import Fx, Fy, M, Value, judge, load_problem
from tutor.judge import Equation
from tutor.model import Load, Problem

QUAY = load_problem(Path(__file__).parents[1] / "notation" / "hands" / "quay.toml")
FOUND = {"A_x": -8, "A_y": 15, "C_y": 21, "AD": -25, "CD": -35, "AB": 28, "BC": 28}


def quay(share: Fraction, force: str) -> Problem:
    """The quay frame with its loads in another unit."""
    down = Load("D", (("down", exact(24 * share)), ("right", exact(8 * share))))
    return replace(QUAY, force=force, loads=(down, Load("B", (("down", exact(12 * share)),))))


UNITS = (quay(Fraction(1, 1000), "MN"), quay(Fraction(1000), "N"))


def told(problem: Problem, share: float, about: Equation | Value, text: str, found: str) -> object:
    """The kind, the mistakes and the remarks on a line; what stands between | is a force in kN."""
    parts = text.split("|")
    typed = "".join(f"{float(p) * share:.6g}" if n % 2 else p for n, p in enumerate(parts))
    known = {name: f"{FOUND[name] * share:.6g}" for name in found.split()}
    verdict = judge(problem, about, typed, known=known)
    mistakes = [(mistake.code, mistake.force) for mistake in verdict.mistakes]
    return verdict.kind, mistakes, [remark.code for remark in verdict.remarks]


@pytest.mark.parametrize(
    ("about", "text", "found"),
    [
        (Fy("A"), "|15| + 0.6 F_AD = 0", "A_y"),
        (Fy("A"), "|-15| + 0.6 F_AD = 0", "A_y"),
        (Fy("A"), "|16| + 0.6 F_AD = 0", "A_y"),
        (Fy("A"), "|15| + 0.8 F_AD = 0", "A_y"),
        (Fy("A"), "|15| - 0.6 F_AD = 0", "A_y"),
        (Fy("A"), "|24| + 0.6 F_AD = 0", "A_y"),
        (Fy("A"), "|1500| + 0.6 F_AD = 0", "A_y"),
        (Fx("A"), "|8| + F_AB + 0.8 F_AD = 0", "A_x"),
        (Fx("A"), "-|8| + F_AB - 0.8(|25|) = 0", "A_x AD"),
        (Fx("A"), "-|8| + F_AB + 0.8(|25|) = 0", "A_x AD"),
        (Fx("A"), "-|8| + F_AB + 0.6(|-25|) = 0", "A_x AD"),
        (Fy("D"), "|24| + 0.6 F_AD + 0.6 F_CD + F_BD = 0", ""),
        (Fy("D"), "-|24| - 0.6(|-25|) + 0.6(|-35|) - F_BD = 0", "AD CD"),
        (Fy("D"), "-|24| + 0.6(|25|) + 0.6(|35|) - F_BD = 0", "AD CD"),
        (Fy("D"), "-|12| - 0.6 F_AD - 0.6 F_CD - F_BD = 0", ""),
        (Fx("B"), "|28| + F_BC = 0", "AB"),
        (Fx(), "A_x - |8| = 0", ""),
        (Fy(), "A_y + C_y = |30|", ""),
        (Fy(), "A_y + C_y = |12|", ""),
        (M("A"), "8 C_y - |24|*4 - |8|*3 - |12|*4 = 0", ""),
        (M("A"), "8 C_y - |24|*4 + |8|*3 - |12|*4 = 0", ""),
        (M("A"), "8 C_y - |24|*4 - |8|*4 - |12|*4 = 0", ""),
        (M("A"), "8 C_y = |144|", ""),
        (M("A"), "8 C_y = |120|", ""),
        (M("A"), "4 C_y = |168|", ""),
        (M("C"), "-8 A_y + |24|*4 - |8|*3 + |12|*8 = 0", ""),
        (Fy("A"), "|15| + 0.6 F_AD = 0, F_AD = |25| C", "A_y"),
        (Fy("A"), "|15| + 0.6 F_AD = 0, F_AD = |25| T", "A_y"),
        (Fy("A"), "F_AD = |25| C", "A_y"),
        (Fy("A"), "F_AD = |25| T", "A_y"),
        (Fx("A"), "A_x = |8| right", ""),
        (Fx(), "A_x = |8| to the left", ""),
        (Fx(), "A_x = |8| to the right", ""),
        (Value("AD"), "AD = |15|/0.6 = |25| C", "A_y"),
        (Value("AD"), "AD = |15|/0.6 = |25| T", "A_y"),
        (Value("AD"), "|25| C", "A_y"),
        (Value("AD"), "|25| T", "A_y"),
        (Value("AD"), "|25|", "A_y"),
        (Value("AD"), "|-25| T", "A_y"),
        (Value("AD"), "|9| C", "A_y"),
        (Value("A_y"), "|15| up", ""),
        (Value("A_y"), "|15| down", ""),
        (Value("A_x"), "|8| right", ""),
        (Value("A_x"), "|8|", ""),
        (Value("A_y"), "|21|", ""),
        (Value("BD"), "|12|, since CD is in tension", "CD"),
        (Value("BD"), "|12|, as A_x acts to the left", "A_x"),
        (Value("BD"), "|12|, as A_x acts to the right", "A_x"),
    ],
)
def test_a_line_is_told_alike_whatever_the_unit_of_force(
    about: Equation | Value, text: str, found: str
) -> None:
    usual = told(QUAY, 1.0, about, text, found)
    for problem, share in zip(UNITS, (1e-3, 1e3), strict=True):
        assert told(problem, share, about, text, found) == usual


@pytest.mark.parametrize(
    ("name", "found", "value"),
    [
        ("CD", {"AD": -24.7}, "-34.7"),
        ("AD", {"CD": -34.7}, "-24.7"),
        ("AB", {"AD": -24.7, "A_x": -8}, "27.76"),
        ("BC", {"CD": -34.7}, "27.76"),
    ],
)
def test_a_value_may_follow_from_an_own_one_at_either_end_of_its_member(
    name: str, found: dict[str, float], value: str
) -> None:
    """At D: 4/5 CD = 4/5 AD - 8; at A: AB = 8 - 4/5 AD; at C: BC = -4/5 CD."""
    assert judge(QUAY, Value(name), value, known=found).right
    assert not judge(QUAY, Value(name), value).right


def test_kilonewtons_and_metres_may_both_be_taken_in_thousandths() -> None:
    text = "8000 C_y - 24000(4000) - 8000(3000) - 12000(4000) = 0"
    assert [mistake.code for mistake in judge(QUAY, M("A"), text).mistakes] == ["unit"]


@pytest.mark.parametrize("text", ["A_x = 12 sin 40 = 8.94", "A_x = 20/sin 30 = -20.24"])
def test_an_angle_taken_as_radians_within_a_line_is_told(text: str) -> None:
    found = judge(QUAY, Value("A_x"), text).mistakes
    assert [mistake.code for mistake in found] == ["angle-mode"]


def test_a_result_turned_twice_is_told_that_its_arrow_was_turned_already() -> None:
    drawn = {"senses": {"AD": "C"}, "known": {"AD": 25}}
    (told,) = judge(QUAY, Fy("D"), "-24 - 0.6(25) - 0.6 F_CD - F_BD = 0", **drawn).mistakes
    assert (told.code, told.force) == ("minus", "AD")
    assert "was drawn the other way round already" in told.place
    (lost,) = judge(QUAY, Fy("D"), "-24 - 15 - 0.6 CD - BD = 0", known={"AD": -25}).mistakes
    assert (lost.code, lost.force) == ("minus", "AD")
    assert "is lost here" in lost.place
