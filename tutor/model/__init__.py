"""What *is* a problem? Frozen facts about a plane truss, and reading and writing problem files."""

from tutor.model.direction import RIGHT, UP, Direction
from tutor.model.parts import Joint, Load, Member, Reaction, Support
from tutor.model.problem import Problem, Tolerance

__all__ = [
    "RIGHT",
    "UP",
    "Direction",
    "Joint",
    "Load",
    "Member",
    "Problem",
    "Reaction",
    "Support",
    "Tolerance",
]
