"""Is a belief about an inclined load told, which every line of a page is written by?

The pages come from the truss as somebody would have it who holds the belief, solved by statics: 10 kN at
30° from the vertical, taken as if it stood upright, or with its two components exchanged.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from families import exact, plain_problem
from lines import figures

from tutor import review, solve
from tutor.model import Load, Problem, Support
from tutor.notation import Exact


def shed(load: Load) -> Problem:
    return plain_problem(
        [("A", 0, 0), ("B", 12, 0), ("C", 3, 4), ("D", 9, 4), ("E", 6, 0)],
        ("AE", "BE", "AC", "CD", "BD", "CE", "DE"),
        [Support("A", "pin"), Support("B", "roller")],
        [load, Load("D", (("down", exact(8)),))],
    )


@pytest.mark.parametrize(
    ("angle", "held", "code"),
    [
        (300, {"down": 10}, "whole-force"),
        (240, {"down": 10}, "whole-force"),
        (60, {"up": 10}, "whole-force"),
        (300, {"down": 5, "right": 8.660254}, "component"),
        (240, {"down": 5, "left": 8.660254}, "component"),
        (120, {"up": 5, "left": 8.660254}, "component"),
    ],
)
def test_an_inclined_load_mistaken_throughout_is_told_so(
    angle: int, held: dict[str, float], code: str
) -> None:
    problem = shed(Load("C", size=exact(10), angle=exact(angle)))
    pushes = tuple((way, Exact.of(Fraction(size))) for way, size in held.items())
    values = solve(shed(Load("C", pushes))).values  # type: ignore[arg-type]
    work = {
        part: {name: figures(values[name], 4) for name in names}
        for part, names in (("reactions", problem.reaction), ("forces", problem.member))
    }
    result = review(problem, work)
    assert result.first == "whole"
    assert [(a.mistake.code, a.mistake.force) for a in result.accounts] == [(code, "load C")]
