"""Is a line right that says it sets the sizes of forces in proportion, and not their sums: |F_AB|/5 = 12/3?

Each force then counts as it acts, whatever way the student drew it, and the line says no signs.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import replace

from tutor.judge.about import Equation, M, Value
from tutor.judge.declared import as_declared
from tutor.judge.desk import Desk
from tutor.judge.known_values import senses_for
from tutor.judge.verdict import OPENING, Remark, Verdict
from tutor.notation import Line, Side, Unreadable
from tutor.notation.elements.tree import Binary

RIGHT = OPENING + (
    "the sizes of the forces are in this ratio. Tension or compression is seen from the way "
    "each has to act on the joint."
)
SIZES_ALONE = (
    "As a triangle of forces this is right in size; as a sum its signs do not go with the arrows of these "
    "two. Write it with its signs, or put bars around what is meant by its size alone."
)
OF_SIZES = re.compile(
    r"(?:^|[-+*/=(: ])[|∣] ?[A-Z][\w{}]* ?[|∣](?= *[-+*/=:)])|\bis to\b|triang|similar|propor|ratio|size|magnitude|sine|lami|dreieck",
    re.IGNORECASE,
)
"""Words, and bars, that say that sizes are meant."""


Judged = Callable[[Desk, Equation | Value, Line], Verdict]


def in_size(desk: Desk, about: Equation | Value, line: Line, judged: Judged) -> Verdict | None:
    """The verdict on a line with each force as it acts, where it may set sizes in proportion; else None.

    What is right only so, and says nothing of sizes, is undecided. Where no force stands over a number only
    what is right is told. A moment is no triangle of forces.
    """
    said = of_sizes(line)
    if isinstance(about, Value) or not (said or (_over_numbers(line) and not isinstance(about, M))):
        return None
    own = as_declared(desk.own, _as_they_act(desk))
    verdict = judged(replace(desk, own=own), about, line)
    if not said:
        return Verdict("undecided", SIZES_ALONE, about=about) if verdict.right else None
    if verdict.right:
        return replace(verdict, remarks=(*verdict.remarks, Remark("sizes", RIGHT)))
    over = any(_is_quotient(side) for step in line.steps for side in step.sides if not side.numeric)
    return verdict if over else None


def of_sizes(line: Line | Unreadable) -> bool:
    """Whether a line says that it sets sizes alone in proportion, and no sums of them."""
    if isinstance(line, Unreadable) or OF_SIZES.search(line.text) is None:
        return False
    sides = [side for step in line.steps for side in step.sides]
    return all(len(side.terms) == 1 for side in sides) and any(not side.numeric for side in sides)


def _over_numbers(line: Line) -> bool:
    """Whether a line is one force over a number, set equal to a number over a number: F_AB/5 = 12/3."""
    sides = line.steps[0].sides
    if len(line.steps) > 1 or len(sides) != 2 or sum(side.numeric for side in sides) != 1:
        return False
    return all(map(_is_quotient, sides))


def _is_quotient(side: Side) -> bool:
    return isinstance(side.node, Binary) and side.node.operator == "/"


def _as_they_act(desk: Desk) -> Mapping[str, str]:
    """The unknowns that act against the student's own arrows, each with the sense in which it acts."""
    found: dict[str, str] = {}
    for name, value in desk.values().items():
        if value != 0.0 and (value < 0.0) != (desk.own.sign(name) < 0.0):
            found[name] = senses_for(desk.problem, name)[value < 0.0]
    return found
