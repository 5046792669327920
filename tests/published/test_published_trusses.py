"""Do solved trusses agree with worked examples printed in textbooks?

Only facts and figures are taken from the sources. Tension is positive.
"""

import json
from fractions import Fraction
from pathlib import Path

import pytest
from families import plain_problem
from worked_examples import BEER_JOHNSTON, HIBBELER

from tutor.model import Load, Problem, Support
from tutor.notation import Exact
from tutor.statics import solve

CASES = [
    json.loads(line)
    for line in Path(__file__).with_name("cases.jsonl").read_text(encoding="utf-8").splitlines()
]


def decimal(number: float) -> Fraction:
    return Fraction(str(number))


def problem_of(case: dict) -> Problem:
    ways = {"xy": ("pin", None), "x": ("roller", 0), "y": ("roller", 90)}
    supports = []
    for joint, held in case["supports"].items():
        kind, angle = ways[held]
        supports.append(Support(joint, kind, None if angle is None else Exact.of(angle)))
    loads = []
    for joint, (x, y) in case["loads"].items():
        pushes = [("right" if x > 0 else "left", x)] if x else []
        pushes += [("up" if y > 0 else "down", y)] if y else []
        loads.append(Load(joint, tuple((way, Exact.of(abs(decimal(v)))) for way, v in pushes)))
    joints = [(name, decimal(x), decimal(y)) for name, (x, y) in case["joints"].items()]
    return plain_problem(joints, case["forces"], supports, loads, force=case["force"])


def half_a_place(printed: list[float]) -> float:
    """Half of the last decimal place that a list of printed numbers uses, and a hair."""
    places = max(len(str(v).partition(".")[2].rstrip("0")) for v in printed)
    return 0.5001 * 10.0**-places


@pytest.mark.parametrize("case", CASES, ids=[case["source"] for case in CASES])
def test_a_solved_truss_has_the_member_forces_printed_in_its_source(case):
    answer = solve(problem_of(case))
    within = half_a_place(list(case["forces"].values()))
    got = {name: answer.force(name) for name in case["forces"]}
    assert got == pytest.approx(case["forces"], abs=within, rel=0)


def test_the_three_member_example_of_hibbeler_comes_out_as_printed():
    # Source beside the truss. Printed: BC 707.1 N (C), AB 500 N (T), AC 500 N (T), A_x 500 N to
    # the left, A_y 500 N down, C_y 500 N up.
    answer = solve(HIBBELER)
    assert answer.force("BC") == pytest.approx(-707.1, abs=0.05)
    assert (answer.force("AB"), answer.force("AC")) == pytest.approx((500, 500))
    reactions = [answer.reaction(name) for name in ("A_x", "A_y", "C_y")]
    assert reactions == pytest.approx([-500, -500, 500])


def test_the_seven_member_sample_of_beer_and_johnston_comes_out_as_printed():
    answer = solve(BEER_JOHNSTON)
    printed = {"AB": 1500, "AD": -2500, "DB": 2500, "DE": -3000, "BE": -3750, "BC": 5250}
    printed |= {"EC": -8750, "E_y": 10000, "C_y": -7000, "C_x": 0}
    assert {name: answer.value(name) for name in printed} == pytest.approx(printed)
    assert {name: answer.exact(name) for name in printed} == printed
