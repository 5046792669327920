"""What in this truss has the name that stands in a word's way, and which way does a member run?"""

from __future__ import annotations

import math

from tutor.model import Member, Problem


def names_like(problem: Problem, text: str) -> list[str]:
    """Every member, reaction and joint that this text could be the name of, in any case."""
    small = text.strip().casefold()
    joints = (joint.name for joint in problem.joints if joint.name.casefold() == small)
    return list(dict.fromkeys((*problem.names.plainly(text.strip()), *joints)))


def direction_of(problem: Problem, member: Member) -> float:
    """The inclination of a member in degrees from +x, from 0 up to 180, to four places."""
    here, there = problem.joint[member.start].at, problem.joint[member.end].at
    turn = math.degrees(math.atan2(there[1] - here[1], there[0] - here[0]))
    return round(turn % 180.0, 4) % 180.0
