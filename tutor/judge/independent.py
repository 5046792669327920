"""Does an equation add anything to those that already stand?

The equilibrium equations of one body form a space of three dimensions (two at a joint): a sum along
(cos t, sin t) is (cos t, sin t, 0), a sum of moments about (x, y) is (y, -x, 1). An equation adds
something exactly when its vector is not in the span of the others. Source: reduction of a force
system to a point; common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from tutor.judge.about import Equation, M, point_of, sum_of
from tutor.model import Problem
from tutor.statics.body import Projection
from tutor.statics.linear import directions

Vector = tuple[float, ...]
NEARLY_NOTHING = 1e-9


def vector_of(problem: Problem, about: Equation) -> Vector:
    """The equation's place in the space of its body's equations, lengths scaled to the truss."""
    if isinstance(about, M):
        x, y = point_of(problem, about)
        reach = max(max(map(abs, joint.at)) for joint in problem.joints) or 1.0
        return y / reach, -x / reach, 1.0
    total = sum_of(problem, about)
    assert isinstance(total, Projection)
    return (*total.axis, 0.0)


def adds_something(problem: Problem, about: Equation, standing: Iterable[Equation]) -> bool:
    """Whether `about` is independent of the standing equations of the same body."""
    same = [vector_of(problem, s) for s in standing if same_body(s, about)]
    return not same or _rank([*same, vector_of(problem, about)]) > _rank(same)


def same_body(one: Equation, other: Equation) -> bool:
    """Whether two equations are of the same free body."""
    return one.joint == other.joint and set(one.part) == set(other.part)


def how_many(problem: Problem, standing: Iterable[Equation], joint: str | None) -> int:
    """The number of independent equations that stand for one body."""
    return _rank([vector_of(problem, s) for s in standing if s.joint == joint and not s.part])


def _rank(vectors: Sequence[Vector]) -> int:
    return len(directions(vectors, NEARLY_NOTHING))
