"""Can the joints carry any load at all, and can statics alone say how?

The count m + r against 2j is Maxwell's (J. C. Maxwell, "On the calculation of the equilibrium and
stiffness of frames", Philosophical Magazine 27, 1864; from memory); that the count is necessary and
not sufficient, and that the rank of the joint equations decides, is common practice.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Literal

from tutor.model import Problem
from tutor.model.problem import Soundness
from tutor.statics.body import SUM_X, SUM_Y, Moment, whole
from tutor.statics.system import joint_equations
from tutor.statics.words import as_one_body, motion_of
from tutor.text import listed

if TYPE_CHECKING:
    from tutor.statics.system import Floats

Count = Literal["too-few", "fits", "too-many"]
SMALL = 1e-9


@dataclass(frozen=True)
class Determinacy:
    """The count: `members` + `reactions` unknowns against `equations` = 2j, and what it says.

    `said` leaves open whether a truss that has as many unknowns as equations is stable;
    `said_if_stable` is for where that is known.
    """

    members: int
    reactions: int
    equations: int
    said: str
    said_if_stable: str

    @property
    def unknowns(self) -> int:
        return self.members + self.reactions

    @property
    def count(self) -> Count:
        if self.unknowns == self.equations:
            return "fits"
        return "too-few" if self.unknowns < self.equations else "too-many"


@dataclass(frozen=True)
class Stability:
    """Whether every joint is held, to first order.

    When not `stable`, `mechanism` is one way to move without stretching a member or leaving a
    support: joint to (dx, dy), pure numbers, the largest motion of a joint being 1. `moving` are
    the joints that move, and `how` says it in a sentence; `as_one` says that the whole truss moves
    as one rigid body.
    """

    stable: bool
    mechanism: Mapping[str, tuple[float, float]] = field(default_factory=dict)
    how: str = ""
    as_one: bool = False

    @property
    def moving(self) -> tuple[str, ...]:
        return tuple(name for name, (x, y) in self.mechanism.items() if (x, y) != (0.0, 0.0))


def determinacy(problem: Problem) -> Determinacy:
    """The count of unknowns against equations, with the verdict in words."""
    m, r, n = len(problem.members), len(problem.reactions), 2 * len(problem.joints)
    count = f"m + r = {m} + {r} = {m + r} and 2j = {n}"
    if m + r == n:
        as_many = f"{count}: as many unknowns as equations, statically determinate"
        return Determinacy(m, r, n, f"{as_many} if it is stable.", f"{as_many} and stable.")
    if m + r < n:
        said = f"{count}: {n - m - r} too few to hold every joint, so it can move."
    else:
        more = f"{m + r - n} unknown{'s' if m + r - n > 1 else ''}"
        said = f"{count}: {more} more than equations, statically indeterminate."
    return Determinacy(m, r, n, said, said)


def stability(problem: Problem) -> Stability:
    """Whether the joint equations have full rank 2j, and if not, one way in which the truss moves."""
    matrix, _ = joint_equations(problem)
    if surely_regular(matrix):
        return Stability(True)
    motions = _motions(matrix)
    if not len(motions):
        return Stability(True)
    joints = [joint.name for joint in problem.joints]
    steps = _tidy(min(motions, key=lambda row: _count_moving(row)))
    mechanism = {
        name: (float(steps[2 * k]), float(steps[2 * k + 1])) for k, name in enumerate(joints)
    }
    places = {joint.name: joint.at for joint in problem.joints}
    as_one = bool(as_one_body(places, mechanism))
    return Stability(False, mechanism, motion_of(places, mechanism), as_one)


def soundness(problem: Problem) -> Soundness:
    """Whether statics alone gives the forces; else what keeps it from doing so."""
    if not stability(problem).stable:
        return "unstable"
    return "determinate" if determinacy(problem).count == "fits" else "indeterminate"


def forces_follow(problem: Problem) -> bool:
    """Whether statics alone finds the forces, so that a lesson may ask for them.

    Only a problem that asks what its truss is may say otherwise; every other is taken to be solvable,
    and `solve` raises Unsolvable where it is not.
    """
    return problem.truss is None or soundness(problem) == "determinate"


def loose_joints(problem: Problem) -> tuple[str, ...]:
    """The joints that can move, to first order, in any way that stretches no member."""
    matrix, _ = joint_equations(problem)
    motions = _motions(matrix)
    return tuple(
        joint.name
        for k, joint in enumerate(problem.joints)
        if any(max(abs(row[2 * k]), abs(row[2 * k + 1])) > SMALL for row in motions)
    )


def surely_regular(matrix: Floats) -> bool:
    """A quick test that spares the singular values: square, and far from singular."""
    import numpy as np  # here for start-up time

    if matrix.shape[0] != matrix.shape[1]:
        return False
    try:
        inverse = np.linalg.inv(matrix)
    except np.linalg.LinAlgError:
        return False
    return bool(np.linalg.norm(matrix, 1) * np.linalg.norm(inverse, 1) < 1e8)


def _motions(matrix: Floats) -> Floats:
    """Rows that span the motions stretching no member: the null space, reduced to be sparse."""
    import numpy as np  # here for start-up time

    rows = matrix.shape[0]
    if matrix.shape[1] == 0:
        return np.eye(rows)
    left, sizes, _ = np.linalg.svd(matrix)
    rank = int(np.sum(sizes > SMALL * max(1.0, float(sizes[0]))))
    return _reduced(left[:, rank:].T.copy())


def _reduced(basis: Floats) -> Floats:
    """The row-reduced form of `basis`, with the largest pivots first."""
    import numpy as np  # here for start-up time

    for k in range(len(basis)):
        row, column = divmod(int(np.argmax(np.abs(basis[k:]))), basis.shape[1])
        basis[[k, k + row]] = basis[[k + row, k]]
        basis[k] /= basis[k, column]
        for other in range(len(basis)):
            if other != k:
                basis[other] -= basis[other, column] * basis[k]
    return basis


def _count_moving(row: Floats) -> int:
    steps = _tidy(row)
    return sum(1 for k in range(0, len(steps), 2) if steps[k] or steps[k + 1])


def _tidy(row: Floats) -> Floats:
    """The motion with its largest step 1, tiny steps exactly 0, the first large step rightward or up."""
    import numpy as np  # here for start-up time

    largest = max(math.hypot(row[k], row[k + 1]) for k in range(0, len(row), 2))
    steps = row / largest
    steps[np.abs(steps) < SMALL] = 0.0
    first = next(step for step in steps if abs(step) > 1e-3)
    return np.where(steps == 0.0, 0.0, steps * math.copysign(1.0, first))


def whole_equations(problem: Problem) -> Floats:
    """The three equations of the whole body over the reactions: 3 by r, moments over the truss's size.

    Rows: forces along x, along y, moments about the middle of the joints.
    """
    import numpy as np  # here for start-up time

    xs, ys = zip(*(joint.at for joint in problem.joints), strict=True)
    middle = ((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
    size = max(max(xs) - min(xs), max(ys) - min(ys)) or 1.0
    reactions = [force for force in whole(problem).forces if force.kind == "reaction"]
    column = {reaction.name: k for k, reaction in enumerate(problem.reactions)}
    matrix = np.zeros((3, len(column)))
    for force in reactions:
        k = column[force.name]
        matrix[:, k] = SUM_X.of(force), SUM_Y.of(force), Moment(middle).of(force) / size
    return matrix


def reactions_from_whole(problem: Problem) -> tuple[str, ...]:
    """The reactions that the equations of the whole body fix by themselves, in the problem's order.

    With three reactions that hold the truss these are all of them. With two pins on one level they
    are the two vertical ones: both horizontal ones act along one line.
    """
    import numpy as np  # here for start-up time

    matrix = whole_equations(problem)
    if matrix.shape[1] == 0:
        return ()
    _, sizes, right = np.linalg.svd(matrix)
    free = right[int(np.sum(sizes > SMALL)) :]
    names = [reaction.name for reaction in problem.reactions]
    return tuple(
        name for k, name in enumerate(names) if not len(free) or np.max(np.abs(free[:, k])) < SMALL
    )


def reactions_by_whole(problem: Problem) -> bool:
    """Whether the whole-body equations alone give every reaction: three of them, independent."""
    return len(problem.reactions) == 3 and len(reactions_from_whole(problem)) == 3


def support_fault(problem: Problem) -> str:
    """Why the supports cannot hold the truss as one rigid body, as half a sentence; "" if they can."""
    import numpy as np  # here for start-up time

    matrix = whole_equations(problem)
    names = listed([reaction.name for reaction in problem.reactions])
    count = matrix.shape[1]
    if count < 3:
        had = {0: "no reaction", 1: "one reaction"}.get(count, f"{count} reactions")
        return f"{had} cannot hold a body in the plane, which takes three"
    if int(np.sum(np.linalg.svd(matrix)[1] > SMALL)) == 3:
        return ""
    if int(np.sum(np.linalg.svd(matrix[:2])[1] > SMALL)) < 2:
        return f"the reactions {names} are parallel, so nothing holds it across them"
    return f"the lines of {names} meet in one point, so nothing keeps it from turning about it"
