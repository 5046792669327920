"""What of a sound problem may surprise its instructor? One function for each kind of warning.

None of these keeps a problem from being used. How near, short or known a number has to be is our
choice; where one comes from common practice its function says so.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping

from tutor.check.places import FileLines
from tutor.model import Defect, Problem
from tutor.statics import Answer, joint_order
from tutor.text import FEW, listed
from tutor.variants import awkward_slopes, is_short, pulling_rollers

SECTION = "section"
"""The topic of a problem that is meant to be cut."""
NEARLY_ZERO = 0.005
COLUMNS, ROWS = 28, 24
CLOSEST = 2.5
Doubt = Callable[[Answer, FileLines, str], Iterator[Defect]]


def doubts(answer: Answer, places: FileLines) -> Iterator[Defect]:
    """Every warning on a problem that is solved."""
    for code, doubt in DOUBTS.items():
        yield from doubt(answer, places, code)


def pulls(answer: Answer, places: FileLines, code: str) -> Iterator[Defect]:
    """A roller only pushes, along its direction (common practice: textbooks assume that it stays)."""
    unit = answer.problem.force
    for joint, force in pulling_rollers(answer).items():
        message = f"the roller at {joint} would have to pull with {force:.4g} {unit}"
        cure = "a roller only pushes: turn it round, make it a link, or move it or a load"
        yield places.warning(code, ("supports", joint), message, cure)


def awkward(answer: Answer, places: FileLines, code: str) -> Iterator[Defect]:
    """Slopes that lead to long roots, or forces that are no decimals of three figures."""
    slopes = awkward_slopes(answer.problem)
    if slopes:
        message = f"the slope of {listed(slopes, FEW)} is that of no known triangle"
        cure = "slopes of 3 in 4, 5 in 12 or 1 in 1 keep the arithmetic short; leave it if it may be long"
        first = list(answer.problem.member).index(slopes[0])
        yield places.warning(code, ("members", first), message, cure)
        return
    long = [name for name, force in answer.values.items() if not is_short(force)]
    if long:
        more = len(long) - 1
        others = f" and {more} more force{'s' * (more > 1)} are" if more else " is"
        size = f"{abs(answer.value(long[0])):.6g} {answer.problem.force}"
        message = f"{long[0]}, {size},{others} no decimal of three figures"
        cure = "loads that the lengths divide give short numbers; leave it if they may be long"
        yield places.warning(code, ("loads", 0), message, cure)


def no_start(answer: Answer, places: FileLines, code: str) -> Iterator[Defect]:
    """Trusses that the method of joints alone does not get through."""
    problem = answer.problem
    if SECTION in problem.topics or (_falls_apart(problem) and len(problem.reactions) == 3):
        return
    order = joint_order(problem)
    if order.stuck:
        where = (
            "at no joint" if not order.joints else f"after {listed(order.joints, FEW)} at no other"
        )
        message = f"{where} there are as few as two unknown forces"
        cure = (
            "students need a section, or two joints together; take another truss for joints alone, or "
            f'write "{SECTION}" among its topics'
        )
        yield places.warning(code, ("members",), message, cure)


def _falls_apart(problem: Problem) -> bool:
    """Whether the truss can be taken down joint by joint, each with at most two members left."""
    left = {name: len(members) for name, members in problem.meeting.items()}
    ready = [name for name, count in left.items() if count <= 2]
    gone: set[str] = set()
    while ready:
        joint = ready.pop()
        if joint in gone:
            continue
        gone.add(joint)
        for member in problem.meeting[joint]:
            other = member.other(joint)
            left[other] -= 1
            if other not in gone and left[other] <= 2:
                ready.append(other)
    return len(gone) == len(left)


def nearly_zero(answer: Answer, places: FileLines, code: str) -> Iterator[Defect]:
    """A force so small that rounded numbers do not tell it from none."""
    sizes = {name: abs(force) for name, force in answer.values.items()}
    largest = max(sizes.values(), default=0.0)
    for name, size in sizes.items():
        if 0 < size < NEARLY_ZERO * largest:
            share = f"{100 * size / largest:.2g} % of the largest force"
            message = f"{name} is {size:.3g} {answer.problem.force}, {share}, so it is nearly zero"
            cure = "with rounded numbers students find 0: change a load so that it is 0, or plainly not"
            yield places.warning(code, ("loads", 0), message, cure)


def cramped(answer: Answer, places: FileLines, code: str) -> Iterator[Defect]:
    """Joints so near each other that their names run together beside the lines at 80x24."""
    problem = answer.problem
    wide, high = (_extent([joint.at[axis] for joint in problem.joints]) for axis in (0, 1))
    scale = min(COLUMNS / wide if wide else math.inf, ROWS / high if high else math.inf)
    near = min(
        problem.members,
        key=lambda m: math.dist(problem.joint[m.start].at, problem.joint[m.end].at),
    )
    apart = scale * math.dist(problem.joint[near.start].at, problem.joint[near.end].at)
    if apart < CLOSEST:
        message = f"{near.start} and {near.end} are {apart:.1f} columns apart in a window of 80x24"
        cure = "fewer panels, or more even lengths, make it readable; or ask for a larger window"
        yield places.warning(code, ("joints", near.end), message, cure)


def _extent(values: list[float]) -> float:
    return max(values) - min(values)


DOUBTS: Mapping[str, Doubt] = {
    "roller-pulls": pulls,
    "awkward-numbers": awkward,
    "no-joint-to-begin": no_start,
    "nearly-zero": nearly_zero,
    "cramped": cramped,
}
"""The codes, which are public and stable, and what finds them."""
