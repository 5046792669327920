"""What does a student master by now? Skills traced from the first answers of their lessons.

Bayesian knowledge tracing: A. T. Corbett and J. R. Anderson, Knowledge tracing: modeling the
acquisition of procedural knowledge, User Modeling and User-Adapted Interaction 4 (1995) 253-278. Each
skill is a step of the lesson, or one of the mistakes, and is then the skill of not making it.
"""

from tutor.skills.mastery import Mastery, masteries
from tutor.skills.seen import Seen, seen_in
from tutor.skills.table import MASTERED, PARAMETERS, Parameters, Skill, skill_called, skills
from tutor.skills.tracing import after, trace

__all__ = [
    "MASTERED",
    "PARAMETERS",
    "Mastery",
    "Parameters",
    "Seen",
    "Skill",
    "after",
    "masteries",
    "seen_in",
    "skill_called",
    "skills",
    "trace",
]
