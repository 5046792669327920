"""What in this truss has the name that stands in a word's way?"""

from __future__ import annotations

from tutor.model import Problem


def names_like(problem: Problem, text: str) -> list[str]:
    """Every member, reaction and joint that this text could be the name of, in any case."""
    small = text.strip().casefold()
    joints = (joint.name for joint in problem.joints if joint.name.casefold() == small)
    return list(dict.fromkeys((*problem.names.plainly(text.strip()), *joints)))
