"""Do the forces of a line stand in the ratio of the sides of their triangle: DE/17 = CE/15 = 10/8?

Where three forces hold a joint, their triangle is similar to one of lengths; over the sines of the
angles it is the same. It tells sizes, and no signs: each link is the sum across the third force.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from tutor.judge.about import Equation, Fx, Fy
from tutor.judge.desk import Desk
from tutor.judge.headings import sum_along
from tutor.judge.in_size import OF_SIZES, RIGHT, SIZES_ALONE
from tutor.judge.kind import Case
from tutor.judge.mistakes import KINDS
from tutor.judge.same import NEAR, SAME
from tutor.judge.verdict import OPENING, Mistake, Remark, Verdict
from tutor.judge.worked import side_value
from tutor.model import Problem
from tutor.notation import Line, Side, Step, Unreadable
from tutor.notation.elements.tree import Binary, Call, Name, Node, has
from tutor.statics.body import Force, joint_body

NOT_ITS_SIDE = "“{shown}” does not go with the rest of this proportion."
NOT_ALIKE = "The parts of this proportion are not equal."
BY_SIDES = (
    "In a triangle of forces each force stands over the side of the slope triangle that is parallel "
    "to it."
)
BY_SINES = (
    "Each force stands over the sine of the angle between the lines of action of the other two."
)
WHICH = "See what belongs under {thing}, and what under the others."


def proportion_in(line: Line | Unreadable) -> Step | None:
    """The statement of a line that sets two forces or more in proportion, each over its side; or None."""
    steps = () if isinstance(line, Unreadable) else line.steps
    return next((step for step in steps if _is_proportion(step)), None)


def _is_proportion(step: Step) -> bool:
    sides = [side for side in step.sides if not side.numeric]
    if len(sides) < 2 or not all(_over_something(side.node) for side in sides):
        return False
    return len({side.terms[0].name for side in sides if len(side.terms) == 1}) == len(sides)


def _over_something(node: Node) -> bool:
    """Whether a side is a force over a number."""
    if not isinstance(node, Binary) or node.operator != "/":
        return False
    return isinstance(node.left, Name) and node.left.share is None


def proportion_verdict(desk: Desk, step: Step) -> Verdict | None:
    """The verdict on a proportion of the forces at a joint; None for any other statement."""
    if not _is_proportion(step) or not sums_shown(desk.problem, step, desk.values()):
        return None
    parts = [_part(desk, side) for side in step.sides]
    off = [n for n, _ in enumerate(parts) if all(not _alike(parts[n], p) for p in _but(parts, n))]
    if not off and all(_alike(parts[0], part) for part in parts):
        if _is_sum_of_two(desk, step):
            return Verdict("undecided", SIZES_ALONE)
        return Verdict("right", RIGHT, remarks=(Remark("sizes", RIGHT),), opening=OPENING)
    one = len(off) == 1 and all(
        _alike(p, q) for p in _but(parts, off[0]) for q in _but(parts, off[0])
    )
    side = step.sides[off[0]] if one else None
    name = None if side is None else side.terms[0].name
    shown = "" if side is None else step.as_typed(side)
    quoted = side is not None and ":" not in shown
    text = NOT_ITS_SIDE.format(shown=shown.strip()) if quoted else NOT_ALIKE
    principle = BY_SINES if any(map(_sine, step.sides)) else BY_SIDES
    kind, case = KINDS["component"], Case(desk.problem, Fx(), name)
    place = "" if name is None else WHICH.format(thing=case.thing)
    span = None if side is None else side.span
    mistake = Mistake(kind.code, name, f"{text} {principle}", kind.reason(case), place, span)
    return Verdict("wrong", mistake.text, (mistake,))


def _is_sum_of_two(desk: Desk, step: Step) -> bool:
    """Whether two forces alone are set equal that have opposite signs, and nothing says that sizes are meant."""
    if len(step.sides) > 2 or OF_SIZES.search(step.text):
        return False
    one, other = (side.terms[0] for side in step.sides)
    if one.name is None or other.name is None:
        return False
    signs = (
        desk.own.sign(n) * desk.values()[n] * t.value
        for n, t in ((one.name, one), (other.name, other))
    )
    return math.prod(signs) < 0.0


def _part(desk: Desk, side: Side) -> tuple[float, float]:
    """What a side comes to with the size of its force, and its half-width."""
    term = side.terms[0]
    if term.name is None:
        return abs(side_value(side)), sum(each.radius for each in side.terms)
    own = desk.own.known.get(term.name)
    size = abs(desk.values()[term.name]) if own is None else abs(own.value)
    radius = 0.0 if own is None else own.radius
    return abs(term.value) * size, abs(term.value) * radius + term.radius * size


def _but(parts: list[tuple[float, float]], place: int) -> list[tuple[float, float]]:
    return [part for n, part in enumerate(parts) if n != place]


def _alike(one: tuple[float, float], other: tuple[float, float]) -> bool:
    """Whether two parts are equal, as far as their figures go."""
    size = max(one[0], other[0])
    return abs(one[0] - other[0]) <= max(SAME * size, min(one[1] + other[1], NEAR * size))


def _sine(side: Side) -> bool:
    return has(side.node, Call)


def sums_shown(problem: Problem, step: Step, values: Mapping[str, float]) -> tuple[Equation, ...]:
    """The sums at the one joint of three forces that a proportion of them shows; none for any other."""
    names = {side.terms[0].name for side in step.sides if not side.numeric}
    for joint in problem.joints:
        forces = joint_body(problem, joint.name).forces
        if not names <= {force.name for force in forces}:
            continue
        acting = [f for f in forces if f.size is not None or values[f.name] != 0.0]
        others = [force for force in acting if force.name not in names]
        if not names <= {force.name for force in acting} or not _hold(acting, others, step):
            return ()
        if len(step.sides) > 2 or not others:
            return Fx(joint.name), Fy(joint.name)
        return (_across(problem, others[0], joint.name),)
    return ()


def _hold(acting: Sequence[Force], others: Sequence[Force], step: Step) -> bool:
    """Whether forces at a joint are three, or all but two of them lie along one line."""
    if len(acting) == 3:
        return True
    along = all(abs(others[0].x * force.y - others[0].y * force.x) < NEAR for force in others)
    return len(step.sides) == 2 and len(acting) == len(others) + 2 and along


def _across(problem: Problem, force: Force, joint: str) -> Equation:
    """The sum at a joint along which a force has no component."""
    degrees = math.degrees(math.atan2(force.x, -force.y)) % 180.0
    near = round(degrees / 90.0) * 90.0
    return sum_along(problem, near if abs(degrees - near) < SAME else degrees, joint)
