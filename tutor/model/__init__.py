"""What *is* a problem? Frozen facts about a plane truss, and reading and writing problem files."""

from tutor.model.defect import Defect, ProblemError
from tutor.model.direction import RIGHT, UP, Direction
from tutor.model.naming import UnknownNameError
from tutor.model.parts import Joint, Load, Member, Reaction, Support
from tutor.model.problem import Problem
from tutor.model.read import defects, load_problem
from tutor.model.read_words import LEVELS
from tutor.model.rules import Rules, Tolerance
from tutor.model.sets import ProblemSet, load_set, load_sets
from tutor.model.spread import Spread
from tutor.model.write import write_problem

__all__ = [
    "LEVELS",
    "RIGHT",
    "UP",
    "Defect",
    "Direction",
    "Joint",
    "Load",
    "Member",
    "Problem",
    "ProblemError",
    "ProblemSet",
    "Reaction",
    "Rules",
    "Spread",
    "Support",
    "Tolerance",
    "UnknownNameError",
    "defects",
    "load_problem",
    "load_set",
    "load_sets",
    "write_problem",
]
