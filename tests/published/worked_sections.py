"""Worked examples of sections and of a compound truss: the trusses, the cuts, the lines of the books.

All from memory, so a weaker check: only facts, figures and bare equations are taken, and only where what
is remembered and what is computed agree. Where only a few members are printed, the web beyond the cut
is ours; it changes none of the forces that are printed.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from families import Plain, down, plain_problem, root

from tutor.judge import Equation, Fx, Fy, M
from tutor.model import Load, Problem, Support
from tutor.notation import Exact

SLOPE = root(3, Fraction(2, 3))
"""2 tan 30°."""
Step = tuple[Equation, str]


@dataclass(frozen=True)
class Cut:
    """One section of a book: the members cut, a joint of the part it keeps, its lines, its values.

    A line of `steps` is typed about its equation; `values` are the printed ones, as they are typed.
    """

    members: Sequence[str]
    keep: str
    steps: Sequence[Step]
    values: Sequence[str]


@dataclass(frozen=True)
class Sections:
    """A worked example: the reactions printed, members drawn in compression, and its sections."""

    problem: Problem
    reactions: Mapping[str, float]
    pushing: Sequence[str]
    cuts: Sequence[Cut]
    then: Sequence[Step] = ()
    """Lines of joints behind the sections, and `found`, the values they give."""
    found: Sequence[str] = field(default=())


def truss(
    title: str,
    joints: Mapping[str, tuple[Plain | Exact, Plain | Exact]],
    members: str,
    supports: Sequence[Support],
    loads: Sequence[Load],
    **units: str,
) -> Problem:
    placed = [(name, x, y) for name, (x, y) in joints.items()]
    return plain_problem(placed, members.split(), supports, loads, title=title, **units)


def right(joint: str, size: int) -> Load:
    return Load(joint, (("right", Exact.of(size)),))


def level(left: str, other: str) -> list[Support]:
    return [Support(left, "pin"), Support(other, "roller")]


# R. C. Hibbeler, Engineering Mechanics: Statics, Example 6.5 (12th to 14th edition).
SIX_FIVE = Sections(
    truss(
        "Hibbeler, Example 6.5",
        {"A": (0, 0), "B": (4, 0), "C": (8, 0), "D": (12, 0), "G": (4, 3), "E": (8, 3)},
        "AB BC CD AG BG GC GE EC ED",
        level("A", "D"),
        [down("C", 1200), right("E", 400)],
        force="N",
    ),
    {"A_x": -400, "A_y": 300, "D_y": 900},
    ["GE"],
    [
        Cut(
            ["GE", "GC", "BC"],
            "A",
            [
                (M("G"), "-300 N(4 m) - 400 N(3 m) + F_BC(3 m) = 0"),
                (M("C"), "-300 N(8 m) + F_GE(3 m) = 0"),
                (Fy(), "300 N - 3/5 F_GC = 0"),
            ],
            ["BC = 800 N (T)", "GE = 800 N (C)", "GC = 500 N (T)"],
        )
    ],
)

# The same, Example 6.6: three members of which no two are parallel.
SIX_SIX = Sections(
    truss(
        "Hibbeler, Example 6.6",
        {
            "A": (0, 0),
            "B": (4, 0),
            "C": (8, 0),
            "D": (12, 0),
            "E": (16, 0),
            "H": (4, 4),
            "G": (8, 6),
            "F": (12, 4),
        },
        "AB BC CD DE AH HG GF FE HB GC FD HC CF",
        level("A", "E"),
        [down("C", 5), down("D", 3)],
    ),
    {"A_x": 0, "A_y": 3.25, "E_y": 4.75},
    ["CF"],
    [
        Cut(
            ["GF", "CF", "CD"],
            "E",
            [(M((20.0, 0.0)), "-F_CF sin 45°(12 m) + (3 kN)(8 m) - (4.75 kN)(4 m) = 0")],
            ["CF = 0.589 kN (C)"],
        )
    ],
)

# The same, Example 6.7: four members are cut, three of them through one joint; then a joint.
SIX_SEVEN = Sections(
    truss(
        "Hibbeler, Example 6.7",
        {
            "A": (0, 0),
            "B": (4, 0),
            "C": (8, 0),
            "F": (2, SLOPE),
            "E": (4, root(3, Fraction(4, 3))),
            "D": (6, SLOPE),
        },
        "AB BC AF FE ED DC FB EB DB",
        level("A", "C"),
        [down("A", 1000), down("F", 3000), down("E", 1000), down("D", 1000)],
        force="N",
    ),
    {"A_x": 0, "A_y": 4000, "C_y": 2000},
    ["ED", "FE"],
    [
        Cut(
            ["ED", "EB", "FB", "AB"],
            "A",
            [
                (
                    M("B"),
                    "1000 N(4 m) + 3000 N(2 m) - 4000 N(4 m) + F_ED sin 30°(4 m) = 0",
                )
            ],
            ["ED = 3000 N (C)"],
        )
    ],
    [
        (Fx("E"), "F_EF cos 30° - 3000 cos 30° N = 0"),
        (Fy("E"), "2(3000 sin 30° N) - 1000 N - F_EB = 0"),
    ],
    ["EF = 3000 N (C)", "EB = 2000 N (T)"],
)

# The same, Fundamental Problem 6-7; the supports at the wall are ours.
F_SIX_SEVEN = Sections(
    truss(
        "Hibbeler, Fundamental Problem 6-7",
        {
            "A": (0, 0),
            "B": (4, 0),
            "C": (8, 0),
            "D": (12, 0),
            "G": (0, 4),
            "F": (4, 4),
            "E": (8, 4),
        },
        "AB BC CD GF FE ED AF BF CF CE AG",
        [Support("G", "pin"), Support("A", "roller", Exact.of(0))],
        [down("C", 600), down("D", 800)],
        force="lb",
        length="ft",
    ),
    {},
    ["BC"],
    [
        Cut(
            ["FE", "CF", "BC"],
            "D",
            [
                (Fy(), "F_CF sin 45° - 600 - 800 = 0"),
                (M("C"), "F_FE(4) - 800(4) = 0"),
                (M("F"), "F_BC(4) - 600(4) - 800(8) = 0"),
            ],
            ["CF = 1980 lb (T)", "FE = 800 lb (T)", "BC = 2200 lb (C)"],
        )
    ],
)

# The same, Fundamental Problems 6-8 and 6-9: one Pratt truss, cut twice.
F_SIX_EIGHT = Sections(
    truss(
        "Hibbeler, Fundamental Problems 6-8 and 6-9",
        {
            **{name: (2 * n, 0) for n, name in enumerate("ABCDEFG")},
            **{name: (2 * n, 3) for n, name in enumerate("LKJIH", start=1)},
        },
        "AB BC CD DE EF FG LK KJ JI IH AL LB LC KC KD JD ID IE HE HF HG",
        level("A", "G"),
        [down("B", 20), down("C", 30), down("D", 40)],
    ),
    {"G_y": 33.33},
    ["KC", "LK", "KJ"],
    [
        Cut(
            ["LK", "KC", "CD"],
            "G",
            [
                (Fy(), "F_KC + 33.33 - 40 = 0"),
                (M("K"), "33.33(8) - 40(2) - F_CD(3) = 0"),
                (M("C"), "33.33(8) - 40(2) - F_LK(3) = 0"),
            ],
            ["KC = 6.67 kN (C)", "CD = 62.2 kN (T)", "LK = 62.2 kN (C)"],
        ),
        Cut(
            ["KJ", "KD", "CD"],
            "G",
            [
                (Fy(), "33.33 - 40 + F_KD(3/sqrt(13)) = 0"),
                (M("D"), "33.33(6) - F_KJ(3) = 0"),
            ],
            ["KD = 8.01 kN (T)", "KJ = 66.7 kN (C)"],
        ),
    ],
)

# F. P. Beer & E. R. Johnston, Vector Mechanics for Engineers: Statics, Sample Problem 6.2 (7th to 10th
# edition); the web of the first panel is ours.
BEER_SIX_TWO = Sections(
    truss(
        "Beer & Johnston, Sample Problem 6.2",
        {
            **{name: (8 * n, 0) for n, name in enumerate("BDFHJ")},
            **{name: (8 * n, 10) for n, name in enumerate("ACEGI")},
        },
        "BD DF FH HJ AC CE EG GI AB CD EF GH IJ BC DE FG HI",
        level("B", "J"),
        [down("C", 28), down("G", 28), right("I", 16)],
        force="kip",
        length="ft",
    ),
    {"B_x": -16, "B_y": 23, "J_y": 33},
    [],
    [
        Cut(
            ["DF", "EF", "EG"],
            "B",
            [(Fy(), "+23 kips - 28 kips - F_EF = 0")],
            ["EF = -5 kips"],
        ),
        Cut(
            ["GI", "HI", "HJ"],
            "J",
            [(M("H"), "(33 kips)(8 ft) - (16 kips)(10 ft) + F_GI(10 ft) = 0")],
            ["GI = -10.4 kips"],
        ),
    ],
)

# The same, Sample Problem 6.3: a roof of 30 m by 8 m.
BEER_SIX_THREE = Sections(
    truss(
        "Beer & Johnston, Sample Problem 6.3",
        {
            **{name: (5 * n, 0) for n, name in enumerate("ACEGIKL")},
            **{
                name: (5 * n, Fraction(8 * min(n, 6 - n), 3))
                for n, name in enumerate("BDFHJ", start=1)
            },
        },
        "AC CE EG GI IK KL AB BD DF FH HJ JL BC DE FG HI JK BE DG GH IJ",
        level("A", "L"),
        [*(down(joint, 1) for joint in "BDFHJ"), *(down(joint, 5) for joint in "CEG")],
    ),
    {"A_x": 0, "A_y": 12.5, "L_y": 7.5},
    [],
    [
        Cut(
            ["FH", "GH", "GI"],
            "L",
            [
                (M("H"), "(7.50 kN)(10 m) - (1 kN)(5 m) - F_GI(5.33 m) = 0"),
                (
                    M("G"),
                    "(7.50 kN)(15 m) - (1 kN)(10 m) - (1 kN)(5 m) + (F_FH cos 28.07°)(8 m) = 0",
                ),
                (M("L"), "(1 kN)(10 m) + (1 kN)(5 m) + (F_GH cos 43.15°)(15 m) = 0"),
            ],
            ["GI = +13.13 kN", "FH = -13.81 kN", "GH = -1.371 kN"],
        )
    ],
)

# J. L. Meriam & L. G. Kraige, Engineering Mechanics: Statics, Sample Problem 4/2 (3rd to 6th edition);
# the book's tons stand here as kips, and the truss beyond C is ours.
MERIAM_FOUR_TWO = Sections(
    truss(
        "Meriam & Kraige, Sample Problem 4/2",
        {
            **{name: (12 * n, 0) for n, name in enumerate("ABCDEFG")},
            "M": (0, 26),
            "L": (12, 21),
            **{name: (12 * n, 16) for n, name in enumerate("KJIH", start=2)},
        },
        "AB BC CD DE EF FG ML LK KJ JI IH AM AL BL CL CK CJ DJ DI EI EH FH GH",
        [Support("M", "pin"), Support("A", "roller", Exact.of(0))],
        [down("G", 20)],
        force="kip",
        length="ft",
    ),
    {},
    ["CL", "BC"],
    [
        Cut(
            ["LK", "CL", "BC"],
            "G",
            [
                (M("L"), "20(5)(12) - F_CB(21) = 0"),
                (M("C"), "20(4)(12) - 12/13 F_KL(16) = 0"),
                (M((62.4, 0.0)), "20(48 - 38.4) - F_CL(0.868)(38.4) = 0"),
            ],
            ["CB = 57.1 kips (C)", "KL = 65.0 kips (T)", "CL = 5.76 kips (C)"],
        )
    ],
)

# R. C. Hibbeler, Structural Analysis, Example 3.8 (8th edition): two equilateral trusses that share joint C
# and are tied together by HG.
COMPOUND = Sections(
    truss(
        "Hibbeler, Structural Analysis, Example 3.8",
        {
            **{name: (2 * n, 0) for n, name in enumerate("ABCDE")},
            **{name: (x, root(3, 2)) for name, x in (("H", 2), ("G", 6))},
            **{name: (x, root(3)) for name, x in zip("IJKF", (1, 3, 5, 7), strict=True)},
        },
        "AB BC CD DE AI IH HJ JC IB BJ IJ CK KG GF FE KD DF KF HG",
        level("A", "E"),
        [down("B", 4), down("C", 2), down("D", 4)],
    ),
    {"A_x": 0, "A_y": 5, "E_y": 5},
    ["HG"],
    [
        Cut(
            ["HG", "JC", "BC"],
            "A",
            [(M("C"), "-5(4) + 4(2) + F_HG(4 sin 60°) = 0")],
            ["HG = 3.46 kN (C)"],
        )
    ],
)

WORKED = (
    *(SIX_FIVE, SIX_SIX, SIX_SEVEN, F_SIX_SEVEN, F_SIX_EIGHT),
    *(BEER_SIX_TWO, BEER_SIX_THREE, MERIAM_FOUR_TWO, COMPOUND),
)
