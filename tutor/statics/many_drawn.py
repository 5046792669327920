"""Where do members of many trusses cross, or pass over a joint?

The same question as `tutor.model.checks` asks of one truss, for many side by side; where it is not sure
that the answer would be the same, none is given.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations
from typing import TYPE_CHECKING

from tutor.model import Problem
from tutor.model.checks import MOST_CROSSINGS, NEAR
from tutor.statics.many import Outline

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from tutor.statics.system import Floats

    Flags = NDArray[np.bool_]

Meeting = tuple[str, str]
FARTHEST = 1e4
"""How many times its own size a truss may lie away from where its places are counted from."""


def crossings(problem: Problem, outlines: Sequence[Outline]) -> list[frozenset[Meeting] | None]:
    """For each outline, the pairs of a member and what it meets without a joint: another member, or a
    joint; None where that is not sure, and where joints are at one place or more is met than is told."""
    import numpy as np  # here for start-up time

    at = np.array([each.at for each in outlines])
    extent = (at.max(axis=1) - at.min(axis=1)).max(axis=1)
    near = NEAR * extent
    joints, members = [j.name for j in problem.joints], problem.members
    place = {name: k for k, name in enumerate(joints)}
    starts, ends = ([place[m.start] for m in members], [place[m.end] for m in members])
    along, across, lengths = _coordinates(at, starts, ends)
    alone = np.ones((len(members), len(joints)), bool)
    alone[range(len(members)), starts] = alone[range(len(members)), ends] = False
    pairs = [
        (i, k)
        for (i, one), (k, other) in combinations(enumerate(members), 2)
        if len({one.start, one.end, other.start, other.end}) == 4
    ]
    sure, may = (
        (
            alone & _over(along, across, lengths, near * wide, near * narrow),
            _parted(across, pairs, starts, ends, near * narrow),
        )
        for wide, narrow in ((0.5, 2.0), (2.0, 0.5))
    )
    clear = _apart(at, near) & (np.abs(at).max(axis=(1, 2)) <= FARTHEST * extent)
    for one, other in zip(sure, may, strict=True):
        clear &= (one == other).reshape(len(outlines), -1).all(axis=1)
    names = [member.name for member in members]
    found: list[frozenset[Meeting] | None] = []
    for k, is_clear in enumerate(clear.tolist()):
        over = [(names[m], f"joint {joints[j]}") for m, j in np.argwhere(sure[0][k]).tolist()]
        cut = [(names[pairs[p][0]], names[pairs[p][1]]) for p in np.flatnonzero(sure[1][k])]
        told = is_clear and len(over) + len(cut) <= MOST_CROSSINGS
        found.append(frozenset((*over, *cut)) if told else None)
    return found


def _coordinates(
    at: Floats, starts: Sequence[int], ends: Sequence[int]
) -> tuple[Floats, Floats, Floats]:
    """Where each joint is along and across each member (outlines by members by joints), and the lengths
    of the members (outlines by members)."""
    import numpy as np  # here for start-up time

    steps = at[:, ends] - at[:, starts]
    lengths = np.hypot(steps[:, :, 0], steps[:, :, 1])
    with np.errstate(all="ignore"):
        units = steps / lengths[:, :, None]
    away = at[:, None] - at[:, starts][:, :, None]
    ux, uy = units[:, :, None, 0], units[:, :, None, 1]
    dx, dy = away[..., 0], away[..., 1]
    return dx * ux + dy * uy, dy * ux - dx * uy, lengths


def _over(along: Floats, across: Floats, lengths: Floats, wide: Floats, narrow: Floats) -> Flags:
    """Which joints lie on which members, no more than `wide` off and more than `narrow` from the ends."""
    line, end, length = wide[:, None, None], narrow[:, None, None], lengths[:, :, None]
    found: Flags = (abs(across) <= line) & (along > end) & (along < length - end)
    return found


def _parted(
    across: Floats,
    pairs: Sequence[tuple[int, int]],
    starts: Sequence[int],
    ends: Sequence[int],
    near: Floats,
) -> Flags:
    """Which pairs of members cut each other, each with its ends further than `near` on either side."""
    import numpy as np  # here for start-up time

    one, other = (np.array([pair[k] for pair in pairs], int) for k in (0, 1))
    first, last = np.array(starts, int), np.array(ends, int)
    least = near[:, None]
    both = np.ones((len(near), len(pairs)), bool)
    for line, cut in ((one, other), (other, one)):
        here, there = across[:, line, first[cut]], across[:, line, last[cut]]
        both &= (np.minimum(here, there) < -least) & (np.maximum(here, there) > least)
    return both


def _apart(at: Floats, near: Floats) -> Flags:
    """Which outlines have no two joints at one place, nor nearly."""
    import numpy as np  # here for start-up time

    one, other = np.triu_indices(at.shape[1], 1)
    steps = at[:, one] - at[:, other]
    clear = np.hypot(steps[..., 0], steps[..., 1]) > 2 * near[:, None]
    return np.asarray(clear.all(axis=1))
