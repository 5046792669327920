"""Which drawings do the figure tests look at? A few trusses of every kind, drawn in every way."""

from __future__ import annotations

from fractions import Fraction

from families import down, plain_problem, pratt

from tutor.figure import (
    Figure,
    joint_figure,
    moment_figure,
    part_figure,
    result_figure,
    truss_figure,
)
from tutor.model import Load, Problem, Support
from tutor.notation import Exact


def number(value: int | str) -> Exact:
    return Exact.of(Fraction(value))


TRIANGLE = plain_problem(
    [("A", 0, 0), ("B", 4, 0), ("C", 2, Fraction(3, 2))],
    ["AB", "BC", "CA"],
    [Support("A", "pin"), Support("B", "roller")],
    [Load("C", (("down", number(12)), ("right", number(3))))],
    title="Lamp arm over the ferry steps",
)
WARREN = plain_problem(
    [("A", 0, 0), ("B", 4, 0), ("C", 8, 0), ("D", 2, 3), ("E", 6, 3)],
    ["AB", "BC", "AD", "DB", "BE", "EC", "DE"],
    [Support("A", "pin"), Support("C", "roller")],
    [down("B", 10), down("D", 20)],
    title="Gangway girder",
)
CANTILEVER = plain_problem(
    [("A", 0, 4), ("B", 0, 0), ("C", 3, 4), ("D", 3, 0), ("E", 6, 4)],
    ["AC", "CE", "BD", "DE", "CD", "BC"],
    [Support("A", "pin"), Support("B", "roller", angle=number(0))],
    [down("E", 10), down("C", 5)],
    title="Crane bracket on the quay wall",
)
INCLINED = plain_problem(
    [("A", 0, 0), ("B", 4, 0), ("C", 2, Fraction(3, 2))],
    ["AB", "BC", "CA"],
    [Support("A", "pin"), Support("B", "roller", angle=number(120))],
    [down("C", 12), Load("B", (("right", number(3)),))],
    title="Ramp on a sloping slip",
)
LINKED = plain_problem(
    [("A", 0, 0), ("B", 4, 0), ("C", 4, 3), ("D", 0, 3)],
    ["AB", "BC", "CA", "CD", "AD"],
    [Support("A", "pin"), Support("D", "link", anchor=(number(-1), number("11/3")))],
    [Load("C", size=number(5), angle=number(210)), down("B", 12)],
    title="Signal frame",
)
HANGING = plain_problem(
    [("A", 0, 0), ("B", 4, 0), ("C", 8, 0), ("D", 2, -3), ("E", 6, -3)],
    ["AB", "BC", "AD", "DB", "BE", "EC", "DE"],
    [Support("A", "pin"), Support("C", "roller")],
    [down("D", 10), Load("E", (("down", number(20)), ("right", number(5))))],
    title="Walkway hung under the pier",
)
PANELS = pratt(12, 3, 4, 10)

WARREN_FORCES = {
    "AB": 8.3333, "BC": 10.0, "AD": -13.89, "DB": -4.17, "BE": 0.0, "EC": -12.02, "DE": -11.1,
    "A_x": 0.0, "A_y": 20.0, "C_y": 10.0,
}  # fmt: skip

PROBLEMS: dict[str, Problem] = {
    "triangle": TRIANGLE,
    "warren": WARREN,
    "cantilever": CANTILEVER,
    "inclined-roller": INCLINED,
    "link": LINKED,
    "hanging": HANGING,
    "twelve-panels": PANELS,
}


def figures() -> dict[str, Figure]:
    """Every kind of drawing, by a name fit for a file."""
    drawn = {f"truss-{name}": truss_figure(problem) for name, problem in PROBLEMS.items()}
    drawn["free-body-inclined"] = truss_figure(
        INCLINED,
        reactions={"A_x": "left", "A_y": "up", "R_B": "along"},
        turning="ccw",
        highlight={"C", "AB"},
    )
    drawn["result-warren"] = result_figure(WARREN, WARREN_FORCES)
    drawn["joint-triangle-C"] = joint_figure(TRIANGLE, "C")
    drawn["joint-warren-B"] = joint_figure(
        WARREN, "B", known={"AB": 8.333, "DB": -4.17, "BE": 0.0}, senses={"BC": "C"}
    )
    drawn["joint-link-D"] = joint_figure(LINKED, "D", senses={"R_D": "against"})
    drawn["part-warren-left"] = part_figure(WARREN, ("A", "D"), about="E")
    drawn["part-cantilever"] = part_figure(
        CANTILEVER, ("C", "D", "E"), senses={"BD": "C"}, known={"AC": 18.75}, about=(1.0, 2.0)
    )
    drawn["moment-cantilever"] = moment_figure(CANTILEVER, "load E", "A")
    drawn["moment-inclined"] = moment_figure(INCLINED, "R_B", "A", turning="cw")
    return drawn
