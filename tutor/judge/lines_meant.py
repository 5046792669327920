"""Which line of members is meant at a joint by "the rafter", "the chord", "the diagonal"?

A chord goes on through its joint; a diagonal is oblique and ends there; a rafter is oblique, and where one
goes on through the joint it is that. Common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from tutor.model import Problem
from tutor.notation import Label

SAME_LINE = 1e-6
ANY = frozenset({"member", "bar", "rod", "web", "strut", "tie", "link"})
SEVERAL = "“{line}” may be more than one line{at}"
NO_LINE = "The heading does not say clearly along what the forces are added{at}"
CURE = "{what}: name a member, as in along {name}: or perpendicular to {name}:, or an angle."


def lines_meant(problem: Problem, called: str, joint: str | None) -> list[float]:
    """The directions at a joint, from 0 to 180 degrees, that a word for a line of members may mean."""
    if joint is None:
        return []
    found = _lines(problem, joint)
    oblique = {
        at: count for at, count in found.items() if min(at % 90.0, 90.0 - at % 90.0) > SAME_LINE
    }
    if called == "chord":
        return [at for at, count in found.items() if count > 1]
    if called == "post":
        return [at for at in found if abs(at - 90.0) <= SAME_LINE]
    if called in ("diagonal", "brace"):
        return [at for at, count in oblique.items() if count == 1]
    if called == "rafter":
        return [at for at, count in oblique.items() if count > 1] or list(oblique)
    return list(found if called in ANY else oblique)


def _lines(problem: Problem, joint: str) -> Mapping[float, int]:
    """The directions of the members at a joint, and how many lie in each."""
    x, y = problem.joint[joint].at
    found: dict[float, int] = {}
    for member in problem.meeting[joint]:
        to_x, to_y = problem.joint[member.other(joint)].at
        at = math.degrees(math.atan2(to_y - y, to_x - x)) % 180.0
        same = (old for old in found if min(abs(old - at), 180.0 - abs(old - at)) <= SAME_LINE)
        at = next(same, at)
        found[at] = found.get(at, 0) + 1
    return found


def unclear(problem: Problem, label: Label | None, joint: str | None) -> str | None:
    """What is asked of a heading that says in words along what; None where it is clear, or says none."""
    if label is None or label.kind != "along" or (label.degrees, label.between) != (None, None):
        return None
    joint = label.point if isinstance(label.point, str) else joint
    if label.line and len(lines_meant(problem, label.line, joint)) == 1:
        return None
    members = problem.meeting[joint] if joint is not None else problem.members
    at = f" at joint {joint}" if joint is not None else ""
    what = SEVERAL if label.line and joint is not None else NO_LINE
    return CURE.format(what=what.format(line=label.line, at=at), name=members[0].name)
