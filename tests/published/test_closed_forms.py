"""Do whole families of trusses agree with the closed forms of the handbooks?

Parallel chords: chord force = M / h, web force = V / sin(slope), with the moment M and the shear V
of a beam of the same span under the same loads (common practice, no single source).
"""

from fractions import Fraction
from math import hypot

import pytest
from families import down, fink, howe, plain_problem, pratt, warren

from tutor.model import Support
from tutor.statics import solve

SIZES = [(4, 1, 1, 1), (6, 1, 1, 1), (6, 4, 3, 10), (8, 5, 12, 7), (10, Fraction(3, 2), 2, 36)]


def beam(n, a, load):
    """The end reaction, the moment M_k at each panel point and the shear V_k in panel k (from 1)."""
    end = Fraction(n - 1, 2) * load
    moment = [end * k * a - Fraction(load * k * (k - 1), 2) * a for k in range(n + 1)]
    shear = [None] + [end - k * load for k in range(n)]
    return end, moment, shear


@pytest.mark.parametrize(("n", "a", "h", "load"), SIZES)
def test_pratt_forces_are_moment_over_height_and_shear_over_sine(n, a, h, load):
    answer = solve(pratt(n, a, h, load))
    end, moment, shear = beam(n, a, load)
    d = hypot(a, h)
    assert answer.reaction("L0_y") == pytest.approx(float(end))
    assert answer.force("L0", "U1") == pytest.approx(-float(end) * d / h)
    assert answer.force("U1", "L1") == pytest.approx(float(load))
    for i in range(n // 2):
        chord = float(moment[max(i, 1)] / h)
        assert answer.force(f"L{i}", f"L{i + 1}") == pytest.approx(chord)
    for i in range(1, n // 2):
        assert answer.force(f"U{i}", f"U{i + 1}") == pytest.approx(-float(moment[i + 1] / h))
        assert answer.force(f"U{i}", f"L{i + 1}") == pytest.approx(float(shear[i + 1]) * d / h)
    for i in range(2, n // 2):
        assert answer.force(f"U{i}", f"L{i}") == pytest.approx(-float(shear[i + 1]))


@pytest.mark.parametrize(("n", "a", "h", "load"), SIZES)
def test_howe_forces_are_moment_over_height_and_shear_over_sine(n, a, h, load):
    answer = solve(howe(n, a, h, load))
    end, moment, shear = beam(n, a, load)
    d = hypot(a, h)
    assert answer.force("L0", "U1") == pytest.approx(-float(end) * d / h)
    for i in range(n // 2):
        assert answer.force(f"L{i}", f"L{i + 1}") == pytest.approx(float(moment[i + 1] / h))
    for i in range(1, n // 2):
        assert answer.force(f"U{i}", f"U{i + 1}") == pytest.approx(-float(moment[i] / h))
        assert answer.force(f"L{i}", f"U{i + 1}") == pytest.approx(-float(shear[i + 1]) * d / h)
        assert answer.force(f"U{i}", f"L{i}") == pytest.approx(float(shear[i]))


@pytest.mark.parametrize(("n", "a", "h", "load"), [*SIZES, (3, 2, 1, 5), (5, 6, 4, 2)])
def test_warren_forces_are_moment_over_height_and_shear_over_sine(n, a, h, load):
    answer = solve(warren(n, a, h, load))
    _, moment, shear = beam(n, a, load)
    d = hypot(a / 2, h)
    for i in range(1, n + 1):
        middle = (moment[i - 1] + moment[i]) / 2
        assert answer.force(f"L{i - 1}", f"L{i}") == pytest.approx(float(middle / h))
        web = float(shear[i]) * d / h
        near, far = answer.force(f"L{i - 1}", f"U{i}"), answer.force(f"U{i}", f"L{i}")
        assert (near, far) == pytest.approx((-web, web))
    for i in range(1, n):
        assert answer.force(f"U{i}", f"U{i + 1}") == pytest.approx(-float(moment[i] / h))


def test_six_square_panels_have_the_verticals_of_the_handbooks():
    # Common practice: Pratt 1, -0.5, 0 and Howe 2.5, 1.5, 1 times the panel load, diagonals of
    # the Howe truss -2.121 and -0.707.
    forces = solve(pratt(6, 1, 1, 1))
    verticals = [forces.force(f"U{i}", f"L{i}") for i in (1, 2, 3)]
    assert verticals == pytest.approx([1, -0.5, 0])
    forces = solve(howe(6, 1, 1, 1))
    verticals = [forces.force(f"U{i}", f"L{i}") for i in (1, 2, 3)]
    assert verticals == pytest.approx([2.5, 1.5, 1])
    diagonals = [forces.force("L1", "U2"), forces.force("L2", "U3")]
    assert diagonals == pytest.approx([-2.121, -0.707], abs=5e-4)


@pytest.mark.parametrize(
    ("rise_squared", "rafters", "ties", "strut", "web"),
    [
        pytest.param(Fraction(1, 4), (-3.354, -2.907), (3, 2), -0.894, 1, id="pitch 1/4"),
        pytest.param(Fraction(1, 3), (-3, -2.5), (2.598, 1.732), -0.866, 0.866, id="30 degrees"),
        pytest.param(Fraction(4, 9), (-2.704, -2.149), (2.25, 1.5), -0.832, 0.75, id="pitch 1/3"),
    ],
)
def test_a_fink_roof_of_four_panels_has_the_handbook_coefficients(
    rise_squared, rafters, ties, strut, web
):
    # Common practice: the coefficients stand in roof truss tables of many handbooks.
    answer = solve(fink(4, 1, rise_squared, 1))
    for side in "LR":
        foot = f"{side}F"
        got = [answer.force(f"{side}0", f"{side}1"), answer.force(f"{side}1", "T")]
        assert got == pytest.approx(rafters, abs=5e-4)
        got = [answer.force(f"{side}0", foot), answer.force("LF", "RF")]
        assert got == pytest.approx(ties, abs=5e-4)
        got = [answer.force(f"{side}1", foot), answer.force(foot, "T")]
        assert got == pytest.approx([strut, web], abs=5e-4)


def test_a_fink_roof_of_eight_panels_has_the_handbook_coefficients():
    # The row stands in handbooks; quoted from memory.
    answer = solve(fink(8, 1, Fraction(1, 4), 1))
    rafters = ["L0-L1", "L1-L2", "L2-L3", "L3-T"]
    rest = ["L0-LM", "LM-LF", "LF-RF", "L1-LM", "L2-LF", "L3-LN", "L2-LM", "L2-LN", "LF-LN", "LN-T"]
    got = [answer.force(name) for name in rafters + rest]
    row = [-7.826, -7.379, -6.932, -6.485, 7, 6, 4, -0.894, -1.789, -0.894, 1, 1, 2, 3]
    assert got == pytest.approx(row, abs=1.2e-3)


HALVES = "AB BE AD DE BD EF FG EG FH GH"
"""Two trusses A, B, D, E and E, F, G, H that lean on each other at E."""


@pytest.mark.parametrize("load", [{"E": 48}, {"B": 30}, {"B": 12, "E": 20, "F": 44}])
@pytest.mark.parametrize(("half", "eaves", "rise"), [(7, 7, 7), (8, 4, 10), (12, 6, 11)])
def test_two_trusses_that_lean_on_each_other_thrust_by_moment_over_rise(half, eaves, rise, load):
    at = {"A": 0, "B": 1, "D": 2, "E": half, "G": 2 * half - 2, "F": 2 * half - 1, "H": 2 * half}
    height = {"A": 0, "B": eaves, "D": 2, "E": rise, "G": 2, "F": eaves, "H": 0}
    joints = [(name, at[name], height[name]) for name in at]
    loads = [down(joint, size) for joint, size in load.items()]
    end = sum(size * (2 * half - at[joint]) for joint, size in load.items()) / (2 * half)
    moment = end * half - sum(size * max(half - at[j], 0) for j, size in load.items())
    tied = plain_problem(
        joints, [*HALVES.split(), "AH"], [Support("A", "pin"), Support("H", "roller")], loads
    )
    pinned = plain_problem(
        joints, HALVES.split(), [Support("A", "pin"), Support("H", "pin")], loads
    )
    assert solve(tied).force("A", "H") == pytest.approx(moment / rise)
    assert solve(pinned).reaction("A_x") == pytest.approx(moment / rise)
    assert solve(pinned).reaction("H_x") == pytest.approx(-moment / rise)
