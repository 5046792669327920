"""What is a line judged by, whatever it says?"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from tutor.judge.about import Equation
from tutor.judge.known_values import KnownValues
from tutor.judge.typed import TypedEquation
from tutor.model import Problem
from tutor.notation import Names
from tutor.notation.elements.fact import fact


@fact
class Desk:
    """What a line is judged by: the problem, the student's own, what stands, and the solved truss."""

    problem: Problem
    names: Names
    own: KnownValues
    standing: Sequence[Equation]
    lines: Sequence[TypedEquation]
    values: Callable[[], Mapping[str, float]]
    radians: Callable[[], Sequence[TypedEquation]]
