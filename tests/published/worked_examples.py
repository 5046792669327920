"""Two worked examples of textbooks: the trusses, and the lines as the books write them.

From memory, so a weaker check. Only facts, figures and bare equations are taken from the sources.
What is adapted to how one types: no comma in 10,000; E and C carry their axis (E_y); an equation
that goes on with a second "=" stops at the first. "ΣFx" is the books' arrow and sum sign.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from families import down, plain_problem

from tutor.judge import Along, Equation, Fx, Fy, M
from tutor.judge.headings import slants
from tutor.model import Load, Problem, Support
from tutor.notation import Exact

# R. C. Hibbeler, Engineering Mechanics: Statics, Example 6.1 (in many editions, such as the 12th
# to 14th); geometry, lines and values from memory.
HIBBELER = plain_problem(
    [("A", 0, 0), ("B", 0, 2), ("C", 2, 0)],
    ["AB", "BC", "AC"],
    [Support("A", "pin"), Support("C", "roller")],
    [Load("B", (("right", Exact.of(500)),))],
    title="Hibbeler, Example 6.1",
    force="N",
)

# F. P. Beer & E. R. Johnston, Vector Mechanics for Engineers: Statics, Sample Problem 6.1 (in many
# editions, such as the 7th to 10th); geometry, lines and values from memory.
BEER_JOHNSTON = plain_problem(
    [("A", 0, 8), ("B", 12, 8), ("C", 24, 8), ("D", 6, 0), ("E", 18, 0)],
    ["AB", "AD", "DB", "DE", "BE", "BC", "EC"],
    [Support("C", "pin"), Support("E", "roller")],
    [down("A", 2000), down("B", 1000)],
    title="Beer & Johnston, Sample Problem 6.1",
    force="lb",
    length="ft",
)


def square_to(problem: Problem, member: str, joint: str) -> Equation:
    """The sum square to a member: what a proportion in a force triangle says."""
    for degrees, (name, along) in slants(problem, joint).items():
        if name == member and not along:
            return Along(degrees, joint)
    raise KeyError(member)


@dataclass(frozen=True)
class Worked:
    """A worked example in the order of its book: arrows as drawn there, lines, and values.

    A step is a line (its equation and text) or a printed value (None and text). `checks` are the
    lines with which the book ends.
    """

    problem: Problem
    senses: dict[str, str]
    drawn: dict[str, str]
    steps: list[tuple[Equation | None, str]]
    checks: list[tuple[Equation, str]] = field(default_factory=list)


HIBBELER_WORKED = Worked(
    HIBBELER,
    {"A_x": "left", "A_y": "down", "C_y": "up"},
    {"BC": "C"},
    [
        (Fx("B"), "500 N - F_BC sin 45° = 0"),
        (None, "F_BC = 707.1 N (C)"),
        (Fy("B"), "F_BC cos 45° - F_BA = 0"),
        (None, "F_BA = 500 N (T)"),
        (Fx("C"), "-F_CA + 707.1 cos 45° N = 0"),
        (None, "F_CA = 500 N (T)"),
        (Fy("C"), "C_y - 707.1 sin 45° N = 0"),
        (None, "C_y = 500 N"),
        (Fx("A"), "500 N - A_x = 0"),
        (None, "A_x = 500 N"),
        (Fy("A"), "500 N - A_y = 0"),
        (None, "A_y = 500 N"),
    ],
)

BEER_JOHNSTON_WORKED = Worked(
    BEER_JOHNSTON,
    {"C_x": "right", "C_y": "up", "E_y": "up"},
    {"AD": "C", "DE": "C"},
    [
        (M("C"), "(2000 lb)(24 ft) + (1000 lb)(12 ft) - E_y(6 ft) = 0"),
        (None, "E_y = +10000 lb"),
        (Fx(), "C_x = 0"),
        (Fy(), "-2000 lb - 1000 lb + 10000 lb + C_y = 0"),
        (None, "C_y = -7000 lb"),
        (square_to(BEER_JOHNSTON, "AD", "A"), "2000 lb/4 = F_AB/3"),
        (None, "F_AB = 1500 lb T"),
        (Fx("A"), "F_AB/3 = F_AD/5"),
        (None, "F_AD = 2500 lb C"),
        (Fy("D"), "F_DB = F_DA"),
        (None, "F_DB = 2500 lb T"),
        (square_to(BEER_JOHNSTON, "DB", "D"), "F_DE = 2(3/5) F_DA"),
        (None, "F_DE = 3000 lb C"),
        (Fy("B"), "-1000 - 4/5(2500) - 4/5 F_BE = 0"),
        (None, "F_BE = -3750 lb"),
        (Fx("B"), "F_BC - 1500 - 3/5(2500) - 3/5(3750) = 0"),
        (None, "F_BC = +5250 lb"),
        (Fx("E"), "3/5 F_EC + 3000 + 3/5(3750) = 0"),
        (None, "F_EC = -8750 lb"),
    ],
    [
        (Fy("E"), "10000 - 4/5(3750) - 4/5(8750) = 0"),
        (Fx("C"), "-5250 + 3/5(8750) = 0"),
        (Fy("C"), "-7000 + 4/5(8750) = 0"),
    ],
)
WORKED = (HIBBELER_WORKED, BEER_JOHNSTON_WORKED)
