"""What are the forces of many trusses that differ in their numbers alone?

They are worked out side by side, which costs a small part of solving each. `solve` stays what counts:
here is said how far its values may lie from these, and nothing of a truss of which that is not sure.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, NamedTuple

from tutor.model import Problem
from tutor.statics.forces import RESIDUE

if TYPE_CHECKING:
    from tutor.statics.system import Floats

Pair = tuple[float, float]
WELL_HELD = 1e6
"""How far from singular the equations have to be: `solve` itself looks closer from 1e8 on."""
ROUNDING = 1e-15
LEAST_DOUBT = 4e-12
MOST_DOUBT = 1e-9
EDGE = 0.01


class Outline(NamedTuple):
    """The places of the joints, and which way the reactions are positive, in a problem's order."""

    at: tuple[Pair, ...]
    along: tuple[Pair, ...]


class Forces(NamedTuple):
    """The force of each unknown in the problem's order, and how far from it `solve` may come out.

    What is 0 here is 0 there, and the other way round.
    """

    values: list[float]
    doubt: float


class ManyTrusses:
    """Trusses with the joints, members and supports of one problem, each with an outline of its own.

    Lengths and forces in the problem's units, senses as in `solve`.
    """

    def __init__(self, problem: Problem, outlines: Sequence[Outline]) -> None:
        import numpy as np  # here for start-up time

        self.matrices, nearest = _equations(problem, outlines)
        self.inverses = np.zeros_like(self.matrices)
        self.doubts = np.full(len(outlines), np.inf)
        if self.matrices.shape[1] != self.matrices.shape[2]:
            return
        drawn = np.flatnonzero(np.isfinite(nearest))
        drawn = drawn[_invert(self.matrices, self.inverses, drawn)]
        held = _norms(self.matrices[drawn]) * _norms(self.inverses[drawn])
        doubts = np.maximum(LEAST_DOUBT, ROUNDING * held * (1 + nearest[drawn]))
        self.doubts[drawn] = np.where(held < WELL_HELD, doubts, np.inf)

    def forces(
        self, outlines: Sequence[int], loads: Sequence[Sequence[float]]
    ) -> list[Forces | None]:
        """The forces of each truss: the place of its outline, and its loads as x and y of each joint.

        None where they are not sure: the truss is not, or hardly, held, or a force is nearly zero.
        """
        import numpy as np  # here for start-up time

        of, acting = np.array(outlines), np.array(loads, float)
        found = np.zeros((len(of), self.matrices.shape[2]))
        for k in sorted(set(outlines)):
            if self.doubts[k] > MOST_DOUBT:
                continue
            rows = of == k
            inverse, matrix, right = self.inverses[k].T, self.matrices[k].T, acting[rows]
            first = -(right @ inverse)
            found[rows] = first - (right + first @ matrix) @ inverse
        sizes = np.abs(found)
        scale = np.maximum(sizes.max(axis=1, initial=0.0), np.abs(acting).max(axis=1, initial=0.0))
        bound = (RESIDUE * scale)[:, None]
        doubts = self.doubts[of]
        zero, edge = sizes <= bound, np.abs(sizes - bound) <= EDGE * bound
        sure = (doubts <= MOST_DOUBT) & ~edge.any(axis=1) & np.isfinite(scale) & (scale > 0)
        found[zero] = 0.0
        doubts = np.where(sure, doubts, 0.0)
        return [
            Forces(values, doubt) if held else None
            for values, doubt, held in zip(
                found.tolist(), (doubts * scale).tolist(), sure.tolist(), strict=True
            )
        ]


def _invert(matrices: Floats, inverses: Floats, places: Any) -> Any:
    """Fill in the inverses at these places; which of them there are."""
    import numpy as np  # here for start-up time

    there = np.ones(len(places), bool)
    try:
        inverses[places] = np.linalg.inv(matrices[places])
    except np.linalg.LinAlgError:
        for k, place in enumerate(places.tolist()):
            try:
                inverses[place] = np.linalg.inv(matrices[place])
            except np.linalg.LinAlgError:
                there[k] = False
    return there


def _norms(matrices: Floats) -> Floats:
    """The largest sum of sizes in a column of each."""
    import numpy as np  # here for start-up time

    norms: Floats = np.abs(matrices).sum(axis=1).max(axis=1, initial=0.0)
    return norms


def _equations(problem: Problem, outlines: Sequence[Outline]) -> tuple[Floats, Floats]:
    """The matrices of all joints as in `joint_equations`, and by how much each truss's reach is more
    than its shortest member; infinite where a member has no length."""
    import numpy as np  # here for start-up time

    row = {joint.name: 2 * k for k, joint in enumerate(problem.joints)}
    count = len(problem.reactions)
    at = np.array([each.at for each in outlines]).reshape(len(outlines), -1)
    matrices = np.zeros((len(outlines), at.shape[1], count + len(problem.members)))
    along = np.array([each.along for each in outlines]).reshape(len(outlines), count, 2)
    held = np.array([row[reaction.joint] for reaction in problem.reactions], int)
    starts = np.array([row[member.start] for member in problem.members], int)
    ends = np.array([row[member.end] for member in problem.members], int)
    columns = np.arange(count, matrices.shape[2])
    parts = [at[:, ends + axis] - at[:, starts + axis] for axis in (0, 1)]
    lengths = np.hypot(*parts)
    with np.errstate(all="ignore"):
        for axis, part in enumerate(parts):
            matrices[:, held + axis, np.arange(count)] = along[:, :, axis]
            matrices[:, starts + axis, columns] = part / lengths
            matrices[:, ends + axis, columns] = -part / lengths
        nearest = np.abs(at).max(axis=1) / lengths.min(axis=1, initial=np.inf)
    return matrices, nearest
