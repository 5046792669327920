"""Does an independent general library find the same forces?

`sympy.physics.continuum_mechanics.truss.Truss` of SymPy (1.13 or later). It knows a pin and a
roller on a level floor only, so each grown truss is set on these; it gives tension as positive
(its documentation says the opposite of what it computes, see the first test).
"""

from dataclasses import replace
from fractions import Fraction
from math import atan2, degrees, hypot

import pytest
from strategies import make_truss, well_held
from sympy.physics.continuum_mechanics.truss import Truss

from tutor.model import Problem, Support
from tutor.statics import solve


def on_pin_and_roller(problem: Problem) -> Problem:
    for pin in problem.joints:
        for roller in reversed(problem.joints):
            supports = (Support(pin.name, "pin"), Support(roller.name, "roller"))
            if pin != roller and well_held(problem.joints, supports):
                return replace(problem, supports=supports)
    raise AssertionError("no two joints apart")


def solved_by_sympy(problem: Problem) -> dict[str, float]:
    truss = Truss()
    for joint in problem.joints:
        truss.add_node((joint.name, *joint.at))
    for member in problem.members:
        truss.add_member((member.name, member.start, member.end))
    for support in problem.supports:
        truss.apply_support((support.joint, "pinned" if support.kind == "pin" else "roller"))
    for load in problem.loads:
        x, y = load.vector
        truss.apply_load(
            (load.joint, hypot(x, y), Fraction(degrees(atan2(y, x))).limit_denominator(10**6))
        )
    truss.solve()
    found = {name.removeprefix("R_"): value for name, value in truss.reaction_loads.items()}
    return {name: float(value) for name, value in (found | truss.internal_forces).items()}


def test_sympy_gives_a_hanging_member_as_positive():
    truss = Truss()
    truss.add_node(("A", 0, 0), ("B", 4, 0), ("C", 2, -3))
    truss.add_member(("AB", "A", "B"), ("BC", "B", "C"), ("AC", "A", "C"))
    truss.apply_support(("A", "pinned"), ("B", "roller"))
    truss.apply_load(("C", 12, 270))
    truss.solve()
    assert float(truss.internal_forces["AC"]) == pytest.approx(2 * 13**0.5)


@pytest.mark.parametrize("seed", range(60))
def test_grown_trusses_have_the_forces_that_sympy_finds(seed):
    problem = on_pin_and_roller(make_truss(1000 + seed, 3 + seed % 5))
    answer = solve(problem)
    theirs = solved_by_sympy(problem)
    scale = max(map(abs, answer.values.values())) or 1.0
    assert set(theirs) == set(answer.values)
    assert theirs == pytest.approx(dict(answer.values), abs=1e-7 * scale, rel=1e-7)
