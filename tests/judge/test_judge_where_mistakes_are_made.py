"""Beside which forces is each mistake made, and which factor or arm shows it there?

The truss is our own, its slopes 3 to 4, with a roller at 120° and a load of 10 at 300°; every number
follows from plain geometry.
"""

from __future__ import annotations

import pytest
from families import exact, plain_problem

from tutor.judge import Along, Fx, Fy, M
from tutor.judge.about import Equation
from tutor.judge.known_values import KnownValues
from tutor.judge.mistakes import KINDS
from tutor.judge.true_equation import TrueEquation, TrueTerm
from tutor.model import Load, Support

SHED = plain_problem(
    [("A", 0, 0), ("B", 8, 0), ("C", 4, 3), ("D", 8, 6)],
    ("AB", "AC", "BC", "CD", "BD"),
    [Support("A", "pin"), Support("B", "roller", exact(120))],
    [
        Load("C", size=exact(10), angle=exact(300)),
        Load("D", (("down", exact(6)),)),
        Load("B", (("right", exact(4)),)),
    ],
)
SUMS: tuple[Equation, ...] = (
    *(total(joint) for joint in (None, "A", "B", "C", "D") for total in (Fx, Fy)),
    Along(30, joint="C"),
    *(M(joint) for joint in "ABC"),
)


def spots(about: Equation) -> tuple[TrueTerm, ...]:
    true = TrueEquation(SHED, about, KnownValues({}, {}))
    return (*true.unknowns.values(), *true.loads)


def situation(spot: TrueTerm) -> tuple[str, str, str, str]:
    """The kind of sum, how much of the force counts in it, how the force lies, and which it is."""
    slanted = min(map(abs, spot.unit_vector)) > 1e-9
    share = "none" if spot.per_unit == 0.0 else "some"
    if not spot.is_moment and abs(spot.per_unit) == 1.0:
        share = "all"
    lies = "slanted" if slanted else "straight"
    return "moment" if spot.is_moment else "sum", share, lies, spot.force.kind


EVERY = {situation(spot) for about in SUMS for spot in spots(about)}


def among(*words: str) -> set[tuple[str, ...]]:
    """The situations that have each of these words, of which `a|b` is either."""
    return {each for each in EVERY if all(set(word.split("|")) & set(each) for word in words)}


WHERE = {
    "angle-mode": among("some", "slanted"),
    "arm": among("moment", "some"),
    "arm-from": among("moment", "some"),
    "arm-unit": among("moment"),
    "complement": among("sum", "slanted", "some", "member"),
    "component": among("some", "slanted"),
    "component-in-moment": among("moment", "some", "slanted"),
    "component-missing": among("moment", "some", "slanted"),
    "double": EVERY,
    "extra": among("none", "straight") | among("sum", "none"),
    "inclined-support": among("some", "slanted", "reaction"),
    "minus": set(),
    "missing": among("some|all"),
    "needless-component": among("sum", "all"),
    "no-arm": among("moment", "some"),
    "ratio": among("sum", "some"),
    "reflected": among("moment", "some", "slanted") | among("sum", "some", "member"),
    "sense": set(),
    "side": among("sum", "some", "member"),
    "sign": among("sum"),
    "slope": among("sum", "some", "member|reaction"),
    "slope-assumed": among("sum", "some"),
    "tangent": among("sum", "some"),
    "turning": among("moment"),
    "unit": among("some|all", "load"),
    "upside-down": among("sum", "some") | among("moment", "some", "slanted", "reaction"),
    "whole-force": among("some", "slanted") | among("sum", "all"),
}
"""Two are of own earlier results alone, and nothing has been found here."""


@pytest.mark.parametrize("code", [code for code, kind in KINDS.items() if kind.variants])
def test_a_mistake_is_made_beside_the_forces_where_it_can_be_made_and_no_others(code: str) -> None:
    variants = KINDS[code].variants
    assert variants is not None
    assert {situation(s) for a in SUMS for s in spots(a) if list(variants(s))} == WHERE[code]


# fmt: off
SHOWN: list[tuple[Equation, str, dict[str, list[float]]]] = [
    (Fx("A"), "AC", {
        "angle-mode": [0.273, 0.274, 0.302, 0.396, 0.675, 0.676, 0.697, 0.765],
        "component": [0.6],
        "double": [1.6],
        "missing": [0.0],
        "ratio": [0.01, 0.013, 0.014, 0.023, 0.235, 0.565, 0.682, 0.697, 0.717, 0.732, 0.825, 0.972,
            1.0],
        "side": [3.0, 4.0, 6.0, 8.0],
        "sign": [-0.8],
        "slope": [0.8],
        "slope-assumed": [0.5, 0.707, 0.866],
        "tangent": [0.75, 1.333],
        "upside-down": [1.25, 1.667],
        "whole-force": [1.0],
    }),
    (Fx("A"), "AB", {
        "double": [2.0],
        "missing": [0.0],
        "needless-component": [0.6, 0.8],
        "sign": [-1.0],
        "whole-force": [1.0],
    }),
    (Fy("A"), "AB", {
        "double": [0.0],
        "extra": [-1.0, 1.0],
        "sign": [0.0],
    }),
    (Fy(), "R_B", {
        "angle-mode": [-0.305, 0.154],
        "component": [0.5],
        "double": [1.732],
        "inclined-support": [1.0],
        "missing": [0.0],
        "ratio": [0.009, 0.01, 0.015, 0.03, 0.161, 0.479, 0.546, 0.648, 0.762, 0.838, 0.878, 0.987,
            1.0],
        "sign": [-0.866],
        "slope": [0.6],
        "slope-assumed": [0.6, 0.707, 0.8],
        "tangent": [0.577, 1.732],
        "upside-down": [1.155, 2.0],
        "whole-force": [1.0],
    }),
    (Fx("C"), "load C", {
        "angle-mode": [-0.988, -0.952],
        "component": [0.866],
        "double": [1.0],
        "missing": [0.0],
        "ratio": [0.009, 0.01, 0.015, 0.03, 0.161, 0.479, 0.546, 0.648, 0.762, 0.838, 0.878, 0.987,
            1.0],
        "sign": [-0.5],
        "slope-assumed": [0.6, 0.707, 0.8],
        "tangent": [0.577, 1.732],
        "unit": [0.0, 0.001, 500.0, 500000.0],
        "upside-down": [1.155, 2.0],
        "whole-force": [1.0],
    }),
    (M("A"), "load C", {
        "angle-mode": [2.347, 4.076],
        "arm": [-9.928, -5.732],
        "arm-from": [-9.928, -6.928, -5.0, -4.964, -1.964],
        "arm-unit": [-4964.102, -496.41, -59.569, -0.414, -0.05, -0.005],
        "component": [-4.598],
        "component-in-moment": [-5.464, -4.098, -3.464, -2.598, -2.0, -1.5, 1.5, 2.0, 2.598, 3.464,
            4.098, 5.464],
        "component-missing": [-3.464, -1.5],
        "double": [-9.928],
        "missing": [0.0],
        "no-arm": [-1.0, -0.866, -0.5],
        "reflected": [-1.964, 1.964],
        "turning": [4.964],
        "unit": [-4964101.615, -4964.102, -0.005, 0.0],
        "whole-force": [-4.0, -3.0],
    }),
    (M("A"), "load D", {
        "arm": [-10.0, -8.0, -6.0],
        "arm-from": [-8.0, -4.0],
        "arm-unit": [-8000.0, -800.0, -96.0, -0.667, -0.08, -0.008],
        "double": [-16.0],
        "missing": [0.0],
        "no-arm": [-1.0],
        "turning": [8.0],
        "unit": [-8000000.0, -8000.0, -0.008, 0.0],
    }),
    (M("A"), "R_B", {
        "angle-mode": [-2.438, 1.234],
        "arm": [13.856],
        "arm-from": [1.964, 3.0, 4.964, 6.928, 8.0, 9.928],
        "arm-unit": [0.007, 0.069, 0.577, 83.138, 692.82, 6928.203],
        "component": [4.0],
        "component-in-moment": [-10.928, -6.928, -4.0, 4.0, 6.928, 10.928],
        "double": [13.856],
        "inclined-support": [8.0],
        "missing": [0.0],
        "no-arm": [0.5, 0.866, 1.0],
        "reflected": [-6.928, 6.928],
        "turning": [-6.928],
        "upside-down": [9.238],
        "whole-force": [8.0],
    }),
    (M("A"), "load B", {
        "arm-unit": [0.0],
        "double": [0.0],
        "extra": [-8.0, 8.0],
        "turning": [0.0],
    }),
    (Along(30, joint="C"), "CD", {
        "angle-mode": [0.754, 0.816, 0.833, 0.968, 0.988, 0.993],
        "complement": [0.6, 0.8, 0.92],
        "component": [0.12],
        "double": [1.986],
        "missing": [0.0],
        "ratio": [0.01, 0.013, 0.014, 0.023, 0.235, 0.565, 0.682, 0.697, 0.717, 0.732, 0.825, 0.972,
            1.0],
        "reflected": [-0.393, 0.393],
        "sign": [-0.993],
        "slope": [0.5, 0.866, 0.993],
        "slope-assumed": [0.5, 0.707, 0.866],
        "tangent": [0.75, 1.333],
        "upside-down": [1.007, 1.25, 1.667],
        "whole-force": [1.0],
    }),
]
# fmt: on


@pytest.mark.parametrize(("about", "force", "shown"), SHOWN)
def test_each_mistake_shows_by_these_factors_and_arms(
    about: Equation, force: str, shown: dict[str, list[float]]
) -> None:
    spot = next(each for each in spots(about) if each.name == force)
    made = {
        code: sorted({round(each, 3) + 0.0 for each in kind.variants(spot)})
        for code, kind in KINDS.items()
        if kind.variants is not None
    }
    assert {code: found for code, found in made.items() if found} == shown
